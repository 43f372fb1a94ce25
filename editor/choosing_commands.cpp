#include "editor/choosing_commands.h"

#include "editor/by_name.h"
#include "editor/seeing_commands.h"
#include "editor/sketch_commands.h"

#include <algorithm>

namespace editor {
namespace {

const model::Obstacle* chosen_obstacle(const Desk& desk) {
    for (const auto& subject : desk.ui.selection.subjects) {
        if (subject.kind != model::SubjectKind::obstacle) continue;
        return by_name(project_of(desk).room, subject.name);
    }
    return nullptr;
}

}  // namespace

bool has_something(const Desk& desk) {
    const auto& ui = desk.ui;
    return !ui.selection.pieces.empty() || !ui.selection.subjects.empty() || ui.hand.refused ||
           ui.placing || has_way_to_end(desk) || has_sketch(desk);
}

bool has_chosen_frame(const Desk& desk) { return !desk.ui.selection.pieces.empty(); }
bool has_chosen_member(const Desk& desk) {
    const auto& pieces = desk.ui.selection.pieces;
    return std::any_of(pieces.begin(), pieces.end(),
                       [](const PieceName& name) { return !name.member.empty(); });
}

bool has_chosen_obstacle(const Desk& desk) { return chosen_obstacle(desk) != nullptr; }

void change_obstacle(Desk& desk) {
    if (const auto* obstacle = chosen_obstacle(desk))
        open_in_measure(desk, obstacle_form(*obstacle));
}

void remove_obstacle(Desk& desk) {
    const auto* obstacle = chosen_obstacle(desk);
    if (obstacle == nullptr) return;
    if (submit(desk, change_of(model::RemoveObstacle{obstacle->name}))) desk.ui.selection = {};
}

void remove_members(Desk& desk) {
    Change change;
    std::vector<PieceName> done;  // a split member is chosen once for each part
    for (const auto& piece : desk.ui.selection.pieces) {
        const PieceName whole{piece.frame, piece.member, 0};
        if (piece.member.empty() || std::find(done.begin(), done.end(), whole) != done.end()) {
            continue;
        }
        done.push_back(whole);
        change.edits.emplace_back(model::RemoveMember{piece.frame, piece.member});
    }
    if (done.size() > 1) change.label = "Remove " + std::to_string(done.size()) + " members";
    if (submit(desk, change)) desk.ui.selection = {};
}

void let_go(Desk& desk) {
    if (give_up_sketch(desk) || end_way_of_seeing(desk)) return;
    desk.ui.selection = {};
    desk.ui.notice.reset();
    desk.ui.hand.refused.reset();
    desk.ui.placing.reset();
}

}  // namespace editor
