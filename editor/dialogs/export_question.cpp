#include "editor/dialogs/export_question.h"

#include "editor/keys.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <cstddef>

namespace editor {

std::string errors_text(const Derived& derived) {
    constexpr std::size_t most_lines = 6;
    std::string text;
    std::size_t lines = 0;
    std::size_t more = 0;
    for (const auto& group : derived.finding_groups) {
        const auto& finding = derived.findings[group.findings[0]];
        if (finding.severity != model::Severity::error) continue;
        if (++lines > most_lines) {
            more += group.findings.size();
            continue;
        }
        const std::string where = where_words(group, derived.findings);
        if (!text.empty()) text += "\n";
        text += (where.empty() ? "" : where + ": ") + finding.what;
    }
    return more == 0 ? text : text + "\nand " + std::to_string(more) + " more";
}

ExportAnswer draw_export_question(const Derived& derived) {
    const DialogScope dialog("Export", "Not fit to cut from yet", scaled(560));
    if (!dialog) return ExportAnswer::none;
    const std::string what = errors_text(derived);
    draw_wrapped(what, Type::text, colour::red);
    log_item("what", what);
    ImGui::Dummy(scaled(1, 4));
    draw_wrapped("Write the schedules all the same?");
    ImGui::Dummy(scaled(1, 10));
    auto answer = ExportAnswer::none;
    if (draw_button("Look", {.text = "Show me what is wrong", .weight = Weight::main}) ||
        is_pressed(key::enter)) {
        answer = ExportAnswer::look;
    }
    ImGui::SameLine();
    if (draw_button("Write", {.text = "Write them all the same"})) answer = ExportAnswer::write;
    ImGui::SameLine();
    if (draw_button("Stay") || is_pressed(key::escape)) answer = ExportAnswer::stay;
    if (answer != ExportAnswer::none) ImGui::CloseCurrentPopup();
    return answer;
}

}  // namespace editor
