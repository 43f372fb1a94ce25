// The order in which the pieces of each frame are put together: flat parts on the bench first, then
// what joins them, panels, screws that come apart, and last the fixing to the van.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"
#include "model/schedule/square.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace model {

enum class AssemblyWork {
    flat_on_bench,  // a sub-assembly that lies in one plane of the frame
    joined_on,      // pieces and sub-assemblies put on what stands
    panels,
    screwed_on,    // what comes apart again
    put_on_loose,  // the same, where the screws of all of it are set in later steps
    fixed_to_van,  // through the holes of its feet
};

// "flat on the bench", "joined on", "panels", "screwed on", "put on loose", "fixed to the van"
std::string_view name_of(AssemblyWork work);

// A unit vector in the frame's own axes: the way that something travels into its place.
using Travel = std::array<double, 3>;

// Something is brought to its place in a straight line from afar.
struct AssemblyMove {
    std::vector<Index> pieces;  // one, or all those of a sub-assembly
    Index made_in = no_index;   // of a sub-assembly: its last step, in AssemblyOrder::steps
    Travel along{};             // zero: it is laid down first, nothing stands there yet
    // The step whose pins or fasteners first hold it to what was laid down first, where need be by
    // what else is put on, in AssemblyOrder::steps; no_index: none does.
    Index held_in = no_index;

    bool operator==(const AssemblyMove&) const = default;
};

// The temporary pins of a joint, put in as soon as its pieces are together.
struct StepPins {
    Index joint = 0;
    Index pin = no_index;          // in Catalogue::pins; no_index: no size in it fits, clamp
    std::vector<Index> fasteners;  // in Resolved::fasteners: in whose holes; corners first

    bool operator==(const StepPins&) const = default;
};

// The fasteners of a joint, set for good.
struct StepSetting {
    Index joint = 0;
    bool long_nose = false;  // only the tool's nose has room, not its housing

    bool operator==(const StepSetting&) const = default;
};

// Done in the order of its lists: put everything on, pin it, prove it square, set the fasteners.
struct AssemblyStep {
    AssemblyWork work = AssemblyWork::joined_on;
    Index frame = 0;
    // What is being put together: 0 the frame itself; from 1, counted in each frame, what is moved
    // onto another one when it is done.
    Index assembly = 0;
    std::string face;  // of what lies flat: the layout plane; else empty
    std::vector<AssemblyMove> moves;
    std::vector<Index> joins;    // joints whose pieces are all together now, in Resolved::joints
    std::vector<StepPins> pins;  // of those that are riveted
    std::vector<Index> squares;  // diagonals to measure now, in AssemblyOrder::squares
    // Of `sets` those that no diagonal proves square, since no bars make a rectangle there by then.
    std::vector<Index> by_try_square;
    std::vector<StepSetting> sets;    // in this order, the tool reaches each
    std::vector<Index> fixing_holes;  // in Resolved::holes

    bool operator==(const AssemblyStep&) const = default;
};

struct AssemblyOrder {
    std::vector<AssemblyStep> steps;  // frame by frame, in the order of the work
    // As by square_rows, and behind them what bars close within a frame or before its faces are
    // whole; each is measured in one step.
    std::vector<SquareRow> squares;
    // Codes: no_order_of_rivets (the tool cannot reach a joint however the pieces come),
    // no_way_into_place (a piece cannot be brought to its place), screwed_on_early (what should
    // come apart is shut in by what is riveted). The steps then go on as if that were mended.
    std::vector<Finding> problems;
    std::vector<Index> joints_not_reached;  // what no_order_of_rivets is about, rising
    std::vector<Index> pieces_without_way;  // what no_way_into_place is about, rising
};

// Every piece of a frame is put on in exactly one step; every joint joins in exactly one, and is
// set in exactly one where it has fasteners. What two pieces that enter each other at their places
// (a finding `interference`) do to each other on the way is left out. Pure and total. The rule is
// common practice: flat parts first, pinned, proved square, then riveted; what comes apart last.
AssemblyOrder assembly_order(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved);

// How a piece comes to its place: put on in the first step, carried along with its sub-assembly in
// those that follow.
struct Arrival {
    Index step = 0;  // in AssemblyOrder::steps
    Travel along{};

    bool operator==(const Arrival&) const = default;
};

struct Approach {
    std::vector<Arrival> arrivals;  // in order of step; the last one brings it into its frame

    bool operator==(const Approach&) const = default;
};

// One for each piece of `resolved`: what a view pulls apart, step by step.
std::vector<Approach> approaches(const AssemblyOrder& order, const Resolved& resolved);

// "from above", "from the front", "from the left and above"; "laid down" for no way at all. Front
// is where y begins, left where x begins.
std::string words_of(const Travel& along);

}  // namespace model
