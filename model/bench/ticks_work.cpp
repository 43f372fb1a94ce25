#include "model/bench/bench.h"
#include "model/bench/bench_state.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

std::size_t place_of(BenchWork work) { return static_cast<std::size_t>(work); }

engine::Error refused(const PieceName& name, std::string message) {
    return {engine::ErrorCode::invalid_value, words_of(name), std::move(message)};
}

PieceTicks& entry_of(BenchTicks& ticks, const PieceName& name) {
    const auto found = std::ranges::lower_bound(ticks.pieces, name, {}, &PieceTicks::piece);
    if (found != ticks.pieces.end() && found->piece == name) return *found;
    return *ticks.pieces.insert(found, PieceTicks{.piece = name});
}

void remove(BenchTicks& ticks, const PieceName& name) {
    std::erase_if(ticks.pieces, [&](const PieceTicks& each) { return each.piece == name; });
}

bool has_any(const PieceTicks& ticks) {
    return std::ranges::any_of(ticks.done, [](bool is_done) { return is_done; });
}

// Why nothing may be ticked for a piece that is not as the project has it.
std::optional<engine::Error> fault_of(const PieceName& name, BenchVerdict verdict) {
    if (verdict == BenchVerdict::rework) {
        return refused(name, "it must be reworked first; do that and say that it is reworked");
    }
    if (verdict == BenchVerdict::spoiled) {
        return refused(name, "it is spoiled; put it away and make it anew");
    }
    return std::nullopt;
}

}  // namespace

engine::Result<BenchTicks> ticked(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  BenchTicks ticks,
                                  Index piece,
                                  BenchWork work) {
    const auto name = piece_names(project, resolved)[piece];
    if (!is_needed(resolved.pieces[piece], fastened_pieces(resolved)[piece], work)) {
        return refused(name, "there is nothing to " + std::string(name_of(work)) + " on it");
    }
    const auto* before = ticks_of(ticks, name);
    if (before != nullptr && before->is_done(work)) return ticks;
    MadePiece made;
    MadePiece wanted;
    if (before == nullptr) {
        wanted = made_as_resolved(project, catalogue, resolved, piece);
        made = wanted;
        made.holes.clear();
    } else {
        auto seen = seen_piece(project, catalogue, resolved, piece, *before);
        if (const auto fault = fault_of(name, seen.verdict)) return *fault;
        // As it was made, read as the project reads it now.
        made = std::move(seen.fit.made);
        wanted = std::move(seen.wanted);
        made.end_words = wanted.end_words;
    }
    if (work == BenchWork::drill) {
        // Those that stay open are in it already.
        made.holes.insert(made.holes.begin(), wanted.holes.begin(), wanted.holes.end());
    }
    auto& entry = entry_of(ticks, name);
    entry.done[place_of(work)] = true;
    entry.made = std::move(made);
    return ticks;
}

BenchTicks taken_back(BenchTicks ticks, const PieceName& piece, BenchWork work) {
    if (ticks_of(ticks, piece) == nullptr) return ticks;
    auto& entry = entry_of(ticks, piece);
    entry.done[place_of(work)] = false;
    if (work == BenchWork::drill) {
        std::erase_if(entry.made.holes, [](const MadeHole& hole) { return !hole.is_left_open; });
    }
    if (!has_any(entry)) remove(ticks, piece);
    return ticks;
}

engine::Result<BenchTicks> reworked(const Project& project,
                                    const Catalogue& catalogue,
                                    const Resolved& resolved,
                                    BenchTicks ticks,
                                    Index piece) {
    const auto name = piece_names(project, resolved)[piece];
    const auto* before = ticks_of(ticks, name);
    if (before == nullptr) return refused(name, "nothing has been done to it yet");
    auto seen = seen_piece(project, catalogue, resolved, piece, *before);
    if (seen.verdict != BenchVerdict::rework) {
        return refused(name, seen.verdict == BenchVerdict::spoiled
                                 ? "it is spoiled; put it away and make it anew"
                                 : "it is right as it is; there is nothing to rework");
    }
    const bool is_cut = seen.fit.is_cut();
    auto& entry = entry_of(ticks, name);
    if (is_cut) entry.cut_before.push_back({entry.made.length, entry.made.end_words});
    entry.made = std::move(seen.wanted);
    if (!entry.is_done(BenchWork::drill)) entry.made.holes.clear();
    for (const auto left : seen.fit.left) {
        entry.made.holes.push_back(seen.fit.after_cutting(left));
        entry.made.holes.back().is_left_open = true;
    }
    if (is_cut) entry.done[place_of(BenchWork::cut)] = true;
    for (const auto work : {BenchWork::deburr, BenchWork::fit, BenchWork::set}) {
        entry.done[place_of(work)] = false;
    }
    return ticks;
}

BenchTicks put_away(BenchTicks ticks, const PieceName& piece) {
    remove(ticks, piece);
    return ticks;
}

}  // namespace model
