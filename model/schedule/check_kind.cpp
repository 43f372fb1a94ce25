#include "model/schedule/check_kind.h"

#include <cstddef>
#include <map>
#include <span>

namespace model {
namespace {

constexpr std::array<std::string_view, 5> of_measured{
    "bad_obstacle", "bad_opening", "opening_not_plumbed", "opening_open_error", "scan_not_read"};

constexpr std::array<std::string_view, 21> of_stated{
    "bad_load",      "bad_name",       "bad_setting",   "duplicate_name",   "formula_cycle",
    "formula_error", "no_length",      "no_such_joint", "out_of_range",     "outside_limits",
    "unknown_alloy", "unknown_bay",    "unknown_drill", "unknown_fastener", "unknown_material",
    "unknown_plane", "unknown_recipe", "unknown_screw", "unknown_section",  "unknown_stock",
    "wrong_axis"};

constexpr std::array<std::string_view, 3> of_apart{"interference", "nothing_left", "same_place"};

constexpr std::array<std::string_view, 6> of_ends{"brace_on_no_member", "corner_not_carried",
                                                  "corner_on_brace",    "leaning_on_no_member",
                                                  "loose_end",          "not_joined"};

constexpr std::array<std::string_view, 18> of_joints{"brace_along_axis",
                                                     "brace_not_flat",
                                                     "brace_without_room",
                                                     "does_not_lean",
                                                     "joint_held_by_other",
                                                     "leaning_moved_in",
                                                     "leaning_not_angle",
                                                     "leaning_without_room",
                                                     "mitre_gapes",
                                                     "rank_loop",
                                                     "recipe_has_no_room",
                                                     "recipe_not_here",
                                                     "recipe_of_brace",
                                                     "splice_has_no_room",
                                                     "splice_lacks_backing",
                                                     "splice_of_too_many",
                                                     "spliced",
                                                     "too_short_to_mitre"};

constexpr std::array<std::string_view, 15> of_fasteners{
    "fasteners_meet", "few_threads",  "large_tap_hole",     "no_drill",      "no_fastener",
    "no_grip",        "no_rivet_nut", "rivet_in_removable", "rivet_nut_rim", "screw_stands_out",
    "tap_binds",      "thin_rivet",   "thread_is_weaker",   "thread_strips", "too_few_fasteners"};

constexpr std::array<std::string_view, 7> of_setting{
    "long_nose",        "no_order_of_rivets", "no_setting_order", "no_way_into_place",
    "screwed_on_early", "set_before",         "setting_order"};

constexpr std::array<std::string_view, 8> of_panels{
    "bad_cut_out",        "bad_panel",     "panel_in_parts", "panel_is_riveted",
    "panel_no_fasteners", "panel_no_room", "panel_pitch",    "panel_stands_off"};

constexpr std::array<std::string_view, 6> of_feet{"feet_to_fix",      "foot_has_no_room",
                                                  "foot_lacks_angle", "foot_lacks_drill",
                                                  "foot_not_outside", "foot_not_square"};

constexpr std::array<std::string_view, 5> of_room{"clearance", "fastener_enters", "frame_gap",
                                                  "in_the_way", "inside_obstacle"};

constexpr std::array<std::string_view, 3> of_drawers{"drawer_blocked", "drawer_meets_door",
                                                     "drawer_meets_drawer"};

constexpr std::array<std::string_view, 3> of_openings{"opening_binds", "opening_tapers",
                                                      "opening_too_low"};

constexpr std::array<std::string_view, 8> of_bars{
    "bar_length_refused", "bar_not_brought_home", "bar_without_price", "cut_piece_unused",
    "no_bar_long_enough", "no_bars_offered",      "not_enough_bars",   "price_list_not_read"};

std::span<const std::string_view> codes_of(CheckKind kind) {
    switch (kind) {
        case CheckKind::measured:
            return of_measured;
        case CheckKind::stated:
            return of_stated;
        case CheckKind::apart:
            return of_apart;
        case CheckKind::ends:
            return of_ends;
        case CheckKind::joints:
            return of_joints;
        case CheckKind::fasteners:
            return of_fasteners;
        case CheckKind::setting:
            return of_setting;
        case CheckKind::panels:
            return of_panels;
        case CheckKind::feet:
            return of_feet;
        case CheckKind::room:
            return of_room;
        case CheckKind::drawers:
            return of_drawers;
        case CheckKind::openings:
            return of_openings;
        case CheckKind::bars:
            return of_bars;
    }
    return {};
}

std::map<std::string_view, CheckKind> kinds_of_codes() {
    std::map<std::string_view, CheckKind> kinds;
    for (const auto& row : check_rows) {
        for (const auto code : codes_of(row.kind)) kinds.emplace(code, row.kind);
    }
    return kinds;
}

}  // namespace

constexpr std::array<CheckRow, 13> check_rows{{
    {CheckKind::measured, "The room as measured",
     "Whether obstacles, scans and openings have a shape, and whether the measures of an opening "
     "agree among themselves.",
     "measure to look at again", "measures to look at again"},
    {CheckKind::stated, "What is stated",
     "Whether every formula gives a value within its limits, and every name is known and used "
     "once. What cannot be read is left out, and nothing of it is checked.",
     "thing to state anew", "things to state anew"},
    {CheckKind::apart, "Pieces keep apart",
     "Whether any two pieces enter each other or lie in the same place, and whether something is "
     "left of each between those that it meets.",
     "place to free where pieces enter each other", "places to free where pieces enter each other"},
    {CheckKind::ends, "Ends are held",
     "Whether each end of a piece laps something that it is fastened to, whether something carries "
     "each corner, and whether each frame hangs together.",
     "loose end to close", "loose ends to close"},
    {CheckKind::joints, "Joints can be made",
     "Whether the recipe of each joint suits how the bars lie, and whether its gussets, cleats, "
     "straps and splices have room.",
     "joint to make otherwise", "joints to make otherwise"},
    {CheckKind::fasteners, "Fasteners and edge distances",
     "Whether as many fasteners as asked for have room in each lap with their edge distance and "
     "pitch, whether their grip suits the stack, and whether the threads hold.",
     "fastening to put right", "fastenings to put right"},
    {CheckKind::setting, "Each can be set",
     "Whether nose and housing of the tool reach each head, and in which order.",
     "fastener to set from elsewhere", "fasteners to set from elsewhere"},
    {CheckKind::panels, "Panels",
     "Whether each sheet has room in its face, lies against members and can be fastened, and "
     "whether its cut-outs lie in it.",
     "panel to change", "panels to change"},
    {CheckKind::feet, "Feet", "Whether feet have room, an angle to be cut from and a drill.",
     "foot to change", "feet to change"},
    {CheckKind::room, "Fits in the room",
     "The least distance of each piece, with heads and tails of its fasteners, from obstacles, "
     "walls and other frames, against what is wanted.",
     "place to clear in the room", "places to clear in the room"},
    {CheckKind::drawers, "Drawers come out",
     "Whether each drawer comes all the way out past the room, other frames, doors and drawers. "
     "What stands in its own frame is not looked at.",
     "drawer to clear the way for", "drawers to clear the way for"},
    {CheckKind::openings, "Goes into its opening",
     "Whether the frame, plumb and square, goes into the opening as it was measured.",
     "opening to fit", "openings to fit"},
    {CheckKind::bars, "Bars to cut it from",
     "Whether each piece comes out of a bar that can be had.", "bar to find", "bars to find"},
}};

const CheckRow& row_of(CheckKind kind) { return check_rows[static_cast<std::size_t>(kind)]; }

std::optional<CheckKind> check_of(std::string_view finding_code) {
    static const auto known = kinds_of_codes();
    const auto at = known.find(finding_code);
    if (at == known.end()) return std::nullopt;
    return at->second;
}

CheckCounts count_by_check(const std::vector<Finding>& findings) {
    CheckCounts counts{};
    for (const auto& finding : findings) {
        const auto kind = check_of(finding.code).value_or(CheckKind::stated);
        auto& count = counts[static_cast<std::size_t>(kind)];
        switch (finding.severity) {
            case Severity::error:
                ++count.errors;
                break;
            case Severity::warning:
                ++count.warnings;
                break;
            case Severity::note:
                ++count.notes;
                break;
        }
    }
    return counts;
}

}  // namespace model
