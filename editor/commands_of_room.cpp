// What stands in the van.
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

constexpr std::array room_table{
    Command{"room.well_by_tape",
            "Wheel well by the tape\xE2\x80\xA6",
            Menu::room,
            {'W', true},
            always,
            [](Desk& d) { open_in_measure(d, new_well_survey(derived(d))); }},
    Command{"room.wall_by_tape",
            "Wall by the tape\xE2\x80\xA6",
            Menu::room,
            {'W', true, true},
            always,
            [](Desk& d) { open_in_measure(d, new_wall_survey(derived(d))); }},
    Command{"room.wheel_well",
            "New wheel well\xE2\x80\xA6",
            Menu::room,
            {},
            always,
            begin_obstacle<ObstacleKind::wheel_well>},
    Command{"room.wall",
            "New wall\xE2\x80\xA6",
            Menu::room,
            {},
            always,
            begin_obstacle<ObstacleKind::wall>},
    Command{"room.ceiling",
            "New ceiling\xE2\x80\xA6",
            Menu::room,
            {},
            always,
            begin_obstacle<ObstacleKind::ceiling>},
    Command{"room.box",
            "New box in the room\xE2\x80\xA6",
            Menu::room,
            {},
            always,
            begin_obstacle<ObstacleKind::box>},
    Command{"room.pipe",
            "New pipe or tank\xE2\x80\xA6",
            Menu::room,
            {},
            always,
            begin_obstacle<ObstacleKind::pipe_or_tank>},
    Command{"room.door",
            "New door swing\xE2\x80\xA6",
            Menu::room,
            {},
            always,
            begin_obstacle<ObstacleKind::door_swing>},
    Command{"room.kept_clear",
            "New place that stays clear\xE2\x80\xA6",
            Menu::room,
            {},
            always,
            begin_obstacle<ObstacleKind::kept_clear>},
    Command{"room.scan", "Bring in a scan\xE2\x80\xA6", Menu::room, {}, always, browse_for_scan},
    Command{"room.stop_reading",
            "Stop reading scans",
            Menu::none,
            {},
            [](const Desk& d) { return !scan_words(d).empty(); },
            stop_scan},
    Command{"room.read_again",
            "Read scans again that were not read",
            Menu::room,
            {},
            has_unread_scans,
            read_scans_again},
    Command{"room.change",
            "Change the chosen obstacle\xE2\x80\xA6",
            Menu::room,
            {'O'},
            has_chosen_obstacle,
            change_obstacle},
    Command{"room.remove",
            "Remove the chosen obstacle",
            Menu::room,
            {key::remove, false, true},
            has_chosen_obstacle,
            remove_obstacle},
};

}  // namespace

std::span<const Command> room_commands() { return room_table; }

}  // namespace editor
