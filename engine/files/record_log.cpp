#include "engine/files/record_log.h"

#include "engine/files/whole_file.h"

#include <fcntl.h>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <optional>
#include <system_error>

namespace engine {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t digits = 8;
constexpr std::size_t head_size = 2 * digits + 2;  // with a space and a line end

Error cannot_write(const fs::path& path, int error_number) {
    return {ErrorCode::cannot_write, path.string(),
            "cannot write: " + std::generic_category().message(error_number)};
}

std::uint32_t checksum(std::string_view bytes) {
    return static_cast<std::uint32_t>(crc32_z(
        crc32_z(0, nullptr, 0), reinterpret_cast<const Bytef*>(bytes.data()), bytes.size()));
}

std::string hexadecimal(std::uint64_t number) {
    std::array<char, 16> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), number, 16).ptr;
    const auto length = static_cast<std::size_t>(end - text.data());
    return std::string(digits - std::min(length, digits), '0') + std::string(text.data(), length);
}

std::optional<std::uint32_t> number_in(std::string_view text) {
    std::uint32_t number = 0;
    const auto end = text.data() + text.size();
    const auto [at, failure] = std::from_chars(text.data(), end, number, 16);
    if (failure != std::errc() || at != end) return std::nullopt;
    return number;
}

// The record that a text begins with; none where it is not whole.
std::optional<std::string_view> first_record(std::string_view text) {
    if (text.size() < head_size || text[digits] != ' ' || text[head_size - 1] != '\n')
        return std::nullopt;
    const auto length = number_in(text.substr(0, digits));
    const auto sum = number_in(text.substr(digits + 1, digits));
    if (!length || !sum || text.size() - head_size <= *length) return std::nullopt;
    const auto record = text.substr(head_size, *length);
    if (text[head_size + *length] != '\n' || checksum(record) != *sum) return std::nullopt;
    return record;
}

}  // namespace

Result<RecordLog> RecordLog::create(const fs::path& path) {
    PosixFile file{path, O_WRONLY | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC};
    if (!file.is_open()) return cannot_write(path, errno);
    // Where the file system knows no locks the log is written without: it is then offered to
    // other programs while this one lives.
    if (!file.lock() && errno == EWOULDBLOCK) {
        const auto held = cannot_write(path, errno);
        std::error_code ignored;
        fs::remove(path, ignored);
        return held;
    }
    return RecordLog(path, std::move(file));
}

Result<Done> RecordLog::rename_to(const fs::path& path) {
    // Two steps, since rename(2) writes over what is there; some file systems know no second name.
    std::error_code failure;
    fs::create_hard_link(path_, path, failure);
    if (!failure) {
        fs::remove(path_, failure);
    } else if (failure != std::errc::file_exists && !fs::exists(path)) {
        fs::rename(path_, path, failure);
    }
    if (failure) return cannot_write(path, failure.value());
    path_ = path;
    return Done{};
}

Result<Done> RecordLog::append(std::string_view record) {
    constexpr std::size_t most = 0xffffffff;
    if (is_broken_ || record.size() > most) return cannot_write(path_, is_broken_ ? EIO : EFBIG);
    const std::string framed = hexadecimal(record.size()) + ' ' + hexadecimal(checksum(record)) +
                               '\n' + std::string(record) + '\n';
    if (file_.write(framed)) {
        size_ += framed.size();
        return Done{};
    }
    const int reason = errno;
    is_broken_ = !file_.cut_to(size_);
    return cannot_write(path_, reason);
}

Result<Done> RecordLog::flush() {
    if (!file_.flush()) return cannot_write(path_, errno);
    return Done{};
}

Result<RecordsRead> read_records(const fs::path& path, std::uintmax_t most_bytes) {
    const auto bytes = read_whole_file(path, most_bytes);
    if (!bytes) return bytes.error();
    RecordsRead read;
    std::string_view rest = *bytes;
    while (const auto record = first_record(rest)) {
        read.records.emplace_back(*record);
        rest.remove_prefix(head_size + record->size() + 1);
    }
    read.is_cut = !rest.empty();
    return read;
}

bool is_being_written(const fs::path& path) {
    // For writing, since some network file systems lock no others (flock(2), NFS details).
    const PosixFile file{path, O_RDWR | O_NONBLOCK | O_CLOEXEC};
    return file.is_open() && !file.lock() && errno == EWOULDBLOCK;
}

}  // namespace engine
