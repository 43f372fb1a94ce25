// Findings that say the same of several things, as one.
#pragma once

#include "model/resolve/finding.h"

#include <cstddef>
#include <string>
#include <vector>

namespace editor {

struct FindingGroup {
    std::vector<std::size_t> findings;     // indices, all of one code, severity, sentence and mend
    std::vector<model::Subject> concerns;  // of all of them, each once
};

// The worst first, else in the order in which they were found.
std::vector<FindingGroup> finding_groups(const std::vector<model::Finding>& findings);

// "box: joint a + b" for one, "12 joints of box" for many of one kind.
std::string where_words(const FindingGroup& group, const std::vector<model::Finding>& findings);

}  // namespace editor
