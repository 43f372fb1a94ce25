#include "editor/places/obstacle_list.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/obstacle_words.h"
#include "editor/places/table_columns.h"

namespace editor {
namespace {

model::Subject subject_of(const model::Obstacle& obstacle) {
    return {model::SubjectKind::obstacle, {}, obstacle.name};
}

std::string_view draw_new_things(const Derived& derived, Dialog& dialog) {
    std::string_view asked;
    if (draw_button("New obstacle", {.text = "+ obstacle", .weight = Weight::link})) {
        ImGui::OpenPopup("kinds");
    }
    draw_hint("What is in the van and cannot be moved, or must stay clear");
    if (const PopupScope kinds("kinds"); kinds) {
        for (const auto& row : obstacle_kinds) {
            if (draw_row(row.word, row.word, false).clicked) {
                if (row.kind == ObstacleKind::scan) {
                    asked = "room.scan";
                } else {
                    dialog = new_obstacle_form(derived, row.kind);
                }
                ImGui::CloseCurrentPopup();
            }
            draw_hint(row.hint);
        }
    }
    ImGui::SameLine();
    if (draw_button("Well by tape", {.text = "wheel well by the tape", .weight = Weight::link})) {
        asked = "room.well_by_tape";
    }
    draw_hint("Which lengths to take, where, and whether they agree");
    ImGui::SameLine();
    if (draw_button("Wall by tape", {.text = "wall by the tape", .weight = Weight::link})) {
        asked = "room.wall_by_tape";
    }
    draw_hint("From a plumb line, at some heights");
    return asked;
}

void draw_obstacle(const model::Obstacle& obstacle,
                   const std::string& near,
                   bool is_chosen,
                   const Derived& derived,
                   Selection& selection,
                   Dialog& dialog) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const float width = ImGui::GetContentRegionAvail().x;
    if (draw_button("obstacle " + obstacle.name,
                    {.text = text_to_fit(obstacle.name, Type::text, width - scaled(10)),
                     .weight = Weight::link})) {
        dialog = obstacle_form(obstacle);
    }
    draw_hint("Change " + obstacle.name + ", copy it or remove it");
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    const auto words = near.empty() ? "no shape" : near;
    const float room = ImGui::GetContentRegionAvail().x;
    if (draw_row("near " + obstacle.name, text_to_fit(words, Type::text, room), is_chosen)
            .clicked) {
        selection =
            selection_of_subjects(*derived.project, derived.resolved, {subject_of(obstacle)});
    }
    log_item("near " + obstacle.name, words);
    draw_hint("See it, and where anything comes nearest to it: " + words);
}

std::string kind_words(const model::Obstacle& obstacle, const Derived& derived) {
    const auto kind = kind_of(obstacle);
    std::string words = word_of(kind);
    if (obstacle.stays_clear && kind != ObstacleKind::kept_clear) words += ", stays clear";
    return words + ": " + size_words(obstacle, derived);
}

// Gives the command that was asked for.
std::string_view draw_findings(const model::Obstacle& obstacle,
                               const ObstacleFacts& facts,
                               const Derived& derived,
                               Selection& selection) {
    std::string_view asked;
    for (std::size_t i = 0; i < facts.findings.size(); ++i) {
        const auto& finding = facts.findings[i];
        if (finding.severity == model::Severity::note) continue;
        const bool is_error = finding.severity == model::Severity::error;
        draw_wrapped(finding.what, Type::small, is_error ? colour::red : colour::amber);
        log_item("of " + obstacle.name + ": " + finding.code, finding.what);
        draw_hint(finding.mend);
        if (ImGui::IsItemClicked()) {
            selection = selection_of_subjects(*derived.project, derived.resolved, finding.concerns);
        }
        if (finding.code != "scan_not_read") continue;
        if (draw_button("Read again", {.text = "read again", .weight = Weight::link})) {
            asked = "room.read_again";
        }
        draw_hint("Once the file is there and whole");
    }
    return asked;
}

}  // namespace

std::string_view draw_obstacle_list(const Derived& derived,
                                    const RoomFacts& facts,
                                    Selection& selection,
                                    Dialog& dialog) {
    draw_text("The room", Type::strong);
    ImGui::SameLine();
    draw_text("X across from the left wall, Y along the van, Z up", Type::small, colour::quiet);
    auto asked = draw_new_things(derived, dialog);
    const auto& room = derived.project->room;
    if (room.empty()) {
        draw_wrapped(
            "Nothing is in the way yet. Measure the wheel wells and walls first: everything keeps "
            "clear of them.",
            Type::small, colour::quiet);
    }
    for (std::size_t i = 0; i < room.size() && i < facts.obstacles.size(); ++i) {
        const auto& obstacle = room[i];
        const IdScope id(obstacle.name.c_str());
        const bool is_chosen = has_subject(selection, model::SubjectKind::obstacle, obstacle.name);
        if (const TableScope table("obstacle", 2); table) {
            ImGui::TableSetupColumn("name", ImGuiTableColumnFlags_WidthStretch, 1.0F);
            ImGui::TableSetupColumn("near", ImGuiTableColumnFlags_WidthStretch, 1.2F);
            draw_obstacle(obstacle, near_words(facts.obstacles[i], derived), is_chosen, derived,
                          selection, dialog);
        }
        const auto words = kind_words(obstacle, derived);
        draw_wrapped(words, Type::small, colour::quiet);
        log_item("kind of " + obstacle.name, words);
        const auto again = draw_findings(obstacle, facts.obstacles[i], derived, selection);
        if (!again.empty()) asked = again;
    }
    return asked;
}

}  // namespace editor
