// The schedules of a project as an outsider reads them: the text of pieces.json and of the tables,
// with nothing known of how they were made.
#pragma once

#include "engine/files/csv.h"
#include "engine/geometry/box.h"
#include "engine/result.h"

#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tests {

using engine::Box;
using engine::Nm;
using engine::Point;
using Direction = std::array<double, 3>;

// Names of files and what is in them.
using SkeletonFiles = std::map<std::string, std::string>;

struct SkeletonHole {
    std::string id;
    Point at{};  // on the plate's face on which its outline lies, world nm
    std::array<Nm, 2> in_plate{};
    Nm diameter = 0;
    std::string operation;
    std::string tap;  // the screw whose thread is cut in it; empty: none
    std::string joint;
    std::string fastener;
};

// Its corners in mm and the directions that can part it from another one.
struct ConvexBody {
    std::optional<Box> box;  // exact, when it is a box along the world's axes
    std::vector<Direction> corners;
    std::vector<Direction> normals;
    std::vector<Direction> edges;
    Box bounds;
};

struct SkeletonPlate {
    std::string leg;
    Point origin{};
    Direction u{};
    Direction v{};
    Direction n{};
    Nm thickness = 0;
    std::vector<std::array<Nm, 2>> outline;
    std::vector<std::array<Nm, 2>> outline_far;  // on the far face where an edge is bevelled
    std::vector<std::vector<std::array<Nm, 2>>> cut_outs;
    std::vector<SkeletonHole> holes;
    std::vector<ConvexBody> bodies;  // what is left of it
    Box bounds;                      // of all of them
};

struct SkeletonPiece {
    std::string id;
    std::string mark;
    std::string hand;
    std::string member;
    std::string frame;
    std::string section;
    std::vector<std::string> joins;  // of a part that a joint needs: its members
    Nm length = 0;
    Direction run{};
    Point datum{};
    std::vector<SkeletonPlate> plates;
};

struct SkeletonStackPlate {
    std::string piece;
    std::string leg;
    Nm thickness = 0;
};

struct SkeletonFastener {
    std::string id;
    std::string joint;
    Point at{};
    Direction axis{};
    std::string spec;
    std::string hold;  // of a screw: "tapped", "nut", "rivet nut"
    std::vector<SkeletonStackPlate> stack;
    Nm grip_least = 0;
    Nm grip_most = 0;
};

struct SkeletonJoint {
    std::string id;
    std::string recipe;
    std::vector<std::string> pieces;
    std::vector<std::size_t> fasteners;  // in Skeleton::fasteners
};

struct Skeleton {
    std::vector<SkeletonPiece> pieces;
    std::vector<SkeletonJoint> joints;
    std::vector<SkeletonFastener> fasteners;
    std::map<std::string, std::size_t> piece_by_id;
    engine::CsvTable cut;
    engine::CsvTable drill;
    engine::CsvTable fastener_table;
    engine::CsvTable findings;
    engine::CsvTable bars;
    engine::CsvTable sheets;

    const SkeletonPiece* piece(const std::string& id) const {
        const auto found = piece_by_id.find(id);
        return found == piece_by_id.end() ? nullptr : &pieces[found->second];
    }
};

// Error: bad_file when a file is missing, cannot be read, or a value is not on a whole nanometre.
engine::Result<Skeleton> read_skeleton(const SkeletonFiles& files);

// The field of a row under that heading; empty when there is no such heading.
std::string_view field(const engine::CsvTable& table,
                       const engine::CsvRow& row,
                       std::string_view heading);

// A decimal number of mm, as exact nanometres; none when it is no such number.
std::optional<Nm> nm_of_mm_text(std::string_view text);

// Whether all its directions lie along the world's axes.
bool is_squared(const SkeletonPlate& plate);

// The member that was stated: "m3" for the piece "m3 part 2".
std::string stated_member(const SkeletonPiece& piece);

// The members that it is a piece of or, of a part, that it joins.
std::vector<std::string> stated_members(const SkeletonPiece& piece);

// Whether it is a foot, by which a member is fixed to the van.
bool is_foot(const SkeletonPiece& piece);

double dot(const Direction& a, const Direction& b);
Direction cross(const Direction& a, const Direction& b);

// How far `p` lies from `from` along a unit direction: exact along the world's axes, otherwise
// rounded to the nanometre.
Nm along(const Point& p, const Point& from, const Direction& direction);

// The axis that a direction lies along, when it is one of the world's.
std::optional<std::size_t> world_axis(const Direction& direction);

}  // namespace tests
