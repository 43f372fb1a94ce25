#include "editor/dialogs/panel_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/cut_out_rows.h"
#include "editor/dialogs/form_line.h"
#include "editor/dialogs/panel_choices.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/panel_facts.h"
#include "model/schedule/tables.h"

namespace editor {
namespace {

using engine::QuantityKind;

// Why a text gives no length in the project; nothing where it may be empty and is.
std::optional<std::string> reason_against(const Derived& derived,
                                          const std::string& text,
                                          const std::string& what,
                                          bool may_be_empty) {
    if (text.empty() && may_be_empty) return std::nullopt;
    if (text.empty()) return what + ": give a length";
    const auto value = tried_length(derived, text);
    if (!value) return what + ": " + error_words(value.error(), text);
    return std::nullopt;
}

// Sheet for panels is thinner than this by far.
constexpr engine::Length most_thick = engine::Length::from_nm(100'000'000);

std::optional<std::string> reason_against_size(const Derived& derived,
                                               const std::string& text,
                                               const std::string& what,
                                               std::optional<engine::Length> most = {}) {
    const auto value = tried_length(derived, text);
    if (!value) return std::nullopt;  // empty, or told already
    if (value->length <= engine::Length{}) return what + ": give a length above zero";
    if (most && value->length > *most)
        return what + ": give at most " + model::length_text(*derived.project, *most);
    return std::nullopt;
}

// The fields are called as in the headings above them.
std::optional<std::string> reason_against(const Derived& derived,
                                          const model::CutOut& cut_out,
                                          model::Axis face_axis) {
    const auto axes = model::across(face_axis);
    for (std::size_t end = 0; end < 2; ++end) {
        for (std::size_t k = 0; k < 2; ++k) {
            const auto& text = end == 0 ? cut_out.least[k] : cut_out.most[k];
            const auto what = cut_out.name + (end == 0 ? ", from, " : ", to, ") + word_of(axes[k]);
            if (auto reason = reason_against(derived, text, what, false)) return reason;
        }
    }
    return std::nullopt;
}

std::optional<std::string> reason_against(const Derived& derived,
                                          const PanelForm& form,
                                          const model::Edit& edit) {
    const auto& panel = form.panel;
    if (auto reason = reason_against(derived, panel.thickness, "thickness", false)) return reason;
    if (auto reason = reason_against(derived, panel.clear_gap, "gap", true)) return reason;
    if (auto reason = reason_against(derived, panel.pitch, "pitch", true)) return reason;
    if (auto r = reason_against_size(derived, panel.thickness, "thickness", most_thick)) return r;
    if (auto r = reason_against_size(derived, panel.clear_gap, "gap")) return r;
    if (auto r = reason_against_size(derived, panel.pitch, "pitch")) return r;
    for (const auto& cut_out : panel.cut_outs) {
        if (auto reason = reason_against(derived, cut_out, panel.face_axis)) return reason;
    }
    std::string reason;
    if (const auto* frame = by_name(derived.project->frames, form.frame)) {
        reason = reason_against_name(frame->panels, panel.name, form.instead_of, "a panel");
    }
    if (reason.empty()) reason = reason_against_edit(derived, edit);
    return reason.empty() ? std::nullopt : std::optional(std::move(reason));
}

std::optional<Change> tried_change(PanelForm& form, const Derived& derived) {
    const model::Edit edit = model::PutPanel{form.frame, form.panel, form.instead_of};
    if (const auto reason = reason_against(derived, form, edit)) {
        form.trouble = *reason;
        return std::nullopt;
    }
    return change_of(edit);
}

// In words that stand in an empty field.
std::string of_shop(const Derived& derived, model::Nm length) {
    const engine::Quantity value{.kind = QuantityKind::length,
                                 .length = engine::Length::from_nm(length)};
    return "as the shop says: " + quantity_text(value, derived.project->shown);
}

void draw_holding(PanelForm& form, const Derived& derived, const model::Catalogue& catalogue) {
    auto& panel = form.panel;
    const auto& shop = derived.resolved.shop;
    draw_short_line("thickness", panel.thickness, "1/8 in");
    if (panel.use == model::PanelUse::fixed) {
        draw_short_beside("pitch", "pitch", panel.pitch, of_shop(derived, shop.panel_pitch));
    } else {
        draw_short_beside("gap", "gap", panel.clear_gap, of_shop(derived, shop.panel_gap));
    }
    draw_fit_and_use(panel);
    if (panel.use == model::PanelUse::fixed) draw_rivet_choice(panel, catalogue);
}

// What is to mend of it as it stands in the project.
void draw_findings(const PanelForm& form, const Derived& derived) {
    if (form.instead_of.empty()) return;
    for (const auto* finding : findings_of_panel(derived, form.frame, form.instead_of)) {
        if (finding->severity != model::Severity::note) draw_form_finding(*finding);
    }
}

std::string free_name(const model::Frame& frame) {
    std::string name = "panel";
    for (int n = 2; by_name(frame.panels, name) != nullptr; ++n) {
        name = "panel " + std::to_string(n);
    }
    return name;
}

}  // namespace

PanelForm panel_form(const std::string& frame, const model::Panel& panel) {
    return {.frame = frame, .instead_of = panel.name, .panel = panel};
}

PanelForm new_panel_form(const Derived& derived, const std::string& frame) {
    PanelForm form{.frame = frame};
    form.panel.thickness = is_metric(derived.project->shown) ? "2 mm" : "1/8 in";
    form.panel.material = "5052-H32";
    const auto* it = by_name(derived.project->frames, frame);
    if (it == nullptr) return form;
    form.panel.name = free_name(*it);
    if (!it->bays.empty()) form.panel.bay = it->bays.front().name;
    if (!it->panels.empty()) {  // most panels of a cabinet are of one sheet
        form.panel.material = it->panels.back().material;
        form.panel.thickness = it->panels.back().thickness;
    }
    return form;
}

FormOutcome draw_panel_form(PanelForm& form,
                            const Derived& derived,
                            const model::Catalogue& catalogue) {
    FormOutcome outcome;
    const bool is_new = form.instead_of.empty();
    const std::string title = (is_new ? "New panel in " : "Change a panel of ") + form.frame;
    const DialogScope dialog("Panel", title.c_str(), scaled(620), DialogScope::Fields::scroll);
    if (!dialog) return outcome;
    const bool is_choosing = is_choosing_for_panel();  // Enter and Escape belong to the list
    draw_form_line("name", form.panel.name, "back", form.is_fresh);
    draw_bay_and_face(form.panel, derived, form.frame);
    draw_material_choice(form.panel, catalogue);
    draw_holding(form, derived, catalogue);
    draw_form_line("note", form.panel.note, "what it is for");
    draw_rule();
    draw_cut_out_rows(form.panel);
    draw_findings(form, derived);
    const auto answer = draw_form_answers(
        form.trouble, {.verb = is_new ? "Add" : "Change",
                       .can_put = !form.panel.name.empty() && !form.panel.bay.empty(),
                       .is_choosing = is_choosing,
                       .removes = is_new ? "" : "Remove this panel"});
    if (answer.puts) outcome.change = tried_change(form, derived);
    if (answer.removes) outcome.change = change_of(model::RemovePanel{form.frame, form.instead_of});
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
