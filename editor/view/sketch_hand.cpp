#include "editor/view/sketch_hand.h"

#include "editor/by_name.h"
#include "editor/view/sketch_member.h"
#include "editor/view/sketch_target.h"
#include "editor/view/sketch_trial.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <utility>

namespace editor {
namespace {

// Design pixels.
constexpr double pixels_to_drag = 4.0;

bool has_node(const PlaneGrid& grid, const GridNode& node) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (node[k] >= grid.planes[k].size()) return false;
    }
    return true;
}

// An undo while the button is held may take planes away.
bool is_still_there(const PlaneGrid& grid, const SketchState& state) {
    const auto has_next = [&](const GridCell& cell) {
        GridNode next = cell.least;
        for (auto& i : next) ++i;
        return has_node(grid, next);
    };
    if (state.begun && !has_node(grid, *state.begun)) return false;
    if (!std::ranges::all_of(state.painted, has_next)) return false;
    if (!state.pressed) return true;
    for (const auto* target : {&state.target, &state.pressed->target}) {
        if (target->segment &&
            (!has_node(grid, target->segment->from) || !has_node(grid, target->segment->end()))) {
            return false;
        }
        if (target->node && !has_node(grid, *target->node)) return false;
        if (target->cell && !has_next(*target->cell)) return false;
    }
    return !state.pressed->node || has_node(grid, *state.pressed->node);
}

// What is begun counts the planes of one frame as they were.
bool is_of_another(const Derived& derived, std::size_t frame, const SketchState& state) {
    if (!state.pressed && !state.begun && state.painted.empty()) return false;
    return state.of != worked_out_of(derived) || state.of_frame != frame;
}

// While the button is held.
void follow(const SketchScene& scene, const SketchDesk& desk, const SketchPointer& pointer) {
    auto& state = desk.state;
    auto& press = *state.pressed;
    const double moved = glm::distance(pointer.pixel, press.at);
    press.has_moved = press.has_moved || moved > pixels_to_drag * pointer.scale;
    if (!press.has_moved) return;
    if (state.hand == SketchHand::members) {
        state.target.segment =
            stretch_to(scene.grid, desk.view, *press.target.segment, press.node, pointer.pixel);
        return;
    }
    const auto now = target_at(scene, desk, pointer);
    if (state.hand != SketchHand::bays || now.is_something()) state.target = now;
    if (!now.cell || state.hand != SketchHand::bays) return;
    const bool is_new = std::ranges::find(state.painted, *now.cell) == state.painted.end();
    if (is_new) state.painted.push_back(*now.cell);
}

void press(const SketchScene& scene, const SketchDesk& desk, const SketchPointer& pointer) {
    auto& state = desk.state;
    state.pressed = SketchPress{.target = state.target, .at = pointer.pixel};
    if (state.hand == SketchHand::members) {
        state.pressed->node =
            node_at(scene.grid, desk.view, pointer.pixel, node_reach * pointer.scale);
    }
    if (state.hand == SketchHand::bays) state.painted = {*state.target.cell};
    // A first node by a press, the second one by letting go there or by another press.
    if (state.hand != SketchHand::braces || state.begun) return;
    state.begun = state.target.node;
    state.pressed->begins = true;
}

std::string key_of(const SketchState& state, std::size_t frame, const std::string& stock) {
    std::string key = std::to_string(static_cast<int>(state.hand)) + " " + std::to_string(frame);
    const auto add = [&](auto number) { key += " " + std::to_string(number); };
    const auto add_node = [&](const GridNode& node) {
        for (const auto i : node) add(i);
    };
    if (const auto& segment = state.target.segment) {
        add(model::index_of(segment->run));
        add_node(segment->from);
        add(segment->to);
    }
    if (state.begun) add_node(*state.begun);
    if (state.target.node) add_node(*state.target.node);
    if (state.target.cell) add_node(state.target.cell->least);
    for (const auto& cell : state.painted) add_node(cell.least);
    if (state.target.place) {
        add(state.target.place->at);
        key += state.target.place->words;
    }
    return key + " " + stock;
}

SketchTrial trial_of(const SketchScene& scene, const SketchState& state, const std::string& stock) {
    const auto& target = state.target;
    switch (state.hand) {
        case SketchHand::members:
            return member_trial(scene, *target.segment, stock);
        case SketchHand::planes:
            return plane_trial(scene, *target.segment, target.place.value_or(PlanePlace{}));
        case SketchHand::bays:
            return bay_trial(scene,
                             state.painted.empty() ? std::vector{*target.cell} : state.painted);
        case SketchHand::braces:
            if (state.begun && *state.begun != *target.node)
                return brace_trial(scene, *state.begun, *target.node);
            break;
        case SketchHand::none:
            break;
    }
    SketchTrial trial;
    trial.of = worked_out_of(scene.derived);
    return trial;
}

// Worked out anew only where the project or what is pointed at is another one.
void update_trial(const SketchScene& scene, const SketchDesk& desk) {
    auto& state = desk.state;
    if (!state.target.is_something()) {
        state.trial.reset();
        return;
    }
    const auto stock = sketched_stock(desk.derived, state);
    auto key = key_of(state, scene.grid.frame, stock);
    if (state.trial && state.trial->key == key && state.trial->of == worked_out_of(desk.derived))
        return;
    state.trial = trial_of(scene, state, stock);
    state.trial->key = std::move(key);
}

// A member by its pieces' names, which it has when it is there.
void choose(Selection& selection, const std::vector<model::Subject>& subjects) {
    selection = {};
    for (const auto& subject : subjects) {
        if (subject.kind == model::SubjectKind::member) {
            selection.pieces.push_back({subject.frame, subject.name, 0});
        } else {
            selection.subjects.push_back(subject);
        }
    }
}

std::optional<Change> let_go(const SketchDesk& desk) {
    auto& state = desk.state;
    const auto pressed = *std::exchange(state.pressed, std::nullopt);
    state.painted.clear();
    if (!state.target.is_something() || !state.trial) return std::nullopt;
    if (state.hand == SketchHand::braces) {
        // Let go where it was pressed: the second node is still to come.
        if (state.begun == state.target.node) {
            if (pressed.target.node == state.target.node && !pressed.begins) state.begun.reset();
            return std::nullopt;
        }
        if (state.trial->change) state.begun.reset();
    }
    if (!state.trial->chosen.empty()) choose(desk.selection, state.trial->chosen);
    return state.trial->change;
}

}  // namespace

std::optional<std::size_t> sketched_frame(const Derived& derived, const SketchState& state) {
    const auto& frames = derived.project->frames;
    if (frames.empty()) return std::nullopt;
    const auto* frame = by_name(frames, state.frame);
    return frame == nullptr ? 0 : static_cast<std::size_t>(frame - frames.data());
}

std::string sketched_stock(const Derived& derived, const SketchState& state) {
    if (by_name(derived.project->stock, state.stock) != nullptr) return state.stock;
    const auto frame = sketched_frame(derived, state);
    return frame ? usual_stock_of(*derived.project, derived.project->frames[*frame])
                 : std::string();
}

std::optional<Change> use_pointer(const SketchDesk& desk, const SketchPointer& pointer) {
    auto& state = desk.state;
    const auto frame = sketched_frame(desk.derived, state);
    if (state.hand == SketchHand::none || !frame) {
        state.target = {};
        state.pressed.reset();
        state.trial.reset();
        return std::nullopt;
    }
    const auto grid = plane_grid(desk.derived, *frame);
    const SketchScene scene{desk.derived, desk.catalogue, grid};
    if (!is_still_there(grid, state) || is_of_another(desk.derived, *frame, state))
        take_hand(state, state.hand);
    state.of = worked_out_of(desk.derived);
    state.of_frame = *frame;
    if (state.pressed) {
        follow(scene, desk, pointer);
    } else {
        state.target = pointer.is_over ? target_at(scene, desk, pointer) : SketchTarget{};
        if (pointer.is_pressed && state.target.is_something()) press(scene, desk, pointer);
    }
    update_trial(scene, desk);
    return pointer.is_released && state.pressed ? let_go(desk) : std::nullopt;
}

void take_hand(SketchState& state, SketchHand hand) {
    if (hand != SketchHand::planes) state.planes.refused.reset();
    state.hand = hand;
    state.target = {};
    state.pressed.reset();
    state.begun.reset();
    state.painted.clear();
    state.trial.reset();
}

void give_up(SketchState& state) {
    if (state.pressed || state.begun) {
        take_hand(state, state.hand);
    } else {
        take_hand(state, SketchHand::none);
    }
}

}  // namespace editor
