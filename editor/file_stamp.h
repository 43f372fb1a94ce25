// What tells at a glance whether a file has been written since it was last looked into.
#pragma once

#include <cstdint>
#include <filesystem>
#include <system_error>

namespace editor {

struct FileStamp {
    std::filesystem::file_time_type written{};
    std::uintmax_t size = 0;

    bool operator==(const FileStamp&) const = default;
};

// Of a file that is not there: the stamp of nothing.
inline FileStamp stamp_of(const std::filesystem::path& file) {
    std::error_code is_missing;
    FileStamp stamp;
    const auto written = std::filesystem::last_write_time(file, is_missing);
    if (is_missing) return stamp;
    const auto size = std::filesystem::file_size(file, is_missing);
    return is_missing ? stamp : FileStamp{written, size};
}

}  // namespace editor
