#include "editor/places/dimension_list.h"

#include "editor/dimension_values.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/fit_band.h"
#include "editor/places/tape_strip.h"

#include <algorithm>

namespace editor {
namespace {

double as_number(const engine::Quantity& quantity) {
    return quantity.kind == engine::QuantityKind::length ? static_cast<double>(quantity.length.nm())
                                                         : quantity.value;
}

constexpr float strip_height = 25.0F;
constexpr float line_height = 17.0F;  // of what stands below a strip
constexpr float row_gap = 4.0F;

std::string limit_text(const Limits& limits, const engine::TapeStyle& shown) {
    std::string text;
    if (limits.least) text = "least " + quantity_text(*limits.least, shown);
    if (limits.most)
        text += (text.empty() ? "" : ", ") + ("most " + quantity_text(*limits.most, shown));
    return text;
}

// How far the value may go: the part of the trough between the limits, with the value's place; and
// the limits beside it.
void draw_band(const Limits& limits,
               const engine::Quantity& value,
               const engine::TapeStyle& shown) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float whole = ImGui::GetContentRegionAvail().x;
    const float width = trough_width(whole);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const double now = as_number(value);
    const double least = limits.least ? as_number(*limits.least) : std::min(0.0, now);
    const double most = limits.most ? as_number(*limits.most) : std::max(least, now) * 1.5;
    const double from = std::min(least, now);
    const double span = std::max(1.0, std::max(most, now) - from) * 1.15;
    const auto place = [&](double v) {
        return at.x + width * static_cast<float>((v - from) / span + 0.065);
    };
    const float y = at.y + scaled(6);
    const float h = scaled(2.5F);
    on.AddRectFilled({at.x, y - h}, {at.x + width, y + h}, colour::field, h);
    const bool inside = now >= least && (!limits.most || now <= most);
    on.AddRectFilled({place(least), y - h}, {limits.most ? place(most) : at.x + width, y + h},
                     inside ? colour::band : colour::amber_edge, h);
    const float x = place(now);
    const float s = scaled(5);
    on.AddTriangleFilled({x, y + scaled(1)}, {x + s, y + s * 2}, {x - s, y + s * 2}, colour::ink);
    const float beside = width + scaled(10);
    draw_text_at(on, {at.x + beside, at.y},
                 text_to_fit(limit_text(limits, shown), Type::small, whole - beside), Type::small,
                 inside ? colour::quiet : colour::amber);
}

// What the row has no room for.
std::string hint_of(const model::Dimension& dimension,
                    const Limits& limits,
                    const engine::TapeStyle& shown) {
    std::string text = dimension.name;
    if (!dimension.note.empty()) text += "\n" + dimension.note;
    text += "\n= " + dimension.formula;
    const auto limit = limit_text(limits, shown);
    if (!limit.empty()) text += "\n" + limit;
    return text + "\nClick to change its name, limits and note";
}

// Its name, and behind it the formula where it has one.
void draw_name(const model::Dimension& dimension,
               const Derived& derived,
               const Limits& limits,
               float width,
               Dialog& dialog) {
    const float room = width - scaled(8);
    const std::string text = text_to_fit(dimension.name, Type::text, room);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::InvisibleButton(("edit " + dimension.name).c_str(), {width, scaled(strip_height)});
    const bool hot = ImGui::IsItemHovered();
    if (ImGui::IsItemClicked()) dialog = dimension_form(dimension);
    log_item("edit " + dimension.name);
    if (hot) draw_hint(hint_of(dimension, limits, derived.project->shown));
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const float used = draw_text_at(on, {at.x, at.y + scaled(3)}, text, Type::text,
                                    hot ? colour::dye : colour::ink) +
                       scaled(7);
    if (is_plain_value(*derived.project, dimension) || room - used < scaled(24)) return;
    draw_text_at(on, {at.x + used, at.y + scaled(5)},
                 text_to_fit("= " + dimension.formula, Type::small, room - used), Type::small,
                 colour::quiet);
}

std::optional<Change> draw_dimension(const model::Dimension& dimension,
                                     const Derived& derived,
                                     DimensionHand& hand,
                                     const Selection& selection,
                                     const BandWorker* bands,
                                     Dialog& dialog) {
    const StyleScope close(ImGuiStyleVar_ItemSpacing, scaled(8, 3));
    const float strip_width = std::min(scaled(138), ImGui::GetContentRegionAvail().x * 0.48F);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const Limits limits = limits_of(derived, dimension);
    draw_name(dimension, derived, limits, width - strip_width, dialog);
    const TapeStrip look{
        .strip = "list",
        .at = {at.x + width - strip_width, at.y},
        .size = {strip_width, scaled(strip_height)},
        .is_marked = has_subject(selection, model::SubjectKind::dimension, dimension.name)};
    auto outcome = draw_tape_strip(look, dimension, derived, hand);
    if (auto pulled = change_by_pull(outcome.pull, derived, hand)) outcome.change = pulled;
    const float below = at.y + scaled(strip_height + 2);
    ImGui::SetCursorScreenPos({at.x, below});
    const auto value = value_of(derived, dimension.name);
    if (bands != nullptr && value && value->kind == engine::QuantityKind::length) {
        auto to_end =
            draw_fit_band(dimension, bands->state(dimension.name), value->length, derived);
        if (to_end) outcome.change = std::move(to_end);
    } else if (value && (limits.least || limits.most)) {
        draw_band(limits, *value, derived.project->shown);
    }
    ImGui::SetCursorScreenPos({at.x, below + scaled(line_height)});
    if (hand.refused && hand.refused->dimension == dimension.name) {
        draw_wrapped(hand.refused->reason, Type::small, colour::red);
        log_item("refused " + dimension.name, hand.refused->reason);
    }
    const ImVec2 end = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({end.x, end.y + scaled(row_gap)});
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

float height_of_dimension() { return scaled(strip_height + 2 + line_height + row_gap); }

std::optional<Change> draw_dimension_list(const Derived& derived,
                                          DimensionHand& hand,
                                          const Selection& selection,
                                          const BandWorker* bands,
                                          UnfoldedMeasures& unfolded,
                                          Dialog& dialog) {
    std::optional<Change> change;
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
