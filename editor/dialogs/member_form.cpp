#include "editor/dialogs/member_form.h"

#include "editor/dialogs/form_line.h"
#include "editor/dialogs/plane_choice.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/view/sketch_hand.h"
#include "editor/view/sketch_member.h"
#include "editor/view/sketch_trial.h"

#include <imgui.h>

#include <array>
#include <utility>

namespace editor {
namespace {

PlaneGrid grid_of(const MemberForm& form, const Derived& derived) {
    const auto* frame = by_name(derived.project->frames, form.frame);
    if (frame == nullptr) return {};
    return plane_grid(derived, static_cast<std::size_t>(frame - derived.project->frames.data()));
}

bool has_lines(const PlaneGrid& grid) { return !segments_of(grid).empty(); }

// What the lists show may be another project's by now.
bool is_on_grid(const GridSegment& segment, const PlaneGrid& grid) {
    const auto k = model::index_of(segment.run);
    for (std::size_t i = 0; i < 3; ++i) {
        if (segment.from[i] >= grid.planes[i].size()) return false;
    }
    return segment.to < grid.planes[k].size();
}

void take_first_free_line(MemberForm& form, const Derived& derived) {
    const auto grid = grid_of(form, derived);
    const auto* frame = by_name(derived.project->frames, form.frame);
    if (frame == nullptr || !has_lines(grid)) return;
    const auto segments = segments_of(grid);
    form.segment = whole_line(grid, segments.front());
    for (const auto& segment : segments) {
        const auto line = whole_line(grid, segment);
        if (member_on(*frame, grid, line) != nullptr) continue;
        form.segment = line;
        return;
    }
}

bool is_choosing() {
    constexpr std::array lists{"frame list", "runs list", "on list", "and on list",
                               "from list",  "to list",   "of list"};
    for (const auto* list : lists) {
        if (ImGui::IsPopupOpen(list)) return true;
    }
    return false;
}

void choose_run(GridSegment& segment, const PlaneGrid& grid) {
    const auto clicked = draw_choice_button(
        "runs", "runs", {{"from left to right"}, {"from front to back"}, {"upward"}},
        model::index_of(segment.run));
    if (!clicked) return;
    segment.run = static_cast<model::Axis>(*clicked);
    segment = whole_line(grid, segment);
}

void choose_line(GridSegment& segment, const PlaneGrid& grid) {
    choose_run(segment, grid);
    const auto cross = model::across(segment.run);
    const auto k = model::index_of(segment.run);
    choose_plane("on", grid.across(cross[0]), segment.from[model::index_of(cross[0])]);
    choose_plane("and on", grid.across(cross[1]), segment.from[model::index_of(cross[1])]);
    choose_plane("from", grid.planes[k], segment.from[k]);
    choose_plane("to", grid.planes[k], segment.to);
}

void update_trial(MemberForm& form,
                  const Derived& derived,
                  const model::Catalogue& catalogue,
                  const PlaneGrid& grid) {
    std::string key = form.frame + "\n" + form.stock;
    for (const auto i : form.segment.from) key += " " + std::to_string(i);
    key += " " + std::to_string(form.segment.to) + " " +
           std::to_string(model::index_of(form.segment.run));
    if (form.trial && form.trial->key == key && form.trial->of == worked_out_of(derived)) return;
    form.trial = member_trial({derived, catalogue, grid}, form.segment, form.stock);
    form.trial->key = std::move(key);
}

void draw_trial(const SketchTrial& trial) {
    draw_wrapped(trial.title, Type::strong);
    draw_wrapped(trial.change ? trial.words : "is there already: choose another line", Type::text,
                 trial.change ? colour::quiet : colour::amber);
    log_item("comes to", trial.title + ": " + trial.words);
    for (const auto& finding : trial.findings) {
        draw_wrapped(finding.text, Type::small, finding.is_error ? colour::red : colour::amber);
    }
}

}  // namespace

MemberForm new_member_form(const Derived& derived, const SketchState& sketch) {
    MemberForm form;
    const auto frame = sketched_frame(derived, sketch);
    if (!frame) return form;
    form.frame = derived.project->frames[*frame].name;
    form.stock = sketched_stock(derived, sketch);
    take_first_free_line(form, derived);
    return form;
}

FormOutcome draw_member_form(MemberForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue) {
    FormOutcome outcome;
    const DialogScope dialog("Member", "New member", scaled(520));
    if (!dialog) return outcome;
    const bool is_in_list = is_choosing();
    if (choose_name("frame", derived.project->frames, form.frame))
        take_first_free_line(form, derived);
    const auto grid = grid_of(form, derived);
    bool can_put = is_on_grid(form.segment, grid);
    if (!can_put) take_first_free_line(form, derived);
    if (is_on_grid(form.segment, grid)) choose_line(form.segment, grid);
    choose_name("of", derived.project->stock, form.stock);
    can_put = is_on_grid(form.segment, grid) &&
              form.segment.from[model::index_of(form.segment.run)] < form.segment.to;
    draw_rule();
    if (can_put) {
        update_trial(form, derived, catalogue, grid);
        draw_trial(*form.trial);
        can_put = form.trial->change.has_value();
    } else {
        draw_wrapped("A member runs from one plane to a later one", Type::text, colour::amber);
    }
    draw_wrapped("Its legs point into the cabinet by themselves; T turns it over afterwards.",
                 Type::small, colour::quiet);
    const auto answer = draw_form_answers(
        form.trouble, {.verb = "Add", .can_put = can_put, .is_choosing = is_in_list});
    if (answer.puts) outcome.change = form.trial->change;
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
