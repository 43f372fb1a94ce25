// What a project is called on paper.
#pragma once

#include "model/project/project.h"

#include <string>

namespace model {

inline std::string name_on_paper(const Project& project) {
    return project.name.empty() ? "no name" : project.name;
}

}  // namespace model
