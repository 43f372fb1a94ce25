#include "editor/dialogs/wall_survey.h"

#include "editor/dialogs/form_line.h"
#include "editor/dialogs/survey_parts.h"
#include "editor/dialogs/survey_picture.h"
#include "editor/dimension_values.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/obstacle_words.h"

#include <array>
#include <cstddef>

namespace editor {
namespace {

void draw_place(CheckedFields& fields, WallSurvey& survey) {
    draw_radio_line<model::Sense>("wall is at", survey.inside,
                                  {{model::Sense::plus, "left of the line: smaller X"},
                                   {model::Sense::minus, "right of it: larger X"}});
    fields.draw_length("plumb line, X", "line", survey.line, "where it hangs");
    fields.draw_lengths({"wall from Y", "from", survey.from, "0"},
                        {"to Y", "to", survey.to, "its far end"});
}

void draw_row(CheckedFields& fields, WallSurvey& survey, std::size_t index) {
    auto& row = survey.rows[index];
    const std::string name = "row " + std::to_string(index + 1);
    struct Cell {
        char letter;
        const char* name;
        std::string* text;
        bool may_be_empty;
    };
    const std::array<Cell, 4> cells{{{'a', " height", &row.height, false},
                                     {'b', " to wall", &row.to_wall, false},
                                     {'c', " to other", &row.to_other, true},
                                     {'d', " across", &row.across, true}}};
    ImGui::TableNextRow();
    for (const auto& cell : cells) {
        ImGui::TableNextColumn();
        const std::string field = name + cell.name;
        if (fields.draw_cell(field, field, *cell.text, cell.may_be_empty)) {
            survey.active = cell.letter;
        }
    }
    ImGui::TableNextColumn();
}

void draw_rows(CheckedFields& fields, WallSurvey& survey) {
    std::optional<std::size_t> gone;
    if (const TableScope table("heights", 5); table) {
        for (const char* heading : {"a height", "b to the wall", "c to the other", "d across"}) {
            ImGui::TableSetupColumn(heading, ImGuiTableColumnFlags_WidthStretch);
        }
        ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, scaled(24));
        {
            const FontScope small(Type::small);
            const ColourScope quiet(ImGuiCol_Text, colour::quiet);
            ImGui::TableHeadersRow();
        }
        for (std::size_t i = 0; i < survey.rows.size(); ++i) {
            draw_row(fields, survey, i);
            if (draw_button("Remove row " + std::to_string(i + 1),
                            {.text = "\xC3\x97",
                             .weight = Weight::link,
                             .enabled = survey.rows.size() > 1})) {
                gone = i;
            }
        }
    }
    fields.draw_faults();
    if (gone) survey.rows.erase(survey.rows.begin() + static_cast<std::ptrdiff_t>(*gone));
    if (draw_button("New row", {.text = "+ height", .weight = Weight::link})) {
        survey.rows.emplace_back();
    }
    ImGui::SameLine();
    draw_text("c and d check each other; the lowest is the wall's foot", Type::small,
              colour::quiet);
}

std::optional<model::WallProfile> wall_of(const WallSurvey& survey,
                                          const model::WallTape& tape,
                                          const Derived& derived) {
    const auto line = read_length(survey.line, derived);
    const auto from = read_length(survey.from, derived);
    const auto to = read_length(survey.to, derived);
    if (!line || !from || !to) return std::nullopt;
    return model::wall_as_measured(survey.inside, *line, *from, *to, tape);
}

model::SurveyWall edit_of(const WallSurvey& survey,
                          const model::WallTape& tape,
                          const Derived& derived) {
    model::SurveyWall edit{.obstacle = survey.name,
                           .inside = survey.inside,
                           .line = survey.line,
                           .from = survey.from,
                           .to = survey.to,
                           .note = note_of(model::wall_closings(tape, derived.project->shown),
                                           derived.project->shown)};
    for (const auto& row : survey.rows) edit.readings.push_back({row.height, row.to_wall});
    return edit;
}

}  // namespace

WallSurvey new_wall_survey(const Derived& derived) {
    WallSurvey survey{.name = free_obstacle_name(*derived.project, "wall")};
    const bool in_mm = is_metric(derived.project->shown);
    for (const char* height : in_mm ? std::array{"0", "600 mm", "1200 mm", "1800 mm"}
                                    : std::array{"0", "24 in", "48 in", "72 in"}) {
        survey.rows.push_back({.height = height});
    }
    return survey;
}

model::WallTape tape_of(const WallSurvey& survey, const Derived& derived) {
    model::WallTape tape;
    for (const auto& row : survey.rows) {
        tape.rows.push_back({read_length(row.height, derived), read_length(row.to_wall, derived),
                             read_length(row.to_other, derived), read_length(row.across, derived)});
    }
    return tape;
}

FormOutcome draw_wall_survey(WallSurvey& survey,
                             const Derived& derived,
                             const model::Catalogue& catalogue) {
    const DialogScope dialog("Wall", "A wall by the tape, from a plumb line", scaled(720),
                             DialogScope::Fields::scroll);
    if (!dialog) return {};
    CheckedFields fields(derived, &survey.asked);
    draw_form_line("name", survey.name, "left wall", survey.is_fresh);
    draw_place(fields, survey);
    constexpr float picture = 240.0F;
    draw_beside_picture(
        picture,
        [&] { draw_wall_picture(picture, survey.active, survey.inside == model::Sense::minus); },
        [&] { draw_rows(fields, survey); });
    const auto tape = tape_of(survey, derived);
    draw_closings(model::wall_closings(tape, derived.project->shown), derived.project->shown);
    if (const auto wall = wall_of(survey, tape, derived))
        draw_measured(survey.trial, *wall, derived, catalogue);
    const bool can_put = !survey.name.empty();
    return draw_survey_end(survey, can_put, fields.are_all_known(), derived,
                           [&] { return edit_of(survey, tape, derived); });
}

}  // namespace editor
