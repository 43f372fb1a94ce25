// Convex polygons on a face of a frame: where a piece that leans lies over walls that do not.
#pragma once

#include "model/resolve/resolved.h"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace model {

// Nanometres along two axes of the frame, or of a lap.
using FlatPoint = std::array<double, 2>;

// Counter-clockwise with the first axis to the right and the second upward; under three corners:
// empty.
using FlatPolygon = std::vector<FlatPoint>;

// What leaning pieces need beside themselves; both lists must outlive it.
struct Slants {
    std::span<const Outline> outlines;
    std::span<const Lean> leans;

    bool lean(const Piece& piece) const { return piece.lean < leans.size(); }
};

// The two axes of a frame across one, in order.
constexpr std::array<std::size_t, 2> axes_across(std::size_t normal) {
    return {normal == 0 ? 1U : 0U, normal == 2 ? 1U : 2U};
}

FlatPolygon rectangle(const Box& box, const std::array<std::size_t, 2>& axes);

// The axis of the frame along which section axis b of a piece that leans points: all its walls
// stand straight up from the plane across it.
constexpr std::size_t face_axis(const Piece& piece) {
    return 3 - index_of(piece.run) - index_of(piece.a_axis);
}

// A wall of a piece that leans in the plane of the axes, seen along the third one; without
// cut-outs.
FlatPolygon leaning_wall(const Slants& slants,
                         const Piece& piece,
                         const std::array<std::size_t, 2>& axes,
                         std::size_t wall = 0);

// How wide its first wall is along section axis a.
Nm leaning_width(const Slants& slants, const Piece& piece);

// What lies to the left of the line through two points, seen along it.
FlatPolygon left_part(const FlatPolygon& polygon, const FlatPoint& from, const FlatPoint& to);

// What lies in both.
FlatPolygon common_polygon(const FlatPolygon& a, const FlatPolygon& b);

// nm2
double area_of(const FlatPolygon& polygon);

// How far a point lies from the nearest edge: above 0 within, below 0 outside of the line of some
// edge.
double depth_within(const FlatPolygon& polygon, const FlatPoint& point);

// How far a point outside lies from the polygon; 0 within it.
double distance_to(const FlatPolygon& polygon, const FlatPoint& point);

// The least box that holds it on whole nanometres, flat at `position` across the axes.
Box box_round(const FlatPolygon& polygon, const std::array<std::size_t, 2>& axes, Nm position);

// Boxes that together hold a piece that leans, much closer than one does.
std::vector<Box> slices_of(const Slants& slants, const Piece& piece);

// The same of what lies within a stretch of `near` along the piece's run; the closer the shorter
// that is.
std::vector<Box> slices_of(const Slants& slants, const Piece& piece, const Box& near);

// Its slices where it leans, else its walls.
std::vector<Box> boxes_of(const Slants& slants, const Piece& piece);

// The largest rectangle along the axes that was found within it, on whole nanometres: its middle
// lies on that of the polygon. Empty: lo > hi.
Box rectangle_within(const FlatPolygon& polygon,
                     const std::array<std::size_t, 2>& axes,
                     Nm position);

}  // namespace model
