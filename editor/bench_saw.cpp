#include "editor/bench_saw.h"

#include "editor/bench_desk.h"
#include "editor/desk.h"
#include "model/bench/bench_findings.h"
#include "model/bench/cuts_held.h"
#include "model/resolve/finding.h"
#include "model/schedule/findings.h"

#include <algorithm>
#include <cctype>
#include <utility>

namespace editor {
namespace {

using model::CutState;

// "bar 2", "bars 2, 5": in which pieces like that one are cut, or to be.
std::string bar_words(const BenchDesk& bench,
                      model::Index piece,
                      CutState state,
                      const Derived& derived) {
    std::string numbers;
    bool are_many = false;
    for (const auto& bar : derived.saw) {
        const bool has_it = std::ranges::any_of(bar.cuts, [&](const model::SawCut& cut) {
            return cut.state == state && cut.piece < bench.alike.size() &&
                   bench.alike[cut.piece] == bench.alike[piece];
        });
        if (!has_it) continue;
        are_many = !numbers.empty();
        numbers += (are_many ? ", " : "") + std::to_string(bar.number);
    }
    if (numbers.empty()) return {};
    return (are_many ? ", bars " : ", bar ") + numbers;
}

// The cut as the saw shows it, with its bar's number; null where it shows it no more.
std::pair<const model::SawCut*, int> cut_shown(const model::CutPlace& place,
                                               const Derived& derived) {
    for (const auto& bar : derived.saw) {
        const auto cut = std::ranges::find_if(
            bar.cuts, [&](const model::SawCut& it) { return it.place == place; });
        if (cut != bar.cuts.end()) return {&*cut, bar.number};
    }
    return {nullptr, 0};
}

std::string bar_of_cut(const model::BenchPiece& piece, const Derived& derived) {
    const auto number = cut_shown(*piece.cut, derived).second;
    return number == 0 ? std::string("a bar") : "bar " + std::to_string(number);
}

std::string length_of(const model::BenchPiece& piece, const Derived& derived) {
    const auto& of = derived.resolved.pieces[piece.piece];
    return model::length_in_words(engine::Length::from_nm(of.length), derived.project->shown);
}

std::string words_of_before(const model::BenchPiece& piece, const Derived& derived) {
    const auto* cut = cut_shown(*piece.cut, derived).first;
    const std::string length =
        cut == nullptr ? "" : ", " + model::length_in_words(cut->length, derived.project->shown);
    return "At the saw it stands as it was before it was reworked here" + length + ", " +
           bar_of_cut(piece, derived) +
           ": undo takes back what the saw knows, and not what the bench has done";
}

template <class Is>
std::string words_of_all(const BenchDesk& bench, const Derived& derived, Is is) {
    std::string words;
    for (const auto& piece : bench.pieces) {
        if (!piece.cut || !is(piece)) continue;
        words += (words.empty() ? "" : ", ") + piece.mark + " from " + bar_of_cut(piece, derived) +
                 " into " + length_of(piece, derived);
    }
    return words;
}

}  // namespace

void tell_of_bench(Desk& desk) {
    const auto& bench = *desk.ui.make.bench;
    static_cast<void>(derived(desk));
    auto& now = *desk.derived_memo;
    if (now.told_by_bench == bench.state) return;
    const bool was_told = std::exchange(now.told_by_bench, bench.state) != 0;
    const auto is_told = [](const model::Finding& finding) {
        return finding.code == "cut_piece_unused";
    };
    if (std::ranges::none_of(now.findings, is_told)) return;
    if (was_told) {
        now.findings = model::all_findings(*now.project, *desk.catalogue, now.resolved,
                                           supply_of(*now.project, now.resolved, now.prices.get()));
    }
    model::tell_of_bench(*now.project, *desk.catalogue, now.resolved, bench.ticks, now.findings);
    now.finding_groups = finding_groups(now.findings);
    desk.ui.help.mends.cards.clear();
}

std::string in_capital(std::string_view text) {
    std::string words(text);
    if (!words.empty()) words.front() = static_cast<char>(std::toupper(words.front()));
    return words;
}

std::optional<Change> cuts_told(const BenchDesk& bench,
                                const Derived& derived,
                                const model::Catalogue& catalogue) {
    Change change;
    change.edits =
        model::cuts_made_anew(*derived.project, catalogue, derived.resolved, bench.pieces);
    if (change.edits.empty()) return std::nullopt;
    change.label = "Rework at the saw what the bench has reworked";
    return change;
}

std::string words_of_untold(const BenchDesk& bench, const Derived& derived) {
    return words_of_all(bench, derived, model::is_told_at_saw);
}

std::string words_of_reworkable(const BenchDesk& bench, const Derived& derived) {
    const auto is_reworkable = [](const model::BenchPiece& piece) {
        return piece.verdict == model::BenchVerdict::rework &&
               piece.rework_begins == model::BenchWork::cut;
    };
    return words_of_all(bench, derived, is_reworkable);
}

std::string words_of_reworked(const model::BenchPiece& piece, const Derived& derived) {
    return piece.mark + " is reworked: its cut at the saw, " + bar_of_cut(piece, derived) +
           ", is one of " + length_of(piece, derived) +
           " now. Undo takes that back at the saw alone; the bench keeps its tick";
}

std::string words_of_put_away(const model::BenchPiece& piece, const Derived& derived) {
    return piece.mark + " is put away: its cut at the saw, " + bar_of_cut(piece, derived) +
           ", counts as spoiled, and another one is planned. Undo takes that back at the saw "
           "alone; its ticks at the bench are gone";
}

std::vector<model::SawTick> cuts_to_tick(BenchDesk* bench,
                                         const Derived& derived,
                                         const model::Catalogue& catalogue) {
    if (bench == nullptr || bench->ticks.pieces.empty()) return {};
    work_out(*bench, derived, catalogue);
    return model::cuts_to_tick(derived.saw, bench->alike, bench->pieces);
}

std::string saw_words(const BenchDesk& bench,
                      const model::BenchPiece& piece,
                      const Derived& derived) {
    if (piece.piece >= bench.alike.size() || bench.alike[piece.piece] == model::no_index) return {};
    if (piece.cut && piece.is_cut_as_before) return words_of_before(piece, derived);
    if (piece.is_cut_at_saw)
        return "Ticked at the saw" + bar_words(bench, piece.piece, CutState::cut, derived);
    if (piece.state(model::BenchWork::cut) != model::WorkState::done) return {};
    const auto bars = bar_words(bench, piece.piece, CutState::planned, derived);
    if (bars.empty()) return {};
    return "The saw still has it to cut" + bars +
           ": \"Tick what the bench has cut\", at the saw, ticks it there too";
}

}  // namespace editor
