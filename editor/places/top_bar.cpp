#include "editor/places/top_bar.h"

#include "editor/commands.h"
#include "editor/kit/widgets.h"
#include "editor/places/place_words.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>

namespace editor {
namespace {

constexpr std::size_t tab_count = place_rows.size();

// What stands at both ends keeps its room; the tabs take what is left.
struct Division {
    float tabs_from = 0.0F;
    std::array<float, tab_count> tab_widths{};
    float right_from = 0.0F;
    bool has_words = true;   // undo and redo as words, else as arrows
    bool has_export = true;  // where large letters leave no room these are in the menus alone
    bool has_undo = true;
};

constexpr const char* undo_arrow = "\xE2\x86\xB6";
constexpr const char* redo_arrow = "\xE2\x86\xB7";

float width_of_button(const char* text) {
    return size_of_text(text, Type::text).x + 2 * ImGui::GetStyle().FramePadding.x;
}

float width_of_right_end(const Division& division) {
    float width = scaled(20);
    if (division.has_undo) {
        width += width_of_button(division.has_words ? "Undo" : undo_arrow) +
                 width_of_button(division.has_words ? "Redo" : redo_arrow) + scaled(14);
    }
    if (division.has_export) width += scaled(84);
    return width;
}

// Of one width where there is room for that, else each of its own.
std::array<float, tab_count> tab_widths(const std::array<float, tab_count>& least, float room) {
    constexpr auto count = static_cast<float>(tab_count);
    const float widest = *std::ranges::max_element(least);
    std::array<float, tab_count> widths = least;
    if (room >= count * widest) {
        widths.fill(std::clamp(room / count, widest, std::max(widest, scaled(150))));
        return widths;
    }
    const float all = std::accumulate(least.begin(), least.end(), 0.0F);
    for (auto& width : widths) width += std::max(0.0F, room - all) / count;
    return widths;
}

Division division_of(const Area& area, float menus_end) {
    std::array<float, tab_count> least{};
    for (std::size_t i = 0; i < tab_count; ++i) {
        least[i] = size_of_text(place_rows[i].tab, Type::strong).x + scaled(8);
    }
    const float all = std::accumulate(least.begin(), least.end(), 0.0F);
    Division division;
    const auto room = [&] {
        return area.x + area.width - width_of_right_end(division) - menus_end;
    };
    if (room() < all) division.has_words = false;
    if (room() < all) division.has_export = false;
    if (room() < all) division.has_undo = false;
    division.right_from = menus_end + room();
    division.tab_widths = tab_widths(least, room());
    const float taken =
        std::accumulate(division.tab_widths.begin(), division.tab_widths.end(), 0.0F);
    const float wished = area.x + std::max(scaled(360), area.width * 0.28F);
    division.tabs_from = std::max(menus_end, std::min(wished, division.right_from - taken));
    return division;
}

void draw_title(const Area& area, const Desk& desk, float room) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 at{area.x + scaled(20), area.y + scaled(8)};
    const float state_width = size_of_text("not saved", Type::small).x + scaled(20);
    const float most = std::min(scaled(250), room - scaled(20) - state_width);
    const std::string title = text_to_fit(title_of(desk), Type::strong, most);
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

std::string_view draw_menus(const Area& area, const Desk& desk, float& end) {
    constexpr std::array<std::pair<const char*, Menu>, 5> menus{{{"Project", Menu::project},
                                                                 {"Edit", Menu::edit},
                                                                 {"Room", Menu::room},
                                                                 {"Frame", Menu::frame},
                                                                 {"View", Menu::view}}};
    std::string_view asked;
    ImGui::SetCursorScreenPos({area.x + scaled(12), area.y + scaled(28)});
    const StyleScope flat(ImGuiStyleVar_FramePadding, scaled(6, 1));
    for (const auto& [name, menu] : menus) {
        const auto one = draw_menu(name, menu, desk);
        if (!one.empty()) asked = one;
    }
    end = ImGui::GetCursorScreenPos().x + scaled(8);
    return asked;
}

bool draw_tab(const PlaceRow& place, const PlaceWords& words, const Area& at, bool is_here) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    ImGui::SetCursorScreenPos({at.x, at.y});
    const bool clicked = ImGui::InvisibleButton(place.tab, {at.width, at.height});
    const bool hot = ImGui::IsItemHovered();
    log_item(place.tab, is_here ? "here" : "");
    const ImVec2 end{at.x + at.width, at.y + at.height};
    if (is_here || hot) on.AddRectFilled({at.x, at.y}, end, colour::paper);
    if (is_here) on.AddRectFilled({at.x, at.y}, {end.x, at.y + scaled(4)}, colour::dye);
    const float rim = std::min(scaled(16), at.width * 0.08F);
    draw_text_at(on, {at.x + rim, at.y + scaled(10)}, place.tab,
                 is_here ? Type::strong : Type::text, is_here ? colour::dye : colour::ink);
    draw_text_at(on, {at.x + rim, at.y + scaled(30)},
                 text_to_fit(words.text, Type::small, at.width - 1.5F * rim), Type::small,
                 words.is_open ? colour::amber : colour::quiet);
    log_rectangle("state of " + std::string(place.tab),
                  {at.x, at.y, end.x, end.y, true, true, words.text});
    return clicked;
}

std::string_view draw_tabs(const Area& area,
                           const Division& division,
                           const Desk& desk,
                           const Derived& derived) {
    std::string_view asked;
    float x = division.tabs_from;
    for (std::size_t i = 0; i < tab_count; ++i) {
        const auto& row = place_rows[i];
        const Area at{x, area.y, division.tab_widths[i], area.height - scaled(1)};
        if (draw_tab(row, place_words(derived, row.place), at, desk.ui.place == row.place))
            asked = row.command;
        x += at.width;
    }
    return asked;
}

std::string hint_of(const Command& command, const std::string& what) {
    return what + "  " + shortcut_text(command.keys);
}

std::string_view draw_undo_and_redo(const Desk& desk, bool has_words) {
    std::string_view asked;
    const Command& undo = *find_command("edit.undo");
    const Command& redo = *find_command("edit.redo");
    if (draw_button("Undo", {.text = has_words ? "" : undo_arrow,
                             .weight = Weight::link,
                             .enabled = undo.enabled(desk)})) {
        asked = undo.id;
    }
    draw_hint("Undo: " + hint_of(undo, desk.history.undo_label()));
    ImGui::SameLine(0, scaled(2));
    if (draw_button("Redo", {.text = has_words ? "" : redo_arrow,
                             .weight = Weight::link,
                             .enabled = redo.enabled(desk)})) {
        asked = redo.id;
    }
    draw_hint("Redo: " + hint_of(redo, desk.history.redo_label()));
    ImGui::SameLine(0, scaled(12));
    return asked;
}

std::string_view draw_right_end(const Area& area, const Division& division, const Desk& desk) {
    std::string_view asked;
    ImGui::SetCursorScreenPos({division.right_from, area.y + scaled(13)});
    if (division.has_undo) asked = draw_undo_and_redo(desk, division.has_words);
    if (!division.has_export) return asked;
    const Command& exports = *find_command("project.export");
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
    float menus_end = 0.0F;
    std::string_view asked = draw_menus(area, desk, menus_end);
    const Division division = division_of(area, menus_end);
    draw_title(area, desk, division.tabs_from - area.x);
    for (const auto one :
         {draw_tabs(area, division, desk, derived), draw_right_end(area, division, desk)}) {
        if (!one.empty()) asked = one;
    }
    const float y = area.y + area.height - scaled(1);
    ImGui::GetWindowDrawList()->AddLine({area.x, y}, {area.x + area.width, y}, colour::line,
                                        scaled(1));
    return asked;
}

}  // namespace editor
