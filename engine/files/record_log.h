// A file that grows by whole records: what a crash or a power cut leaves half written is told from
// what is whole, so that all records before it can be read.
#pragma once

#include "engine/files/posix_file.h"
#include "engine/result.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

// Each record is a line with its length and its CRC-32 (ISO-HDLC, as of zlib), both of eight
// hexadecimal digits, then its bytes and a line end.
class RecordLog {
public:
    // A new file, which no other RecordLog writes while this one lives. Errors: cannot_write, with
    // the system's reason; also where there is such a file already.
    static Result<RecordLog> create(const std::filesystem::path& path);

    RecordLog(RecordLog&&) noexcept = default;
    RecordLog& operator=(RecordLog&&) noexcept = default;

    // Gives the file another name in its folder. Error: cannot_write; also where there is such a
    // file already.
    Result<Done> rename_to(const std::filesystem::path& path);

    const std::filesystem::path& path() const { return path_; }
    std::uint64_t size() const { return size_; }  // bytes

    // Hands the record to the system: the end of the program does not lose it. On an error
    // (cannot_write) what got into the file is taken back where the system lets us, so that the
    // next record stands behind a whole one.
    Result<Done> append(std::string_view record);

    // To the disk: the end of the machine does not lose it either. Error: cannot_write.
    Result<Done> flush();

private:
    RecordLog(std::filesystem::path path, PosixFile file)
        : path_{std::move(path)}, file_{std::move(file)} {}

    std::filesystem::path path_;
    PosixFile file_;
    std::uint64_t size_ = 0;
    bool is_broken_ = false;  // something half written could not be taken back
};

struct RecordsRead {
    std::vector<std::string> records;
    bool is_cut = false;  // behind them something half written stands
};

// The whole records from the beginning. Errors as of read_whole_file.
Result<RecordsRead> read_records(const std::filesystem::path& path,
                                 std::uintmax_t most_bytes = 256U << 20U);

// Whether a living RecordLog, of this program or another one, writes to it.
bool is_being_written(const std::filesystem::path& path);

}  // namespace engine
