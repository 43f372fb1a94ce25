#include "editor/view/seeing_bar.h"

#include "editor/commands.h"
#include "editor/dimension_values.h"
#include "editor/kit/widgets.h"
#include "editor/view/cut_handle.h"
#include "editor/view/tape_ends.h"

#include <imgui.h>

#include <algorithm>
#include <array>
#include <string>

namespace editor {
namespace {

struct Chip {
    std::string_view name;
    std::string_view command;
    std::string text;
    bool is_on = false;
    bool is_there = true;
    std::string_view hint;
};

std::string with_state(std::string_view word, Visible visible) {
    if (visible == Visible::faintly) return std::string(word) + " faint";
    if (visible == Visible::hidden) return std::string(word) + " away";
    return std::string(word);
}

std::vector<Chip> chips_of(const SeeingBar& bar, const SeeingState& seeing) {
    const auto& way = seeing.way;
    return {{"measure", "view.measure", "Take a measure", seeing.tape.is_held, true,
             "Between any two corners, holes, edges or faces"},
            {"alone", "view.alone", "One piece", way.alone.has_value(), bar.can_be_alone,
             "The chosen piece by itself; its holes lie flat at the right"},
            {"cut", "view.cut", "Cut", seeing.cut.has_value(), true,
             "Look into it: what lies before a plane is taken away"},
            {"apart", "view.apart", "Apart", way.apart > 0.0F, true,
             "Pull the pieces away from each other"},
            {"colours", "view.colours", "Colours", way.colour_by != ColourBy::metal, true,
             "By stock, mark, finding or clearance, with a legend"},
            {"marks", "view.marks", "Marks", seeing.shows_marks, true,
             "The marks of the pieces, as in the schedules"},
            {"room", "view.room", with_state("Room", way.room), way.room != Visible::plainly,
             !bar.derived.project->room.empty(), "Faint, then away, then back"},
            {"panels", "view.panels", with_state("Panels", way.panels),
             way.panels != Visible::plainly, bar.has_panels, "Faint, then away, then back"},
            {"lines", "view.lines", "Lines", way.as_line_drawing, true,
             "A line drawing, as for paper"}};
}

bool draw_chip(const Chip& chip) {
    const FontScope small(Type::small);
    const ColourScope text(ImGuiCol_Text, chip.is_on ? colour::dye : colour::quiet);
    const ColourScope ground(ImGuiCol_Button,
                             chip.is_on ? colour::dye_wash : colour::with_alpha(colour::panel, 0));
    const std::string label = chip.text + "###" + std::string(chip.name);
    const bool is_pressed = ImGui::Button(label.c_str());
    log_item(chip.name, chip.is_on ? chip.text + ", on" : chip.text);
    return is_pressed;
}

std::string with_key(std::string_view hint, std::string_view command) {
    const auto* found = find_command(command);
    std::string words(hint);
    if (found != nullptr && found->keys.key != 0) words += ": " + shortcut_text(found->keys);
    return words;
}

float width_of(const Chip& chip) {
    return size_of_text(chip.text, Type::small).x + 2 * ImGui::GetStyle().FramePadding.x;
}

// In as many rows as the view is too narrow for.
std::string_view draw_chips(const std::vector<Chip>& chips, float room) {
    std::string_view pressed;
    float used = 0.0F;
    const float gap = ImGui::GetStyle().ItemSpacing.x;
    for (const auto& chip : chips) {
        if (!chip.is_there) continue;
        const float width = width_of(chip);
        if (used > 0.0F && used + gap + width <= room) {
            ImGui::SameLine();
            used += gap;
        } else {
            used = 0.0F;
        }
        used += width;
        if (draw_chip(chip)) pressed = chip.command;
        draw_hint(with_key(chip.hint, chip.command));
    }
    return pressed;
}

float cut_field_width() { return scaled(84); }

// What comes next goes on the line of the last item where it has room there.
void go_on(float width, float right) {
    if (ImGui::GetItemRectMax().x + ImGui::GetStyle().ItemSpacing.x + width <= right) {
        ImGui::SameLine();
    }
}

// What is typed counts when it is left; what cannot be read is put back.
void draw_cut_field(const SeeingBar& bar, SeeingState& seeing, const CutRange& range) {
    auto& cut = *seeing.cut;
    const auto& shown = bar.derived.project->shown;
    FieldLook look;
    look.width = cut_field_width();
    look.wants_focus = seeing.cut_wants_typing;
    look.nudged = [&](const std::string& text, int by) {
        const auto read = engine::read_length(text, engine::bare_unit(shown));
        const double at = static_cast<double>(read ? read->nm() : cut.at);
        const double step = static_cast<double>(hand_step(shown).nm());
        cut.at = cut_place(at + by * step, range, shown);
        return tape_words(static_cast<double>(cut.at), shown);
    };
    seeing.cut_wants_typing = false;
    const auto field = draw_field("cut at", seeing.cut_typed, look);
    draw_hint("How far along, from the corner of the room; up and down move it by a mark");
    if (field.entered || field.left) {
        const auto read = engine::read_length(seeing.cut_typed, engine::bare_unit(shown));
        if (read) cut.at = std::clamp(read->nm(), range.least, std::max(range.least, range.most));
    }
    if (!field.active) seeing.cut_typed = tape_words(static_cast<double>(cut.at), shown);
}

std::string_view draw_cut_row(const SeeingBar& bar, SeeingState& seeing, float right) {
    if (!seeing.cut || seeing.way.alone) return {};
    std::string_view pressed;
    const auto range = cut_range(bar.scene, seeing.cut->axis);
    constexpr std::array ways{"across", "along", "up"};
    const auto axis = model::index_of(seeing.cut->axis);
    if (draw_chip({"cut axis", {}, std::string("cut ") + ways[axis], true, true, {}})) {
        pressed = "view.cut_axis";
    }
    draw_hint(with_key("Across, along or up", "view.cut_axis"));
    go_on(cut_field_width(), right);
    draw_cut_field(bar, seeing, range);
    const Chip side{"cut side", {}, "other side", false, true, {}};
    go_on(width_of(side), right);
    if (draw_chip(side)) pressed = "view.cut_side";
    draw_hint(with_key("Take away what stays, and keep what is taken away", "view.cut_side"));
    return pressed;
}

void draw_apart_row(SeeingState& seeing) {
    if (seeing.way.apart <= 0.0F || seeing.way.alone) return;
    const FontScope small(Type::small);
    ImGui::AlignTextToFramePadding();
    draw_text("apart", Type::small, colour::quiet);
    ImGui::SameLine();
    ImGui::SetNextItemWidth(scaled(150));
    ImGui::SliderFloat("###how far apart", &seeing.way.apart, 0.02F, 1.0F, "",
                       ImGuiSliderFlags_AlwaysClamp);
    log_item("how far apart", std::to_string(seeing.way.apart));
    draw_hint("The outermost pieces move furthest; no order of assembly is meant");
}

void draw_colour_row(SeeingState& seeing, float right) {
    auto& by = seeing.way.colour_by;
    if (by == ColourBy::metal) return;
    for (const auto one :
         {ColourBy::stock, ColourBy::mark, ColourBy::finding, ColourBy::clearance}) {
        const auto words = words_of(one);
        const Chip chip{words, {}, std::string(words), by == one, true, {}};
        if (one != ColourBy::stock) go_on(width_of(chip), right);
        if (draw_chip(chip)) by = one;
    }
}

ImU32 packed(const engine::Colour& colour) {
    return IM_COL32(colour.red, colour.green, colour.blue, 255);
}

void draw_row(const LegendRow& row, float room) {
    const float swatch = scaled(11);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float y = at.y + (ImGui::GetFontSize() - swatch) / 2;
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.AddRectFilled({at.x, y}, {at.x + swatch, y + swatch}, packed(row.colour));
    on.AddRect({at.x, y}, {at.x + swatch, y + swatch}, colour::edge);
    ImGui::Dummy({swatch, 0});
    ImGui::SameLine(0.0F, scaled(6));
    const std::string words = row.colour_name + ": " + row.words;
    const std::string count = " \xC3\x97 " + std::to_string(row.count);
    const float left = room - swatch - scaled(6) - size_of_text(count, Type::small).x;
    draw_text(text_to_fit(words, Type::small, left) + count, Type::small,
              row.count > 0 ? colour::ink : colour::faint);
    log_item(row.colour_name, row.words + count);
    draw_hint(words);
}

// Under the bar, and no wider than its words: it stands before the skeleton.
Area draw_legend(const std::vector<LegendRow>& legend, const Area& bar, float room) {
    if (legend.empty()) return bar;
    const PanelScope panel("Legend", {bar.x, bar.y + bar.height + scaled(4), 0, 0},
                           ImGuiWindowFlags_AlwaysAutoResize, Layer::floating);
    const FontScope small(Type::small);
    for (const auto& row : legend) draw_row(row, std::min(room, scaled(260)));
    const ImVec2 size = ImGui::GetWindowSize();
    return {bar.x, bar.y, std::max(bar.width, size.x), bar.height + scaled(4) + size.y};
}

std::string_view draw_rows(const SeeingBar& bar, SeeingState& seeing, const Area& at, float room) {
    const PanelScope panel("Seeing", at, ImGuiWindowFlags_AlwaysAutoResize, Layer::floating);
    const float right = at.x + ImGui::GetStyle().WindowPadding.x + room;
    std::string_view pressed = draw_chips(chips_of(bar, seeing), room);
    const auto of_cut = draw_cut_row(bar, seeing, right);
    if (!of_cut.empty()) pressed = of_cut;
    draw_apart_row(seeing);
    draw_colour_row(seeing, right);
    const ImVec2 size = ImGui::GetWindowSize();
    seeing.bar = {at.x, at.y, size.x, size.y};
    return pressed;
}

}  // namespace

std::string_view draw_seeing_bar(const SeeingBar& bar, SeeingState& seeing) {
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(6, 5));
    const StyleScope frame(ImGuiStyleVar_FramePadding, scaled(6, 2));
    const StyleScope spacing(ImGuiStyleVar_ItemSpacing, scaled(2, 3));
    const StyleScope rounding(ImGuiStyleVar_WindowRounding, scaled(4));
    const ColourScope ground(ImGuiCol_WindowBg, colour::with_alpha(colour::panel, 235));
    const float room = std::max(scaled(120), bar.view.width - scaled(32));
    const Area at{bar.view.x + scaled(10), bar.view.y + scaled(10), 0, 0};
    const auto pressed = draw_rows(bar, seeing, at, room);
    seeing.bar = draw_legend(bar.legend, seeing.bar, room);
    return pressed;
}

}  // namespace editor
