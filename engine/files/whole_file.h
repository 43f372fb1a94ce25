// Reading and writing whole files: a file is replaced whole or left as it was.
#pragma once

#include "engine/result.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

namespace engine {

// The bytes of a file. Errors: bad_file when it is missing, is no regular file, cannot be read or
// is larger than `most_bytes`.
Result<std::string> read_whole_file(const std::filesystem::path& path,
                                    std::uintmax_t most_bytes = 256U << 20U);

// Writes to a new file beside the old one, flushes it to the disk and renames it over the old one;
// the old file's permissions are kept, a symbolic link stays a link to the file that is replaced,
// and other hard links keep the old bytes. On an error the old file stands as it was and nothing is
// left beside it. Error: cannot_write, with the system's reason; also for what is no regular file
// and for a file that is write-protected.
Result<Done> write_whole_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace engine
