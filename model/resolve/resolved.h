// Everything that follows from a project: pieces in their places, joints, fasteners, holes, marks.
// Lists refer to one another by index. Coordinates are whole nanometres in the frame's own axes;
// to_room takes them into the van.
#pragma once

#include "engine/geometry/box.h"
#include "engine/measure/formula.h"
#include "model/project/project.h"
#include "model/resolve/finding.h"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace model {

using engine::Box;
using engine::Length;
using engine::Nm;
using engine::Point;
using Index = std::uint32_t;

inline constexpr Index no_index = 0xFFFFFFFFU;

// ---- values -------------------------------------------------------------------------------------

struct ResolvedPlane {
    Axis axis = Axis::x;
    std::optional<Nm> position;  // none when its formula failed

    bool operator==(const ResolvedPlane&) const = default;
};

struct ResolvedFrame {
    Point origin{};
    int quarter_turns = 0;
    std::vector<ResolvedPlane> planes;  // as in Frame::planes
    Index first_piece = 0;              // its pieces are contiguous
    Index piece_count = 0;

    bool operator==(const ResolvedFrame&) const = default;
};

Point to_room(const ResolvedFrame& frame, const Point& in_frame);
std::array<int, 3> direction_to_room(const ResolvedFrame& frame, const std::array<int, 3>& d);

// Shop settings as lengths.
struct ResolvedShop {
    Nm kerf = 0;
    Nm end_trim = 0;
    Nm least_held = 0;
    Nm least_offcut = 0;
    Nm end_gap = 0;
    Nm graduation = 0;
    Nm nose_radius = 0;
    Nm nose_reach = 0;
    Nm housing_radius = 0;
    Nm panel_gap = 0;
    Nm panel_pitch = 0;
    Nm clearance = 0;
    Nm frame_gap = 0;
    Nm gusset_thickness = 0;  // 0: as thick as the thicker wall that it laps

    bool operator==(const ResolvedShop&) const = default;
};

// ---- pieces -------------------------------------------------------------------------------------

// Corners in a plate's own plane, nm: [0] along the piece's run from its datum end, [1] across the
// wall from its heel side. An edge joins each corner to the next, and the last one to the first.
using Corners = std::vector<std::array<Nm, 2>>;

// The shape of a plate: counter-clockwise with [0] to the right and [1] upward; what is cut out of
// it clockwise. No two edges cross or touch but at their common corner.
struct Outline {
    Corners corners;
    std::vector<Corners> cut_outs;

    bool operator==(const Outline&) const = default;
};

// One wall of a piece: a box of the wall's thickness, or what an outline leaves of it.
struct Plate {
    Box box;                       // the least that holds it
    std::uint8_t wall = 0;         // index into section_plates(section)
    std::uint8_t normal_axis = 0;  // axis in the frame across which it faces
    std::int8_t inward = 1;        // from its outer face into the metal along that axis
    bool is_root_fillet = false;   // keep-out only
    Index outline = no_index;      // in Resolved::outlines, of its outer face; none: the box's own
    Index outline_far = no_index;  // of its inner face, where an edge is bevelled; none: the same

    bool operator==(const Plate&) const = default;
};

// What a piece is for. Those up to the foot are cut from bar and have a stock and a section; the
// others are parts of sheet with one plate. Cleats, straps, backings, feet and gussets are made by
// the recipe of a joint.
enum class PieceKind { bar, brace, leaning, cleat, strap, backing, foot, shim, gusset, panel };

constexpr bool is_of_sheet(PieceKind kind) { return kind >= PieceKind::shim; }

// Stated from node to node of a face: it leans, and is fastened to what it lies against there.
constexpr bool is_between_nodes(PieceKind kind) {
    return kind == PieceKind::brace || kind == PieceKind::leaning;
}

enum class Hand { none, as_drawn, opposite };

// How a piece of bar ends. The long point of the end lies at the piece's end; a sloping cut recedes
// from there, and a notched wall ends short of the cut.
struct PieceEnd {
    // By how much the cut recedes for each length along section axes a and b; 0, 0: square. The
    // long point is where the section reaches furthest against the slope.
    std::array<double, 2> slope{};
    // By how much each wall, as far as it is no part of another wall or of its root fillet, is
    // notched back from a square end; 0: not.
    std::array<Nm, 4> wall_back{};

    bool operator==(const PieceEnd&) const = default;
};

// Directions of a piece that does not lie along the axes of its frame: unit vectors in the frame.
// Run and section axis a lie in one of its faces, b across that.
struct Lean {
    std::array<double, 3> run{};  // from the datum end
    std::array<double, 3> a{};    // section axes
    std::array<double, 3> b{};
    // By plate, of a piece whose plates have no outline: from where to where each lies along a.
    std::array<std::array<Nm, 2>, 6> along_a{};

    bool operator==(const Lean&) const = default;
};

struct Piece {
    PieceKind kind = PieceKind::bar;
    Index frame = 0;
    Index member = no_index;  // in its frame; of all kinds but bar: no_index
    // Of what a recipe makes: the members that it joins, higher rank first; of a foot, a backing or
    // a piece that joins a member to itself twice the same one.
    std::array<Index, 2> serves{no_index, no_index};
    // Of a brace: in Frame::diagonals; of a leaning member: in Frame::leaning; of a panel: in
    // Frame::panels.
    Index stated = no_index;
    Index part = 0;            // 0 .. for the pieces of a split member, in order along its run
    Index stock = no_index;    // in the project; of a part of sheet: no_index
    Index section = no_index;  // in the catalogue; of a part of sheet: no_index
    Axis run = Axis::x;
    int run_sense = 1;  // along `run` from the datum end to the far end
    // Section axes in the frame: section a points along across axis `a_axis` with `a_sense`, b
    // along the other one with `b_sense`.
    Axis a_axis = Axis::y;
    int a_sense = 1;
    int b_sense = 1;
    Point datum{};                  // heel corner of the datum end (section origin)
    Nm length = 0;                  // along the run, after trimming
    Box extents;                    // of all its plates
    std::array<Plate, 6> plates{};  // a shim has one
    std::uint8_t plate_count = 0;
    Index first_hole = 0;            // its holes are contiguous in Resolved::holes, by wall, gauge,
    Index hole_count = 0;            // then distance
    std::array<PieceEnd, 2> ends{};  // datum end, far end
    Index lean = no_index;           // in Resolved::leans; none: along the frame's axes
    Index mark = no_index;

    Hand hand = Hand::none;

    std::span<const Plate> walls() const { return {plates.data(), plate_count}; }

    bool operator==(const Piece&) const = default;
};

// ---- joints, fasteners, holes -------------------------------------------------------------------

enum class HoleOperation { drill, pilot, tap_drill, tap, clearance, match_drill, countersink };

std::string_view name_of(HoleOperation operation);  // "drill", "tap drill", "match-drill", ...

struct Hole {
    Index piece = 0;
    std::uint8_t wall = 0;
    Nm from_datum = 0;  // along the run from the datum end
    Nm gauge = 0;       // across the wall from the heel side
    Nm diameter = 0;
    Index drill = no_index;  // in the catalogue
    HoleOperation operation = HoleOperation::drill;
    Index tap = no_index;  // in Catalogue::screws: the thread cut in it after drilling
    // What goes through it, and the other piece it lines up with, which is no shim: one that is not
    // itself match-drilled, where there is one. no_index: a hole for fixing to the van, with no
    // mate.
    Index fastener = 0;
    Index mate = 0;

    bool operator==(const Hole&) const = default;
};

struct StackPlate {
    Index piece = 0;
    std::uint8_t wall = 0;
    Nm thickness = 0;

    bool operator==(const StackPlate&) const = default;
};

// How a fastener is known in the catalogue.
struct FastenerSpec {
    enum class Kind { blind_rivet, screw_tapped, screw_through, screw_in_rivet_nut };
    Kind kind = Kind::blind_rivet;
    Index index = no_index;  // in Catalogue::rivets or Catalogue::screws
    Index grip = no_index;   // in BlindRivet::grips, or MachineScrew::lengths
    Index nut = no_index;    // in Catalogue::rivet_nuts

    bool operator==(const FastenerSpec&) const = default;
};

struct Fastener {
    Index joint = 0;
    FastenerSpec spec;
    Point at{};                         // under the head, on the outer face of the first plate
    std::uint8_t axis = 0;              // frame axis it lies along
    std::int8_t drive = 1;              // sense from the head into the stack along that axis
    std::array<StackPlate, 3> stack{};  // head first; a shim may lie between two plates
    std::uint8_t stack_count = 2;
    Nm grip = 0;  // total of the stack
    Nm grip_least = 0;
    Nm grip_most = 0;

    bool operator==(const Fastener&) const = default;
};

// Where two plates touch face to face.
struct Joint {
    Index frame = 0;
    std::array<Index, 2> pieces{};  // higher rank (lying outside) first
    std::array<std::uint8_t, 2> walls{};
    Index shim = no_index;  // piece between the two
    Box lap;                // flat: lo == hi along the normal axis (of the first plate's
                            // side when a shim lies between)
    std::uint8_t normal_axis = 0;
    Index first_fastener = 0;
    Index fastener_count = 0;
    Index wanted = 0;         // fasteners asked for
    std::uint8_t recipe = 0;  // in recipes()
    // A brace or a leaning member on top, through which the fasteners go as well.
    Index brace = no_index;
    // Of one of these on a wall, and of a panel where either is cut away: in
    // Resolved::lap_polygons, the area in which they touch; the lap is the least box that holds it.
    Index polygon = no_index;

    bool operator==(const Joint&) const = default;
};

// What is free between the members behind a door or a drawer front: nanometres along the two axes
// of its face, in order.
struct ClearOpening {
    Index piece = 0;
    std::array<Nm, 2> size{};

    bool operator==(const ClearOpening&) const = default;
};

// ---- marks --------------------------------------------------------------------------------------

// Identical pieces share a mark. The first piece in project order is the pattern: the holes listed
// for the mark are that piece's holes; every other piece's datum and run are turned so that its own
// holes have the same distances and gauges (mirrored for the opposite hand).
struct Mark {
    std::string name;    // "A1"
    Index pattern = 0;   // piece
    Index as_drawn = 0;  // how many pieces
    Index opposite = 0;

    bool operator==(const Mark&) const = default;
};

// ---- the whole ----------------------------------------------------------------------------------

struct Resolved {
    std::vector<engine::Result<engine::Quantity>> dimensions;  // as in Project::dimensions
    ResolvedShop shop;
    std::vector<ResolvedFrame> frames;
    std::vector<Piece> pieces;
    std::vector<Outline> outlines;
    std::vector<Lean> leans;
    std::vector<Joint> joints;
    // Counter-clockwise, of a brace convex: nm along the two axes of the frame across the joint's
    // normal, in order.
    std::vector<std::vector<std::array<double, 2>>> lap_polygons;
    std::vector<Fastener> fasteners;
    std::vector<Hole> holes;
    std::vector<ClearOpening> openings;
    std::vector<Mark> marks;
    std::vector<Finding> findings;

    std::span<const Hole> holes_of(const Piece& piece) const {
        return std::span(holes).subspan(piece.first_hole, piece.hole_count);
    }
    std::span<const Fastener> fasteners_of(const Joint& joint) const {
        return std::span(fasteners).subspan(joint.first_fastener, joint.fastener_count);
    }
};

}  // namespace model

// Made once, in resolved_lists.cpp.
extern template class std::vector<model::ResolvedPlane>;
extern template class std::vector<model::ResolvedFrame>;
extern template class std::vector<model::Piece>;
extern template class std::vector<model::Outline>;
extern template class std::vector<model::Lean>;
extern template class std::vector<model::Joint>;
extern template class std::vector<model::Fastener>;
extern template class std::vector<model::Hole>;
extern template class std::vector<model::ClearOpening>;
extern template class std::vector<model::Mark>;
