#include "model/room/band_look.h"

#include "model/resolve/holds_error.h"
#include "model/resolve/resolve.h"
#include "model/room/as_built.h"
#include "model/room/band.h"
#include "model/room/rounding.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

// The number of a thing: pieces come first, each fastener has two.
Index number_of(const RoomThing& thing, std::size_t pieces) {
    if (thing.fastener == no_index) return thing.piece;
    return static_cast<Index>(pieces + 2U * thing.fastener + (thing.is_tail ? 1U : 0U));
}

void add_things(BandLook& look, const Resolved& resolved, std::span<const RoomThing> things) {
    const std::size_t pieces = resolved.pieces.size();
    look.things.assign(pieces + 2U * resolved.fasteners.size(), {});
    look.frame_of.assign(look.things.size(), no_index);
    look.frames.assign(resolved.frames.size(), {});
    for (const auto& thing : things) {
        const Index number = number_of(thing, pieces);
        const Index frame = resolved.pieces[thing.piece].frame;
        look.things[number] = thing.bounds;
        look.frame_of[number] = frame;
        engine::put_in(look.frames[frame], thing.bounds);
    }
}

void add_planes(BandLook& look, const Resolved& resolved) {
    for (const auto& frame : resolved.frames) {
        auto& planes = look.planes.emplace_back();
        for (const auto& plane : frame.planes)
            planes[index_of(plane.axis)].push_back(mm_of(plane.position.value_or(0)));
    }
}

// A head or a tail as the box round it.
std::vector<engine::ConvexBody> bodies_of(const ThingBodies& bodies, const RoomThing& thing) {
    if (thing.fastener == no_index) return bodies.of(thing);
    return {engine::convex_body(thing.bounds.lo, thing.bounds.hi)};
}

void add_margins(BandLook& look,
                 const Resolved& resolved,
                 const Catalogue& catalogue,
                 std::span<const NearPlace> places) {
    const ThingBodies bodies{resolved, catalogue};
    for (const auto& place : places) {
        const auto of = std::ranges::find(look.obstacles, place.obstacle, &RoomObstacle::obstacle);
        const auto obstacle = static_cast<Index>(of - look.obstacles.begin());
        const Index thing = number_of(place.thing, resolved.pieces.size());
        look.margins[{obstacle, thing}] =
            place.depth > 0.0 ? -place.depth : place.distance - mm_of(of->wanted);
        auto& made = look.bodies[thing];
        if (made.empty()) made = bodies_of(bodies, place.thing);
    }
}

// Only those that are as near as without a reach.
std::vector<NearPlace> too_near(std::span<const NearPlace> places,
                                std::span<const RoomObstacle> obstacles) {
    std::vector<NearPlace> near;
    for (const auto& place : places) {
        const auto of = std::ranges::find(obstacles, place.obstacle, &RoomObstacle::obstacle);
        if (place.depth > rounding_mm || place.distance < mm_of(of->wanted) - rounding_mm)
            near.push_back(place);
    }
    return near;
}

std::string key_of(const Subject& subject) {
    return std::to_string(static_cast<int>(subject.kind)) + "\n" + subject.frame + "\n" +
           subject.name;
}

void keep_complaints(BandLook& look) {
    std::erase_if(look.findings,
                  [](const Finding& finding) { return !keeps_from_fitting(finding); });
    for (const auto& finding : look.findings) {
        for (auto& complaint : complaints_of(finding)) look.complaints.insert(std::move(complaint));
    }
}

BandLook look_round(const Project& project,
                    const Catalogue& catalogue,
                    const ScanLibrary& scans,
                    double reach_mm,
                    Resolved resolved) {
    BandLook look{.findings = std::move(resolved.findings),
                  .frame_gap = mm_of(resolved.shop.frame_gap)};
    look.obstacles = room_obstacles(project, resolved, scans, look.findings);
    const auto places = near_places(resolved, catalogue, look.obstacles,
                                    {.reach = reach_mm, .boxes_beyond = true, .with_depth = false});
    report_near_places(project, resolved, look.obstacles, too_near(places, look.obstacles),
                       look.findings);
    report_frame_gaps(project, catalogue, resolved, look.findings);
    report_drawer_ways(project, catalogue, resolved, look.obstacles, look.findings);
    report_openings(project, resolved, look.findings);
    std::ranges::copy_if(look.findings, std::back_inserter(look.not_measured),
                         [](const Finding& it) { return it.code == "scan_not_read"; });
    keep_complaints(look);
    add_things(look, resolved, room_things(resolved, catalogue));
    add_planes(look, resolved);
    add_margins(look, resolved, catalogue, places);
    return look;
}

}  // namespace

// The first is what the others come too near to, or meet.
std::vector<Complaint> complaints_of(const Finding& finding) {
    if (finding.concerns.empty()) return {{finding.code, {}, {}}};
    const auto first = key_of(finding.concerns.front());
    if (finding.concerns.size() == 1) return {{finding.code, first, {}}};
    std::vector<Complaint> all;
    for (auto other = finding.concerns.begin() + 1; other != finding.concerns.end(); ++other)
        all.emplace_back(finding.code, first, key_of(*other));
    return all;
}

BandLook look_at(const Project& project,
                 const Catalogue& catalogue,
                 const ScanLibrary& scans,
                 double reach_mm) {
    return look_round(project, catalogue, scans, reach_mm, resolve(project, catalogue));
}

BandLook glance_at(const Project& project,
                   const Catalogue& catalogue,
                   const ScanLibrary& scans,
                   double reach_mm) {
    auto attempt = resolve_until_error(project, catalogue);
    if (!holds_error(attempt.resolved.findings))
        return look_round(project, catalogue, scans, reach_mm, std::move(attempt.resolved));
    BandLook look{.is_whole = false, .findings = std::move(attempt.resolved.findings)};
    keep_complaints(look);
    add_planes(look, attempt.resolved);
    return look;
}

}  // namespace model
