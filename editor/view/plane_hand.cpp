#include "editor/view/plane_hand.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"

#include <algorithm>
#include <cmath>

namespace editor {
namespace {

struct PlaneFound {
    const model::Frame* frame = nullptr;
    const model::Plane* plane = nullptr;
    std::size_t frame_index = 0;
    std::optional<model::Nm> at;
};

PlaneFound find_plane(const Derived& derived, const std::string& frame, const std::string& plane) {
    PlaneFound found;
    const auto& frames = derived.project->frames;
    found.frame = by_name(frames, frame);
    if (found.frame == nullptr) return found;
    found.plane = by_name(found.frame->planes, plane);
    found.frame_index = static_cast<std::size_t>(found.frame - frames.data());
    if (found.plane == nullptr || found.frame_index >= derived.resolved.frames.size()) return found;
    const auto& placed = derived.resolved.frames[found.frame_index].planes;
    const auto i = static_cast<std::size_t>(found.plane - found.frame->planes.data());
    if (i < placed.size()) found.at = placed[i].position;
    return found;
}

const model::Dimension* dimension_behind(const model::Project& project, const model::Plane& plane) {
    return by_name(project.dimensions, plane.position);
}

model::Edit edit_of(const model::Project& project,
                    const std::string& frame,
                    const model::Plane& plane,
                    const model::Formula& formula) {
    if (const auto* dimension = dimension_behind(project, plane))
        return model::SetFormula{dimension->name, formula};
    return model::SetPlanePosition{frame, plane.name, formula};
}

std::optional<std::string> reason_against(const Derived& derived,
                                          const PlaneFound& found,
                                          const std::string& text) {
    const auto& project = *derived.project;
    const auto after =
        model::apply(project, edit_of(project, found.frame->name, *found.plane, text));
    if (!after) return error_words(after.error(), text);
    const auto* dimension = dimension_behind(project, *found.plane);
    const auto value = dimension != nullptr ? tried_formula(project, dimension->name, text)
                                            : tried_length(derived, text);
    if (!value) return error_words(value.error(), text);
    return dimension != nullptr ? reason_by_limits(*after, dimension->name) : std::nullopt;
}

// Whether dragging it loses no relation.
bool is_plain(const model::Project& project, const model::Plane& plane) {
    if (const auto* dimension = dimension_behind(project, plane))
        return is_plain_value(project, *dimension);
    return engine::names_in(plane.position).empty();
}

engine::Quantity length_of(model::Nm at) {
    return {.kind = engine::QuantityKind::length, .length = engine::Length::from_nm(at)};
}

model::Nm within_limits(const Derived& derived, const model::Plane& plane, model::Nm at) {
    const auto* dimension = dimension_behind(*derived.project, plane);
    if (dimension == nullptr) return at;
    const auto limits = limits_of(derived, *dimension);
    if (limits.least) at = std::max(at, limits.least->length.nm());
    if (limits.most) at = std::min(at, limits.most->length.nm());
    return at;
}

}  // namespace

model::Formula formula_behind(const model::Project& project, const model::Plane& plane) {
    const auto* dimension = dimension_behind(project, plane);
    return dimension != nullptr ? dimension->formula : plane.position;
}

void begin_typing(PlaneHand& hand,
                  const Derived& derived,
                  const std::string& frame,
                  const std::string& plane) {
    const auto found = find_plane(derived, frame, plane);
    if (found.plane == nullptr) return;
    const bool goes_on =
        hand.refused && hand.refused->is_of(frame, plane) && !hand.refused->text.empty();
    hand.typed =
        TypedPlane{frame, plane,
                   goes_on ? hand.refused->text : formula_behind(*derived.project, *found.plane)};
    if (!goes_on) hand.refused.reset();
}

std::optional<Change> take_typed(PlaneHand& hand, const Derived& derived, bool keep_field) {
    if (!hand.typed) return std::nullopt;
    const TypedPlane typed = *hand.typed;
    const auto found = find_plane(derived, typed.frame, typed.plane);
    hand.refused.reset();
    if (found.plane == nullptr || typed.text == formula_behind(*derived.project, *found.plane)) {
        hand.typed.reset();
        return std::nullopt;
    }
    if (const auto reason = reason_against(derived, found, typed.text)) {
        hand.refused = RefusedPlane{typed.frame, typed.plane, typed.text, *reason};
        hand.typed->wants_focus = true;
        if (!keep_field) hand.typed.reset();
        return std::nullopt;
    }
    hand.typed.reset();
    return change_of(edit_of(*derived.project, typed.frame, *found.plane, typed.text));
}

void begin_drag(PlaneHand& hand,
                const Derived& derived,
                const std::string& frame,
                const std::string& plane) {
    hand.typed.reset();
    hand.refused.reset();
    const auto found = find_plane(derived, frame, plane);
    if (found.plane == nullptr) return;
    if (!found.at || !is_plain(*derived.project, *found.plane)) {
        hand.refused =
            RefusedPlane{frame, plane, {}, "follows a formula: click it and type to change it"};
        return;
    }
    DraggedPlane dragged{.frame = frame, .plane = plane};
    dragged.start_formula = formula_behind(*derived.project, *found.plane);
    dragged.start = *found.at;
    dragged.merge_key = "drag plane " + plane + " " + std::to_string(++hand.drags);
    dragged.snaps = plane_snaps(derived, found.frame_index, found.plane->axis, plane);
    hand.dragged = std::move(dragged);
}

std::optional<Change> dragged_change(PlaneHand& hand,
                                     const Derived& derived,
                                     double by_mm,
                                     double reach_mm) {
    if (!hand.dragged) return std::nullopt;
    auto& dragged = *hand.dragged;
    const auto found = find_plane(derived, dragged.frame, dragged.plane);
    if (found.plane == nullptr) return std::nullopt;
    const auto& shown = derived.project->shown;
    // A pull that comes back to where it began leaves the formula as it was typed.
    if (std::abs(by_mm) * 2 < hand_step(shown).mm()) {
        dragged.snapped_to.clear();
        return change_of(
            edit_of(*derived.project, dragged.frame, *found.plane, dragged.start_formula),
            dragged.merge_key);
    }
    const auto nm = [](double mm) { return static_cast<model::Nm>(std::llround(mm * 1.0e6)); };
    const auto place = snapped(dragged.start + nm(by_mm), dragged.snaps, nm(reach_mm), shown);
    const auto at = within_limits(derived, *found.plane, place.at);
    dragged.snapped_to = at == place.at ? place.words : "as far as its limits let it";
    return change_of(
        edit_of(*derived.project, dragged.frame, *found.plane, formula_of(length_of(at), shown)),
        dragged.merge_key);
}

std::optional<Change> given_up(PlaneHand& hand, const Derived& derived) {
    if (!hand.dragged) return std::nullopt;
    const auto dragged = *hand.dragged;
    hand.dragged.reset();
    const auto found = find_plane(derived, dragged.frame, dragged.plane);
    if (found.plane == nullptr) return std::nullopt;
    return change_of(edit_of(*derived.project, dragged.frame, *found.plane, dragged.start_formula),
                     dragged.merge_key);
}

}  // namespace editor
