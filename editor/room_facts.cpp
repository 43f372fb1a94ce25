#include "editor/room_facts.h"

#include "model/resolve/piece_subject.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace editor {
namespace {

using model::Index;

bool is_nearer(const model::NearPlace& a, const model::NearPlace& b) {
    if (a.depth != b.depth) return a.depth > b.depth;
    return a.distance < b.distance;
}

bool is_too_near(const model::NearPlace& place, const model::RoomObstacle& obstacle) {
    return place.distance * 1e6 < static_cast<double>(obstacle.wanted) || place.depth > 0.0;
}

bool is_about(const model::Finding& finding, const std::string& obstacle) {
    return std::ranges::any_of(finding.concerns, [&](const model::Subject& subject) {
        return subject.kind == model::SubjectKind::obstacle && subject.name == obstacle;
    });
}

// Of a van scanned from inside that is as it should be, so it is told beside the scan alone.
void tell_open_scan(const model::Project& project,
                    const model::RoomObstacle& obstacle,
                    std::vector<model::Finding>& findings) {
    if (!obstacle.scan || obstacle.scan->is_closed) return;
    findings.push_back(
        {.code = "scan_open",
         .severity = model::Severity::note,
         .concerns = {{model::SubjectKind::obstacle, {}, project.room[obstacle.obstacle].name}},
         .what = "its surface has gaps, so pieces keep clear of the surface, but one that is "
                 "wholly behind it is not told",
         .mend = "for a solid thing, scan it all round, or put a box in its place"});
}

void keep_worst_of_frame(std::vector<model::NearPlace>& kept,
                         const model::NearPlace& place,
                         const model::Resolved& resolved) {
    const auto frame_of = [&](const model::NearPlace& near) {
        return resolved.pieces[near.thing.piece].frame;
    };
    const auto at = std::ranges::find(kept, frame_of(place), frame_of);
    if (at == kept.end()) {
        kept.push_back(place);
    } else if (is_nearer(place, *at)) {
        *at = place;
    }
}

std::vector<ObstacleFacts> facts_of_all(const model::Project& project,
                                        const model::Resolved& resolved,
                                        const model::Catalogue& catalogue,
                                        const model::ScanLibrary& scans,
                                        double reach_mm) {
    std::vector<model::Finding> findings;
    const auto obstacles = model::room_obstacles(project, resolved, scans, findings);
    const auto places = model::near_places(resolved, catalogue, obstacles, {.reach = reach_mm});
    std::vector<ObstacleFacts> all(project.room.size());
    for (auto& one : all) one.reach_mm = reach_mm;
    for (const auto& obstacle : obstacles) {
        all[obstacle.obstacle].has_shape = true;
        all[obstacle.obstacle].wanted = obstacle.wanted;
    }
    std::vector<model::NearPlace> too_near;
    for (const auto& place : places) {
        auto& nearest = all[place.obstacle].nearest;
        if (!nearest || is_nearer(place, *nearest)) nearest = place;
        keep_worst_of_frame(all[place.obstacle].of_frames, place, resolved);
        const auto at =
            std::ranges::find(obstacles, place.obstacle, &model::RoomObstacle::obstacle);
        if (at != obstacles.end() && is_too_near(place, *at)) too_near.push_back(place);
    }
    model::report_near_places(project, resolved, obstacles, too_near, findings);
    for (const auto& obstacle : obstacles) tell_open_scan(project, obstacle, findings);
    for (Index i = 0; i < project.room.size(); ++i) {
        for (const auto& finding : findings) {
            if (is_about(finding, project.room[i].name)) all[i].findings.push_back(finding);
        }
    }
    return all;
}

// Up to a mark of the tape.
std::string depth_text(double mm, const engine::TapeStyle& shown) {
    const auto step = engine::tape_step(shown).nm();
    const double marks = std::max(1.0, std::ceil(mm * 1e6 / static_cast<double>(step) - 1e-4));
    const auto length = engine::Length::from_nm(static_cast<std::int64_t>(marks) * step);
    return model::length_in_words(length, shown);
}

}  // namespace

RoomFacts room_facts(const Derived& derived,
                     const model::Catalogue& catalogue,
                     std::shared_ptr<const model::ScanLibrary> scans,
                     double reach_mm) {
    RoomFacts facts{.revision = derived.revision, .scans = std::move(scans), .reach_mm = reach_mm};
    facts.obstacles =
        facts_of_all(*derived.project, derived.resolved, catalogue, *facts.scans, reach_mm);
    facts.scans_placed = placed_scans(derived, *facts.scans);
    return facts;
}

std::vector<PlacedScan> placed_scans(const Derived& derived, const model::ScanLibrary& scans) {
    model::Project of_scans{.shown = derived.project->shown,
                            .dimensions = derived.project->dimensions};
    std::vector<Index> places;
    const auto& room = derived.project->room;
    for (Index i = 0; i < room.size(); ++i) {
        if (!std::holds_alternative<model::ScannedObstacle>(room[i].shape)) continue;
        of_scans.room.push_back(room[i]);
        places.push_back(i);
    }
    std::vector<PlacedScan> placed;
    if (places.empty()) return placed;
    std::vector<model::Finding> ignored;
    for (auto& it : model::room_obstacles(of_scans, derived.resolved, scans, ignored)) {
        placed.push_back({places[it.obstacle], it.scan_place, std::move(it.scan)});
    }
    return placed;
}

ObstacleFacts facts_of(const model::Obstacle& obstacle,
                       const Derived& derived,
                       const model::Catalogue& catalogue) {
    model::Project project = *derived.project;
    project.room = {obstacle};
    return facts_of_all(project, derived.resolved, catalogue, *derived.scans, near_reach_mm)
        .front();
}

const ObstacleFacts& facts_of(std::optional<TriedObstacle>& tried,
                              const model::Obstacle& obstacle,
                              const Derived& derived,
                              const model::Catalogue& catalogue) {
    const auto of = worked_out_of(derived);
    if (!tried || tried->of != of || tried->obstacle != obstacle) {
        tried = {of, obstacle, facts_of(obstacle, derived, catalogue)};
    }
    return tried->facts;
}

std::string near_words(const ObstacleFacts& facts, const Derived& derived) {
    if (!facts.has_shape) return {};
    if (!facts.nearest) return facts.reach_mm < near_reach_mm ? "keeps clear" : "nothing near";
    const auto& near = *facts.nearest;
    const auto& piece = derived.resolved.pieces[near.thing.piece];
    const auto& shown = derived.project->shown;
    const auto name = model::piece_subject(derived.project->frames[piece.frame], piece).name;
    if (near.depth > 0.0) return depth_text(near.depth, shown) + " inside " + name;
    return model::distance_in_words(near.distance, shown) + " from " + name;
}

}  // namespace editor
