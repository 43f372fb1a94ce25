#include "engine/geometry/solid_mesh.h"

#include "engine/geometry/face_triangles.h"
#include "engine/geometry/mesh_writer.h"
#include "engine/geometry/unit_circle.h"
#include "engine/geometry/vectors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace engine {

// A point of an edge, in the solid and in the world.
struct ChordPoint {
    Vector own{};
    MeshPoint world{};
};

struct SolidMeshWork {
    std::vector<ChordPoint> points;                   // of all edges, both ends included
    std::vector<std::uint32_t> first;                 // of each edge's points, and the end
    std::vector<std::array<std::uint32_t, 2>> faces;  // on both sides of each edge
    FaceTriangles triangles;
    std::vector<ChordPoint> loop;
    std::vector<FacePoint> flat;
    std::vector<std::uint32_t> loop_ends;
    std::vector<ChordPoint> left;
    std::vector<ChordPoint> right;
};

namespace {

constexpr double quarter_turn = std::numbers::pi / 2.0;
constexpr std::size_t chords_per_quarter = 4;  // of a rounded corner; a whole turn is a hole

std::size_t chords_of(const SolidEdge& edge) {
    if (!edge.is_arc) return 1;
    if (edge.from == edge.to) return hole_chords;
    const double quarters = edge.angle / quarter_turn;
    return std::max<std::size_t>(
        1, static_cast<std::size_t>(std::ceil(quarters * chords_per_quarter - 1e-6)));
}

class Writer {
public:
    using Work = SolidMeshWork;

    Writer(Work& work, Mesh& mesh, const Solid& solid, const Placement& place)
        : work_{work},
          solid_{solid},
          place_{place},
          writer_{mesh, most(solid), is_mirrored(place)} {}

    bool write() {
        cut_edges();
        note_faces();
        for (const auto& face : solid_.faces) {
            if (face.kind == FaceKind::plane) {
                if (!write_plane(face)) return false;
            } else if (face.loop_count == 2) {
                write_whole_turn(face);
            } else {
                write_part_turn(face);
            }
        }
        write_crisp_edges();
        return true;
    }

private:
    static MeshCounts most(const Solid& solid) {
        std::size_t chords = 0;
        for (const auto& use : solid.uses) chords += chords_of(solid.edges[use.edge]);
        return {.vertices = 2 * chords,
                .triangles = 2 * chords + 2 * solid.loop_ends.size(),
                .edges = chords};
    }

    // ---- edges ----------------------------------------------------------------------------------

    void cut_edges() {
        work_.points.clear();
        work_.first.clear();
        for (const auto& edge : solid_.edges) {
            work_.first.push_back(static_cast<std::uint32_t>(work_.points.size()));
            add_point(solid_.corners[edge.from]);
            const std::size_t chords = chords_of(edge);
            for (std::size_t i = 1; i < chords; ++i) add_point(chord_point(edge, i, chords));
            add_point(solid_.corners[edge.to]);
        }
        work_.first.push_back(static_cast<std::uint32_t>(work_.points.size()));
    }

    static Vector chord_point(const SolidEdge& edge, std::size_t i, std::size_t chords) {
        if (edge.from != edge.to)
            return point_at(edge,
                            edge.angle * static_cast<double>(i) / static_cast<double>(chords));
        const auto& [c, s] = unit_circle()[i];
        return plus(edge.centre, plus(scaled(edge.cosine, c), scaled(edge.sine, s)));
    }

    void add_point(const Vector& own) {
        work_.points.push_back({own, to_floats(point_in(place_, own))});
    }

    std::size_t chords_in(const EdgeUse& use) const {
        return work_.first[use.edge + 1] - work_.first[use.edge] - 1;
    }

    const ChordPoint& point_of(const EdgeUse& use, std::size_t i) const {
        const auto first = work_.first[use.edge];
        return work_.points[use.is_reversed ? work_.first[use.edge + 1] - 1 - i : first + i];
    }

    void note_faces() {
        work_.faces.assign(solid_.edges.size(), {});
        std::vector<bool>& is_noted = is_noted_;
        is_noted.assign(solid_.edges.size(), false);
        for (std::uint32_t f = 0; f < solid_.faces.size(); ++f) {
            const auto& face = solid_.faces[f];
            for (std::uint32_t i = 0; i < face.loop_count; ++i) {
                for (const auto& use : solid_.loop(face.first_loop + i)) {
                    work_.faces[use.edge][is_noted[use.edge] ? 1 : 0] = f;
                    is_noted[use.edge] = true;
                }
            }
        }
    }

    Vector normal_at(const SolidFace& face, const Vector& own) const {
        if (face.kind == FaceKind::plane) return face.axis;
        const auto from_origin = minus(own, face.origin);
        const auto radial =
            unit(minus(from_origin, scaled(face.axis, dot(from_origin, face.axis))));
        return face.is_hollow ? scaled(radial, -1.0) : radial;
    }

    void write_crisp_edges() {
        constexpr double smooth = 0.9999;
        for (std::uint32_t e = 0; e < solid_.edges.size(); ++e) {
            const auto& start = solid_.corners[solid_.edges[e].from];
            const auto& [one, other] = work_.faces[e];
            if (dot(normal_at(solid_.faces[one], start), normal_at(solid_.faces[other], start)) >
                smooth)
                continue;
            for (auto i = work_.first[e]; i + 1 < work_.first[e + 1]; ++i)
                writer_.edge(work_.points[i].world, work_.points[i + 1].world);
        }
    }

    // ---- flat faces -----------------------------------------------------------------------------

    // The plane in which a face looks largest, so that coordinates stay what they are.
    static FacePoint flattened(const Vector& normal, const Vector& own) {
        std::size_t drop = 0;
        for (std::size_t i = 1; i < 3; ++i)
            if (std::abs(normal[i]) > std::abs(normal[drop])) drop = i;
        const double one = own[(drop + 1) % 3];
        const double other = own[(drop + 2) % 3];
        return normal[drop] > 0.0 ? FacePoint{one, other} : FacePoint{other, one};
    }

    bool write_plane(const SolidFace& face) {
        work_.flat.clear();
        work_.loop_ends.clear();
        const auto base = writer_.next_vertex();
        const auto normal = to_floats(direction_in(place_, face.axis));
        for (std::uint32_t i = 0; i < face.loop_count; ++i) {
            for (const auto& use : solid_.loop(face.first_loop + i)) {
                for (std::size_t k = 0; k < chords_in(use); ++k) {
                    const auto& point = point_of(use, k);
                    work_.flat.push_back(flattened(face.axis, point.own));
                    writer_.vertex(point.world, normal);
                }
            }
            work_.loop_ends.push_back(static_cast<std::uint32_t>(work_.flat.size()));
        }
        const auto triangles = work_.triangles.of(work_.flat, work_.loop_ends);
        for (std::size_t i = 0; i + 2 < triangles.size(); i += 3)
            writer_.triangle(base + triangles[i], base + triangles[i + 1], base + triangles[i + 2]);
        return !triangles.empty();
    }

    // ---- cylinders ------------------------------------------------------------------------------

    std::uint32_t vertex(const SolidFace& face, const ChordPoint& point) {
        return writer_.vertex(point.world,
                              to_floats(direction_in(place_, normal_at(face, point.own))));
    }

    // The first loop runs with the face on its left, the second one the other way round.
    void write_whole_turn(const SolidFace& face) {
        const auto one = solid_.loop(face.first_loop).front();
        const auto other = reversed(solid_.loop(face.first_loop + 1).front());
        const auto chords = static_cast<std::uint32_t>(chords_in(one));
        const auto base = writer_.next_vertex();
        for (std::uint32_t k = 0; k < chords; ++k) {
            vertex(face, point_of(one, k));
            vertex(face, point_of(other, k));
        }
        for (std::uint32_t k = 0; k < chords; ++k) {
            const std::uint32_t here = base + 2 * k;
            const std::uint32_t next = base + 2 * ((k + 1) % chords);
            writer_.quad(here, next, next + 1, here + 1);
        }
    }

    // Two arcs with straight lines between them.
    void write_part_turn(const SolidFace& face) {
        const auto loop = solid_.loop(face.first_loop);
        std::array<std::size_t, 2> arcs{};
        std::size_t found = 0;
        for (std::size_t i = 0; i < loop.size() && found < 2; ++i)
            if (solid_.edges[loop[i].edge].is_arc) arcs[found++] = i;
        const auto& near = loop[arcs[0]];
        const auto far = reversed(loop[arcs[1]]);
        const std::size_t chords = chords_in(near);
        for (std::size_t k = 0; k < chords; ++k) {
            work_.left.clear();
            work_.right.clear();
            work_.left.push_back(point_of(near, k));
            work_.right.push_back(point_of(near, k + 1));
            if (k + 1 == chords) {
                for (std::size_t i = arcs[0] + 2; i < arcs[1]; ++i)
                    work_.right.push_back(point_of(loop[i], 0));
            }
            if (k == 0) {
                for (std::size_t i = arcs[0] + loop.size(); i-- > arcs[1] + 2;)
                    work_.left.push_back(point_of(loop[i % loop.size()], 0));
            }
            work_.left.push_back(point_of(far, k));
            work_.right.push_back(point_of(far, k + 1));
            write_strip(face);
        }
    }

    // Between two rising lines of points.
    void write_strip(const SolidFace& face) {
        const auto left = writer_.next_vertex();
        for (const auto& point : work_.left) vertex(face, point);
        const auto right = writer_.next_vertex();
        for (const auto& point : work_.right) vertex(face, point);
        std::uint32_t l = 0;
        std::uint32_t r = 0;
        while (l + 1 < work_.left.size() || r + 1 < work_.right.size()) {
            const bool take_right =
                l + 1 == work_.left.size() ||
                (r + 1 < work_.right.size() && work_.right.size() - r >= work_.left.size() - l);
            if (take_right) {
                writer_.triangle(left + l, right + r, right + r + 1);
                ++r;
            } else {
                writer_.triangle(left + l, right + r, left + l + 1);
                ++l;
            }
        }
    }

    Work& work_;
    const Solid& solid_;
    const Placement& place_;
    MeshWriter writer_;
    std::vector<bool> is_noted_;
};

void cut_back(Mesh& mesh, const std::array<std::size_t, 3>& sizes) {
    mesh.vertices.resize(sizes[0]);
    mesh.triangles.resize(sizes[1]);
    mesh.edges.resize(sizes[2]);
}

}  // namespace

SolidMesher::SolidMesher() : work_{std::make_unique<SolidMeshWork>()} {}
SolidMesher::~SolidMesher() = default;

bool SolidMesher::append(Mesh& mesh, const Solid& solid, const Placement& place) {
    const std::array<std::size_t, 3> before{mesh.vertices.size(), mesh.triangles.size(),
                                            mesh.edges.size()};
    const bool is_whole = !solid.faces.empty() && Writer{*work_, mesh, solid, place}.write();
    if (!is_whole) cut_back(mesh, before);
    return is_whole;
}

}  // namespace engine
