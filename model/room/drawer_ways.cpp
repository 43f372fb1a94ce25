#include "engine/geometry/convex_distance.h"
#include "engine/geometry/convex_overlap.h"
#include "model/resolve/piece_prisms.h"
#include "model/room/clearance.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace model {
namespace {

constexpr double rounding_mm = 1e-6;

std::optional<Nm> position_of(const Frame& frame,
                              const ResolvedFrame& placed,
                              const std::string& plane) {
    for (std::size_t i = 0; i < frame.planes.size() && i < placed.planes.size(); ++i) {
        if (frame.planes[i].name == plane) return placed.planes[i].position;
    }
    return std::nullopt;
}

std::optional<Box> box_of(const Frame& frame, const ResolvedFrame& placed, const Bay& bay) {
    Box box;
    const std::array<const std::array<std::string, 2>*, 3> pairs{&bay.x, &bay.y, &bay.z};
    for (std::size_t k = 0; k < 3; ++k) {
        const auto lo = position_of(frame, placed, (*pairs[k])[0]);
        const auto hi = position_of(frame, placed, (*pairs[k])[1]);
        if (!lo || !hi || *lo >= *hi) return std::nullopt;
        box.lo[k] = *lo;
        box.hi[k] = *hi;
    }
    return box;
}

// What a drawer passes through in its frame when it is drawn out.
struct DrawerWay {
    Index frame = 0;
    std::string panel;
    Box box;  // all the way
    std::size_t axis = 0;
    int sense = 1;
};

std::optional<DrawerWay> way_of(const Project& project,
                                const Resolved& resolved,
                                Index frame,
                                const Panel& panel) {
    const auto& stated = project.frames[frame];
    const auto& placed = resolved.frames[frame];
    const auto bay = std::ranges::find(stated.bays, panel.bay, &Bay::name);
    if (panel.use != PanelUse::drawer_front || bay == stated.bays.end()) return std::nullopt;
    const auto inside = box_of(stated, placed, *bay);
    if (!inside) return std::nullopt;
    DrawerWay way{frame, panel.name, *inside, index_of(panel.face_axis), sign_of(panel.face_side)};
    for (Index i = placed.first_piece; i < placed.first_piece + placed.piece_count; ++i) {
        const auto& piece = resolved.pieces[i];
        if (piece.kind != PieceKind::panel || piece.stated >= stated.panels.size()) continue;
        if (stated.panels[piece.stated].name == panel.name)
            way.box = engine::hull(way.box, piece.extents);
    }
    const Nm depth = inside->hi[way.axis] - inside->lo[way.axis];
    if (way.sense > 0) {
        way.box.lo[way.axis] = way.box.hi[way.axis];
        way.box.hi[way.axis] += depth;
    } else {
        way.box.hi[way.axis] = way.box.lo[way.axis];
        way.box.lo[way.axis] -= depth;
    }
    return way;
}

class Ways {
public:
    Ways(const Project& project,
         const Catalogue& catalogue,
         const Resolved& resolved,
         std::span<const RoomObstacle> obstacles)
        : project_{project},
          resolved_{resolved},
          obstacles_{obstacles},
          things_{room_things(resolved, catalogue)},
          bodies_{resolved, catalogue} {}

    void report(const DrawerWay& way, std::vector<Finding>& findings) const {
        const Nm whole = way.box.hi[way.axis] - way.box.lo[way.axis];
        const auto blocker = blocker_of(way, whole);
        if (!blocker) return;
        const auto free = Length::from_nm(free_way(way, whole));
        findings.push_back(
            {.code = "drawer_blocked",
             .severity = Severity::error,
             .concerns = {{SubjectKind::panel, project_.frames[way.frame].name, way.panel},
                          *blocker},
             .numbers = {{"free", free}, {"wanted", Length::from_nm(whole)}},
             .what = "the drawer comes out by " + length_in_words(free, project_.shown) + " of " +
                     length_in_words(Length::from_nm(whole), project_.shown) +
                     " before something is in its way",
             .mend = "move the frame or what is in the way, or make the drawer shorter"});
    }

private:
    engine::ConvexBody body_of(const DrawerWay& way, Nm length) const {
        Box box = way.box;
        if (way.sense > 0) {
            box.hi[way.axis] = box.lo[way.axis] + length;
        } else {
            box.lo[way.axis] = box.hi[way.axis] - length;
        }
        const Box placed = box_in_room(resolved_.frames[way.frame], box);
        engine::Vector lo{};
        engine::Vector hi{};
        for (std::size_t k = 0; k < 3; ++k) {
            lo[k] = mm_of(placed.lo[k]);
            hi[k] = mm_of(placed.hi[k]);
        }
        return engine::convex_body(lo, hi);
    }

    static bool shares(const engine::ConvexBody& a, const engine::ConvexBody& b) {
        return engine::is_deeper(a, b, rounding_mm);
    }

    // The scan's axes may be turned, so the drawer's way is turned into them.
    static bool meets_scan(const RoomObstacle& obstacle, const engine::ConvexBody& body) {
        const auto& place = obstacle.scan_place;
        const auto own = [&](const engine::Vector& v) {
            return engine::Vector{engine::dot(place.x, v), engine::dot(place.y, v),
                                  engine::dot(place.z, v)};
        };
        engine::Placement back{
            .x = own({1.0, 0.0, 0.0}), .y = own({0.0, 1.0, 0.0}), .z = own({0.0, 0.0, 1.0})};
        const auto origin = own(place.origin);
        for (std::size_t k = 0; k < 3; ++k) back.origin[k] = -origin[k];
        return obstacle.scan->tree.crosses(engine::moved(body, back));
    }

    std::optional<Subject> blocker_of(const DrawerWay& way, Nm length) const {
        const auto body = body_of(way, length);
        for (const auto& obstacle : obstacles_) {
            const bool hit = obstacle.scan
                                 ? meets_scan(obstacle, body)
                                 : std::ranges::any_of(obstacle.bodies, [&](const auto& other) {
                                       return shares(body, other);
                                   });
            if (hit && !obstacle.stays_clear)
                return Subject{SubjectKind::obstacle, {}, project_.room[obstacle.obstacle].name};
        }
        for (const auto& thing : things_) {
            const auto& piece = resolved_.pieces[thing.piece];
            if (piece.frame == way.frame || !engine::touches(body.bounds, thing.bounds)) continue;
            const auto bodies = bodies_.of(thing);
            if (std::ranges::any_of(bodies, [&](const auto& b) { return shares(body, b); }))
                return Subject{SubjectKind::frame, {}, project_.frames[piece.frame].name};
        }
        return std::nullopt;
    }

    // To a mark of the tape.
    Nm free_way(const DrawerWay& way, Nm whole) const {
        const Nm step = engine::tape_step(project_.shown).nm();
        Nm free = 0;
        Nm blocked = whole / step + 1;
        while (blocked - free > 1) {
            const Nm middle = free + (blocked - free) / 2;
            (blocker_of(way, middle * step) ? blocked : free) = middle;
        }
        return free * step;
    }

    const Project& project_;
    const Resolved& resolved_;
    std::span<const RoomObstacle> obstacles_;
    std::vector<RoomThing> things_;
    ThingBodies bodies_;
};

}  // namespace

void report_drawer_ways(const Project& project,
                        const Catalogue& catalogue,
                        const Resolved& resolved,
                        std::span<const RoomObstacle> obstacles,
                        std::vector<Finding>& findings) {
    std::vector<DrawerWay> ways;
    for (Index f = 0; f < project.frames.size() && f < resolved.frames.size(); ++f) {
        for (const auto& panel : project.frames[f].panels) {
            if (auto way = way_of(project, resolved, f, panel)) ways.push_back(std::move(*way));
        }
    }
    if (ways.empty()) return;
    const Ways all{project, catalogue, resolved, obstacles};
    for (const auto& way : ways) all.report(way, findings);
}

}  // namespace model
