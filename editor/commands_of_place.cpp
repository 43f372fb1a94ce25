// The places of the job, and what is done in each; its table.
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

constexpr std::array place_table{
    Command{"place.measure",
            "Measure",
            Menu::none,
            {'1', true},
            always,
            [](Desk& d) { go_to_place(d, Place::measure); }},
    Command{"place.lay_out",
            "Lay out",
            Menu::none,
            {'2', true},
            always,
            [](Desk& d) { go_to_place(d, Place::lay_out); }},
    Command{"place.join",
            "Join",
            Menu::none,
            {'3', true},
            always,
            [](Desk& d) { go_to_place(d, Place::join); }},
    Command{"place.prove",
            "Prove",
            Menu::none,
            {'4', true},
            always,
            [](Desk& d) { go_to_place(d, Place::prove); }},
    Command{"place.buy",
            "Buy",
            Menu::none,
            {'5', true},
            always,
            [](Desk& d) { go_to_place(d, Place::buy); }},
    Command{"place.make",
            "Make",
            Menu::none,
            {'6', true},
            always,
            [](Desk& d) { go_to_place(d, Place::make); }},
    Command{
        "prove.checks", "What was checked", Menu::none, {}, always, show_sheet<ProveSheet::checks>},
    Command{"join.all_alike",
            "Choose all joints like this one",
            Menu::none,
            {},
            has_alike_joints,
            choose_alike_joints},
    Command{"lay_out.fold_dimensions",
            "Fold or unfold the dimensions",
            Menu::none,
            {},
            is_laying_out,
            fold_or_unfold<LayOutSection::dimensions>},
    Command{"lay_out.fold_findings",
            "Fold or unfold the findings",
            Menu::none,
            {},
            is_laying_out,
            fold_or_unfold<LayOutSection::findings>},
    Command{"lay_out.fold_made_of",
            "Fold or unfold what the frames are made of",
            Menu::none,
            {},
            is_laying_out,
            fold_or_unfold<LayOutSection::made_of>},
    Command{"prove.room",
            "Clearances in the room",
            Menu::none,
            {},
            always,
            show_sheet<ProveSheet::room>},
    Command{"prove.square",
            "Diagonals for the tape",
            Menu::none,
            {},
            always,
            show_sheet<ProveSheet::square>},
    Command{"prove.as_built",
            "Openings as built",
            Menu::none,
            {},
            always,
            show_sheet<ProveSheet::as_built>},
    Command{"make.cuts", "Cut list", Menu::none, {}, always, show_table<ShopTable::cuts>},
    Command{"make.saw", "At the saw", Menu::none, {}, always, show_table<ShopTable::saw>},
    Command{"buy.supplier",
            "New supplier\xE2\x80\xA6",
            Menu::project,
            {},
            always,
            [](Desk& d) { d.ui.dialog = new_supplier_form(project_of(d)); }},
    Command{"saw.bought", "The bars are bought", Menu::none, {}, has_bars_to_buy, buy_bars},
    Command{"saw.tick", "Tick the next cut", Menu::none, {}, has_next_cut, tick_next_cut},
    Command{"saw.anew", "Plan the cuts anew", Menu::none, {}, has_planned_cuts, plan_cuts_anew},
    Command{"saw.rack", "Rack the offcuts", Menu::none, {}, has_offcuts_to_rack, rack_offcuts},
    Command{"make.drilling", "Drilling", Menu::none, {}, always, show_table<ShopTable::drills>},
    Command{"make.fasteners",
            "What is set where",
            Menu::none,
            {},
            always,
            show_table<ShopTable::fasteners>},
    Command{"table.find", "Find in the table", Menu::none, {'L', true}, has_table, find_in_table},
    Command{
        "table.sort", "Sort the table by its next column", Menu::none, {}, has_table, sort_table},
    Command{"table.turn", "Turn the table's order round", Menu::none, {}, has_table, turn_table},
    Command{"table.next",
            "Choose the next line of the table",
            Menu::none,
            {key::down},
            has_table,
            choose_next_line},
    Command{"table.before",
            "Choose the line before",
            Menu::none,
            {key::up},
            has_table,
            choose_line_before},
};

}  // namespace

std::span<const Command> place_commands() { return place_table; }

}  // namespace editor
