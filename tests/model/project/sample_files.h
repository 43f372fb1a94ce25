// The projects under samples/.
#pragma once

#include <string>
#include <vector>

namespace model_tests {

std::vector<std::string> sample_names();  // in the order of their names
std::string sample_text(const std::string& name);

}  // namespace model_tests
