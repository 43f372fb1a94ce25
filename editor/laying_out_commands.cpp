#include "editor/laying_out_commands.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace editor {
namespace {

// Each once, though a split member is chosen once for each of its pieces.
std::vector<PieceName> chosen_members(const Desk& desk) {
    std::vector<PieceName> members;
    for (const auto& piece : desk.ui.selection.pieces) {
        const PieceName whole{piece.frame, piece.member, 0};
        if (piece.member.empty() || std::ranges::count(members, whole) > 0) continue;
        members.push_back(whole);
    }
    return members;
}

std::string chosen_frame(const Desk& desk) {
    const auto& pieces = desk.ui.selection.pieces;
    return pieces.empty() ? std::string() : pieces.front().frame;
}

// Of the first frame that they belong to.
std::vector<std::string> chosen_names(const Desk& desk) {
    std::vector<std::string> names;
    for (const auto& member : chosen_members(desk)) {
        if (member.frame == chosen_frame(desk)) names.push_back(member.member);
    }
    return names;
}

template <class Bars>
void add_name(const Bars& bars, model::Index number, std::vector<std::string>& names) {
    if (number >= bars.size()) return;
    const auto& name = bars[number].name;
    if (std::ranges::count(names, name) == 0) names.push_back(name);
}

// The same with braces and leaning members, which are no members.
std::vector<std::string> chosen_bars(Desk& desk) {
    auto names = chosen_names(desk);
    const Derived& now = derived(desk);
    for (const auto i : selected_pieces(*now.project, now.resolved, desk.ui.selection)) {
        const auto& piece = now.resolved.pieces[i];
        const auto& frame = now.project->frames[piece.frame];
        if (frame.name != chosen_frame(desk)) continue;
        if (piece.kind == model::PieceKind::brace) add_name(frame.diagonals, piece.stated, names);
        if (piece.kind == model::PieceKind::leaning) add_name(frame.leaning, piece.stated, names);
    }
    return names;
}

}  // namespace

void flip_chosen_legs(Desk& desk, model::Axis along) {
    const model::FlipLegs edit{chosen_frame(desk), chosen_names(desk), along};
    static_cast<void>(submit(desk, change_of(edit)));
}

void turn_chosen_end_for_end(Desk& desk) {
    Change change;
    for (const auto& member : chosen_members(desk)) {
        change.edits.emplace_back(model::TurnEndForEnd{member.frame, member.member});
    }
    if (change.edits.size() > 1) {
        change.label = "Turn " + std::to_string(change.edits.size()) + " members end for end";
    }
    static_cast<void>(submit(desk, change));
}

bool has_two_chosen_members(const Desk& desk) {
    const auto members = chosen_members(desk);
    return members.size() == 2 && members[0].frame == members[1].frame;
}

void join_chosen_members(Desk& desk) {
    const auto names = chosen_names(desk);
    const model::JoinMembers edit{chosen_frame(desk), {names[0], names[1]}};
    if (submit(desk, change_of(edit))) desk.ui.selection = {};
}

void begin_split(Desk& desk) {
    const auto member = chosen_members(desk).front();
    desk.ui.dialog = new_split_form(derived(desk), member.frame, member.member);
}

void begin_mirror(Desk& desk) {
    desk.ui.dialog = new_mirror_form(derived(desk), chosen_frame(desk), chosen_bars(desk));
}

void begin_repeat(Desk& desk) {
    desk.ui.dialog = new_repeat_form(derived(desk), chosen_frame(desk));
}

void begin_copy(Desk& desk) { desk.ui.dialog = new_copy_form(derived(desk), chosen_frame(desk)); }

void begin_take_out(Desk& desk, bool is_of_bay) {
    desk.ui.dialog = new_take_out_form(derived(desk), chosen_frame(desk), is_of_bay);
}

}  // namespace editor
