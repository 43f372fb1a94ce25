#include "editor/dialogs/command_finder.h"

#include "editor/commands.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <cctype>

namespace editor {
namespace {

std::string lower(std::string_view text) {
    std::string small(text);
    for (char& c : small) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return small;
}

bool holds_all(const std::string& text, std::string_view words) {
    while (!words.empty()) {
        const auto end = std::min(words.find(' '), words.size());
        if (text.find(words.substr(0, end)) == std::string::npos) return false;
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return true;
}

const char* name_of(Menu menu) {
    switch (menu) {
        case Menu::project:
            return "Project";
        case Menu::edit:
            return "Edit";
        case Menu::room:
            return "Room";
        case Menu::frame:
            return "Frame";
        case Menu::view:
            return "View";
        case Menu::none:
            return "Place";
    }
    return "";
}

void move_choice(CommandFinder& finder, std::size_t count) {
    if (count == 0) return;
    const bool down = is_pressed(key::down, true);
    const bool up = is_pressed(key::up, true);
    if (down) finder.chosen = (finder.chosen + 1) % count;
    if (up) finder.chosen = (finder.chosen + count - 1) % count;
    finder.chosen = std::min(finder.chosen, count - 1);
}

// Gives whether it was clicked.
bool draw_command(const Command& command, bool is_enabled, bool is_chosen, bool has_moved) {
    const float x = ImGui::GetCursorPosX();
    ImGui::BeginDisabled(!is_enabled);
    const auto row = draw_row("find " + std::string(command.id), command.label, is_chosen, true);
    ImGui::EndDisabled();
    if (is_chosen && has_moved) ImGui::SetScrollHereY();
    ImGui::SameLine(x + scaled(300));
    draw_text(name_of(command.menu), Type::small, colour::quiet);
    const auto keys = shortcut_text(command.keys);
    if (!keys.empty()) {
        ImGui::SameLine();
        draw_text_right(keys, colour::quiet);
    }
    return row.clicked && is_enabled;
}

}  // namespace

std::vector<std::string_view> found_commands(std::string_view words) {
    const auto wanted = lower(words);
    std::vector<std::string_view> found;
    for (const auto& command : commands()) {
        const auto text = lower(command.label) + " " + lower(name_of(command.menu));
        if (holds_all(text, wanted)) found.push_back(command.id);
    }
    return found;
}

FinderOutcome draw_command_finder(CommandFinder& finder, const Desk& desk) {
    FinderOutcome outcome;
    const DialogScope dialog("Find", "Find what can be done", scaled(560));
    if (!dialog) return outcome;
    const auto field = draw_field(
        "words", finder.words,
        {.hint = "a word of it: wall, save, from above", .wants_focus = finder.is_fresh});
    if (field.changed) finder.chosen = 0;
    const auto found = found_commands(finder.words);
    const auto before = finder.chosen;
    move_choice(finder, found.size());
    {
        const ChildScope list("found", {0, scaled(320)});
        for (std::size_t i = 0; i < found.size(); ++i) {
            const auto& command = *find_command(found[i]);
            const bool is_chosen = i == finder.chosen;
            const bool is_enabled = command.enabled(desk);
            const bool is_taken = is_chosen && field.entered && is_enabled;
            if (draw_command(command, is_enabled, is_chosen, before != finder.chosen) || is_taken)
                outcome.command = command.id;
        }
        if (found.empty()) draw_text("Nothing is called so", colour::quiet);
    }
    outcome.is_cancelled = is_pressed(key::escape);
    finder.is_fresh = field.entered && outcome.command.empty();  // the field goes on
    if (!outcome.command.empty() || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor
