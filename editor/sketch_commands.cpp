#include "editor/sketch_commands.h"

#include "editor/by_name.h"
#include "model/resolve/piece_subject.h"

#include <algorithm>

namespace editor {
namespace {

using model::SubjectKind;

bool is_layout(const model::Subject& subject) {
    return subject.kind == SubjectKind::plane || subject.kind == SubjectKind::bay ||
           subject.kind == SubjectKind::diagonal || subject.kind == SubjectKind::leaning;
}

// A dimension that nothing stands on any more goes with its plane.
void add_removal_of_plane(Change& change,
                          const model::Project& project,
                          const model::Subject& subject) {
    const auto* frame = by_name(project.frames, subject.frame);
    const auto* plane = frame == nullptr ? nullptr : by_name(frame->planes, subject.name);
    change.edits.emplace_back(model::RemovePlane{subject.frame, subject.name});
    if (plane == nullptr || by_name(project.dimensions, plane->position) == nullptr) return;
    Change with_dimension = change;
    with_dimension.edits.emplace_back(model::RemoveDimension{plane->position});
    if (project_after(project, with_dimension)) change = std::move(with_dimension);
}

void add_removal(Change& change, const model::Project& project, const model::Subject& subject) {
    if (subject.kind == SubjectKind::plane) add_removal_of_plane(change, project, subject);
    if (subject.kind == SubjectKind::bay)
        change.edits.emplace_back(model::RemoveBay{subject.frame, subject.name});
    if (subject.kind == SubjectKind::diagonal)
        change.edits.emplace_back(model::RemoveDiagonal{subject.frame, subject.name});
    if (subject.kind == SubjectKind::leaning)
        change.edits.emplace_back(model::RemoveLeaning{subject.frame, subject.name});
}

// The frame of what is chosen, so that the hand begins there.
std::string chosen_frame(const Desk& desk) {
    const auto& selection = desk.ui.selection;
    if (!selection.pieces.empty()) return selection.pieces.front().frame;
    return selection.subjects.empty() ? std::string() : selection.subjects.front().frame;
}

}  // namespace

void begin_sketch(Desk& desk, SketchHand hand) {
    auto& sketch = desk.ui.sketch;
    if (desk.ui.place != Place::lay_out) {
        desk.ui.place = Place::lay_out;
        desk.ui.left_width = 0.0F;
    }
    const auto frame = chosen_frame(desk);
    if (!frame.empty()) sketch.frame = frame;
    take_hand(sketch, sketch.hand == hand ? SketchHand::none : hand);
}

bool has_sketch(const Desk& desk) { return desk.ui.sketch.hand != SketchHand::none; }

bool give_up_sketch(Desk& desk) {
    auto& sketch = desk.ui.sketch;
    if (sketch.hand == SketchHand::none) return false;
    if (sketch.planes.is_given_up) return true;  // its tag has seen the key already
    sketch.planes.refused.reset();
    give_up(sketch);
    return true;
}

// Braces and leaning members are chosen by their pieces in the view and in tables.
std::vector<model::Subject> chosen_layout(const Desk& desk) {
    std::vector<model::Subject> chosen;
    const auto add = [&](const model::Subject& subject) {
        if (is_layout(subject) && std::ranges::find(chosen, subject) == chosen.end())
            chosen.push_back(subject);
    };
    std::ranges::for_each(desk.ui.selection.subjects, add);
    if (!desk.derived_memo) return chosen;
    const auto& now = *desk.derived_memo;
    for (const auto i : selected_pieces(*now.project, now.resolved, desk.ui.selection)) {
        const auto& piece = now.resolved.pieces[i];
        add(model::piece_subject(now.project->frames[piece.frame], piece));
    }
    return chosen;
}

bool has_chosen_layout(const Desk& desk) { return !chosen_layout(desk).empty(); }

void remove_layout(Desk& desk) {
    Change change;
    const auto& project = project_of(desk);
    std::size_t count = 0;
    for (const auto& subject : chosen_layout(desk)) {
        add_removal(change, project, subject);
        ++count;
        if (subject.kind == SubjectKind::plane) change.label = "Remove plane " + subject.name;
    }
    if (count > 1) change.label = "Remove " + std::to_string(count) + " things";
    if (submit(desk, change)) desk.ui.selection = {};
}

}  // namespace editor
