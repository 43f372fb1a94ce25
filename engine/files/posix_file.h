// A file descriptor of the system that closes itself. Where a call fails, errno says why.
#pragma once

#include <sys/stat.h>
#include <sys/types.h>

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string_view>
#include <utility>

namespace engine {

class PosixFile {
public:
    PosixFile() = default;
    // `flags` as for open(2); a file that is created may be read and written as the umask allows.
    PosixFile(const std::filesystem::path& path, int flags);
    ~PosixFile() { static_cast<void>(close()); }
    PosixFile(PosixFile&& other) noexcept : descriptor_{std::exchange(other.descriptor_, -1)} {}
    PosixFile& operator=(PosixFile&& other) noexcept {
        std::swap(descriptor_, other.descriptor_);
        return *this;
    }
    PosixFile(const PosixFile&) = delete;
    PosixFile& operator=(const PosixFile&) = delete;

    bool is_open() const { return descriptor_ >= 0; }
    bool describe(struct stat& about) const;
    // How many bytes came, 0 at the end, -1 where it failed.
    ssize_t read(char* into, std::size_t most) const;
    // All of them, or false. A limit on the size of files is an error and not the end of the
    // program, which the signal for it would be otherwise.
    bool write(std::string_view bytes) const;
    bool flush() const;
    bool cut_to(std::uintmax_t size) const;
    // No other descriptor, here or in another program, holds the lock until this one is closed;
    // false at once where one does (flock(2)).
    bool lock() const;
    bool set_permissions(mode_t mode) const;
    bool give_to(uid_t user, gid_t group) const;
    bool close();

private:
    int descriptor_ = -1;
};

}  // namespace engine
