#include "editor/view/sketch_target.h"

#include "editor/view/sketch_member.h"

#include <algorithm>
#include <cmath>

namespace editor {
namespace {

// Design pixels.
constexpr double line_reach = 9.0;
constexpr double snap_reach = 7.0;

// As far as the line is free, both ways.
GridSegment free_stretch(const model::Frame& frame, const PlaneGrid& grid, GridSegment segment) {
    const auto k = model::index_of(segment.run);
    const auto is_free = [&](std::size_t i) {
        GridSegment one = segment;
        one.from[k] = i;
        one.to = i + 1;
        return member_on(frame, grid, one) == nullptr;
    };
    while (segment.from[k] > 0 && is_free(segment.from[k] - 1)) --segment.from[k];
    while (segment.to + 1 < grid.planes[k].size() && is_free(segment.to)) ++segment.to;
    return segment;
}

const std::vector<PlaneSnap>& snaps_for(const SketchScene& scene,
                                        const SketchDesk& desk,
                                        model::Axis axis) {
    auto& hand = desk.state.planes;
    const auto of = worked_out_of(desk.derived);
    const bool is_known = hand.snaps_of == of && hand.snaps_frame == scene.grid.frame &&
                          hand.snaps_axis == axis && of.revision != 0;
    if (is_known) return hand.snaps;
    hand.snaps = plane_snaps(desk.derived, scene.grid.frame, axis, {});
    hand.snaps_of = of;
    hand.snaps_frame = scene.grid.frame;
    hand.snaps_axis = axis;
    return hand.snaps;
}

PlanePlace place_of_new_plane(const SketchScene& scene,
                              const SketchDesk& desk,
                              const GridSegment& segment,
                              const SketchPointer& pointer) {
    const auto at = place_along(scene.grid, desk.view, segment, pointer.pixel);
    if (!at) return {};
    const auto& snaps = snaps_for(scene, desk, segment.run);
    const double mm = engine::mm_per_pixel(desk.view.camera, desk.view.viewport);
    const auto reach =
        static_cast<model::Nm>(std::llround(snap_reach * pointer.scale * mm * 1.0e6));
    auto place = snapped(*at, snaps, reach, desk.derived.project->shown);
    const auto& planes = scene.grid.across(segment.run);
    place.at = std::clamp(place.at, planes[segment.from[model::index_of(segment.run)]].at,
                          planes[segment.to].at);
    return place;
}

}  // namespace

SketchTarget target_at(const SketchScene& scene,
                       const SketchDesk& desk,
                       const SketchPointer& pointer) {
    SketchTarget target;
    const auto& grid = scene.grid;
    switch (desk.state.hand) {
        case SketchHand::none:
            break;
        case SketchHand::members:
            target.segment = segment_at(grid, desk.view, pointer.pixel, line_reach * pointer.scale);
            if (target.segment && pointer.is_wide &&
                member_on(scene.frame(), grid, *target.segment) == nullptr) {
                target.segment = free_stretch(scene.frame(), grid, *target.segment);
            }
            break;
        case SketchHand::planes:
            target.segment = segment_at(grid, desk.view, pointer.pixel, line_reach * pointer.scale);
            if (target.segment)
                target.place = place_of_new_plane(scene, desk, *target.segment, pointer);
            break;
        case SketchHand::braces:
            target.node = node_at(grid, desk.view, pointer.pixel, node_reach * pointer.scale);
            break;
        case SketchHand::bays: {
            const auto cells = cells_under(grid, desk.view, pointer.pixel);
            const std::size_t which = pointer.is_wide ? 1 : 0;
            if (which < cells.size()) target.cell = cells[which];
            break;
        }
    }
    return target;
}

}  // namespace editor
