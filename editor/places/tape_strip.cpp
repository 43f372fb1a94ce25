#include "editor/places/tape_strip.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "engine/measure/tape.h"

#include <cmath>

namespace editor {
namespace {

constexpr float pixels_to_drag = 3.0F;  // less is a click
constexpr double coarse_steps = 8.0;

// How long a mark of the tape is, as a share of the longest: whole inches stand out, then halves,
// quarters, eighths; of millimetres, tens and fives.
float mark_length(std::int64_t number, bool metric) {
    if (metric) return number % 10 == 0 ? 1.0F : number % 5 == 0 ? 0.7F : 0.4F;
    if (number % 8 == 0) return 1.0F;
    if (number % 4 == 0) return 0.75F;
    return number % 2 == 0 ? 0.55F : 0.35F;
}

// The marks slide as the tape is pulled: the value is read at the left edge, as at the mouth of a
// tape's case, and the hook lies out to the right. On a tape of 1/32 in a mark is a pixel wide, as
// in change_by_pull, so there the marks stay under the pointer.
void draw_marks(ImDrawList& on, const TapeStrip& look, engine::Length value, bool metric) {
    const auto mark = metric ? engine::Length::nm_per_mm : engine::Length::nm_per_inch / 8;
    const float spacing = scaled(metric ? 5.0F : 4.0F);
    const double offset = std::fmod(static_cast<double>(value.nm()), static_cast<double>(mark)) /
                          static_cast<double>(mark);
    std::int64_t number = value.nm() / mark;
    const float bottom = look.at.y + look.size.y - 1;
    for (float x = look.at.x + spacing * static_cast<float>(offset);
         x < look.at.x + look.size.x - scaled(2) && number >= 0; x += spacing, --number) {
        if (x < look.at.x + scaled(2)) continue;
        const float length = scaled(7) * mark_length(number, metric);
        on.AddLine({x, bottom - length}, {x, bottom}, colour::tape_mark, 1.0F);
    }
}

void draw_face(const TapeStrip& look,
               const model::Dimension& dimension,
               const Derived& derived,
               bool is_hot) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 end{look.at.x + look.size.x, look.at.y + look.size.y};
    const float rounding = scaled(3);
    on.AddRectFilled(look.at, end, is_hot ? colour::tape_hover : colour::tape, rounding);
    const auto value = value_of(derived, dimension.name);
    const auto& shown = derived.project->shown;
    if (value && value->kind == engine::QuantityKind::length) {
        on.PushClipRect(look.at, end, true);
        draw_marks(on, look, value->length, is_metric(shown));
        on.PopClipRect();
    }
    on.AddRect(look.at, end, look.is_marked ? colour::dye : colour::tape_edge, rounding, 0,
               look.is_marked ? scaled(2) : 1.0F);
    const float y = look.at.y + scaled(3);
    const std::string text = value ? quantity_text(*value, shown) : "no value";
    draw_text_at(on, {end.x - scaled(9), y}, text, Type::strong, colour::tape_ink, Align::right);
    if (look.shows_name) {
        draw_text_at(on, {look.at.x + scaled(9), y + 1}, dimension.name, Type::small,
                     colour::tape_text);
    }
}

// The dimension on the strip that is drawn next of those of one kind; null behind the last.
const model::Dimension* next_drawn(const TypedFormula& typed,
                                   const Derived& derived,
                                   const DimensionHand& hand) {
    bool is_passed = false;
    for (const auto& drawn : hand.drawn_before) {
        if (drawn.strip != typed.strip) continue;
        if (is_passed) return by_name(derived.project->dimensions, drawn.dimension);
        is_passed = drawn.dimension == typed.dimension;
    }
    return nullptr;
}

// Tab takes what was typed and goes on to the next dimension.
std::optional<Change> take_and_go_on(const Derived& derived, DimensionHand& hand) {
    const TypedFormula typed = *hand.typed;
    auto change = take_typed(hand, derived, true);
    const auto* next = next_drawn(typed, derived, hand);
    if (next != nullptr && !hand.refused) begin_typing(hand, *next, typed.strip);
    return change;
}

// The field that takes the strip's place while its formula is typed.
std::optional<Change> draw_typing(const TapeStrip& look,
                                  const Derived& derived,
                                  DimensionHand& hand) {
    ImGui::SetCursorScreenPos(look.at);
    hand.typed->is_drawn = true;
    const std::string dimension = hand.typed->dimension;
    const auto nudged = [&](const std::string& text, int by) {
        return nudged_formula(derived, dimension, text, by);
    };
    const auto field = draw_field(dimension + " formula", hand.typed->text,
                                  {.hint = "formula",
                                   .width = look.size.x,
                                   .wants_focus = hand.typed->wants_focus,
                                   .nudged = nudged});
    hand.typed->wants_focus = false;
    if (field.entered) return take_typed(hand, derived, true);
    if ((field.active || field.left) && is_pressed(key::tab)) return take_and_go_on(derived, hand);
    if (!field.left) return std::nullopt;
    if (is_pressed(key::escape)) {
        hand.typed.reset();
        hand.refused.reset();
        return std::nullopt;
    }
    return take_typed(hand, derived, false);
}

bool is_dragged(const DimensionHand& hand, const model::Dimension& dimension) {
    return hand.dragged && hand.dragged->dimension == dimension.name;
}

StripPull follow_mouse(const model::Dimension& dimension,
                       const Derived& derived,
                       const TapeStrip& look,
                       DimensionHand& hand) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool moved = ImGui::IsMouseDragging(ImGuiMouseButton_Left, scaled(pixels_to_drag));
    if (ImGui::IsItemActive() && moved && !is_dragged(hand, dimension)) {
        begin_drag(hand, derived, dimension, look.strip);
    }
    if (ImGui::IsItemDeactivated()) {
        const bool was_dragged = is_dragged(hand, dimension);
        hand.dragged.reset();
        const bool refused = hand.refused && hand.refused->dimension == dimension.name;
        const bool still = std::abs(io.MousePos.x - io.MouseClickedPos[0].x) < scaled(3) &&
                           std::abs(io.MousePos.y - io.MouseClickedPos[0].y) < scaled(3);
        if (!was_dragged && still && !(refused && moved)) begin_typing(hand, dimension, look.strip);
    }
    if (!is_dragged(hand, dimension) || !ImGui::IsItemActive()) return {};
    return {true,
            {io.MousePos.x - io.MouseClickedPos[0].x, io.MousePos.y - io.MouseClickedPos[0].y},
            io.KeyShift};
}

}  // namespace

StripOutcome draw_tape_strip(const TapeStrip& look,
                             const model::Dimension& dimension,
                             const Derived& derived,
                             DimensionHand& hand) {
    StripOutcome outcome;
    const IdScope id(look.strip.c_str());
    hand.drawn.push_back({look.strip, dimension.name});
    if (hand.typed && hand.typed->dimension == dimension.name && hand.typed->strip == look.strip) {
        outcome.change = draw_typing(look, derived, hand);
        return outcome;
    }
    ImGui::SetCursorScreenPos(look.at);
    ImGui::InvisibleButton(dimension.name.c_str(), look.size);
    const bool is_hot = ImGui::IsItemHovered() || ImGui::IsItemActive();
    if (is_hot) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
    const auto value = value_of(derived, dimension.name);
    log_item(dimension.name, value ? quantity_text(*value, derived.project->shown) : "no value");
    outcome.pull = follow_mouse(dimension, derived, look, hand);
    draw_face(look, dimension, derived, is_hot);
    return outcome;
}

std::optional<Change> change_by_pull(const StripPull& pull,
                                     const Derived& derived,
                                     const DimensionHand& hand) {
    if (!pull.is_held) return std::nullopt;
    const double pixels = static_cast<double>(pull.by.x / scaled(1));
    return dragged_change(hand, derived, std::round(pixels) * (pull.is_coarse ? coarse_steps : 1));
}

}  // namespace editor
