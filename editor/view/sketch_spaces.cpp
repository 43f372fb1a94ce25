// Trials of bays and planes: nothing is cut from bar for them.
#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/view/sketch_ghost.h"
#include "editor/view/sketch_member.h"
#include "editor/view/sketch_trial.h"

#include <cstdlib>
#include <utility>

namespace editor {
namespace {

using model::SubjectKind;

SketchTrial trial_for(const SketchScene& scene) {
    SketchTrial trial;
    trial.of = worked_out_of(scene.derived);
    return trial;
}

std::string length_text(model::Nm length, const engine::TapeStyle& shown) {
    auto style = shown;
    style.with_unit = true;
    return quantity_text(
        {.kind = engine::QuantityKind::length, .length = engine::Length::from_nm(length)}, style);
}

// The free name that comes after so many others that are free.
std::string free_bay_name(const model::Frame& frame, std::size_t more) {
    for (std::size_t n = 1;; ++n) {
        std::string name = "bay " + std::to_string(n);
        if (by_name(frame.bays, name) != nullptr) continue;
        if (more == 0) return name;
        --more;
    }
}

SketchTrial bay_there(const SketchScene& scene, const GridCell& cell, const model::Bay& bay) {
    auto trial = trial_for(scene);
    trial.title = bay.name;
    trial.words = "is there: click to choose it, Delete removes it";
    trial.chosen = {{SubjectKind::bay, scene.frame().name, bay.name}};
    trial.ghost = ghost_of_cells(scene.grid, {cell});
    return trial;
}

}  // namespace

SketchTrial bay_trial(const SketchScene& scene, const std::vector<GridCell>& cells) {
    auto trial = trial_for(scene);
    const auto& frame = scene.frame();
    Change change;
    std::vector<GridCell> put;
    for (const auto& cell : cells) {
        const auto* there = bay_at(frame, scene.grid, cell);
        if (there != nullptr && cells.size() == 1) {
            return bay_there(scene, cell, *there);
        }
        if (there != nullptr) continue;
        auto bay = new_bay(scene.grid, cell, free_bay_name(frame, put.size()));
        trial.title = bay.name;
        trial.words = bay.x[0] + " to " + bay.x[1] + ", " + bay.y[0] + " to " + bay.y[1] + ", " +
                      bay.z[0] + " to " + bay.z[1];
        trial.chosen.push_back({SubjectKind::bay, frame.name, bay.name});
        change.edits.push_back(model::PutBay{frame.name, std::move(bay), {}});
        put.push_back(cell);
    }
    if (put.empty()) return trial;
    if (put.size() > 1) {
        trial.title = std::to_string(put.size()) + " bays";
        trial.words.clear();
        change.label = "Paint " + std::to_string(put.size()) + " bays";
    }
    trial.ghost = ghost_of_cells(scene.grid, put);
    trial.change = std::move(change);
    return trial;
}

SketchTrial plane_trial(const SketchScene& scene,
                        const GridSegment& segment,
                        const PlanePlace& place) {
    auto trial = trial_for(scene);
    const auto& frame = scene.frame();
    const auto& shown = scene.derived.project->shown;
    const auto& planes = scene.grid.across(segment.run);
    const auto& below = planes[segment.from[model::index_of(segment.run)]];
    const auto& above = planes[segment.to];
    for (const auto* plane : {&below, &above}) {
        if (plane->at != place.at) continue;
        trial.title = plane->name;
        trial.words = "is there";
        return trial;
    }
    trial.title = free_plane_name(frame, segment.run);
    trial.words = length_text(std::abs(place.at - below.at), shown) + " from " + below.name + ", " +
                  length_text(std::abs(above.at - place.at), shown) + " from " + above.name;
    if (!place.words.empty()) trial.words += "; " + place.words;
    const engine::Quantity at{.kind = engine::QuantityKind::length,
                              .length = engine::Length::from_nm(place.at)};
    trial.chosen = {{SubjectKind::plane, frame.name, trial.title}};
    trial.change = new_plane_change(*scene.derived.project, frame,
                                    {trial.title, segment.run, formula_of(at, shown)});
    trial.ghost = ghost_of_plane(scene.grid, segment.run, place.at);
    return trial;
}

std::string free_plane_name(const model::Frame& frame, model::Axis axis) {
    const char* word = axis == model::Axis::x   ? "divider "
                       : axis == model::Axis::y ? "cross divider "
                                                : "shelf ";
    for (int n = 1;; ++n) {
        const std::string name = word + std::to_string(n);
        if (by_name(frame.planes, name) == nullptr) return name;
    }
}

Change new_plane_change(const model::Project& project,
                        const model::Frame& frame,
                        const model::Plane& plane) {
    Change change{.label = "Add plane " + plane.name};
    auto put = plane;
    const bool is_plain = engine::names_in(plane.position).empty();
    if (is_plain && engine::is_name(plane.name)) {
        const std::string with_frame =
            engine::is_name(frame.name) ? frame.name + " " + plane.name : plane.name;
        std::string name = plane.name;
        for (int n = 1; by_name(project.dimensions, name) != nullptr; ++n)
            name = n == 1 ? with_frame : with_frame + " " + std::to_string(n);
        change.edits.push_back(model::PutDimension{
            {.name = name, .formula = plane.position, .note = "layout plane of " + frame.name},
            {}});
        put.position = name;
    }
    change.edits.push_back(model::PutPlane{frame.name, std::move(put), {}});
    return change;
}

}  // namespace editor
