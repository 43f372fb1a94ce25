// The sheets of Prove. Only files of this folder use it.
#pragma once

#include "editor/places/finding_help.h"
#include "editor/places/prove.h"

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace editor {

// The kinds of checks with what each found, the findings below; the one that is chosen is told
// whole, with mends as buttons.
std::optional<Change> draw_checks(const Derived& derived,
                                  ProveState& state,
                                  Selection& selection,
                                  FindingHands hands);

// How near each frame comes to obstacles and other frames.
void draw_room_rows(const ProveFacts& now, ProveState& state, Selection& selection);

// Diagonals for the tape.
void draw_square(const Derived& derived, ProveState& state, Selection& selection);

// The openings as they were measured.
void draw_as_built(const Derived& derived, ProveState& state, Selection& selection);

// The row that the view measures stays the same one where it is still there.
template <class Row, class Same>
void keep_same_row(std::optional<std::size_t>& shown,
                   const std::vector<Row>& before,
                   const std::vector<Row>& now,
                   Same same) {
    if (!shown || *shown >= before.size()) return;
    const auto old = std::exchange(shown, std::nullopt);
    for (std::size_t i = 0; i < now.size(); ++i) {
        if (same(before[*old], now[i])) shown = i;
    }
}

// Chooses these pieces, and what else is meant.
Selection choice_of(const Derived& derived,
                    const std::vector<model::Index>& pieces,
                    std::vector<model::Subject> subjects);

std::vector<model::Index> pieces_of_frame(const Derived& derived, std::string_view frame);

}  // namespace editor
