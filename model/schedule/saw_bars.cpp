#include "model/schedule/saw_bars.h"

#include "model/schedule/saw_seen.h"
#include "model/schedule/shared_halves.h"

#include <algorithm>

namespace model {
namespace {

using engine::Length;

std::string mark_of(const Resolved& resolved, Index piece) {
    const Index mark = resolved.pieces[piece].mark;
    return mark == no_index ? std::string() : resolved.marks[mark].name;
}

bool is_measured(const BarCut& cut) { return &formula_of_taken(cut) == &cut.measured; }

// The cuts that are stated at the saw and take up room, in order of place.
void add_stated(const Resolved& resolved,
                const Stock& stock,
                const BarSeen& seen,
                std::size_t bar,
                SawBar& out) {
    const auto& stated = stock.at_saw[bar].cuts;
    for (std::size_t i = 0; i < stated.size(); ++i) {
        const auto& cut = seen.cuts[i];
        if (stated[i].state == CutState::planned && cut.piece == no_index) continue;
        out.cuts.push_back(
            {.piece = cut.piece,
             .mark = cut.piece == no_index ? stated[i].mark : mark_of(resolved, cut.piece),
             .length = Length::from_nm(is_measured(stated[i]) ? cut.taken : cut.length),
             .start = Length::from_nm(cut.start),
             .taken = Length::from_nm(cut.taken),
             .state = stated[i].state,
             .place = CutPlace{stock.name, bar, i},
             .hand = stated[i].is_opposite ? Hand::opposite : Hand::none});
    }
    std::ranges::stable_sort(out.cuts, {}, &SawCut::start);
}

void add_planned(const Resolved& resolved, const PlannedBar& bar, SawBar& out) {
    for (const auto& cut : bar.cuts) {
        if (std::ranges::find(out.cuts, cut.piece, &SawCut::piece) != out.cuts.end()) continue;
        out.cuts.push_back({.piece = cut.piece,
                            .mark = mark_of(resolved, cut.piece),
                            .length = Length::from_nm(resolved.pieces[cut.piece].length),
                            .start = Length::from_nm(cut.start),
                            .taken = Length::from_nm(resolved.pieces[cut.piece].length)});
    }
}

engine::Error no_such_cut(const SawTick& tick) {
    return {engine::ErrorCode::unknown_name, "bar " + std::to_string(tick.bar),
            "there is no cut " + std::to_string(tick.cut + 1) + " to be made"};
}

const SawBar& bar_of(const std::vector<SawBar>& bars, const SawTick& tick) {
    return bars[static_cast<std::size_t>(tick.bar) - 1];
}

// Whether a cut of that stock is ticked that stands in no project yet; of a bar that may be of
// `from`.
template <class From>
bool is_ticked(const std::vector<SawBar>& bars,
               const std::vector<SawTick>& ticks,
               Index stock,
               const From& is_from) {
    return std::ranges::any_of(ticks, [&](const SawTick& tick) {
        const auto& bar = bar_of(bars, tick);
        return bar.stock == stock && !bar.cuts[tick.cut].place && is_from(bar.from);
    });
}

std::vector<OddHalf> odd_halves_of(const Project& project, const std::vector<SawBar>& bars) {
    std::vector<HalfBar> halves;
    for (const auto& bar : bars) {
        if (bar.from != BarFrom::shop || bar.halved_from == Length{}) continue;
        halves.push_back({bar.stock, bar.length.nm(), bar.halved_from.nm(), bar.price});
    }
    return odd_halves(project, halves);
}

// Of the stocks of which a cut is ticked that stands in no project yet, and of those that came from
// the shop with them: what has come to the saw.
std::vector<BarPlan> plans_to_keep(const Project& project,
                                   const std::vector<SawBar>& bars,
                                   const std::vector<BarPlan>& plans,
                                   const std::vector<SawTick>& ticks) {
    const auto from_shop = stocks_bought_by(project, bars, ticks);
    std::vector<BarPlan> kept;
    for (const auto& plan : plans) {
        const bool is_bought = std::ranges::find(from_shop, plan.stock) != from_shop.end();
        if (!is_bought && !is_ticked(bars, ticks, plan.stock, [](BarFrom) { return true; }))
            continue;
        kept.push_back(plan);
        if (is_bought) continue;
        std::erase_if(kept.back().bars,
                      [](const PlannedBar& bar) { return bar.from == BarFrom::shop; });
    }
    return kept;
}

}  // namespace

std::vector<SawBar> saw_bars(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved,
                             const std::vector<BarPlan>& plans) {
    std::vector<SawBar> bars;
    for (const auto& plan : plans) {
        const auto& stock = project.stock[plan.stock];
        const auto seen = saw_seen(project, catalogue, resolved, plan.stock);
        for (const auto& bar : plan.bars) {
            SawBar out{.number = static_cast<int>(bars.size()) + 1,
                       .stock = plan.stock,
                       .section = stock.section,
                       .length = Length::from_nm(bar.length),
                       .from = bar.from,
                       .price = bar.price,
                       .halved_from = Length::from_nm(bar.halved_from)};
            if (bar.from == BarFrom::saw) {
                out.is_used_up = stock.at_saw[bar.at_saw].is_used_up;
                add_stated(resolved, stock, seen.bars[bar.at_saw], bar.at_saw, out);
            }
            add_planned(resolved, bar, out);
            out.offcut = Length::from_nm(bar.offcut());
            for (auto& cut : out.cuts) {
                if (cut.piece != no_index) cut.hand = resolved.pieces[cut.piece].hand;
            }
            bars.push_back(std::move(out));
        }
    }
    return bars;
}

std::vector<Index> stocks_bought_by(const Project& project,
                                    const std::vector<SawBar>& bars,
                                    const std::vector<SawTick>& ticks) {
    std::vector<Index> stocks;
    for (Index i = 0; i < project.stock.size(); ++i) {
        if (is_ticked(bars, ticks, i, [](BarFrom from) { return from == BarFrom::shop; }))
            stocks.push_back(i);
    }
    const auto odd = odd_halves_of(project, bars);
    for (std::size_t known = 0; known < stocks.size(); ++known) {
        for (const auto& it : odd) {
            if (it.half.stock != stocks[known] || it.other == no_index) continue;
            if (std::ranges::find(stocks, it.other) == stocks.end()) stocks.push_back(it.other);
        }
    }
    return stocks;
}

// A new bar comes behind those at the saw, a new cut behind those of its bar.
CutPlace place_when_ticked(const Project& project,
                           const std::vector<SawBar>& bars,
                           const SawTick& tick,
                           const std::vector<SawTick>& with) {
    const auto& ticked = bar_of(bars, tick);
    if (ticked.cuts[tick.cut].place) return *ticked.cuts[tick.cut].place;
    const auto& stock = project.stock[ticked.stock];
    const auto from_shop = stocks_bought_by(project, bars, with);
    const bool is_bought = std::ranges::find(from_shop, ticked.stock) != from_shop.end();
    CutPlace place{stock.name, stock.at_saw.size(), 0};
    std::size_t at_saw = 0;
    for (const auto& bar : bars) {
        if (bar.stock != ticked.stock) continue;
        const bool was_there = bar.from == BarFrom::saw;
        if (&bar == &ticked) {
            if (was_there) place.bar = at_saw;
            break;
        }
        if (was_there) ++at_saw;
        const bool comes = is_bought || bar.from != BarFrom::shop;
        if (!was_there && comes && !bar.cuts.empty()) ++place.bar;
    }
    const auto is_new = [](const SawCut& cut) { return !cut.place; };
    const auto before = ticked.cuts.begin() + static_cast<std::ptrdiff_t>(tick.cut);
    place.cut = static_cast<std::size_t>(std::count_if(ticked.cuts.begin(), before, is_new));
    if (ticked.from == BarFrom::saw) place.cut += stock.at_saw[place.bar].cuts.size();
    return place;
}

engine::Result<std::vector<Edit>> cuts_ticked(const Project& project,
                                              const Catalogue& catalogue,
                                              const Resolved& resolved,
                                              const std::vector<BarPlan>& plans,
                                              const std::vector<SawTick>& ticks,
                                              CutState state) {
    const auto bars = saw_bars(project, catalogue, resolved, plans);
    for (const auto& tick : ticks) {
        const bool is_bar = tick.bar >= 1 && static_cast<std::size_t>(tick.bar) <= bars.size();
        if (!is_bar || tick.cut >= bars[static_cast<std::size_t>(tick.bar) - 1].cuts.size()) {
            return no_such_cut(tick);
        }
    }
    auto edits =
        bars_bought(project, catalogue, resolved, plans_to_keep(project, bars, plans, ticks));
    Project kept = project;
    for (const auto& edit : edits) {
        auto changed = apply(std::move(kept), edit);
        if (!changed) return changed.error();
        kept = std::move(changed).value();
    }
    std::vector<std::vector<CutPlace>> by_stock(kept.stock.size());
    for (const auto& tick : ticks) {
        by_stock[bar_of(bars, tick).stock].push_back(place_when_ticked(project, bars, tick, ticks));
    }
    for (const auto& places : by_stock) {
        if (places.empty()) continue;
        auto edit = cut_marked(kept, resolved, places, state);
        if (!edit) return edit.error();
        edits.push_back(std::move(edit).value());
    }
    return edits;
}

}  // namespace model
