#include "engine/geometry/extrusion.h"

#include "engine/geometry/drilled_face.h"
#include "engine/geometry/mesh_writer.h"
#include "engine/geometry/unit_circle.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace engine {

// One side of the section, as it lies in the section and in the world.
struct ExtrusionSide {
    FacePoint from{};
    FacePoint along{};  // unit
    double length = 0.0;
    std::uint32_t next = 0;  // the point at its end
    std::uint32_t corner_before = 0;
    std::uint32_t holes = 0;
    MeshPoint normal{};
    MeshPoint at_start{};  // its first point at the bar's start and end
    MeshPoint at_end{};
};

struct AcceptedHole {
    CrossHole shape;                       // with from <= to
    std::array<std::uint32_t, 2> sides{};  // at from and at to
    std::array<Rim, 2> rims;
};

struct ExtrusionWork {
    FaceTriangles section;
    DrilledFace face;
    std::vector<AcceptedHole> holes;
    std::vector<ExtrusionSide> sides;
    std::vector<std::uint32_t> end_triangles;
};

namespace {

// How far apart two things must be to be two things, mm.
constexpr double least_gap = 1e-3;
constexpr double same_place = 1e-6;

// ---- what is to be made -------------------------------------------------------------------------

void collect_sides(std::vector<ExtrusionSide>& sides,
                   const Profile& profile,
                   double length,
                   const Placement& place) {
    sides.resize(profile.points.size());
    std::uint32_t first = 0;
    for (const auto loop_end : profile.loop_ends) {
        for (std::uint32_t i = first; i < loop_end; ++i) {
            auto& side = sides[i];
            side.from = profile.points[i];
            side.next = i + 1 == loop_end ? first : i + 1;
            side.corner_before = i == first ? loop_end - 1 : i - 1;
            side.holes = 0;
            const auto& to = profile.points[side.next];
            const double dx = to[0] - side.from[0];
            const double dy = to[1] - side.from[1];
            side.length = std::sqrt(dx * dx + dy * dy);
            const double scale = side.length > 0.0 ? 1.0 / side.length : 0.0;
            side.along = {dx * scale, dy * scale};
            side.normal = to_floats(direction_in(place, {side.along[1], -side.along[0], 0.0}));
            side.at_start = to_floats(point_in(place, {side.from[0], side.from[1], 0.0}));
            side.at_end = to_floats(point_in(place, {side.from[0], side.from[1], length}));
        }
        first = loop_end;
    }
}

std::optional<std::uint32_t> side_at(const std::vector<ExtrusionSide>& sides,
                                     const CrossHole& hole,
                                     double coordinate) {
    const std::size_t axis = hole.axis;
    const std::size_t other = 1 - axis;
    for (std::uint32_t i = 0; i < sides.size(); ++i) {
        const auto& side = sides[i];
        const auto& to = sides[side.next].from;
        if (std::abs(side.from[axis] - coordinate) > same_place) continue;
        if (std::abs(to[axis] - coordinate) > same_place) continue;
        const auto [low, high] = std::minmax(side.from[other], to[other]);
        const double reach = hole.radius + least_gap;
        if (hole.across - reach >= low && hole.across + reach <= high) return i;
    }
    return std::nullopt;
}

bool is_clear(const CrossHole& hole,
              const std::array<std::uint32_t, 2>& sides,
              const std::vector<AcceptedHole>& others) {
    return std::ranges::none_of(others, [&](const AcceptedHole& other) {
        if (other.sides[0] != sides[0] && other.sides[1] != sides[1]) return false;
        const double dx = other.shape.along - hole.along;
        const double dy = other.shape.across - hole.across;
        const double apart = other.shape.radius + hole.radius + least_gap;
        return dx * dx + dy * dy < apart * apart;
    });
}

void fill_rims(AcceptedHole& hole, const Placement& place) {
    const auto& shape = hole.shape;
    const Vector& across = shape.axis == 0 ? place.y : place.x;
    const Vector& drilled = shape.axis == 0 ? place.x : place.y;
    Vector centre = place.origin;
    Vector through{};
    Vector cosine{};
    Vector sine{};
    for (std::size_t i = 0; i < 3; ++i) {
        centre[i] += across[i] * shape.across + drilled[i] * shape.from + place.z[i] * shape.along;
        through[i] = drilled[i] * (shape.to - shape.from);
        cosine[i] = place.z[i] * shape.radius;
        sine[i] = across[i] * shape.radius;
    }
    const auto& circle = unit_circle();
    for (std::size_t k = 0; k < hole_chords; ++k) {
        for (std::size_t i = 0; i < 3; ++i) {
            const double at = centre[i] + circle[k][0] * cosine[i] + circle[k][1] * sine[i];
            hole.rims[0][k][i] = static_cast<float>(at);
            hole.rims[1][k][i] = static_cast<float>(at + through[i]);
        }
    }
}

void collect_holes(ExtrusionWork& work,
                   double length,
                   std::span<const CrossHole> wanted,
                   const Placement& place) {
    work.holes.clear();
    for (const auto& shape : wanted) {
        const double reach = shape.radius + least_gap;
        if (!(shape.radius > least_gap) || !(shape.along - reach >= 0.0) ||
            !(shape.along + reach <= length) || shape.axis > 1)
            continue;
        const auto [from, to] = std::minmax(shape.from, shape.to);
        const auto first = side_at(work.sides, shape, from);
        const auto second = side_at(work.sides, shape, to);
        if (!first || !second || *first == *second) continue;
        if (!is_clear(shape, {*first, *second}, work.holes)) continue;
        ++work.sides[*first].holes;
        ++work.sides[*second].holes;
        auto& hole = work.holes.emplace_back();
        hole.shape = shape;
        hole.shape.from = from;
        hole.shape.to = to;
        hole.sides = {*first, *second};
        fill_rims(hole, place);
    }
}

// ---- the sides ----------------------------------------------------------------------------------

MeshPoint between(const MeshPoint& a, const MeshPoint& b) {
    MeshPoint sum{a[0] + b[0], a[1] + b[1], a[2] + b[2]};
    const float size = std::sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
    if (!(size > 0.0F)) return a;
    for (auto& value : sum) value /= size;
    return sum;
}

void write_plain_side(MeshWriter& writer,
                      const std::vector<ExtrusionSide>& sides,
                      const Profile& profile,
                      std::uint32_t index) {
    const auto& side = sides[index];
    const auto& next = sides[side.next];
    MeshPoint first_normal = side.normal;
    MeshPoint last_normal = side.normal;
    if (profile.corners[index] == Corner::round)
        first_normal = between(side.normal, sides[side.corner_before].normal);
    if (profile.corners[side.next] == Corner::round)
        last_normal = between(side.normal, next.normal);
    const auto a = writer.vertex(next.at_start, last_normal);
    const auto b = writer.vertex(next.at_end, last_normal);
    const auto c = writer.vertex(side.at_end, first_normal);
    const auto d = writer.vertex(side.at_start, first_normal);
    writer.quad(a, b, c, d);
}

// As the face of a side that runs in `side.along`: from there, the bar's run lies to the left, and
// the face's own axes are the run and the way back.
FaceHole face_hole(const ExtrusionSide& side, const AcceptedHole& hole, std::size_t end) {
    const std::size_t other = 1U - hole.shape.axis;
    const bool is_rising = side.along[other] > 0.0;
    const double passed = std::abs(hole.shape.across - side.from[other]);
    return {.at = {hole.shape.along, side.length - passed},
            .radius = hole.shape.radius,
            .is_turned_over = is_rising,
            .rim = &hole.rims[end]};
}

void write_drilled_side(MeshWriter& writer,
                        ExtrusionWork& work,
                        double length,
                        std::uint32_t index) {
    const auto& side = work.sides[index];
    const auto& next = work.sides[side.next];
    work.face.begin(length, side.length, {next.at_start, next.at_end, side.at_end, side.at_start});
    for (const auto& hole : work.holes) {
        if (hole.sides[0] == index) work.face.add(face_hole(side, hole, 0));
        if (hole.sides[1] == index) work.face.add(face_hole(side, hole, 1));
    }
    work.face.write(writer, side.normal);
}

// ---- holes and ends -----------------------------------------------------------------------------

void write_hole(MeshWriter& writer, const AcceptedHole& hole, const Placement& place) {
    const Vector& across = hole.shape.axis == 0 ? place.y : place.x;
    const auto along_axis = to_floats(place.z);
    const auto across_axis = to_floats(across);
    const auto& circle = unit_circle();
    const auto base = writer.next_vertex();
    for (std::size_t k = 0; k < hole_chords; ++k) {
        const auto c = static_cast<float>(circle[k][0]);
        const auto s = static_cast<float>(circle[k][1]);
        MeshPoint inwards{};
        for (std::size_t i = 0; i < 3; ++i) inwards[i] = -c * along_axis[i] - s * across_axis[i];
        writer.vertex(hole.rims[0][k], inwards);
        writer.vertex(hole.rims[1][k], inwards);
    }
    for (std::uint32_t k = 0; k < hole_chords; ++k) {
        const std::uint32_t near = base + 2 * k;
        const std::uint32_t after = base + 2 * ((k + 1) % std::uint32_t{hole_chords});
        // Run, section y, section x is a left-handed order, run, section x, section y a right one.
        if (hole.shape.axis == 0) {
            writer.quad(near, after, after + 1, near + 1);
        } else {
            writer.quad(near, near + 1, after + 1, after);
        }
        const std::size_t next = (k + 1) % hole_chords;
        for (const auto& rim : hole.rims) writer.edge(rim[k], rim[next]);
    }
}

void write_ends(MeshWriter& writer,
                ExtrusionWork& work,
                const Profile& profile,
                const Placement& place) {
    const auto normal = to_floats(place.z);
    const MeshPoint reversed{-normal[0], -normal[1], -normal[2]};
    const auto start = writer.next_vertex();
    for (const auto& side : work.sides) writer.vertex(side.at_start, reversed);
    const auto end = writer.next_vertex();
    for (const auto& side : work.sides) writer.vertex(side.at_end, normal);
    const auto& triangles = work.end_triangles;
    for (std::size_t i = 0; i + 2 < triangles.size(); i += 3) {
        writer.triangle(start + triangles[i], start + triangles[i + 2], start + triangles[i + 1]);
        writer.triangle(end + triangles[i], end + triangles[i + 1], end + triangles[i + 2]);
    }
    for (std::size_t i = 0; i < work.sides.size(); ++i) {
        const auto& side = work.sides[i];
        const auto& next = work.sides[side.next];
        writer.edge(side.at_start, next.at_start);
        writer.edge(side.at_end, next.at_end);
        if (profile.corners[i] == Corner::crisp) writer.edge(side.at_start, side.at_end);
    }
}

bool can_be_made(const Profile& profile, double length) {
    if (!(length > 0.0) || profile.points.size() < 3 || profile.loop_ends.empty()) return false;
    return profile.corners.size() == profile.points.size() &&
           profile.loop_ends.back() == profile.points.size();
}

}  // namespace

MeshCounts extrusion_counts(const Profile& profile, std::size_t holes) {
    const std::size_t points = profile.points.size();
    const std::size_t end_triangles = points + 2 * profile.loop_ends.size();
    return {.vertices = 6 * points + 2 * (hole_chords + hole_vertices_most) * holes,
            .triangles =
                2 * points + 2 * end_triangles + 2 * (hole_chords + hole_triangles_most) * holes,
            .edges = 3 * points + 2 * hole_chords * holes};
}

ExtrusionMesher::ExtrusionMesher() : work_{std::make_unique<ExtrusionWork>()} {}
ExtrusionMesher::~ExtrusionMesher() = default;
ExtrusionMesher::ExtrusionMesher(ExtrusionMesher&&) noexcept = default;
ExtrusionMesher& ExtrusionMesher::operator=(ExtrusionMesher&&) noexcept = default;

std::size_t ExtrusionMesher::append(Mesh& mesh,
                                    const Profile& profile,
                                    double length,
                                    std::span<const CrossHole> holes,
                                    const Placement& place) {
    if (!can_be_made(profile, length)) return 0;
    auto& work = *work_;
    const auto ends = work.section.of(profile.points, profile.loop_ends);
    if (ends.empty()) return 0;
    work.end_triangles.assign(ends.begin(), ends.end());
    collect_sides(work.sides, profile, length, place);
    collect_holes(work, length, holes, place);
    MeshWriter writer{mesh, extrusion_counts(profile, work.holes.size()), is_mirrored(place)};
    for (std::uint32_t i = 0; i < work.sides.size(); ++i) {
        if (work.sides[i].holes == 0) {
            write_plain_side(writer, work.sides, profile, i);
        } else {
            write_drilled_side(writer, work, length, i);
        }
    }
    for (const auto& hole : work.holes) write_hole(writer, hole, place);
    write_ends(writer, work, profile, place);
    return work.holes.size();
}

}  // namespace engine
