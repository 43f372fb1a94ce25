#include "editor/join_choices.h"

#include "model/resolve/recipe.h"

#include <array>
#include <optional>
#include <utility>

namespace editor {
namespace {

using model::JointOverride;
using model::ScrewHold;

constexpr std::array<ScrewHold, 3> holds{ScrewHold::tapped, ScrewHold::nut, ScrewHold::rivet_nut};

std::string_view name_or_first(const std::string& recipe) {
    return recipe.empty() ? model::recipes().front().name : std::string_view(recipe);
}

std::string capital(std::string_view text) {
    std::string word(text);
    if (!word.empty() && word[0] >= 'a' && word[0] <= 'z') {
        word[0] = static_cast<char>(word[0] - 'a' + 'A');
    }
    return word;
}

// Nothing that would have to be kept.
bool says_nothing(const JointOverride& joint) {
    return joint == JointOverride{.members = joint.members};
}

std::string_view recipe_above(const model::Project& project, const JointName& joint) {
    for (const auto& frame : project.frames) {
        if (frame.name == joint.frame && !frame.recipe.empty()) return frame.recipe;
    }
    return name_or_first(project.shop.recipe);
}

Choice joint_recipe_choice(const model::Project& project,
                           const JointName& name,
                           std::optional<std::string> recipe) {
    auto entry = joint_entry(project, name);
    Choice choice{.is_now = entry.recipe == recipe};
    const std::string where = " at " + words_of(name);
    choice.label = recipe ? capital(*recipe) + where : "Back to the frame's way" + where;
    entry.recipe = std::move(recipe);
    if (!choice.is_now) choice.edits = joint_change(project, name.frame, entry, {}).edits;
    return choice;
}

Choice frame_recipe_choice(const model::Frame& frame, std::string recipe) {
    Choice choice{.is_now = frame.recipe == recipe};
    choice.label = (recipe.empty() ? "The project's way" : capital(recipe)) + " for " + frame.name;
    if (!choice.is_now) {
        choice.edits.emplace_back(model::SetFrameRecipe{frame.name, std::move(recipe)});
    }
    return choice;
}

struct Hold {
    bool removable = false;
    std::optional<ScrewHold> hold;
};

// What holds the screws counts where there are any.
bool is_held_so(const model::JointOverride& joint, const Hold& hold) {
    return joint.removable == hold.removable && (!hold.removable || joint.screw_hold == hold.hold);
}

Choice hold_choice(const model::Project& project, const JointName& name, const Hold& hold) {
    auto entry = joint_entry(project, name);
    Choice choice{.is_now = is_held_so(entry, hold)};
    entry.removable = hold.removable;
    entry.screw_hold = hold.hold;
    choice.label = (hold.removable ? "Screws at " : "For good: ") + words_of(name);
    if (!choice.is_now) choice.edits = joint_change(project, name.frame, entry, {}).edits;
    return choice;
}

Choice named(Choice choice, std::string name, std::string what) {
    choice.name = std::move(name);
    choice.what = std::move(what);
    return choice;
}

std::string hold_sentence(ScrewHold hold) {
    switch (hold) {
        case ScrewHold::tapped:
            return "machine screws in threads that are cut into the far plate";
        case ScrewHold::nut:
            return "machine screws through both, with nuts behind";
        case ScrewHold::rivet_nut:
            return "machine screws in rivet nuts that are set into the far plate";
    }
    return {};
}

}  // namespace

std::string hold_words(ScrewHold hold) {
    switch (hold) {
        case ScrewHold::tapped:
            return "tapped";
        case ScrewHold::nut:
            return "nuts";
        case ScrewHold::rivet_nut:
            return "rivet nuts";
    }
    return {};
}

JointOverride joint_entry(const model::Project& project, const JointName& joint) {
    const auto* stated = stated_joint(project, joint);
    return stated != nullptr ? *stated : JointOverride{.members = joint.members};
}

Change joint_change(const model::Project& project,
                    const std::string& frame,
                    const JointOverride& joint,
                    std::string label) {
    Change change{.label = std::move(label)};
    if (!says_nothing(joint)) {
        change.edits.emplace_back(model::PutJoint{frame, joint});
    } else if (stated_joint(project, {frame, joint.members}) != nullptr) {
        change.edits.emplace_back(model::RemoveJoint{frame, joint.members});
    }
    return change;
}

std::vector<Choice> joint_recipe_choices(const model::Project& project, const JointName& joint) {
    std::vector<Choice> choices{
        named(joint_recipe_choice(project, joint, std::nullopt), "as the frame has it",
              "here that is the " + std::string(recipe_above(project, joint)))};
    for (const auto& recipe : model::recipes()) {
        if (!recipe.is_chosen) continue;
        choices.push_back(named(joint_recipe_choice(project, joint, std::string(recipe.name)),
                                std::string(recipe.name), std::string(recipe.what)));
    }
    return choices;
}

std::vector<Choice> frame_recipe_choices(const model::Project& project, const model::Frame& frame) {
    std::vector<Choice> choices{
        named(frame_recipe_choice(frame, {}), "as the project has it",
              "here that is the " + std::string(name_or_first(project.shop.recipe)))};
    for (const auto& recipe : model::recipes()) {
        if (!recipe.is_chosen) continue;
        choices.push_back(named(frame_recipe_choice(frame, std::string(recipe.name)),
                                std::string(recipe.name), std::string(recipe.what)));
    }
    return choices;
}

std::vector<Choice> shop_recipe_choices(const model::Project& project) {
    std::vector<Choice> choices;
    for (const auto& recipe : model::recipes()) {
        if (!recipe.is_chosen) continue;
        Choice choice{.name = std::string(recipe.name),
                      .what = std::string(recipe.what),
                      .label = capital(recipe.name) + " for the whole project",
                      .is_now = name_or_first(project.shop.recipe) == recipe.name};
        auto shop = project.shop;
        shop.recipe = recipe.name;
        if (!choice.is_now) choice.edits.emplace_back(model::SetShop{std::move(shop)});
        choices.push_back(std::move(choice));
    }
    return choices;
}

std::vector<Choice> joint_hold_choices(const model::Project& project, const JointName& joint) {
    std::vector<Choice> choices{
        named(hold_choice(project, joint, {}), "for good",
              "with what the project fastens with; taken apart by drilling "
              "it out"),
        named(hold_choice(project, joint, {true, std::nullopt}), "comes apart, held as in the shop",
              "there that is: " + hold_words(project.shop.screw_hold))};
    for (const auto hold : holds) {
        choices.push_back(named(hold_choice(project, joint, {true, hold}),
                                "comes apart, " + hold_words(hold), hold_sentence(hold)));
    }
    return choices;
}

Change change_of(const Choice& choice) { return {.edits = choice.edits, .label = choice.label}; }

}  // namespace editor
