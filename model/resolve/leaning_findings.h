// What a leaning member has to say: each finding with its numbers and its mend.
#pragma once

#include "model/resolve/finding.h"

#include <cstddef>
#include <string>

namespace model {

Finding leaning_of_no_angle(Subject leaning, const std::string& section);
Finding leaning_along_axis(Subject leaning);
Finding leaning_without_face(Subject leaning, const std::string& plane);
Finding leaning_without_room(Subject leaning, engine::Length between_nodes);

// It stands so far across its run from the line between its nodes.
Finding leaning_moved_in(Subject leaning, const std::string& moved_in_words, engine::Length by);

// An end that no fastener holds; 0: at its first node, 1: at its second.
Finding leaning_end_loose(Subject leaning, std::size_t end, engine::Length reach);

}  // namespace model
