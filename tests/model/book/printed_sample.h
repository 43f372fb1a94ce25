// A sample with all that follows from it, shown in inches or in millimetres.
#pragma once

#include "engine/measure/tape.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <string>

namespace tests {

struct PrintedSample {
    model::Project project;
    model::Resolved resolved;

    explicit PrintedSample(const std::string& name);
    PrintedSample(const std::string& name, const engine::TapeStyle& shown);
};

inline constexpr engine::TapeStyle inches{};
inline const engine::TapeStyle millimetres{.form = engine::TapeForm::millimetre, .decimals = 1};

}  // namespace tests
