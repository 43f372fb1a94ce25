#include "tests/model/project/sample_files.h"

#include "engine/files/whole_file.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>

namespace model_tests {

std::vector<std::string> sample_names() {
    std::vector<std::string> names;
    for (const auto& file : std::filesystem::directory_iterator(BARWRIGHT_SAMPLES)) {
        if (file.path().extension() == ".json") names.push_back(file.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

std::string sample_text(const std::string& name) {
    const auto text = engine::read_whole_file(std::filesystem::path(BARWRIGHT_SAMPLES) / name);
    if (!text) FAIL(engine::to_text(text.error()));
    return *text;
}

}  // namespace model_tests
