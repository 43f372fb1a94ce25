// How the piece of a mark lies on paper: its scale, its breaks, and the room that its numbers take
// around it.
#pragma once

#include "model/book/letter_sizes.h"
#include "model/book/mark_lengthwise.h"
#include "model/book/mark_ordinates.h"

#include <vector>

namespace model {

// Millimetres of paper, but for the ordinates.
struct MarkLayout {
    static constexpr double number_size = working_letters;
    static constexpr double hole_size = 3.2;            // numbers of holes
    static constexpr double pitch = 6.0;                // from one number to the next
    static constexpr double name_size = plain_letters;  // of its walls
    static constexpr double name_pitch = 3.8;
    static constexpr double leader = 9.0;  // from the piece to its numbers
    static constexpr double below_leader = 6.0;
    static constexpr double note_height = 6.0;  // the scale, below all

    MarkOrdinates ordinates;
    double scale = 1.0;  // mm of the piece for each mm of paper
    MarkLengthwise lengthwise;
    double piece_width = 0.0;
    double above = 13.0;           // words over the piece
    std::vector<int> name_levels;  // of its walls: 0, or that many lines up where they crowd
    double left_room = 0.0;
    double right_room = 0.0;
    bool is_turned_below = false;  // gauges are read from the right
    double below_pitch = pitch;
    double below_room = 5.0;
    bool has_more = false;  // distances that only the table tells

    double width() const { return left_room + piece_width + right_room; }
    double height() const { return above + lengthwise.height() + below_room + note_height; }
};

// How much paper the piece may take along its length.
struct MarkRoom {
    double wanted = 0.0;
    double most = 0.0;  // where its numbers need more
};

MarkLayout mark_layout(const Project& project,
                       const Resolved& resolved,
                       const MarkFacts& facts,
                       const MarkRoom& room);

}  // namespace model
