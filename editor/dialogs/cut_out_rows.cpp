#include "editor/dialogs/cut_out_rows.h"

#include "editor/by_name.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/panel_facts.h"

#include <algorithm>
#include <array>
#include <optional>

namespace editor {
namespace {

// More of them scroll.
constexpr std::size_t most_rows_seen = 5;

void set_up_columns(const model::Panel& panel) {
    const auto axes = model::across(panel.face_axis);
    ImGui::TableSetupColumn("name", ImGuiTableColumnFlags_WidthStretch, 1.3F);
    for (const char* side : {"from", "to"}) {
        for (const auto axis : axes) {
            ImGui::TableSetupColumn((std::string(side) + ", " + word_of(axis)).c_str(),
                                    ImGuiTableColumnFlags_WidthStretch, 1.0F);
        }
    }
    ImGui::TableSetupColumn("vent", ImGuiTableColumnFlags_WidthFixed, scaled(34));
    ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, scaled(24));
    const FontScope small(Type::small);
    const ColourScope quiet(ImGuiCol_Text, colour::quiet);
    ImGui::TableHeadersRow();
}

// Whether it is to go.
bool draw_cut_out(model::CutOut& cut_out, std::size_t number) {
    const std::string row = "cut-out " + std::to_string(number + 1);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    draw_field(row + " name", cut_out.name, {.hint = "cable"});
    for (std::size_t i = 0; i < 4; ++i) {
        ImGui::TableNextColumn();
        const bool is_least = i < 2;
        auto& text = is_least ? cut_out.least[i] : cut_out.most[i - 2];
        draw_field(row + (is_least ? " from " : " to ") + std::to_string(i % 2 + 1), text);
    }
    ImGui::TableNextColumn();
    draw_check(row + " vent", cut_out.is_vent, " ");
    ImGui::TableNextColumn();
    const bool is_gone = draw_button("Remove " + row, {.text = "\xC3\x97", .weight = Weight::link});
    draw_hint("Leave this cut-out away");
    return is_gone;
}

std::string free_name(const model::Panel& panel) {
    for (std::size_t n = panel.cut_outs.size() + 1;; ++n) {
        const auto name = "cut-out " + std::to_string(n);
        if (by_name(panel.cut_outs, name) == nullptr) return name;
    }
}

}  // namespace

void draw_cut_out_rows(model::Panel& panel) {
    ImGui::AlignTextToFramePadding();
    draw_text("Cut-outs", Type::strong);
    ImGui::SameLine();
    if (draw_button("New cut-out", {.text = "+ cut-out", .weight = Weight::link})) {
        panel.cut_outs.push_back({.name = free_name(panel)});
    }
    if (panel.cut_outs.empty()) return;
    ImGui::SameLine();
    draw_text("lengths from the panel's lower corner", Type::small, colour::quiet);
    const float row = ImGui::GetFrameHeight() + 2 * ImGui::GetStyle().CellPadding.y;
    const auto rows = std::min(panel.cut_outs.size(), most_rows_seen);
    const float heading = ImGui::GetTextLineHeight() + 2 * ImGui::GetStyle().CellPadding.y;
    const ImVec2 size{0, heading + row * static_cast<float>(rows) + scaled(2)};
    const TableScope table("cut-outs", 7, ImGuiTableFlags_ScrollY, size);
    if (!table) return;
    ImGui::TableSetupScrollFreeze(0, 1);
    set_up_columns(panel);
    std::optional<std::size_t> gone;
    for (std::size_t i = 0; i < panel.cut_outs.size(); ++i) {
        if (draw_cut_out(panel.cut_outs[i], i)) gone = i;
    }
    if (gone) panel.cut_outs.erase(panel.cut_outs.begin() + static_cast<std::ptrdiff_t>(*gone));
}

}  // namespace editor
