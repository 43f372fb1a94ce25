#include "model/bench/saw_cuts.h"

#include "model/schedule/saw_seen.h"

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

namespace model {
namespace {

bool is_cut_by_bench_alone(const BenchPiece& piece) {
    if (piece.state(BenchWork::cut) != WorkState::done || piece.is_cut_at_saw) return false;
    if (piece.verdict == BenchVerdict::spoiled) return false;
    return piece.verdict != BenchVerdict::rework || piece.rework_begins != BenchWork::cut;
}

}  // namespace

std::vector<Index> alike_at_saw(const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved) {
    std::map<std::tuple<Index, Nm, std::string>, Index> known;
    std::vector<Index> alike;
    alike.reserve(resolved.pieces.size());
    for (const auto& piece : resolved.pieces) {
        if (piece.stock >= project.stock.size()) {
            alike.push_back(no_index);
            continue;
        }
        std::tuple key{piece.stock, piece.length, ends_text(project, catalogue, resolved, piece)};
        alike.push_back(
            known.try_emplace(std::move(key), static_cast<Index>(known.size())).first->second);
    }
    return alike;
}

std::vector<bool> cut_at_saw(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved,
                             const std::vector<bool>& is_cut_at_bench) {
    std::vector<bool> is_cut(resolved.pieces.size(), false);
    std::vector<Index> seen;
    for (Index i = 0; i < project.stock.size(); ++i) {
        const auto cut = saw_seen(project, catalogue, resolved, i).cut;
        seen.insert(seen.end(), cut.begin(), cut.end());
    }
    if (seen.empty()) return is_cut;
    const auto alike = alike_at_saw(project, catalogue, resolved);
    std::map<Index, int> count;
    for (const Index piece : seen) ++count[alike[piece]];
    for (const bool at_bench : {true, false}) {
        for (Index i = 0; i < is_cut.size(); ++i) {
            if (alike[i] == no_index || is_cut_at_bench[i] != at_bench) continue;
            const auto left = count.find(alike[i]);
            if (left == count.end() || left->second == 0) continue;
            --left->second;
            is_cut[i] = true;
        }
    }
    return is_cut;
}

std::vector<SawTick> cuts_to_tick(const std::vector<SawBar>& saw,
                                  const std::vector<Index>& alike,
                                  const std::vector<BenchPiece>& pieces) {
    std::map<Index, int> count;
    for (const auto& piece : pieces) {
        if (alike[piece.piece] != no_index && is_cut_by_bench_alone(piece))
            ++count[alike[piece.piece]];
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
