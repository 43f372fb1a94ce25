#include "model/bench/saw_cuts.h"

#include "model/schedule/saw_seen.h"

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

namespace model {
namespace {

bool is_cut(const BenchPiece& piece) { return piece.state(BenchWork::cut) == WorkState::done; }

}  // namespace

bool is_cut_well(const BenchPiece& piece) {
    if (!is_cut(piece) || piece.verdict == BenchVerdict::spoiled) return false;
    return piece.verdict != BenchVerdict::rework || piece.rework_begins != BenchWork::cut;
}

std::vector<Index> alike_at_saw(const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved) {
    std::map<std::tuple<Index, Index, Nm, std::string>, Index> known;
    std::vector<Index> alike;
    alike.reserve(resolved.pieces.size());
    for (const auto& piece : resolved.pieces) {
        if (piece.stock >= project.stock.size()) {
            alike.push_back(no_index);
            continue;
        }
        std::tuple key{piece.stock, piece.mark, piece.length,
                       ends_text(project, catalogue, resolved, piece)};
        alike.push_back(
            known.try_emplace(std::move(key), static_cast<Index>(known.size())).first->second);
    }
    return alike;
}

std::vector<bool> cut_at_saw(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved,
                             const std::vector<BenchPiece>& pieces) {
    std::vector<bool> cut_there(resolved.pieces.size(), false);
    std::vector<Index> seen;
    for (Index i = 0; i < project.stock.size(); ++i) {
        const auto cut = saw_seen(project, catalogue, resolved, i).cut;
        seen.insert(seen.end(), cut.begin(), cut.end());
    }
    if (seen.empty()) return cut_there;
    const auto alike = alike_at_saw(project, catalogue, resolved);
    std::map<Index, int> count;
    for (const Index piece : seen) ++count[alike[piece]];
    const auto take = [&](Index i) {
        const auto left = count.find(alike[i]);
        if (alike[i] == no_index || left == count.end() || left->second == 0) return;
        --left->second;
        cut_there[i] = true;
    };
    for (Index i = 0; i < cut_there.size(); ++i) {
        if (is_cut_well(pieces[i])) take(i);
    }
    // Of the others first those of the hand that is written on what was cut.
    for (const Index i : seen) {
        if (!is_cut(pieces[i])) take(i);
    }
    for (Index i = 0; i < cut_there.size(); ++i) {
        if (!is_cut(pieces[i]) && !cut_there[i]) take(i);
    }
    return cut_there;
}

engine::Result<BenchTicks> ticked_beside_saw(const Project& project,
                                             const Catalogue& catalogue,
                                             const Resolved& resolved,
                                             BenchTicks ticks,
                                             const std::vector<BenchPiece>& pieces,
                                             const std::vector<Index>& alike,
                                             const BenchPiece& piece,
                                             BenchWork work) {
    for (const auto& other : pieces) {
        const bool is_alike = work == BenchWork::cut && alike[other.piece] == alike[piece.piece];
        if (!other.is_cut_at_saw || (other.piece != piece.piece && !is_alike)) continue;
        auto cut = ticked(project, catalogue, resolved, ticks, other.piece, BenchWork::cut);
        if (cut) ticks = std::move(cut).value();
    }
    return ticked(project, catalogue, resolved, std::move(ticks), piece.piece, work);
}

std::vector<SawTick> cuts_to_tick(const std::vector<SawBar>& saw,
                                  const std::vector<Index>& alike,
                                  const std::vector<BenchPiece>& pieces) {
    std::map<Index, int> count;
    for (const auto& piece : pieces) {
        const bool by_bench_alone =
            is_cut_well(piece) && !piece.is_cut_at_saw && !piece.is_cut_as_before;
        if (alike[piece.piece] != no_index && by_bench_alone) ++count[alike[piece.piece]];
    }
    std::vector<SawTick> ticks;
    for (const auto& bar : saw) {
        for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
            const auto& cut = bar.cuts[i];
            if (cut.state != CutState::planned || cut.piece >= alike.size()) continue;
            const auto left = count.find(alike[cut.piece]);
            if (left == count.end() || left->second == 0) continue;
            --left->second;
            ticks.push_back({bar.number, i});
        }
    }
    return ticks;
}

}  // namespace model
