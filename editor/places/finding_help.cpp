#include "editor/places/finding_help.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/mend_doors.h"
#include "engine/measure/tape.h"
#include "model/mend/finding_rules.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <utility>

namespace editor {
namespace {

// As high as it needs in that width.
void draw_paragraph(const std::string& text, Type type, ImU32 ink, float width) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size = size_of_text(text, type, width);
    draw_wrapped_at(*ImGui::GetWindowDrawList(), at, text, type, ink, width);
    ImGui::Dummy({width, size.y});
}

bool is_in_inches(const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    return unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
}

// Of a drill or a fastener, which the tape does not round: "0.257 in".
std::string diameter_words(engine::Length diameter, const engine::TapeStyle& shown) {
    const engine::TapeStyle decimals{
        .form = engine::TapeForm::inch_decimal, .decimals = 4, .with_unit = true};
    const engine::TapeStyle fine{.denominator = 64};
    if (!is_in_inches(shown) || engine::is_on_mark(diameter, fine) ||
        !engine::is_on_mark(diameter, decimals)) {
        return model::length_in_words(diameter, shown);
    }
    return engine::tape_text(diameter, decimals);
}

std::string length_words(engine::Length length, engine::TapeStyle shown) {
    if (engine::is_on_mark(length, shown)) return model::length_in_words(length, shown);
    const auto step = engine::tape_step(shown);
    const bool is_less_than_a_mark = length.nm() > 0 && length.nm() < step.nm();
    if (is_less_than_a_mark) return "less than " + model::length_in_words(step, shown);
    shown.with_unit = true;
    return "about " + engine::tape_text(length, shown);
}

std::string value_words(const model::FindingNumber& number, const engine::TapeStyle& shown) {
    if (const auto* length = std::get_if<engine::Length>(&number.value)) {
        const bool is_diameter = number.name == "hole" || number.name == "diameter";
        return is_diameter ? diameter_words(*length, shown) : length_words(*length, shown);
    }
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%g", std::get<double>(number.value));
    return text.data();
}

// Where on an obstacle it is, and which piece: the sentence says it already.
bool is_told(const model::FindingNumber& number) {
    constexpr std::array<std::string_view, 5> of_places{"x", "y", "z", "end", "piece"};
    return std::find(of_places.begin(), of_places.end(), number.name) == of_places.end();
}

void draw_why(const std::string& name,
              const model::Finding& finding,
              const engine::TapeStyle& shown,
              float width) {
    const auto* rule = model::finding_rule(finding.code);
    if (rule == nullptr) return;
    const std::string why = "Why: " + std::string(rule->rule) + ".";
    draw_paragraph(why, Type::small, colour::ink, width);
    log_item(name + " why", why);
    const std::string source = rule->source == model::of_itself
                                   ? "It " + std::string(rule->source)
                                   : "Source: " + std::string(rule->source);
    draw_paragraph(source, Type::small, colour::quiet, width);
    log_item(name + " source", source);
    const std::string numbers = number_words(finding, shown);
    if (!numbers.empty()) draw_paragraph("Numbers: " + numbers, Type::small, colour::quiet, width);
}

std::string price_words(const Price& price, const Derived& derived) {
    if (!price.refused.empty()) return price.refused;
    std::string words = price.parts;
    const auto add = [&](const std::string& more) {
        if (!more.empty()) words += (words.empty() ? "" : "; ") + more;
    };
    add(price.lengths);
    add(model::weight_change_words(price.weight_kg, derived.project->shown));
    if (words.empty()) words = "the same is cut, drilled and set";
    if (price.mends > 1) add("mends " + std::to_string(price.mends) + " things");
    return words;
}

// Worked out while it is pointed at, and not before.
void draw_price(const std::string& name,
                const Derived& derived,
                const model::Mend& mend,
                FindingHands hands) {
    if (!ImGui::IsItemHovered()) return;
    const Choice choice{.name = name + mend.name + mend.words, .edits = mend.edits};
    const Price* price = price_on(hands.mends.prices, "mends", derived, hands.catalogue, choice);
    if (price == nullptr) hands.mends.has_more = true;
    const std::string words =
        price == nullptr ? "being worked out\xE2\x80\xA6" : price_words(*price, derived);
    draw_hint(mend.words + "\nIt comes to: " + words);
    log_item(name + " price", words);
}

std::optional<Change> draw_mends(const std::string& name,
                                 const Derived& derived,
                                 const CardMends& card,
                                 FindingHands hands,
                                 float width) {
    std::optional<Change> change;
    for (std::size_t i = 0; i < card.kept.size(); ++i) {
        const auto& mend = card.kept[i];
        const std::string item = name + " mend " + std::to_string(i + 1);
        const auto text = text_to_fit(mend.words, Type::text, width - scaled(20));
        if (draw_button(item, {.text = text, .width = width})) change = change_of_mend(mend);
        draw_price(item, derived, mend, hands);
    }
    return change;
}

void draw_doors(const std::string& name,
                const std::vector<MendDoor>& doors,
                FindingHands hands,
                float width) {
    for (std::size_t i = 0; i < doors.size(); ++i) {
        const auto text = text_to_fit(doors[i].words, Type::text, width - scaled(20));
        if (draw_button(name + " door " + std::to_string(i + 1),
                        {.text = text, .weight = Weight::link})) {
            doors[i].open(hands.dialog, hands.place);
        }
        draw_hint("Leads there; nothing is changed yet");
    }
}

std::string state_words(const CardMends& card,
                        const model::Finding& finding,
                        std::size_t count,
                        bool has_doors) {
    if (!card.is_done()) return "Looking for mends\xE2\x80\xA6";
    if (!card.kept.empty()) return {};
    const auto why = model::why_no_way(finding.code);
    if (!why.empty()) return "No mend by button: " + std::string(why) + ".";
    if (card.tried > 0) {
        return "No mend by button: what was tried leaves it as it is, or brings other things to "
               "mend.";
    }
    if (count > model::most_mended_together) {
        return "No mend by button: no way was found that serves all " + std::to_string(count) +
               " of them; at most " + std::to_string(model::most_mended_together) +
               " are tried together.";
    }
    return has_doors ? "No mend by button here: the forms below lead to it."
                     : "No mend by button here.";
}

}  // namespace

std::string number_words(const model::Finding& finding, const engine::TapeStyle& shown) {
    std::string words;
    for (const auto& number : finding.numbers) {
        if (!is_told(number)) continue;
        std::string name = number.name;
        std::replace(name.begin(), name.end(), '_', ' ');
        words += (words.empty() ? "" : ", ") + name + " " + value_words(number, shown);
    }
    return words;
}

Change change_of_mend(const model::Mend& mend) { return {mend.edits, {}, mend.words}; }

std::optional<Change> draw_finding_help(const std::string& name,
                                        const Derived& derived,
                                        std::size_t group,
                                        FindingHands hands,
                                        float width) {
    const auto& findings = derived.finding_groups[group].findings;
    const auto& finding = derived.findings[findings.front()];
    const auto& card = mends_on(hands.mends, group, derived, hands.catalogue, hands.bands);
    auto change = draw_mends(name, derived, card, hands, width);
    const auto doors = doors_of(derived, finding);
    const auto state = state_words(card, finding, findings.size(), !doors.empty());
    if (!state.empty()) {
        draw_paragraph(state, Type::small, colour::quiet, width);
        log_item(name + " state", state);
    }
    draw_doors(name, doors, hands, width);
    draw_why(name, finding, derived.project->shown, width);
    return change;
}

}  // namespace editor
