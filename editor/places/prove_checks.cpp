#include "editor/check_words.h"
#include "editor/kit/widgets.h"
#include "editor/places/finding_list.h"
#include "editor/places/prove_sheets.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace editor {
namespace {

ImU32 colour_of(const model::CheckCount& count) {
    if (count.errors > 0) return colour::red;
    return count.warnings > 0 ? colour::amber : colour::quiet;
}

Selection all_of_kind(const Derived& derived, model::CheckKind kind) {
    std::vector<model::Subject> concerns;
    for (const auto& finding : derived.findings) {
        if (kind_of(finding) != kind) continue;
        for (const auto& subject : finding.concerns) {
            if (std::ranges::find(concerns, subject) == concerns.end()) concerns.push_back(subject);
        }
    }
    return selection_of_subjects(*derived.project, derived.resolved, concerns);
}

void draw_check(const model::CheckRow& row,
                const Derived& derived,
                ProveState& state,
                Selection& selection) {
    const auto& count = count_of(derived, row.kind);
    const std::string words = state_words(derived, row.kind);
    const std::string name(row.title);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const bool is_chosen = state.kind == row.kind;
    const bool clicked = draw_row(name, " ", is_chosen, true).clicked;
    log_item(name, words);
    draw_hint(row.checked);
    ImGui::SameLine(0, 0);
    draw_text(row.title, count.open() > 0 ? Type::strong : Type::text);
    ImGui::TableNextColumn();
    draw_text_right(words, colour_of(count));
    if (!clicked) return;
    state.kind = is_chosen ? std::nullopt : std::optional(row.kind);
    state.findings.of.reset();  // other lines are listed
    selection = is_chosen ? Selection{} : all_of_kind(derived, row.kind);
}

void draw_kinds(const Derived& derived, ProveState& state, Selection& selection, float height) {
    const ChildScope list("kinds", {0, height});
    const StyleScope tight(ImGuiStyleVar_CellPadding, scaled(4, 1));
    const TableScope table("kinds", 2);
    if (!table) return;
    ImGui::TableSetupColumn("check", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("found", ImGuiTableColumnFlags_WidthFixed,
                            size_of_text("no opening measured", Type::text).x + scaled(6));
    for (const auto& row : model::check_rows) draw_check(row, derived, state, selection);
}

// The groups of findings that are listed.
std::vector<std::size_t> groups_listed(const Derived& derived, const ProveState& state) {
    std::vector<std::size_t> groups;
    for (std::size_t i = 0; i < derived.finding_groups.size(); ++i) {
        const auto& first = derived.findings[derived.finding_groups[i].findings[0]];
        if (!state.kind || kind_of(first) == *state.kind) groups.push_back(i);
    }
    return groups;
}

struct GroupText {
    SeverityWord look;
    std::string where;
    std::string what;
    std::string mend;
};

GroupText text_of(const Derived& derived, std::size_t group) {
    const auto& it = derived.finding_groups[group];
    const auto& first = derived.findings[it.findings[0]];
    return {word_of(first.severity), where_words(it, derived.findings), first.what, first.mend};
}

TableLine line_of(const Derived& derived, std::size_t group) {
    const auto text = text_of(derived, group);
    const auto& it = derived.finding_groups[group];
    const auto& first = derived.findings[it.findings[0]];
    const std::string check(model::row_of(kind_of(first)).title);
    std::string words = std::string(text.look.word) + " " + check + " " + text.where + " " +
                        text.what + " " + text.mend;
    for (const auto& subject : it.concerns) words += " " + subject.name;
    const double severity = first.severity == model::Severity::error     ? 0.0
                            : first.severity == model::Severity::warning ? 1.0
                                                                         : 2.0;
    return {words, {severity, static_cast<double>(it.findings.size()), text.where}};
}

std::string words_in_two(const GroupText& text) {
    return text.where.empty() ? text.what : text.where;
}

bool draw_group(const LineAt& at, std::size_t group, const Derived& derived) {
    const auto text = text_of(derived, group);
    const std::string name = "finding " + std::to_string(group + 1);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const float height = 2 * ImGui::GetTextLineHeight() + scaled(2);
    const ImVec2 before = ImGui::GetCursorPos();
    const bool clicked =
        ImGui::Selectable("##line", at.is_marked, ImGuiSelectableFlags_SpanAllColumns, {0, height});
    log_item(name, text.what);
    draw_hint(text.what + (text.mend.empty() ? "" : "\n" + text.mend));
    ImGui::SetCursorPos(before);
    draw_text(text.look.word, Type::strong, text.look.colour);
    ImGui::TableNextColumn();
    draw_text_right(std::to_string(derived.finding_groups[group].findings.size()), colour::quiet);
    ImGui::TableNextColumn();
    const float room = ImGui::GetContentRegionAvail().x;
    draw_text(text_to_fit(words_in_two(text), Type::text, room));
    if (!text.where.empty()) {
        draw_text(text_to_fit(text.what, Type::small, room), Type::small, colour::quiet);
    } else {
        draw_text(text_to_fit(text.mend, Type::small, room), Type::small, colour::quiet);
    }
    return clicked;
}

void draw_findings(const Derived& derived,
                   const std::vector<std::size_t>& groups,
                   ProveState& state,
                   Selection& selection,
                   float below) {
    const auto chosen = selected_pieces(*derived.project, derived.resolved, selection);
    const TableScope table("findings", 3, sorted_table_flags, {0, -below});
    if (!table) return;
    const float look = size_of_text("Look at", Type::strong).x + scaled(16);
    ImGui::TableSetupColumn("How bad", ImGuiTableColumnFlags_WidthFixed, look, 1);
    ImGui::TableSetupColumn("Places", ImGuiTableColumnFlags_WidthFixed,
                            size_of_text("Places", Type::small).x + scaled(16), 2);
    ImGui::TableSetupColumn("Where, what", ImGuiTableColumnFlags_WidthStretch, 0.0F, 3);
    draw_heads(state.findings);
    draw_lines(state.findings, selection,
               {[&](std::size_t line) {
                    return is_concerned(*derived.project, derived.resolved, selection, chosen,
                                        derived.finding_groups[groups[line]].concerns);
                },
                [&](std::size_t line) {
                    return selection_of_subjects(*derived.project, derived.resolved,
                                                 derived.finding_groups[groups[line]].concerns);
                },
                [&](const LineAt& at) { return draw_group(at, groups[at.line], derived); }});
}

// The one finding whose things are chosen: it is told whole.
std::optional<std::size_t> told_whole(const Derived& derived, const Selection& selection) {
    const auto& groups = derived.finding_groups;
    if (selection.subjects.empty()) return std::nullopt;
    const auto at = std::ranges::find(groups, selection.subjects, &FindingGroup::concerns);
    if (at == groups.end()) return std::nullopt;
    return static_cast<std::size_t>(at - groups.begin());
}

}  // namespace

std::optional<Change> draw_checks(const Derived& derived,
                                  ProveState& state,
                                  Selection& selection,
                                  FindingHands hands) {
    const float line = ImGui::GetTextLineHeight() + scaled(2) + ImGui::GetStyle().ItemSpacing.y / 2;
    const float room = ImGui::GetContentRegionAvail().y;
    const float all = line * static_cast<float>(model::check_rows.size()) + scaled(4);
    draw_kinds(derived, state, selection, std::min(all, room * 0.45F));
    draw_rule();
    if (derived.findings.empty()) {
        draw_text(derived.project->frames.empty() ? "Nothing to prove yet" : "Nothing to mend",
                  Type::text, colour::quiet);
        log_item("nothing to mend");
        return std::nullopt;
    }
    const auto groups = groups_listed(derived, state);
    bring_up_to_date(state.findings, worked_out_of(derived), [&] {
        std::vector<TableLine> lines;
        for (const auto group : groups) lines.push_back(line_of(derived, group));
        return lines;
    });
    draw_search("Find", state.findings);
    const auto whole = told_whole(derived, selection);
    const float width = ImGui::GetContentRegionAvail().x;
    const float card = whole ? height_of_finding(derived, *whole, width) + scaled(8) : 0.0F;
    const float told_height = whole ? card + state.told_height : 0.0F;
    const float most = ImGui::GetContentRegionAvail().y * 0.65F;  // the others are seen above it
    draw_findings(derived, groups, state, selection, std::min(told_height, most));
    if (!whole) return std::nullopt;
    const ChildScope told("told");
    const ItemScope items("told");
    return draw_finding(derived, *whole, selection, state.told_height, hands);
}

}  // namespace editor
