// The project: everything the user states, and nothing that follows from it. Plain values compared
// with ==; things refer to one another by name. Lengths are kept as the formulas that were typed.
#pragma once

#include "engine/measure/formula.h"
#include "engine/measure/tape.h"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace model {

// A formula as typed: "width/2 - 1/8 in". Which quantity it must give is said beside each field.
using Formula = std::string;

enum class Axis { x, y, z };  // in a frame: x across its width, y along its depth, z up

constexpr std::size_t index_of(Axis axis) { return static_cast<std::size_t>(axis); }

// The two axes other than `run`, in the order x, y, z.
constexpr std::array<Axis, 2> across(Axis run) {
    if (run == Axis::x) return {Axis::y, Axis::z};
    if (run == Axis::y) return {Axis::x, Axis::z};
    return {Axis::x, Axis::y};
}

enum class Sense { minus, plus };  // along an axis, towards smaller or larger values

constexpr int sign_of(Sense sense) { return sense == Sense::plus ? 1 : -1; }

// ---- dimensions ---------------------------------------------------------------------------------

// A named value that everything else may refer to.
struct Dimension {
    std::string name;
    engine::QuantityKind kind = engine::QuantityKind::length;
    Formula formula;
    std::string note;
    std::optional<Formula> least;
    std::optional<Formula> most;

    bool operator==(const Dimension&) const = default;
};

// ---- room: X across the van, Y along it, Z up ---------------------------------------------------

using Place = std::array<Formula, 3>;  // lengths along X, Y, Z

struct BoxObstacle {
    Place least;
    Place most;

    bool operator==(const BoxObstacle&) const = default;
};

// A box whose top edges are rounded to a radius and whose inner side may lean.
struct WheelWell {
    Place least;
    Place most;
    Formula top_radius = "0";
    Formula corner_radius = "0";  // of the two upright edges of its inner side, seen from above
    Axis inner_side = Axis::x;    // the axis across which the leaning side looks
    Sense inner_sense = Sense::plus;
    Formula lean = "0";  // angle from the vertical

    bool operator==(const WheelWell&) const = default;
};

// A wall given by its inset at heights, swept along Y. Between two heights it is straight, above
// the last one and below the first it goes on upright.
struct WallProfile {
    struct Offset {
        Formula height;
        Formula inset;

        bool operator==(const Offset&) const = default;
    };

    // Another section of the wall further along; between two it is straight.
    struct Station {
        Formula along;  // Y, between `from` and `to`
        std::vector<Offset> offsets;

        bool operator==(const Station&) const = default;
    };

    Formula at;                  // X of the wall's foot
    Sense inside = Sense::plus;  // the side on which the room is
    Formula from;                // along Y
    Formula to;
    std::vector<Offset> offsets;  // at `from`, and as far as the first station or all along
    std::vector<Station> stations;

    bool operator==(const WallProfile&) const = default;
};

// A ceiling given by how far it comes down at places across the van, swept along Y. Between two
// places it is straight, beyond the last ones it goes on level.
struct CeilingProfile {
    struct Offset {
        Formula across;  // X
        Formula drop;    // below `at`

        bool operator==(const Offset&) const = default;
    };

    struct Station {
        Formula along;  // Y, between `from` and `to`
        std::vector<Offset> offsets;

        bool operator==(const Station&) const = default;
    };

    Formula at;    // Z of the level from which drops are measured
    Formula from;  // along Y
    Formula to;
    std::vector<Offset> offsets;  // at `from`, and as far as the first station or all along
    std::vector<Station> stations;

    bool operator==(const CeilingProfile&) const = default;
};

struct CylinderObstacle {
    Place foot;
    Axis along = Axis::z;
    Formula radius;
    Formula length;

    bool operator==(const CylinderObstacle&) const = default;
};

// What a door sweeps that turns about an upright hinge: an upright sector of a cylinder.
struct DoorSwing {
    Place hinge;           // at its lower end
    Formula width;         // from the hinge to the door's free edge
    Formula height;        // of the door
    Formula closed = "0";  // angles of the door seen from above, counter-clockwise from X
    Formula open = "90";

    bool operator==(const DoorSwing&) const = default;
};

// A triangle mesh in a file of its own, kept by path; a relative one starts at the project's
// folder. Its points are turned about X, then about Y, then about Z, and then shifted.
struct ScannedObstacle {
    std::string file;
    engine::LengthUnit unit = engine::LengthUnit::millimetre;
    Place at{"0", "0", "0"};
    std::array<Formula, 3> turn{"0", "0", "0"};  // angles about X, Y and Z

    bool operator==(const ScannedObstacle&) const = default;
};

using ObstacleShape = std::variant<BoxObstacle,
                                   WheelWell,
                                   WallProfile,
                                   CeilingProfile,
                                   CylinderObstacle,
                                   DoorSwing,
                                   ScannedObstacle>;

struct Obstacle {
    std::string name;
    ObstacleShape shape;
    bool stays_clear = false;  // nothing is there, but nothing may stand there: a walkway, a hatch
    Formula clearance;  // length that pieces keep from it; empty: as the shop says, and 0 from what
                        // only stays clear
    std::string note;

    bool operator==(const Obstacle&) const = default;
};

// ---- stock --------------------------------------------------------------------------------------

struct BarOffer {
    Formula length;
    std::optional<double> price;  // for one bar, in the project's currency
    std::optional<int> limit;     // how many can be had

    bool operator==(const BarOffer&) const = default;
};

struct Offcut {
    Formula length;
    int count = 1;

    bool operator==(const Offcut&) const = default;
};

enum class CutState { planned, cut, spoiled };

// A piece that is to be cut from a certain bar, or has been. It is told by what can be measured on
// it, so that it stays itself when members are renamed and marks change.
struct BarCut {
    Formula length;
    std::string ends = "square; square";  // at the datum end and at the far end, by end_words
    std::string mark;                     // that it is cut for, as a note
    bool is_opposite = false;             // of the opposite hand, as a note
    CutState state = CutState::planned;
    Formula took;             // off the bar, of one that was cut shorter since; empty: its length
    Formula measured;         // of a spoiled one: how long it is; empty: nobody has said
    bool is_on_rack = false;  // of a spoiled one: as an offcut of what was measured

    bool operator==(const BarCut&) const = default;
};

// A bar or an offcut that the saw works off: what is cut from it, in that order from its datum end.
struct BarAtSaw {
    Formula length;  // before the first cut
    bool was_offcut = false;
    bool is_used_up = false;  // what was left of it lies on the rack, or is scrap
    int purchase = 0;         // that it came with, in Project::purchases; 0: it was there already
    std::vector<BarCut> cuts;

    bool operator==(const BarAtSaw&) const = default;
};

// What members are cut from: a section of the catalogue in an alloy, and how it can be bought.
struct Stock {
    std::string name;
    std::string section;  // id in the catalogue: "angle 1 x 1 x 1/8"
    std::string alloy;    // id in the catalogue: "6063-T52"
    std::vector<BarOffer> bars;
    std::vector<Offcut> offcuts;
    std::vector<Offcut> at_home;  // whole bars that are bought already and lie idle
    std::vector<BarAtSaw> at_saw;

    bool operator==(const Stock&) const = default;
};

// ---- frames -------------------------------------------------------------------------------------

// A named plane across one axis of the frame. Moving it moves all that stands on it.
struct Plane {
    std::string name;  // unique in its frame, over all axes
    Axis axis = Axis::x;
    Formula position;  // length from the frame's origin

    bool operator==(const Plane&) const = default;
};

enum class BayUse { open, drawer, door, heavy_load };

// A box between planes that belongs to the cabinet: each pair is (least, most) along its axis.
struct Bay {
    std::string name;
    std::array<std::string, 2> x;
    std::array<std::string, 2> y;
    std::array<std::string, 2> z;
    BayUse use = BayUse::open;
    std::string note;

    bool operator==(const Bay&) const = default;
};

// Heel: the outer corner of the section lies on the line where the two planes meet. Root: the inner
// corner does, and the metal is on the far side of the planes; for re-entrant edges.
enum class Seat { heel, root };

// A piece of bar on the line where two planes meet, from one plane to another along its run.
struct Member {
    std::string name;  // unique in its frame
    std::string stock;
    Axis run = Axis::x;
    std::array<std::string, 2> on;  // planes across the axes across(run), in that order
    std::string from;               // planes across the run axis
    std::string to;
    std::array<Sense, 2> legs{Sense::plus, Sense::plus};  // where it extends to along across(run)
    Seat seat = Seat::heel;
    // Which side of the section lies on the first plane. Straight: leg a of an angle, the broad
    // face of a flat, the web of a channel, side a of a tube. Turned: the other one (of a flat, its
    // edge; then its broad face lies on the second plane).
    bool turned = false;
    std::optional<int> rank;       // at corners: lower numbers lie outside. Posts 10, x-rails 20,
                                   // y-rails 30 unless said here
    Formula allowance_from = "0";  // length by which the end is held back from where it would be
    Formula allowance_to = "0";
    bool foot_from = false;  // a foot for fixing to floor or wall at that end
    bool foot_to = false;
    std::string note;

    bool operator==(const Member&) const = default;
};

enum class FaceSide { inside, outside };

// How a brace is cut: to the outer edge of the members at its nodes, with a second cut where it
// runs into a corner; or square, as far as it then stays within that edge.
enum class BraceEnds { outline, square };

// A flat bar between two nodes of one face.
struct Diagonal {
    std::string name;
    std::string stock;
    std::string face;                 // the plane it lies on
    std::array<std::string, 2> from;  // planes across the face's other two axes, axis order
    std::array<std::string, 2> to;
    FaceSide side = FaceSide::inside;
    BraceEnds ends = BraceEnds::outline;
    std::string note;

    bool operator==(const Diagonal&) const = default;
};

// A post or rail of angle that leans: its heel runs from one node of a face to another, one leg
// lies along that face behind the level members' legs, the other one stands off it into the frame.
// Its ends are cut along the planes of its nodes across which it runs the most.
struct Leaning {
    std::string name;
    std::string stock;
    std::string face;                 // the plane along which its first leg lies
    std::array<std::string, 2> from;  // planes across the face's other two axes, axis order
    std::array<std::string, 2> to;
    // Which way the leg along the face points, seen along the one of the face's axes that the
    // member runs less along.
    Sense leg = Sense::plus;
    std::string note;

    bool operator==(const Leaning&) const = default;
};

// What holds a machine screw: threads tapped into the far plate, a nut behind it, or a rivet nut
// set into it.
enum class ScrewHold { tapped, nut, rivet_nut };

// What differs at one joint from the rule; a joint is known by the two members that meet.
struct JointOverride {
    std::array<std::string, 2> members;
    std::optional<std::string> recipe;    // how they meet: "flush", see model/resolve/recipe.h
    std::optional<std::string> fastener;  // id in the catalogue: "blind rivet 1/8"
    std::optional<int> count;             // fasteners in each lap
    bool removable = false;               // comes apart: held by machine screws
    std::optional<ScrewHold> screw_hold;  // none: as the shop says
    std::string note;

    bool operator==(const JointOverride&) const = default;
};

enum class PanelFit { inset, overlay };

// Fixed: fastened to the members that it touches. The others are cut, and hung by the maker.
enum class PanelUse { fixed, door, drawer_front };

struct CutOut {
    std::string name;
    std::array<Formula, 2>
        least;  // lengths from the panel's lower corner, in the face's axis order
    std::array<Formula, 2> most;
    bool is_vent = false;

    bool operator==(const CutOut&) const = default;
};

// Sheet on one face of a bay.
struct Panel {
    std::string name;
    std::string bay;
    Axis face_axis = Axis::y;
    Sense face_side = Sense::minus;
    std::string material;  // id in the catalogue, of an alloy or of another sheet
    Formula thickness;
    PanelFit fit = PanelFit::overlay;
    PanelUse use = PanelUse::fixed;
    Formula clear_gap;     // length, round a door or a drawer front; empty: as the shop says
    std::string fastener;  // id in the catalogue; empty: as the shop says
    Formula pitch;         // length, greatest between fasteners; empty: as the shop says
    std::vector<CutOut> cut_outs;
    std::string note;

    bool operator==(const Panel&) const = default;
};

struct Load {
    std::string name;
    double mass_kg = 0.0;
    std::variant<std::string, Place> where;  // a bay's name, or a point in the frame
    std::string note;

    bool operator==(const Load&) const = default;
};

// The real opening that a frame goes into, measured with a tape; the frame's axes are used.
struct MeasuredOpening {
    std::string name;
    Axis through = Axis::y;         // x or y: the widths run along the other one
    Formula height;                 // over which the sides were measured
    std::array<Formula, 3> widths;  // between the sides: at the bottom, half-way up, at the top
    // From lower left to upper right, from lower right to upper left; empty: not measured. Left is
    // where the widths' axis begins.
    std::array<Formula, 2> diagonals;
    // How far the top of the left and of the right side stands further in than its bottom, by a
    // plumb line; less than 0: further out; empty: not measured.
    std::array<Formula, 2> plumb{"0", "0"};
    std::string note;

    bool operator==(const MeasuredOpening&) const = default;
};

// One cabinet skeleton, with its own axes, somewhere in the room.
struct Frame {
    std::string name;
    Place origin{"0", "0", "0"};  // in the room
    int quarter_turns = 0;        // about Z, counter-clockwise seen from above, 0 .. 3
    std::string recipe;           // how its members meet; empty: as the shop says
    std::vector<Plane> planes;
    std::vector<Bay> bays;
    std::vector<Member> members;
    std::vector<Diagonal> diagonals;
    std::vector<Leaning> leaning;
    std::vector<JointOverride> joints;
    std::vector<Panel> panels;
    std::vector<Load> loads;
    std::vector<MeasuredOpening> openings;
    std::string note;

    bool operator==(const Frame&) const = default;
};

// ---- shop ---------------------------------------------------------------------------------------

// How this maker works: saw, tape, drill press, rivet tool, and the rules of layout.
struct Shop {
    Formula kerf = "3/32 in";     // common practice for a 10 in blade; measure your own
    Formula end_trim = "1/2 in";  // squared off each mill end; common practice
    // What the saw's vice must hold of a bar when its last piece is cut; common practice.
    Formula least_held = "3 in";
    Formula least_offcut = "12 in";  // shorter ones are scrap; common practice
    Formula end_gap;     // between a piece's end and what it stops at; empty: one mark of the tape
    Formula graduation;  // the marks that holes lie on; empty: those of the tape, see resolve
    double edge_distance = 2.0;  // hole centre to edge, in fastener diameters, 1.5 or more
    double pitch = 3.0;          // centre to centre, in fastener diameters, 3 or more
    std::string recipe;          // how members meet; empty: the staggered lap
    Formula gusset_thickness;    // empty: as thick as the thicker wall that it laps
    std::string gusset_alloy = "5052-H32";  // id in the catalogue
    // Round an inset panel, a door, and between panels that adjoin. Default: common practice.
    Formula panel_gap = "1/16 in";
    Formula panel_pitch = "6 in";  // greatest between a panel's fasteners; common practice
    int per_lap = 2;               // fasteners in a lap
    std::string fastener;          // id in the catalogue; empty: by the plates' thickness
    std::string screw;  // of joints that come apart, id in the catalogue; empty: by the thickness
    ScrewHold screw_hold = ScrewHold::tapped;
    // What fixes a foot, id in the catalogue; empty: 1/4 in, of metric stock M6. Common practice.
    std::string foot_screw;
    Formula nose_radius = "7/32 in";    // of the setting tool at the work
    Formula nose_reach = "1/2 in";      // straight part of the nose
    Formula housing_radius = "1/2 in";  // of the tool behind the nose
    std::vector<std::string> drills;    // names at hand; empty: any in the catalogue
    Formula clearance = "1/4 in";       // that pieces keep from the room; common practice
    Formula frame_gap = "0";            // that frames keep from one another
    double spare_percent = 10.0;        // fasteners bought beyond what is needed
    double tax_percent = 0.0;
    double delivery_fee = 0.0;
    std::string currency;
    std::string supplier;  // that is bought from; empty: as the stock's own bars say

    bool operator==(const Shop&) const = default;
};

// ---- suppliers ----------------------------------------------------------------------------------

// How bars come home. What is fetched is no longer than what the price list says can be brought
// home; what is delivered costs its delivery.
enum class WayHome { delivered, fetched };

// Somebody who sells, with a price list that the user keeps as a file.
struct Supplier {
    std::string name;
    std::string prices;  // the file, from the folder that the project lies in
    WayHome way = WayHome::delivered;
    std::string note;

    bool operator==(const Supplier&) const = default;
};

// ---- the whole ----------------------------------------------------------------------------------

struct Project {
    std::string name;
    std::string note;
    engine::TapeStyle shown;  // how lengths are shown; a bare number is in its unit
    std::vector<Dimension> dimensions;
    std::vector<Obstacle> room;
    std::vector<Stock> stock;
    std::vector<Frame> frames;
    std::vector<Supplier> suppliers;
    // What was bought, by numbers of the table of purchases that lies beside the project's file:
    // what that table has under another number was undone, or never saved.
    std::vector<int> purchases;
    Shop shop;

    bool operator==(const Project&) const = default;
};

}  // namespace model

// Made once, in project_lists.cpp: each file that copies a project would make them all anew.
extern template class std::vector<model::BarAtSaw>;
extern template class std::vector<model::BarCut>;
extern template class std::vector<model::BarOffer>;
extern template class std::vector<model::Bay>;
extern template class std::vector<model::CutOut>;
extern template class std::vector<model::Diagonal>;
extern template class std::vector<model::Dimension>;
extern template class std::vector<model::Frame>;
extern template class std::vector<model::JointOverride>;
extern template class std::vector<model::Leaning>;
extern template class std::vector<model::Load>;
extern template class std::vector<model::MeasuredOpening>;
extern template class std::vector<model::Member>;
extern template class std::vector<model::Obstacle>;
extern template class std::vector<model::Offcut>;
extern template class std::vector<model::Panel>;
extern template class std::vector<model::Plane>;
extern template class std::vector<model::Stock>;
extern template class std::vector<model::Supplier>;
