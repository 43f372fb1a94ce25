#include "editor/dialogs/survey_parts.h"

#include "editor/dimension_values.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/obstacle_words.h"
#include "editor/room_facts.h"

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

void draw_measured(std::optional<TriedObstacle>& trial,
                   const model::ObstacleShape& shape,
                   const Derived& derived,
                   const model::Catalogue& catalogue) {
    const model::Obstacle obstacle{.name = "as measured", .shape = shape};
    const auto& facts = facts_of(trial, obstacle, derived, catalogue);
    const auto near = near_words(facts, derived);
    const auto words = size_words(obstacle, derived) + (near.empty() ? "" : "; " + near);
    draw_wrapped(words, Type::strong);
    log_item("comes to", words);
    for (const auto& finding : facts.findings) draw_form_finding(finding);
}

void draw_beside_picture(float picture_width,
                         const std::function<void()>& draw_picture,
                         const std::function<void()>& draw_fields) {
    const TableScope table("readings", 2);
    if (!table) return;
    ImGui::TableSetupColumn("where", ImGuiTableColumnFlags_WidthFixed, scaled(picture_width));
    ImGui::TableSetupColumn("readings", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    draw_picture();
    ImGui::TableNextColumn();
    draw_fields();
}

}  // namespace editor
