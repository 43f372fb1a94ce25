#include "engine/geometry/convex_distance.h"
#include "engine/geometry/convex_overlap.h"
#include "model/resolve/bay_box.h"
#include "model/resolve/piece_prisms.h"
#include "model/room/clearance.h"
#include "model/room/rounding.h"
#include "model/room/scan_side.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace model {
namespace {

// Scans are in floats, which are rounded to about this a few metres from where they begin.
constexpr double scan_rounding_mm = 1e-3;

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
    const auto inside = bay_box(stated, placed, *bay);
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
        const auto body = body_of(way, length_of(way));
        for (const auto& obstacle : obstacles_) {
            if (is_swing(obstacle) && meets(obstacle, body)) report_door(way, obstacle, findings);
        }
        report_blocked(way, findings);
    }

    // What lies side by side in one frame has no room for both fronts, which is told of them.
    void report(const DrawerWay& one,
                const DrawerWay& other,
                std::vector<Finding>& findings) const {
        const bool is_beside =
            one.frame == other.frame && one.axis == other.axis && one.sense == other.sense;
        if (is_beside || !shares(body_of(one, length_of(one)), body_of(other, length_of(other))))
            return;
        findings.push_back({.code = "drawer_meets_drawer",
                            .severity = Severity::warning,
                            .concerns = {subject_of(one), subject_of(other)},
                            .what = "these two drawers cannot be open together",
                            .mend = "keep it in mind, or move one of the frames"});
    }

private:
    static Nm length_of(const DrawerWay& way) {
        return way.box.hi[way.axis] - way.box.lo[way.axis];
    }

    Subject subject_of(const DrawerWay& way) const {
        return {SubjectKind::panel, project_.frames[way.frame].name, way.panel};
    }

    Subject subject_of(const RoomObstacle& obstacle) const {
        return {SubjectKind::obstacle, {}, project_.room[obstacle.obstacle].name};
    }

    bool is_swing(const RoomObstacle& obstacle) const {
        return std::holds_alternative<DoorSwing>(project_.room[obstacle.obstacle].shape);
    }

    // A drawer may be drawn out into a walkway; a door that it meets can be shut.
    bool can_block(const RoomObstacle& obstacle) const {
        return !obstacle.stays_clear && !is_swing(obstacle);
    }

    void report_door(const DrawerWay& way,
                     const RoomObstacle& door,
                     std::vector<Finding>& findings) const {
        findings.push_back({.code = "drawer_meets_door",
                            .severity = Severity::warning,
                            .concerns = {subject_of(way), subject_of(door)},
                            .what = "the drawer and the door cannot be open together",
                            .mend = "keep it in mind, or move the frame"});
    }

    void report_blocked(const DrawerWay& way, std::vector<Finding>& findings) const {
        const Nm whole = length_of(way);
        const auto blocker = blocker_of(way, whole);
        if (!blocker) return;
        const auto free = Length::from_nm(free_way(way, whole));
        findings.push_back(
            {.code = "drawer_blocked",
             .severity = Severity::error,
             .concerns = {subject_of(way), *blocker},
             .numbers = {{"free", free}, {"wanted", Length::from_nm(whole)}},
             .what = "the drawer comes out by " + length_in_words(free, project_.shown) + " of " +
                     length_in_words(Length::from_nm(whole), project_.shown) +
                     " before something is in its way",
             .mend = "move the frame or what is in the way, or make the drawer shorter"});
    }

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

    bool meets(const RoomObstacle& obstacle, const engine::ConvexBody& body) const {
        if (obstacle.scan) return enters_scan(obstacle, body);
        return std::ranges::any_of(obstacle.bodies,
                                   [&](const auto& other) { return shares(body, other); });
    }

    // A scan has triangles alone, so that what enters it is what a drawer a hair smaller meets too.
    static bool enters_scan(const RoomObstacle& obstacle, const engine::ConvexBody& body) {
        engine::Bounds smaller = body.bounds;
        for (std::size_t k = 0; k < 3; ++k) {
            smaller.lo[k] += scan_rounding_mm;
            smaller.hi[k] -= scan_rounding_mm;
            if (smaller.lo[k] >= smaller.hi[k]) return false;
        }
        const std::array only{engine::convex_body(smaller.lo, smaller.hi)};
        return obstacle.scan->tree.crosses(in_axes_of(obstacle.scan_place, only).front());
    }

    std::optional<Subject> blocker_of(const DrawerWay& way, Nm length) const {
        const auto body = body_of(way, length);
        for (const auto& obstacle : obstacles_) {
            if (can_block(obstacle) && meets(obstacle, body)) return subject_of(obstacle);
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
    for (std::size_t i = 0; i < ways.size(); ++i) {
        for (std::size_t k = i + 1; k < ways.size(); ++k) all.report(ways[i], ways[k], findings);
    }
}

}  // namespace model
