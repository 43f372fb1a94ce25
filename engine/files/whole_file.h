// Reading and writing whole files: a file is replaced whole or left as it was.
#pragma once

#include "engine/result.h"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

namespace engine {

// Called now and then with the bytes read so far and those expected; false ends the reading.
using GoOnReading = std::function<bool(std::uintmax_t done, std::uintmax_t expected)>;

// The bytes of a file. Errors: bad_file when it is missing, is no regular file, cannot be read or
// is larger than `most_bytes`; cancelled when `go_on` said so.
Result<std::string> read_whole_file(const std::filesystem::path& path,
                                    std::uintmax_t most_bytes = 256U << 20U,
                                    const GoOnReading& go_on = {});

// Writes to a new file beside the old one, flushes it to the disk and renames it over the old one;
// the old file's permissions are kept, a symbolic link stays a link to the file that is replaced,
// and other hard links keep the old bytes. On an error the old file stands as it was and nothing is
// left beside it. Error: cannot_write, with the system's reason; also for what is no regular file
// and for a file that is write-protected.
Result<Done> write_whole_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace engine
