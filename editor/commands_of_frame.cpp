// Frames, what they are laid out by, the pencil.
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

void open_starter(Desk& desk, StarterKind kind) {
    desk.ui.dialog = starter_form(kind, derived(desk), *desk.catalogue);
}

constexpr std::array frame_table{
    Command{"frame.box",
            "New box frame\xE2\x80\xA6",
            Menu::frame,
            {'B', true},
            always,
            [](Desk& d) { open_starter(d, StarterKind::box); }},
    Command{"frame.stepped",
            "New stepped frame\xE2\x80\xA6",
            Menu::frame,
            {'B', true, true},
            always,
            [](Desk& d) { open_starter(d, StarterKind::stepped); }},
    Command{"frame.planes",
            "New frame of planes alone\xE2\x80\xA6",
            Menu::frame,
            {},
            always,
            [](Desk& d) { open_starter(d, StarterKind::planes); }},
    Command{"sketch.members",
            "Put members",
            Menu::frame,
            {'M'},
            has_frames,
            sketch_with<SketchHand::members>},
    Command{"sketch.braces",
            "Draw a brace",
            Menu::frame,
            {'X'},
            has_frames,
            sketch_with<SketchHand::braces>},
    Command{
        "sketch.bays", "Paint bays", Menu::frame, {'B'}, has_frames, sketch_with<SketchHand::bays>},
    Command{"sketch.planes",
            "Set planes",
            Menu::frame,
            {'P'},
            has_frames,
            sketch_with<SketchHand::planes>},
    Command{"member.new",
            "New member\xE2\x80\xA6",
            Menu::frame,
            {'M', true},
            has_frames,
            [](Desk& d) { d.ui.dialog = new_member_form(derived(d), d.ui.sketch); }},
    Command{"plane.new",
            "New layout plane\xE2\x80\xA6",
            Menu::frame,
            {'P', true},
            has_frames,
            [](Desk& d) { d.ui.dialog = new_plane_form(derived(d), d.ui.sketch); }},
    Command{"bay.new",
            "New bay\xE2\x80\xA6",
            Menu::frame,
            {'J', true},
            has_frames,
            [](Desk& d) { d.ui.dialog = new_bay_form(derived(d), d.ui.sketch); }},
    Command{"frame.step_over",
            "Step over an obstacle\xE2\x80\xA6",
            Menu::frame,
            {'G', true},
            [](const Desk& d) { return can_step_over(project_of(d)); },
            [](Desk& d) { d.ui.dialog = new_step_form(derived(d)); }},
    Command{"frame.place",
            "Place the frame\xE2\x80\xA6",
            Menu::frame,
            {'G', true, true},
            [](const Desk& d) { return !project_of(d).frames.empty(); },
            [](Desk& d) {
                const auto& chosen = d.ui.selection.pieces;
                d.ui.dialog = new_place_form(project_of(d),
                                             chosen.empty() ? std::string() : chosen.front().frame);
            }},
    Command{"frame.lean",
            "Lean with a wall\xE2\x80\xA6",
            Menu::frame,
            {},
            [](const Desk& d) { return can_lean(project_of(d)); },
            [](Desk& d) { d.ui.dialog = new_lean_form(derived(d)); }},
    Command{"frame.mirror",
            "Mirror left to right\xE2\x80\xA6",
            Menu::frame,
            {},
            has_frames,
            begin_mirror},
    Command{"frame.repeat_bay",
            "Repeat a bay\xE2\x80\xA6",
            Menu::frame,
            {},
            [](const Desk& d) { return has_bays(project_of(d)); },
            begin_repeat},
    Command{"frame.copy", "Copy the frame\xE2\x80\xA6", Menu::frame, {}, has_frames, begin_copy},
    Command{"frame.take_out_plane",
            "Remove a plane with what stands on it\xE2\x80\xA6",
            Menu::frame,
            {},
            has_frames,
            [](Desk& d) { begin_take_out(d, false); }},
    Command{"frame.take_out_bay",
            "Remove a bay with what is in it\xE2\x80\xA6",
            Menu::frame,
            {},
            [](const Desk& d) { return has_bays(project_of(d)); },
            [](Desk& d) { begin_take_out(d, true); }},
    Command{"frame.remove",
            "Remove the chosen frame",
            Menu::frame,
            {},
            has_chosen_frame,
            [](Desk& d) {
                const std::string frame = d.ui.selection.pieces.front().frame;
                if (submit(d, change_of(model::RemoveFrame{frame}))) d.ui.selection = {};
            }},
};

}  // namespace

std::span<const Command> frame_commands() { return frame_table; }

}  // namespace editor
