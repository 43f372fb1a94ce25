#include "engine/geometry/face_triangles.h"

#include <algorithm>

namespace engine {

std::span<const std::uint32_t> FaceTriangles::of(std::span<const FacePoint> points,
                                                 std::span<const std::uint32_t> loop_ends) {
    if (points.size() < 3 || loop_ends.empty() || loop_ends.back() != points.size()) return {};
    points_ = points;
    triangles_.resize(3 * (points.size() + 2 * (loop_ends.size() - 1) - 2));
    index_count_ = 0;
    link(loop_ends);
    collect_turns();
    if (!sweep() || index_count_ != triangles_.size()) return {};
    return triangles_;
}

void FaceTriangles::link(std::span<const std::uint32_t> loop_ends) {
    const auto count = static_cast<Id>(points_.size());
    next_.resize(count);
    previous_.resize(count);
    for (Id i = 0; i < count; ++i) {
        next_[i] = i + 1;
        previous_[i] = i - 1;
    }
    Id first = 0;
    for (const auto end : loop_ends) {
        next_[end - 1] = first;
        previous_[first] = end - 1;
        first = end;
    }
}

// The points at which a boundary changes its direction along the sweep, in the sweep's order.
void FaceTriangles::collect_turns() {
    turns_.clear();
    const auto count = static_cast<Id>(points_.size());
    for (Id i = 0; i < count; ++i) {
        if (is_before(i, next_[i]) == is_before(i, previous_[i])) turns_.push_back(i);
    }
    std::ranges::sort(turns_, [this](Id a, Id b) { return is_before(a, b); });
}

bool FaceTriangles::sweep() {
    regions_.clear();
    free_parts_.clear();
    for (std::size_t i = parts_.size(); i > 0; --i)
        free_parts_.push_back(static_cast<std::uint32_t>(i - 1));
    return std::ranges::all_of(turns_, [this](Id turn) { return take(turn); }) && regions_.empty();
}

bool FaceTriangles::take(Id turn) {
    const bool is_convex = turn_of(previous_[turn], turn, next_[turn]) > 0.0;
    if (is_before(turn, next_[turn])) return is_convex ? start(turn) : split(turn);
    return is_convex ? end(turn) : merge(turn);
}

bool FaceTriangles::start(Id turn) {
    std::size_t above = 0;
    if (!find_by_place(turn, above)) above = regions_.size();
    const auto part = new_part(turn);
    regions_.insert(regions_.begin() + static_cast<std::ptrdiff_t>(above),
                    Region{.lower = turn, .upper = turn, .part = part, .upper_part = part});
    return true;
}

// A hole begins inside a region: the region becomes two, cut along a line to the last point passed.
bool FaceTriangles::split(Id turn) {
    std::size_t at = 0;
    if (!find_by_place(turn, at)) return false;
    Region below = regions_[at];
    Region above = below;
    if (below.part != below.upper_part) {
        below.upper_part = below.part;
        above.part = above.upper_part;
        push(below.part, turn, Side::upper);
        push(above.part, turn, Side::lower);
    } else {
        const Id last = parts_[below.part].waiting.back();
        const auto fresh = new_part(last);
        const bool last_is_below = last == below.lower;
        auto& renewed = last_is_below ? below : above;
        renewed.part = renewed.upper_part = fresh;
        push(below.part, turn, Side::upper);
        push(above.part, turn, Side::lower);
    }
    below.upper = turn;
    above.lower = turn;
    regions_[at] = below;
    regions_.insert(regions_.begin() + static_cast<std::ptrdiff_t>(at) + 1, above);
    return true;
}

bool FaceTriangles::end(Id turn) {
    std::size_t at = 0;
    if (!find_by_upper_end(turn, at) || next_[regions_[at].lower] != turn) return false;
    const Region region = regions_[at];
    finish(region.part, turn);
    if (region.upper_part != region.part) finish(region.upper_part, turn);
    regions_.erase(regions_.begin() + static_cast<std::ptrdiff_t>(at));
    return true;
}

bool FaceTriangles::merge(Id turn) {
    std::size_t at = 0;
    if (!find_by_upper_end(turn, at) || at + 1 >= regions_.size()) return false;
    Region& below = regions_[at];
    Region& above = regions_[at + 1];
    if (!advance(above, turn) || next_[above.lower] != turn) return false;
    pass(below, turn, Side::upper);
    pass(above, turn, Side::lower);
    below.upper = above.upper;
    below.upper_part = above.part;
    regions_.erase(regions_.begin() + static_cast<std::ptrdiff_t>(at) + 1);
    return true;
}

// Passes all points of both boundaries that come before `until`.
bool FaceTriangles::advance(Region& region, Id until) {
    while (true) {
        const Id lower = next_[region.lower];
        const Id upper = previous_[region.upper];
        const bool take_lower = is_before(lower, upper);
        const Id point = take_lower ? lower : upper;
        if (!is_before(point, until)) return true;
        if (!is_before(take_lower ? region.lower : region.upper, point)) return false;
        pass(region, point, take_lower ? Side::lower : Side::upper);
    }
}

void FaceTriangles::pass(Region& region, Id point, Side side) {
    (side == Side::lower ? region.lower : region.upper) = point;
    if (region.part != region.upper_part) {
        // Two parts meet at a point further left; this point closes the one it bounds.
        const bool is_lower = side == Side::lower;
        finish(is_lower ? region.part : region.upper_part, point);
        if (is_lower) {
            region.part = region.upper_part;
        } else {
            region.upper_part = region.part;
        }
    }
    push(region.part, point, side);
}

void FaceTriangles::push(std::uint32_t part, Id point, Side side) {
    auto& waiting = parts_[part].waiting;
    if (waiting.size() > 1 && parts_[part].side != side) {
        const Id last = waiting.back();
        fan(parts_[part], point);
        waiting.assign({last, point});
        parts_[part].side = side;
        return;
    }
    parts_[part].side = side;
    while (waiting.size() > 1) {
        const Id before = waiting[waiting.size() - 2];
        const Id last = waiting.back();
        if (!is_ear(before, last, point, side)) break;
        if (side == Side::lower) {
            emit(before, last, point);
        } else {
            emit(before, point, last);
        }
        waiting.pop_back();
    }
    waiting.push_back(point);
}

void FaceTriangles::finish(std::uint32_t part, Id last) {
    fan(parts_[part], last);
    free_parts_.push_back(part);
}

// Joins a point to everything that waits.
void FaceTriangles::fan(const Part& part, Id last) {
    const auto& waiting = part.waiting;
    const bool is_lower = part.side == Side::lower;
    for (std::size_t i = 0; i + 1 < waiting.size(); ++i) {
        if (is_lower) {
            emit(waiting[i], waiting[i + 1], last);
        } else {
            emit(waiting[i], last, waiting[i + 1]);
        }
    }
}

void FaceTriangles::emit(Id a, Id b, Id c) {
    if (index_count_ + 3 > triangles_.size()) return;  // of loops that cross there may be more
    triangles_[index_count_] = a;
    triangles_[index_count_ + 1] = b;
    triangles_[index_count_ + 2] = c;
    index_count_ += 3;
}

std::uint32_t FaceTriangles::new_part(Id first) {
    if (free_parts_.empty()) {
        free_parts_.push_back(static_cast<std::uint32_t>(parts_.size()));
        parts_.emplace_back();
    }
    const auto part = free_parts_.back();
    free_parts_.pop_back();
    parts_[part].waiting.assign({first});
    return part;
}

// The lowest region whose upper boundary lies above a point.
bool FaceTriangles::find_by_place(Id turn, std::size_t& found) {
    for (found = 0; found < regions_.size(); ++found) {
        auto& region = regions_[found];
        if (!advance(region, turn)) return false;
        if (turn_of(region.upper, previous_[region.upper], turn) < 0.0) return true;
    }
    return false;
}

bool FaceTriangles::find_by_upper_end(Id turn, std::size_t& found) {
    for (found = 0; found < regions_.size(); ++found) {
        auto& region = regions_[found];
        if (!advance(region, turn)) return false;
        if (previous_[region.upper] == turn) return true;
    }
    return false;
}

// Whether a triangle of neighbours on one side may be cut off: b sticks out by more than single
// precision can tell at the size of a van. Points that stick out by less wait for a better partner,
// so that rows of holes give no triangles without area.
bool FaceTriangles::is_ear(Id a, Id b, Id c, Side side) const {
    const double turn = side == Side::lower ? turn_of(a, b, c) : -turn_of(a, b, c);
    const double dx = points_[c][0] - points_[a][0];
    const double dy = points_[c][1] - points_[a][1];
    constexpr double least_height = 1e-4;
    return turn > 0.0 && turn * turn > least_height * least_height * (dx * dx + dy * dy);
}

// Above 0 when a, b, c turn to the left.
double FaceTriangles::turn_of(Id a, Id b, Id c) const {
    const auto& p = points_[a];
    const auto& q = points_[b];
    const auto& r = points_[c];
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
}

}  // namespace engine
