#include "editor/dialogs/file_browser.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <cstdlib>

namespace editor {
namespace {

namespace fs = std::filesystem;

const char* title_of(BrowseFor purpose) {
    switch (purpose) {
        case BrowseFor::opening:
            return "Open a project";
        case BrowseFor::saving:
            return "Save the project";
        case BrowseFor::exporting:
            return "Export the schedules into a folder";
        case BrowseFor::scan:
            return "Bring a scan into the room";
    }
    return "";
}

const char* nothing_text(BrowseFor purpose) {
    return purpose == BrowseFor::exporting
               ? "No folders in here. To make one, type its name behind the folder above"
           : purpose == BrowseFor::scan ? "No folders and no PLY, STL, OBJ or GLB files in here"
                                        : "No folders and no projects in here";
}

const char* verb_of(BrowseFor purpose) {
    switch (purpose) {
        case BrowseFor::opening:
            return "Open";
        case BrowseFor::saving:
            return "Save here";
        case BrowseFor::exporting:
            return "Export here";
        case BrowseFor::scan:
            return "Read it";
    }
    return "";
}

void draw_folder_line(FileBrowser& browser, BrowserOutcome& outcome) {
    const float buttons = scaled(150);
    const auto field =
        draw_field("Folder", browser.typed_folder,
                   {.hint = "folder", .width = ImGui::GetContentRegionAvail().x - buttons});
    if (field.entered) outcome.taken = take_typed_path(browser);
    ImGui::SameLine();
    if (draw_button("Up", {.enabled = browser.folder.has_relative_path()})) go_up(browser);
    ImGui::SameLine();
    const char* home = std::getenv("HOME");
    if (draw_button("Home", {.enabled = home != nullptr}) && home != nullptr) go_to(browser, home);
}

// A click chooses, a second one takes.
void take_entry(FileBrowser& browser, std::size_t index, bool goes_in, BrowserOutcome& outcome) {
    const FolderEntry entry = browser.entries[index];
    browser.chosen = index;
    if (!entry.is_folder) browser.file_name = entry.name;
    if (!goes_in) return;
    if (entry.is_folder) {
        go_to(browser, browser.folder / entry.name);
    } else {
        outcome.taken = accept(browser);
    }
}

void draw_entries(FileBrowser& browser, BrowserOutcome& outcome) {
    const ColourScope ground(ImGuiCol_ChildBg, colour::sheet);
    const StyleScope outline(ImGuiStyleVar_ChildBorderSize, scaled(1));
    const ColourScope border(ImGuiCol_Border, colour::edge);
    ImGui::BeginChild("entries", {0, scaled(300)}, true);
    const auto entries = browser.entries;  // going into a folder changes them
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const IdScope id(static_cast<int>(i));
        const auto& entry = entries[i];
        const auto row =
            draw_row("entry " + entry.name, entry.is_folder ? entry.name + "/" : entry.name,
                     browser.chosen == i);
        if (browser.chosen == i && ImGui::IsWindowAppearing()) ImGui::SetScrollHereY();
        if (row.clicked) take_entry(browser, i, row.twice, outcome);
        if (row.clicked && row.twice) break;
    }
    if (entries.empty()) draw_text(nothing_text(browser.purpose), colour::quiet);
    ImGui::EndChild();
}

void move_choice(FileBrowser& browser, int by) {
    if (browser.entries.empty()) return;
    const auto last = static_cast<int>(browser.entries.size()) - 1;
    const int at = browser.chosen ? static_cast<int>(*browser.chosen) + by : (by > 0 ? 0 : last);
    browser.chosen = static_cast<std::size_t>(std::clamp(at, 0, last));
    const auto& entry = browser.entries[*browser.chosen];
    if (!entry.is_folder) browser.file_name = entry.name;
}

void use_keyboard(FileBrowser& browser, BrowserOutcome& outcome) {
    if (is_pressed(key::escape)) outcome.is_cancelled = true;
    if (ImGui::GetIO().WantTextInput) return;
    if (is_pressed(key::down, true)) move_choice(browser, 1);
    if (is_pressed(key::up, true)) move_choice(browser, -1);
    if (is_pressed(key::backspace)) go_up(browser);
    if (!is_pressed(key::enter)) return;
    if (browser.chosen && *browser.chosen < browser.entries.size()) {
        take_entry(browser, *browser.chosen, true, outcome);
    } else {
        outcome.taken = accept(browser);
    }
}

void draw_name_line(FileBrowser& browser, BrowserOutcome& outcome) {
    if (browser.purpose == BrowseFor::exporting) {
        if (browser.replaced.empty()) return;
        std::string there;
        for (const auto& name : browser.replaced) there += (there.empty() ? "" : ", ") + name;
        draw_wrapped("Already in this folder and written anew: " + there, Type::small,
                     colour::amber);
        return;
    }
    const bool saves = browser.purpose == BrowseFor::saving;
    const auto field = draw_field("Name", browser.file_name,
                                  {.hint = saves ? "name of the file" : "file",
                                   .width = saves ? -1.0F : scaled(420),
                                   .wants_focus = saves && browser.is_fresh});
    if (field.changed) browser.overwrites.reset();
    if (field.entered) outcome.taken = accept(browser);
    if (saves) return;
    ImGui::SameLine();
    if (draw_check("All files", browser.shows_all_files, "all files")) read_again(browser);
}

void draw_troubles(FileBrowser& browser) {
    if (!browser.trouble.empty()) draw_wrapped(browser.trouble, Type::text, colour::red);
    if (browser.to_make && draw_button("Make this folder")) make_typed_folder(browser);
    if (browser.overwrites) {
        draw_wrapped(browser.overwrites->filename().string() +
                         " is there already. Press the button again to write over it.",
                     Type::text, colour::amber);
    }
}

void draw_answers(FileBrowser& browser, BrowserOutcome& outcome) {
    const std::string verb = browser.overwrites ? "Write over it" : verb_of(browser.purpose);
    if (draw_button("Take", {.text = verb, .weight = Weight::main}))
        outcome.taken = accept(browser);
    ImGui::SameLine();
    if (draw_button("Cancel")) outcome.is_cancelled = true;
}

}  // namespace

BrowserOutcome draw_file_browser(FileBrowser& browser) {
    BrowserOutcome outcome;
    const DialogScope dialog("Files", title_of(browser.purpose), scaled(680));
    if (!dialog) return outcome;
    draw_folder_line(browser, outcome);
    draw_entries(browser, outcome);
    draw_name_line(browser, outcome);
    draw_troubles(browser);
    ImGui::Dummy(scaled(1, 6));
    draw_answers(browser, outcome);
    use_keyboard(browser, outcome);
    browser.is_fresh = false;
    if (outcome.taken || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor
