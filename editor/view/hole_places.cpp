#include "editor/view/hole_places.h"

#include "model/schedule/fastener_words.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <cmath>

namespace editor {
namespace {

using model::Index;
using model::Nm;

const model::Plate* wall_of(const model::Piece& piece, std::uint8_t wall) {
    for (const auto& plate : piece.walls()) {
        if (plate.wall == wall && !plate.is_root_fillet) return &plate;
    }
    return nullptr;
}

// Where a fastener goes through it; else by distance and gauge, along the axes of the frame.
std::optional<model::Point> middle_in_frame(const model::Resolved& resolved,
                                            const model::Piece& piece,
                                            const model::Plate& plate,
                                            const model::Hole& hole) {
    if (hole.fastener < resolved.fasteners.size()) return resolved.fasteners[hole.fastener].at;
    if (piece.lean != model::no_index) return std::nullopt;
    const std::size_t run = model::index_of(piece.run);
    const std::size_t across = 3 - run - plate.normal_axis;
    const int sense = across == model::index_of(piece.a_axis) ? piece.a_sense : piece.b_sense;
    model::Point at = piece.datum;
    at[run] += piece.run_sense * hole.from_datum;
    at[across] += sense * hole.gauge;
    return at;
}

glm::dvec3 as_vector(const model::Point& p) {
    return {static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
}

// How far along a ray it passes the hole's face, mm; none when it passes beside it.
std::optional<double> passes(const engine::Ray& ray, const HolePlace& hole, double beside) {
    const double speed = glm::dot(ray.direction, hole.axis);
    if (std::abs(speed) < 1e-6) return std::nullopt;
    const auto at = hole.at * 1e-6;
    const double along = glm::dot(at - ray.origin, hole.axis) / speed;
    const double off = glm::length(ray.origin + ray.direction * along - at);
    if (along < 0.0 || off > std::max(hole.radius * 1e-6, beside)) return std::nullopt;
    return along;
}

}  // namespace

std::optional<HolePlace> hole_place(const Derived& derived, Index index) {
    const auto& resolved = derived.resolved;
    const auto& hole = resolved.holes[index];
    const auto& piece = resolved.pieces[hole.piece];
    const auto* plate = wall_of(piece, hole.wall);
    if (plate == nullptr) return std::nullopt;
    auto at = middle_in_frame(resolved, piece, *plate, hole);
    if (!at) return std::nullopt;
    const std::size_t normal = plate->normal_axis;
    (*at)[normal] = plate->inward > 0 ? plate->box.lo[normal] : plate->box.hi[normal];
    const auto& frame = resolved.frames[piece.frame];
    std::array<int, 3> out{};
    out[normal] = -plate->inward;
    const auto axis = model::direction_to_room(frame, out);
    return HolePlace{as_vector(model::to_room(frame, *at)),
                     {axis[0], axis[1], axis[2]},
                     static_cast<double>(hole.diameter) / 2.0};
}

std::optional<Index> hole_on(const Derived& derived,
                             const engine::Ray& ray,
                             double most,
                             double beside,
                             std::optional<Index> of_piece) {
    std::optional<Index> nearest;
    for (Index i = 0; i < derived.resolved.holes.size(); ++i) {
        if (of_piece && derived.resolved.holes[i].piece != *of_piece) continue;
        const auto place = hole_place(derived, i);
        const auto along = place ? passes(ray, *place, beside) : std::nullopt;
        if (!along || *along > most) continue;
        most = *along;
        nearest = i;
    }
    return nearest;
}

std::string hole_words(const Derived& derived, const model::Catalogue& catalogue, Index index) {
    const auto& hole = derived.resolved.holes[index];
    std::string words(model::name_of(hole.operation));
    if (hole.drill < catalogue.drills.size()) words += " " + catalogue.drills[hole.drill].name;
    if (hole.fastener >= derived.resolved.fasteners.size()) return words + " for fixing to the van";
    const auto& spec = derived.resolved.fasteners[hole.fastener].spec;
    return words + " for " + model::fastener_words(catalogue, spec).label;
}

}  // namespace editor
