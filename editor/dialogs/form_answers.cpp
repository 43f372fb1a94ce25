#include "editor/dialogs/form_answers.h"

#include "editor/keys.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <imgui_internal.h>

namespace editor {

void draw_form_finding(const model::Finding& finding) {
    const auto colour = finding.severity == model::Severity::note    ? colour::quiet
                        : finding.severity == model::Severity::error ? colour::red
                                                                     : colour::amber;
    draw_wrapped(finding.what + (finding.mend.empty() ? "" : "; " + finding.mend), Type::small,
                 colour);
    log_item("finding " + finding.code, finding.what);
}

std::string reason_against_shape(const std::vector<model::Finding>& findings) {
    for (const auto& finding : findings) {
        if (finding.code == "bad_obstacle" || finding.code == "bad_opening") return finding.what;
    }
    return {};
}

std::string reason_against_edit(const Derived& derived, const model::Edit& edit) {
    const auto next = model::apply(*derived.project, edit);
    return next ? std::string() : engine::to_text(next.error());
}

bool is_being_changed() { return ImGui::GetCurrentContext()->ActiveIdHasBeenEditedThisFrame; }

FormAnswer draw_form_answers(const std::string& trouble, const AnswerLook& look) {
    end_scrolled_fields();
    if (!trouble.empty()) {
        draw_wrapped(trouble, Type::text, colour::red);
        log_item("trouble", trouble);
    }
    ImGui::Dummy(scaled(1, 8));
    const auto is_typed = [&](int code) { return !look.is_choosing && is_pressed(code); };
    FormAnswer answer;
    const bool is_clicked =
        draw_button("Put", {.text = look.verb, .weight = Weight::main, .enabled = look.can_put});
    answer.puts = is_clicked || (look.can_put && is_typed(key::enter));
    ImGui::SameLine();
    answer.is_cancelled = draw_button("Cancel") || is_typed(key::escape);
    if (look.removes.empty()) return answer;
    ImGui::SameLine(0, scaled(40));
    answer.removes = draw_button("Remove", {.text = look.removes, .weight = Weight::link});
    return answer;
}

void end_form(bool& is_fresh, const FormOutcome& outcome) {
    is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
}

}  // namespace editor
