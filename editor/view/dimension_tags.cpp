#include "editor/view/dimension_tags.h"

#include "editor/dimension_values.h"
#include "editor/kit/widgets.h"
#include "editor/places/tape_strip.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace editor {
namespace {

using model::Axis;
using model::Nm;

constexpr double first_offset = 34.0;  // pixels between the frame and its first dimension line
constexpr double next_offset = 40.0;
constexpr double shortest_line = 26.0;  // pixels: a shorter one is seen end on
constexpr const char* view_strip = "view";

// A dimension line on the screen.
struct ScreenLine {
    glm::dvec2 from{0.0};
    glm::dvec2 to{0.0};
    glm::dvec2 edge_from{0.0};  // where it starts at the frame
    glm::dvec2 edge_to{0.0};
    glm::dvec2 pixels_per_mm{0.0};
};

struct FrameBox {
    model::Point lo{};
    model::Point hi{};
    bool is_empty = true;
};

FrameBox box_of(const Derived& derived, std::size_t frame) {
    FrameBox box;
    for (const auto& piece : derived.resolved.pieces) {
        if (piece.frame != frame) continue;
        if (box.is_empty) {
            box = {piece.extents.lo, piece.extents.hi, false};
            continue;
        }
        for (std::size_t i = 0; i < 3; ++i) {
            box.lo[i] = std::min(box.lo[i], piece.extents.lo[i]);
            box.hi[i] = std::max(box.hi[i], piece.extents.hi[i]);
        }
    }
    return box;
}

glm::dvec3 to_mm(const model::Point& p) {
    constexpr double nm = 1.0 / static_cast<double>(engine::Length::nm_per_mm);
    return {static_cast<double>(p[0]) * nm, static_cast<double>(p[1]) * nm,
            static_cast<double>(p[2]) * nm};
}

std::optional<glm::dvec2> screen_point(const model::Point& in_frame,
                                       const model::ResolvedFrame& frame,
                                       const ViewState& view) {
    return engine::pixel_of(view.camera, to_mm(model::to_room(frame, in_frame)), view.viewport);
}

// The four edges of the box along the axis; the line stands at the one that lies outermost on the
// screen - lowest for lines that lie, leftmost for those that stand.
std::optional<std::array<model::Point, 2>> best_edge(const TaggedDimension& tag,
                                                     const FrameBox& box,
                                                     const model::ResolvedFrame& frame,
                                                     const ViewState& view) {
    const auto cross = model::across(tag.axis);
    std::optional<std::array<model::Point, 2>> best;
    double best_place = 0.0;
    for (const bool b_high : {false, true}) {
        for (const bool c_high : {false, true}) {
            model::Point p = box.lo;
            const auto b = model::index_of(cross[0]);
            const auto c = model::index_of(cross[1]);
            p[b] = b_high ? box.hi[b] : box.lo[b];
            p[c] = c_high ? box.hi[c] : box.lo[c];
            model::Point from = p;
            model::Point to = p;
            from[model::index_of(tag.axis)] = tag.from;
            to[model::index_of(tag.axis)] = tag.to;
            const auto a = screen_point(from, frame, view);
            const auto z = screen_point(to, frame, view);
            if (!a || !z) continue;
            const double place = tag.axis == Axis::z ? -(a->x + z->x) : a->y + z->y;
            if (!best || place > best_place) {
                best = std::array{from, to};
                best_place = place;
            }
        }
    }
    return best;
}

std::optional<ScreenLine> screen_line(const TaggedDimension& tag,
                                      const FrameBox& box,
                                      const model::ResolvedFrame& frame,
                                      const ViewState& view,
                                      double offset) {
    const auto edge = best_edge(tag, box, frame, view);
    if (!edge) return std::nullopt;
    model::Point middle{};
    for (std::size_t i = 0; i < 3; ++i) middle[i] = (box.lo[i] + box.hi[i]) / 2;
    const auto a = screen_point((*edge)[0], frame, view);
    const auto z = screen_point((*edge)[1], frame, view);
    const auto centre = screen_point(middle, frame, view);
    if (!a || !z || !centre) return std::nullopt;
    const glm::dvec2 along = *z - *a;
    const double length = glm::length(along);
    if (length < shortest_line) return std::nullopt;
    glm::dvec2 outward{-along.y / length, along.x / length};
    if (glm::dot(outward, *centre - *a) > 0.0) outward = -outward;
    const double mm =
        static_cast<double>(tag.to - tag.from) / static_cast<double>(engine::Length::nm_per_mm);
    return ScreenLine{*a + outward * offset, *z + outward * offset, *a, *z, along / mm};
}

ImVec2 on_screen(const Area& area, glm::dvec2 pixel, float pixel_scale) {
    return {area.x + static_cast<float>(pixel.x) / pixel_scale,
            area.y + static_cast<float>(pixel.y) / pixel_scale};
}

void draw_line(const Area& area, const ScreenLine& line, float pixel_scale) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 a = on_screen(area, line.from, pixel_scale);
    const ImVec2 z = on_screen(area, line.to, pixel_scale);
    const ImU32 thin = colour::from_rgb(0x2d3f86, 60);
    on.AddLine(on_screen(area, line.edge_from, pixel_scale), a, thin, scaled(1));
    on.AddLine(on_screen(area, line.edge_to, pixel_scale), z, thin, scaled(1));
    on.AddLine(a, z, colour::dye, scaled(1.3F));
    for (const ImVec2 end : {a, z}) {
        on.AddCircleFilled(end, scaled(3.5F), colour::paper);
        on.AddCircle(end, scaled(3.5F), colour::dye, 0, scaled(1.3F));
    }
}

bool overlaps(const Area& a, const Area& b) {
    return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height &&
           b.y < a.y + a.height;
}

// A view that is smaller than the tag shows where it begins.
Area kept_inside(Area tag, const Area& area) {
    const float least_x = area.x + scaled(4);
    const float least_y = area.y + scaled(4);
    const float most_x = area.x + area.width - tag.width - scaled(4);
    const float most_y = area.y + area.height - tag.height - scaled(4);
    tag.x = std::clamp(tag.x, least_x, std::max(least_x, most_x));
    tag.y = std::clamp(tag.y, least_y, std::max(least_y, most_y));
    return tag;
}

// At the middle of the line, or where no other tag lies.
Area place_tag(const ScreenLine& line,
               ImVec2 size,
               const Area& area,
               const std::vector<Area>& taken,
               float pixel_scale) {
    Area best;
    for (const double t : {0.5, 0.36, 0.64, 0.22, 0.78}) {
        const glm::dvec2 at = line.from + (line.to - line.from) * t;
        const ImVec2 p = on_screen(area, at, pixel_scale);
        const Area tag = kept_inside({p.x - size.x / 2, p.y - size.y / 2, size.x, size.y}, area);
        if (t == 0.5) best = tag;
        const bool is_free = std::none_of(taken.begin(), taken.end(),
                                          [&](const Area& other) { return overlaps(tag, other); });
        if (is_free) return tag;
    }
    return best;
}

// How many steps of the tape the pull is worth, along the line on the screen.
double steps_of(const StripPull& pull,
                glm::dvec2 pixels_per_mm,
                float pixel_scale,
                const engine::TapeStyle& shown) {
    const double speed = glm::length(pixels_per_mm);
    if (speed <= 0.0) return 0.0;
    const glm::dvec2 by{static_cast<double>(pull.by.x * pixel_scale),
                        static_cast<double>(pull.by.y * pixel_scale)};
    const double mm = glm::dot(by, pixels_per_mm / speed) / speed;
    return std::round(mm / hand_step(shown).mm());
}

ImVec2 size_of_tag(const model::Dimension& dimension, const Derived& derived) {
    const auto value = value_of(derived, dimension.name);
    const std::string text = value ? quantity_text(*value, derived.project->shown) : std::string();
    return {size_of_text(dimension.name, Type::small).x + size_of_text(text, Type::strong).x +
                scaled(34),
            scaled(27)};
}

bool is_held(const DimensionHand& hand, const model::Dimension& dimension) {
    return hand.dragged && hand.dragged->strip == view_strip &&
           hand.dragged->dimension == dimension.name;
}

// Without a line of its own it is pulled along the line that was seen last.
std::optional<Change> draw_tag(const Area& at,
                               std::optional<glm::dvec2> pixels_per_mm,
                               const model::Dimension& dimension,
                               const Derived& derived,
                               DimensionHand& hand) {
    auto outcome = draw_tape_strip({.strip = view_strip,
                                    .at = {at.x, at.y},
                                    .size = {at.width, at.height},
                                    .shows_name = true},
                                   dimension, derived, hand);
    if (!outcome.pull.is_held || !hand.dragged) return outcome.change;
    if (pixels_per_mm) hand.dragged->pixels_per_mm = *pixels_per_mm;
    const float pixel_scale = ImGui::GetIO().DisplayFramebufferScale.x;
    return dragged_change(
        hand, derived,
        steps_of(outcome.pull, hand.dragged->pixels_per_mm, pixel_scale, derived.project->shown));
}

// A tag that was pulled until its line is no longer to be seen stays under the pointer, so that the
// hand can bring it back.
std::optional<Change> draw_held_tag(const Area& area, const Derived& derived, DimensionHand& hand) {
    for (const auto& dimension : derived.project->dimensions) {
        if (!is_held(hand, dimension)) continue;
        const ImVec2 size = size_of_tag(dimension, derived);
        const ImVec2 mouse = ImGui::GetIO().MousePos;
        const Area at{mouse.x - size.x / 2, mouse.y - size.y / 2, size.x, size.y};
        return draw_tag(kept_inside(at, area), {}, dimension, derived, hand);
    }
    return std::nullopt;
}

Nm position_of(const model::ResolvedPlane& plane) { return plane.position.value_or(0); }

std::optional<std::size_t> dimension_named(const model::Project& project,
                                           const std::string& formula) {
    for (std::size_t i = 0; i < project.dimensions.size(); ++i) {
        if (project.dimensions[i].name == formula) return i;
    }
    return std::nullopt;
}

bool comes_before(const TaggedDimension& a, const TaggedDimension& b) {
    if (a.frame != b.frame) return a.frame < b.frame;
    if (a.axis != b.axis) return a.axis < b.axis;
    return std::abs(a.to - a.from) < std::abs(b.to - b.from);
}

}  // namespace

std::vector<TaggedDimension> tagged_dimensions(const Derived& derived) {
    const auto& project = *derived.project;
    std::vector<TaggedDimension> tags;
    std::vector<bool> is_taken(project.dimensions.size(), false);
    for (std::size_t f = 0; f < project.frames.size() && f < derived.resolved.frames.size(); ++f) {
        const auto& planes = derived.resolved.frames[f].planes;
        for (std::size_t p = 0; p < project.frames[f].planes.size() && p < planes.size(); ++p) {
            const auto at = dimension_named(project, project.frames[f].planes[p].position);
            if (!at || is_taken[*at] || position_of(planes[p]) == 0) continue;
            is_taken[*at] = true;
            tags.push_back({*at, f, planes[p].axis, 0, position_of(planes[p])});
        }
    }
    std::stable_sort(tags.begin(), tags.end(), comes_before);
    return tags;
}

float room_for_tags(const std::vector<TaggedDimension>& tags) {
    int deepest = 0;
    int depth = 0;
    for (std::size_t i = 0; i < tags.size(); ++i) {
        const bool goes_on =
            i > 0 && tags[i].frame == tags[i - 1].frame && tags[i].axis == tags[i - 1].axis;
        depth = goes_on ? depth + 1 : 1;
        deepest = std::max(deepest, depth);
    }
    if (deepest == 0) return 0.0F;
    constexpr float half_tag = 48.0F;
    return static_cast<float>(first_offset + next_offset * (deepest - 1)) + half_tag;
}

std::optional<Change> draw_dimension_tags(const Area& area,
                                          const Derived& derived,
                                          const ViewState& view,
                                          DimensionHand& hand) {
    const float pixel_scale = ImGui::GetIO().DisplayFramebufferScale.x;
    std::optional<Change> change;
    std::vector<Area> taken;
    std::optional<TaggedDimension> before;
    double offset = 0.0;
    bool is_held_drawn = false;
    const ItemScope items("tags");
    for (const auto& tag : tagged_dimensions(derived)) {
        const bool same = before && before->frame == tag.frame && before->axis == tag.axis;
        offset = same ? offset + next_offset : first_offset;
        before = tag;
        const auto box = box_of(derived, tag.frame);
        if (box.is_empty) continue;
        const double scale = static_cast<double>(scaled(1) * pixel_scale);
        const auto line =
            screen_line(tag, box, derived.resolved.frames[tag.frame], view, offset * scale);
        if (!line) continue;
        const auto& dimension = derived.project->dimensions[tag.dimension];
        const Area at = place_tag(*line, size_of_tag(dimension, derived), area, taken, pixel_scale);
        taken.push_back(at);
        draw_line(area, *line, pixel_scale);
        auto one = draw_tag(at, line->pixels_per_mm, dimension, derived, hand);
        if (one) change = std::move(one);
        if (is_held(hand, dimension)) is_held_drawn = true;
    }
    if (!is_held_drawn) {
        if (auto held = draw_held_tag(area, derived, hand)) change = std::move(held);
    }
    return change;
}

}  // namespace editor
