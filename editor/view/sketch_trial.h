// What would come of the thing that a laying-out hand points at: its ghost, and what would be found
// then.
#pragma once

#include "editor/view/sketch_state.h"
#include "model/catalogue/catalogue.h"

namespace editor {

// All that a trial is worked out from; `frame` is the one that is sketched in.
struct SketchScene {
    const Derived& derived;
    const model::Catalogue& catalogue;
    const PlaneGrid& grid;

    const model::Frame& frame() const { return derived.project->frames[grid.frame]; }
};

// The member that would come onto the stretch, or the one that is there.
SketchTrial member_trial(const SketchScene& scene,
                         const GridSegment& segment,
                         const std::string& stock);

// The brace between two nodes of a face.
SketchTrial brace_trial(const SketchScene& scene, const GridNode& from, const GridNode& to);

// Bays of the cells, or the bay that takes up the only one.
SketchTrial bay_trial(const SketchScene& scene, const std::vector<GridCell>& cells);

// A plane across the segment's run.
SketchTrial plane_trial(const SketchScene& scene,
                        const GridSegment& segment,
                        const PlanePlace& place);

// "divider 2", "shelf 1", "cross divider 1": the first that is free.
std::string free_plane_name(const model::Frame& frame, model::Axis axis);

// A plane that stands on a dimension of its own, as those of a starter.
Change new_plane_change(const model::Project& project,
                        const model::Frame& frame,
                        const model::Plane& plane);

}  // namespace editor
