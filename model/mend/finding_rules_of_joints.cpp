// Rules of joints, fasteners, holes and panels.
#include "model/mend/finding_rules.h"

#include <array>

namespace model {
namespace {

constexpr std::string_view edge_and_pitch =
    "edge distance: US Army TM 10-5410-229-13&P, paragraph 5-6 (2 diameters), read; never under "
    "1.5: Aluminum Design Manual 2010 and 2015, J.3.4 and J.4.3, from memory; pitch: NAVEDTRA "
    "14018, p. 13 (never under 3), read; room for the tool: common practice";

constexpr std::string_view three_threads = "shop practice, from memory";

constexpr std::string_view tap_hole =
    "the limits of the minor diameter by ASME B1.1 and ISO 965-1; 65 to 77 per cent of the thread "
    "are usual in aluminium: a carbide tooling page and a tap maker's sheet, read";

constexpr std::array rules{
    FindingRule{"bad_cut_out",
                "A cut-out lies within its sheet and leaves metal of 1/16 in or more to holes and "
                "edges",
                practice},
    FindingRule{"bad_panel", "A sheet has a thickness", of_itself},
    FindingRule{"corner_not_carried",
                "Where rails end at an upright edge of the bays, something carries them: a post, a "
                "leaning member, a brace, a fixed panel, a rail that runs on, or a foot on a wall; "
                "rails that only lap each other let the corner sag",
                practice},
    FindingRule{
        "corner_on_brace",
        "A brace of flat bar keeps a corner square and in its place; weight wants a post, a "
        "leaning member or a fixed panel under it",
        practice},
    FindingRule{"fasteners_meet", "No two fasteners may be in one place", of_itself},
    FindingRule{"few_threads", "A tapped plate must hold the screw by three threads or more",
                three_threads},
    FindingRule{"joint_held_by_other",
                "Where one row of fasteners holds two joints, it is stated at one of them",
                of_itself},
    FindingRule{"large_tap_hole", "A tapped hole is no larger than its plate is thick", practice},
    FindingRule{"long_nose",
                "The body of the setting tool needs room beside the rivet; a nose extension of up "
                "to about 1 in reaches further",
                "a rivet maker's advice page"},
    FindingRule{"loose_end",
                "Each end of a piece is held: a lap with something begins within one and a half "
                "times the width of its section",
                practice},
    FindingRule{"mitre_gapes", "A mitre closes only where both its ends keep their whole cut",
                of_itself},
    FindingRule{"no_drill", "A hole is made by a drill that is at hand and within its limits",
                "the makers' tables of holes in the catalogue, as its rows say"},
    FindingRule{"no_fastener", "The catalogue holds a fastener for plates of this thickness",
                of_itself},
    FindingRule{"no_grip",
                "A blind rivet holds only a stack within its grip, from the least to the most",
                "the rivet makers' grip tables in the catalogue, as its rows say"},
    FindingRule{
        "no_order_of_rivets",
        "The setting tool must reach each joint once its pieces are together, in some order "
        "of all in which they can come",
        practice},
    FindingRule{"no_rivet_nut", "A rivet nut holds only a wall within its grip",
                "the makers' tables in the catalogue, as its rows say"},
    FindingRule{"no_setting_order",
                "The setting tool must reach each joint when it is set: pieces go on in an order "
                "that leaves it room",
                practice},
    FindingRule{"no_such_joint", "What is stated for a joint has to be about members that meet",
                of_itself},
    FindingRule{"no_way_into_place",
                "Each piece comes to its place in a straight line, past all that stands there "
                "already",
                of_itself},
    FindingRule{"not_joined", "All pieces of a frame hang together by fasteners", of_itself},
    FindingRule{"panel_in_parts", "A panel is one sheet", of_itself},
    FindingRule{"panel_is_riveted", "Panels are laid out for blind rivets",
                "a limit of this program"},
    FindingRule{"panel_no_fasteners",
                "Each hole keeps its edge distance and pitch, and the tool its room",
                edge_and_pitch},
    FindingRule{"panel_no_room", "A sheet has to have room between what stands there", of_itself},
    FindingRule{"panel_pitch",
                "A panel's fasteners are no further apart than was asked for; 6 in where nothing "
                "is asked",
                practice},
    FindingRule{"panel_stands_off", "A panel is fastened only to what it touches", of_itself},
    FindingRule{"panel_unfastened", "A fixed panel is fastened to legs behind it", of_itself},
    FindingRule{"recipe_has_no_room",
                "The parts of a joint need room for themselves and for two fasteners with their "
                "edge distance",
                edge_and_pitch},
    FindingRule{"recipe_not_here", "Not every joint can be made of every pair of members",
                of_itself},
    FindingRule{"recipe_of_brace", "A brace lies on what it is fastened to, so no recipe joins it",
                of_itself},
    FindingRule{"rivet_in_removable",
                "A joint that comes apart is held by screws: a rivet can only be drilled out",
                of_itself},
    FindingRule{"rivet_nut_rim", "The rim of a rivet nut stands on the face that it is set into",
                "the makers' tables in the catalogue, as its rows say"},
    FindingRule{"screw_stands_out", "A screw stands out of its thread by no more than its diameter",
                practice},
    FindingRule{"screwed_on_early",
                "What comes apart comes out, and its screws are reached, with all that is riveted "
                "in place",
                practice},
    FindingRule{"set_before", "A rivet can be set only while its tool reaches it", practice},
    FindingRule{"setting_order", "A rivet can be set only while its tool reaches it", practice},
    FindingRule{"splice_has_no_room",
                "A butt lies in the outer thirds of a span, better at a fifth to a quarter of it, "
                "with its backing clear of other members",
                practice},
    FindingRule{
        "splice_lacks_backing",
        "A splice is backed by a piece as thick as the walls that it joins, narrow enough to "
        "lie on them",
        practice},
    FindingRule{"splice_of_too_many", "A member is made of few lengths", practice},
    FindingRule{"spliced", "A butt lies a fifth to a quarter of a span from its support", practice},
    FindingRule{"tap_binds", "The hole to be tapped leaves the thread that the tap is made for",
                tap_hole},
    FindingRule{"thin_rivet",
                "A rivet is 1 to 3 times as thick as the thickest sheet that it holds",
                "NAVEDTRA 14018, p. 13, read"},
    FindingRule{"thread_is_weaker",
                "A thread is as strong as its screw only where the plate is thick enough",
                "stripping at 0.6 of the alloy's strength and, for inch screws, pull-out by the "
                "Aluminum Design Manual, J.5; screws at 60 000 psi (SAE J82) or 420 MPa (ISO "
                "898-1, class 4.8); all from memory"},
    FindingRule{"thread_strips", "The hole to be tapped leaves enough of the thread to hold",
                tap_hole},
    FindingRule{"too_few_fasteners",
                "Each lap has the fasteners that are asked for, each with its edge distance, its "
                "pitch and room for the tool",
                edge_and_pitch},
    FindingRule{"too_short_to_mitre", "A piece is longer than its two mitred ends", of_itself},
    FindingRule{"foot_has_no_room",
                "A foot has room for its angle, its fasteners and a driver above its hole",
                edge_and_pitch},
    FindingRule{"foot_lacks_angle", "A foot is cut from angle of the stock", of_itself},
    FindingRule{"foot_lacks_drill", "The hole of a foot is drilled to the screw's free fit",
                "the tables of clearance holes in the catalogue, as its rows say"},
    FindingRule{"foot_not_outside", "A foot stands at an outer plane of the frame", of_itself},
    FindingRule{"foot_not_square", "A foot sits on a square end", of_itself},
    FindingRule{"feet_to_fix",
                "Before drilling into a vehicle find out what lies behind; how a frame is anchored "
                "for a crash is for those who are licensed for it",
                practice},
};

}  // namespace

std::span<const FindingRule> rules_of_joints() { return rules; }

}  // namespace model
