#include "editor/view/tape_hand.h"

#include "editor/kit/widgets.h"
#include "editor/view/on_screen.h"
#include "editor/view/tape_ends.h"

#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>

namespace editor {
namespace {

constexpr double mm = 1.0e-6;

std::optional<ImVec2> shown_at(const TapeView& in, const glm::dvec3& nm) {
    return on_screen(in.area, in.view, nm * mm);
}

// Lines that show on metal, paper and the dark look alike.
void draw_on_halo(ImDrawList& on, ImVec2 a, ImVec2 b, ImU32 packed, float thick) {
    on.AddLine(a, b, colour::with_alpha(colour::paper, 210), thick + scaled(3));
    on.AddLine(a, b, packed, thick);
}

void draw_end(ImDrawList& on, const TapeEnd& end, const TapeView& in) {
    const auto at = shown_at(in, end.at);
    if (!at) return;
    const float r = scaled(5);
    if (end.on == TapeOn::edge) {
        const auto from = shown_at(in, end.from);
        const auto to = shown_at(in, end.to);
        if (from && to) draw_on_halo(on, *from, *to, colour::dye, scaled(2.5F));
    }
    if (end.on == TapeOn::hole) {
        on.AddCircle(*at, r + scaled(1), colour::paper, 0, scaled(4));
        on.AddCircle(*at, r + scaled(1), colour::dye, 0, scaled(2));
    } else if (end.on == TapeOn::face) {
        draw_on_halo(on, {at->x - r, at->y}, {at->x + r, at->y}, colour::dye, scaled(1.6F));
        draw_on_halo(on, {at->x, at->y - r}, {at->x, at->y + r}, colour::dye, scaled(1.6F));
    } else {
        on.AddRectFilled({at->x - r, at->y - r}, {at->x + r, at->y + r}, colour::paper);
        on.AddRect({at->x - r, at->y - r}, {at->x + r, at->y + r}, colour::dye, 0, 0, scaled(2));
    }
}

// "across 3 1/2 · up 18", of what is not nothing; empty where that is the length itself.
std::string part_words(const TapeReading& reading, const engine::TapeStyle& shown) {
    constexpr std::array<std::string_view, 3> ways{"across", "along", "up"};
    std::string words;
    int count = 0;
    for (int k = 0; k < 3; ++k) {
        if (reading.parts[k] < 0.5) continue;
        ++count;
        words += words.empty() ? "" : " \xC2\xB7 ";
        words += std::string(ways[static_cast<std::size_t>(k)]) + " " +
                 tape_words(reading.parts[k], shown);
    }
    if (count != 1) return words;
    return words.substr(0, words.find(' '));  // the way alone
}

void draw_ticked_line(ImDrawList& on, ImVec2 a, ImVec2 b) {
    const float length = std::hypot(b.x - a.x, b.y - a.y);
    draw_on_halo(on, a, b, colour::dye, scaled(2));
    const ImVec2 across =
        length > 1.0F ? ImVec2{(b.y - a.y) / length * scaled(7), (a.x - b.x) / length * scaled(7)}
                      : ImVec2{scaled(7), 0};
    for (const ImVec2& end : {a, b}) {
        draw_on_halo(on, {end.x - across.x, end.y - across.y}, {end.x + across.x, end.y + across.y},
                     colour::dye, scaled(2));
    }
}

// The view keeps all of it, beside the line.
Area label_place(const Area& view, ImVec2 a, ImVec2 b, ImVec2 size) {
    const ImVec2 middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    const bool is_upright = std::abs(b.y - a.y) > std::abs(b.x - a.x);
    Area at{middle.x + scaled(14), middle.y - size.y / 2, size.x, size.y};
    if (!is_upright) at = {middle.x - size.x / 2, middle.y - size.y - scaled(12), size.x, size.y};
    at.x = std::clamp(at.x, view.x + scaled(4),
                      std::max(view.x + scaled(4), view.x + view.width - size.x - scaled(4)));
    at.y = std::clamp(at.y, view.y + scaled(4),
                      std::max(view.y + scaled(4), view.y + view.height - size.y - scaled(4)));
    return at;
}

Area draw_label(
    ImDrawList& on, const TapeReading& reading, const TapeView& in, ImVec2 a, ImVec2 b) {
    const auto& shown = in.derived.project->shown;
    const std::string value = tape_words(reading.length, shown);
    const std::string parts = part_words(reading, shown);
    const ImVec2 large = size_of_text(value, Type::strong);
    const ImVec2 small = size_of_text(parts, Type::small);
    const float pad = scaled(8);
    const Area at = label_place(in.area, a, b,
                                {std::max(large.x, small.x) + 2 * pad,
                                 large.y + (parts.empty() ? 0 : small.y + scaled(1)) + pad});
    const ImVec2 end{at.x + at.width, at.y + at.height};
    on.AddRectFilled({at.x, at.y}, end, colour::tape, scaled(3));
    on.AddRect({at.x, at.y}, end, colour::tape_edge, scaled(3));
    const float middle = at.x + at.width / 2;
    draw_text_at(on, {middle, at.y + pad / 2}, value, Type::strong, colour::tape_ink,
                 Align::middle);
    draw_text_at(on, {middle, at.y + pad / 2 + large.y + scaled(1)}, parts, Type::small,
                 colour::tape_text, Align::middle);
    log_rectangle("measure", {at.x, at.y, end.x, end.y, true, true,
                              value + (parts.empty() ? "" : "; " + parts)});
    return at;
}

Area draw_taken(ImDrawList& on, const TapeTaken& taken, const TapeView& in) {
    const auto reading = tape_reading(taken);
    const auto a = shown_at(in, reading.from);
    const auto b = shown_at(in, reading.to);
    if (!a || !b) return {};
    draw_ticked_line(on, *a, *b);
    return draw_label(on, reading, in, *a, *b);
}

void draw_words(ImDrawList& on, const TapeHand& hand, const Area& area) {
    std::string words = hand.first ? "2 of 2: and to what? From the " + words_of(*hand.first)
                                   : "1 of 2: point at a corner, a hole, an edge or a face";
    words += " \xC2\xB7 Esc to leave it";
    const float room = area.width - scaled(44);
    const ImVec2 size = size_of_text(words, Type::strong, room);
    // Above the line of help.
    const ImVec2 at{area.x + (area.width - size.x) / 2, area.y + area.height - size.y - scaled(58)};
    on.AddRectFilled({at.x - scaled(10), at.y - scaled(6)},
                     {at.x + size.x + scaled(10), at.y + size.y + scaled(6)}, colour::dye_wash,
                     scaled(3));
    draw_wrapped_at(on, at, words, Type::strong, colour::dye, room);
    log_rectangle("taking a measure",
                  {at.x, at.y, at.x + size.x, at.y + size.y, true, true, words});
}

void draw_pointed_at(const TapeEnd& end) {
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(10, 6));
    const TooltipScope tooltip;
    draw_text(words_of(end));
    log_item("pointed at", words_of(end));
}

}  // namespace

void point_tape(TapeHand& hand, const TapeView& in, glm::dvec2 pixel, float pixel_scale) {
    const double reach = static_cast<double>(scaled(9) * pixel_scale);
    hand.under =
        tape_end_at({in.derived, in.scene, in.view.camera, in.view.viewport, reach}, pixel);
}

void take_end(TapeHand& hand) {
    if (!hand.under) return;
    if (!hand.first) {
        hand.first = hand.under;
        hand.taken.reset();
        return;
    }
    hand.taken = TapeTaken{*hand.first, *hand.under};
    hand.first.reset();
}

Area draw_tape_hand(const TapeHand& hand, const TapeView& in) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    Area label;
    if (hand.taken) label = draw_taken(on, *hand.taken, in);
    if (!hand.is_held) return label;
    if (hand.first) draw_end(on, *hand.first, in);
    if (hand.under) {
        // What it would be, before the click.
        if (hand.first) label = draw_taken(on, {*hand.first, *hand.under}, in);
        draw_end(on, *hand.under, in);
        draw_pointed_at(*hand.under);
    }
    draw_words(on, hand, in.area);
    return label;
}

}  // namespace editor
