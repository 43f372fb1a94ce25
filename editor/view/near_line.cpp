#include "editor/view/near_line.h"

#include "editor/kit/widgets.h"

#include <imgui.h>

#include <cmath>
#include <optional>
#include <string>

namespace editor {
namespace {

struct Ends {
    ImVec2 from;
    ImVec2 to;
};

std::optional<ImVec2> on_screen(const Area& area, const engine::Vector& at, const ViewState& view) {
    const auto pixel = engine::pixel_of(view.camera, {at[0], at[1], at[2]}, view.viewport);
    if (!pixel) return std::nullopt;
    const double scale = static_cast<double>(ImGui::GetIO().DisplayFramebufferScale.x);
    return ImVec2{area.x + static_cast<float>(pixel->x / scale),
                  area.y + static_cast<float>(pixel->y / scale)};
}

// Of what stands in an obstacle: from its deepest place on the way out of it.
std::optional<Ends> ends_of(const Area& area, const model::NearPlace& near, const ViewState& view) {
    engine::Vector end = near.on_obstacle;
    if (near.depth > 0.0) {
        for (std::size_t k = 0; k < 3; ++k)
            end[k] = near.on_thing[k] + near.way_out[k] * near.depth;
    }
    const auto from = on_screen(area, near.on_thing, view);
    const auto to = on_screen(area, end, view);
    if (!from || !to) return std::nullopt;
    return Ends{*from, *to};
}

void draw_line(ImDrawList& on, const Ends& ends) {
    const ImVec2 along{ends.to.x - ends.from.x, ends.to.y - ends.from.y};
    const float length = std::hypot(along.x, along.y);
    const float thick = scaled(2);
    on.AddLine(ends.from, ends.to, colour::dye, thick);
    const ImVec2 across = length > 1.0F
                              ? ImVec2{along.y / length * scaled(6), -along.x / length * scaled(6)}
                              : ImVec2{scaled(6), 0};
    for (const ImVec2& end : {ends.from, ends.to}) {
        on.AddLine({end.x - across.x, end.y - across.y}, {end.x + across.x, end.y + across.y},
                   colour::dye, thick);
    }
}

// Beside the line, so that a short one is not covered by its own value.
void draw_value(ImDrawList& on,
                const Ends& ends,
                const std::string& name,
                const std::string& text) {
    const ImVec2 size = size_of_text(text, Type::strong);
    const ImVec2 middle{(ends.from.x + ends.to.x) / 2, (ends.from.y + ends.to.y) / 2};
    const ImVec2 at{middle.x + scaled(16), middle.y - size.y - scaled(14)};
    const ImVec2 pad{scaled(6), scaled(3)};
    on.AddLine(middle, {at.x, at.y + size.y}, colour::dye, 1.0F);
    on.AddRectFilled({at.x - pad.x, at.y - pad.y}, {at.x + size.x + pad.x, at.y + size.y + pad.y},
                     colour::dye_wash, scaled(3));
    on.AddRect({at.x - pad.x, at.y - pad.y}, {at.x + size.x + pad.x, at.y + size.y + pad.y},
               colour::dye, scaled(3));
    draw_text_at(on, at, text, Type::strong, colour::dye);
    log_rectangle(name, {at.x, at.y, at.x + size.x, at.y + size.y, true, true, text});
}

}  // namespace

void draw_measured_lines(const Area& area,
                         const std::vector<MeasuredLine>& lines,
                         const ViewState& view) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.PushClipRect({area.x, area.y}, {area.x + area.width, area.y + area.height}, true);
    for (const auto& line : lines) {
        const auto from = on_screen(area, line.from, view);
        const auto to = on_screen(area, line.to, view);
        if (!from || !to) continue;
        draw_line(on, {*from, *to});
        if (!line.text.empty()) draw_value(on, {*from, *to}, line.name, line.text);
    }
    on.PopClipRect();
}

void draw_near_lines(const Area& area,
                     const Derived& derived,
                     const RoomFacts& facts,
                     const Selection& selection,
                     const ViewState& view) {
    const auto& room = derived.project->room;
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.PushClipRect({area.x, area.y}, {area.x + area.width, area.y + area.height}, true);
    for (std::size_t i = 0; i < room.size() && i < facts.obstacles.size(); ++i) {
        const auto& it = facts.obstacles[i];
        if (!it.nearest) continue;
        if (!has_subject(selection, model::SubjectKind::obstacle, room[i].name)) continue;
        const auto ends = ends_of(area, *it.nearest, view);
        if (!ends) continue;
        draw_line(on, *ends);
        draw_value(on, *ends, "nearest to " + room[i].name, near_words(it, derived));
    }
    on.PopClipRect();
}

}  // namespace editor
