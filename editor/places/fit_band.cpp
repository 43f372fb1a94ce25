#include "editor/places/fit_band.h"

#include "editor/dimension_values.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <imgui.h>

#include <algorithm>
#include <string>

namespace editor {
namespace {

constexpr float band_height = 16.0F;

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

// Pale where it is that of a state before, or says less than it seems to.
void draw_trough(const model::Band& band, model::Nm value, bool is_pale) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = trough_width(ImGui::GetContentRegionAvail().x);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const Scale scale = scale_of(band, value, at.x, width);
    const float y = at.y + scaled(6);
    const float h = scaled(2.5F);
    on.AddRectFilled({at.x, y - h}, {at.x + width, y + h}, colour::field, h);
    for (const auto& interval : band.intervals) {
        const float right = std::max(scale.place(interval.to), scale.place(interval.from) + h);
        on.AddRectFilled({scale.place(interval.from), y - h}, {right, y + h},
                         is_pale ? colour::edge : colour::band, h);
    }
    const float x = scale.place(value);
    const float s = scaled(5);
    on.AddTriangleFilled({x, y + scaled(1)}, {x + s, y + s * 2}, {x - s, y + s * 2},
                         is_pale             ? colour::quiet
                         : fits(band, value) ? colour::ink
                                             : colour::amber_edge);
    ImGui::Dummy({width, scaled(band_height)});
    ImGui::SameLine(0, scaled(10));
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
    if (!band.is_proved)
        text += "There was too much to look at: something small may be missed in between\n";
    if (!text.empty()) text.pop_back();
    return text;
}

const model::BandInterval& interval_at(const model::Band& band, model::Nm value) {
    const auto away = [&](const model::BandInterval& interval) {
        return std::max({interval.from - value, value - interval.to, model::Nm{0}});
    };
    return *std::ranges::min_element(band.intervals, {}, away);
}

// Why nothing can be said of what fits; none where it can.
struct Against {
    std::string words;
    ImU32 ink = colour::amber;
    std::string shortly{};  // where there is little room; empty: as `words`
};

bool is_about_room(const model::Finding& finding) {
    return std::ranges::any_of(finding.concerns, [](const model::Subject& subject) {
        return subject.kind == model::SubjectKind::obstacle;
    });
}

// Nothing keeps clear of a scan that is not read; an error of the room that no value cures is there
// at each of them.
std::optional<Against> against(const BandState& state, const Derived& derived) {
    for (const auto& finding : derived.findings) {
        if (finding.code == "scan_not_read") return Against{finding.what};
    }
    if (!state.trouble.empty()) return Against{"not worked out: " + state.trouble};
    if (!state.band) return std::nullopt;
    for (const auto& finding : state.band->regardless) {
        if (finding.severity == model::Severity::error && is_about_room(finding)) {
            return Against{"whatever it is: " + model::where_text(finding) + ": " + finding.what,
                           colour::red,
                           "whatever it is, in the way: " + finding.concerns.front().name};
        }
    }
    return std::nullopt;
}

void draw_words(const std::string& text, ImU32 ink) {
    draw_text(text_to_fit(text, Type::small, ImGui::GetContentRegionAvail().x), ink);
}

// Where nothing is known to draw.
void draw_no_trough() {
    ImGui::Dummy({trough_width(ImGui::GetContentRegionAvail().x), scaled(band_height)});
    ImGui::SameLine(0, scaled(10));
}

std::string words_of(const model::Band& band, model::Nm value, const engine::TapeStyle& shown) {
    if (band.intervals.empty()) return "no value of it fits";
    model::Band now = band;
    now.value = value;
    return band_words(now, interval_at(now, value), shown);
}

std::optional<Change> draw_largest(const model::Band& band,
                                   model::Nm largest,
                                   const engine::TapeStyle& shown) {
    const StyleScope close(ImGuiStyleVar_FramePadding, scaled(3, 0));
    const std::string text = "largest " + words(largest, shown);
    const bool is_wanted =
        draw_button("Largest " + band.dimension, {.text = text, .weight = Weight::link});
    ImGui::SameLine(0, scaled(4));
    if (!is_wanted) return std::nullopt;
    const auto quantity = engine::Quantity{.kind = engine::QuantityKind::length,
                                           .length = engine::Length::from_nm(largest)};
    auto change = change_of(model::SetFormula{band.dimension, formula_of(quantity, shown)});
    change.label = "Make " + band.dimension + " the largest that fits";
    return change;
}

std::optional<Change> draw_settled(const model::Band& band,
                                   engine::Length value,
                                   const engine::TapeStyle& shown) {
    draw_trough(band, value.nm(), false);
    if (band.intervals.empty()) {
        draw_words(words_of(band, value.nm(), shown), colour::red);
        log_item("band " + band.dimension, "none");
        return std::nullopt;
    }
    model::Band now = band;
    now.value = value.nm();
    const auto& interval = interval_at(now, now.value);
    const auto largest = model::largest_that_fits(now, shown);
    const bool offers = largest && *largest != now.value && !interval.above.is_of_search;
    auto change = offers ? draw_largest(band, *largest, shown) : std::nullopt;
    const std::string text = band_words(now, interval, shown);
    const bool is_right = fits(band, now.value);
    // The button says how far already.
    const bool says_stop_only = offers && is_right;
    draw_words(says_stop_only ? "then " + interval.above.by : text,
               is_right ? colour::quiet : colour::red);
    log_item("band " + band.dimension, text);
    draw_hint(text + "\n" + hint_words(band, interval));
    return change;
}

// That of a state before, pale, until the new one is there.
void draw_awaited(const std::string& dimension,
                  const BandState& state,
                  engine::Length value,
                  const engine::TapeStyle& shown) {
    if (state.band) {
        draw_trough(*state.band, value.nm(), true);
    } else {
        draw_no_trough();
    }
    const std::string words = state.band ? words_of(*state.band, value.nm(), shown)
                                         : std::string("working out\xE2\x80\xA6");
    draw_words(words, colour::edge);
    log_item("awaited band " + dimension, words);
}

void draw_against(const std::string& dimension,
                  const BandState& state,
                  const Against& it,
                  engine::Length value) {
    if (state.band) {
        draw_trough(*state.band, value.nm(), true);
    } else {
        draw_no_trough();
    }
    draw_words(it.shortly.empty() ? it.words : it.shortly, it.ink);
    log_item("band " + dimension, it.words);
    draw_hint(it.words);
}

}  // namespace

float trough_width(float width) { return std::clamp(0.3F * width, scaled(60), scaled(130)); }

std::optional<Change> draw_fit_band(const model::Dimension& dimension,
                                    const BandState& state,
                                    engine::Length value,
                                    const Derived& derived) {
    const FontScope small(Type::small);
    std::optional<Change> change;
    if (const auto reason = against(state, derived)) {
        draw_against(dimension.name, state, *reason, value);
    } else if (!state.is_settled) {
        draw_awaited(dimension.name, state, value, derived.project->shown);
    } else if (state.band) {
        change = draw_settled(*state.band, value, derived.project->shown);
    }
    return change;
}

}  // namespace editor
