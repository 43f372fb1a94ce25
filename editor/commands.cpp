#include "editor/commands.h"

#include "editor/by_name.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/laying_out_commands.h"
#include "editor/scan_loader.h"
#include "editor/seeing_commands.h"
#include "editor/sketch_commands.h"
#include "editor/turned_members.h"
#include "editor/typing.h"
#include "editor/window_look.h"

#include <imgui.h>

#include <algorithm>
#include <array>

namespace editor {
namespace {

bool always(const Desk&) { return true; }
bool has_frames(const Desk& desk) { return !project_of(desk).frames.empty(); }
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

void open_starter(Desk& desk, StarterKind kind) {
    desk.ui.dialog = starter_form(kind, derived(desk), *desk.catalogue);
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

void scale_text(Desk& desk, float factor) {
    desk.ui.text_scale = std::clamp(desk.ui.text_scale * factor, least_text_scale, most_text_scale);
}

void go_to_place(Desk& desk, Place place) {
    desk.ui.place = place;
    desk.ui.left_width = 0.0F;
}

const model::Obstacle* chosen_obstacle(const Desk& desk) {
    for (const auto& subject : desk.ui.selection.subjects) {
        if (subject.kind != model::SubjectKind::obstacle) continue;
        return by_name(project_of(desk).room, subject.name);
    }
    return nullptr;
}

bool has_chosen_obstacle(const Desk& desk) { return chosen_obstacle(desk) != nullptr; }

void open_in_measure(Desk& desk, Dialog dialog) {
    if (desk.ui.place != Place::measure) go_to_place(desk, Place::measure);
    desk.ui.dialog = std::move(dialog);
}

template <ObstacleKind kind>
void begin_obstacle(Desk& desk) {
    open_in_measure(desk, new_obstacle_form(derived(desk), kind));
}

void change_obstacle(Desk& desk) {
    if (const auto* obstacle = chosen_obstacle(desk))
        open_in_measure(desk, obstacle_form(*obstacle));
}

void remove_obstacle(Desk& desk) {
    const auto* obstacle = chosen_obstacle(desk);
    if (obstacle == nullptr) return;
    if (submit(desk, change_of(model::RemoveObstacle{obstacle->name}))) desk.ui.selection = {};
}

template <ProveSheet sheet>
void show_sheet(Desk& desk) {
    if (desk.ui.place != Place::prove) go_to_place(desk, Place::prove);
    desk.ui.prove.sheet = sheet;
    desk.ui.prove.shown_row.reset();
}

template <ShopTable which>
void show_table(Desk& desk) {
    if (desk.ui.place != Place::make) go_to_place(desk, Place::make);
    desk.ui.make.table = which;
}

bool has_table(const Desk& desk) { return table_shown(desk.ui) != nullptr; }

void find_in_table(Desk& desk) { table_shown(desk.ui)->wants_search = true; }
void sort_table(Desk& desk) { sort_by_next(*table_shown(desk.ui)); }
void turn_table(Desk& desk) { turn_round(*table_shown(desk.ui)); }
void choose_next_line(Desk& desk) { table_shown(desk.ui)->step = 1; }
void choose_line_before(Desk& desk) { table_shown(desk.ui)->step = -1; }
bool has_findings(const Desk& desk) {
    return desk.derived_memo && !desk.derived_memo->finding_groups.empty();
}

void open_next_finding(Desk& desk) {
    const auto& now = derived(desk);
    if (!open_next(now, desk.ui.cards)) return;
    if (desk.ui.place != Place::lay_out) go_to_place(desk, Place::lay_out);
    const auto& concerns = now.finding_groups[*open_group(now, desk.ui.cards)].concerns;
    desk.ui.selection = selection_of_subjects(*now.project, now.resolved, concerns);
}

// The first button of the card that is open; null where there is none yet.
const model::Mend* first_mend(const Desk& desk) {
    if (!desk.derived_memo) return nullptr;
    const auto open = open_group(*desk.derived_memo, desk.ui.cards);
    const auto& board = desk.ui.help.mends;
    if (!open || board.of != worked_out_of(*desk.derived_memo)) return nullptr;
    const auto card = board.cards.find(*open);
    if (card == board.cards.end() || card->second.kept.empty()) return nullptr;
    return &card->second.kept.front();
}

bool has_mend(const Desk& desk) { return first_mend(desk) != nullptr; }

void mend_open_finding(Desk& desk) {
    if (const auto* mend = first_mend(desk)) static_cast<void>(submit(desk, change_of_mend(*mend)));
}

constexpr std::array table{
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

std::string key_name(int code) {
    switch (code) {
        case key::escape:
            return "Esc";
        case key::remove:
            return "Delete";
        case key::f1:
            return "F1";
        case key::down:
            return "Down";
        case key::up:
            return "Up";
        case key::equal:
            return "+";
        default:
            return std::string(1, static_cast<char>(code));
    }
}

bool belongs_to_text(const Shortcut& keys) {
    if (keys.key == key::f1) return false;
    if (!keys.control) return true;
    constexpr std::string_view of_text = "ACVXYZ";
    return keys.key < 128 && of_text.find(static_cast<char>(keys.key)) != std::string_view::npos;
}

// On many keyboards + is the shifted = and has no key of its own.
bool needs_shift_somewhere(int code) { return code == key::equal; }

bool is_pressed_now(const Shortcut& keys) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool is_shift_right = keys.shift == io.KeyShift || needs_shift_somewhere(keys.key);
    return keys.key != 0 && keys.control == io.KeyCtrl && is_shift_right && !io.KeyAlt &&
           ImGui::IsKeyPressed(keys.key, false);
}

}  // namespace

std::span<const Command> commands() { return table; }

const Command* find_command(std::string_view id) {
    const auto at = std::find_if(table.begin(), table.end(),
                                 [&](const Command& command) { return command.id == id; });
    return at == table.end() ? nullptr : &*at;
}

std::string shortcut_text(const Shortcut& shortcut) {
    if (shortcut.key == 0) return {};
    return std::string(shortcut.control ? "Ctrl+" : "") + (shortcut.shift ? "Shift+" : "") +
           key_name(shortcut.key);
}

void run_command(Desk& desk, std::string_view id) {
    const Command* command = find_command(id);
    if (command != nullptr && command->enabled(desk)) command->run(desk);
}

void run_pressed_commands(Desk& desk) {
    if (is_open(desk.ui.dialog)) return;
    const bool is_typing = ImGui::GetIO().WantTextInput;
    for (const auto& command : table) {
        const auto& keys = is_pressed_now(command.keys) ? command.keys : command.also;
        if (!is_pressed_now(keys) || (is_typing && belongs_to_text(keys))) continue;
        run_command(desk, command.id);
        return;
    }
}

}  // namespace editor
