#include "editor/view/plane_snap.h"

#include "editor/dimension_values.h"
#include "editor/view/plane_grid.h"
#include "model/resolve/named_values.h"
#include "model/room/obstacle_shape.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace editor {
namespace {

using model::Nm;

// One axis of a frame as it lies in the room.
struct AxisInRoom {
    std::size_t room = 0;
    int sign = 1;
    Nm origin = 0;

    Nm in_frame(Nm at) const { return sign * (at - origin); }
};

AxisInRoom axis_in_room(const model::ResolvedFrame& frame, model::Axis axis) {
    std::array<int, 3> unit{};
    unit[model::index_of(axis)] = 1;
    const auto d = model::direction_to_room(frame, unit);
    AxisInRoom found;
    for (std::size_t k = 0; k < 3; ++k) {
        if (d[k] != 0) found = {k, d[k], frame.origin[k]};
    }
    return found;
}

struct Extent {
    double least = 0.0;  // mm in the room
    double most = 0.0;
};

std::optional<Extent> extent_of(const model::SolidObstacle& solid, std::size_t axis) {
    std::optional<Extent> all;
    for (const auto& body : solid.bodies) {
        for (const auto* corners : {&body.near, &body.far}) {
            for (const auto& corner : *corners) {
                if (!all) all = Extent{corner[axis], corner[axis]};
                all->least = std::min(all->least, corner[axis]);
                all->most = std::max(all->most, corner[axis]);
            }
        }
    }
    return all;
}

// On which sides of the obstacle a frame may stand: walls and ceilings have the room on one.
struct Sides {
    bool before = true;
    bool behind = true;
};

Sides sides_of(const model::ObstacleShape& shape, std::size_t axis) {
    if (const auto* wall = std::get_if<model::WallProfile>(&shape)) {
        const bool is_across = axis == 0;
        return {is_across && wall->inside == model::Sense::minus,
                is_across && wall->inside == model::Sense::plus};
    }
    if (std::holds_alternative<model::CeilingProfile>(shape)) return {axis == 2, false};
    return {};
}

Nm clearance_of(const model::Obstacle& obstacle,
                const model::NamedValues& values,
                const Derived& derived) {
    if (obstacle.clearance.empty()) {
        return obstacle.stays_clear ? 0 : derived.resolved.shop.clearance;
    }
    return values.length(obstacle.clearance).value_or(derived.resolved.shop.clearance);
}

std::string text_of(Nm length, const Derived& derived) {
    return quantity_text(
        {.kind = engine::QuantityKind::length, .length = engine::Length::from_nm(length)},
        derived.project->shown);
}

void add_obstacles(std::vector<PlaneSnap>& snaps, const Derived& derived, const AxisInRoom& axis) {
    const model::NamedValues values(*derived.project, derived.resolved);
    for (const auto& obstacle : derived.project->room) {
        const auto extent = extent_of(model::obstacle_shape(obstacle.shape, values), axis.room);
        if (!extent) continue;
        const Nm clearance = clearance_of(obstacle, values, derived);
        const auto sides = sides_of(obstacle.shape, axis.room);
        const std::string words = clearance > 0
                                      ? text_of(clearance, derived) + " from " + obstacle.name
                                      : "at " + obstacle.name;
        if (sides.before) {
            const auto at = static_cast<Nm>(std::floor(extent->least * 1.0e6)) - clearance;
            snaps.push_back({axis.in_frame(at), words});
        }
        if (sides.behind) {
            const auto at = static_cast<Nm>(std::ceil(extent->most * 1.0e6)) + clearance;
            snaps.push_back({axis.in_frame(at), words});
        }
    }
}

void add_other_frames(std::vector<PlaneSnap>& snaps,
                      const Derived& derived,
                      std::size_t frame,
                      const AxisInRoom& axis) {
    const auto& frames = derived.resolved.frames;
    for (std::size_t f = 0; f < frames.size(); ++f) {
        if (f == frame) continue;
        const auto& stated = derived.project->frames[f];
        for (std::size_t i = 0; i < frames[f].planes.size(); ++i) {
            const auto& plane = frames[f].planes[i];
            const auto its = axis_in_room(frames[f], plane.axis);
            if (!plane.position || its.room != axis.room) continue;
            const Nm in_room = its.origin + its.sign * *plane.position;
            snaps.push_back({axis.in_frame(in_room),
                             "level with " + stated.planes[i].name + " of " + stated.name});
        }
    }
}

void add_halves(std::vector<PlaneSnap>& snaps,
                std::vector<GridPlane> planes,
                std::string_view moved) {
    std::erase_if(planes, [&](const GridPlane& plane) { return plane.name == moved; });
    for (std::size_t i = 0; i + 1 < planes.size(); ++i) {
        snaps.push_back({(planes[i].at + planes[i + 1].at) / 2,
                         "half-way from " + planes[i].name + " to " + planes[i + 1].name});
    }
}

}  // namespace

std::vector<PlaneSnap> plane_snaps(const Derived& derived,
                                   std::size_t frame,
                                   model::Axis axis,
                                   std::string_view moved) {
    std::vector<PlaneSnap> snaps;
    if (frame >= derived.resolved.frames.size()) return snaps;
    const auto in_room = axis_in_room(derived.resolved.frames[frame], axis);
    add_obstacles(snaps, derived, in_room);
    add_other_frames(snaps, derived, frame, in_room);
    add_halves(snaps, plane_grid(derived, frame).across(axis), moved);
    return snaps;
}

PlanePlace snapped(Nm at,
                   std::span<const PlaneSnap> snaps,
                   Nm reach,
                   const engine::TapeStyle& shown) {
    const PlaneSnap* nearest = nullptr;
    for (const auto& snap : snaps) {
        const Nm away = std::abs(snap.at - at);
        if (away > reach) continue;
        if (nearest == nullptr || away < std::abs(nearest->at - at)) nearest = &snap;
    }
    if (nearest != nullptr) return {nearest->at, nearest->words};
    const Nm step = hand_step(shown).nm();
    const auto steps = std::llround(static_cast<double>(at) / static_cast<double>(step));
    return {steps * step, {}};
}

}  // namespace editor
