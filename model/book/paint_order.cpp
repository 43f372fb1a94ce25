#include "model/book/paint_order.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <queue>
#include <utility>

namespace model {
namespace {

constexpr double near_enough = 1e-6;  // mm; bodies that touch do not hide one another there

// What a body covers on the sheet, and how deep it lies.
struct Cover {
    SeenPoint lo{1e300, 1e300};
    SeenPoint hi{-1e300, -1e300};
    double depth = 0.0;  // of its middle, more is nearer
};

Cover cover_of(const engine::ConvexBody& body, const Sight& sight) {
    Cover cover;
    for (const auto& corner : body.corners) {
        const auto p = seen_point(corner, sight);
        for (std::size_t i = 0; i < 2; ++i) {
            cover.lo[i] = std::min(cover.lo[i], p[i]);
            cover.hi[i] = std::max(cover.hi[i], p[i]);
        }
        cover.depth += engine::dot(corner, sight.towards);
    }
    cover.depth /= static_cast<double>(std::max<std::size_t>(1, body.corners.size()));
    return cover;
}

bool share_sheet(const Cover& a, const Cover& b) {
    return a.lo[0] < b.hi[0] - near_enough && b.lo[0] < a.hi[0] - near_enough &&
           a.lo[1] < b.hi[1] - near_enough && b.lo[1] < a.hi[1] - near_enough;
}

// 1: `other` lies wholly beyond a face of `body` that looks at the viewer, and so before it; -1:
// behind it; 0: no face tells.
int side_of(const engine::ConvexBody& body, const engine::ConvexBody& other, const Sight& sight) {
    for (const auto& face : body.faces) {
        const double looks = engine::dot(face.normal, sight.towards);
        const bool is_beyond = std::ranges::all_of(other.corners, [&](const engine::Vector& at) {
            return engine::height_above(face, at) >= -near_enough;
        });
        if (!is_beyond) continue;
        if (looks > 1e-9) return 1;
        if (looks < -1e-9) return -1;
        return 2;  // side by side: neither hides the other
    }
    return 0;
}

// Whether b must be painted after a: 1 yes, -1 the other way round, 0 it does not matter.
int is_before(const engine::ConvexBody& a, const engine::ConvexBody& b, const Sight& sight) {
    const int by_a = side_of(a, b, sight);
    if (by_a == 2) return 0;
    if (by_a != 0) return by_a;
    const int by_b = side_of(b, a, sight);
    return by_b == 2 ? 0 : -by_b;
}

struct Waiting {
    std::vector<std::vector<std::size_t>> hides_by;  // that are to come after it
    std::vector<int> before;                         // how many are still to come before it
};

Waiting waiting_of(std::span<const BodyOfPiece> bodies,
                   const std::vector<Cover>& covers,
                   const Sight& sight) {
    Waiting waiting{std::vector<std::vector<std::size_t>>(bodies.size()),
                    std::vector<int>(bodies.size(), 0)};
    for (std::size_t i = 0; i < bodies.size(); ++i) {
        for (std::size_t k = i + 1; k < bodies.size(); ++k) {
            if (!share_sheet(covers[i], covers[k])) continue;
            const int order = is_before(bodies[i].body, bodies[k].body, sight);
            if (order == 0) continue;
            const auto [first, then] = order > 0 ? std::pair{i, k} : std::pair{k, i};
            waiting.hides_by[first].push_back(then);
            ++waiting.before[then];
        }
    }
    return waiting;
}

}  // namespace

std::vector<std::size_t> paint_order(std::span<const BodyOfPiece> bodies, const Sight& sight) {
    std::vector<Cover> covers;
    for (const auto& it : bodies) covers.push_back(cover_of(it.body, sight));
    auto waiting = waiting_of(bodies, covers, sight);
    std::vector<std::size_t> by_depth(bodies.size());
    for (std::size_t i = 0; i < by_depth.size(); ++i) by_depth[i] = i;
    std::ranges::stable_sort(by_depth, {}, [&](std::size_t i) { return covers[i].depth; });
    std::vector<std::size_t> rank(bodies.size());
    for (std::size_t r = 0; r < by_depth.size(); ++r) rank[by_depth[r]] = r;

    std::priority_queue<std::size_t, std::vector<std::size_t>, std::greater<>> free;  // ranks
    for (std::size_t i = 0; i < bodies.size(); ++i)
        if (waiting.before[i] == 0) free.push(rank[i]);
    std::vector<bool> is_done(bodies.size(), false);
    std::vector<std::size_t> order;
    std::size_t furthest = 0;  // in by_depth; where a ring is opened
    while (order.size() < bodies.size()) {
        while (free.empty() && is_done[by_depth[furthest]]) ++furthest;
        const std::size_t next = free.empty() ? by_depth[furthest] : by_depth[free.top()];
        if (!free.empty()) free.pop();
        if (is_done[next]) continue;
        is_done[next] = true;
        order.push_back(next);
        for (const auto then : waiting.hides_by[next])
            if (--waiting.before[then] == 0) free.push(rank[then]);
    }
    return order;
}

}  // namespace model
