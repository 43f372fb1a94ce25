#include "editor/view/tape_hand.h"

#include "editor/keys.h"
#include "editor/kit/hover_help.h"
#include "editor/kit/widgets.h"
#include "editor/view/on_screen.h"
#include "editor/view/tape_ends.h"
#include "editor/view/tape_typing.h"

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

struct TapeLabel {
    std::string value;
    std::string parts;
    Area at;

    std::string words() const { return value + (parts.empty() ? "" : "; " + parts); }
};

TapeLabel label_of(const TapeReading& reading, const TapeView& in, ImVec2 a, ImVec2 b) {
    const auto& shown = in.derived.project->shown;
    TapeLabel label{tape_words(reading.length, shown), part_words(reading, shown), {}};
    const ImVec2 large = size_of_text(label.value, Type::strong);
    const ImVec2 small = size_of_text(label.parts, Type::small);
    const float pad = scaled(8);
    label.at = label_place(in.area, a, b,
                           {std::max(large.x, small.x) + 2 * pad,
                            large.y + (label.parts.empty() ? 0 : small.y + scaled(1)) + pad});
    return label;
}

void draw_label(ImDrawList& on, const TapeLabel& label, bool is_hot) {
    const auto& at = label.at;
    const ImVec2 end{at.x + at.width, at.y + at.height};
    on.AddRectFilled({at.x, at.y}, end, is_hot ? colour::tape_hover : colour::tape, scaled(3));
    on.AddRect({at.x, at.y}, end, colour::tape_edge, scaled(3));
    const float middle = at.x + at.width / 2;
    const float top = at.y + scaled(4);
    draw_text_at(on, {middle, top}, label.value, Type::strong, colour::tape_ink, Align::middle);
    const float height = size_of_text(label.value, Type::strong).y;
    draw_text_at(on, {middle, top + height + scaled(1)}, label.parts, Type::small,
                 colour::tape_text, Align::middle);
}

Area draw_measure(ImDrawList& on, const TapeTaken& taken, const TapeView& in) {
    const auto reading = tape_reading(taken);
    const auto a = shown_at(in, reading.from);
    const auto b = shown_at(in, reading.to);
    if (!a || !b) return {};
    draw_ticked_line(on, *a, *b);
    const auto label = label_of(reading, in, *a, *b);
    const auto& at = label.at;
    draw_label(on, label, false);
    log_rectangle("measure",
                  {at.x, at.y, at.x + at.width, at.y + at.height, true, true, label.words()});
    return at;
}

// Why it is not to be: below the label, or above it where the view ends.
void draw_refusal(const TapeView& in, const Area& label, const std::string& reason) {
    const float room = std::min(scaled(260), in.area.width - scaled(24));
    const ImVec2 size = size_of_text(reason, Type::small, room);
    const float most = in.area.x + in.area.width - size.x - scaled(10);
    ImVec2 at{std::max(in.area.x + scaled(10), std::min(label.x + scaled(5), most)),
              label.y + label.height + scaled(8)};
    if (at.y + size.y > in.area.y + in.area.height - scaled(8)) at.y = label.y - size.y - scaled(8);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.AddRectFilled({at.x - scaled(5), at.y - scaled(3)},
                     {at.x + size.x + scaled(5), at.y + size.y + scaled(3)}, colour::red_ground,
                     scaled(3));
    draw_wrapped_at(on, at, reason, Type::small, colour::red, room);
    log_rectangle("measure remark", {at.x, at.y, at.x + size.x, at.y + size.y, true, true, reason});
}

void draw_what_moves(const TapeHand& hand, const TapeView& in) {
    if (is_typing()) return;
    const auto hold = tape_hold(in.derived, *hand.taken);
    const std::string words =
        hold.grip ? "click to type it: " + hold.grip->plane + " moves" : hold.reason;
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(10, 6));
    const TooltipScope tooltip;
    ImGui::PushTextWrapPos(scaled(360));
    draw_text(words);
    ImGui::PopTextWrapPos();
    log_item("what moves", words);
}

void draw_typed_length(TapeHand& hand,
                       const TapeView& in,
                       const Area& at,
                       std::optional<Change>& change) {
    hand.typed->is_drawn = true;
    ImGui::SetCursorScreenPos({at.x, at.y});
    const auto field =
        draw_field("measure typed", hand.typed->text,
                   {.hint = "length", .width = at.width, .wants_focus = hand.typed->wants_focus});
    hand.typed->wants_focus = false;
    if (!field.entered && !field.left) return;
    if (!field.entered && is_pressed(key::escape)) {
        hand.typed.reset();
        hand.refused.reset();
        return;
    }
    keep_first(change, take_typed_length(hand, in.derived, *in.catalogue, field.entered));
}

// A click types.
void draw_label_to_press(TapeHand& hand, const TapeView& in, const TapeLabel& label) {
    ImGui::SetCursorScreenPos({label.at.x, label.at.y});
    const bool is_clicked = ImGui::InvisibleButton("measure", {label.at.width, label.at.height});
    const bool is_hot = ImGui::IsItemHovered() || ImGui::IsItemActive();
    log_item("measure", label.words());
    draw_label(*ImGui::GetWindowDrawList(), label, is_hot);
    if (is_clicked) begin_typing_length(hand, in.derived);
    if (hand.refused) {
        draw_refusal(in, label.at, hand.refused->reason);
    } else if (is_hot && !hand.typed) {
        draw_what_moves(hand, in);
    }
}

Area draw_last_measure(ImDrawList& on,
                       TapeHand& hand,
                       const TapeView& in,
                       std::optional<Change>& change) {
    if (in.catalogue == nullptr) return draw_measure(on, *hand.taken, in);
    const auto reading = tape_reading(*hand.taken);
    const auto a = shown_at(in, reading.from);
    const auto b = shown_at(in, reading.to);
    if (!a || !b) return {};
    draw_ticked_line(on, *a, *b);
    auto label = label_of(reading, in, *a, *b);
    if (!hand.typed) {
        draw_label_to_press(hand, in, label);
        return label.at;
    }
    label.at.width = std::max(label.at.width, scaled(120));
    const float most = in.area.x + in.area.width - label.at.width - scaled(4);
    label.at.x = std::max(in.area.x, std::min(label.at.x, most));
    draw_typed_length(hand, in, label.at, change);
    if (hand.refused) draw_refusal(in, label.at, hand.refused->reason);
    return label.at;
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
    if (is_typing()) return;
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
    hand.typed.reset();
    hand.refused.reset();
    if (!hand.first) {
        hand.first = hand.under;
        hand.taken.reset();
        return;
    }
    hand.taken = TapeTaken{*hand.first, *hand.under};
    hand.first.reset();
}

Area draw_tape_hand(TapeHand& hand, const TapeView& in, std::optional<Change>& change) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    Area label;
    if (hand.taken) label = draw_last_measure(on, hand, in, change);
    if (!hand.is_held) return label;
    if (hand.first) draw_end(on, *hand.first, in);
    if (hand.under) {
        // What it would be, before the click.
        if (hand.first) label = draw_measure(on, {*hand.first, *hand.under}, in);
        draw_end(on, *hand.under, in);
        draw_pointed_at(*hand.under);
    }
    draw_words(on, hand, in.area);
    return label;
}

}  // namespace editor
