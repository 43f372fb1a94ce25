#include "model/mend/mend_rows.h"

#include <algorithm>
#include <array>

namespace model {
namespace {

constexpr std::string_view on_the_bench = "it is done on the bench, not in the project";
constexpr std::string_view measure_again = "only the tape can tell; measure it again";
constexpr std::string_view gives_way =
    "which of the pieces gives way is yours to decide: screw it, end it sooner, or turn a leg";
constexpr std::string_view nothing_to_do = "nothing is to be done";
constexpr std::string_view how_it_comes = "how bars come home is yours to decide, under Buy";
constexpr std::string_view you_decide = "only you know what was meant; give it where it is stated";
constexpr std::string_view in_the_list = "prices stand in your own list; write it there";
constexpr std::string_view where_to_go =
    "where things stand in the van is yours to decide: move the frame, or what is in the way";

constexpr std::array table{
    MendRow{"bad_cut_out", other_panel},
    MendRow{"bad_load", take_out},
    MendRow{"bad_name", other_name},
    MendRow{"bad_obstacle", nullptr, measure_again},
    MendRow{"bad_opening", nullptr, measure_again},
    MendRow{"bad_panel", other_panel},
    MendRow{"bad_setting", usual_setting},
    MendRow{"bar_length_refused", fewer_bars},
    MendRow{"bar_not_brought_home", nullptr, how_it_comes},
    MendRow{"bar_without_price", nullptr, in_the_list},
    MendRow{"brace_along_axis", other_place},
    MendRow{"brace_not_flat", other_place},
    MendRow{"brace_on_no_member", other_place},
    MendRow{"brace_without_room", other_place},
    MendRow{"clearance", keep_clear},
    MendRow{"corner_not_carried", post_in_corner},
    MendRow{"corner_on_brace", post_in_corner},
    MendRow{"cut_piece_unused", lay_on_rack},
    MendRow{"does_not_lean", other_place},
    MendRow{"drawer_blocked", nullptr, where_to_go},
    MendRow{"drawer_meets_door", nullptr, where_to_go},
    MendRow{"drawer_meets_drawer", nullptr, where_to_go},
    MendRow{"duplicate_name", other_name},
    MendRow{"fastener_enters", frames_apart},
    MendRow{"fasteners_meet", other_fasteners},
    MendRow{"feet_to_fix", nullptr, on_the_bench},
    MendRow{"few_threads", other_holds},
    MendRow{"foot_has_no_room", foot_elsewhere},
    MendRow{"foot_lacks_angle", foot_elsewhere},
    MendRow{"foot_lacks_drill", foot_elsewhere},
    MendRow{"foot_not_outside", foot_elsewhere},
    MendRow{"foot_not_square", foot_elsewhere},
    MendRow{"formula_cycle", plain_value},
    MendRow{"formula_error", plain_value},
    MendRow{"frame_gap", frames_apart},
    MendRow{"in_the_way", keep_clear},
    MendRow{"inside_obstacle", keep_clear},
    MendRow{"interference", apart},
    MendRow{"joint_held_by_other", no_entry},
    MendRow{"large_tap_hole", other_holds},
    MendRow{"leaning_moved_in", nullptr, nothing_to_do},
    MendRow{"leaning_not_angle", other_place},
    MendRow{"leaning_on_no_member", other_place},
    MendRow{"leaning_without_room", other_place},
    MendRow{"long_nose", other_recipes},
    MendRow{"loose_end", hold_end},
    MendRow{"mitre_gapes", joints_of_member},
    MendRow{"no_bar_long_enough", longer_bars},
    MendRow{"no_bars_offered", longer_bars},
    MendRow{"no_drill", drills_to_get},
    MendRow{"no_fastener", drills_to_get},
    MendRow{"no_grip", other_grips},
    MendRow{"no_length", drills_or_take_out},
    MendRow{"no_name", nullptr, you_decide},
    MendRow{"no_order_of_rivets", nullptr, gives_way},
    MendRow{"no_rivet_nut", other_holds},
    MendRow{"no_setting_order", comes_apart},
    MendRow{"no_such_joint", no_entry},
    MendRow{"no_way_into_place", nullptr, gives_way},
    MendRow{"not_enough_bars", more_bars},
    MendRow{"not_joined", take_out_together},
    MendRow{"nothing_left", take_out},
    MendRow{"opening_binds", lower_or_narrower},
    MendRow{"opening_not_plumbed", nullptr, measure_again},
    MendRow{"opening_open_error", nullptr, measure_again},
    MendRow{"opening_tapers", nullptr, on_the_bench},
    MendRow{"opening_too_low", lower_or_narrower},
    MendRow{"out_of_range", plain_value},
    MendRow{"outside_limits", within_limits},
    MendRow{"panel_in_parts", other_panel},
    MendRow{"panel_is_riveted", other_panel},
    MendRow{"panel_no_fasteners", other_panel},
    MendRow{"panel_no_room", other_panel},
    MendRow{"panel_pitch", other_panel},
    MendRow{"panel_stands_off", nullptr, on_the_bench},
    MendRow{"panel_unfastened", other_panel},
    MendRow{"price_list_not_read", bars_as_stated},
    MendRow{"rank_loop", other_rank},
    MendRow{"recipe_has_no_room", other_recipes},
    MendRow{"recipe_not_here", other_recipes},
    MendRow{"recipe_of_brace", plain_joint},
    MendRow{"rivet_in_removable", plain_joint},
    MendRow{"rivet_nut_rim", other_holds},
    MendRow{"same_place", take_out},
    MendRow{"scan_not_read", nullptr, "the file has to be where the project looks for it"},
    MendRow{"screw_stands_out", nullptr, on_the_bench},
    MendRow{"screwed_on_early", nullptr, gives_way},
    MendRow{"set_before", nullptr, on_the_bench},
    MendRow{"setting_order", nullptr, on_the_bench},
    MendRow{"splice_has_no_room", longer_bars},
    MendRow{"splice_lacks_backing", longer_bars},
    MendRow{"splice_of_too_many", longer_bars},
    MendRow{"spliced", nullptr, nothing_to_do},
    MendRow{"tap_binds", drills_to_get},
    MendRow{"thin_rivet", thicker_fasteners},
    MendRow{"thread_is_weaker", other_holds},
    MendRow{"thread_strips", drills_to_get},
    MendRow{"too_few_fasteners", other_fasteners},
    MendRow{"too_short_to_mitre", joints_of_member},
    MendRow{"unknown_alloy", known_alloy},
    MendRow{"unknown_bay", other_bay},
    MendRow{"unknown_drill", usual_setting},
    MendRow{"unknown_fastener", usual_setting},
    MendRow{"unknown_material", other_panel},
    MendRow{"unknown_plane", other_planes},
    MendRow{"unknown_recipe", usual_setting},
    MendRow{"unknown_screw", usual_setting},
    MendRow{"unknown_section", known_section},
    MendRow{"unknown_stock", other_stock},
    MendRow{"wrong_axis", other_planes},
};

}  // namespace

std::span<const MendRow> mend_rows() { return table; }

const MendRow* mend_row(std::string_view code) {
    const auto at = std::ranges::lower_bound(table, code, {}, &MendRow::code);
    return at == table.end() || at->code != code ? nullptr : &*at;
}

}  // namespace model
