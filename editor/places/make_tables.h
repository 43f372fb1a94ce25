// What the tables of Make share. Only files of this folder use it.
#pragma once

#include "editor/places/make.h"
#include "editor/places/table_columns.h"

#include <span>
#include <string>
#include <vector>

namespace editor {

// Begins a line that can be chosen; the first cell's text comes with it.
bool draw_line_start(const std::string& name, const std::string& text, bool chosen);

// Less room than that is left beside columns of these widths.
bool is_narrow(std::span<const ColumnWidth* const> columns, float least_room);

// A column that holds two things, one below the other; it is sorted by the one above.
void set_up_fixed(const char* name,
                  const ColumnWidth& above,
                  const ColumnWidth& below,
                  unsigned id);

std::string mark_name(const Derived& derived, model::Index mark);

std::vector<model::Index> pieces_of(const Derived& derived, model::Index mark, model::Hand hand);

bool is_chosen(const std::vector<model::Index>& chosen,
               const Derived& derived,
               model::Index mark,
               model::Hand hand);

void draw_cut_table(const Derived& derived,
                    const std::vector<model::Index>& chosen,
                    TableOrder& order,
                    Selection& selection);

void draw_drill_table(const Derived& derived,
                      const std::vector<model::Index>& chosen,
                      TableOrder& order,
                      Selection& selection);

void draw_joined_table(const Derived& derived,
                       const std::vector<JoinedLine>& lines,
                       const std::vector<model::Index>& chosen,
                       TableOrder& order,
                       Selection& selection);

}  // namespace editor
