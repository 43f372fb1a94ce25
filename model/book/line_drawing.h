// Bodies as a line drawing: seen from one side, what is behind hidden by what is before it.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/piece_bodies.h"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace model {

// Where one looks from: unit vectors at right angles, of which `towards` points at the viewer.
struct Sight {
    engine::Vector right{1.0, 0.0, 0.0};
    engine::Vector up{0.0, 0.0, 1.0};
    engine::Vector towards{0.0, -1.0, 0.0};
};

// From before, from the left of it, from above, and from a corner before it, all in third-angle
// manner: what is up on the sheet of a top view lies behind.
inline constexpr Sight front_sight{};
inline constexpr Sight left_sight{{0.0, -1.0, 0.0}, {0.0, 0.0, 1.0}, {-1.0, 0.0, 0.0}};
inline constexpr Sight top_sight{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}};
Sight corner_sight();

// mm of the thing itself, x to the right and y up as seen.
using SeenPoint = std::array<double, 2>;

struct SeenBody {
    Index piece = 0;
    std::vector<std::vector<SeenPoint>> faces;     // those that look at the viewer
    std::vector<SeenPoint> round;                  // what it covers
    std::vector<std::vector<SeenPoint>> outlines;  // edges where the piece really ends or bends
};

// In the order in which they are painted: each hides what stands before it in the list.
std::vector<SeenBody> seen_bodies(std::span<const BodyOfPiece> bodies, const Sight& sight);

SeenPoint seen_point(const engine::Vector& at, const Sight& sight);

// The place of what is seen on the page.
struct OnPage {
    engine::PagePoint origin;  // of the point 0, 0
    double scale = 1.0;

    engine::PagePoint operator()(const SeenPoint& p) const {
        return {origin.x + p[0] * scale, origin.y - p[1] * scale};
    }
};

// Left, lower, right, upper of all that is seen; all 0 where nothing is.
struct SeenBounds {
    SeenPoint lo{};
    SeenPoint hi{};

    double width() const { return hi[0] - lo[0]; }
    double height() const { return hi[1] - lo[1]; }
};
SeenBounds bounds_of(std::span<const SeenBody> seen);

// As large as it can be in the middle of the box.
OnPage fitted(const SeenBounds& bounds, const engine::PageBox& box);

// `bold` tells which pieces are drawn wide and grey, and the others only round; empty: all alike.
void draw_seen(engine::Page& page,
               std::span<const SeenBody> seen,
               const OnPage& place,
               const std::vector<bool>& bold = {});

// The outlines of a piece over all that hides it, wide and dashed.
void draw_hidden(engine::Page& page,
                 std::span<const SeenBody> seen,
                 const OnPage& place,
                 Index piece);

// The piece that is seen at that place, if any.
std::optional<Index> piece_at(std::span<const SeenBody> seen, const SeenPoint& at);

// Places at which a piece is seen, along the middle of the largest face that shows: the middle
// first, none near its ends where there are others. Empty where nothing of it is seen.
std::vector<SeenPoint> places_to_point_at(std::span<const SeenBody> seen, Index piece);

// The same as if nothing hid it.
std::vector<SeenPoint> places_of_hidden(std::span<const SeenBody> seen, Index piece);

// Whether so little of it shows that nobody would find it.
bool is_hidden(std::span<const SeenBody> seen, Index piece);

}  // namespace model
