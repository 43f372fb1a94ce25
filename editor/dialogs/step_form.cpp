#include "editor/dialogs/step_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/form_line.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
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

model::StepOver edit_of(const StepForm& form) {
    return {.frame = form.frame, .obstacle = form.obstacle, .clearance = form.clearance};
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

StepTrial trial_of(const StepForm& form,
                   const Derived& derived,
                   const model::Catalogue& catalogue,
                   const model::ScanLibrary& scans) {
    StepTrial trial{derived.revision, form.frame, form.obstacle, form.clearance, {}, {}, {}};
    const auto next = model::apply(*derived.project, edit_of(form));
    if (!next) {
        trial.refusal = engine::to_text(next.error());
        return trial;
    }
    const auto* before = by_name(derived.project->frames, form.frame);
    const auto* after = by_name(next->frames, form.frame);
    if (before != nullptr && after != nullptr) trial.words = change_words(*before, *after);
    for (auto& finding : model::resolve_in_room(*next, catalogue, scans).findings) {
        if (finding.severity == model::Severity::note || is_told_already(derived, finding))
            continue;
        trial.findings.push_back(std::move(finding));
    }
    return trial;
}

bool is_current(const std::optional<StepTrial>& trial,
                const StepForm& form,
                const Derived& derived) {
    return trial && trial->revision == derived.revision && trial->frame == form.frame &&
           trial->obstacle == form.obstacle && trial->clearance == form.clearance;
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
    if (!project.frames.empty()) form.frame = project.frames.front().name;
    const auto first = std::ranges::find_if(project.room, has_faces);
    if (first != project.room.end()) form.obstacle = first->name;
    for (const auto& finding : derived.findings) {
        if (finding.concerns.size() < 2 ||
            finding.concerns[0].kind != model::SubjectKind::obstacle) {
            continue;
        }
        const auto* obstacle = by_name(project.room, finding.concerns[0].name);
        if (obstacle == nullptr || !has_faces(*obstacle)) continue;
        form.obstacle = obstacle->name;
        form.frame = finding.concerns[1].frame;
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
    draw_names("frame", derived.project->frames, form.frame, [](const auto&) { return true; });
    draw_names("over", derived.project->room, form.obstacle, has_faces);
    draw_short_line("clearance", form.clearance, "its own", form.is_fresh);
    draw_wrapped(
        "Planes come in where it begins and ends, the bays that it takes up go, and the "
        "outline of what remains is framed. The planes stand on its measures: when it "
        "moves, the step moves.",
        Type::small, colour::quiet);
    if (!is_current(form.trial, form, derived))
        form.trial = trial_of(form, derived, catalogue, scans);
    draw_rule();
    draw_trial(*form.trial);
    ImGui::Dummy(scaled(1, 8));
    const bool can = form.trial->refusal.empty();
    if (draw_button("Put", {.text = "Step over", .weight = Weight::main, .enabled = can}) ||
        (can && is_pressed(key::enter))) {
        outcome.change = change_of(edit_of(form));
    }
    ImGui::SameLine();
    outcome.is_cancelled = draw_button("Cancel") || is_pressed(key::escape);
    form.is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor
