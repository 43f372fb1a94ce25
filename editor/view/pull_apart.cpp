#include "editor/view/pull_apart.h"

#include <algorithm>
#include <cstddef>

namespace editor {
namespace {

using model::Index;

constexpr double mm = 1.0e-6;         // of a nanometre
constexpr double of_half_size = 0.6;  // of the frame, how far its outside moves
constexpr double at_least = 40.0;     // mm, however small the frame
constexpr double by_layer = 0.3;      // further for each layer below
constexpr int most_layers = 6;

struct Middle {
    glm::dvec3 at{0.0};
    glm::dvec3 half{0.0};
};

glm::dvec3 in_frame(const model::Point& p) {
    return glm::dvec3{static_cast<double>(p[0]), static_cast<double>(p[1]),
                      static_cast<double>(p[2])} *
           mm;
}

Middle middle_of(const model::Box& box) {
    return {(in_frame(box.lo) + in_frame(box.hi)) / 2.0,
            (in_frame(box.hi) - in_frame(box.lo)) / 2.0};
}

Middle middle_of(const model::Resolved& resolved, const model::ResolvedFrame& frame) {
    model::Box all = resolved.pieces[frame.first_piece].extents;
    for (Index i = 1; i < frame.piece_count; ++i) {
        const auto& box = resolved.pieces[frame.first_piece + i].extents;
        for (std::size_t k = 0; k < 3; ++k) {
            all.lo[k] = std::min(all.lo[k], box.lo[k]);
            all.hi[k] = std::max(all.hi[k], box.hi[k]);
        }
    }
    return middle_of(all);
}

glm::dvec3 turned(const model::ResolvedFrame& frame, const glm::dvec3& v) {
    glm::dvec3 sum{0.0};
    for (int k = 0; k < 3; ++k) {
        std::array<int, 3> axis{};
        axis[static_cast<std::size_t>(k)] = 1;
        const auto there = model::direction_to_room(frame, axis);
        sum += glm::dvec3{there[0], there[1], there[2]} * v[k];
    }
    return sum;
}

glm::dvec3 outward(const Middle& frame, const Middle& piece) {
    glm::dvec3 by{0.0};
    for (int k = 0; k < 3; ++k) {
        if (frame.half[k] <= 0.0) continue;
        const double place = (piece.at[k] - frame.at[k]) / frame.half[k];  // -1 .. 1
        by[k] = place * (of_half_size * frame.half[k] + at_least);
    }
    return by;
}

}  // namespace

std::vector<int> layers_below(const model::Resolved& resolved) {
    std::vector<int> layers(resolved.pieces.size(), 0);
    // Each round finds one layer more; joints in a ring end with the last round.
    for (int round = 0; round < most_layers; ++round) {
        bool is_done = true;
        for (const auto& joint : resolved.joints) {
            const auto [outer, inner] = joint.pieces;
            if (outer >= layers.size() || inner >= layers.size()) continue;
            const int wanted = std::min(most_layers, layers[inner] + 1);
            if (layers[outer] >= wanted) continue;
            layers[outer] = wanted;
            is_done = false;
        }
        if (is_done) break;
    }
    return layers;
}

std::vector<glm::dvec3> pulled_apart(const model::Resolved& resolved, double share) {
    std::vector<glm::dvec3> moved(resolved.pieces.size(), glm::dvec3{0.0});
    if (share <= 0.0) return moved;
    const auto layers = layers_below(resolved);
    for (const auto& frame : resolved.frames) {
        if (frame.piece_count == 0) continue;
        const Middle middle = middle_of(resolved, frame);
        for (Index i = frame.first_piece; i < frame.first_piece + frame.piece_count; ++i) {
            const auto by = outward(middle, middle_of(resolved.pieces[i].extents));
            moved[i] = turned(frame, by) * (share * (1.0 + by_layer * layers[i]));
        }
    }
    return moved;
}

}  // namespace editor
