#include "editor/dialogs/place_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_line.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/room/resolve_in_room.h"

#include <algorithm>
#include <array>
#include <utility>

namespace editor {
namespace {

model::PlaceFrame edit_of(const PlaceForm& form) {
    return {.frame = form.frame, .origin = form.origin, .quarter_turns = form.quarter_turns};
}

bool is_same(const model::PlaceFrame& a, const model::PlaceFrame& b) {
    return a.frame == b.frame && a.origin == b.origin && a.quarter_turns == b.quarter_turns;
}

bool is_in(const std::vector<model::Finding>& findings, const model::Finding& finding) {
    return std::ranges::any_of(findings, [&](const model::Finding& other) {
        return other.code == finding.code && other.concerns == finding.concerns;
    });
}

bool matters(const model::Finding& finding) { return finding.severity != model::Severity::note; }

PlaceTrial trial_of(const PlaceForm& form,
                    const Derived& derived,
                    const model::Catalogue& catalogue,
                    std::shared_ptr<const model::ScanLibrary> scans) {
    PlaceTrial trial{
        .revision = derived.revision, .scans = std::move(scans), .edit = edit_of(form)};
    const auto next = model::apply(*derived.project, trial.edit);
    if (!next) {
        trial.refusal = engine::to_text(next.error());
        return trial;
    }
    const auto then = model::resolve_in_room(*next, catalogue, *trial.scans).findings;
    for (const auto& finding : then) {
        if (matters(finding) && !is_in(derived.findings, finding))
            trial.findings.push_back(finding);
    }
    for (const auto& finding : derived.findings) {
        if (matters(finding) && !is_in(then, finding)) ++trial.cured;
    }
    return trial;
}

bool is_current(const PlaceForm& form,
                const Derived& derived,
                const std::shared_ptr<const model::ScanLibrary>& scans) {
    return form.trial && form.trial->revision == derived.revision && form.trial->scans == scans &&
           is_same(form.trial->edit, edit_of(form));
}

// The one chosen; its place comes with it.
void draw_frames(PlaceForm& form, const model::Project& project) {
    if (project.frames.size() < 2) return;
    draw_form_word("frame");
    const IdScope scope("frames");
    bool is_first = true;
    for (const auto& frame : project.frames) {
        if (!is_first) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + scaled(form_column));
        is_first = false;
        if (draw_radio(frame.name.c_str(), form.frame == frame.name))
            form = new_place_form(project, frame.name);
    }
}

void draw_trial(const PlaceTrial& trial) {
    if (!trial.refusal.empty()) {
        draw_wrapped(trial.refusal, Type::text, colour::red);
        log_item("trouble", trial.refusal);
        return;
    }
    std::string words = trial.findings.empty()
                            ? "nothing new is wrong there"
                            : std::to_string(trial.findings.size()) + " new to mend there";
    if (trial.cured > 0)
        words += "; " + std::to_string(trial.cured) + " of what is wrong now is mended";
    draw_wrapped(words, Type::strong);
    log_item("comes to", words);
    constexpr std::size_t most = 4;
    for (std::size_t i = 0; i < std::min(most, trial.findings.size()); ++i) {
        const auto& finding = trial.findings[i];
        const bool is_error = finding.severity == model::Severity::error;
        draw_wrapped(model::where_text(finding) + ": " + finding.what, Type::small,
                     is_error ? colour::red : colour::amber);
    }
}

}  // namespace

PlaceForm new_place_form(const model::Project& project, const std::string& frame) {
    const auto* found = by_name(project.frames, frame);
    if (found == nullptr && !project.frames.empty()) found = &project.frames.front();
    if (found == nullptr) return {};
    return {.frame = found->name, .origin = found->origin, .quarter_turns = found->quarter_turns};
}

PlaceOutcome draw_place_form(PlaceForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue,
                             const std::shared_ptr<const model::ScanLibrary>& scans) {
    PlaceOutcome outcome;
    const DialogScope dialog("Place", "Place the frame in the room", scaled(520));
    if (!dialog) return outcome;
    draw_frames(form, *derived.project);
    CheckedFields fields(derived);
    fields.draw_length("across, X", "place x", form.origin[0], "0");
    fields.draw_length("along, Y", "place y", form.origin[1], "0");
    fields.draw_length("up, Z", "place z", form.origin[2], "0");
    draw_radio_line<int>("turned", form.quarter_turns,
                         {{0, "not"}, {1, "a quarter"}, {2, "half round"}, {3, "three quarters"}});
    draw_wrapped(
        "There stands the corner of the frame from which its planes are measured. Seen from above "
        "the frame is turned against the clock about that corner.",
        Type::small, colour::quiet);
    if (!is_current(form, derived, scans)) form.trial = trial_of(form, derived, catalogue, scans);
    draw_rule();
    draw_trial(*form.trial);
    ImGui::Dummy(scaled(1, 8));
    const bool can = form.trial->refusal.empty() && fields.are_all_known();
    if (draw_button("Put", {.text = "Place it there", .weight = Weight::main, .enabled = can}) ||
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
