// The papers that can be asked for, and which is taken where none is.
#pragma once

#include "engine/drawing/paper.h"
#include "engine/measure/tape.h"
#include "model/project/project.h"

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

// The one that was asked for; else letter for a project in inches and A4 for one in millimetres.
inline engine::Paper paper_for(const model::Project& project, const std::string& name = {}) {
    if (const auto paper = engine::paper_named(name)) return *paper;
    const bool is_inch = engine::bare_unit(project.shown) == engine::LengthUnit::inch;
    return is_inch ? engine::Paper::letter : engine::Paper::a4;
}

}  // namespace editor
