// The papers that can be asked for on the command line.
#pragma once

#include "engine/drawing/paper.h"

#include <string>
#include <vector>

namespace editor {

inline std::vector<std::string> paper_names() {
    using engine::Paper;
    std::vector<std::string> names;
    for (const auto paper : {Paper::a4, Paper::a3, Paper::letter, Paper::tabloid}) {
        names.emplace_back(engine::name_of(paper));
    }
    return names;
}

}  // namespace editor
