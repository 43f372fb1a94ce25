#include "model/room/band_look.h"

#include "model/resolve/resolve.h"
#include "model/room/band.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

void add_places(BandLook& look, const Resolved& resolved, std::span<const RoomObstacle> obstacles) {
    for (const auto& frame : resolved.frames) {
        for (const Nm at : frame.origin) look.places.push_back(mm_of(at));
        for (const auto& plane : frame.planes)
            look.places.push_back(mm_of(plane.position.value_or(0)));
    }
    look.first_obstacle = look.places.size();
    for (const auto& obstacle : obstacles) {
        for (std::size_t k = 0; k < 3; ++k) {
            look.places.push_back(obstacle.bounds.lo[k]);
            look.places.push_back(obstacle.bounds.hi[k]);
        }
    }
}

// The number of a thing: pieces come first, each fastener has two.
Index number_of(const RoomThing& thing, std::size_t pieces) {
    if (thing.fastener == no_index) return thing.piece;
    return static_cast<Index>(pieces + 2U * thing.fastener + (thing.is_tail ? 1U : 0U));
}

void add_margins(BandLook& look,
                 const Resolved& resolved,
                 std::span<const RoomObstacle> obstacles,
                 std::span<const NearPlace> places) {
    for (const auto& obstacle : obstacles) {
        const double wanted = mm_of(obstacle.wanted);
        for (const auto& place : places) {
            if (place.obstacle != obstacle.obstacle) continue;
            look.margins[{obstacle.obstacle, number_of(place.thing, resolved.pieces.size())}] =
                place.depth > 0.0 ? -place.depth : place.distance - wanted;
        }
    }
    look.things = resolved.pieces.size() + 2U * resolved.fasteners.size();
}

// Only those that are as near as `reach` less is.
std::vector<NearPlace> too_near(std::span<const NearPlace> places,
                                std::span<const RoomObstacle> obstacles) {
    constexpr double rounding_mm = 1e-6;
    std::vector<NearPlace> near;
    for (const auto& place : places) {
        const auto of = std::ranges::find(obstacles, place.obstacle, &RoomObstacle::obstacle);
        if (place.depth > rounding_mm || place.distance < mm_of(of->wanted) - rounding_mm)
            near.push_back(place);
    }
    return near;
}

}  // namespace

std::vector<Complaint> complaints_of(const Finding& finding) {
    if (finding.concerns.empty()) return {{finding.code, SubjectKind::project, {}, {}}};
    std::vector<Complaint> all;
    for (const auto& subject : finding.concerns)
        all.emplace_back(finding.code, subject.kind, subject.frame, subject.name);
    return all;
}

BandLook look_at(const Project& project,
                 const Catalogue& catalogue,
                 const ScanLibrary& scans,
                 double reach_mm) {
    const auto resolved = resolve(project, catalogue);
    BandLook look{.findings = resolved.findings};
    const auto obstacles = room_obstacles(project, resolved, scans, look.findings);
    const auto places =
        near_places(resolved, catalogue, obstacles, {.reach = reach_mm, .with_depth = false});
    report_near_places(project, resolved, obstacles, too_near(places, obstacles), look.findings);
    report_frame_gaps(project, catalogue, resolved, look.findings);
    report_drawer_ways(project, catalogue, resolved, obstacles, look.findings);
    std::erase_if(look.findings,
                  [](const Finding& finding) { return !keeps_from_fitting(finding); });
    for (const auto& finding : look.findings) {
        for (auto& complaint : complaints_of(finding)) look.complaints.insert(std::move(complaint));
    }
    add_margins(look, resolved, obstacles, places);
    add_places(look, resolved, obstacles);
    return look;
}

std::optional<double> way_moved(const BandLook& a, const BandLook& b) {
    if (a.places.size() != b.places.size() || a.first_obstacle != b.first_obstacle)
        return std::nullopt;
    double frames = 0.0;
    double obstacles = 0.0;
    for (std::size_t i = 0; i < a.places.size(); ++i) {
        auto& most = i < a.first_obstacle ? frames : obstacles;
        most = std::max(most, std::abs(a.places[i] - b.places[i]));
    }
    return frames + obstacles;
}

}  // namespace model
