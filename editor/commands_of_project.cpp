// Files, the export, leaving.
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

constexpr std::array project_table{
    Command{"project.new",
            "New project",
            Menu::project,
            {'N', true},
            always,
            [](Desk& d) { wish(d, {Intent::Kind::begin_new}); }},
    Command{"project.open",
            "Open\xE2\x80\xA6",
            Menu::project,
            {'O', true},
            always,
            [](Desk& d) { wish(d, {Intent::Kind::browse}); }},
    Command{"project.save",
            "Save",
            Menu::project,
            {'S', true},
            always,
            [](Desk& d) {
                take_typing(d);
                save_or_browse(d);
            }},
    Command{"project.save_as",
            "Save under another name\xE2\x80\xA6",
            Menu::project,
            {'S', true, true},
            always,
            [](Desk& d) {
                take_typing(d);
                browse_to_save(d);
            }},
    Command{"project.export",
            "Export the schedules\xE2\x80\xA6",
            Menu::project,
            {'E', true},
            has_frames,
            [](Desk& d) {
                take_typing(d);
                wish_to_export(d);
            }},
    Command{"project.name",
            "Name and note\xE2\x80\xA6",
            Menu::project,
            {},
            always,
            [](Desk& d) {
                d.ui.dialog = TitleForm{.name = project_of(d).name, .note = project_of(d).note};
            }},
    Command{"project.leave",
            "Leave",
            Menu::project,
            {'Q', true},
            always,
            [](Desk& d) { wish(d, {Intent::Kind::leave}); }},
};

}  // namespace

std::span<const Command> project_commands() { return project_table; }

}  // namespace editor
