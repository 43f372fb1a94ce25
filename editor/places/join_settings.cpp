#include "editor/places/join_settings.h"

#include "editor/join_choices.h"
#include "editor/joint_group.h"
#include "editor/places/choice_button.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

namespace editor {
namespace {

using model::ScrewHold;

constexpr int most_in_a_lap = 12;
constexpr std::array<ScrewHold, 3> holds{ScrewHold::tapped, ScrewHold::nut, ScrewHold::rivet_nut};

// Entries of a list with what each of them stands for.
template <class Value>
struct Options {
    std::vector<ListEntry> entries;
    std::vector<Value> values;

    void add(std::string text, Value value) {
        entries.push_back({std::move(text)});
        values.push_back(std::move(value));
    }
    void add_heading(std::string text) {
        entries.push_back({std::move(text), true});
        values.emplace_back();
    }
    // What the project says though no list offers it is shown all the same.
    std::size_t index_of(const Value& value, const std::string& text) {
        for (std::size_t i = 0; i < values.size(); ++i) {
            if (!entries[i].is_heading && values[i] == value) return i;
        }
        add(text, value);
        return values.size() - 1;
    }
};

template <class Value>
std::optional<Value> draw_options(const std::string& name,
                                  const std::string& word,
                                  Options<Value>& options,
                                  const Value& now,
                                  const std::string& text_of_now) {
    const std::size_t chosen = options.index_of(now, text_of_now);
    const auto clicked = draw_choice_button(name, word, options.entries, chosen);
    if (!clicked || *clicked == chosen) return std::nullopt;
    return options.values[*clicked];
}

template <class Screws>
void add_screws(Options<std::string>& options, const Screws& screws) {
    for (const auto& screw : screws) options.add(screw.id, screw.id);
}

Options<std::string> fasteners_for(const model::Catalogue& catalogue, bool has_removable) {
    Options<std::string> options;
    options.add("as the project has it", {});
    if (!has_removable) {
        options.add_heading("Blind rivets");
        for (const auto& rivet : catalogue.rivets) options.add(rivet.id, rivet.id);
        options.add_heading("Screws");
    }
    add_screws(options, catalogue.screws);
    return options;
}

// What all of them have; none where they differ.
template <class Value>
std::optional<Value> common(const std::vector<model::JointOverride>& entries,
                            Value model::JointOverride::*field) {
    const Value& first = entries.front().*field;
    const bool are_alike =
        std::ranges::all_of(entries, [&](const auto& entry) { return entry.*field == first; });
    if (!are_alike) return std::nullopt;
    return std::optional<Value>{std::in_place, first};  // also where that is none
}

constexpr const char* not_alike = "not the same for all of them";

// Where they differ, any choice is another one.
template <class Value>
std::optional<Value> draw_common(const std::string& name,
                                 const std::string& word,
                                 Options<Value>& options,
                                 const std::optional<Value>& now,
                                 const std::string& text_of_now) {
    if (now) return draw_options(name, word, options, *now, text_of_now);
    options.add_heading(not_alike);
    const auto clicked =
        draw_choice_button(name, word, options.entries, options.entries.size() - 1);
    if (!clicked) return std::nullopt;
    return options.values[*clicked];
}

std::optional<Change> draw_joint_fastener(const Derived& derived,
                                          const model::Catalogue& catalogue,
                                          const JointGroup& group) {
    auto options = fasteners_for(
        catalogue, std::ranges::any_of(group.entries, [](const auto& it) { return it.removable; }));
    const auto field = common(group.entries, &model::JointOverride::fastener);
    const auto now = field ? std::optional(field->value_or(std::string())) : std::nullopt;
    const auto chosen = draw_common(std::string("Fastener of the joint"), "Fastener", options, now,
                                    now.value_or(std::string()));
    if (!chosen) return std::nullopt;
    return joint_group_change(
        *derived.project, group.joints,
        [&](model::JointOverride& entry) {
            entry.fastener = chosen->empty() ? std::nullopt : std::optional(*chosen);
        },
        (chosen->empty() ? "The project's fastener" : "Fasten with " + *chosen) + " at " +
            words_of(group.joints));
}

std::optional<Change> draw_joint_count(const Derived& derived, const JointGroup& group) {
    const auto now = common(group.entries, &model::JointOverride::count);
    Options<std::optional<int>> options;
    options.add("as the project has it: " + std::to_string(derived.project->shop.per_lap), {});
    for (int i = 1; i <= most_in_a_lap; ++i) options.add(std::to_string(i), i);
    const std::string text = now && *now ? std::to_string(**now) : std::string();
    const auto chosen =
        draw_common(std::string("Count of the joint"), "In each lap", options, now, text);
    if (!chosen) return std::nullopt;
    return joint_group_change(
        *derived.project, group.joints, [&](model::JointOverride& entry) { entry.count = *chosen; },
        "Number of fasteners at " + words_of(group.joints));
}

Change shop_change(model::Shop shop, std::string label) {
    return {.edits = {model::SetShop{std::move(shop)}}, .label = std::move(label)};
}

std::optional<Change> draw_shop_count(const model::Shop& shop) {
    Options<int> options;
    for (int i = 1; i <= most_in_a_lap; ++i) options.add(std::to_string(i), i);
    const auto chosen = draw_options(std::string("Count"), "In each lap", options, shop.per_lap,
                                     std::to_string(shop.per_lap));
    if (!chosen) return std::nullopt;
    auto changed = shop;
    changed.per_lap = *chosen;
    return shop_change(std::move(changed), std::to_string(*chosen) + " fasteners in each lap");
}

std::optional<Change> draw_shop_screw(const model::Shop& shop, const model::Catalogue& catalogue) {
    Options<std::string> options;
    options.add("screw to suit the thickness", {});
    add_screws(options, catalogue.screws);
    const auto chosen =
        draw_options(std::string("Screw"), "Screws", options, shop.screw, shop.screw);
    if (!chosen) return std::nullopt;
    auto changed = shop;
    changed.screw = *chosen;
    return shop_change(std::move(changed),
                       "Screw with " + (chosen->empty() ? "what suits the thickness" : *chosen));
}

std::optional<Change> draw_shop_hold(const model::Shop& shop) {
    Options<ScrewHold> options;
    for (const auto hold : holds) options.add(hold_words(hold), hold);
    const auto chosen = draw_options(std::string("Screw hold"), "Held by", options, shop.screw_hold,
                                     hold_words(shop.screw_hold));
    if (!chosen) return std::nullopt;
    auto changed = shop;
    changed.screw_hold = *chosen;
    return shop_change(std::move(changed), "Screws held by: " + hold_words(*chosen));
}

}  // namespace

std::optional<Change> draw_joint_settings(const Derived& derived,
                                          const model::Catalogue& catalogue,
                                          const JointGroup& group) {
    auto change = draw_joint_fastener(derived, catalogue, group);
    keep_first(change, draw_joint_count(derived, group));
    return change;
}

std::optional<Change> draw_shop_settings(const Derived& derived,
                                         const model::Catalogue& catalogue) {
    const auto& shop = derived.project->shop;
    auto change = draw_shop_count(shop);
    keep_first(change, draw_shop_screw(shop, catalogue));
    keep_first(change, draw_shop_hold(shop));
    return change;
}

std::optional<Change> draw_gusset_alloy(const Derived& derived, const model::Catalogue& catalogue) {
    const auto& shop = derived.project->shop;
    Options<std::string> options;
    for (const auto& alloy : catalogue.alloys) options.add(alloy.id, alloy.id);
    const auto chosen = draw_options(std::string("Gusset alloy"), "Gusset alloy", options,
                                     shop.gusset_alloy, shop.gusset_alloy);
    if (!chosen) return std::nullopt;
    auto changed = shop;
    changed.gusset_alloy = *chosen;
    return shop_change(std::move(changed), "Gussets of " + *chosen);
}

}  // namespace editor
