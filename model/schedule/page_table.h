// Tables on paper: columns as wide as what stands in them, heads again on each page.
#pragma once

#include "engine/drawing/lettering.h"
#include "model/schedule/page_flow.h"

#include <string>
#include <vector>

namespace model {

struct TableColumn {
    std::string head;
    engine::TextAnchor anchor = engine::TextAnchor::start;
    engine::LetterWeight weight = engine::LetterWeight::regular;
    bool is_box = false;          // an empty box to tick or sign, beside which its text stands
    bool box_needs_text = false;  // no box where there is no text
};

using TableCells = std::vector<std::string>;  // one for each column

// From where the flow stands to where the table ends. What is too wide for the page is broken into
// lines, in the widest columns first; a row that no page holds goes on on the next one.
void draw_table(PageFlow& flow,
                const std::vector<TableColumn>& columns,
                const std::vector<TableCells>& rows,
                double size = 3.5);

}  // namespace model
