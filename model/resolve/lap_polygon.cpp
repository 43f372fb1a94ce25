#include "model/resolve/lap_polygon.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace model {
namespace {

FlatPoint minus(const FlatPoint& a, const FlatPoint& b) { return {a[0] - b[0], a[1] - b[1]}; }

// These are asked for at every mark of a tape: std::hypot guards against numbers that are not met
// here, and takes ten times as long.
double length_of(const FlatPoint& a) { return std::sqrt(a[0] * a[0] + a[1] * a[1]); }

double cross(const FlatPoint& a, const FlatPoint& b) { return a[0] * b[1] - a[1] * b[0]; }

// Above 0 to the left of the edge from `from` to `to`; nm.
double left_of(const FlatPoint& from, const FlatPoint& to, const FlatPoint& point) {
    const FlatPoint edge = minus(to, from);
    const double length = length_of(edge);
    return length > 0.0 ? cross(edge, minus(point, from)) / length : 0.0;
}

// By how much the cut of an end recedes from its long point at a place along section axis a.
double recedes_at(const Piece& piece, const Lean& lean, std::size_t end, Nm along_a) {
    const double slope = piece.ends[end].slope[0];
    double least = std::numeric_limits<double>::max();
    for (std::size_t k = 0; k < piece.plate_count; ++k) {
        for (const Nm at : lean.along_a[k])
            least = std::min(least, slope * static_cast<double>(at));
    }
    return slope * static_cast<double>(along_a) - least;
}

// Corners in the piece's own axes: along its run and along section axis a.
FlatPolygon own_corners(const Slants& slants, const Piece& piece, std::size_t wall) {
    FlatPolygon corners;
    const Plate& plate = piece.plates[wall];
    if (plate.outline < slants.outlines.size()) {
        for (const auto& [along, across] : slants.outlines[plate.outline].corners) {
            corners.push_back({static_cast<double>(along), static_cast<double>(across)});
        }
        return corners;
    }
    const Lean& lean = slants.leans[piece.lean];
    const auto [lo, hi] = lean.along_a[wall];
    const auto from = [&](Nm at) { return recedes_at(piece, lean, 0, at); };
    const auto to = [&](Nm at) {
        return static_cast<double>(piece.length) - recedes_at(piece, lean, 1, at);
    };
    const auto least = static_cast<double>(lo);
    const auto most = static_cast<double>(hi);
    return {{from(lo), least}, {to(lo), least}, {to(hi), most}, {from(hi), most}};
}

FlatPoint middle_of(const FlatPolygon& polygon) {
    FlatPoint sum{};
    for (const auto& corner : polygon) {
        for (std::size_t k = 0; k < 2; ++k) sum[k] += corner[k];
    }
    const auto count = static_cast<double>(polygon.size());
    return {sum[0] / count, sum[1] / count};
}

// How large a rectangle of that shape about the middle may be, as a factor of `half`.
double room_for(const FlatPolygon& polygon, const FlatPoint& middle, const FlatPoint& half) {
    double least = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const FlatPoint edge = minus(polygon[(i + 1) % polygon.size()], polygon[i]);
        const double length = length_of(edge);
        if (length <= 0.0) continue;
        const double inside = cross(edge, minus(middle, polygon[i])) / length;
        const double reach = (std::abs(edge[1]) * half[0] + std::abs(edge[0]) * half[1]) / length;
        if (reach > 0.0) least = std::min(least, inside / reach);
    }
    return least;
}

// What a convex polygon covers of a strip across one of its axes.
struct Covered {
    FlatPoint lo{std::numeric_limits<double>::max(), std::numeric_limits<double>::max()};
    FlatPoint hi{std::numeric_limits<double>::lowest(), std::numeric_limits<double>::lowest()};

    bool is_empty() const { return !(lo[0] < hi[0] && lo[1] < hi[1]); }
};

void put_in(Covered& covered, const FlatPoint& point) {
    for (std::size_t k = 0; k < 2; ++k) {
        covered.lo[k] = std::min(covered.lo[k], point[k]);
        covered.hi[k] = std::max(covered.hi[k], point[k]);
    }
}

// From one value to another along `across`.
Covered covered_between(const FlatPolygon& polygon, std::size_t across, double from, double to) {
    Covered covered;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const FlatPoint& p = polygon[i];
        const FlatPoint& q = polygon[(i + 1) % polygon.size()];
        if (p[across] >= from && p[across] <= to) put_in(covered, p);
        for (const double at : {from, to}) {
            if ((p[across] < at) == (q[across] < at)) continue;
            const double t = (at - p[across]) / (q[across] - p[across]);
            FlatPoint cut{};
            cut[across] = at;
            cut[1 - across] = p[1 - across] + t * (q[1 - across] - p[1 - across]);
            put_in(covered, cut);
        }
    }
    return covered;
}

void append_slices(std::vector<Box>& slices,
                   const Slants& slants,
                   const Piece& piece,
                   std::size_t wall,
                   const Box& near) {
    const Plate& plate = piece.plates[wall];
    const std::size_t normal = face_axis(piece);
    const auto axes = axes_across(normal);
    const FlatPolygon whole = leaning_wall(slants, piece, axes, wall);
    const std::size_t run = index_of(piece.run);
    const std::size_t across = axes[0] == run ? 0 : 1;
    const Nm from = std::max(plate.box.lo[run], near.lo[run]);
    const Nm to = std::min(plate.box.hi[run], near.hi[run]);
    constexpr Nm count = 48;
    for (Nm i = 0; i < count && from < to; ++i) {
        const Nm start = from + (to - from) / count * i;
        const Nm end = i + 1 < count ? from + (to - from) / count * (i + 1) : to;
        const auto covered =
            covered_between(whole, across, static_cast<double>(start), static_cast<double>(end));
        if (covered.is_empty()) continue;
        Box slice = box_round({covered.lo, covered.hi}, axes, 0);
        slice.lo[normal] = plate.box.lo[normal];
        slice.hi[normal] = plate.box.hi[normal];
        slices.push_back(slice);
    }
}

}  // namespace

FlatPolygon rectangle(const Box& box, const std::array<std::size_t, 2>& axes) {
    const auto at = [](Nm nm) { return static_cast<double>(nm); };
    const double left = at(box.lo[axes[0]]);
    const double right = at(box.hi[axes[0]]);
    const double low = at(box.lo[axes[1]]);
    const double high = at(box.hi[axes[1]]);
    return {{left, low}, {right, low}, {right, high}, {left, high}};
}

FlatPolygon leaning_wall(const Slants& slants,
                         const Piece& piece,
                         const std::array<std::size_t, 2>& axes,
                         std::size_t wall) {
    const Lean& lean = slants.leans[piece.lean];
    FlatPolygon polygon;
    for (const auto& corner : own_corners(slants, piece, wall)) {
        FlatPoint point{};
        for (std::size_t k = 0; k < 2; ++k) {
            point[k] = static_cast<double>(piece.datum[axes[k]]) + lean.run[axes[k]] * corner[0] +
                       lean.a[axes[k]] * corner[1];
        }
        polygon.push_back(point);
    }
    const double turn = lean.run[axes[0]] * lean.a[axes[1]] - lean.run[axes[1]] * lean.a[axes[0]];
    if (turn < 0.0) std::reverse(polygon.begin(), polygon.end());
    return polygon;
}

FlatPolygon left_part(const FlatPolygon& polygon, const FlatPoint& from, const FlatPoint& to) {
    FlatPolygon left;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const FlatPoint& p = polygon[i];
        const FlatPoint& q = polygon[(i + 1) % polygon.size()];
        const double at_p = left_of(from, to, p);
        const double at_q = left_of(from, to, q);
        if (at_p >= 0.0) left.push_back(p);
        if ((at_p >= 0.0) == (at_q >= 0.0)) continue;
        const double t = at_p / (at_p - at_q);
        left.push_back({p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])});
    }
    return left;
}

FlatPolygon common_polygon(const FlatPolygon& a, const FlatPolygon& b) {
    if (b.size() < 3) return {};
    FlatPolygon common = a;
    for (std::size_t i = 0; i < b.size() && common.size() > 2; ++i) {
        common = left_part(common, b[i], b[(i + 1) % b.size()]);
    }
    return common;
}

double area_of(const FlatPolygon& polygon) {
    if (polygon.size() < 3) return 0.0;
    double twice = 0.0;
    for (std::size_t i = 1; i + 1 < polygon.size(); ++i) {
        twice += cross(minus(polygon[i], polygon[0]), minus(polygon[i + 1], polygon[0]));
    }
    return twice / 2.0;
}

double depth_within(const FlatPolygon& polygon, const FlatPoint& point) {
    double least = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        least = std::min(least, left_of(polygon[i], polygon[(i + 1) % polygon.size()], point));
    }
    return least;
}

double distance_to(const FlatPolygon& polygon, const FlatPoint& point) {
    if (depth_within(polygon, point) >= 0.0) return 0.0;
    double least = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const FlatPoint edge = minus(polygon[(i + 1) % polygon.size()], polygon[i]);
        const FlatPoint from = minus(point, polygon[i]);
        const double square = edge[0] * edge[0] + edge[1] * edge[1];
        const double along = edge[0] * from[0] + edge[1] * from[1];
        const double t = square > 0.0 ? std::clamp(along / square, 0.0, 1.0) : 0.0;
        least = std::min(least, length_of({from[0] - t * edge[0], from[1] - t * edge[1]}));
    }
    return least;
}

Box box_round(const FlatPolygon& polygon, const std::array<std::size_t, 2>& axes, Nm position) {
    const std::size_t normal = 3 - axes[0] - axes[1];
    Box box;
    box.lo[normal] = box.hi[normal] = position;
    for (std::size_t k = 0; k < 2; ++k) {
        const auto [least, most] = std::minmax_element(
            polygon.begin(), polygon.end(),
            [k](const FlatPoint& a, const FlatPoint& b) { return a[k] < b[k]; });
        // Coordinates on whole nanometres are found again in spite of the rounding of doubles.
        constexpr double rounding = 1e-2;
        box.lo[axes[k]] = static_cast<Nm>(std::floor((*least)[k] + rounding));
        box.hi[axes[k]] = static_cast<Nm>(std::ceil((*most)[k] - rounding));
    }
    return box;
}

Nm leaning_width(const Slants& slants, const Piece& piece) {
    double width = 0.0;
    for (const auto& corner : own_corners(slants, piece, 0)) width = std::max(width, corner[1]);
    return std::llround(width);
}

std::vector<Box> slices_of(const Slants& slants, const Piece& piece) {
    return slices_of(slants, piece, piece.extents);
}

std::vector<Box> slices_of(const Slants& slants, const Piece& piece, const Box& near) {
    std::vector<Box> slices;
    for (std::size_t wall = 0; wall < piece.plate_count; ++wall) {
        append_slices(slices, slants, piece, wall, near);
    }
    return slices;
}

std::vector<Box> boxes_of(const Slants& slants, const Piece& piece) {
    if (slants.lean(piece)) return slices_of(slants, piece);
    std::vector<Box> boxes;
    for (const auto& plate : piece.walls()) boxes.push_back(plate.box);
    return boxes;
}

Box rectangle_within(const FlatPolygon& polygon,
                     const std::array<std::size_t, 2>& axes,
                     Nm position) {
    const FlatPoint middle = middle_of(polygon);
    FlatPoint best{-1.0, -1.0};
    double best_area = 0.0;
    constexpr int shapes = 32;  // of rectangles, from low to high ones
    for (int i = 1; i < shapes; ++i) {
        const FlatPoint shape{static_cast<double>(i), static_cast<double>(shapes - i)};
        const double room = room_for(polygon, middle, shape);
        const double area = shape[0] * shape[1] * room * room;
        if (room <= 0.0 || area <= best_area) continue;
        best_area = area;
        best = {shape[0] * room, shape[1] * room};
    }
    const std::size_t normal = 3 - axes[0] - axes[1];
    Box box;
    box.lo[normal] = box.hi[normal] = position;
    for (std::size_t k = 0; k < 2; ++k) {
        box.lo[axes[k]] = static_cast<Nm>(std::ceil(middle[k] - best[k]));
        box.hi[axes[k]] = static_cast<Nm>(std::floor(middle[k] + best[k]));
    }
    return box;
}

}  // namespace model
