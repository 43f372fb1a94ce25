// Rules of the room, of measured openings and of the bars that can be had.
#include "model/mend/finding_rules.h"

#include <array>

namespace model {
namespace {

constexpr std::array rules{
    FindingRule{"bad_obstacle", "An obstacle is a solid with length, width and height", of_itself},
    FindingRule{"bad_opening", "An opening has a height and widths above nothing", of_itself},
    FindingRule{"bar_length_refused", "The length of a bar has to be readable", of_itself},
    FindingRule{"bar_not_brought_home",
                "What is fetched or delivered is no longer than the price list says can come home",
                "your own price list"},
    FindingRule{"bar_without_price",
                "A bar whose price nobody knows is not weighed against those that have one",
                "your own price list"},
    FindingRule{"clearance",
                "Pieces keep the clearance that is asked for from what stands in the room; 1/4 in "
                "where nothing else is asked",
                practice},
    FindingRule{
        "cut_piece_unused",
        "What was cut is used where a piece of its length and ends is needed; lengths agree "
        "within 0.1 mm",
        practice},
    FindingRule{"drawer_blocked", "A drawer can be drawn out by its whole depth", practice},
    FindingRule{"drawer_meets_door", "A drawer and a door do not pass through each other",
                of_itself},
    FindingRule{"drawer_meets_drawer", "Two drawers do not pass through each other", of_itself},
    FindingRule{"fastener_enters", "Heads and tails of fasteners need their place too", of_itself},
    FindingRule{"frame_gap", "Frames keep the gap from one another that is asked for",
                "your own setting"},
    FindingRule{"in_the_way", "What must stay clear stays clear", "your own statement"},
    FindingRule{"inside_obstacle", "Nothing can stand where something else is", of_itself},
    FindingRule{"no_bar_long_enough", "A piece is cut from one bar, between its two trimmed ends",
                of_itself},
    FindingRule{"no_bars_offered", "Pieces are cut from bars that can be had", of_itself},
    FindingRule{"not_enough_bars", "There are no more bars than can be had", "your own limit"},
    FindingRule{"opening_binds",
                "A square frame goes in only where the narrowest place is wider than it",
                of_itself},
    FindingRule{"opening_not_plumbed",
                "Widths alone do not tell which way the sides of an opening lean", of_itself},
    FindingRule{"opening_open_error",
                "Measures of one opening that follow from each other agree within what a tape "
                "held by hand is off by",
                practice},
    FindingRule{"opening_tapers", "Between straight posts and leaning sides there are gaps",
                of_itself},
    FindingRule{"opening_too_low", "A frame goes in only where it is no higher than the opening",
                of_itself},
    FindingRule{"price_list_not_read",
                "What is bought from a supplier is planned by its price list", of_itself},
    FindingRule{"scan_not_read", "Only what is read can be kept clear of", of_itself},
};

}  // namespace

std::span<const FindingRule> rules_of_room() { return rules; }

}  // namespace model
