#include "engine/files/posix_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <ctime>

namespace engine {
namespace {

// While it lives, this thread is not ended by the signal that a file has reached the size limit.
class SizeLimitSignalHeld {
public:
    SizeLimitSignalHeld() {
        sigemptyset(&signal_);
        sigaddset(&signal_, SIGXFSZ);
        pthread_sigmask(SIG_BLOCK, &signal_, &before_);
    }
    ~SizeLimitSignalHeld() {
        const int error_number = errno;
        if (sigismember(&before_, SIGXFSZ) == 0) {
            const timespec no_wait{};
            while (sigtimedwait(&signal_, nullptr, &no_wait) < 0 && errno == EINTR) {
            }
            pthread_sigmask(SIG_SETMASK, &before_, nullptr);
        }
        errno = error_number;
    }
    SizeLimitSignalHeld(const SizeLimitSignalHeld&) = delete;
    SizeLimitSignalHeld& operator=(const SizeLimitSignalHeld&) = delete;

private:
    sigset_t signal_{};
    sigset_t before_{};
};

// Again where a signal came between.
template <class Call>
auto without_interruption(Call call) {
    auto result = call();
    while (result < 0 && errno == EINTR) result = call();
    return result;
}

}  // namespace

PosixFile::PosixFile(const std::filesystem::path& path, int flags)
    : descriptor_{without_interruption([&] { return ::open(path.c_str(), flags, 0666); })} {}

bool PosixFile::describe(struct stat& about) const { return ::fstat(descriptor_, &about) == 0; }

ssize_t PosixFile::read(char* into, std::size_t most) const {
    return without_interruption([&] { return ::read(descriptor_, into, most); });
}

bool PosixFile::write(std::string_view bytes) const {
    const SizeLimitSignalHeld held;
    while (!bytes.empty()) {
        const auto done =
            without_interruption([&] { return ::write(descriptor_, bytes.data(), bytes.size()); });
        if (done < 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(done));
    }
    return true;
}

bool PosixFile::flush() const {
    return without_interruption([&] { return ::fsync(descriptor_); }) == 0;
}

bool PosixFile::cut_to(std::uintmax_t size) const {
    return without_interruption(
               [&] { return ::ftruncate(descriptor_, static_cast<off_t>(size)); }) == 0;
}

bool PosixFile::lock() const {
    return without_interruption([&] { return ::flock(descriptor_, LOCK_EX | LOCK_NB); }) == 0;
}

bool PosixFile::set_permissions(mode_t mode) const { return ::fchmod(descriptor_, mode) == 0; }

bool PosixFile::give_to(uid_t user, gid_t group) const {
    return ::fchown(descriptor_, user, group) == 0;
}

// Never repeated after an interruption: on Linux the descriptor is gone by then (close(2)).
bool PosixFile::close() {
    const int descriptor = std::exchange(descriptor_, -1);
    return descriptor < 0 || ::close(descriptor) == 0 || errno == EINTR;
}

}  // namespace engine
