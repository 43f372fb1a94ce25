// The walls of a face that a brace may lie against, and how far its ends may reach there.
#pragma once

#include "model/resolve/brace_ends.h"
#include "model/resolve/lap.h"
#include "model/resolve/lap_polygon.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace model {

// A wall with the side on which the brace would touch it.
struct FaceWall {
    Index piece = 0;  // of the frame
    std::uint8_t wall = 0;
    Box box;
    Nm surface = 0;  // where that side lies
    bool is_of_member = true;
};

struct BraceFace {
    int inward = 1;  // along the face's normal into the frame
    std::vector<FaceWall> walls;
};

// The walls of the members that lie on the face, and of parts that lap those; none where no member
// lies on it.
std::optional<BraceFace> brace_face(const BraceLine& line,
                                    const FrameSkeleton& skeleton,
                                    std::span<const Lap> laps);

// By node: to the outer edges of the members that meet there.
std::array<EndLimits, 2> outline_limits(const BraceLine& line,
                                        const BraceFace& face,
                                        const FrameSkeleton& skeleton);

// Draws an end back from what stands in the brace's way near its nodes, `slab` being the brace with
// its depth along the normal and `polygon` its shape in the face, with `gap` between. False: there
// is nothing to clear.
bool clear_ends(std::array<EndLimits, 2>& limits,
                const BraceLine& line,
                const FrameSkeleton& skeleton,
                const Slants& slants,
                const engine::BoxTree& tree,
                const FlatPolygon& polygon,
                const Box& slab,
                Nm gap);

// Less than this of two walls over each other is nothing: a square of a tenth of a millimetre, nm2.
inline constexpr double least_area = 1e10;

}  // namespace model
