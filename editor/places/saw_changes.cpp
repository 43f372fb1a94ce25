#include "editor/places/saw_changes.h"

#include "model/schedule/stop_work.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

using model::CutState;
using model::SawTick;

std::optional<Change> change_of_all(std::vector<model::Edit> edits) {
    if (edits.empty()) return std::nullopt;
    Change change;
    change.edits = std::move(edits);
    return change;
}

// The first at the longest setting of the stop that is not cut yet.
std::optional<SawTick> next_cut(const Derived& derived, const model::Catalogue& catalogue) {
    const auto work = model::stop_work(*derived.project, catalogue, derived.resolved, derived.saw);
    const auto next = std::ranges::find(work, false, &model::StopWork::is_made);
    return next == work.end() ? std::nullopt : std::optional{next->cuts.front()};
}

bool is_ticked(const Derived& derived, const std::vector<SawTick>& ticks, model::Index stock) {
    return std::ranges::any_of(ticks, [&](const SawTick& tick) {
        const auto bar = std::ranges::find(derived.saw, tick.bar, &model::SawBar::number);
        return bar != derived.saw.end() && bar->stock == stock;
    });
}

void note_cut_again(const Derived& derived,
                    SawListState& state,
                    const std::vector<SawTick>& ticks) {
    if (!state.spoiled) return;
    auto& talk = *state.spoiled;
    const auto again = model::tick_of_cutting_again(*derived.project, derived.saw, talk.piece);
    const bool is_made = again && std::ranges::any_of(ticks, [&](const SawTick& tick) {
                             return tick.bar == again->bar && tick.cut == again->cut;
                         });
    if (is_made) talk.is_cut_again = true;
    if (talk.is_cut_again && talk.has_place) state.spoiled.reset();
}

}  // namespace

std::optional<Change> ticked(const Derived& derived,
                             const model::Catalogue& catalogue,
                             SawListState& state,
                             const std::vector<SawTick>& ticks,
                             CutState to) {
    const auto is_fixed = [&](const SawTick& tick) {
        const auto bar = std::ranges::find(derived.saw, tick.bar, &model::SawBar::number);
        return bar != derived.saw.end() && tick.cut < bar->cuts.size() && bar->cuts[tick.cut].place;
    };
    state.troubled = {};
    if (!derived.summary.is_nested && !std::ranges::all_of(ticks, is_fixed)) {
        state.trouble = "the cheapest plan is still being looked for: tick again in a moment";
        return std::nullopt;
    }
    auto edits =
        model::cuts_ticked(*derived.project, catalogue, derived.resolved, derived.plans, ticks, to);
    if (edits && to == CutState::cut) note_cut_again(derived, state, ticks);
    if (!ticks.empty()) state.troubled = ticks.front();
    state.trouble = edits ? std::string() : engine::to_text(edits.error());
    if (!edits) return std::nullopt;
    auto change = change_of_all(std::move(edits).value());
    if (change) change->takes_bars = true;
    return change;
}

std::string bought_by_tick(const Derived& derived, const std::vector<SawTick>& ticks) {
    const auto stocks = model::stocks_bought_by(*derived.project, derived.saw, ticks);
    if (stocks.empty()) return {};
    std::string others;
    std::size_t own = 0;
    for (const auto stock : stocks) {
        if (is_ticked(derived, ticks, stock)) {
            ++own;
        } else {
            others +=
                (others.empty() ? ", and those of " : " and ") + derived.project->stock[stock].name;
        }
    }
    if (!others.empty()) others += ", since they share a bar that is cut in half,";
    return std::string(": the bars of ") + (own > 1 ? "their stocks" : "its stock") + others +
           " then count as bought, at the prices of the plan";
}

std::string tick_hint(const Derived& derived, const std::vector<SawTick>& ticks, bool is_made) {
    if (is_made) return "Cut. Untick to take it back";
    return "Tick when it is cut" + bought_by_tick(derived, ticks);
}

bool has_bars_cut_up(const Derived& derived) {
    return std::ranges::any_of(derived.saw, [](const model::SawBar& bar) {
        if (bar.from != model::BarFrom::saw || bar.is_used_up) return false;
        return std::ranges::none_of(
            bar.cuts, [](const model::SawCut& cut) { return cut.state == CutState::planned; });
    });
}

// Cuts that are planned no more leave their places to those behind them: nobody knows then of which
// was talked.
std::optional<Change> planned_anew(const Derived& derived, SawListState& state) {
    state.spoiled.reset();
    return change_of_all(model::cuts_planned_anew(*derived.project));
}

std::optional<Change> offcuts_racked(const Derived& derived, const model::Catalogue& catalogue) {
    return change_of_all(model::offcuts_racked(*derived.project, catalogue, derived.resolved));
}

std::optional<Change> next_cut_ticked(const Derived& derived,
                                      const model::Catalogue& catalogue,
                                      SawListState& state) {
    const auto next = next_cut(derived, catalogue);
    if (!next) return std::nullopt;
    return ticked(derived, catalogue, state, {*next}, CutState::cut);
}

std::optional<Change> spoiled(const Derived& derived,
                              const model::Catalogue& catalogue,
                              SawListState& state,
                              const SawTick& tick) {
    auto change = ticked(derived, catalogue, state, {tick}, CutState::spoiled);
    const auto bar = std::ranges::find(derived.saw, tick.bar, &model::SawBar::number);
    if (!change || bar == derived.saw.end()) return change;
    const auto& cut = bar->cuts[tick.cut];
    state.spoiled = SpoilTalk{
        .piece = {.place = model::place_when_ticked(*derived.project, derived.saw, tick, {tick}),
                  .mark = cut.mark,
                  .length = cut.length},
        .typed = {},
        .trouble = {}};
    return change;
}

std::optional<Change> next_cut_spoiled(const Derived& derived,
                                       const model::Catalogue& catalogue,
                                       SawListState& state) {
    const auto next = next_cut(derived, catalogue);
    return next ? spoiled(derived, catalogue, state, *next) : std::nullopt;
}

}  // namespace editor
