#include "editor/kit/widgets.h"
#include "editor/places/make_tables.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace editor {
namespace {

using model::Index;

std::string count_words(const JoinedLine& line) {
    const std::string count = std::to_string(line.count);
    return line.count < line.wanted ? count + " of " + std::to_string(line.wanted) : count;
}

struct JoinedColumns {
    ColumnWidth count{"Set"};
    ColumnWidth fastener{"Fastener"};
    ColumnWidth stack{"Stack"};
    ColumnWidth marks{"Through"};

    std::array<const ColumnWidth*, 4> all() const { return {&count, &fastener, &stack, &marks}; }
};

std::string stack_text(const JoinedLine& line, const Derived& derived) {
    return line.count == 0 ? "" : model::length_text(*derived.project, line.stack);
}

std::string fastener_text(const JoinedLine& line) {
    return line.fastener.empty() ? "none fits" : line.fastener;
}

JoinedColumns columns_of(const std::vector<JoinedLine>& lines, const Derived& derived) {
    JoinedColumns columns;
    for (const auto& line : lines) {
        columns.count.add(count_words(line), Type::strong);
        columns.fastener.add(fastener_text(line));
        columns.stack.add(stack_text(line, derived));
        columns.marks.add(line.marks);
    }
    return columns;
}

void set_up(const JoinedColumns& columns) {
    unsigned id = 0;
    for (const auto* column : columns.all()) column->set_up(++id);
    ImGui::TableSetupColumn("Joins", ImGuiTableColumnFlags_WidthStretch, 0.0F, ++id);
}

void set_up_narrow(const JoinedColumns& columns) {
    columns.count.set_up(1);
    columns.stack.set_up(3);
    ImGui::TableSetupColumn("Fastener, joins", ImGuiTableColumnFlags_WidthStretch, 0.0F, 2);
}

TableLine line_of(const JoinedLine& line, const Derived& derived) {
    return {count_words(line) + " " + fastener_text(line) + " " + stack_text(line, derived) + " " +
                line.marks + " " + line.members,
            {static_cast<double>(line.count), fastener_text(line), line.stack.mm(), line.marks,
             line.members}};
}

std::vector<TableLine> lines_of(const std::vector<JoinedLine>& lines, const Derived& derived) {
    std::vector<TableLine> all;
    for (const auto& line : lines) all.push_back(line_of(line, derived));
    return all;
}

void draw_members(const JoinedLine& line) {
    const float room = ImGui::GetContentRegionAvail().x;
    draw_text(text_to_fit(line.members, Type::small, room), Type::small, colour::quiet);
    log_item("joins", line.members);
    draw_hint(line.members);
}

void draw_fastener(const JoinedLine& line) {
    const float room = ImGui::GetContentRegionAvail().x;
    draw_text(text_to_fit(fastener_text(line), Type::text, room),
              line.count < line.wanted ? colour::amber : colour::ink);
    log_item("fastener", fastener_text(line));
}

void draw_wide(const JoinedLine& line, const Derived& derived) {
    ImGui::TableNextColumn();
    draw_fastener(line);
    ImGui::TableNextColumn();
    draw_text_right(stack_text(line, derived));
    ImGui::TableNextColumn();
    draw_text(line.marks);
    ImGui::TableNextColumn();
    draw_members(line);
}

// On two lines, where the panel is narrow.
void draw_narrow(const JoinedLine& line, const Derived& derived) {
    ImGui::TableNextColumn();
    draw_text_right(stack_text(line, derived));
    ImGui::TableNextColumn();
    draw_fastener(line);
    draw_members(line);
}

bool draw_line(const LineAt& at, const JoinedLine& line, const Derived& derived, bool narrow) {
    const std::string name = "fasteners " + std::to_string(at.line + 1);
    const bool clicked = draw_line_start(name, count_words(line), at.is_marked);
    const ItemScope items(name);
    narrow ? draw_narrow(line, derived) : draw_wide(line, derived);
    return clicked;
}

// Of a chosen piece all its joints are marked, of several those that join two of them.
bool is_marked(const JoinedLine& line, const std::vector<Index>& chosen) {
    const auto held = std::ranges::count_if(
        line.pieces, [&](Index piece) { return std::ranges::find(chosen, piece) != chosen.end(); });
    return held >= (chosen.size() > 1 ? 2 : 1);
}

}  // namespace

void draw_joined_table(const Derived& derived,
                       const std::vector<JoinedLine>& lines,
                       const std::vector<Index>& chosen,
                       TableOrder& order,
                       Selection& selection) {
    bring_up_to_date(order, worked_out_of(derived), [&] { return lines_of(lines, derived); });
    const ItemScope items("joined");
    draw_search("Find", order);
    const JoinedColumns& columns = kept_columns(order, [&] { return columns_of(lines, derived); });
    const bool narrow = is_narrow(columns.all(), 150.0F);
    const TableScope table(narrow ? "narrow joined" : "joined", narrow ? 3 : 5, sorted_table_flags);
    if (!table) return;
    narrow ? set_up_narrow(columns) : set_up(columns);
    draw_heads(order);
    draw_lines(order, selection,
               {[&](std::size_t line) { return is_marked(lines[line], chosen); },
                [&](std::size_t line) {
                    return selection_of(*derived.project, derived.resolved, lines[line].pieces);
                },
                [&](const LineAt& at) { return draw_line(at, lines[at.line], derived, narrow); }});
}

}  // namespace editor
