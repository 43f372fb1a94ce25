#include "model/resolve/slanted_end.h"

#include "model/resolve/rect.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace model {
namespace {

// By how much the cut recedes at a place of the section, from the section's origin.
double recedes_at(const Piece& piece, const PieceEnd& end, const Point& at) {
    const std::size_t a = index_of(piece.a_axis);
    const std::size_t b = 3 - index_of(piece.run) - a;
    return end.slope[0] * static_cast<double>((at[a] - piece.datum[a]) * piece.a_sense) +
           end.slope[1] * static_cast<double>((at[b] - piece.datum[b]) * piece.b_sense);
}

struct Reach {
    double least = std::numeric_limits<double>::max();
    double most = std::numeric_limits<double>::lowest();
};

Reach recedes_over(const Piece& piece, const PieceEnd& end, const Box& box) {
    Reach found;
    for (int corner = 0; corner < 8; ++corner) {
        Point at = box.lo;
        for (std::size_t k = 0; k < 3; ++k) {
            if ((corner >> k) & 1) at[k] = box.hi[k];
        }
        const double here = recedes_at(piece, end, at);
        found.least = std::min(found.least, here);
        found.most = std::max(found.most, here);
    }
    return found;
}

// `room` is what the rectangle extends from the far side to the cut where the cut reaches furthest
// in, `gain` what it gains for each length that it is made narrower, `width` how wide it may be.
// With the width x taken off, the area is (width - x) (room + gain x).
double best_width_off(double room, double gain, double width) {
    return std::clamp((width - room / gain) / 2.0, 0.0, width);
}

Box within_one_end(const Piece& piece, const Plate& wall, std::size_t end, Box rect) {
    const std::size_t run = index_of(piece.run);
    const std::size_t across = 3 - run - wall.normal_axis;
    const LongEnd long_point = long_end(piece, end);
    const Nm at = long_point.at;
    const int inwards = long_point.inwards;
    Nm& near_side = inwards > 0 ? rect.lo[run] : rect.hi[run];
    const Nm far_side = inwards > 0 ? rect.hi[run] : rect.lo[run];
    // The wall has a thickness; the cut may reach further in at its other face.
    Box through = rect;
    through.lo[wall.normal_axis] = wall.box.lo[wall.normal_axis];
    through.hi[wall.normal_axis] = wall.box.hi[wall.normal_axis];
    const auto from_end = [&] { return static_cast<double>(inwards * (near_side - at)); };
    const auto recedes = [&] { return recedes_within(piece, end, through); };
    if (recedes() <= from_end()) return rect;

    const bool is_along_a = across == index_of(piece.a_axis);
    const double slope =
        piece.ends[end].slope[is_along_a ? 0 : 1] * (is_along_a ? piece.a_sense : piece.b_sense);
    if (slope != 0.0) {
        const double room = static_cast<double>(inwards * (far_side - at)) - recedes();
        const double width = static_cast<double>(rect.hi[across] - rect.lo[across]);
        const double until_clear = (recedes() - from_end()) / std::abs(slope);
        const double off =
            std::min(best_width_off(room, std::abs(slope), width), std::min(until_clear, width));
        const Nm whole = static_cast<Nm>(std::ceil(off));
        if (slope > 0.0) {
            rect.hi[across] = through.hi[across] -= whole;
        } else {
            rect.lo[across] = through.lo[across] += whole;
        }
    }
    const double left = std::max(from_end(), recedes());
    near_side = at + inwards * static_cast<Nm>(std::ceil(left));
    return rect;
}

// Where the cut goes through the wall at that place across it, at the face where it takes more.
FlatPoint on_cut(const Piece& piece, const Plate& wall, std::size_t end, Nm across_at) {
    const auto axes = axes_across(wall.normal_axis);
    const std::size_t run = index_of(piece.run);
    const std::size_t across = 3 - run - wall.normal_axis;
    Box through = wall.box;
    through.lo[across] = through.hi[across] = across_at;
    const auto [at, inwards] = long_end(piece, end);
    const double along = static_cast<double>(at) + inwards * recedes_within(piece, end, through);
    const bool runs_first = run == axes[0];
    const auto beside = static_cast<double>(across_at);
    return runs_first ? FlatPoint{along, beside} : FlatPoint{beside, along};
}

FlatPolygon beyond_cut(const FlatPolygon& polygon,
                       const Piece& piece,
                       const Plate& wall,
                       std::size_t end) {
    const std::size_t run = index_of(piece.run);
    const std::size_t across = 3 - run - wall.normal_axis;
    const FlatPoint low = on_cut(piece, wall, end, wall.box.lo[across]);
    const FlatPoint high = on_cut(piece, wall, end, wall.box.hi[across]);
    // From low to high, greater places along the run lie to the right where the run is the first
    // axis, and to the left where it is the second.
    const bool runs_first = run == axes_across(wall.normal_axis)[0];
    const bool is_left = (long_end(piece, end).inwards > 0) != runs_first;
    return is_left ? left_part(polygon, low, high) : left_part(polygon, high, low);
}

}  // namespace

bool is_slanted(const PieceEnd& end) { return end.slope != std::array<double, 2>{}; }

double recedes_within(const Piece& piece, std::size_t end, const Box& box) {
    const PieceEnd& cut = piece.ends[end];
    double long_point = std::numeric_limits<double>::max();
    for (const auto& plate : piece.walls()) {
        if (plate.is_root_fillet) continue;
        long_point = std::min(long_point, recedes_over(piece, cut, plate.box).least);
    }
    return recedes_over(piece, cut, box).most - long_point;
}

LongEnd long_end(const Piece& piece, std::size_t end) {
    const bool is_at_datum = end == 0;
    return {piece.datum[index_of(piece.run)] + (is_at_datum ? 0 : piece.run_sense * piece.length),
            is_at_datum ? piece.run_sense : -piece.run_sense};
}

Box within_slanted_ends(const Piece& piece, const Plate& wall, Box rect) {
    for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
        if (!is_slanted(piece.ends[end])) continue;
        if (!has_area(rect, wall.normal_axis)) return rect;
        rect = within_one_end(piece, wall, end, rect);
    }
    return rect;
}

FlatPolygon wall_polygon(const Piece& piece, const Plate& wall) {
    const auto axes = axes_across(wall.normal_axis);
    FlatPolygon polygon = rectangle(wall.box, axes);
    for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
        if (is_slanted(piece.ends[end])) polygon = beyond_cut(polygon, piece, wall, end);
    }
    return polygon;
}

}  // namespace model
