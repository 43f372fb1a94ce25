#include "engine/geometry/drilled_face.h"

#include <cmath>

namespace engine {
namespace {

// A collar is a square round a hole, this much wider than the hole. Between rim and collar the
// triangles are always the same, so only the collars' few corners have to be swept.
constexpr double collar_share = 1.15;
constexpr double least_gap = 1e-3;  // mm between two collars, and to the face's edges
constexpr std::uint32_t quarter = hole_chords / 4;

// The collar's corners, counter-clockwise from the first quadrant, as shares of its half width.
constexpr std::array<std::array<int, 2>, 4> quadrants{{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}}};

// Where the collar's corners lie in the world, from four corners of the rim.
std::array<MeshPoint, 4> collar_corners(const Rim& rim) {
    constexpr auto share = static_cast<float>(collar_share / 2.0);
    std::array<MeshPoint, 4> corners{};
    for (std::size_t i = 0; i < 3; ++i) {
        const float middle = (rim[0][i] + rim[2 * quarter][i]) / 2.0F;
        const float along = (rim[0][i] - rim[2 * quarter][i]) * share;
        const float across = (rim[quarter][i] - rim[3 * quarter][i]) * share;
        for (std::size_t q = 0; q < 4; ++q) {
            corners[q][i] = middle + static_cast<float>(quadrants[q][0]) * along +
                            static_cast<float>(quadrants[q][1]) * across;
        }
    }
    return corners;
}

// From the rim, whose first corner is `rim`, out to the collar. The collar's corners stand
// clockwise in the face's plane from `collar` on: where the rim's order does not, the quadrants
// come in falling order.
void write_collar(MeshWriter& writer, std::uint32_t rim, std::uint32_t collar, bool turned_over) {
    for (std::uint32_t q = 0; q < 4; ++q) {
        const std::uint32_t own = collar + (turned_over ? q : 3 - q);
        const std::uint32_t next = collar + (turned_over ? (q + 1) % 4 : 3 - (q + 1) % 4);
        for (std::uint32_t k = q * quarter; k < (q + 1) * quarter; ++k) {
            const std::uint32_t a = rim + k;
            const std::uint32_t b = rim + (k + 1) % std::uint32_t{hole_chords};
            writer.triangle(turned_over ? b : a, own, turned_over ? a : b);
        }
        const std::uint32_t end = rim + (q + 1) % 4 * quarter;
        writer.triangle(end, turned_over ? next : own, turned_over ? own : next);
    }
}

}  // namespace

void DrilledFace::begin(double width, double height, const std::array<MeshPoint, 4>& corners) {
    width_ = width;
    height_ = height;
    corners_ = corners;
    holes_.clear();
}

void DrilledFace::write(MeshWriter& writer, const MeshPoint& normal) {
    points_.assign({{0.0, 0.0}, {width_, 0.0}, {width_, height_}, {0.0, height_}});
    loop_ends_.assign({4U});
    if (has_room_for_collars()) {
        write_with_collars(writer, normal);
    } else {
        write_whole(writer, normal);
    }
}

bool DrilledFace::has_room_for_collars() const {
    for (std::size_t i = 0; i < holes_.size(); ++i) {
        const auto& hole = holes_[i];
        const double reach = hole.radius * collar_share + least_gap;
        if (hole.at[0] < reach || hole.at[0] > width_ - reach || hole.at[1] < reach ||
            hole.at[1] > height_ - reach)
            return false;
        for (std::size_t k = 0; k < i; ++k) {
            const auto& other = holes_[k];
            const double apart = reach + other.radius * collar_share;
            if (std::abs(hole.at[0] - other.at[0]) < apart &&
                std::abs(hole.at[1] - other.at[1]) < apart)
                return false;
        }
    }
    return true;
}

void DrilledFace::write_with_collars(MeshWriter& writer, const MeshPoint& normal) {
    const auto base = writer.next_vertex();
    for (const auto& corner : corners_) writer.vertex(corner, normal);
    for (const auto& hole : holes_) {
        const double half = hole.radius * collar_share;
        const auto collar = collar_corners(*hole.rim);
        for (std::size_t k = 0; k < 4; ++k) {
            // Clockwise in the face's plane: as the rim's order runs where that is turned over.
            const std::size_t q = hole.is_turned_over ? k : 3 - k;
            const double y = quadrants[q][1] * (hole.is_turned_over ? -half : half);
            points_.push_back({hole.at[0] + quadrants[q][0] * half, hole.at[1] + y});
            writer.vertex(collar[q], normal);
        }
        loop_ends_.push_back(static_cast<std::uint32_t>(points_.size()));
    }
    write_between_loops(writer, base);
    for (std::size_t i = 0; i < holes_.size(); ++i) {
        const auto& hole = holes_[i];
        const auto rim = writer.next_vertex();
        for (const auto& corner : *hole.rim) writer.vertex(corner, normal);
        const auto collar = base + 4 + 4 * static_cast<std::uint32_t>(i);
        write_collar(writer, rim, collar, hole.is_turned_over);
    }
}

void DrilledFace::write_whole(MeshWriter& writer, const MeshPoint& normal) {
    const auto base = writer.next_vertex();
    for (const auto& corner : corners_) writer.vertex(corner, normal);
    const auto& circle = unit_circle();
    for (const auto& hole : holes_) {
        for (std::size_t k = 0; k < hole_chords; ++k) {
            const std::size_t at = hole.is_turned_over ? k : hole_chords - 1 - k;
            const double y = circle[at][1] * (hole.is_turned_over ? -hole.radius : hole.radius);
            points_.push_back({hole.at[0] + circle[at][0] * hole.radius, hole.at[1] + y});
            writer.vertex((*hole.rim)[at], normal);
        }
        loop_ends_.push_back(static_cast<std::uint32_t>(points_.size()));
    }
    write_between_loops(writer, base);
}

void DrilledFace::write_between_loops(MeshWriter& writer, std::uint32_t base) {
    const auto triangles = triangles_.of(points_, loop_ends_);
    for (std::size_t i = 0; i + 2 < triangles.size(); i += 3)
        writer.triangle(base + triangles[i], base + triangles[i + 1], base + triangles[i + 2]);
}

}  // namespace engine
