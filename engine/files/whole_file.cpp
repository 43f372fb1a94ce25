#include "engine/files/whole_file.h"

#include "engine/files/posix_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <optional>
#include <system_error>

namespace engine {
namespace {

namespace fs = std::filesystem;

std::string reason_of(int error_number) { return std::generic_category().message(error_number); }

Error bad_file(const fs::path& path, std::string message) {
    return {ErrorCode::bad_file, path.string(), std::move(message)};
}

Error cannot_write(const fs::path& path, int error_number) {
    return {ErrorCode::cannot_write, path.string(), "cannot write: " + reason_of(error_number)};
}

// ---- reading ------------------------------------------------------------------------------------

Error too_large(const fs::path& path, std::uintmax_t most_bytes) {
    return bad_file(path, "the file is larger than " + std::to_string(most_bytes) + " bytes");
}

// The bytes to the end, or one more than `most_bytes`; no value where errno says why not, which is
// ECANCELED where `go_on` ended it.
std::optional<std::string> bytes_of(const PosixFile& file,
                                    std::uintmax_t expected,
                                    std::uintmax_t most_bytes,
                                    const GoOnReading& go_on) {
    constexpr std::uintmax_t smallest_part = 4096;
    const std::size_t largest_part = go_on ? std::size_t{8} << 20U : std::string::npos;
    std::string bytes;
    std::size_t count = 0;
    for (;;) {
        // A file may grow while it is read, and some tell a size of nothing.
        if (count == bytes.size()) {
            const auto wanted = std::max<std::uintmax_t>({expected, count * 2, smallest_part});
            bytes.resize(static_cast<std::size_t>(std::min(wanted, most_bytes) + 1));
        }
        if (go_on && !go_on(count, expected)) {
            errno = ECANCELED;
            return std::nullopt;
        }
        const auto got =
            file.read(bytes.data() + count, std::min(bytes.size() - count, largest_part));
        if (got < 0) return std::nullopt;
        count += static_cast<std::size_t>(got);
        if (got == 0 || count > most_bytes) break;
    }
    bytes.resize(count);
    return bytes;
}

// ---- writing ------------------------------------------------------------------------------------

// The file that a path leads to through links, so that a link stays a link; it need not be there.
fs::path behind_links(fs::path path, std::error_code& failure) {
    constexpr int most_links = 40;  // as the kernel allows
    for (int i = 0; i < most_links; ++i) {
        std::error_code is_missing;
        if (!fs::is_symlink(fs::symlink_status(path, is_missing))) return path;
        const auto target = fs::read_symlink(path, failure);
        if (failure) return path;
        path = path.parent_path() / target;
    }
    failure = std::make_error_code(std::errc::too_many_symbolic_link_levels);
    return path;
}

// A new file in the folder of `beside`, removed again unless it is renamed to its place.
class NewFile {
public:
    explicit NewFile(const fs::path& beside) {
        const auto stem = ".part-" + std::to_string(::getpid()) + "-";
        for (int attempt = 0; attempt < most_attempts && !file_.is_open(); ++attempt) {
            path_ = beside.parent_path() / (stem + std::to_string(attempt));
            file_ = PosixFile{path_, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC};
            if (!file_.is_open() && errno != EEXIST) return;
        }
    }
    ~NewFile() {
        if (file_.is_open() || is_waiting_) ::unlink(path_.c_str());
    }
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;

    PosixFile& file() { return file_; }

    // Closes and renames; false with errno set where that failed.
    bool take_place_of(const fs::path& target) {
        is_waiting_ = true;
        if (!file_.close() || ::rename(path_.c_str(), target.c_str()) != 0) return false;
        is_waiting_ = false;
        return true;
    }

private:
    static constexpr int most_attempts = 1000;

    PosixFile file_;
    fs::path path_;
    bool is_waiting_ = false;  // closed, but not in its place yet
};

// What a path that is to be written leads to.
struct Target {
    fs::path path;
    std::optional<struct stat> old;  // nothing there yet: no value
};

Result<Target> target_of(const fs::path& path) {
    std::error_code failure;
    Target target{behind_links(path, failure), std::nullopt};
    if (failure) return cannot_write(path, failure.value());
    struct stat old {};
    if (::stat(target.path.c_str(), &old) != 0) {
        if (errno == ENOENT) return target;
        return cannot_write(path, errno);
    }
    if (S_ISDIR(old.st_mode)) return cannot_write(path, EISDIR);
    if (!S_ISREG(old.st_mode))
        return Error{ErrorCode::cannot_write, path.string(), "this is not a regular file"};
    // Renaming over it would go round its owner's wish that it stays as it is.
    if (::access(target.path.c_str(), W_OK) != 0) return cannot_write(path, errno);
    target.old = old;
    return target;
}

// Owner and group are kept where the system lets us.
bool take_over_permissions(const PosixFile& file, const struct stat& old) {
    static_cast<void>(file.give_to(old.st_uid, old.st_gid));
    return file.set_permissions(old.st_mode & 07777);
}

// Without this a crash of the machine could still bring the old name back; the new file is whole
// either way, so that a system that cannot do it is no error.
void flush_folder_of(const fs::path& path) {
    const auto folder = path.has_parent_path() ? path.parent_path() : fs::path{"."};
    const PosixFile opened{folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC};
    if (opened.is_open()) static_cast<void>(opened.flush());
}

}  // namespace

Result<std::string> read_whole_file(const fs::path& path,
                                    std::uintmax_t most_bytes,
                                    const GoOnReading& go_on) {
    // Without O_NONBLOCK opening a pipe would wait for somebody to write into it.
    const PosixFile file{path, O_RDONLY | O_NONBLOCK | O_CLOEXEC};
    struct stat about {};
    if (!file.is_open() || !file.describe(about))
        return bad_file(path, "cannot read: " + reason_of(errno));
    if (S_ISDIR(about.st_mode)) return bad_file(path, "this is a folder, not a file");
    if (!S_ISREG(about.st_mode)) return bad_file(path, "this is not a regular file");
    const auto size = static_cast<std::uintmax_t>(about.st_size);
    if (size > most_bytes) return too_large(path, most_bytes);
    auto bytes = bytes_of(file, size, most_bytes, go_on);
    if (!bytes && errno == ECANCELED)
        return Error{ErrorCode::cancelled, path.string(), "reading was cancelled"};
    if (!bytes) return bad_file(path, "cannot read: " + reason_of(errno));
    if (bytes->size() > most_bytes) return too_large(path, most_bytes);
    return std::move(*bytes);
}

Result<Done> write_whole_file(const fs::path& path, std::string_view bytes) {
    const auto target = target_of(path);
    if (!target) return target.error();
    NewFile fresh{target->path};
    auto& file = fresh.file();
    const bool is_done = file.is_open() &&
                         (!target->old || take_over_permissions(file, *target->old)) &&
                         file.write(bytes) && file.flush() && fresh.take_place_of(target->path);
    if (!is_done) return cannot_write(path, errno);
    flush_folder_of(target->path);
    return Done{};
}

}  // namespace engine
