#include "editor/places/fit_band.h"

#include "editor/dimension_values.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <imgui.h>

#include <algorithm>
#include <string>

namespace editor {
namespace {

std::string words(model::Nm length, const engine::TapeStyle& shown) {
    return engine::tape_text(engine::Length::from_nm(length), shown);
}

// From a little below all that is to be seen to a little above it.
struct Scale {
    double from = 0.0;
    double span = 1.0;
    float x = 0.0F;
    float width = 0.0F;

    float place(model::Nm value) const {
        const double part = (static_cast<double>(value) - from) / span;
        return x + width * static_cast<float>(std::clamp(part, 0.0, 1.0));
    }
};

Scale scale_of(const model::Band& band, model::Nm value, float x, float width) {
    model::Nm least = value;
    model::Nm most = value;
    for (const auto& interval : band.intervals) {
        least = std::min(least, interval.from);
        most = std::max(most, interval.above.is_of_search ? value + value / 2 : interval.to);
    }
    const double margin = 0.1 * static_cast<double>(std::max<model::Nm>(most - least, 1));
    return {.from = static_cast<double>(least) - margin,
            .span = static_cast<double>(most - least) + 2.0 * margin,
            .x = x,
            .width = width};
}

bool holds(const model::BandInterval& interval, model::Nm value) {
    return value >= interval.from && value <= interval.to;
}

bool fits(const model::Band& band, model::Nm value) {
    return std::ranges::any_of(band.intervals,
                               [&](const auto& interval) { return holds(interval, value); });
}

void draw_trough(const model::Band& band, model::Nm value) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const Scale scale = scale_of(band, value, at.x, width);
    const float y = at.y + scaled(5);
    const float h = scaled(2.5F);
    on.AddRectFilled({at.x, y - h}, {at.x + width, y + h}, colour::field, h);
    for (const auto& interval : band.intervals) {
        const float right = std::max(scale.place(interval.to), scale.place(interval.from) + h);
        on.AddRectFilled({scale.place(interval.from), y - h}, {right, y + h}, colour::band, h);
    }
    const float x = scale.place(value);
    const float s = scaled(5);
    on.AddTriangleFilled({x, y + scaled(1)}, {x + s, y + s * 2}, {x - s, y + s * 2},
                         fits(band, value) ? colour::ink : colour::amber_edge);
    ImGui::Dummy({width, scaled(14)});
}

// "fits 12 1/32 to 25 1/2, then wheel well left".
std::string band_words(const model::Band& band,
                       const model::BandInterval& interval,
                       const engine::TapeStyle& shown) {
    const auto least = model::least_that_fits(band, shown).value_or(interval.from);
    const auto most = model::largest_that_fits(band, shown).value_or(interval.to);
    if (interval.above.is_of_search) return "fits from " + words(least, shown);
    return "fits " + words(least, shown) + " to " + words(most, shown) + ", then " +
           interval.above.by;
}

std::string stop_sentence(const char* side, const model::BandStop& stop) {
    if (stop.by.empty() || stop.is_of_search) return {};
    std::string text = std::string(side) + ": " + stop.by;
    if (!stop.finding.what.empty()) text += " - " + stop.finding.what;
    return text + "\n";
}

std::string hint_words(const model::Band& band, const model::BandInterval& interval) {
    std::string text =
        stop_sentence("Below", interval.below) + stop_sentence("Above", interval.above);
    if (band.intervals.size() > 1)
        text += "It also fits in " + std::to_string(band.intervals.size() - 1) + " other part" +
                (band.intervals.size() > 2 ? "s" : "") + " of its range.\n";
    for (const auto& finding : band.regardless)
        text += "Left out of account, since no value cures it: " + finding.what + "\n";
    if (!text.empty()) text.pop_back();
    return text;
}

const model::BandInterval& interval_at(const model::Band& band, model::Nm value) {
    const auto away = [&](const model::BandInterval& interval) {
        return std::max({interval.from - value, value - interval.to, model::Nm{0}});
    };
    return *std::ranges::min_element(band.intervals, {}, away);
}

}  // namespace

std::optional<Change> draw_fit_band(const model::Band& band,
                                    engine::Length value,
                                    const engine::TapeStyle& shown) {
    const FontScope small(Type::small);
    if (band.intervals.empty()) {
        draw_wrapped("no value of it fits", Type::small, colour::red);
        log_item("band " + band.dimension, "none");
        return std::nullopt;
    }
    draw_trough(band, value.nm());
    model::Band now = band;
    now.value = value.nm();
    const auto& interval = interval_at(now, now.value);
    const auto largest = model::largest_that_fits(now, shown);
    const bool offers = largest && *largest != now.value && !interval.above.is_of_search;
    const std::string button = offers ? "largest " + words(*largest, shown) : std::string();
    const float room = ImGui::GetContentRegionAvail().x -
                       (offers ? size_of_text(button, Type::small).x + scaled(18) : 0.0F);
    const std::string text = band_words(now, interval, shown);
    draw_text(text_to_fit(text, Type::small, room),
              fits(band, now.value) ? colour::quiet : colour::red);
    log_item("band " + band.dimension, text);
    draw_hint(text + "\n" + hint_words(band, interval));
    if (!offers) return std::nullopt;
    ImGui::SameLine();
    if (!draw_button("Largest " + band.dimension, {.text = button, .weight = Weight::link}))
        return std::nullopt;
    const auto quantity = engine::Quantity{.kind = engine::QuantityKind::length,
                                           .length = engine::Length::from_nm(*largest)};
    auto change = change_of(model::SetFormula{band.dimension, formula_of(quantity, shown)});
    change.label = "Make " + band.dimension + " the largest that fits";
    return change;
}

}  // namespace editor
