#include "editor/dialogs/obstacle_form.h"

#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_line.h"
#include "editor/dialogs/obstacle_fields.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <utility>

namespace editor {
namespace {

// Why what is stated here cannot be. What the project holds already is left as it is: it may be
// wrong through a dimension that is mended elsewhere.
std::string reason_against_stated(const ObstacleForm& form, const Derived& derived) {
    const auto* before = by_name(derived.project->room, form.instead_of);
    const bool is_as_before = before != nullptr && before->shape == form.obstacle.shape &&
                              before->clearance == form.obstacle.clearance;
    if (is_as_before || !form.trial) return {};
    return reason_against_shape(form.trial->facts.findings);
}

std::optional<Change> tried_change(ObstacleForm& form, const Derived& derived, bool are_known) {
    const model::Edit edit = model::PutObstacle{form.obstacle, form.instead_of};
    form.trouble = reason_against_name(derived.project->room, form.obstacle.name, form.instead_of,
                                       "an obstacle");
    if (form.trouble.empty() && !are_known) form.trouble = mend_first;
    if (form.trouble.empty()) form.trouble = reason_against_edit(derived, edit);
    if (form.trouble.empty()) form.trouble = reason_against_stated(form, derived);
    form.asked.all = !are_known;
    if (!form.trouble.empty()) return std::nullopt;
    return change_of(edit);
}

// ---- what it would come to ----------------------------------------------------------------------

bool is_current(const ObstacleForm& form, const Derived& derived) {
    if (!form.trial || form.trial->of != worked_out_of(derived)) return false;
    auto tried = form.trial->tried;
    tried.name = form.obstacle.name;
    tried.note = form.obstacle.note;
    return tried == form.obstacle;
}

ObstacleTrial trial_of(const ObstacleForm& form,
                       const Derived& derived,
                       const model::Catalogue& catalogue) {
    ObstacleTrial trial{.of = worked_out_of(derived), .tried = form.obstacle};
    trial.facts = facts_of(form.obstacle, derived, catalogue);
    trial.words = near_words(trial.facts, derived);
    return trial;
}

void draw_trial(const ObstacleTrial& trial, const std::string& scan_words, const Derived& derived) {
    const auto size = size_words(trial.tried, derived);
    const auto words = size + (trial.words.empty() ? "" : "; " + trial.words);
    draw_wrapped(words, Type::strong);
    log_item("comes to", words);
    for (auto finding : trial.facts.findings) {
        if (finding.code == "scan_not_read" && !scan_words.empty()) {
            finding.what = scan_words;
            finding.mend.clear();
        }
        draw_form_finding(finding);
    }
}

// ---- the form -----------------------------------------------------------------------------------

std::string clearance_hint(const model::Obstacle& obstacle, const Derived& derived) {
    if (obstacle.stays_clear) return "none: its own edge";
    const auto clearance = engine::Length::from_nm(derived.resolved.shop.clearance);
    return "as the shop says: " + model::length_in_words(clearance, derived.project->shown);
}

void draw_keeping(CheckedFields& fields, model::Obstacle& obstacle, const Derived& derived) {
    draw_form_word("keeping");
    draw_check("stays clear", obstacle.stays_clear,
               "nothing is there, but nothing may stand there");
    fields.draw_length("clearance", "clearance", obstacle.clearance,
                       clearance_hint(obstacle, derived), true);
    draw_form_line("note", obstacle.note, "what it is");
}

// What the form says is put before it goes on elsewhere; what cannot be put keeps it here. Gives
// whether it goes on.
bool puts_first(ObstacleForm& form,
                const Derived& derived,
                bool are_known,
                ObstacleOutcome& outcome) {
    const auto* before = by_name(derived.project->room, form.instead_of);
    if (before != nullptr && *before == form.obstacle) return true;
    outcome.change = tried_change(form, derived, are_known);
    return outcome.change.has_value();
}

// Another one like it, a scan's points, and taking it out.
void draw_more(ObstacleForm& form,
               const Derived& derived,
               bool are_known,
               ObstacleOutcome& outcome) {
    ImGui::SameLine(0, scaled(30));
    if (draw_button("Copy", {.text = "Another one like it", .weight = Weight::link})) {
        outcome.is_copied = puts_first(form, derived, are_known, outcome);
    }
    draw_hint("What is changed here is kept; then the form goes on with a new one");
    ImGui::SameLine();
    if (kind_of(form.obstacle) == ObstacleKind::scan) {
        if (draw_button("Place by points", {.text = "By three points", .weight = Weight::link})) {
            outcome.wants_points = puts_first(form, derived, are_known, outcome);
        }
        draw_hint("Pick three points of it in the view: a corner, one along X, one on the floor");
        ImGui::SameLine();
    }
    if (draw_button("Remove", {.text = "Remove this obstacle", .weight = Weight::link})) {
        outcome.change = change_of(model::RemoveObstacle{form.instead_of});
    }
}

std::string title_of(const ObstacleForm& form) {
    const std::string word = word_of(kind_of(form.obstacle));
    return (form.instead_of.empty() ? "New in the room: " : "Change in the room: ") + word;
}

}  // namespace

ObstacleForm obstacle_form(const model::Obstacle& obstacle) {
    return {.instead_of = obstacle.name, .obstacle = obstacle};
}

ObstacleForm new_obstacle_form(const Derived& derived, ObstacleKind kind) {
    return {.obstacle = new_obstacle(derived, kind)};
}

ObstacleForm copied_obstacle_form(const Derived& derived, const model::Obstacle& obstacle) {
    ObstacleForm form{.obstacle = obstacle};
    form.obstacle.name = free_obstacle_name(*derived.project, obstacle.name);
    return form;
}

ObstacleOutcome draw_obstacle_form(ObstacleForm& form,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue) {
    ObstacleOutcome outcome;
    const DialogScope dialog("Obstacle", title_of(form).c_str(), scaled(620),
                             DialogScope::Fields::scroll);
    if (!dialog) return outcome;
    CheckedFields fields(derived, &form.asked);
    draw_form_line("name", form.obstacle.name, "left wheel well", form.is_fresh);
    draw_obstacle_fields(fields, form.obstacle);
    draw_keeping(fields, form.obstacle, derived);
    if (!is_current(form, derived)) {
        form.trial = trial_of(form, derived, catalogue);
        form.trouble.clear();  // it was said of another shape
    }
    draw_rule();
    draw_trial(*form.trial, form.scan_words, derived);
    const bool is_new = form.instead_of.empty();
    if (is_being_changed()) form.trouble.clear();  // it was said of another one
    const auto answer = draw_form_answers(
        form.trouble, {.verb = is_new ? "Add" : "Change", .can_put = !form.obstacle.name.empty()});
    if (answer.puts) outcome.change = tried_change(form, derived, fields.are_all_known());
    if (!is_new) draw_more(form, derived, fields.are_all_known(), outcome);
    outcome.is_cancelled = answer.is_cancelled || (outcome.wants_points && !outcome.change);
    if (outcome.is_copied) return outcome;  // the form stays
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
