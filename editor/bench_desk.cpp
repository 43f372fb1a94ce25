#include "editor/bench_desk.h"

#include "editor/bench_saw.h"
#include "editor/desk.h"
#include "editor/put_aside.h"
#include "model/bench/cuts_held.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

void read(BenchDesk& bench) {
    bench.ticks = {};
    bench.trouble.clear();
    bench.is_stale = true;
    ++bench.state;
    if (bench.project_file.empty()) return;
    auto ticks = model::read_ticks(model::path_of_ticks(bench.project_file));
    if (ticks) {
        bench.ticks = std::move(ticks).value();
    } else {
        bench.trouble = "What was ticked cannot be read, and is left as it is: " +
                        engine::to_text(ticks.error());
    }
}

// By the names that the project has in its file: should what was edited since never come there, the
// ticks still belong to its pieces.
model::BenchTicks as_filed(const BenchDesk& bench, model::BenchTicks ticks) {
    for (auto step = bench.renamed.rbegin(); step != bench.renamed.rend(); ++step)
        ticks = model::with_names_followed(std::move(ticks), *step->second, *step->first);
    return ticks;
}

// False where it could not be written; then the ticks stay as they were.
bool keep(BenchDesk& bench, model::BenchTicks ticks) {
    if (!bench.awaited.empty()) return false;
    bench.refused.clear();
    if (!bench.trouble.empty()) return false;
    if (bench.project_file.empty()) {
        bench.refused = "Save the project first: the ticks are kept in a file beside it.";
        return false;
    }
    const auto written =
        model::write_ticks(model::path_of_ticks(bench.project_file), as_filed(bench, ticks));
    if (!written) {
        bench.refused = "Not ticked: " + engine::to_text(written.error());
        return false;
    }
    bench.ticks = std::move(ticks);
    bench.is_stale = true;
    ++bench.state;
    return true;
}

bool keep(BenchDesk& bench, engine::Result<model::BenchTicks> ticks) {
    if (ticks) return keep(bench, std::move(ticks).value());
    bench.refused = ticks.error().message;
    return false;
}

// The project was saved under another name: what was ticked goes with it, and stays where it was.
// Ticks that lay beside that name already are those of a project that is gone: they are put aside.
engine::Result<engine::Done> bring(const BenchDesk& bench, const fs::path& there) {
    const auto own = model::path_of_ticks(bench.project_file);
    if (is_one_file(own, there)) return engine::Done{};
    const auto aside = put_aside(there);
    if (!aside) return aside;
    if (!bench.trouble.empty()) return copy_unread(own, there);
    if (bench.ticks.pieces.empty()) return engine::Done{};
    return model::write_ticks(there, as_filed(bench, bench.ticks));
}

// Where it cannot be done it is tried again, until the project is saved as what it was.
void take_along(BenchDesk& bench, const fs::path& file) {
    const auto done = bench.project_file == file ? engine::Result<engine::Done>{engine::Done{}}
                                                 : bring(bench, model::path_of_ticks(file));
    bench.awaited = done ? fs::path{} : file;
    bench.refused = done ? std::string()
                         : "Nothing is ticked until the ticks lie beside the project: " +
                               engine::to_text(done.error());
    if (!done) return;
    bench.project_file = file;
    if (!bench.trouble.empty()) read(bench);
}

void follow_names(BenchDesk& bench, const Snapshot& now) {
    if (bench.of == now) return;
    if (model::are_names_changed(*bench.of, *now)) {
        bench.ticks = model::with_names_followed(std::move(bench.ticks), *bench.of, *now);
        bench.renamed.emplace_back(bench.of, now);
        ++bench.state;
    }
    bench.is_stale = true;
    bench.of = now;
}

// New names hold once the project that has them is in its file.
void file_names(BenchDesk& bench) {
    const auto renamed = std::exchange(bench.renamed, {});
    if (!bench.ticks.pieces.empty() && !keep(bench, bench.ticks)) bench.renamed = renamed;
}

const model::BenchPiece* in_hand(const BenchDesk& bench) {
    return bench.at && *bench.at < bench.pieces.size() ? &bench.pieces[*bench.at] : nullptr;
}

// To the next piece that is ready; where there is none it is said why.
void go_on(BenchDesk& bench) {
    const auto from = bench.at;
    seek(bench, 1);
    bench.said.clear();
    if (bench.at != from) return;
    bench.said = in_capital(model::words_of_none_ready(bench.pieces, bench.work, bench.at)) + ".";
}

std::string words_of_needed(model::BenchWork first, model::BenchWork work) {
    return "It is not " + std::string(done_name_of(first)) + " yet, and cannot be " +
           std::string(done_name_of(work)) + " before: tick it as " +
           std::string(done_name_of(first)) + " first.";
}

}  // namespace

void tend_bench(Desk& desk) {
    auto& bench = desk.ui.make.bench;
    if (!bench) {
        bench = std::make_shared<BenchDesk>();
        bench->project_file = desk.file;
        bench->of = desk.history.saved();
        read(*bench);
    } else if (bench->project_file != desk.file || !bench->awaited.empty()) {
        take_along(*bench, desk.file);
    }
    follow_names(*bench, desk.history.now());
    if (!bench->renamed.empty() && desk.history.now() == desk.history.saved()) file_names(*bench);
}

void work_out(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue) {
    if (!bench.is_stale) return;
    bench.is_stale = false;
    std::optional<model::PieceName> held;
    if (const auto* piece = in_hand(bench)) held = piece->name;
    bench.pieces = model::bench_pieces(*derived.project, catalogue, derived.resolved, bench.ticks);
    bench.alike = model::alike_at_saw(*derived.project, catalogue, derived.resolved);
    bench.left_over = model::left_over(*derived.project, derived.resolved, bench.ticks);
    bench.at.reset();
    const auto place = std::ranges::find_if(
        bench.pieces, [&](const model::BenchPiece& piece) { return held && piece.name == *held; });
    if (place != bench.pieces.end()) {
        bench.at = static_cast<std::size_t>(place - bench.pieces.begin());
    } else {
        seek(bench, 1);
    }
    if (!bench.at && !bench.pieces.empty()) bench.at = 0;
}

void take_up(BenchDesk& bench, model::BenchWork work) {
    bench.work = work;
    bench.refused.clear();
    bench.said.clear();
    bench.at.reset();
    seek(bench, 1);
    if (!bench.at && !bench.pieces.empty()) bench.at = 0;
}

void seek(BenchDesk& bench, int by) {
    const auto way = by < 0 ? model::Seek::backward : model::Seek::forward;
    const auto next = model::next_piece(bench.pieces, bench.work, bench.at, way);
    if (next) bench.at = next;
}

void turn_to_next(BenchDesk& bench, int by) {
    bench.refused.clear();
    bench.said.clear();
    const auto count = bench.pieces.size();
    const auto from = bench.at.value_or(by < 0 ? 0 : count - 1);
    for (std::size_t step = 1; step <= count; ++step) {
        const std::size_t at = (from + (by < 0 ? count - step : step)) % count;
        if (bench.pieces[at].state(bench.work) == model::WorkState::not_needed) continue;
        bench.at = at;
        return;
    }
}

void tick(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue) {
    const auto* piece = in_hand(bench);
    if (piece == nullptr) return;
    if (piece->state(bench.work) == model::WorkState::done) return go_on(bench);
    if (const auto first = model::needed_before(*piece, bench.work)) {
        bench.refused = words_of_needed(*first, bench.work);
        return;
    }
    if (!keep(bench,
              model::ticked_beside_saw(*derived.project, catalogue, derived.resolved, bench.ticks,
                                       bench.pieces, bench.alike, *piece, bench.work))) {
        return;
    }
    work_out(bench, derived, catalogue);
    go_on(bench);
}

void take_back(BenchDesk& bench, const Derived& derived) {
    const auto* piece = in_hand(bench);
    if (piece == nullptr || piece->state(bench.work) != model::WorkState::done) return;
    bench.said.clear();
    const bool stays = bench.work == model::BenchWork::cut && piece->is_cut_at_saw;
    const auto why = saw_words(bench, *piece, derived);
    const bool is_kept = keep(bench, model::taken_back(bench.ticks, piece->name, bench.work));
    if (is_kept && stays) bench.refused = why + ": take it back there.";
}

void note_reworked(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue) {
    const auto* held = in_hand(bench);
    if (held == nullptr) return;
    const auto piece = *held;  // as it was
    bench.said.clear();
    const bool is_kept = keep(bench, model::reworked(*derived.project, catalogue, derived.resolved,
                                                     bench.ticks, piece.piece));
    if (!is_kept || !piece.cut) return;
    auto edit = model::cut_made_anew(*derived.project, catalogue, derived.resolved, *piece.cut,
                                     piece.piece);
    if (!edit) return;
    bench.at_saw = change_of(std::move(*edit));
    bench.at_saw->told = words_of_reworked(piece, derived);
}

void put_in_hand_away(BenchDesk& bench, const Derived& derived) {
    const auto* held = in_hand(bench);
    if (held == nullptr) return;
    const auto piece = *held;
    bench.said.clear();
    if (!keep(bench, model::put_away(bench.ticks, piece.name)) || !piece.cut) return;
    auto edit = model::cut_put_away(*derived.project, *piece.cut);
    if (!edit) return;
    bench.at_saw = change_of(std::move(*edit));
    bench.at_saw->told = words_of_put_away(piece, derived);
}

void put_away(BenchDesk& bench, const model::PieceName& piece) {
    keep(bench, model::put_away(bench.ticks, piece));
}

void tell_saw(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue) {
    bench.at_saw = cuts_told(bench, derived, catalogue);
}

WorkCount count_of(const BenchDesk& bench, model::BenchWork work) {
    WorkCount count;
    for (const auto& piece : bench.pieces) {
        const auto state = piece.state(work);
        if (state == model::WorkState::not_needed) continue;
        ++count.needed;
        const bool is_to_do_again =
            piece.verdict == model::BenchVerdict::spoiled ||
            (piece.verdict == model::BenchVerdict::rework && work >= piece.rework_begins);
        if (state == model::WorkState::done && !is_to_do_again) ++count.done;
    }
    return count;
}

}  // namespace editor
