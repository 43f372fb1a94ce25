#include "model/assembly/pinned_steps.h"

#include <algorithm>

namespace model {
namespace {

std::vector<PinnedSteps> steps_of_frames(const AssemblyOrder& order, std::size_t frames) {
    std::vector<PinnedSteps> steps(frames);
    for (Index s = 0; s < order.steps.size(); ++s) {
        auto& frame = steps[order.steps[s].frame];
        if (frame.first > frame.last) frame.first = s;
        frame.last = s;
    }
    return steps;
}

}  // namespace

std::vector<PinnedSteps> pinned_steps(const AssemblyOrder& order, const Resolved& resolved) {
    const auto frames = steps_of_frames(order, resolved.frames.size());
    std::vector<PinnedSteps> joints;
    for (const auto& joint : resolved.joints) joints.push_back(frames[joint.frame]);
    for (Index s = 0; s < order.steps.size(); ++s) {
        for (const auto& pins : order.steps[s].pins) joints[pins.joint].first = s;
        for (const auto& set : order.steps[s].sets) joints[set.joint].last = s;
    }
    return joints;
}

}  // namespace model
