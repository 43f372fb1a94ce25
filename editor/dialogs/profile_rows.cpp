#include "editor/dialogs/profile_rows.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>

namespace editor {
namespace {

struct Columns {
    const char* place;  // across the surface
    const char* in;     // how far it stands in there
    const char* more;   // on the button that adds a row
};

constexpr Columns of_wall{"height", "stands in by", "+ height"};
constexpr Columns of_ceiling{"X", "comes down by", "+ place"};

std::array<model::Formula*, 2> cells_of(model::WallProfile::Offset& offset) {
    return {&offset.height, &offset.inset};
}

std::array<model::Formula*, 2> cells_of(model::CeilingProfile::Offset& offset) {
    return {&offset.across, &offset.drop};
}

// `name` tells the tables of one form apart.
template <class Offset>
void draw_offsets(CheckedFields& fields,
                  const std::string& name,
                  const Columns& columns,
                  std::vector<Offset>& offsets) {
    std::optional<std::size_t> gone;
    if (const TableScope table(name.c_str(), 3); table) {
        ImGui::TableSetupColumn(columns.place, ImGuiTableColumnFlags_WidthStretch);
        ImGui::TableSetupColumn(columns.in, ImGuiTableColumnFlags_WidthStretch);
        ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, scaled(24));
        {
            const FontScope small(Type::small);
            const ColourScope quiet(ImGuiCol_Text, colour::quiet);
            ImGui::TableHeadersRow();
        }
        for (std::size_t i = 0; i < offsets.size(); ++i) {
            const std::string row = name + " " + std::to_string(i + 1);
            const auto cells = cells_of(offsets[i]);
            ImGui::TableNextRow();
            ImGui::TableNextColumn();
            fields.draw_cell(row + " place", row + ", " + columns.place, *cells[0]);
            ImGui::TableNextColumn();
            fields.draw_cell(row + " in", row + ", " + columns.in, *cells[1]);
            ImGui::TableNextColumn();
            if (draw_button(
                    "Remove " + row,
                    {.text = "\xC3\x97", .weight = Weight::link, .enabled = offsets.size() > 1})) {
                gone = i;
            }
        }
    }
    fields.draw_faults();
    if (gone) offsets.erase(offsets.begin() + static_cast<std::ptrdiff_t>(*gone));
    if (draw_button("New in " + name, {.text = columns.more, .weight = Weight::link})) {
        offsets.push_back(offsets.empty() ? Offset{"0", "0"} : offsets.back());
    }
}

// Gives whether the station is to go.
template <class Station>
bool draw_station(CheckedFields& fields,
                  std::size_t number,
                  const Columns& columns,
                  Station& station) {
    const std::string name = "station " + std::to_string(number);
    const IdScope id(static_cast<int>(number));
    fields.draw_length("then at Y", name + " along", station.along, "between from and to");
    ImGui::SameLine();
    const bool is_gone =
        draw_button("Remove " + name, {.text = "Remove this station", .weight = Weight::link});
    draw_offsets(fields, name, columns, station.offsets);
    return is_gone;
}

template <class Profile>
void draw_rows(CheckedFields& fields, const Columns& columns, Profile& profile) {
    const float row = ImGui::GetFrameHeight() + 2 * ImGui::GetStyle().CellPadding.y;
    const float room = ImGui::GetIO().DisplaySize.y - scaled(430);
    std::size_t rows = profile.offsets.size() + 3;
    for (const auto& station : profile.stations) rows += station.offsets.size() + 4;
    const float height =
        std::clamp(row * static_cast<float>(rows), 4 * row, std::max(4 * row, room));
    const ChildScope list("offsets", {0, height});
    draw_offsets(fields, "begin", columns, profile.offsets);
    std::optional<std::size_t> gone;
    for (std::size_t i = 0; i < profile.stations.size(); ++i) {
        if (draw_station(fields, i + 1, columns, profile.stations[i])) gone = i;
    }
    if (gone) profile.stations.erase(profile.stations.begin() + static_cast<std::ptrdiff_t>(*gone));
    if (draw_button("New station", {.text = "+ station further along", .weight = Weight::link})) {
        const auto& last =
            profile.stations.empty() ? profile.offsets : profile.stations.back().offsets;
        profile.stations.push_back({profile.to, last});
    }
    draw_hint("Where the section is another one; between two stations it is straight");
}

}  // namespace

void draw_wall_rows(CheckedFields& fields, model::WallProfile& wall) {
    draw_rows(fields, of_wall, wall);
}

void draw_ceiling_rows(CheckedFields& fields, model::CeilingProfile& ceiling) {
    draw_rows(fields, of_ceiling, ceiling);
}

}  // namespace editor
