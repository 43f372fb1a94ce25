#include "model/project/frame_bars.h"

#include <algorithm>

namespace model {

const std::array<std::string, 2>& planes_of(const Bay& bay, Axis axis) {
    return axis == Axis::x ? bay.x : axis == Axis::y ? bay.y : bay.z;
}

std::array<std::string, 2>& planes_of(Bay& bay, Axis axis) {
    return axis == Axis::x ? bay.x : axis == Axis::y ? bay.y : bay.z;
}

std::optional<ReachBox> box_of(const Bay& bay, const PlanePlaces& places) {
    ReachBox box;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const auto least = places.known(planes_of(bay, axis)[0], axis);
        const auto most = places.known(planes_of(bay, axis)[1], axis);
        if (!least || !most) return std::nullopt;
        box[index_of(axis)] = {*least, *most};
    }
    return box;
}

bool lies_within(const ReachBox& bar, const ReachBox& box) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (bar[k][0] < box[k][0] || bar[k][1] > box[k][1]) return false;
    }
    return true;
}

bool lies_beside(const ReachBox& bar, const ReachBox& box) {
    for (std::size_t k = 0; k < 3; ++k) {
        const Nm from = std::max(bar[k][0], box[k][0]);
        const Nm to = std::min(bar[k][1], box[k][1]);
        const bool is_across = bar[k][0] == bar[k][1];
        if (is_across ? from > to : from >= to) return false;
    }
    return true;
}

bool do_touch(const ReachBox& a, const ReachBox& b) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (a[k][1] < b[k][0] || b[k][1] < a[k][0]) return false;
    }
    return true;
}

std::optional<ReachBox> box_of_bar(const Frame& frame,
                                   const std::string& bar,
                                   const PlanePlaces& places) {
    ReachBox box;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const auto along = reach_of_bar(frame, bar, places, axis);
        if (!along) return std::nullopt;
        box[index_of(axis)] = *along;
    }
    return box;
}

void remove_parted_joints(Frame& frame, const Frame& before, const PlanePlaces& places) {
    const auto do_meet = [&](const Frame& in, const JointOverride& joint) {
        const auto first = box_of_bar(in, joint.members[0], places);
        const auto second = box_of_bar(in, joint.members[1], places);
        return first && second && do_touch(*first, *second);
    };
    std::erase_if(frame.joints, [&](const JointOverride& joint) {
        return do_meet(before, joint) && !do_meet(frame, joint);
    });
}

bool has_joint(const Frame& frame, const std::array<std::string, 2>& members) {
    const std::array turned{members[1], members[0]};
    return std::ranges::any_of(frame.joints, [&](const JointOverride& joint) {
        return joint.members == members || joint.members == turned;
    });
}

void remove_bar(Frame& frame, const std::string& name) {
    const auto has_name = [&](const auto& bar) { return bar.name == name; };
    std::erase_if(frame.members, has_name);
    std::erase_if(frame.diagonals, has_name);
    std::erase_if(frame.leaning, has_name);
    std::erase_if(frame.joints, [&](const JointOverride& joint) {
        return joint.members[0] == name || joint.members[1] == name;
    });
}

}  // namespace model
