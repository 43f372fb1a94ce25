// A project as an outsider reads it from pieces.json, and the plainest of questions about it: what
// is in the way of a piece that moves in a straight line, and of a tool that stands on a fastener.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"
#include "model/schedule/square.h"

#include "tests/support/skeleton.h"

#include <array>
#include <set>
#include <vector>

namespace tests {

class NaiveWorld {
public:
    NaiveWorld(const model::Project& project,
               const model::Catalogue& catalogue,
               const model::Resolved& resolved);

    // The same of pieces made by hand, from the boxes of their plates.
    NaiveWorld(const model::Catalogue& catalogue, const model::Resolved& resolved);

    bool is_readable() const { return is_readable_; }

    // A direction in a frame's axes, in the world's.
    Direction in_world(model::Index frame, const Direction& direction) const;

    // Whether the piece would pass through the other one on a straight way to its place, from 20 m
    // away. What two pieces that share a place do to each other counts as nothing.
    bool is_stopped_by(model::Index piece, const Direction& travel, model::Index other) const;

    // Whether the other piece is in the room of the tool that sets one of the joint's fasteners:
    // of its nose, and of what stands behind that, the housing or as much more of the nose.
    bool keeps_nose_off(model::Index joint, model::Index other) const;
    bool keeps_housing_off(model::Index joint, bool long_nose, model::Index other) const;

    // The four corners of a face that a tape proves square, in its frame's axes.
    std::vector<model::Point> corners_of(const model::SquareRow& row) const;

    // Bars and leaning members of the frame with metal at a corner, as near as bars end there.
    std::set<model::Index> bars_at(model::Index frame, const model::Point& corner) const;

    // The pieces that the joint's fasteners hold, and those of the joint itself.
    std::set<model::Index> pieces_of(model::Index joint) const;

private:
    bool is_in_column(
        model::Index joint, model::Index other, Nm from, Nm to, Nm rivet_radius) const;

    const model::Project* project_ = nullptr;  // null: of pieces made by hand
    const model::Catalogue& catalogue_;
    const model::Resolved& resolved_;
    bool is_readable_ = false;
    Skeleton skeleton_;
    std::vector<std::vector<ConvexBody>> bodies_;  // by piece
};

}  // namespace tests
