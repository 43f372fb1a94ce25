// From what a tape measures in a van to the measures of an obstacle, and how well measurements that
// say the same thing twice agree.
#pragma once

#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <vector>

namespace model {

// One measurement against another way to come by it: their difference is the closing error.
struct Closing {
    std::string what;  // "along the van": no trailing stop
    Nm found = 0;      // the sum of the parts
    Nm whole = 0;      // as measured in one go

    Nm error() const { return found - whole; }
    bool operator==(const Closing&) const = default;
};

// Up to a mark of the tape nobody reads better. More than 1/8 in, of a metric tape 3 mm, is a wrong
// reading, a sagging tape or another place than was meant. Common practice.
enum class ClosingGrade { closes, ordinary, measure_again };

ClosingGrade grade_of(const Closing& closing, const engine::TapeStyle& shown);

// "closes to the mark", "1/16 in too much: as good as a tape measures", "7/16 in too little:
// measure again".
std::string closing_words(const Closing& closing, const engine::TapeStyle& shown);

// ---- wheel well ---------------------------------------------------------------------------------

// Lengths as read; what was not measured is none.
struct WellTape {
    std::optional<Nm> start;        // from the datum to its near end
    std::optional<Nm> length;       // along the van
    std::optional<Nm> behind;       // from its far end to the other datum
    std::optional<Nm> room_length;  // from datum to datum
    std::optional<Nm> height;
    std::optional<Nm> reach;      // from the wall at the floor
    std::optional<Nm> top_reach;  // from the wall to where side and top would meet
    std::optional<Nm> across;     // on from there, at the floor, to what lies opposite
    std::optional<Nm> opposite;   // how far that reaches from the other wall; none: it is the wall
    std::optional<Nm> room_width;
    // Where a straightedge on the top crosses one against the side: from there to the metal, in the
    // middle between the two.
    std::optional<Nm> rounding_gap;
};

// Along the van and across it, as far as enough is measured.
std::vector<Closing> well_closings(const WellTape& tape);

// Of its inner side from the vertical, degrees, to a hundredth downward; 0 where nothing says that
// it leans. None where it leans outward over the floor, or by more than 60 degrees.
std::optional<double> well_lean(const WellTape& tape);

// Of the rounding whose gap was measured: its centre lies on the middle line, radius / cos(half the
// angle it turns by) from where the straightedges cross. Plane geometry.
std::optional<Nm> well_rounding(const WellTape& tape);

// Where the well stands in the room.
struct WellPlace {
    Sense inside = Sense::plus;  // plus: at the wall at smaller X
    Nm wall = 0;                 // X of that wall, at the floor
    Nm datum = 0;                // Y from which `start` is measured
    Nm floor = 0;                // Z
    Nm rounding = 0;             // radius of its top edges
    Nm corner = 0;               // radius of its upright edges
};

// The well with all its measures as plain lengths. None where one of start, length, height and
// reach is not measured, or where its lean cannot be.
std::optional<WheelWell> well_as_measured(const WellPlace& place, const WellTape& tape);

// ---- wall ---------------------------------------------------------------------------------------

struct WallTape {
    struct Row {
        std::optional<Nm> height;
        std::optional<Nm> to_wall;   // level from the plumb line
        std::optional<Nm> to_other;  // from the same line to the wall opposite
        std::optional<Nm> across;    // from wall to wall
    };

    std::vector<Row> rows;
};

// The wall with all its measures as plain lengths: its foot is where the first row was measured.
// None where a row lacks its height or its distance, or there is none.
std::optional<WallProfile> wall_as_measured(
    Sense inside, Nm line, Nm from, Nm to, const WallTape& tape);

std::vector<Closing> wall_closings(const WallTape& tape, const engine::TapeStyle& shown);

}  // namespace model
