#include "model/resolve/choose_recipes.h"

#include "model/resolve/recipe_row.h"

#include <string>
#include <utility>

namespace model {
namespace {

std::uint8_t recipe_or(std::uint8_t otherwise,
                       const std::string& name,
                       Subject where,
                       std::vector<Finding>& findings) {
    if (name.empty()) return otherwise;
    if (const auto found = find_recipe(name)) return *found;
    findings.push_back({.code = "unknown_recipe",
                        .severity = Severity::warning,
                        .concerns = {std::move(where)},
                        .what = "there is no recipe \"" + name + "\"",
                        .mend = "choose one of: " + recipe_names() +
                                "; until then members meet by the " +
                                std::string(recipe_row(otherwise).told.name)});
    return otherwise;
}

Finding not_here(const FrameSkeleton& s,
                 const Frame& frame,
                 const Meeting& meeting,
                 std::string_view recipe,
                 const Unsuited& unsuited) {
    const auto name = [&](Index bar) { return frame.members[s.bars[bar].member].name; };
    return {.code = "recipe_not_here",
            .severity = Severity::warning,
            .concerns = {{SubjectKind::joint, frame.name,
                          name(meeting.upper) + " + " + name(meeting.lower)}},
            .what = std::string(recipe) + " cannot be made here: " + unsuited.why,
            .mend = "use " + unsuited.use_instead + " here; until then it is a staggered lap"};
}

}  // namespace

void choose_recipes(FrameSkeleton& s,
                    const Project& project,
                    const Frame& frame,
                    const JointOverrides& overrides,
                    std::vector<Finding>& findings) {
    std::vector<Finding> told_once;  // the shop's own is told where the shop is checked
    const auto of_shop = recipe_or(0, project.shop.recipe, {SubjectKind::shop, {}, {}}, told_once);
    const auto of_frame =
        recipe_or(of_shop, frame.recipe, {SubjectKind::frame, {}, frame.name}, findings);
    for (auto& meeting : s.meetings) {
        const auto* own =
            overrides.peek({s.bars[meeting.upper].member, s.bars[meeting.lower].member});
        const bool is_asked_here =
            own != nullptr && own->recipe && find_recipe(*own->recipe).has_value();
        meeting.recipe = is_asked_here ? *find_recipe(*own->recipe) : of_frame;
        const RecipeRow& row = recipe_row(meeting.recipe);
        if (row.unsuited == nullptr) continue;
        const auto unsuited = row.unsuited(s, meeting);
        if (unsuited.why.empty()) continue;
        if (!unsuited.is_silent || is_asked_here) {
            findings.push_back(not_here(s, frame, meeting, row.told.name, unsuited));
        }
        meeting.recipe = 0;
    }
}

void cut_ends(FrameSkeleton& s, Nm end_gap) {
    for (const auto& meeting : s.meetings) {
        const RecipeRow& row = recipe_row(meeting.recipe);
        if (row.cut_ends != nullptr) row.cut_ends(s, meeting, end_gap);
    }
}

}  // namespace model
