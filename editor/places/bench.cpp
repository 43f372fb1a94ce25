#include "editor/places/bench.h"

#include "editor/bench_desk.h"
#include "editor/bench_saw.h"
#include "editor/kit/fonts.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/bench_lines.h"
#include "editor/places/choice_row.h"
#include "model/bench/cuts_held.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

using model::BenchPiece;
using model::BenchVerdict;
using model::BenchWork;
using model::WorkState;

constexpr float large = 1.0F;
constexpr float half_large = 0.75F;

void draw_large(std::string_view text, float times, ImU32 ink = colour::ink) {
    ImFont* face = large_font();
    const float size = face->FontSize * times;
    const float width = ImGui::GetContentRegionAvail().x;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const char* begin = text.data();
    const char* end = begin + text.size();
    const ImVec2 taken = face->CalcTextSizeA(size, width, width, begin, end);
    ImGui::GetWindowDrawList()->AddText(face, size, at, ink, begin, end, width);
    ImGui::Dummy(taken);
}

void draw_works(BenchDesk& bench) {
    std::vector<RowChoice<BenchWork>> choices;
    for (const auto work : model::bench_works) {
        const auto count = count_of(bench, work);
        choices.push_back({work, name_of(work).data(),
                           in_capital(name_of(work)) + " \xC2\xB7 " + std::to_string(count.done) +
                               " of " + std::to_string(count.needed)});
    }
    const auto chosen = draw_choice_row(bench.work, choices);
    if (chosen == bench.work) return;
    take_up(bench, chosen);
}

std::string hand_words(model::Hand hand) {
    if (hand == model::Hand::none) return {};
    return hand == model::Hand::opposite ? ", OPPOSITE HAND" : ", as drawn";
}

// "rail front top, counter".
std::string named_place(const BenchPiece& piece) { return piece.words + ", " + piece.name.frame; }

std::string state_words(const BenchPiece& piece, BenchWork work) {
    switch (piece.state(work)) {
        case WorkState::done:
            return std::string(done_name_of(work));
        case WorkState::not_needed:
            return "needs none";
        case WorkState::open:
            break;
    }
    return "to " + std::string(name_of(work));
}

void draw_verdict(BenchDesk& bench,
                  const BenchPiece& piece,
                  const Derived& derived,
                  const model::Catalogue& catalogue) {
    if (piece.verdict == BenchVerdict::rework) {
        draw_wrapped("Changed since: it can be reworked. " + in_capital(piece.sentence()) + ".",
                     Type::strong, colour::amber);
        log_item("rework", piece.sentence());
        if (draw_button("It is reworked")) note_reworked(bench, derived, catalogue);
        draw_hint("Its cut at the saw is then one of the new length");
    } else if (piece.verdict == BenchVerdict::spoiled) {
        draw_wrapped("Changed since: it is spoiled for this. " + in_capital(piece.sentence()) + ".",
                     Type::strong, colour::red);
        log_item("spoiled", piece.sentence());
        if (draw_button("Put it away and make it anew")) put_in_hand_away(bench, derived);
        draw_hint("Its cut at the saw counts as spoiled then, and another one is planned");
    }
}

// What the saw has of its cut, and the button that tells it better.
void draw_at_saw(BenchDesk& bench,
                 const BenchPiece& piece,
                 const Derived& derived,
                 const model::Catalogue& catalogue) {
    const bool is_told = bench.work == BenchWork::cut || piece.is_cut_as_before;
    const auto at_saw = is_told ? saw_words(bench, piece, derived) : "";
    if (at_saw.empty()) return;
    draw_wrapped(at_saw + ".", Type::small, piece.is_cut_as_before ? colour::amber : colour::quiet);
    log_item("at the saw", at_saw);
    if (!model::is_told_at_saw(piece)) return;
    if (draw_button("Tell the saw")) tell_saw(bench, derived, catalogue);
}

void draw_hands(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue) {
    const auto& piece = bench.pieces[*bench.at];
    const auto state = piece.state(bench.work);
    const auto done = in_capital(done_name_of(bench.work));
    if (draw_button("tick",
                    {.text = done, .weight = Weight::main, .enabled = state == WorkState::open})) {
        tick(bench, derived, catalogue);
        return;
    }
    draw_hint("Space");
    go_on_in_line("Take it back");
    if (draw_button("Take it back", {.enabled = state == WorkState::done}))
        take_back(bench, derived);
    draw_hint("Backspace");
    go_on_in_line("Before");
    if (draw_button("Before")) turn_to_next(bench, -1);
    draw_hint("Arrow up");
    go_on_in_line("Next");
    if (draw_button("Next")) turn_to_next(bench, 1);
    draw_hint("Arrow down");
}

void draw_piece(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue) {
    const auto piece = bench.pieces[*bench.at];
    draw_large(piece.mark + hand_words(piece.hand), large, colour::dye);
    log_item("in hand", piece.mark);
    draw_wrapped(named_place(piece) + " \xC2\xB7 piece " + std::to_string(*bench.at + 1) + " of " +
                 std::to_string(bench.pieces.size()));
    draw_large(in_capital(state_words(piece, bench.work)), half_large,
               piece.state(bench.work) == WorkState::open ? colour::ink : colour::quiet);
    log_item("state", state_words(piece, bench.work));
    draw_at_saw(bench, piece, derived, catalogue);
    int number = 0;
    if (piece.state(bench.work) != WorkState::not_needed) {
        for (const auto& line : bench_lines(derived, catalogue, piece, bench.work)) {
            draw_large(line, half_large);
            log_item("line " + std::to_string(++number), line);
        }
    }
    draw_verdict(bench, piece, derived, catalogue);
    draw_hands(bench, derived, catalogue);
    if (bench.said.empty()) return;
    draw_wrapped(bench.said, Type::text, colour::quiet);
    log_item("said", bench.said);
}

// Pieces that were worked on and are drawn otherwise now.
void draw_changed(BenchDesk& bench) {
    const auto is_changed = [](const BenchPiece& piece) {
        return piece.verdict == BenchVerdict::rework || piece.verdict == BenchVerdict::spoiled;
    };
    if (std::ranges::none_of(bench.pieces, is_changed) && bench.left_over.empty()) return;
    draw_rule();
    draw_text("Changed since it was ticked", Type::strong);
    for (std::size_t i = 0; i < bench.pieces.size(); ++i) {
        const auto& piece = bench.pieces[i];
        if (!is_changed(piece)) continue;
        const bool is_spoiled = piece.verdict == BenchVerdict::spoiled;
        const auto text = piece.mark + ", " + named_place(piece) +
                          (is_spoiled ? ", spoiled: " : ", rework: ") + piece.sentence();
        const IdScope id(static_cast<int>(i));
        if (draw_row("changed " + std::to_string(i + 1),
                     text_to_fit(text, Type::text, ImGui::GetContentRegionAvail().x), bench.at == i)
                .clicked) {
            bench.at = i;
        }
        draw_hint(text);
    }
    std::optional<model::PieceName> gone;
    for (std::size_t i = 0; i < bench.left_over.size(); ++i) {
        const auto& ticks = bench.left_over[i];
        const IdScope id(static_cast<int>(bench.pieces.size() + i));
        const auto text = "not in the project any more: " + words_of(ticks.piece);
        draw_wrapped(text, Type::small, colour::quiet);
        log_item("left over " + std::to_string(i + 1), text);
        if (draw_button("forget " + std::to_string(i + 1),
                        {.text = "Put it away", .weight = Weight::link})) {
            gone = ticks.piece;
        }
    }
    if (gone) put_away(bench, *gone);
}

}  // namespace

std::optional<Change> draw_bench(const Derived& derived,
                                 const model::Catalogue& catalogue,
                                 MakeState& state,
                                 Selection& selection) {
    if (!state.bench) return std::nullopt;
    auto& bench = *state.bench;
    work_out(bench, derived, catalogue);
    if (bench.pieces.empty()) {
        draw_wrapped("There is nothing to make yet: lay out a frame first.", Type::text,
                     colour::quiet);
        return std::nullopt;
    }
    draw_works(bench);
    for (const auto* trouble : {&bench.trouble, &bench.refused}) {
        if (trouble->empty()) continue;
        draw_wrapped(*trouble, Type::small, colour::amber);
        log_item("trouble", *trouble);
    }
    const ChildScope sheet("piece", {0, 0});
    const auto before = bench.at;
    draw_piece(bench, derived, catalogue);
    work_out(bench, derived, catalogue);
    draw_changed(bench);
    work_out(bench, derived, catalogue);
    if (bench.at && bench.at != before) {
        selection =
            selection_of(*derived.project, derived.resolved, {bench.pieces[*bench.at].piece});
    }
    draw_wrapped(
        "Keys: arrows down and up for the next piece and the one before, Space ticks, "
        "Backspace takes it back, arrows right and left for other work.",
        Type::small, colour::quiet);
    return std::exchange(bench.at_saw, std::nullopt);
}

}  // namespace editor
