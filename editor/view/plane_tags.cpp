#include "editor/view/plane_tags.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/kit/widgets.h"
#include "editor/view/plane_tag_places.h"

#include <glm/geometric.hpp>
#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace editor {
namespace {

constexpr double snap_reach = 7.0;  // design pixels
constexpr float pixels_to_drag = 3.0F;

std::string value_text(const GridPlane& plane, const Derived& derived) {
    return quantity_text(
        {.kind = engine::QuantityKind::length, .length = engine::Length::from_nm(plane.at)},
        derived.project->shown);
}

ImVec2 size_of_tag(const GridPlane& plane, const Derived& derived) {
    return {size_of_text(plane.name, Type::small).x +
                size_of_text(value_text(plane, derived), Type::strong).x + scaled(30),
            scaled(25)};
}

void draw_face(const PlaneTag& tag, const Derived& derived, bool is_hot, bool is_chosen) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 from{tag.at.x, tag.at.y};
    const ImVec2 end{tag.at.x + tag.at.width, tag.at.y + tag.at.height};
    on.AddRectFilled(from, end, is_hot ? colour::tape_hover : colour::tape, scaled(3));
    for (float x = from.x + scaled(6); x < end.x - scaled(3); x += scaled(6)) {
        on.AddLine({x, end.y - scaled(4)}, {x, end.y - 1}, colour::tape_mark, 1.0F);
    }
    on.AddRect(from, end, is_chosen ? colour::dye : colour::tape_edge, scaled(3), 0,
               is_chosen ? scaled(2) : 1.0F);
    const float y = tag.at.y + scaled(2);
    draw_text_at(on, {from.x + scaled(8), y + 1}, tag.plane.name, Type::small, colour::tape_text);
    draw_text_at(on, {end.x - scaled(8), y}, value_text(tag.plane, derived), Type::strong,
                 colour::tape_ink, Align::right);
}

// The whole plane, where it crosses the frame.
void draw_plane(const Area& area,
                const PlaneGrid& grid,
                const ViewState& view,
                const PlaneTag& tag,
                float pixel_scale) {
    const auto cross = model::across(tag.axis);
    std::array<ImVec2, 4> corners{};
    constexpr std::array<std::array<bool, 2>, 4> round{
        {{false, false}, {true, false}, {true, true}, {false, true}}};
    for (std::size_t i = 0; i < 4; ++i) {
        model::Point point{};
        point[model::index_of(tag.axis)] = tag.plane.at;
        for (std::size_t c = 0; c < 2; ++c) {
            const auto& planes = grid.across(cross[c]);
            point[model::index_of(cross[c])] = round[i][c] ? planes.back().at : planes.front().at;
        }
        const auto at = engine::pixel_of(view.camera, in_room(grid, point), view.viewport);
        if (!at) return;
        corners[i] = {area.x + static_cast<float>(at->x) / pixel_scale,
                      area.y + static_cast<float>(at->y) / pixel_scale};
    }
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.AddConvexPolyFilled(corners.data(), 4, colour::with_alpha(colour::dye, 34));
    on.AddPolyline(corners.data(), 4, colour::dye, ImDrawFlags_Closed, scaled(1.5F));
}

constexpr float remark_width = 260.0F;

// Under the tag, or above it where the view ends below; within the view.
Area place_of_remark(const PlaneTag& tag, const Area& view, ImVec2 size) {
    const float rim_x = scaled(5);
    const float rim_y = scaled(3);
    Area at{tag.at.x - rim_x, tag.at.y + tag.at.height + scaled(2), size.x + 2 * rim_x,
            size.y + 2 * rim_y};
    const bool has_room_below = at.y + at.height <= view.y + view.height;
    if (!has_room_below) at.y = tag.at.y - scaled(2) - at.height;
    at.x = std::clamp(at.x, view.x, std::max(view.x, view.x + view.width - at.width));
    return at;
}

// What is said beside a tag: why it was refused, or what it snapped to. Over all other tags; gives
// where, so that nothing is written on it.
std::optional<Area> draw_remark(const PlaneTag& tag,
                                const Area& view,
                                const std::string& frame,
                                const PlaneHand& hand) {
    const bool is_refused = hand.refused && hand.refused->is_of(frame, tag.plane.name);
    const bool is_snapped = hand.dragged && hand.dragged->plane == tag.plane.name;
    const std::string text = is_refused   ? hand.refused->reason
                             : is_snapped ? hand.dragged->snapped_to
                                          : std::string();
    if (text.empty()) return std::nullopt;
    const float width = std::min(scaled(remark_width), view.width - scaled(10));
    const Area at = place_of_remark(tag, view, size_of_text(text, Type::small, width));
    const ImVec2 end{at.x + at.width, at.y + at.height};
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.AddRectFilled({at.x, at.y}, end, is_refused ? colour::red_ground : colour::sheet, scaled(3));
    on.AddRect({at.x, at.y}, end, is_refused ? colour::red_edge : colour::dye, scaled(3));
    draw_wrapped_at(on, {at.x + scaled(5), at.y + scaled(3)}, text, Type::small,
                    is_refused ? colour::red : colour::dye, width);
    log_rectangle(tag.plane.name + " remark", {at.x, at.y, end.x, end.y, true, true, text});
    return at;
}

std::optional<Change> draw_typing(const PlaneTag& tag, const SketchDesk& desk) {
    auto& hand = desk.state.planes;
    hand.typed->is_drawn = true;
    ImGui::SetCursorScreenPos({tag.at.x, tag.at.y});
    const auto field = draw_field(tag.plane.name + " formula", hand.typed->text,
                                  {.hint = "formula",
                                   .width = std::max(tag.at.width, scaled(120)),
                                   .wants_focus = hand.typed->wants_focus});
    hand.typed->wants_focus = false;
    if (field.entered) return take_typed(hand, desk.derived, true);
    if (!field.left) return std::nullopt;
    if (is_pressed(key::escape)) {
        hand.typed.reset();
        hand.refused.reset();
        return std::nullopt;
    }
    return take_typed(hand, desk.derived, false);
}

double millimetres_pulled(glm::dvec2 pixels_per_mm, float pixel_scale) {
    const ImGuiIO& io = ImGui::GetIO();
    const double speed = glm::length(pixels_per_mm);
    if (speed <= 0.0) return 0.0;
    const glm::dvec2 by{
        static_cast<double>((io.MousePos.x - io.MouseClickedPos[0].x) * pixel_scale),
        static_cast<double>((io.MousePos.y - io.MouseClickedPos[0].y) * pixel_scale)};
    return glm::dot(by, pixels_per_mm / speed) / speed;
}

const std::string& name_of_frame(const SketchDesk& desk) {
    return desk.derived.project->frames[*sketched_frame(desk.derived, desk.state)].name;
}

// A click types, a pull moves.
std::optional<Change> follow_mouse(const PlaneTag& tag, const SketchDesk& desk, float pixel_scale) {
    auto& hand = desk.state.planes;
    const std::string& frame = name_of_frame(desk);
    const bool is_dragged = hand.dragged && hand.dragged->plane == tag.plane.name;
    const bool moved = ImGui::IsMouseDragging(ImGuiMouseButton_Left, scaled(pixels_to_drag));
    const bool is_refused = hand.refused && hand.refused->is_of(frame, tag.plane.name);
    if (ImGui::IsItemActive() && moved && !is_dragged && !is_refused && !hand.is_given_up)
        begin_drag(hand, desk.derived, frame, tag.plane.name);
    if (ImGui::IsItemDeactivated()) {
        desk.selection = {.pieces = {},
                          .subjects = {{model::SubjectKind::plane, frame, tag.plane.name}}};
        if (!is_dragged && !hand.is_given_up && !moved)
            begin_typing(hand, desk.derived, frame, tag.plane.name);
        hand.dragged.reset();
        hand.is_given_up = false;
        return std::nullopt;
    }
    if (!hand.dragged || hand.dragged->plane != tag.plane.name || !ImGui::IsItemActive())
        return std::nullopt;
    if (ImGui::GetIO().MouseClicked[1] || is_pressed(key::escape)) {
        hand.is_given_up = true;
        return given_up(hand, desk.derived);
    }
    hand.dragged->pixels_per_mm = tag.pixels_per_mm;
    const double reach = snap_reach * static_cast<double>(scaled(1) * pixel_scale) /
                         std::max(1e-9, glm::length(tag.pixels_per_mm));
    return dragged_change(hand, desk.derived, millimetres_pulled(tag.pixels_per_mm, pixel_scale),
                          reach);
}

std::optional<Change> draw_tag(const PlaneTag& tag,
                               const Area& area,
                               const PlaneGrid& grid,
                               const SketchDesk& desk,
                               float pixel_scale) {
    auto& hand = desk.state.planes;
    const std::string& frame = name_of_frame(desk);
    if (hand.typed && hand.typed->frame == frame && hand.typed->plane == tag.plane.name) {
        return draw_typing(tag, desk);
    }
    ImGui::SetCursorScreenPos({tag.at.x, tag.at.y});
    ImGui::InvisibleButton(tag.plane.name.c_str(), {tag.at.width, tag.at.height});
    const bool is_hot = ImGui::IsItemHovered() || ImGui::IsItemActive();
    log_item(tag.plane.name, value_text(tag.plane, desk.derived));
    auto change = follow_mouse(tag, desk, pixel_scale);
    if (is_hot) draw_plane(area, grid, desk.view, tag, pixel_scale);
    draw_face(tag, desk.derived, is_hot,
              has_subject(desk.selection, {model::SubjectKind::plane, frame, tag.plane.name}));
    return change;
}

// Of a plane that is being pulled and has no tag just now: it lies where another one does, or its
// edge is seen end on. At the pointer, so that the pull goes on.
std::optional<PlaneTag> held_tag(const std::vector<PlaneTag>& tags, const SketchDesk& desk) {
    const auto& dragged = desk.state.planes.dragged;
    const auto& frame = desk.derived.project->frames[*sketched_frame(desk.derived, desk.state)];
    if (!dragged || dragged->frame != frame.name) return std::nullopt;
    const auto is_it = [&](const auto& tag) { return tag.plane.name == dragged->plane; };
    const auto* plane = by_name(frame.planes, dragged->plane);
    if (plane == nullptr || std::ranges::any_of(tags, is_it)) return std::nullopt;
    const auto grid = plane_grid(desk.derived, *sketched_frame(desk.derived, desk.state));
    const auto at = place_of_plane(frame, grid, dragged->plane);
    PlaneTag tag{.axis = plane->axis, .plane = {plane->name, at.value_or(dragged->start)}};
    const ImVec2 size = size_of_tag(tag.plane, desk.derived);
    tag.anchor = ImGui::GetIO().MousePos;
    tag.at = {tag.anchor.x - size.x / 2, tag.anchor.y - size.y / 2, size.x, size.y};
    tag.pixels_per_mm = dragged->pixels_per_mm;
    return tag;
}

}  // namespace

std::optional<Change> draw_plane_tags(const Area& area,
                                      const SketchDesk& desk,
                                      std::vector<Area>& taken) {
    std::optional<Change> change;
    const auto frame = sketched_frame(desk.derived, desk.state);
    if (!frame) return change;
    const float pixel_scale = ImGui::GetIO().DisplayFramebufferScale.x;
    const auto grid = plane_grid(desk.derived, *frame);
    auto tags = plane_tags(grid, desk.view, area, pixel_scale, taken, [&](const GridPlane& plane) {
        return size_of_tag(plane, desk.derived);
    });
    if (const auto held = held_tag(tags, desk)) tags.push_back(*held);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    for (const auto& tag : tags) {
        on.AddLine(tag.anchor, {tag.at.x + tag.at.width / 2, tag.at.y + tag.at.height / 2},
                   colour::with_alpha(colour::dye, 130), scaled(1));
    }
    const ItemScope items("planes");
    for (const auto& tag : tags) {
        taken.push_back(tag.at);
        keep_first(change, draw_tag(tag, area, grid, desk, pixel_scale));
    }
    for (const auto& tag : tags) {
        const auto remark = draw_remark(tag, area, name_of_frame(desk), desk.state.planes);
        if (remark) taken.push_back(*remark);
    }
    return change;
}

}  // namespace editor
