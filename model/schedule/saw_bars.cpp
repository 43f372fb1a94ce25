#include "model/schedule/saw_bars.h"

#include "model/schedule/saw_seen.h"

#include <algorithm>

namespace model {
namespace {

using engine::Length;

std::string mark_of(const Resolved& resolved, Index piece) {
    const Index mark = resolved.pieces[piece].mark;
    return mark == no_index ? std::string() : resolved.marks[mark].name;
}

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
             .length = Length::from_nm(cut.length),
             .start = Length::from_nm(cut.start),
             .state = stated[i].state,
             .place = CutPlace{stock.name, bar, i}});
    }
    std::ranges::stable_sort(out.cuts, {}, &SawCut::start);
}

void add_planned(const Resolved& resolved, const PlannedBar& bar, SawBar& out) {
    for (const auto& cut : bar.cuts) {
        if (std::ranges::find(out.cuts, cut.piece, &SawCut::piece) != out.cuts.end()) continue;
        out.cuts.push_back({.piece = cut.piece,
                            .mark = mark_of(resolved, cut.piece),
                            .length = Length::from_nm(resolved.pieces[cut.piece].length),
                            .start = Length::from_nm(cut.start)});
    }
}

const SawBar* numbered(const std::vector<SawBar>& bars, int number) {
    const auto found = std::ranges::find(bars, number, &SawBar::number);
    return found == bars.end() ? nullptr : &*found;
}

engine::Error no_such_cut(const SawTick& tick) {
    return {engine::ErrorCode::unknown_name, "bar " + std::to_string(tick.bar),
            "there is no cut " + std::to_string(tick.cut + 1) + " to be made"};
}

// The stocks of which a cut is ticked that stands in no project yet.
engine::Result<std::vector<BarPlan>> plans_to_keep(const std::vector<SawBar>& bars,
                                                   const std::vector<BarPlan>& plans,
                                                   const std::vector<SawTick>& ticks) {
    std::vector<BarPlan> kept;
    for (const auto& tick : ticks) {
        const SawBar* bar = numbered(bars, tick.bar);
        if (bar == nullptr || tick.cut >= bar->cuts.size()) return no_such_cut(tick);
        if (bar->cuts[tick.cut].place) continue;
        const auto plan = std::ranges::find(plans, bar->stock, &BarPlan::stock);
        if (std::ranges::find(kept, bar->stock, &BarPlan::stock) == kept.end()) {
            kept.push_back(*plan);
        }
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
                       .price = bar.price};
            if (bar.from == BarFrom::saw) {
                out.is_used_up = stock.at_saw[bar.at_saw].is_used_up;
                add_stated(resolved, stock, seen.bars[bar.at_saw], bar.at_saw, out);
            }
            add_planned(resolved, bar, out);
            out.offcut = Length::from_nm(bar.offcut());
            bars.push_back(std::move(out));
        }
    }
    return bars;
}

engine::Result<std::vector<Edit>> cuts_ticked(const Project& project,
                                              const Catalogue& catalogue,
                                              const Resolved& resolved,
                                              const std::vector<BarPlan>& plans,
                                              const std::vector<SawTick>& ticks,
                                              CutState state) {
    const auto to_keep = plans_to_keep(saw_bars(project, catalogue, resolved, plans), plans, ticks);
    if (!to_keep) return to_keep.error();
    auto edits = bars_bought(project, catalogue, resolved, *to_keep);
    Project kept = project;
    for (const auto& edit : edits) {
        auto changed = apply(std::move(kept), edit);
        if (!changed) return changed.error();
        kept = std::move(changed).value();
    }
    // Numbers and order stay: what is kept lies behind what lay at the saw, in the plan's order.
    const auto bars = saw_bars(kept, catalogue, resolved,
                               edits.empty() ? plans : bar_plans(kept, catalogue, resolved));
    std::vector<std::vector<CutPlace>> by_stock(kept.stock.size());
    for (const auto& tick : ticks) {
        const SawBar* bar = numbered(bars, tick.bar);
        const bool is_there = bar != nullptr && tick.cut < bar->cuts.size();
        if (!is_there || !bar->cuts[tick.cut].place) return no_such_cut(tick);
        by_stock[bar->stock].push_back(*bar->cuts[tick.cut].place);
    }
    for (const auto& places : by_stock) {
        if (places.empty()) continue;
        auto edit = cut_marked(kept, places, state);
        if (!edit) return edit.error();
        edits.push_back(std::move(edit).value());
    }
    return edits;
}

}  // namespace model
