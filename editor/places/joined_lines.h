// What is set in each place where two walls are joined.
#pragma once

#include "editor/derived.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace editor {

struct JoinedLine {
    model::Index joint = 0;  // in Resolved::joints
    std::string fastener;    // "blind rivet 1/8, grip 4-4"; several with "; " between
    model::Index count = 0;
    model::Index wanted = 0;
    engine::Length stack;              // of the first of them
    std::string marks;                 // "A1 + B2"
    std::string members;               // "post left + rail top"
    std::vector<model::Index> pieces;  // that it holds together
};

// One for each joint, in their order; also of one that lacks fasteners.
std::vector<JoinedLine> joined_lines(const Derived& derived, const model::Catalogue& catalogue);

// Kept for each state of the project.
struct JoinedMemo {
    std::optional<Revision> revision;
    std::vector<JoinedLine> lines;
};

const std::vector<JoinedLine>& joined_lines(JoinedMemo& memo,
                                            const Derived& derived,
                                            const model::Catalogue& catalogue);

}  // namespace editor
