#include "editor/dialogs/brace_form.h"

#include "editor/brace_facts.h"
#include "editor/by_name.h"
#include "editor/dialogs/brace_choices.h"
#include "editor/dialogs/form_line.h"
#include "editor/findings_about.h"
#include "editor/frame_nodes.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/section_choice.h"
#include "model/resolve/resolve.h"

#include <utility>

namespace editor {
namespace {

const model::Frame* frame_of(const BraceForm& form, const Derived& derived) {
    return by_name(derived.project->frames, form.frame);
}

// Joints know members and braces by name.
bool is_taken(const model::Frame& frame, const std::string& name) {
    return by_name(frame.diagonals, name) != nullptr || by_name(frame.members, name) != nullptr;
}

std::string free_name(const model::Frame& frame) {
    std::string name = "brace";
    for (int n = 2; is_taken(frame, name); ++n) name = "brace " + std::to_string(n);
    return name;
}

// One step: flat bar that is new to the project comes in with the brace.
Change change_for(const BraceForm& form,
                  const Derived& derived,
                  const model::Catalogue& catalogue,
                  model::Diagonal diagonal) {
    Change change{.label =
                      (form.instead_of.empty() ? "Add brace " : "Change brace ") + diagonal.name};
    if (!form.section.empty()) {
        const auto* frame = frame_of(form, derived);
        const bool has_member = frame != nullptr && !frame->members.empty();
        auto stock = stock_of_section(*derived.project, catalogue, form.section,
                                      has_member ? frame->members.front().stock : std::string());
        if (stock.edit) change.edits.push_back(*std::move(stock.edit));
        diagonal.stock = stock.name;
    }
    change.edits.emplace_back(model::PutDiagonal{form.frame, std::move(diagonal), form.instead_of});
    return change;
}

engine::Result<model::Project> tried(const model::Project& project, const Change& change) {
    model::Project next = project;
    for (const auto& edit : change.edits) {
        auto applied = model::apply(std::move(next), edit);
        if (!applied) return applied.error();
        next = std::move(applied).value();
    }
    return next;
}

std::optional<std::string> reason_against(const BraceForm& form,
                                          const Derived& derived,
                                          const Change& change) {
    const auto* frame = frame_of(form, derived);
    const auto& name = form.diagonal.name;
    if (frame != nullptr && name != form.instead_of && is_taken(*frame, name)) {
        const bool is_brace = by_name(frame->diagonals, name) != nullptr;
        return std::string("there is a ") + (is_brace ? "brace" : "member") + " \"" + name +
               "\" already; choose another name";
    }
    const auto next = tried(*derived.project, change);
    return next ? std::nullopt : std::optional(engine::to_text(next.error()));
}

std::optional<Change> tried_change(BraceForm& form,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue) {
    form.trouble.clear();
    auto change = change_for(form, derived, catalogue, form.diagonal);
    if (const auto reason = reason_against(form, derived, change)) {
        form.trouble = *reason;
        return std::nullopt;
    }
    return change;
}

// ---- what it would come to ----------------------------------------------------------------------

std::string words_of_piece(const model::Resolved& resolved,
                           model::Index piece,
                           const engine::TapeStyle& shown) {
    const int count = fasteners_through(resolved, piece);
    return length_text(resolved.pieces[piece], shown) + " long, held by " + std::to_string(count) +
           (count == 1 ? " fastener" : " fasteners");
}

// Whatever its name is to be: half typed, it may be another one's.
BraceTrial trial_of(const BraceForm& form,
                    const Derived& derived,
                    const model::Catalogue& catalogue) {
    BraceTrial trial{.revision = derived.revision, .tried = form.diagonal, .section = form.section};
    const auto* frame = frame_of(form, derived);
    if (frame == nullptr) return trial;
    auto diagonal = form.diagonal;
    diagonal.name = form.instead_of.empty() ? free_name(*frame) : form.instead_of;
    const auto next = tried(*derived.project, change_for(form, derived, catalogue, diagonal));
    if (!next) return trial;
    const auto resolved = model::resolve(*next, catalogue);
    if (const auto piece = brace_piece(*next, resolved, form.frame, diagonal.name)) {
        trial.words = words_of_piece(resolved, *piece, next->shown);
    }
    const auto subject = subject_of_brace(form.frame, diagonal.name);
    for (const auto* finding : to_mend_about(resolved.findings, subject)) {
        trial.findings.push_back(*finding);
    }
    return trial;
}

bool is_current(const std::optional<BraceTrial>& trial,
                const BraceForm& form,
                const Derived& derived) {
    if (!trial || trial->revision != derived.revision) return false;
    auto tried = trial->tried;
    tried.name = form.diagonal.name;
    tried.note = form.diagonal.note;
    return tried == form.diagonal && trial->section == form.section;
}

void draw_trial(const BraceTrial& trial) {
    if (!trial.words.empty()) {
        draw_wrapped(trial.words, Type::strong);
        log_item("comes to", trial.words);
    }
    for (const auto& finding : trial.findings) {
        const bool is_error = finding.severity == model::Severity::error;
        draw_wrapped(finding.what + "; " + finding.mend, Type::small,
                     is_error ? colour::red : colour::amber);
        log_item("finding " + finding.code, finding.what);
    }
}

void draw_answers(BraceForm& form,
                  const Derived& derived,
                  const model::Catalogue& catalogue,
                  BraceOutcome& outcome,
                  bool is_choosing) {
    const bool can_put = !form.diagonal.name.empty() && !form.diagonal.stock.empty();
    const char* verb = form.instead_of.empty() ? "Add" : "Change";
    if (draw_button("Put", {.text = verb, .weight = Weight::main, .enabled = can_put}) ||
        (can_put && !is_choosing && is_pressed(key::enter))) {
        outcome.change = tried_change(form, derived, catalogue);
    }
    ImGui::SameLine();
    outcome.is_cancelled = draw_button("Cancel") || (!is_choosing && is_pressed(key::escape));
    if (form.instead_of.empty()) return;
    ImGui::SameLine(0, scaled(40));
    if (draw_button("Remove", {.text = "Remove this brace", .weight = Weight::link})) {
        outcome.change = change_of(model::RemoveDiagonal{form.frame, form.instead_of});
        outcome.change->label = "Remove brace " + form.instead_of;
    }
}

// ---- a new one ----------------------------------------------------------------------------------

// The back of a cabinet is braced most often.
std::optional<NodePair> usual_place(const Derived& derived, const model::Frame& frame) {
    std::optional<NodePair> place;
    std::optional<model::Axis> axis;
    for (const auto& face : faces_with_members(derived, frame)) {
        const auto pair = across_face(derived, frame, face);
        const auto its_axis = axis_of_plane(frame, face);
        if (!pair || (place && its_axis != axis)) continue;
        place = pair;
        axis = its_axis;
    }
    return place;
}

// Where one brace is, a second one crosses it.
void take_free_corners(model::Diagonal& diagonal, const model::Frame& frame) {
    for (const auto& other : frame.diagonals) {
        const bool is_there = other.face == diagonal.face &&
                              ((other.from == diagonal.from && other.to == diagonal.to) ||
                               (other.from == diagonal.to && other.to == diagonal.from));
        if (is_there) return turn_to_other_corners(diagonal.from, diagonal.to);
    }
}

}  // namespace

BraceForm brace_form(const std::string& frame, const model::Diagonal& diagonal) {
    return {.frame = frame, .instead_of = diagonal.name, .diagonal = diagonal};
}

BraceForm new_brace_form(const Derived& derived,
                         const model::Catalogue& catalogue,
                         const std::string& frame,
                         const Selection& selection) {
    BraceForm form{.frame = frame};
    const auto* it = frame_of(form, derived);
    if (it == nullptr) return form;
    auto& diagonal = form.diagonal;
    diagonal.name = free_name(*it);
    // Outside, nothing but the members' own faces is in its way.
    diagonal.side = model::FaceSide::outside;
    if (it->diagonals.empty()) {
        choose_usual_bar(form, derived, catalogue);
    } else {
        const auto& last = it->diagonals.back();
        diagonal.stock = last.stock;
        diagonal.side = last.side;
        diagonal.ends = last.ends;
    }
    const auto chosen = between_chosen(*it, selection);
    if (const auto place = chosen ? chosen : usual_place(derived, *it)) {
        diagonal.face = place->face;
        diagonal.from = place->from;
        diagonal.to = place->to;
        take_free_corners(diagonal, *it);
    }
    return form;
}

BraceOutcome draw_brace_form(BraceForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue) {
    BraceOutcome outcome;
    const bool is_new = form.instead_of.empty();
    const std::string title = (is_new ? "New brace in " : "Change a brace of ") + form.frame;
    const DialogScope dialog("Brace", title.c_str(), scaled(560));
    if (!dialog) return outcome;
    const bool is_choosing = is_choosing_for_brace();  // Enter and Escape belong to the list
    draw_form_line("name", form.diagonal.name, "back brace", form.is_fresh);
    if (const auto* frame = frame_of(form, derived)) {
        draw_brace_place(form.diagonal, derived, *frame);
    }
    draw_brace_bar(form, derived, catalogue);
    draw_side_and_ends(form.diagonal);
    draw_form_line("note", form.diagonal.note, "what it is for");
    if (!is_current(form.trial, form, derived)) form.trial = trial_of(form, derived, catalogue);
    draw_rule();
    draw_trial(*form.trial);
    if (!form.trouble.empty()) {
        draw_wrapped(form.trouble, Type::text, colour::red);
        log_item("trouble", form.trouble);
    }
    ImGui::Dummy(scaled(1, 8));
    draw_answers(form, derived, catalogue, outcome, is_choosing);
    form.is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor
