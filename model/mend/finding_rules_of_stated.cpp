// Rules of what is stated: names, formulas, settings, and members that lie together.
#include "model/mend/finding_rules.h"

#include <array>

namespace model {
namespace {

constexpr std::string_view what_is_named = "What is named has to be there";

constexpr std::array rules{
    FindingRule{"bad_load", "A mass is nothing or more", of_itself},
    FindingRule{"bad_name", "A formula must be able to use a dimension's name", of_itself},
    FindingRule{"bad_setting",
                "Settings lie within what can be worked with: edge distance 1.5 diameters or more, "
                "pitch 3 or more, 1 to 12 fasteners in a lap, lengths not below nothing",
                "edge distance: Aluminum Design Manual 2010 and 2015, J.3.4 and J.4.3, from "
                "memory; pitch: NAVEDTRA 14018, p. 13, read; the others follow of themselves"},
    FindingRule{"brace_along_axis",
                "A brace runs aslant: one that is level or upright holds no corner square",
                practice},
    FindingRule{"brace_not_flat", "A brace lies flat on members and is cut from flat bar",
                practice},
    FindingRule{"brace_on_no_member", "A brace lies against members of its face", of_itself},
    FindingRule{"brace_without_room", "A brace has a length between what stands at its ends",
                of_itself},
    FindingRule{"does_not_lean", "A leaning member runs aslant; others are plain members",
                of_itself},
    FindingRule{"duplicate_name", "A name belongs to one thing of a kind", of_itself},
    FindingRule{"formula_cycle", "A formula cannot stand on itself", of_itself},
    FindingRule{"formula_error", "A formula has to give a value of its kind", of_itself},
    FindingRule{"interference", "Two pieces cannot be in one place", of_itself},
    FindingRule{"leaning_moved_in",
                "A leaning member stands clear of what is at its nodes; where it then lies counts",
                of_itself},
    FindingRule{"leaning_not_angle", "A leaning member is cut from angle", practice},
    FindingRule{"leaning_on_no_member", "A leaning member is fastened to members of its face",
                of_itself},
    FindingRule{"leaning_without_room", "A leaning member has a length between what it stops at",
                of_itself},
    FindingRule{"no_length", "A piece, and a screw, has a length", of_itself},
    FindingRule{"no_name", "What has no name cannot be referred to", of_itself},
    FindingRule{"nothing_left", "A member has a length between those that it meets", of_itself},
    FindingRule{"out_of_range", "A length is no longer than 1 km", "a limit of this program"},
    FindingRule{"outside_limits", "A dimension stays between its least and its most",
                "your own limits"},
    FindingRule{"rank_loop",
                "Of members that meet one lies outside the other: posts above x-rails above "
                "y-rails, and what ends on another below it",
                practice},
    FindingRule{"same_place", "Two pieces cannot be in one place", of_itself},
    FindingRule{"unknown_alloy", what_is_named, of_itself},
    FindingRule{"unknown_bay", what_is_named, of_itself},
    FindingRule{"unknown_drill", what_is_named, of_itself},
    FindingRule{"unknown_fastener", what_is_named, of_itself},
    FindingRule{"unknown_material", what_is_named, of_itself},
    FindingRule{"unknown_plane", what_is_named, of_itself},
    FindingRule{"unknown_recipe", what_is_named, of_itself},
    FindingRule{"unknown_screw", what_is_named, of_itself},
    FindingRule{"unknown_section", what_is_named, of_itself},
    FindingRule{"unknown_stock", what_is_named, of_itself},
    FindingRule{"wrong_axis", "A plane is used across the axis that it lies across", of_itself},
};

}  // namespace

std::span<const FindingRule> rules_of_stated() { return rules; }

}  // namespace model
