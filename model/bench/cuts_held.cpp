#include "model/bench/cuts_held.h"

#include "model/bench/bench_state.h"
#include "model/bench/saw_cuts.h"
#include "model/schedule/rack.h"
#include "model/schedule/saw_seen.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>
#include <map>
#include <string>
#include <utility>

namespace model {
namespace {

struct CutMade {
    CutPlace place;
    const Stock* stock = nullptr;
    Nm length = 0;
    std::string ends;
    bool is_used = false;
    bool is_held = false;  // by a piece of the bench
};

std::vector<CutMade> cuts_made(const Project& project,
                               const Catalogue& catalogue,
                               const Resolved& resolved) {
    std::vector<CutMade> all;
    for (Index i = 0; i < project.stock.size(); ++i) {
        const auto& stock = project.stock[i];
        const auto seen = saw_seen(project, catalogue, resolved, i);
        for (std::size_t bar = 0; bar < stock.at_saw.size(); ++bar) {
            for (std::size_t cut = 0; cut < stock.at_saw[bar].cuts.size(); ++cut) {
                const auto& stated = stock.at_saw[bar].cuts[cut];
                const auto& as = seen.bars[bar].cuts[cut];
                if (stated.state != CutState::cut || as.length == 0) continue;
                all.push_back({.place = {stock.name, bar, cut},
                               .stock = &stock,
                               .length = as.length,
                               .ends = stated.ends,
                               .is_used = as.piece != no_index});
            }
        }
    }
    return all;
}

// Gives cuts to pieces, those with the better right first.
class Holding {
public:
    Holding(std::vector<CutMade> cuts, const BenchTicks& ticks)
        : cuts_{std::move(cuts)}, ticks_{ticks}, held_(ticks.pieces.size()) {}

    void hold_as_made(std::size_t i, bool used_first) {
        const auto& made = ticks_.pieces[i].made;
        for (const bool is_used : {used_first, !used_first})
            hold_one(i, {made.length, made.end_words}, is_used, false);
    }

    // Of one that is right now the cut of before is of no use at the saw.
    void hold_as_before(std::size_t i, bool is_well) {
        const auto& before = ticks_.pieces[i].cut_before;
        for (auto was = before.rbegin(); was != before.rend() && !held_[i]; ++was) {
            hold_one(i, *was, false, true);
            if (!is_well) hold_one(i, *was, true, true);
        }
    }

    std::vector<std::optional<CutHeld>> all() && { return std::move(held_); }

private:
    void hold_one(std::size_t i, const CutBefore& was, bool is_used, bool is_as_before) {
        if (held_[i]) return;
        const auto found = std::ranges::find_if(cuts_, [&](const CutMade& cut) {
            return !cut.is_held && cut.is_used == is_used && is_of(cut, i, was);
        });
        if (found == cuts_.end()) return;
        found->is_held = true;
        held_[i] = CutHeld{found->place, is_used, is_as_before};
    }

    bool is_of(const CutMade& cut, std::size_t i, const CutBefore& was) const {
        const auto& made = ticks_.pieces[i].made;
        return cut.stock->section == made.section && cut.stock->alloy == made.alloy &&
               std::abs(cut.length - was.length) <= same_cut && cut.ends == was.ends;
    }

    std::vector<CutMade> cuts_;
    const BenchTicks& ticks_;
    std::vector<std::optional<CutHeld>> held_;
};

// By piece of the bench: whether it is cut as the project wants it now.
std::vector<bool> well_cut(const Project& project,
                           const Catalogue& catalogue,
                           const Resolved& resolved,
                           const BenchTicks& ticks) {
    std::map<PieceName, Index> by_name;
    const auto names = piece_names(project, resolved);
    for (Index i = 0; i < names.size(); ++i) by_name.emplace(names[i], i);
    std::vector<bool> is_well;
    for (const auto& each : ticks.pieces) {
        const auto piece = by_name.find(each.piece);
        if (piece == by_name.end()) {
            is_well.push_back(false);
            continue;
        }
        const auto seen = seen_piece(project, catalogue, resolved, piece->second, each);
        is_well.push_back(seen.fit.faults.empty() && !seen.fit.is_cut());
    }
    return is_well;
}

// Null where there is no such cut.
const BarCut* cut_at(const Project& project, const CutPlace& place, const Stock*& stock) {
    const auto found = std::ranges::find(project.stock, place.stock, &Stock::name);
    if (found == project.stock.end() || place.bar >= found->at_saw.size()) return nullptr;
    stock = &*found;
    const auto& cuts = found->at_saw[place.bar].cuts;
    return place.cut < cuts.size() ? &cuts[place.cut] : nullptr;
}

}  // namespace

bool is_told_at_saw(const BenchPiece& piece) {
    return piece.cut && piece.is_cut_as_before && is_cut_well(piece);
}

std::vector<std::optional<CutHeld>> cuts_held(const Project& project,
                                              const Catalogue& catalogue,
                                              const Resolved& resolved,
                                              const BenchTicks& ticks) {
    auto cuts = cuts_made(project, catalogue, resolved);
    if (cuts.empty() || ticks.pieces.empty())
        return std::vector<std::optional<CutHeld>>(ticks.pieces.size());
    const auto is_well = well_cut(project, catalogue, resolved, ticks);
    Holding holding(std::move(cuts), ticks);
    for (const bool well : {true, false}) {
        for (std::size_t i = 0; i < is_well.size(); ++i) {
            if (is_well[i] == well) holding.hold_as_made(i, well);
        }
    }
    for (std::size_t i = 0; i < is_well.size(); ++i) {
        holding.hold_as_before(i, is_well[i]);
    }
    return std::move(holding).all();
}

std::optional<Edit> cut_made_anew(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const CutPlace& place,
                                  Index piece_index) {
    const Stock* stock = nullptr;
    const auto* was = cut_at(project, place, stock);
    if (was == nullptr) return std::nullopt;
    const auto& piece = resolved.pieces[piece_index];
    auto bars = bars_kept(*stock, {});
    auto& cut = bars.at_saw[place.bar].cuts[place.cut];
    const auto length = stated_length(project, resolved, was->length);
    if (!length || std::abs(*length - piece.length) > same_cut) {
        if (cut.took.empty()) cut.took = was->length;
        cut.length = length_in_words(engine::Length::from_nm(piece.length), project.shown);
    }
    cut.ends = ends_text(project, catalogue, resolved, piece);
    if (piece.mark != no_index) cut.mark = resolved.marks[piece.mark].name;
    cut.is_opposite = piece.hand == Hand::opposite;
    if (cut == *was) return std::nullopt;
    bars.what_was_done = "Rework the cut of " + cut.mark + " to " + cut.length;
    return Edit{std::move(bars)};
}

std::vector<Edit> cuts_made_anew(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved,
                                 const std::vector<BenchPiece>& pieces) {
    std::vector<Edit> edits;
    Project now = project;
    for (const auto& piece : pieces) {
        if (!is_told_at_saw(piece)) continue;
        auto edit = cut_made_anew(now, catalogue, resolved, *piece.cut, piece.piece);
        if (!edit) continue;
        auto next = apply(std::move(now), *edit);
        assert(next);  // the stock is there
        now = std::move(next).value();
        edits.push_back(std::move(*edit));
    }
    return edits;
}

std::optional<Edit> cut_put_away(const Project& project, const CutPlace& place) {
    const Stock* stock = nullptr;
    const auto* was = cut_at(project, place, stock);
    if (was == nullptr) return std::nullopt;
    auto bars = bars_kept(*stock, "Put " + was->mark + " away as spoiled");
    bars.at_saw[place.bar].cuts[place.cut].state = CutState::spoiled;
    return Edit{std::move(bars)};
}

}  // namespace model
