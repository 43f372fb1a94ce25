// Where the bars of a frame lie beside boxes of its planes, and what goes with a bar that goes.
#pragma once

#include "model/project/plane_places.h"

#include <array>
#include <optional>
#include <string>

namespace model {

// By axis.
using ReachBox = std::array<Reach, 3>;

const std::array<std::string, 2>& planes_of(const Bay& bay, Axis axis);
std::array<std::string, 2>& planes_of(Bay& bay, Axis axis);

// None where a plane of it has no place.
std::optional<ReachBox> box_of(const Bay& bay, const PlanePlaces& places);

template <class Bar>
std::optional<ReachBox> box_of(const Bar& bar, const PlanePlaces& places) {
    ReachBox box;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const auto along = reach(bar, places, axis);
        if (!along) return std::nullopt;
        box[index_of(axis)] = *along;
    }
    return box;
}

// Its edges included.
bool lies_within(const ReachBox& bar, const ReachBox& box);

// Whether part of a bar lies in the box or along its edges; one that ends there does not.
bool lies_beside(const ReachBox& bar, const ReachBox& box);

// Whether the lines of two bars, or the rectangles of what leans, have a place in common.
bool do_touch(const ReachBox& a, const ReachBox& b);

// Where the member, diagonal or leaning member of that name lies; none where it has no place.
std::optional<ReachBox> box_of_bar(const Frame& frame,
                                   const std::string& bar,
                                   const PlanePlaces& places);

// Removes the joint overrides of two bars whose lines met before an edit and no longer do. Those
// whose lines lie a little apart stay: resolve alone knows whether they lap.
void remove_parted_joints(Frame& frame, const Frame& before, const PlanePlaces& places);

// Whether there is a joint override of those two, in either order.
bool has_joint(const Frame& frame, const std::array<std::string, 2>& members);

// Removes it with its joint overrides.
void remove_bar(Frame& frame, const std::string& name);

}  // namespace model
