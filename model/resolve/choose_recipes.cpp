#include "model/resolve/choose_recipes.h"

#include "model/resolve/recipe_row.h"
#include "model/resolve/set_in.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <set>
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
                 const Unsuited& unsuited,
                 bool is_asked_here) {
    const auto name = [&](Index bar) { return frame.members[s.bars[bar].member].name; };
    const std::string made_as{recipe_row(stands_in_for(s, meeting)).told.name};
    // Where a lap is meant and the two cannot lap either, what stands in for it is.
    std::string instead = unsuited.use_instead;
    constexpr std::string_view lap = "a staggered lap";
    if (instead.rfind(lap, 0) == 0) instead.replace(0, lap.size(), "a " + made_as);
    return {.code = "recipe_not_here",
            .severity = is_asked_here ? Severity::warning : Severity::note,
            .concerns = {{SubjectKind::joint, frame.name,
                          name(meeting.upper) + " + " + name(meeting.lower)}},
            .what = std::string(recipe) + " cannot be made here: " + unsuited.why,
            .mend = "choose " + instead + " here; until then it is made as a " + made_as};
}

// Ends of bars that are cut aslant: one cut each.
class CutEnds {
public:
    explicit CutEnds(std::size_t bars) : is_cut_(bars) {}

    // Takes the ends with which the two meet; false when one of them is taken.
    bool take(const Meeting& meeting) {
        bool* upper = end_of(meeting.upper, meeting.upper_meets);
        bool* lower = end_of(meeting.lower, meeting.lower_meets);
        if (upper == nullptr || lower == nullptr || *upper || *lower) return false;
        *upper = *lower = true;
        return true;
    }

private:
    bool* end_of(Index bar, Meets meets) {
        if (meets == Meets::at_from) return &is_cut_[bar][0];
        return meets == Meets::at_to ? &is_cut_[bar][1] : nullptr;
    }

    std::vector<std::array<bool, 2>> is_cut_;
};

// The forms of bar that parts can be cut from.
class Forms {
public:
    explicit Forms(const PartRoom& room) {
        for (const auto& shape : room.shapes) {
            if (shape.section == no_index) continue;
            const auto form = room.catalogue.sections[shape.section].form;
            has_angle_ |= form == SectionForm::angle;
            has_flat_ |= form == SectionForm::flat;
        }
    }

    Unsuited missing_for(const RecipeRow& row) const {
        if (row.cut_from == PartForm::angle && !has_angle_) {
            return {"there is no angle among the stock to cut a cleat from",
                    "flush, or add an angle to the stock and a corner cleat"};
        }
        if (row.cut_from == PartForm::flat && !has_flat_) {
            return {"there is no flat bar among the stock to cut a strap from",
                    "flush, or add flat bar to the stock and a strap"};
        }
        return {};
    }

private:
    bool has_angle_ = false;
    bool has_flat_ = false;
};

// Which member is set in deeper than the other of the two, and by its laps with which members.
Unsuited why_deeper(const FrameSkeleton& s, const Frame& frame, const Meeting& meeting) {
    const std::size_t axis = common_axis(s.bars[meeting.upper], s.bars[meeting.lower]);
    const auto depth = [&](Index bar) {
        return s.bars[bar].set_in[across_index(s.bars[bar], axis)];
    };
    const Index deeper =
        depth(meeting.lower) > depth(meeting.upper) ? meeting.lower : meeting.upper;
    std::string others;
    for (const auto& other : s.meetings) {
        if (other.lower != deeper || !share_a_face(s.bars[other.upper], s.bars[deeper])) continue;
        const Bar& upper = s.bars[other.upper];
        if (common_axis(upper, s.bars[deeper]) != axis) continue;
        const std::size_t u = across_index(upper, axis);
        const Nm behind = upper.set_in[u] + upper.shape->layer[section_axis(upper, u)];
        if (behind != depth(deeper)) continue;
        others += (others.empty() ? "" : ", ") + frame.members[upper.member].name;
    }
    return {
        frame.members[s.bars[deeper].member].name + " lies deeper than the other, behind " + others,
        "a staggered lap, or the same for its other joints in this face,"};
}

std::set<std::array<Index, 2>> pairs_of(std::span<const NoRoom> no_room) {
    std::set<std::array<Index, 2>> pairs;
    for (const auto& one : no_room) pairs.insert({one.upper, one.lower});
    return pairs;
}

bool asks_for_recipe(const JointOverride* own) {
    return own != nullptr && own->recipe && find_recipe(*own->recipe).has_value();
}

// Of bars that only come near each other nothing need be said.
bool touch(const FrameSkeleton& s, const Meeting& meeting) {
    return engine::touches(body(s.bars[meeting.upper]), body(s.bars[meeting.lower]));
}

}  // namespace

std::uint8_t stands_in_for(const FrameSkeleton& s, const Meeting& meeting) {
    const RecipeRow& lap = recipe_row(0);
    const auto unsuited = lap.unsuited(s, meeting);
    return find_recipe(unsuited.made_as).value_or(std::uint8_t{0});
}

void choose_recipes(FrameSkeleton& s,
                    const PartRoom& room,
                    JointOverrides& overrides,
                    std::span<const NoRoom> no_room,
                    std::vector<Finding>& findings) {
    const auto made_otherwise = pairs_of(no_room);
    const Frame& frame = room.project.frames[s.frame];
    const Forms forms(room);
    std::vector<Finding> told_once;  // the shop's own is told where the shop is checked
    const auto of_shop =
        recipe_or(0, room.project.shop.recipe, {SubjectKind::shop, {}, {}}, told_once);
    const auto of_frame =
        recipe_or(of_shop, frame.recipe, {SubjectKind::frame, {}, frame.name}, findings);
    const std::size_t first_not_here = findings.size();
    CutEnds cut_ends(s.bars.size());
    for (auto& meeting : s.meetings) {
        const std::array members{s.bars[meeting.upper].member, s.bars[meeting.lower].member};
        const auto* own = overrides.peek(members);
        const bool is_asked_here = asks_for_recipe(own) && touch(s, meeting);
        if (is_asked_here) overrides.find(members);
        meeting.recipe = is_asked_here ? *find_recipe(*own->recipe) : of_frame;
        if (made_otherwise.contains({meeting.upper, meeting.lower})) {
            meeting.recipe = stands_in_for(s, meeting);
            continue;
        }
        const RecipeRow& row = recipe_row(meeting.recipe);
        auto unsuited = row.unsuited == nullptr ? Unsuited{} : row.unsuited(s, meeting);
        const bool is_last_resort = meeting.recipe == stands_in_for(s, meeting);
        if (unsuited.why.empty() && !is_last_resort) unsuited = forms.missing_for(row);
        if (unsuited.why.empty() && row.cut_ends != nullptr && !cut_ends.take(meeting)) {
            unsuited = {"one of the two ends is mitred with another member already",
                        "a staggered lap"};
        }
        if (unsuited.why.empty()) continue;
        if ((!unsuited.is_silent && touch(s, meeting)) || is_asked_here) {
            findings.push_back(not_here(s, frame, meeting, row.told.name, unsuited, is_asked_here));
        }
        meeting.recipe = stands_in_for(s, meeting);
    }
    merge_alike(findings, first_not_here);
}

bool lap_what_is_not_in_one_layer(FrameSkeleton& s,
                                  const Frame& frame,
                                  const JointOverrides& overrides,
                                  std::vector<Finding>& findings) {
    const std::size_t first_not_here = findings.size();
    for (auto& meeting : s.meetings) {
        const RecipeRow& row = recipe_row(meeting.recipe);
        if (!row.in_one_layer) continue;
        const Bar& upper = s.bars[meeting.upper];
        const Bar& lower = s.bars[meeting.lower];
        const std::array members{upper.member, lower.member};
        const std::size_t axis = common_axis(upper, lower);
        if (upper.set_in[across_index(upper, axis)] == lower.set_in[across_index(lower, axis)]) {
            continue;
        }
        findings.push_back(not_here(s, frame, meeting, row.told.name, why_deeper(s, frame, meeting),
                                    asks_for_recipe(overrides.peek(members))));
        meeting.recipe = stands_in_for(s, meeting);
    }
    const bool is_any = findings.size() > first_not_here;
    merge_alike(findings, first_not_here);
    return is_any;
}

void cut_ends(FrameSkeleton& s, Nm end_gap) {
    for (const auto& meeting : s.meetings) {
        const RecipeRow& row = recipe_row(meeting.recipe);
        if (row.cut_ends != nullptr) row.cut_ends(s, meeting, end_gap);
    }
}

}  // namespace model
