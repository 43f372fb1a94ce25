#include "editor/places/saw_place.h"

#include "editor/bench_desk.h"
#include "editor/bench_saw.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/saw_changes.h"
#include "editor/places/saw_list.h"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace editor {
namespace {

// "A1 from bar 1, 2 x A7 from bar 2".
std::string cuts_in_words(const Derived& derived, const std::vector<model::SawTick>& cuts) {
    std::map<std::pair<int, std::string>, int> counts;  // by bar and mark
    for (const auto& tick : cuts) {
        const auto bar = std::ranges::find(derived.saw, tick.bar, &model::SawBar::number);
        ++counts[{tick.bar, bar->cuts[tick.cut].mark}];
    }
    std::string words;
    for (const auto& [cut, count] : counts) {
        words += words.empty() ? "" : ", ";
        if (count > 1) words += std::to_string(count) + " x ";
        words += cut.second + " from bar " + std::to_string(cut.first);
    }
    return words;
}

// What stands here as it was, and is no more: to be told, or to be reworked at the bench.
std::optional<Change> draw_reworked(const Derived& derived,
                                    const model::Catalogue& catalogue,
                                    BenchDesk& bench) {
    const ItemScope items("saw");
    const auto said = [](const std::string& name, const std::string& words) {
        draw_wrapped(words, Type::text, colour::amber);
        log_item(name, words);
    };
    const auto waits = words_of_reworkable(bench, derived);
    if (!waits.empty())
        said("to rework at the bench",
             "Before it is cut anew: the bench can rework " + waits +
                 ". Say so there once it is done, under Make > Bench: \"It is reworked\"");
    const auto untold = words_of_untold(bench, derived);
    std::optional<Change> change;
    if (!untold.empty()) {
        said("reworked at the bench", "Reworked at the bench, but not here: " + untold);
        if (draw_button("tell the saw", {.text = "Tell the saw"}))
            change = cuts_told(bench, derived, catalogue);
        draw_hint("Their cuts become what the bench has made of them");
    }
    if (!waits.empty() || !untold.empty()) draw_rule();
    return change;
}

std::optional<Change> draw_cut_at_bench(const Derived& derived,
                                        const model::Catalogue& catalogue,
                                        MakeState& state) {
    const auto cuts = cuts_to_tick(state.bench.get(), derived, catalogue);
    if (cuts.empty()) return std::nullopt;
    const ItemScope items("saw");
    const auto words = "Ticked as cut at the bench, but not here: " + cuts_in_words(derived, cuts);
    draw_wrapped(words, Type::text, colour::amber);
    log_item("cut at the bench", words);
    std::optional<Change> change;
    if (draw_button("tick what the bench has cut", {.text = "Tick what the bench has cut"}))
        change = ticked(derived, catalogue, state.saw, cuts, model::CutState::cut);
    draw_hint("Then they are not planned again" + bought_by_tick(derived, cuts));
    draw_rule();
    return change;
}

}  // namespace

std::optional<Change> draw_saw_place(const Derived& derived,
                                     const model::Catalogue& catalogue,
                                     MakeState& state,
                                     Selection& selection) {
    auto change = draw_cut_at_bench(derived, catalogue, state);
    if (state.bench && !state.bench->ticks.pieces.empty())
        keep_first(change, draw_reworked(derived, catalogue, *state.bench));
    if (auto one = draw_saw_list(derived, catalogue, state.saw, selection)) change = std::move(one);
    return change;
}

}  // namespace editor
