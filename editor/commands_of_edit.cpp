// Undo, what is chosen, findings, members.
#include "editor/choosing_commands.h"
#include "editor/command_menus.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/laying_out_commands.h"
#include "editor/place_commands.h"
#include "editor/saw_commands.h"
#include "editor/scan_loader.h"
#include "editor/seeing_commands.h"
#include "editor/sketch_commands.h"
#include "editor/turned_members.h"
#include "editor/typing.h"
#include "editor/window_look.h"

#include <array>

namespace editor {
namespace {

constexpr std::array edit_table{
    Command{"edit.undo",
            "Undo",
            Menu::edit,
            {'Z', true},
            [](const Desk& d) { return d.history.can_undo(); },
            [](Desk& d) {
                d.history.undo();
                d.ui.notice.reset();
            }},
    Command{"edit.redo",
            "Redo",
            Menu::edit,
            {'Y', true},
            [](const Desk& d) { return d.history.can_redo(); },
            [](Desk& d) {
                d.history.redo();
                d.ui.notice.reset();
            },
            {'Z', true, true}},
    Command{"edit.find",
            "Find what can be done\xE2\x80\xA6",
            Menu::edit,
            {key::f1},
            always,
            [](Desk& d) { d.ui.dialog = CommandFinder{}; }},
    Command{"edit.let_go", "Choose nothing", Menu::edit, {key::escape}, has_something, let_go},
    Command{"edit.remove",
            "Remove what is chosen",
            Menu::edit,
            {key::remove},
            [](const Desk& d) { return has_chosen_member(d) || has_chosen_layout(d); },
            [](Desk& d) { has_chosen_member(d) ? remove_members(d) : remove_layout(d); }},
    Command{"edit.turn",
            "Turn the chosen bars over",
            Menu::edit,
            {'T'},
            has_chosen_member,
            [](Desk& d) {
                static_cast<void>(submit(d, turn_change(project_of(d), d.ui.selection.pieces)));
            }},
    Command{"edit.next_finding",
            "Open the next finding",
            Menu::edit,
            {'U', true},
            has_findings,
            open_next_finding},
    Command{"edit.mend",
            "Mend the open finding",
            Menu::edit,
            {'U', true, true},
            has_mend,
            mend_open_finding},
    Command{"edit.flip_x",
            "Flip legs left or right",
            Menu::edit,
            {},
            has_chosen_member,
            [](Desk& d) { flip_chosen_legs(d, model::Axis::x); }},
    Command{"edit.flip_y",
            "Flip legs to front or back",
            Menu::edit,
            {},
            has_chosen_member,
            [](Desk& d) { flip_chosen_legs(d, model::Axis::y); }},
    Command{"edit.flip_z",
            "Flip legs up or down",
            Menu::edit,
            {},
            has_chosen_member,
            [](Desk& d) { flip_chosen_legs(d, model::Axis::z); }},
    Command{"edit.end_for_end",
            "Turn end for end",
            Menu::edit,
            {},
            has_chosen_member,
            turn_chosen_end_for_end},
    Command{"edit.split", "Split at\xE2\x80\xA6", Menu::edit, {}, has_chosen_member, begin_split},
    Command{"edit.join",
            "Join two members",
            Menu::edit,
            {},
            has_two_chosen_members,
            join_chosen_members},
    Command{"dimension.new",
            "New dimension\xE2\x80\xA6",
            Menu::edit,
            {'D', true},
            always,
            [](Desk& d) { d.ui.dialog = DimensionForm{}; }},
};

}  // namespace

std::span<const Command> edit_commands() { return edit_table; }

}  // namespace editor
