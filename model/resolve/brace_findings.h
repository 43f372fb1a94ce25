// What a brace has to say: each finding with its numbers and its mend.
#pragma once

#include "model/resolve/finding.h"

#include <cstddef>
#include <string>

namespace model {

Finding brace_of_no_flat(Subject diagonal, const std::string& section);
Finding brace_on_wrong_axis(Subject diagonal, const std::string& plane);
Finding brace_without_length(Subject diagonal);
Finding brace_along_axis(Subject diagonal);
Finding brace_without_face(Subject diagonal, const std::string& plane);
Finding brace_without_room(Subject diagonal, engine::Length between_nodes);

// An end that no fastener holds; 0: at its first node, 1: at its second.
Finding brace_end_loose(Subject diagonal, std::size_t end, engine::Length reach);

// The panel and the brace, or the leaning member, are in the same place; of a panel with corners or
// openings cut out of it that is not sure.
Finding panel_on_brace(Subject diagonal,
                       Subject panel,
                       bool is_sure,
                       const std::string& depth_words,
                       engine::Length depth);

}  // namespace model
