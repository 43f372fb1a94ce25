#include "editor/view/tape_ends.h"

#include "editor/places/piece_words.h"
#include "editor/room_scene.h"
#include "editor/view/hole_places.h"
#include "model/resolve/named_values.h"
#include "model/room/obstacle_shape.h"
#include "model/schedule/length_texts.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <vector>

namespace editor {
namespace {

using model::Index;
using model::Nm;

constexpr double nm = 1.0e6;            // in a millimetre
constexpr double float_error = 2000.0;  // nm: of a place that went through the scene's floats
constexpr double on_face = 0.02;        // mm

// Where a piece or an obstacle has its faces, nm along each axis of the room.
using Stated = std::array<std::vector<double>, 3>;

Stated stated_by_piece(const Derived& derived, Index index) {
    const auto& piece = derived.resolved.pieces[index];
    const auto& frame = derived.resolved.frames[piece.frame];
    Stated stated;
    for (const auto& plate : piece.walls()) {
        for (const auto& corner : {plate.box.lo, plate.box.hi}) {
            const auto at = model::to_room(frame, corner);
            for (std::size_t k = 0; k < 3; ++k) stated[k].push_back(static_cast<double>(at[k]));
        }
    }
    return stated;
}

Stated stated_by_obstacle(const Derived& derived, Index index) {
    const auto& shape = derived.project->room[index].shape;
    const model::NamedValues values{*derived.project, derived.resolved};
    Stated stated;
    for (const auto& body : model::obstacle_shape(shape, values).bodies) {
        for (const auto* face : {&body.near, &body.far}) {
            for (const auto& at : *face) {
                for (std::size_t k = 0; k < 3; ++k) stated[k].push_back(std::round(at[k] * nm));
            }
        }
    }
    return stated;
}

// What went through floats, put back onto what is stated near it.
glm::dvec3 put_back(const glm::dvec3& mm, const Stated& stated) {
    glm::dvec3 at = mm * nm;
    for (int k = 0; k < 3; ++k) {
        double least = float_error;
        const double rough = at[k];
        at[k] = std::round(rough);
        for (const double value : stated[static_cast<std::size_t>(k)]) {
            if (std::abs(value - rough) >= least) continue;
            least = std::abs(value - rough);
            at[k] = value;
        }
    }
    return at;
}

glm::dvec3 straightened(glm::dvec3 normal) {
    for (int k = 0; k < 3; ++k) {
        if (std::abs(normal[k]) < 0.999999) continue;
        const double sense = normal[k] > 0.0 ? 1.0 : -1.0;
        normal = {0.0, 0.0, 0.0};
        normal[k] = sense;
        break;
    }
    return normal;
}

struct Edge {
    glm::dvec3 from;
    glm::dvec3 to;
};

glm::dvec3 as_vector(const std::array<float, 3>& at) {
    return {static_cast<double>(at[0]), static_cast<double>(at[1]), static_cast<double>(at[2])};
}

// The crisp edges of the item that was hit, of the face that was hit; mm.
std::vector<Edge> edges_of_face(const engine::SceneData& scene, const engine::PickHit& hit) {
    std::vector<Edge> edges;
    const auto is_on = [&](const glm::dvec3& at) {
        return std::abs(glm::dot(hit.normal, at - hit.at)) < on_face &&
               engine::is_left_by(scene.cut.get(), at);
    };
    const auto add_from = [&](const engine::SceneBatch& batch) {
        std::size_t begin = 0;
        for (const auto& item : batch.items) {
            if (item.pick_id == hit.pick_id) {
                for (std::size_t i = begin; i + 1 < item.edges_end; i += 2) {
                    const Edge edge{as_vector(batch.mesh.edges[i]),
                                    as_vector(batch.mesh.edges[i + 1])};
                    if (is_on(edge.from) && is_on(edge.to)) edges.push_back(edge);
                }
            }
            begin = item.edges_end;
        }
    };
    add_from(scene.solid);
    add_from(scene.translucent);
    if (scene.cut) add_from(scene.cut->faces);
    return edges;
}

// Of a rim or a line that goes straight on it is no corner.
bool is_corner(const glm::dvec3& at, std::span<const Edge> edges) {
    std::vector<glm::dvec3> ways;
    for (const auto& edge : edges) {
        const auto along = edge.to - edge.from;
        if (glm::length(along) < on_face) continue;
        if (glm::distance(edge.from, at) < on_face) ways.push_back(glm::normalize(along));
        if (glm::distance(edge.to, at) < on_face) ways.push_back(-glm::normalize(along));
    }
    if (ways.size() < 2) return true;
    for (std::size_t i = 1; i < ways.size(); ++i) {
        if (std::abs(glm::dot(ways[0], ways[i])) < 0.9) return true;
    }
    return false;
}

class Finder {
public:
    Finder(const TapeSight& sight, glm::dvec2 pixel) : sight_{sight}, pixel_{pixel} {}

    double off(const glm::dvec3& mm) const {
        const auto at = engine::pixel_of(sight_.camera, mm, sight_.viewport);
        return at ? glm::distance(*at, pixel_) : 1.0e9;
    }

    struct Corner {
        glm::dvec3 at;
        double off = 0.0;  // pixels
    };

    std::optional<Corner> corner(std::span<const Edge> edges) const {
        std::optional<Corner> best;
        for (const auto& edge : edges) {
            for (const auto& at : {edge.from, edge.to}) {
                const double here = off(at);
                if (here >= (best ? best->off : sight_.reach) || !is_corner(at, edges)) continue;
                best = Corner{at, here};
            }
        }
        return best;
    }

    struct Nearest {
        Edge edge;
        glm::dvec3 at;  // on it, nearest to the pixel
        double off = 0.0;
    };

    std::optional<Nearest> edge(std::span<const Edge> edges) const {
        std::optional<Nearest> best;
        double least = 0.75 * sight_.reach;
        for (const auto& it : edges) {
            const auto at = nearest_on(it);
            const double here = at ? off(*at) : least;
            if (here >= least) continue;
            const bool is_rim = !is_corner(it.from, edges) && !is_corner(it.to, edges) &&
                                glm::distance(it.from, it.to) < 4.0;
            if (is_rim) continue;
            least = here;
            best = Nearest{it, *at, here};
        }
        return best;
    }

private:
    std::optional<glm::dvec3> nearest_on(const Edge& edge) const {
        const auto a = engine::pixel_of(sight_.camera, edge.from, sight_.viewport);
        const auto b = engine::pixel_of(sight_.camera, edge.to, sight_.viewport);
        if (!a || !b) return std::nullopt;
        const auto along = *b - *a;
        const double length = glm::dot(along, along);
        if (length < 1.0) return std::nullopt;
        const double share = std::clamp(glm::dot(pixel_ - *a, along) / length, 0.0, 1.0);
        return edge.from + (edge.to - edge.from) * share;
    }

    const TapeSight& sight_;
    glm::dvec2 pixel_;
};

bool is_shown(const engine::SceneData& scene, Index piece) {
    return std::ranges::any_of(
        scene.solid.items, [&](const engine::SceneItem& item) { return item.pick_id == piece; });
}

std::optional<TapeEnd> hole_end(const TapeSight& sight,
                                const engine::Ray& ray,
                                const std::optional<engine::PickHit>& hit) {
    constexpr double through = 12.0;  // mm: a hole seen from the inside of its wall
    const double pixel = engine::mm_per_pixel(sight.camera, sight.viewport);
    const auto hole =
        hole_on(sight.derived, ray, hit ? hit->along + through : 1.0e7, 0.4 * sight.reach * pixel);
    if (!hole) return std::nullopt;
    const auto place = hole_place(sight.derived, *hole);
    const Index piece = sight.derived.resolved.holes[*hole].piece;
    if (!is_shown(sight.scene, piece)) return std::nullopt;
    if (!engine::is_left_by(sight.scene.cut.get(), place->at / nm)) return std::nullopt;
    return TapeEnd{.on = TapeOn::hole,
                   .piece = piece,
                   .of = member_words(sight.derived, piece),
                   .at = place->at,
                   .normal = place->axis};
}

std::string name_of(const Derived& derived, engine::PickId pick) {
    if (const auto obstacle = obstacle_of_pick(pick)) return derived.project->room[*obstacle].name;
    return member_words(derived, pick);
}

Stated stated_by(const Derived& derived, engine::PickId pick) {
    if (const auto obstacle = obstacle_of_pick(pick)) return stated_by_obstacle(derived, *obstacle);
    return stated_by_piece(derived, pick);
}

struct Line {
    glm::dvec3 from;
    glm::dvec3 to;
};

glm::dvec3 nearest_on(const TapeEnd& edge, const glm::dvec3& at) {
    const auto along = edge.to - edge.from;
    const double size = glm::dot(along, along);
    if (size <= 0.0) return edge.from;
    // Along one axis alone that is the other end's own number, exactly.
    for (int k = 0; k < 3; ++k) {
        if (std::abs(along[k]) * std::abs(along[k]) != size) continue;
        auto on = edge.from;
        on[k] = std::clamp(at[k], std::min(edge.from[k], edge.to[k]),
                           std::max(edge.from[k], edge.to[k]));
        return on;
    }
    return edge.from + along * std::clamp(glm::dot(at - edge.from, along) / size, 0.0, 1.0);
}

// Each in turn brought nearest to the other, until they rest: what lies between is convex.
Line between_edges(const TapeEnd& a, const TapeEnd& b) {
    Line line{a.at, nearest_on(b, a.at)};
    for (int i = 0; i < 200; ++i) {
        const auto from = nearest_on(a, line.to);
        const auto to = nearest_on(b, from);
        if (from == line.from && to == line.to) break;
        line = {from, to};
    }
    return line;
}

bool is_level_with(const TapeEnd& face, const TapeEnd& other) {
    if (other.on == TapeOn::edge) {
        const auto along = other.to - other.from;
        return std::abs(glm::dot(face.normal, along)) <= 1e-6 * glm::length(along);
    }
    if (other.on == TapeOn::face) return std::abs(glm::dot(face.normal, other.normal)) > 0.999999;
    return true;
}

// From the face at right angles to the other end.
Line from_face(const TapeEnd& face, const TapeEnd& other) {
    const double height = glm::dot(face.normal, other.at - face.at);
    return {other.at - face.normal * height, other.at};
}

Line line_between(const TapeEnd& a, const TapeEnd& b) {
    if (a.on == TapeOn::face && is_level_with(a, b)) {
        if (b.on != TapeOn::face) return from_face(a, b);
        const auto back = from_face(b, a);  // starts where the first face was pointed at
        return {back.to, back.from};
    }
    if (b.on == TapeOn::face && is_level_with(b, a)) {
        const auto back = from_face(b, a);
        return {back.to, back.from};
    }
    if (a.on == TapeOn::edge && b.on == TapeOn::edge) return between_edges(a, b);
    if (a.on == TapeOn::edge && b.on != TapeOn::face) return {nearest_on(a, b.at), b.at};
    if (b.on == TapeOn::edge && a.on != TapeOn::face) return {a.at, nearest_on(b, a.at)};
    return {a.at, b.at};
}

}  // namespace

std::optional<TapeEnd> tape_end_at(const TapeSight& sight, glm::dvec2 pixel) {
    const auto ray = engine::ray_through(sight.camera, pixel, sight.viewport);
    const auto hit = engine::pick_at(sight.scene, sight.camera, pixel, sight.viewport, 5.0);
    const Finder finder{sight, pixel};
    const auto hole = hole_end(sight, ray, hit);
    if (!hit || hit->pick_id == engine::no_pick) return hole;
    const auto edges = edges_of_face(sight.scene, *hit);
    const auto corner = finder.corner(edges);
    const auto edge = corner ? std::nullopt : finder.edge(edges);
    // A hole is wide, a corner is not: what is within reach goes before it, unless the pointer is
    // nearer to its middle.
    const double to_middle = hole ? finder.off(hole->at / nm) : 0.0;
    const double beside = corner ? corner->off : edge ? edge->off : to_middle;
    if (hole && to_middle <= beside) return hole;
    const auto stated = stated_by(sight.derived, hit->pick_id);
    TapeEnd end{.of = name_of(sight.derived, hit->pick_id),
                .at = put_back(hit->at, stated),
                .normal = straightened(hit->normal)};
    if (!obstacle_of_pick(hit->pick_id)) end.piece = hit->pick_id;
    if (corner) {
        end.on = TapeOn::corner;
        end.at = put_back(corner->at, stated);
    } else if (edge) {
        end.on = TapeOn::edge;
        end.at = put_back(edge->at, stated);
        end.from = put_back(edge->edge.from, stated);
        end.to = put_back(edge->edge.to, stated);
    }
    return end;
}

TapeReading tape_reading(const TapeTaken& taken) {
    const auto line = line_between(taken.first, taken.second);
    TapeReading reading{line.from, line.to, 0.0, glm::abs(line.to - line.from)};
    const auto& parts = reading.parts;
    const double most = std::max({parts.x, parts.y, parts.z});
    reading.length = parts.x + parts.y + parts.z == most ? most : glm::length(parts);
    return reading;
}

std::string tape_words(double length, const engine::TapeStyle& shown) {
    return model::shown_text(engine::Length::from_nm(std::llround(length)), shown);
}

std::string words_of(const TapeEnd& end) {
    switch (end.on) {
        case TapeOn::corner:
            return "corner of " + end.of;
        case TapeOn::hole:
            return "hole in " + end.of;
        case TapeOn::edge:
            return "edge of " + end.of;
        case TapeOn::face:
            return "face of " + end.of;
    }
    return end.of;
}

}  // namespace editor
