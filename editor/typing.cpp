#include "editor/typing.h"

#include "editor/by_name.h"
#include "editor/view/tape_typing.h"

#include <utility>

namespace editor {
namespace {

void take_dimension(Desk& desk, bool keep_field) {
    const auto change = take_typed(desk.ui.hand, derived(desk), keep_field);
    if (change) static_cast<void>(submit(desk, *change));
}

void take_offers(Desk& desk) {
    const auto change = take_typed_offers(desk.ui.offers, derived(desk));
    if (change) static_cast<void>(submit(desk, *change));
}

void take_saw(Desk& desk) {
    const auto change = take_typed_saw(desk.ui.saw, derived(desk));
    if (change) static_cast<void>(submit(desk, *change));
}

void take_join(Desk& desk) {
    const auto change = take_typed_join(desk.ui.join.typing, derived(desk));
    if (change) static_cast<void>(submit(desk, *change));
}

// A pull that was refused has typed nothing.
bool is_waiting(const RefusedFormula& refused, const model::Project& project) {
    const auto* dimension = by_name(project.dimensions, refused.dimension);
    return dimension != nullptr && dimension->formula != refused.text;
}

bool is_waiting(const RefusedPlane& refused, const model::Project& project) {
    const auto* frame = by_name(project.frames, refused.frame);
    const auto* plane = frame == nullptr ? nullptr : by_name(frame->planes, refused.plane);
    return plane != nullptr && !refused.text.empty() &&
           formula_behind(project, *plane) != refused.text;
}

void take_plane(Desk& desk, bool keep_field) {
    const auto change = take_typed(desk.ui.sketch.planes, derived(desk), keep_field);
    if (change) static_cast<void>(submit(desk, *change));
}

void take_length(Desk& desk, bool keep_field) {
    auto& tape = desk.ui.seeing.tape;
    const auto change = take_typed_length(tape, derived(desk), *desk.catalogue, keep_field);
    if (change) static_cast<void>(submit(desk, *change));
    follow_typed_length(tape, desk.history.now(), desk.history.revision());
}

}  // namespace

void take_typing(Desk& desk) {
    take_dimension(desk, true);
    take_offers(desk);
    take_saw(desk);
    take_join(desk);
    take_plane(desk, true);
    take_length(desk, true);
}

std::string refused_typing(const Desk& desk) {
    const auto& refused = desk.ui.hand.refused;
    if (refused && is_waiting(*refused, project_of(desk))) {
        return refused->dimension + ": " + refused->reason;
    }
    const auto& plane = desk.ui.sketch.planes.refused;
    if (plane && is_waiting(*plane, project_of(desk))) return plane->plane + ": " + plane->reason;
    const auto& tape = desk.ui.seeing.tape;
    if (tape.taken && tape.refused && !tape.refused->text.empty())
        return "measure: " + tape.refused->reason;
    const auto& offers = desk.ui.offers;
    if (!offers.trouble.empty()) return "bars of " + offers.stock + ": " + offers.trouble;
    const auto& saw = desk.ui.saw;
    if (!saw.trouble.empty()) return saw.field + ": " + saw.trouble;
    const auto& join = desk.ui.join.typing;
    return join.trouble.empty() ? std::string() : "gusset sheet: " + join.trouble;
}

void begin_typing_frame(Desk& desk) {
    auto& hand = desk.ui.hand;
    if (hand.typed) hand.typed->is_drawn = false;
    hand.drawn_before = std::exchange(hand.drawn, {});
    if (auto& typed = desk.ui.sketch.planes.typed) typed->is_drawn = false;
    if (auto& typed = desk.ui.seeing.tape.typed) typed->is_drawn = false;
    desk.ui.offers.is_drawn = false;
    desk.ui.saw.is_drawn = false;
    desk.ui.join.typing.is_drawn = false;
}

void end_typing_frame(Desk& desk) {
    if (desk.ui.hand.typed && !desk.ui.hand.typed->is_drawn) take_dimension(desk, false);
    const auto& plane = desk.ui.sketch.planes.typed;
    if (plane && !plane->is_drawn) take_plane(desk, false);
    auto& tape = desk.ui.seeing.tape;
    // Made by the view in this frame.
    follow_typed_length(tape, desk.history.now(), desk.history.revision());
    if (tape.typed && !tape.typed->is_drawn) take_length(desk, false);
    if (!desk.ui.offers.is_drawn) take_offers(desk);
    if (!desk.ui.saw.is_drawn) take_saw(desk);
    if (!desk.ui.join.typing.is_drawn) take_join(desk);
}

}  // namespace editor
