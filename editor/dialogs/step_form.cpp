#include "editor/dialogs/step_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/form_line.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/room/fit_step.h"
#include "model/room/resolve_in_room.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

bool has_faces(const model::Obstacle& obstacle) {
    return std::holds_alternative<model::BoxObstacle>(obstacle.shape) ||
           std::holds_alternative<model::WheelWell>(obstacle.shape) ||
           std::holds_alternative<model::CylinderObstacle>(obstacle.shape);
}

model::StepOver edit_of(const StepFields& fields) {
    return {.frame = fields.frame,
            .obstacle = fields.obstacle,
            .clearance = fields.clearance,
            .apart = fields.apart,
            .standing = fields.heads};
}

std::string counted(std::size_t before, std::size_t after, const char* thing) {
    if (before == after) return {};
    const bool more = after > before;
    const auto count = more ? after - before : before - after;
    return std::to_string(count) + " " + thing + (count == 1 ? "" : "s") +
           (more ? " more" : " less");
}

std::string change_words(const model::Frame& before, const model::Frame& after) {
    std::string words;
    for (const auto& part : {counted(before.planes.size(), after.planes.size(), "layout plane"),
                             counted(before.bays.size(), after.bays.size(), "bay"),
                             counted(before.members.size(), after.members.size(), "member")}) {
        if (!part.empty()) words += (words.empty() ? "" : ", ") + part;
    }
    return words.empty() ? "members are moved, none is added" : words;
}

bool is_told_already(const Derived& derived, const model::Finding& finding) {
    return std::ranges::any_of(derived.findings, [&](const model::Finding& other) {
        return other.code == finding.code && other.concerns == finding.concerns;
    });
}

StepTrial trial_of(const StepFields& fields,
                   const Derived& derived,
                   const model::Catalogue& catalogue,
                   const model::ScanLibrary& scans) {
    StepTrial trial{.revision = derived.revision, .fields = fields};
    trial.edit = model::fitted_step(*derived.project, catalogue, edit_of(fields));
    const auto next = model::apply(*derived.project, trial.edit);
    if (!next) {
        trial.refusal = engine::to_text(next.error());
        return trial;
    }
    const auto* before = by_name(derived.project->frames, fields.frame);
    const auto* after = by_name(next->frames, fields.frame);
    if (before != nullptr && after != nullptr) trial.words = change_words(*before, *after);
    for (auto& finding : model::resolve_in_room(*next, catalogue, scans).findings) {
        if (finding.severity == model::Severity::note || is_told_already(derived, finding))
            continue;
        trial.findings.push_back(std::move(finding));
    }
    return trial;
}

bool is_current(const StepForm& form, const Derived& derived) {
    return form.trial && form.trial->revision == derived.revision &&
           form.trial->fields == form.fields;
}

template <class List, class Offers>
void draw_names(const char* word, const List& list, std::string& chosen, Offers offers) {
    draw_form_word(word);
    bool is_first = true;
    for (const auto& one : list) {
        if (!offers(one)) continue;
        if (!is_first) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + scaled(form_column));
        is_first = false;
        if (draw_radio(one.name.c_str(), chosen == one.name)) chosen = one.name;
    }
}

// A length that is worked out unless one is typed, and what it is.
void draw_length_or(const char* name,
                    std::string& text,
                    const std::string& worked_out,
                    const char* what) {
    draw_short_line(name, text, worked_out);
    ImGui::SameLine();
    draw_text(what, Type::small, colour::quiet);
}

void draw_trial(const StepTrial& trial) {
    if (!trial.refusal.empty()) {
        draw_wrapped(trial.refusal, Type::text, colour::red);
        log_item("trouble", trial.refusal);
        return;
    }
    draw_wrapped(trial.words, Type::strong);
    log_item("comes to", trial.words);
    constexpr std::size_t most = 4;
    for (std::size_t i = 0; i < std::min(most, trial.findings.size()); ++i) {
        const auto& finding = trial.findings[i];
        const bool is_error = finding.severity == model::Severity::error;
        draw_wrapped(model::where_text(finding) + ": " + finding.what, Type::small,
                     is_error ? colour::red : colour::amber);
    }
    if (trial.findings.size() > most) {
        draw_wrapped("and " + std::to_string(trial.findings.size() - most) + " more", Type::small,
                     colour::quiet);
    }
}

}  // namespace

bool can_step_over(const model::Project& project) {
    return !project.frames.empty() && std::ranges::any_of(project.room, has_faces);
}

StepForm new_step_form(const Derived& derived) {
    StepForm form;
    const auto& project = *derived.project;
    if (!project.frames.empty()) form.fields.frame = project.frames.front().name;
    const auto first = std::ranges::find_if(project.room, has_faces);
    if (first != project.room.end()) form.fields.obstacle = first->name;
    for (const auto& finding : derived.findings) {
        if (finding.concerns.size() < 2 ||
            finding.concerns[0].kind != model::SubjectKind::obstacle) {
            continue;
        }
        const auto* obstacle = by_name(project.room, finding.concerns[0].name);
        if (obstacle == nullptr || !has_faces(*obstacle)) continue;
        form.fields.obstacle = obstacle->name;
        form.fields.frame = finding.concerns[1].frame;
        break;
    }
    return form;
}

StepOutcome draw_step_form(StepForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue,
                           const model::ScanLibrary& scans) {
    StepOutcome outcome;
    const DialogScope dialog("Step", "Step a frame over an obstacle", scaled(560));
    if (!dialog) return outcome;
    auto& fields = form.fields;
    draw_names("frame", derived.project->frames, fields.frame, [](const auto&) { return true; });
    draw_names("over", derived.project->room, fields.obstacle, has_faces);
    draw_short_line("clearance", fields.clearance, "its own", form.is_fresh);
    const auto heads = form.trial ? form.trial->edit.standing : std::string();
    draw_length_or("heads", fields.heads, heads.empty() ? "no more" : heads,
                   "kept beyond the clearance for heads and tails");
    draw_length_or("apart", fields.apart, "as legs fit", "least distance of planes with members");
    draw_wrapped(
        "Planes come in where it begins and ends, the bays that it takes up go, and the "
        "outline of what remains is framed. The planes stand on its measures: when it "
        "moves, the step moves.",
        Type::small, colour::quiet);
    if (!is_current(form, derived)) form.trial = trial_of(fields, derived, catalogue, scans);
    draw_rule();
    draw_trial(*form.trial);
    ImGui::Dummy(scaled(1, 8));
    const bool can = form.trial->refusal.empty();
    if (draw_button("Put", {.text = "Step over", .weight = Weight::main, .enabled = can}) ||
        (can && is_pressed(key::enter))) {
        outcome.change = change_of(form.trial->edit);
    }
    ImGui::SameLine();
    outcome.is_cancelled = draw_button("Cancel") || is_pressed(key::escape);
    form.is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor
