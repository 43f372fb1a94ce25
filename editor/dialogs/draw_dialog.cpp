#include "editor/dialogs/draw_dialog.h"

#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/dialogs/command_finder.h"
#include "editor/dialogs/trade_words_page.h"
#include "editor/dialogs/writing.h"
#include "editor/file_changes.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/left_behind.h"
#include "editor/scan_loader.h"
#include "editor/scan_paths.h"
#include "editor/selection.h"

#include <imgui.h>
#include <imgui_internal.h>

namespace editor {
namespace {

void take_file(Desk& desk, const FileBrowser& browser, const std::filesystem::path& taken) {
    switch (browser.purpose) {
        case BrowseFor::opening:
            open_file(desk, taken);
            break;
        case BrowseFor::saving:
            if (save_to(desk, taken) && browser.then) fulfil(desk, *browser.then);
            break;
        case BrowseFor::exporting:
            export_to(desk, taken);
            break;
        case BrowseFor::scan:
            import_scan(desk, taken);
            break;
    }
}

void draw(Desk& desk, FileBrowser& browser) {
    const auto outcome = draw_file_browser(browser);
    if (!outcome.taken && !outcome.is_cancelled) return;
    const FileBrowser done = std::move(browser);
    close_dialog(desk);
    if (outcome.taken) take_file(desk, done, *outcome.taken);
}

template <class Outcome>
void settle(Desk& desk, const Outcome& outcome) {
    if (!outcome.change && !outcome.is_cancelled) return;
    close_dialog(desk);
    if (outcome.change) static_cast<void>(submit(desk, *outcome.change));
}

void draw(Desk& desk, StarterForm& form) {
    const bool is_first = project_of(desk).frames.empty();
    const auto outcome = draw_starter_form(form, derived(desk), *desk.catalogue);
    settle(desk, outcome);
    if (outcome.change) desk.ui.view.wants_fit = true;
    if (outcome.change && is_first) desk.ui.place = Place::lay_out;
}

void draw(Desk& desk, DimensionForm& form) {
    settle(desk, draw_dimension_form(form, derived(desk)));
}

void draw(Desk& desk, TitleForm& form) { settle(desk, draw_title_form(form)); }

void draw(Desk& desk, PanelForm& form) {
    settle(desk, draw_panel_form(form, derived(desk), *desk.catalogue));
}

template <class Bar>
void draw(Desk& desk, NodeBarForm<Bar>& form) {
    settle(desk, draw_node_bar_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, ObstacleForm& form) {
    const auto* scan = std::get_if<model::ScannedObstacle>(&form.obstacle.shape);
    form.scan_words = scan == nullptr ? std::string() : scan_words(desk, *scan);
    const auto outcome = draw_obstacle_form(form, derived(desk), *desk.catalogue);
    if (outcome.is_copied) {
        if (outcome.change && !submit(desk, *outcome.change)) return;
        form = copied_obstacle_form(derived(desk), form.obstacle);
        return;
    }
    if (outcome.wants_points) {
        desk.ui.placing = ScanPlacing{form.obstacle.name};
        desk.ui.seeing.tape = {};
    }
    settle(desk, outcome);
}

void draw(Desk& desk, WellSurvey& survey) {
    settle(desk, draw_well_survey(survey, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, WallSurvey& survey) {
    settle(desk, draw_wall_survey(survey, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, StepForm& form) {
    settle(desk, draw_step_form(form, derived(desk), *desk.catalogue));
}

std::string list_words(const Desk& desk, const std::string& file) {
    const auto& lists = desk.prices.library->lists;
    if (desk.file.empty())
        return "The list lies beside the project: save the project, then begin the list here.";
    const auto found = lists.find(file);
    if (found == lists.end()) return "There is such a file: it is read, and left as it is.";
    if (!found->second) return engine::to_text(found->second.error());
    const auto& list = *found->second;
    std::string words = "It holds " + std::to_string(list.bars.size()) + " bars, " +
                        std::to_string(list.sheets.size()) + " sheets and " +
                        std::to_string(list.boxes.size()) + " boxes.";
    for (const auto& warning : list.warnings) words += "\n" + engine::to_text(warning);
    return words;
}

void draw(Desk& desk, SupplierForm& form) {
    form.can_begin = can_begin_price_list(desk, form.supplier.prices);
    form.words = form.can_begin ? std::string() : list_words(desk, form.supplier.prices);
    const bool begins = form.begins_list && form.can_begin;
    const auto outcome = draw_supplier_form(form, derived(desk));
    const bool is_put =
        outcome.change && outcome.change->edits.front().get_if<model::PutSupplier>();
    const auto supplier = form.supplier;
    settle(desk, outcome);                               // the form is gone
    const auto& suppliers = project_of(desk).suppliers;  // it may have been refused
    const bool has_it = std::ranges::find(suppliers, supplier) != suppliers.end();
    if (is_put && begins && has_it) begin_price_list_told(desk, supplier.prices);
}

void draw(Desk& desk, LeanForm& form) {
    settle(desk, draw_lean_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, SplitForm& form) {
    settle(desk, draw_split_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, MirrorForm& form) {
    settle(desk, draw_mirror_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, RepeatForm& form) {
    settle(desk, draw_repeat_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, CopyForm& form) {
    settle(desk, draw_copy_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, TakeOutForm& form) {
    settle(desk, draw_take_out_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, PlaceForm& form) {
    settle(desk, draw_place_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, OpeningForm& form) { settle(desk, draw_opening_form(form, derived(desk))); }

// What was read serves the room too, and is not read again.
void keep_read(Desk& desk, const ScanForm& form) {
    if (!desk.scan_loader) desk.scan_loader = std::make_shared<ScanLoader>();
    const auto& scan = std::get<model::ScannedObstacle>(form.obstacle.shape);
    desk.scan_loader->read_file = scan_path(desk, scan.file);
    desk.scan_loader->read = form.reading->work.result().value();
    forget_fault(desk, scan);  // of an earlier try
}

void draw(Desk& desk, ScanForm& form) {
    const auto outcome = draw_scan_form(form, derived(desk));
    if (outcome.is_busy) desk.ui.goes_on = true;
    if (outcome.change) keep_read(desk, form);
    const auto waiting = outcome.is_settled() ? form.waiting : decltype(form.waiting){};
    settle(desk, outcome);
    import_scans(desk, waiting);
    if (outcome.change) desk.ui.view.wants_fit = true;
    if (outcome.change && desk.ui.place != Place::measure) desk.ui.place = Place::measure;
}

void draw(Desk& desk, VentForm& form) {
    auto& last = desk.ui.vent_source;
    if (form.is_fresh && last) form.source = *last;
    const auto outcome = draw_vent_form(form, derived(desk), *desk.catalogue);
    if (outcome.change) last = form.source;
    settle(desk, outcome);
}

void draw(Desk& desk, const UnsavedQuestion& question) {
    const Intent then = question.then;
    const auto answer = draw_unsaved_question(question);
    if (answer == UnsavedAnswer::none) return;
    close_dialog(desk);
    if (answer == UnsavedAnswer::save) save_or_browse(desk, then);
    if (answer == UnsavedAnswer::discard) fulfil(desk, then);
}

void draw(Desk& desk, CommandFinder& finder) {
    const auto outcome = draw_command_finder(finder, desk);
    if (outcome.command.empty() && !outcome.is_cancelled) return;
    close_dialog(desk);
    if (!outcome.command.empty()) run_command(desk, outcome.command);
}

void draw(Desk& desk, TradeWords& page) {
    if (draw_trade_words(page)) close_dialog(desk);
}

void draw(Desk& desk, const RecoveryQuestion& question) {
    const auto journal = question.journal;
    const auto answer = draw_recovery_question(question);
    if (answer == RecoveryAnswer::none) return;
    close_dialog(desk);
    if (answer == RecoveryAnswer::bring_back) wish(desk, {Intent::Kind::bring_back, journal});
    if (answer == RecoveryAnswer::discard) discard_journal(journal);
}

void draw(Desk& desk, const ChangedQuestion& question) {
    const auto asked = question;
    const auto answer = draw_changed_question(question);
    if (answer == ChangedAnswer::none) return;
    close_dialog(desk);
    settle_changed(desk, asked, answer);
}

void draw(Desk& desk, MemberForm& form) {
    settle(desk, draw_member_form(form, derived(desk), *desk.catalogue));
}

void draw(Desk& desk, PlaneForm& form) { settle(desk, draw_plane_form(form, derived(desk))); }

void draw(Desk& desk, BayForm& form) { settle(desk, draw_bay_form(form, derived(desk))); }

void draw(Desk& desk, const Trouble& trouble) {
    bool is_done = false;
    {
        const DialogScope dialog("Trouble", trouble.title.c_str(), scaled(520));
        if (!dialog) return;
        draw_wrapped(trouble.text);
        log_item("text", trouble.text);
        ImGui::Dummy(scaled(1, 10));
        is_done = draw_button("Close", {.weight = Weight::main}) || is_pressed(key::escape) ||
                  is_pressed(key::enter);
        if (is_done) ImGui::CloseCurrentPopup();
    }
    if (is_done) close_dialog(desk);
}

// What the first of the findings concerns; errors come first.
void show_worst(Desk& desk) {
    const auto& now = derived(desk);
    desk.ui.place = Place::lay_out;
    desk.ui.cards.wants_top = true;
    if (now.finding_groups.empty() || now.finding_groups.front().concerns.empty()) return;
    desk.ui.selection =
        selection_of_subjects(*now.project, now.resolved, now.finding_groups.front().concerns);
}

void draw(Desk& desk, const ExportQuestion&) {
    const auto answer = draw_export_question(derived(desk));
    if (answer == ExportAnswer::none) return;
    desk.ui.dialog = std::monostate{};
    if (answer == ExportAnswer::write) browse_to_export(desk);
    if (answer == ExportAnswer::look) show_worst(desk);
}

void draw(Desk& desk, const Writing& writing) {
    const auto run = writing.run;
    draw_writing(*run);
    desk.ui.goes_on = true;
    if (!run->work.is_finished()) return;
    close_dialog(desk);
    const auto& made = run->work.result();
    if (run->is_cancelled || (!made && made.error().code == engine::ErrorCode::cancelled)) {
        desk.ui.notice = Notice{"Cancelled: nothing was written", false};
    } else {
        run->take(desk, made);
    }
}

void draw(Desk&, std::monostate) {}

}  // namespace

void draw_dialog(Desk& desk) {
    const auto before = desk.ui.dialog.index();
    const bool has_room = !project_of(desk).room.empty();
    std::visit([&](auto& dialog) { draw(desk, dialog); }, desk.ui.dialog);
    if (!has_room && !project_of(desk).room.empty()) desk.ui.view.wants_fit = true;
    // ImGui would keep a popup whose dialog was put away by other means than its own buttons.
    if (desk.ui.dialog.index() != before && ImGui::GetCurrentContext()->OpenPopupStack.Size > 0) {
        ImGui::ClosePopupToLevel(0, true);
    }
}

}  // namespace editor
