#include "editor/view/dimension_tags.h"

#include "editor/dimension_values.h"
#include "editor/kit/widgets.h"
#include "editor/places/tape_strip.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

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
    const ImU32 thin = colour::with_alpha(colour::dye, 60);
    on.AddLine(on_screen(area, line.edge_from, pixel_scale), a, thin, scaled(1));
    on.AddLine(on_screen(area, line.edge_to, pixel_scale), z, thin, scaled(1));
    // The ground's colour beneath, so that it reads where it crosses bars, in the dark look too.
    on.AddLine(a, z, colour::with_alpha(colour::paper, 200), scaled(3.6F));
    on.AddLine(a, z, colour::dye, scaled(1.3F));
    // Oblique ticks, as on a drawing: nothing to take hold of.
    const float tick = scaled(5);
    for (const ImVec2 end : {a, z}) {
        on.AddLine({end.x - tick, end.y + tick}, {end.x + tick, end.y - tick},
                   colour::with_alpha(colour::paper, 200), scaled(3.8F));
        on.AddLine({end.x - tick, end.y + tick}, {end.x + tick, end.y - tick}, colour::dye,
                   scaled(1.6F));
    }
}

float shared(float low_a, float high_a, float low_b, float high_b) {
    return std::max(0.0F, std::min(high_a, high_b) - std::max(low_a, low_b));
}

float shared_area(const Area& a, const Area& b) {
    return shared(a.x, a.x + a.width, b.x, b.x + b.width) *
           shared(a.y, a.y + a.height, b.y, b.y + b.height);
}

// How much of the line lies inside, in pixels: clipped as by Liang and Barsky (ACM TOG 3 (1984) 1,
// from memory).
float length_inside(const Area& area, ImVec2 from, ImVec2 to) {
    const ImVec2 by{to.x - from.x, to.y - from.y};
    float enters = 0.0F;
    float leaves = 1.0F;
    const auto clip = [&](float start, float step, float low, float high) {
        if (step == 0.0F) return start > low && start < high;
        const float a = (low - start) / step;
        const float b = (high - start) / step;
        enters = std::max(enters, std::min(a, b));
        leaves = std::min(leaves, std::max(a, b));
        return enters < leaves;
    };
    if (!clip(from.x, by.x, area.x, area.x + area.width)) return 0.0F;
    if (!clip(from.y, by.y, area.y, area.y + area.height)) return 0.0F;
    return (leaves - enters) * std::sqrt(by.x * by.x + by.y * by.y);
}

struct TagRoom {
    const Area& view;
    const std::vector<Area>& taken;
    const std::vector<std::array<ImVec2, 2>>& lines;  // of all tags
    std::size_t own = 0;                              // the tag's own line
};

constexpr float on_another = 10'000.0F;  // more than any line is long

// What lies on one another weighs most, then lines of other tags behind this one.
float crowding(const Area& tag, const TagRoom& room) {
    float crowd = 0.0F;
    for (const auto& other : room.taken) {
        const float shared = shared_area(tag, other);
        if (shared > 0.0F) crowd += on_another + on_another * shared;
    }
    for (std::size_t i = 0; i < room.lines.size(); ++i) {
        if (i != room.own) crowd += length_inside(tag, room.lines[i][0], room.lines[i][1]);
    }
    return crowd;
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

// On its line, as near the middle as there is room; where there is none, above or below the line.
Area place_tag(ImVec2 from, ImVec2 to, ImVec2 size, const TagRoom& room) {
    constexpr int steps = 12;
    constexpr float step = 0.04F;
    Area best;
    float least = std::numeric_limits<float>::max();
    for (const float row : {0.0F, 1.0F, -1.0F, 2.0F, -2.0F}) {
        for (int i = 0; i <= 2 * steps && least > 0.0F; ++i) {
            const float t = 0.5F + static_cast<float>((i + 1) / 2) * (i % 2 == 0 ? step : -step);
            const ImVec2 middle{from.x + (to.x - from.x) * t,
                                from.y + (to.y - from.y) * t + row * (size.y + scaled(3))};
            const Area tag = kept_inside(
                {middle.x - size.x / 2, middle.y - size.y / 2, size.x, size.y}, room.view);
            const float crowd = crowding(tag, room);
            if (crowd >= least) continue;
            least = crowd;
            best = tag;
        }
        if (least < on_another) break;
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

namespace {

struct TagLine {
    TaggedDimension tag;
    ScreenLine line;
};

// Those that can be seen; each further one of a frame and axis lies further out.
std::vector<TagLine> tag_lines(const Derived& derived, const ViewState& view, float pixel_scale) {
    std::vector<TagLine> lines;
    std::optional<TaggedDimension> before;
    double offset = 0.0;
    const double scale = static_cast<double>(scaled(1) * pixel_scale);
    for (const auto& tag : tagged_dimensions(derived)) {
        const bool same = before && before->frame == tag.frame && before->axis == tag.axis;
        offset = same ? offset + next_offset : first_offset;
        before = tag;
        const auto box = box_of(derived, tag.frame);
        if (box.is_empty) continue;
        const auto line =
            screen_line(tag, box, derived.resolved.frames[tag.frame], view, offset * scale);
        if (line) lines.push_back({tag, *line});
    }
    return lines;
}

}  // namespace

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
                                          DimensionHand& hand,
                                          std::vector<Area>* covered) {
    const float pixel_scale = ImGui::GetIO().DisplayFramebufferScale.x;
    const auto lines = tag_lines(derived, view, pixel_scale);
    std::vector<std::array<ImVec2, 2>> drawn;  // all lines first: they lie behind the tags
    for (const auto& it : lines) {
        draw_line(area, it.line, pixel_scale);
        drawn.push_back(
            {on_screen(area, it.line.from, pixel_scale), on_screen(area, it.line.to, pixel_scale)});
    }
    std::optional<Change> change;
    std::vector<Area> taken = covered != nullptr ? *covered : std::vector<Area>{};
    bool is_held_drawn = false;
    const ItemScope items("tags");
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const auto& dimension = derived.project->dimensions[lines[i].tag.dimension];
        const ImVec2 size = size_of_tag(dimension, derived);
        const Area at = place_tag(drawn[i][0], drawn[i][1], size, {area, taken, drawn, i});
        taken.push_back(at);
        auto one = draw_tag(at, lines[i].line.pixels_per_mm, dimension, derived, hand);
        if (one) change = std::move(one);
        if (is_held(hand, dimension)) is_held_drawn = true;
    }
    if (covered != nullptr) *covered = std::move(taken);
    if (!is_held_drawn) {
        if (auto held = draw_held_tag(area, derived, hand)) change = std::move(held);
    }
    return change;
}

}  // namespace editor
