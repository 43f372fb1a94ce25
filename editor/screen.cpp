#include "editor/screen.h"

#include "editor/bench_desk.h"
#include "editor/bench_saw.h"
#include "editor/by_name.h"
#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/dialogs/draw_dialog.h"
#include "editor/kit/hover_help.h"
#include "editor/kit/widgets.h"
#include "editor/obstacle_words.h"
#include "editor/paper_desk.h"
#include "editor/places/consequences.h"
#include "editor/places/first_steps_card.h"
#include "editor/places/lay_out.h"
#include "editor/places/measure.h"
#include "editor/places/piece_panel.h"
#include "editor/places/start_card.h"
#include "editor/places/top_bar.h"
#include "editor/purchase_desk.h"
#include "editor/scan_loader.h"
#include "editor/screen_areas.h"
#include "editor/seeing_commands.h"
#include "editor/seen_scene.h"
#include "editor/typing.h"
#include "editor/view/seeing_bar.h"
#include "editor/view/sketch_hand.h"
#include "editor/view/view_panel.h"

#include <imgui_internal.h>

#include <algorithm>

namespace editor {
namespace {

std::optional<Change> draw_place(const Area& area,
                                 Desk& desk,
                                 const Derived& now,
                                 std::string_view& asked) {
    auto& ui = desk.ui;
    switch (ui.place) {
        case Place::measure: {
            auto outcome = draw_measure(area, now, room_facts(desk),
                                        {ui.selection, ui.dialog, ui.saw, scan_words(desk)});
            if (!outcome.asked.empty()) asked = outcome.asked;
            return std::move(outcome.change);
        }
        case Place::lay_out:
            return draw_lay_out(
                area, now, *desk.catalogue,
                {ui.hand, ui.selection, ui.dialog, ui.stock_filter, ui.cards, ui.unfolded,
                 ui.sections, ui.help.mends, ui.place, desk.bands.get()});
        case Place::join: {
            auto change = draw_join(area, now, *desk.catalogue, ui.join, ui.selection);
            if (ui.join.prices.has_more && !ImGui::IsAnyMouseDown()) ui.goes_on = true;
            return change;
        }
        case Place::prove:
            return draw_prove(
                area,
                {now, *desk.catalogue,
                 ui.prove.sheet == ProveSheet::room ? &room_facts(desk) : nullptr},
                ui.prove, ui.selection,
                {*desk.catalogue, ui.help.mends, ui.dialog, ui.place, desk.bands.get()});
        case Place::buy:
            keep_buy_facts(desk);
            return draw_buy(area, {now, *desk.catalogue, buy_facts(desk)}, ui.purchase, ui.offers,
                            ui.saw, ui.selection, ui.dialog);
        case Place::make:
            if (ui.make.table == ShopTable::paper) tend_paper(desk);
            return draw_make(area, now, *desk.catalogue, ui.make, ui.selection);
    }
    return std::nullopt;
}

// Only what is chosen is asked for: at other places nobody waits for the rest.
const RoomFacts* facts_to_show(Desk& desk) {
    if (desk.ui.place == Place::measure) return &room_facts(desk);
    if (desk.ui.place == Place::prove && desk.ui.prove.shown_row) return nullptr;  // told there
    const auto& subjects = desk.ui.selection.subjects;
    const bool has_obstacle = std::ranges::any_of(subjects, [](const model::Subject& subject) {
        return subject.kind == model::SubjectKind::obstacle;
    });
    return has_obstacle ? &room_facts(desk) : nullptr;
}

void draw_ways_to_see(const Area& view, Desk& desk, const Derived& now, std::string_view& asked) {
    if (!can_be_seen(desk)) return;
    const auto& memo = seen(desk);
    const auto& hands = desk.ui.sketch.bar;  // stand above
    const float taken = hands.height > 0.0F ? hands.y + hands.height - view.y : 0.0F;
    const Area below{view.x, view.y + taken, view.width, view.height - taken};
    const auto pressed = draw_seeing_bar(
        {below, now, seen_scene(desk), memo.colours.legend, can_be_alone(desk), has_panels(desk)},
        desk.ui.seeing);
    if (!pressed.empty()) asked = pressed;
}

bool begins_with_frame(const Derived& now, Place place) {
    return now.project->frames.empty() && (place != Place::measure || now.project->room.empty());
}

// The edge between two panels, to be pulled.
float draw_splitter(const char* name, float x, const Area& beside) {
    const float reach = scaled(4);
    const StyleScope no_padding(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
    const StyleScope thin(ImGuiStyleVar_WindowMinSize, ImVec2(1, 1));
    const PanelScope panel(name, {x - reach, beside.y, 2 * reach, beside.height},
                           ImGuiWindowFlags_NoBackground, Layer::floating);
    ImGui::InvisibleButton("edge", {2 * reach, beside.height});
    log_item("edge");
    const bool hot = ImGui::IsItemHovered() || ImGui::IsItemActive();
    if (hot) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
    ImGui::GetWindowDrawList()->AddLine({x, beside.y}, {x, beside.y + beside.height},
                                        hot ? colour::dye : colour::line, scaled(hot ? 2 : 1));
    return ImGui::IsItemActive() ? ImGui::GetIO().MouseDelta.x : 0.0F;
}

void draw_splitters(const ScreenAreas& areas, UiState& ui) {
    const float left = draw_splitter("Left edge", areas.view.x, areas.view);
    if (left != 0.0F) ui.left_width = std::max(200.0F, (areas.left.width + left) / scaled(1));
    const float right = draw_splitter("Right edge", areas.right.x, areas.view);
    if (right != 0.0F) ui.right_width = std::max(200.0F, (areas.right.width - right) / scaled(1));
}

// A drag ends with the button, whatever became of the strip that was pulled.
void end_drag(Desk& desk) {
    auto& planes = desk.ui.sketch.planes;
    if (!ImGui::IsMouseDown(ImGuiMouseButton_Left)) {
        desk.ui.hand.dragged.reset();
        planes.dragged.reset();
        planes.is_given_up = false;
    }
    if (!desk.ui.hand.dragged && !planes.dragged) desk.history.end_merge();
}

// It is laid out as it will be built, and with one thing in hand.
void put_together(SeeingState& seeing) {
    seeing.tape.is_held = false;
    seeing.tape.first.reset();
    seeing.tape.under.reset();
    seeing.way.apart = 0.0F;
}

// Frames are laid out at their place alone; elsewhere no hand is at work.
SketchState* sketch_of(Desk& desk) {
    auto& sketch = desk.ui.sketch;
    if (desk.ui.place == Place::lay_out && !project_of(desk).frames.empty()) {
        if (sketch.hand != SketchHand::none) put_together(desk.ui.seeing);
        return &sketch;
    }
    if (sketch.hand != SketchHand::none) take_hand(sketch, SketchHand::none);
    sketch.bar = {};
    return nullptr;
}

// With the third point, and where its scan is gone or its place is left: nothing could be picked.
void end_placing(Desk& desk) {
    auto& placing = desk.ui.placing;
    if (!placing) return;
    const auto* obstacle = by_name(project_of(desk).room, placing->obstacle);
    const bool is_scan = obstacle != nullptr && kind_of(*obstacle) == ObstacleKind::scan;
    if (placing->points.size() >= 3 || !is_scan || desk.ui.place != Place::measure) {
        placing.reset();
    }
}

// A field of the same name in the project that came must not go on with the text of the one before.
void let_go_of_fields(UiState& ui) {
    if (ui.lets_go_of_fields) ImGui::ClearActiveID();
    ui.lets_go_of_fields = false;
}

// Its keys are its own: also the one that closes it in this frame.
bool has_popup(const UiState& ui) {
    return is_open(ui.dialog) ||
           ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel);
}

}  // namespace

void draw_screen(Desk& desk) {
    let_go_of_fields(desk.ui);
    desk.ui.goes_on = false;
    begin_typing_frame(desk);
    tend_scans(desk);
    tend_prices(desk);
    tend_purchases(desk);
    tend_bench(desk);
    const bool had_popup = has_popup(desk.ui);
    const Derived& now = derived(desk);
    tell_of_bench(desk);
    want_bands(desk);
    keep_nested(desk);
    tend_seeing(desk);
    auto& ui = desk.ui;
    begin_mends(ui.help.mends, now, !ImGui::IsAnyMouseDown());
    const ScreenAreas areas = screen_areas(ImGui::GetIO().DisplaySize, ui);
    std::string_view asked = draw_top_bar(areas.top, desk, now);
    auto change = draw_place(areas.left, desk, now, asked);
    keep_first(
        change,
        draw_view(
            areas.view, now, seen_scene(desk),
            {ui.view, ui.selection, ui.hand, ui.place == Place::join, ui.place == Place::measure,
             desk.ui.placing ? &*desk.ui.placing : nullptr, facts_to_show(desk),
             ui.place == Place::prove ? lines_to_show(ui.prove, now) : std::vector<MeasuredLine>{},
             &ui.seeing, sketch_of(desk), desk.catalogue.get()}));
    draw_ways_to_see(areas.view, desk, now, asked);
    keep_first(change, draw_piece_panel(areas.right, now, *desk.catalogue,
                                        {ui.selection, ui.hovered_hole, ui.stock_filter}));
    draw_consequences(areas.bottom, desk, now);
    draw_splitters(areas, ui);
    const StartChoice begun = begins_with_frame(now, ui.place)
                                  ? draw_start_card(areas.view, desk.recent, desk.samples)
                                  : StartChoice{};
    StepsOutcome steps;
    // Where a chosen piece would be laid flat.
    if (!ui.help.has_dismissed_steps && ui.selection.pieces.empty())
        steps = draw_first_steps(areas.right,
                                 first_steps(now, {ui.help.has_adjusted, ui.help.has_exported}));
    if (steps.is_dismissed) ui.help.has_dismissed_steps = true;
    const auto& mends = ui.help.mends;
    if ((mends.has_more || mends.prices.has_more) && !ImGui::IsAnyMouseDown()) ui.goes_on = true;
    draw_dialog(desk);
    if (is_help_awaited()) ui.goes_on = true;
    // From here on `now` may be replaced.
    if (change) static_cast<void>(submit_with_bars(desk, *change));
    end_drag(desk);
    end_typing_frame(desk);
    if (!had_popup) run_pressed_commands(desk);
    if (!asked.empty()) run_command(desk, asked);
    if (!begun.command.empty()) run_command(desk, begun.command);
    if (!steps.command.empty()) run_command(desk, steps.command);
    end_placing(desk);
    if (begun.file) wish(desk, {Intent::Kind::open_file, *begun.file});
}

}  // namespace editor
