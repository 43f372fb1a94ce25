#include "editor/dialogs/survey_parts.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/obstacle_words.h"

namespace editor {

std::optional<model::Nm> read_length(const std::string& text, const Derived& derived) {
    if (text.empty()) return std::nullopt;
    const auto value = tried_length(derived, text);
    return value ? std::optional(value->length.nm()) : std::nullopt;
}

void draw_closings(std::span<const model::Closing> closings, const engine::TapeStyle& shown) {
    for (const auto& closing : closings) {
        const auto grade = model::grade_of(closing, shown);
        const bool asks = grade == model::ClosingGrade::measure_again;
        const std::string words = closing.what + ": " + model::closing_words(closing, shown);
        draw_wrapped(words, Type::small, asks ? colour::amber : colour::quiet);
        log_item("closing " + closing.what, words);
    }
}

std::string note_of(std::span<const model::Closing> closings, const engine::TapeStyle& shown) {
    std::string note;
    for (const auto& closing : closings) {
        note += (note.empty() ? "measured: " : "; ") + closing.what + " " +
                model::closing_words(closing, shown);
    }
    return note;
}

void draw_measured(const model::ObstacleShape& shape,
                   const Derived& derived,
                   const model::Catalogue& catalogue,
                   const model::ScanLibrary& scans) {
    const model::Obstacle obstacle{.name = "as measured", .shape = shape};
    const auto facts = facts_of(obstacle, derived, catalogue, scans);
    const auto near = near_words(facts, derived);
    const auto words = size_words(obstacle, derived) + (near.empty() ? "" : "; " + near);
    draw_wrapped(words, Type::strong);
    log_item("comes to", words);
    for (const auto& finding : facts.findings) {
        const bool is_error = finding.severity == model::Severity::error;
        draw_wrapped(finding.what, Type::small, is_error ? colour::red : colour::amber);
        log_item("finding " + finding.code, finding.what);
    }
}

std::string reason_against_survey(const model::Edit& edit,
                                  const std::string& name,
                                  const Derived& derived) {
    if (by_name(derived.project->room, name) != nullptr) {
        return "there is an obstacle \"" + name + "\" already; choose another name";
    }
    const auto next = model::apply(*derived.project, edit);
    return next ? std::string() : engine::to_text(next.error());
}

SurveyAnswer draw_survey_answers(const std::string& trouble, bool can_put) {
    if (!trouble.empty()) {
        draw_wrapped(trouble, Type::text, colour::red);
        log_item("trouble", trouble);
    }
    ImGui::Dummy(scaled(1, 6));
    SurveyAnswer answer;
    answer.puts = draw_button("Put", {.text = "Add", .weight = Weight::main, .enabled = can_put}) ||
                  (can_put && is_pressed(key::enter));
    ImGui::SameLine();
    answer.is_cancelled = draw_button("Cancel") || is_pressed(key::escape);
    return answer;
}

}  // namespace editor
