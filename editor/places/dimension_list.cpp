#include "editor/places/dimension_list.h"

#include "editor/dimension_values.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/fit_band.h"
#include "editor/places/tape_choice.h"
#include "editor/places/tape_strip.h"

#include <algorithm>

namespace editor {
namespace {

double as_number(const engine::Quantity& quantity) {
    return quantity.kind == engine::QuantityKind::length ? static_cast<double>(quantity.length.nm())
                                                         : quantity.value;
}

// How far the value may go: the part of the trough between the limits, with the value's place.
void draw_band(const Limits& limits, const engine::Quantity& value) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const double now = as_number(value);
    const double least = limits.least ? as_number(*limits.least) : std::min(0.0, now);
    const double most = limits.most ? as_number(*limits.most) : std::max(least, now) * 1.5;
    const double from = std::min(least, now);
    const double span = std::max(1.0, std::max(most, now) - from) * 1.15;
    const auto place = [&](double v) {
        return at.x + width * static_cast<float>((v - from) / span + 0.065);
    };
    const float y = at.y + scaled(5);
    const float h = scaled(2.5F);
    on.AddRectFilled({at.x, y - h}, {at.x + width, y + h}, colour::field, h);
    const bool inside = now >= least && (!limits.most || now <= most);
    on.AddRectFilled({place(least), y - h}, {limits.most ? place(most) : at.x + width, y + h},
                     inside ? colour::band : colour::amber_edge, h);
    const float x = place(now);
    const float s = scaled(5);
    on.AddTriangleFilled({x, y + scaled(1)}, {x + s, y + s * 2}, {x - s, y + s * 2}, colour::ink);
    ImGui::Dummy({width, scaled(14)});
}

std::string limit_text(const Limits& limits, const engine::TapeStyle& shown) {
    std::string text;
    if (limits.least) text = "least " + quantity_text(*limits.least, shown);
    if (limits.most)
        text += (text.empty() ? "" : ", ") + ("most " + quantity_text(*limits.most, shown));
    return text;
}

// Its formula where it has one, else its note.
void draw_underline(const model::Dimension& dimension,
                    const Derived& derived,
                    const Limits& limits) {
    const bool plain = is_plain_value(*derived.project, dimension);
    const std::string left = plain ? dimension.note : "= " + dimension.formula;
    const std::string right = limit_text(limits, derived.project->shown);
    if (left.empty() && right.empty()) {
        ImGui::Dummy(scaled(1, 4));
        return;
    }
    const FontScope small(Type::small);
    const float room = ImGui::GetContentRegionAvail().x;
    const float right_width =
        right.empty() ? 0.0F : size_of_text(right, Type::small).x + scaled(10);
    draw_text(text_to_fit(left.empty() ? " " : left, Type::small, room - right_width),
              colour::quiet);
    if (!left.empty()) draw_hint(left);
    if (right.empty()) return;
    ImGui::SameLine();
    draw_text_right(right, colour::quiet);
}

void draw_name(const model::Dimension& dimension, float width, Dialog& dialog) {
    const std::string text = text_to_fit(dimension.name, Type::text, width - scaled(8));
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::InvisibleButton(("edit " + dimension.name).c_str(), {width, scaled(26)});
    const bool hot = ImGui::IsItemHovered();
    if (ImGui::IsItemClicked()) dialog = dimension_form(dimension);
    log_item("edit " + dimension.name);
    draw_hint("Change its name, limits and note");
    draw_text_at(*ImGui::GetWindowDrawList(), {at.x, at.y + scaled(4)}, text, Type::text,
                 hot ? colour::dye : colour::ink);
}

std::optional<Change> draw_dimension(const model::Dimension& dimension,
                                     const Derived& derived,
                                     DimensionHand& hand,
                                     const Selection& selection,
                                     const BandWorker* bands,
                                     Dialog& dialog) {
    const StyleScope close(ImGuiStyleVar_ItemSpacing, scaled(8, 3));
    const float strip_width = std::min(scaled(150), ImGui::GetContentRegionAvail().x * 0.52F);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    draw_name(dimension, width - strip_width, dialog);
    const TapeStrip look{
        .strip = "list",
        .at = {at.x + width - strip_width, at.y},
        .size = {strip_width, scaled(27)},
        .is_marked = has_subject(selection, model::SubjectKind::dimension, dimension.name)};
    auto outcome = draw_tape_strip(look, dimension, derived, hand);
    if (auto pulled = change_by_pull(outcome.pull, derived, hand)) outcome.change = pulled;
    ImGui::SetCursorScreenPos({at.x, at.y + scaled(32)});
    const Limits limits = limits_of(derived, dimension);
    const auto value = value_of(derived, dimension.name);
    if (bands != nullptr && value && value->kind == engine::QuantityKind::length) {
        auto to_end =
            draw_fit_band(dimension, bands->state(dimension.name), value->length, derived);
        if (to_end) outcome.change = std::move(to_end);
    } else if (value && (limits.least || limits.most)) {
        draw_band(limits, *value);
    }
    draw_underline(dimension, derived, limits);
    if (hand.refused && hand.refused->dimension == dimension.name) {
        draw_wrapped(hand.refused->reason, Type::small, colour::red);
        log_item("refused " + dimension.name, hand.refused->reason);
    }
    ImGui::Dummy(scaled(1, 4));
    return outcome.change;
}

bool is_in_hand(const DimensionHand& hand, const std::string& dimension) {
    const auto is_it = [&](const auto& held) { return held && held->dimension == dimension; };
    return is_it(hand.typed) || is_it(hand.dragged) || is_it(hand.refused);
}

// Clicking its line unfolds the measures of an obstacle, and folds them again; where one of them is
// chosen or in the hand they show anyway. Gives whether they do.
bool draw_measures_line(const std::string& obstacle,
                        std::size_t count,
                        bool must_show,
                        UnfoldedMeasures& unfolded) {
    const bool is_open = must_show || unfolded.count(obstacle) > 0;
    const std::string name = "measures of " + obstacle;
    const std::string text = (is_open ? "\xE2\x88\x92 " : "+ ") + std::to_string(count) +
                             (count == 1 ? " measure of " : " measures of ") + obstacle;
    const float room = ImGui::GetContentRegionAvail().x;
    const std::string fitting = text_to_fit(text, Type::text, room);
    const ButtonLook look{.text = fitting, .weight = Weight::link, .enabled = !must_show};
    if (draw_button(name, look) && unfolded.erase(obstacle) == 0) unfolded.insert(obstacle);
    draw_hint(is_open ? "Show them as one line" : "Show them one by one");
    return is_open;
}

// The places of the dimensions that are measures of the obstacle.
std::vector<std::size_t> measures_of(const Derived& derived, const std::string& obstacle) {
    std::vector<std::size_t> measures;
    for (std::size_t i = 0; i < derived.measures_of.size(); ++i) {
        if (derived.measures_of[i] == obstacle) measures.push_back(i);
    }
    return measures;
}

}  // namespace

std::optional<Change> draw_dimension_list(const Derived& derived,
                                          DimensionHand& hand,
                                          const Selection& selection,
                                          const BandWorker* bands,
                                          UnfoldedMeasures& unfolded,
                                          Dialog& dialog) {
    draw_text("Dimensions", Type::strong);
    ImGui::SameLine();
    std::optional<Change> change = draw_tape_choice(derived.project->shown);
    const auto& dimensions = derived.project->dimensions;
    const auto draw_one = [&](std::size_t i) {
        auto one = draw_dimension(dimensions[i], derived, hand, selection, bands, dialog);
        if (one) change = std::move(one);
    };
    for (std::size_t i = 0; i < dimensions.size(); ++i) {
        if (derived.measures_of[i].empty()) draw_one(i);
    }
    for (const auto& obstacle : derived.project->room) {
        const auto measures = measures_of(derived, obstacle.name);
        if (measures.empty()) continue;
        const bool must_show = std::ranges::any_of(measures, [&](std::size_t i) {
            const auto& name = dimensions[i].name;
            return is_in_hand(hand, name) ||
                   has_subject(selection, model::SubjectKind::dimension, name);
        });
        if (!draw_measures_line(obstacle.name, measures.size(), must_show, unfolded)) continue;
        for (const auto i : measures) draw_one(i);
    }
    if (draw_button("New dimension", {.text = "+ dimension", .weight = Weight::link})) {
        dialog = DimensionForm{};
    }
    return change;
}

}  // namespace editor
