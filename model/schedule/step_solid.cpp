#include "model/schedule/step_solid.h"

#include "engine/geometry/vectors.h"

#include <cmath>
#include <numbers>
#include <vector>

namespace model {
namespace {

using engine::EdgeUse;
using engine::FaceKind;
using engine::SolidEdge;
using engine::SolidFace;
using engine::Vector;

// At right angles to a direction: across the coordinate axis that it is furthest from.
Vector any_across(const Vector& direction) {
    std::size_t least = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (std::abs(direction[i]) < std::abs(direction[least])) least = i;
    Vector axis{};
    axis[least] = 1.0;
    return engine::unit(engine::cross(direction, axis));
}

struct Ellipse {
    Vector major{};
    Vector minor{};
};

// Principal half axes from two conjugate ones (Rytz; from memory).
Ellipse principal(const Vector& p, const Vector& q) {
    const double turn =
        0.5 * std::atan2(2.0 * engine::dot(p, q), engine::dot(p, p) - engine::dot(q, q));
    const double c = std::cos(turn);
    const double s = std::sin(turn);
    return {.major = engine::plus(engine::scaled(p, c), engine::scaled(q, s)),
            .minor = engine::plus(engine::scaled(p, -s), engine::scaled(q, c))};
}

class Writer {
public:
    Writer(StepText& step, const engine::Solid& solid) : step_{step}, solid_{solid} {}

    StepId write(std::string_view name) {
        for (const auto& corner : solid_.corners) vertices_.push_back(vertex(corner));
        for (const auto& edge : solid_.edges) edges_.push_back(edge_curve(edge));
        std::vector<StepId> faces;
        for (const auto& face : solid_.faces) faces.push_back(advanced_face(face));
        const auto shell = step_.begin("CLOSED_SHELL");
        step_.raw("''");
        list(faces);
        step_.end();
        const auto id = step_.begin("MANIFOLD_SOLID_BREP");
        step_.text(name).raw(",").ref(shell).end();
        return id;
    }

private:
    struct Vertex {
        StepId point = 0;
        StepId id = 0;
    };

    void list(const std::vector<StepId>& ids) {
        step_.raw(",(");
        for (std::size_t i = 0; i < ids.size(); ++i) {
            if (i > 0) step_.raw(",");
            step_.ref(ids[i]);
        }
        step_.raw(")");
    }

    Vertex vertex(const Vector& at) {
        const auto point = step_.point(at);
        const auto id = step_.begin("VERTEX_POINT");
        step_.raw("'',").ref(point).end();
        return {point, id};
    }

    StepId line(std::uint32_t from, std::uint32_t to) {
        const auto step = engine::minus(solid_.corners[to], solid_.corners[from]);
        const auto direction = step_.direction(engine::unit(step));
        const auto vector = step_.begin("VECTOR");
        step_.raw("'',").ref(direction).raw(",").real(engine::length_of(step)).end();
        const auto id = step_.begin("LINE");
        step_.raw("'',").ref(vertices_[from].point).raw(",").ref(vector).end();
        return id;
    }

    StepId arc(const SolidEdge& edge) {
        const auto axis = engine::unit(engine::cross(edge.cosine, edge.sine));
        const double radius = engine::length_of(edge.cosine);
        const bool is_circle =
            std::abs(engine::dot(edge.cosine, edge.sine)) < 1e-9 * radius * radius &&
            std::abs(engine::length_of(edge.sine) - radius) < 1e-9 * radius;
        if (is_circle) {
            const auto axes = step_.axes(edge.centre, axis, engine::unit(edge.cosine));
            const auto id = step_.begin("CIRCLE");
            step_.raw("'',").ref(axes).raw(",").real(radius).end();
            return id;
        }
        const auto ellipse = principal(edge.cosine, edge.sine);
        const auto axes = step_.axes(edge.centre, axis, engine::unit(ellipse.major));
        const auto id = step_.begin("ELLIPSE");
        step_.raw("'',").ref(axes).raw(",").real(engine::length_of(ellipse.major));
        step_.raw(",").real(engine::length_of(ellipse.minor)).end();
        return id;
    }

    StepId edge_between(std::uint32_t from, std::uint32_t to, StepId curve) {
        const auto id = step_.begin("EDGE_CURVE");
        step_.raw("'',").ref(vertices_[from].id).raw(",").ref(vertices_[to].id);
        step_.raw(",").ref(curve).raw(",.T.").end();
        return id;
    }

    StepId edge_curve(const SolidEdge& edge) {
        return edge_between(edge.from, edge.to, edge.is_arc ? arc(edge) : line(edge.from, edge.to));
    }

    StepId oriented(StepId edge, bool is_reversed) {
        const auto id = step_.begin("ORIENTED_EDGE");
        step_.raw("'',*,*,").ref(edge).raw(is_reversed ? ",.F." : ",.T.").end();
        return id;
    }

    StepId bound(const std::vector<StepId>& uses, bool is_outer) {
        const auto loop = step_.begin("EDGE_LOOP");
        step_.raw("''");
        list(uses);
        step_.end();
        const auto id = step_.begin(is_outer ? "FACE_OUTER_BOUND" : "FACE_BOUND");
        step_.raw("'',").ref(loop).raw(",.T.").end();
        return id;
    }

    StepId bound(std::span<const EdgeUse> loop, bool is_outer) {
        std::vector<StepId> uses;
        for (const auto& use : loop) uses.push_back(oriented(edges_[use.edge], use.is_reversed));
        return bound(uses, is_outer);
    }

    // Once round, up the seam, once round the other way, down the seam.
    StepId seamed_bound(const SolidFace& face) {
        const auto one = solid_.loop(face.first_loop).front();
        const auto other = solid_.loop(face.first_loop + 1).front();
        const auto from = solid_.first_corner(one);
        const auto to = solid_.first_corner(other);
        const auto seam = edge_between(from, to, line(from, to));
        return bound({oriented(edges_[one.edge], one.is_reversed), oriented(seam, false),
                      oriented(edges_[other.edge], other.is_reversed), oriented(seam, true)},
                     true);
    }

    StepId surface(const SolidFace& face) {
        if (face.kind == FaceKind::plane) {
            const auto axes = step_.axes(face.origin, face.axis, any_across(face.axis));
            const auto id = step_.begin("PLANE");
            step_.raw("'',").ref(axes).end();
            return id;
        }
        const auto start = solid_.corners[solid_.first_corner(solid_.loop(face.first_loop)[0])];
        const auto from_axis = engine::minus(start, face.origin);
        const auto radial =
            engine::minus(from_axis, engine::scaled(face.axis, engine::dot(from_axis, face.axis)));
        const auto axes = step_.axes(face.origin, face.axis, engine::unit(radial));
        const auto id = step_.begin("CYLINDRICAL_SURFACE");
        step_.raw("'',").ref(axes).raw(",").real(face.radius).end();
        return id;
    }

    StepId advanced_face(const SolidFace& face) {
        std::vector<StepId> bounds;
        if (face.kind == FaceKind::cylinder && face.loop_count == 2) {
            bounds.push_back(seamed_bound(face));
        } else {
            for (std::uint32_t i = 0; i < face.loop_count; ++i)
                bounds.push_back(bound(solid_.loop(face.first_loop + i), i == 0));
        }
        const auto on = surface(face);
        const auto id = step_.begin("ADVANCED_FACE");
        step_.raw("''");
        list(bounds);
        step_.raw(",").ref(on).raw(face.is_hollow ? ",.F." : ",.T.").end();
        return id;
    }

    StepText& step_;
    const engine::Solid& solid_;
    std::vector<Vertex> vertices_;
    std::vector<StepId> edges_;
};

}  // namespace

StepId step_solid(StepText& step, const engine::Solid& solid, std::string_view name) {
    return Writer{step, solid}.write(name);
}

}  // namespace model
