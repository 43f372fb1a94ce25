#include "editor/places/top_bar.h"

#include "editor/commands.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_diagram.h"

#include <array>

namespace editor {
namespace {

void draw_title(const Area& area, const Desk& desk) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 at{area.x + scaled(20), area.y + scaled(8)};
    const std::string title = text_to_fit(title_of(desk), Type::strong, scaled(250));
    const float width = draw_text_at(on, at, title, Type::strong, colour::ink);
    const bool saved = desk.history.is_saved();
    const char* state = !saved ? "not saved" : desk.file.empty() ? "" : "saved";
    draw_text_at(on, {at.x + width + scaled(10), at.y + scaled(2)}, state, Type::small,
                 saved ? colour::quiet : colour::amber);
    log_rectangle("title", {at.x, at.y, at.x + width, at.y + scaled(18), true, true,
                            title + (saved ? "" : ", not saved")});
}

std::string_view draw_menu(const char* name, Menu menu, const Desk& desk) {
    std::string_view asked;
    if (draw_button(name, {.weight = Weight::link})) ImGui::OpenPopup(name);
    ImGui::SameLine(0, 0);
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(8, 8));
    const PopupScope open(name);
    if (!open) return asked;
    for (const auto& command : commands()) {
        if (command.menu != menu) continue;
        const std::string label(command.label);
        const std::string keys = shortcut_text(command.keys);
        if (ImGui::MenuItem(label.c_str(), keys.c_str(), false, command.enabled(desk))) {
            asked = command.id;
        }
        log_item(command.id);
    }
    return asked;
}

std::string_view draw_menus(const Area& area, const Desk& desk) {
    constexpr std::array<std::pair<const char*, Menu>, 4> menus{{{"Project", Menu::project},
                                                                 {"Edit", Menu::edit},
                                                                 {"Frame", Menu::frame},
                                                                 {"View", Menu::view}}};
    std::string_view asked;
    ImGui::SetCursorScreenPos({area.x + scaled(12), area.y + scaled(28)});
    const StyleScope flat(ImGuiStyleVar_FramePadding, scaled(8, 1));
    for (const auto& [name, menu] : menus) {
        const auto one = draw_menu(name, menu, desk);
        if (!one.empty()) asked = one;
    }
    return asked;
}

struct PlaceTab {
    Place place;
    const char* name;
    std::string_view command;
    std::string state;
    bool is_open = false;  // something is to be looked at
};

std::array<PlaceTab, 3> place_tabs(const Derived& derived) {
    const int open = derived.summary.open();
    const bool is_empty = derived.project->frames.empty();
    return {{{Place::lay_out, "Lay out", "place.lay_out",
              is_empty    ? "to begin"
              : open == 0 ? "settled"
                          : std::to_string(open) + " open",
              open > 0},
             {Place::buy, "Buy", "place.buy", is_empty ? "" : bars_text(derived)},
             {Place::make, "Make", "place.make",
              is_empty ? "" : std::to_string(derived.summary.pieces) + " pieces"}}};
}

bool draw_tab(const PlaceTab& tab, const Area& at, bool is_here) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    ImGui::SetCursorScreenPos({at.x, at.y});
    const bool clicked = ImGui::InvisibleButton(tab.name, {at.width, at.height});
    const bool hot = ImGui::IsItemHovered();
    log_item(tab.name, is_here ? "here" : "");
    const ImVec2 end{at.x + at.width, at.y + at.height};
    if (is_here || hot) on.AddRectFilled({at.x, at.y}, end, colour::paper);
    if (is_here) on.AddRectFilled({at.x, at.y}, {end.x, at.y + scaled(4)}, colour::dye);
    draw_text_at(on, {at.x + scaled(16), at.y + scaled(10)}, tab.name,
                 is_here ? Type::strong : Type::text, is_here ? colour::dye : colour::ink);
    draw_text_at(on, {at.x + scaled(16), at.y + scaled(30)},
                 text_to_fit(tab.state, Type::small, at.width - scaled(24)), Type::small,
                 tab.is_open ? colour::amber : colour::quiet);
    return clicked;
}

std::string_view draw_tabs(const Area& area, const Desk& desk, const Derived& derived) {
    std::string_view asked;
    float x = area.x + std::max(scaled(360), area.width * 0.28F);
    for (const auto& tab : place_tabs(derived)) {
        const Area at{x, area.y, scaled(150), area.height - scaled(1)};
        if (draw_tab(tab, at, desk.ui.place == tab.place)) asked = tab.command;
        x += at.width;
    }
    return asked;
}

std::string hint_of(const Command& command, const std::string& what) {
    return what + "  " + shortcut_text(command.keys);
}

std::string_view draw_right_end(const Area& area, const Desk& desk) {
    std::string_view asked;
    ImGui::SetCursorScreenPos({area.x + area.width - scaled(238), area.y + scaled(13)});
    const Command& undo = *find_command("edit.undo");
    const Command& redo = *find_command("edit.redo");
    const Command& exports = *find_command("project.export");
    if (draw_button("Undo", {.weight = Weight::link, .enabled = undo.enabled(desk)}))
        asked = undo.id;
    draw_hint(hint_of(undo, desk.history.undo_label()));
    ImGui::SameLine(0, scaled(2));
    if (draw_button("Redo", {.weight = Weight::link, .enabled = redo.enabled(desk)}))
        asked = redo.id;
    draw_hint(hint_of(redo, desk.history.redo_label()));
    ImGui::SameLine(0, scaled(12));
    if (draw_button(
            "Export",
            {.weight = Weight::main, .enabled = exports.enabled(desk), .width = scaled(84)})) {
        asked = exports.id;
    }
    draw_hint(hint_of(exports, "Write all schedules into a folder"));
    return asked;
}

}  // namespace

std::string_view draw_top_bar(const Area& area, const Desk& desk, const Derived& derived) {
    const StyleScope no_padding(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
    const PanelScope panel("Top", area, ImGuiWindowFlags_NoScrollbar);
    draw_title(area, desk);
    std::string_view asked = draw_menus(area, desk);
    for (const auto one : {draw_tabs(area, desk, derived), draw_right_end(area, desk)}) {
        if (!one.empty()) asked = one;
    }
    const float y = area.y + area.height - scaled(1);
    ImGui::GetWindowDrawList()->AddLine({area.x, y}, {area.x + area.width, y}, colour::line,
                                        scaled(1));
    return asked;
}

}  // namespace editor
