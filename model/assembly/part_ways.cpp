#include "model/assembly/part_ways.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace model {
namespace {

constexpr std::size_t axis_lines = 3;

bool is_same_line(const std::array<double, 3>& a, const std::array<double, 3>& b) {
    return std::abs(engine::dot(a, b)) > 1.0 - 1e-9;
}

// Whether the two lie over each other, seen along the axis.
bool shadows_meet(const Box& a, const Box& b, std::size_t axis) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (k != axis && (a.lo[k] >= b.hi[k] || b.lo[k] >= a.hi[k])) return false;
    }
    return true;
}

// Which way a stops b, of the two senses of one line.
struct Stops {
    bool ahead = false;  // the second lies ahead of the first
    bool behind = false;
};

bool enter_each_other(const std::vector<PieceBody>& a, const std::vector<PieceBody>& b) {
    return std::ranges::any_of(a, [&](const PieceBody& p) {
        return std::ranges::any_of(b, [&](const PieceBody& q) {
            if (!engine::overlaps(p.box, q.box)) return false;
            return (p.is_box && q.is_box) || engine::is_deeper(p.solid, q.solid, 0.0);
        });
    });
}

}  // namespace

PartWays::PartWays(const FrameParts& parts) {
    const Slants slants{parts.resolved().outlines, parts.resolved().leans};
    bool has_solids = false;
    for (Index i = 0; i < parts.size(); ++i) {
        bodies_.push_back(bodies_of(slants, parts.piece(i)));
        is_boxes_.push_back(std::ranges::all_of(bodies_.back(), &PieceBody::is_box));
        has_solids |= !is_boxes_.back();
    }
    if (has_solids) {
        for (auto& bodies : bodies_) std::ranges::for_each(bodies, add_solid);
    }
    add_lines(parts);
    stops_.assign(count(), std::vector<PieceSet>(parts.size(), PieceSet(parts.size())));
    for (Index a = 0; a < parts.size(); ++a) {
        for (Index b = a + 1; b < parts.size(); ++b) add_pair(parts, a, b);
    }
}

void PartWays::add_lines(const FrameParts& parts) {
    const auto add = [&](const std::array<double, 3>& along) {
        for (const auto& known : directions_) {
            if (is_same_line(known, along)) return;
        }
        directions_.push_back(along);
        directions_.push_back(engine::scaled(along, -1.0));
    };
    add({1.0, 0.0, 0.0});
    add({0.0, 1.0, 0.0});
    add({0.0, 0.0, 1.0});
    for (Index i = 0; i < parts.size(); ++i) {
        const Index lean = parts.piece(i).lean;
        if (lean >= parts.resolved().leans.size()) continue;
        add(engine::unit(parts.resolved().leans[lean].run));
        add(engine::unit(parts.resolved().leans[lean].a));
    }
}

void PartWays::add_pair(const FrameParts& parts, Index a, Index b) {
    const Box& one = parts.piece(a).extents;
    const Box& other = parts.piece(b).extents;
    if (engine::overlaps(one, other) && enter_each_other(bodies_[a], bodies_[b])) return;
    const bool is_exact = is_boxes_[a] && is_boxes_[b];
    const bool may_meet = count() > 2 * axis_lines || shadows_meet(one, other, 0) ||
                          shadows_meet(one, other, 1) || shadows_meet(one, other, 2);
    if (!may_meet) return;
    if (is_exact) add_boxes(a, b);
    if (!is_exact || count() > 2 * axis_lines) add_solids(a, b);
}

void PartWays::add_boxes(Index a, Index b) {
    for (std::size_t axis = 0; axis < axis_lines; ++axis) {
        Stops stops;
        for (const auto& p : bodies_[a]) {
            for (const auto& q : bodies_[b]) {
                if (!shadows_meet(p.box, q.box, axis)) continue;
                stops.ahead |= q.box.lo[axis] >= p.box.hi[axis];
                stops.behind |= q.box.hi[axis] <= p.box.lo[axis];
            }
        }
        if (stops.ahead) stop(2 * axis, a, b), stop(2 * axis + 1, b, a);
        if (stops.behind) stop(2 * axis + 1, a, b), stop(2 * axis, b, a);
    }
}

// Along the axes too, unless add_boxes has done that.
void PartWays::add_solids(Index a, Index b) {
    const bool is_exact = is_boxes_[a] && is_boxes_[b];
    for (std::size_t line = is_exact ? axis_lines : 0; 2 * line < count(); ++line) {
        Stops stops;
        for (const auto& p : bodies_[a]) {
            for (const auto& q : bodies_[b]) {
                if (line < axis_lines && !shadows_meet(p.box, q.box, line)) continue;
                const auto through = engine::passage(p.facets, q.facets, directions_[2 * line]);
                if (!through) continue;
                stops.ahead |= through->to > 0.0;
                stops.behind |= through->from < 0.0;
            }
        }
        if (stops.ahead) stop(2 * line, a, b), stop(2 * line + 1, b, a);
        if (stops.behind) stop(2 * line + 1, a, b), stop(2 * line, b, a);
    }
}

}  // namespace model
