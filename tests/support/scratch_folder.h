// A folder of a test's own under the system's temporary folder: empty at first, gone afterwards.
#pragma once

#include <filesystem>
#include <string>
#include <system_error>

namespace tests {

struct ScratchFolder {
    explicit ScratchFolder(const std::string& name)
        : path{std::filesystem::temp_directory_path() / ("barwright_" + name)} {
        std::filesystem::remove_all(path);
        std::filesystem::create_directories(path);
    }
    ~ScratchFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path, ignored);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;

    std::filesystem::path path;
};

}  // namespace tests
