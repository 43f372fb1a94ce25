// The drill table of a mark as lines of paper, by fence setting: what is set first, then the holes
// that are drilled so.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/mark_facts.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace model {

struct ListedText {
    double left = 0.0;  // mm from the line's left end
    std::string words;
    engine::Lettering lettering;
};

struct ListedLine {
    double height = 0.0;  // mm
    std::vector<ListedText> texts;
    bool has_box = false;          // to be ticked with a pen
    bool has_rule = false;         // above it
    bool keeps_with_next = false;  // never last in a column
    bool tells_all = false;        // what all holes of the list are drilled with
    bool tells_mates = false;      // what the holes under it meet, as far as `needs_mates` goes
    bool needs_mates = false;      // a hole whose mates stand in a line above it
    std::optional<Index> hole;     // whose sign stands at its right end; in Resolved::holes
};

// `width`: mm of paper that a line may take.
std::vector<ListedLine> mark_drill_list(const Project& project,
                                        const MarkFacts& facts,
                                        double width);

// What is said once more where the list goes on with line `next` in another column, for who reads
// that column alone: what all holes are drilled with; and where no setting begins there, how the
// piece lies, what is drilled so, and what the hole meets.
std::vector<ListedLine> told_again(const std::vector<ListedLine>& list, std::size_t next);

double height_of(const std::vector<ListedLine>& lines);

void draw_listed_line(engine::Page& page,
                      engine::PageBox place,
                      const Resolved& resolved,
                      const ListedLine& line);

}  // namespace model
