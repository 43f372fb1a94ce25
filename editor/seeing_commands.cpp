#include "editor/seeing_commands.h"

#include "editor/seen_scene.h"
#include "editor/view/cut_handle.h"
#include "editor/view/sketch_hand.h"

#include <glm/common.hpp>

#include <algorithm>
#include <numbers>

namespace editor {
namespace {

Visible next(Visible visible) {
    switch (visible) {
        case Visible::plainly:
            return Visible::faintly;
        case Visible::faintly:
            return Visible::hidden;
        case Visible::hidden:
            break;
    }
    return Visible::plainly;
}

model::Axis axis_looked_along(const engine::Camera& camera) {
    const auto forward = glm::abs(engine::forward_of(camera));
    if (forward.z > 0.8) return model::Axis::z;
    return forward.x > forward.y ? model::Axis::x : model::Axis::y;
}

void come_back(Desk& desk) {
    auto& seeing = desk.ui.seeing;
    seeing.way.alone.reset();
    desk.ui.view.camera = seeing.camera_before;
    desk.ui.view.is_fitted = false;
}

}  // namespace

bool has_pieces(const Desk& desk) { return !project_of(desk).frames.empty(); }
bool has_room(const Desk& desk) { return !project_of(desk).room.empty(); }
bool can_be_seen(const Desk& desk) { return has_pieces(desk) || has_room(desk); }
bool is_cut(const Desk& desk) { return desk.ui.seeing.cut.has_value(); }

bool has_panels(const Desk& desk) {
    return std::ranges::any_of(project_of(desk).frames,
                               [](const model::Frame& frame) { return !frame.panels.empty(); });
}

bool can_be_alone(const Desk& desk) {
    return desk.ui.seeing.way.alone || !desk.ui.selection.pieces.empty();
}

bool is_seen_otherwise(const Desk& desk) {
    const auto& seeing = desk.ui.seeing;
    return seeing.way != WayOfSeeing{} || seeing.cut || seeing.shows_marks || seeing.tape.taken ||
           seeing.tape.is_held;
}

void see_through_room(Desk& desk) { desk.ui.seeing.way.room = next(desk.ui.seeing.way.room); }

void see_through_panels(Desk& desk) { desk.ui.seeing.way.panels = next(desk.ui.seeing.way.panels); }

void colour_by_next(Desk& desk) {
    auto& by = desk.ui.seeing.way.colour_by;
    by = by == ColourBy::clearance ? ColourBy::metal
                                   : static_cast<ColourBy>(static_cast<int>(by) + 1);
}

void pull_apart_or_together(Desk& desk) {
    auto& apart = desk.ui.seeing.way.apart;
    apart = apart > 0.0F ? 0.0F : 0.5F;
    if (apart > 0.0F) {
        desk.ui.seeing.tape = {};
        take_hand(desk.ui.sketch, SketchHand::none);
    }
    desk.ui.view.wants_fit = true;
}

CutThrough cut_through_middle(Desk& desk, model::Axis axis) {
    const auto& all = scene(desk);
    const auto skeleton = engine::bounds_of(all.solid);
    const auto box = engine::is_empty(skeleton) ? engine::bounds_of(all) : skeleton;
    const int k = static_cast<int>(model::index_of(axis));
    CutThrough cut{.axis = axis};
    if (!engine::is_empty(box)) {
        cut.at = cut_place((box.lo[k] + box.hi[k]) / 2.0 * 1e6, cut_range(all, axis),
                           project_of(desk).shown);
    }
    // The side that is looked at is taken away.
    cut.keeps_low = engine::forward_of(desk.ui.view.camera)[k] < 0.0;
    return cut;
}

void cut_through_or_not(Desk& desk) {
    auto& seeing = desk.ui.seeing;
    if (seeing.cut) {
        seeing.cut.reset();
        return;
    }
    seeing.cut = cut_through_middle(desk, axis_looked_along(desk.ui.view.camera));
}

void cut_along_next_axis(Desk& desk) {
    auto& cut = desk.ui.seeing.cut;
    if (!cut) return;
    const auto next_axis = cut->axis == model::Axis::x   ? model::Axis::y
                           : cut->axis == model::Axis::y ? model::Axis::z
                                                         : model::Axis::x;
    cut = cut_through_middle(desk, next_axis);
}

void turn_cut_over(Desk& desk) {
    auto& cut = desk.ui.seeing.cut;
    if (cut) cut->keeps_low = !cut->keeps_low;
}

void see_alone_or_all(Desk& desk) {
    auto& seeing = desk.ui.seeing;
    if (seeing.way.alone) {
        come_back(desk);
        return;
    }
    const auto& now = derived(desk);
    const auto chosen = selected_pieces(*now.project, now.resolved, desk.ui.selection);
    if (chosen.empty()) return;
    seeing.tape = {};
    take_hand(desk.ui.sketch, SketchHand::none);
    seeing.camera_before = desk.ui.view.camera;
    seeing.way.alone = name_of_piece(*now.project, now.resolved, chosen.front());
    desk.ui.selection = selection_of(*now.project, now.resolved, {chosen.front()});
    desk.ui.view.wants_fit = true;
}

void see_from_across(Desk& desk, engine::ViewFrom from) {
    see_from(desk, from);
    desk.ui.view.camera = engine::orbited(desk.ui.view.camera, std::numbers::pi, 0.0);
}

void take_measure_or_not(Desk& desk) {
    auto& seeing = desk.ui.seeing;
    seeing.tape.is_held = !seeing.tape.is_held;
    seeing.tape.under.reset();
    seeing.tape.first.reset();
    if (!seeing.tape.is_held) return;
    // What is measured is what will be built, and one thing is in hand.
    seeing.way.apart = 0.0F;
    take_hand(desk.ui.sketch, SketchHand::none);
    desk.ui.placing.reset();
}

void see_as_it_is(Desk& desk) {
    auto& seeing = desk.ui.seeing;
    if (seeing.way.alone) come_back(desk);
    const Area bar = seeing.bar;
    seeing = {};
    seeing.bar = bar;
}

bool has_way_to_end(const Desk& desk) {
    const auto& seeing = desk.ui.seeing;
    return seeing.tape.is_held || seeing.tape.taken || seeing.way.alone;
}

bool end_way_of_seeing(Desk& desk) {
    auto& seeing = desk.ui.seeing;
    if (seeing.tape.is_held) {
        take_measure_or_not(desk);
    } else if (seeing.way.alone) {
        come_back(desk);
    } else if (seeing.tape.taken) {
        seeing.tape.taken.reset();
    } else {
        return false;
    }
    return true;
}

void tend_seeing(Desk& desk) {
    auto& seeing = desk.ui.seeing;
    // What was measured may be elsewhere by now, or gone.
    if (auto& tape = seeing.tape; tape.of != desk.history.revision()) {
        tape.under.reset();
        tape.first.reset();
        tape.taken.reset();
        tape.of = desk.history.revision();
    }
    if (!seeing.way.alone) return;
    const auto& now = derived(desk);
    if (!find_piece(*now.project, now.resolved, *seeing.way.alone)) come_back(desk);
    const auto chosen = selected_pieces(*now.project, now.resolved, desk.ui.selection);
    if (!seeing.way.alone || chosen.empty()) return;
    const auto name = name_of_piece(*now.project, now.resolved, chosen.front());
    if (name == *seeing.way.alone) return;
    seeing.way.alone = name;
    desk.ui.view.wants_fit = true;
}

}  // namespace editor
