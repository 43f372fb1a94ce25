// A project in which every field of every thing differs from its default. Invented.
#pragma once

#include "model/project/project.h"

namespace model_tests {

model::Project full_project();

}  // namespace model_tests
