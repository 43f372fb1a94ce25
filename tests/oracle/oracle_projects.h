// What the oracles are asked about: the samples, a piece of every shape, random frames.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project_json.h"
#include "model/resolve/resolve.h"

#include "tests/support/hand_made.h"
#include "tests/support/random_project.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

namespace tests {

struct OracleJob {
    model::Catalogue catalogue;
    model::Project project;
    model::Resolved resolved;
};

inline const model::Catalogue& shipped_catalogue() {
    static const auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) throw std::runtime_error(to_text(loaded.error()));
    return *loaded;
}

inline OracleJob job_of(model::Project project) {
    auto resolved = model::resolve(project, shipped_catalogue());
    return {shipped_catalogue(), std::move(project), std::move(resolved)};
}

inline std::vector<std::filesystem::path> sample_files() {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(BARWRIGHT_SAMPLES))
        if (entry.path().extension() == ".json") files.push_back(entry.path());
    std::ranges::sort(files);
    return files;
}

inline OracleJob sample_job(const std::filesystem::path& file) {
    std::ifstream in{file};
    const std::string text{std::istreambuf_iterator<char>{in}, {}};
    const auto project = model::read_project_json(text);
    if (!project) throw std::runtime_error(to_text(project.error()));
    return job_of(*project);
}

inline OracleJob hand_made_job() {
    auto made = hand_made(shipped_catalogue());
    return {std::move(made.catalogue), std::move(made.project), std::move(made.resolved)};
}

inline OracleJob random_job(std::uint32_t seed) {
    return job_of(random_project(seed, shipped_catalogue()).project);
}

// BARWRIGHT_ORACLE_FRAMES asks for fewer, where time is short.
inline std::uint32_t frames_to_check() {
    const char* asked = std::getenv("BARWRIGHT_ORACLE_FRAMES");
    const int frames = asked != nullptr ? std::atoi(asked) : 0;
    return frames > 0 ? static_cast<std::uint32_t>(frames) : 200U;
}

}  // namespace tests
