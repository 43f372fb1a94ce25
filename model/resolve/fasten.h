// Fasteners and holes: which, how many and where in each lap, so that edge distance, pitch, the
// setting tool and the tail all have room and the holes lie on the tape's marks.
#pragma once

#include "engine/geometry/box_tree.h"
#include "model/resolve/fastener_choice.h"
#include "model/resolve/hole_layout.h"
#include "model/resolve/joint_overrides.h"
#include "model/resolve/lap.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/skeleton.h"

#include <array>
#include <span>
#include <vector>

namespace model {

// One lap with the fasteners it is to have.
struct LapPlan {
    Lap lap;  // pieces by their number in the project
    Index frame = 0;
    Index wanted = 0;
    FastenerChoice fastener;
    bool head_on_upper = true;
    bool match_drilled = false;  // the piece on the head side is the pattern for the other
    bool long_nose = false;      // as in LapLayout
    bool before_others = false;
    Layout layout;
};

// Plans all laps of a frame; `tree` is over the extents of its pieces, and `first_piece` the number
// in the project of the first one. Faults become findings; where `ends_at_error`, laps behind the
// first one with an error are not planned.
std::vector<LapPlan> plan_fasteners(const Project& project,
                                    const Catalogue& catalogue,
                                    const ResolvedShop& shop,
                                    const FrameSkeleton& skeleton,
                                    const engine::BoxTree& tree,
                                    std::span<const Lap> laps,
                                    const Slants& slants,
                                    Index first_piece,
                                    JointOverrides& overrides,
                                    std::vector<Finding>& findings,
                                    bool ends_at_error = false);

// Joints, fasteners, holes and shims of all plans. The pieces of every frame are in `out` already,
// contiguous by frame; shims are put behind the pieces of their frame and all numbers follow.
// `stocks_alike` as by first_stocks_alike. Gives the pairs of joints whose fasteners meet all the
// same.
std::vector<std::array<Index, 2>> place_fasteners(const Catalogue& catalogue,
                                                  std::span<const Index> stocks_alike,
                                                  std::vector<LapPlan> plans,
                                                  Resolved& out);

}  // namespace model
