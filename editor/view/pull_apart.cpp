#include "editor/view/pull_apart.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cstddef>

namespace editor {
namespace {

using model::Index;

constexpr double mm = 1.0e-6;      // of a nanometre
constexpr double of_size = 0.35;   // of the frame, how far a piece moves
constexpr double at_least = 40.0;  // mm, however small the frame
constexpr double in_part = 0.37;   // of that in a sub-assembly, which moves on as a whole
constexpr double by_turn = 0.12;   // further for each thing before that came the same way

glm::dvec3 in_frame(const model::Travel& along) { return {along[0], along[1], along[2]}; }

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

// The size of a frame's pieces together along its axes, mm.
glm::dvec3 size_of(const model::Resolved& resolved, const model::ResolvedFrame& frame) {
    model::Box all = resolved.pieces[frame.first_piece].extents;
    for (Index i = 1; i < frame.piece_count; ++i) {
        const auto& box = resolved.pieces[frame.first_piece + i].extents;
        for (std::size_t k = 0; k < 3; ++k) {
            all.lo[k] = std::min(all.lo[k], box.lo[k]);
            all.hi[k] = std::max(all.hi[k], box.hi[k]);
        }
    }
    glm::dvec3 size{0.0};
    for (int k = 0; k < 3; ++k) {
        const auto axis = static_cast<std::size_t>(k);
        size[k] = static_cast<double>(all.hi[axis] - all.lo[axis]) * mm;
    }
    return size;
}

// One way by which something arrives, and how many things before came that way too.
struct Way {
    Index step = 0;
    std::size_t move = 0;
    glm::dvec3 along{0.0};
    int turn = 0;
};

class FrameApart {
public:
    FrameApart(const model::AssemblyOrder& order,
               const model::Resolved& resolved,
               Index frame,
               double share)
        : order_{order}, size_{size_of(resolved, resolved.frames[frame])}, share_{share} {
        for (Index i = 0; i < order.steps.size(); ++i) {
            if (order.steps[i].frame != frame) continue;
            steps_.push_back(i);
            for (std::size_t move = 0; move < order.steps[i].moves.size(); ++move) add(i, move);
        }
    }

    glm::dvec3 moved(Index piece, const model::Approach& approach) const {
        glm::dvec3 by{0.0};
        for (const auto& arrival : approach.arrivals) {
            const auto along = in_frame(arrival.along);
            if (glm::length(along) < 0.5) continue;
            const bool is_part = order_.steps[arrival.step].assembly != 0;
            const double far =
                (glm::length(along * size_) * of_size + at_least) * (is_part ? in_part : 1.0);
            by -= along *
                  (far * (1.0 + by_turn * turn_of(piece, arrival.step)) * undone(arrival.step));
        }
        return by;
    }

private:
    void add(Index step, std::size_t move) {
        const auto along = in_frame(order_.steps[step].moves[move].along);
        const auto before = std::ranges::count_if(
            ways_, [&](const Way& way) { return glm::dot(way.along, along) > 0.99; });
        ways_.push_back({step, move, along, static_cast<int>(before)});
    }

    // 0: still in its place; 1: as far away as it goes. The last step is undone first.
    double undone(Index step) const {
        const auto at = std::ranges::lower_bound(steps_, step) - steps_.begin();
        const auto count = static_cast<double>(steps_.size());
        return std::clamp(share_ * count - (count - 1.0 - static_cast<double>(at)), 0.0, 1.0);
    }

    int turn_of(Index piece, Index step) const {
        const auto& moves = order_.steps[step].moves;
        const auto way = std::ranges::find_if(ways_, [&](const Way& it) {
            return it.step == step && std::ranges::count(moves[it.move].pieces, piece) > 0;
        });
        return way == ways_.end() ? 0 : way->turn;
    }

    const model::AssemblyOrder& order_;
    glm::dvec3 size_;
    double share_;
    std::vector<Index> steps_;  // in AssemblyOrder::steps, rising
    std::vector<Way> ways_;     // of all moves, in their order
};

}  // namespace

std::vector<glm::dvec3> pulled_apart(const model::Resolved& resolved,
                                     const model::AssemblyOrder& order,
                                     std::span<const model::Approach> approaches,
                                     double share) {
    std::vector<glm::dvec3> moved(resolved.pieces.size(), glm::dvec3{0.0});
    if (share <= 0.0) return moved;
    for (Index f = 0; f < resolved.frames.size(); ++f) {
        const auto& frame = resolved.frames[f];
        if (frame.piece_count == 0) continue;
        const FrameApart apart(order, resolved, f, share);
        for (Index i = frame.first_piece; i < frame.first_piece + frame.piece_count; ++i) {
            moved[i] = turned(frame, apart.moved(i, approaches[i]));
        }
    }
    return moved;
}

}  // namespace editor
