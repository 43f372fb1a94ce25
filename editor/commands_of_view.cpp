// How the view looks, and the window.
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

#include <algorithm>
#include <array>

namespace editor {
namespace {

void scale_text(Desk& desk, float factor) {
    desk.ui.text_scale = std::clamp(desk.ui.text_scale * factor, least_text_scale, most_text_scale);
}

constexpr std::array view_table{
    Command{"view.fit",
            "See all",
            Menu::view,
            {'F'},
            always,
            [](Desk& d) { d.ui.view.wants_fit = true; }},
    Command{"view.front",
            "From the front",
            Menu::view,
            {'1'},
            always,
            [](Desk& d) { see_from(d, engine::ViewFrom::front); }},
    Command{"view.left",
            "From the left",
            Menu::view,
            {'2'},
            always,
            [](Desk& d) { see_from(d, engine::ViewFrom::left); }},
    Command{"view.top",
            "From above",
            Menu::view,
            {'3'},
            always,
            [](Desk& d) { see_from(d, engine::ViewFrom::top); }},
    Command{"view.corner",
            "From the corner",
            Menu::view,
            {'4'},
            always,
            [](Desk& d) { see_from(d, engine::ViewFrom::corner); }},
    Command{"view.behind",
            "From behind",
            Menu::view,
            {'5'},
            always,
            [](Desk& d) { see_from_across(d, engine::ViewFrom::front); }},
    Command{"view.right",
            "From the right",
            Menu::view,
            {'6'},
            always,
            [](Desk& d) { see_from_across(d, engine::ViewFrom::left); }},
    Command{"view.measure", "Take a measure", Menu::view, {'D'}, can_be_seen, take_measure_or_not},
    Command{"view.alone",
            "One piece alone, or all again",
            Menu::view,
            {'A'},
            can_be_alone,
            see_alone_or_all},
    Command{"view.cut",
            "Cut through, or whole again",
            Menu::view,
            {'C', false, true},
            can_be_seen,
            cut_through_or_not},
    Command{"view.cut_at",
            "Type where the cut is",
            Menu::view,
            {'V', false, true},
            is_cut,
            [](Desk& d) { d.ui.seeing.cut_wants_typing = true; }},
    Command{"view.cut_axis",
            "Cut along the next axis",
            Menu::view,
            {'X', false, true},
            is_cut,
            cut_along_next_axis},
    Command{"view.cut_side",
            "Other side of the cut",
            Menu::view,
            {'O', false, true},
            is_cut,
            turn_cut_over},
    Command{"view.apart",
            "Pull apart, or put together",
            Menu::view,
            {'A', false, true},
            has_pieces,
            pull_apart_or_together},
    Command{"view.colours",
            "Colours that tell the next thing",
            Menu::view,
            {'K', false, true},
            has_pieces,
            colour_by_next},
    Command{"view.marks",
            "Marks on the pieces",
            Menu::view,
            {'M', false, true},
            has_pieces,
            [](Desk& d) { d.ui.seeing.shows_marks = !d.ui.seeing.shows_marks; }},
    Command{"view.room",
            "Room faint, away or as it is",
            Menu::view,
            {'R', false, true},
            has_room,
            see_through_room},
    Command{"view.panels",
            "Panels faint, away or as they are",
            Menu::view,
            {'P', false, true},
            has_panels,
            see_through_panels},
    Command{"view.lines",
            "Line drawing",
            Menu::view,
            {'L', false, true},
            can_be_seen,
            [](Desk& d) {
                auto& way = d.ui.seeing.way;
                way.as_line_drawing = !way.as_line_drawing;
            }},
    Command{"view.as_it_is",
            "See everything as it is",
            Menu::view,
            {'F', false, true},
            is_seen_otherwise,
            see_as_it_is},
    Command{"view.larger",
            "Larger text",
            Menu::view,
            {key::equal, true},
            always,
            [](Desk& d) { scale_text(d, 1.1F); }},
    Command{"view.smaller",
            "Smaller text",
            Menu::view,
            {key::minus, true},
            always,
            [](Desk& d) { scale_text(d, 1.0F / 1.1F); }},
    Command{"view.first_steps",
            "First steps",
            Menu::view,
            {},
            always,
            [](Desk& d) {
                auto& hidden = d.ui.help.has_dismissed_steps;
                hidden = !hidden;
            }},
    Command{"view.words",
            "Words of the trade\xE2\x80\xA6",
            Menu::view,
            {'H', true},
            always,
            [](Desk& d) { d.ui.dialog = TradeWords{}; }},
    Command{"view.dark",
            "Dark or light",
            Menu::view,
            {'D', true, true},
            always,
            [](Desk& d) { d.ui.theme = d.ui.theme == Theme::dark ? Theme::light : Theme::dark; }},
};

}  // namespace

std::span<const Command> view_commands() { return view_table; }

}  // namespace editor
