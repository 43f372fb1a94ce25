#include "engine/files/whole_file.h"

#include <catch2/catch.hpp>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <functional>
#include <iterator>

using namespace engine;
namespace fs = std::filesystem;

namespace {

// An empty folder that goes again with all that is in it.
class Folder {
public:
    Folder() {
        // mkdtemp puts letters of its own for the last six.
        auto pattern =
            (fs::temp_directory_path() / "whole_file_test_").string() + std::string(6, 'X');
        path_ = ::mkdtemp(pattern.data());
    }
    ~Folder() {
        std::error_code ignored;
        fs::permissions(path_, fs::perms::owner_all, ignored);
        fs::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    fs::path operator/(const std::string& name) const { return path_ / name; }
    const fs::path& path() const { return path_; }
    std::ptrdiff_t count() const {
        return std::distance(fs::directory_iterator{path_}, fs::directory_iterator{});
    }

private:
    fs::path path_;
};

std::string bytes_of(const fs::path& path) {
    const auto bytes = read_whole_file(path);
    return bytes ? *bytes : to_text(bytes.error());
}

void put(const fs::path& path, std::string_view bytes) {
    const auto written = write_whole_file(path, bytes);
    if (!written) FAIL(to_text(written.error()));
}

bool is_refused(const fs::path& path, std::string_view bytes = "new") {
    const auto written = write_whole_file(path, bytes);
    if (written) return false;
    CHECK(written.error().code == ErrorCode::cannot_write);
    CHECK(written.error().where == path.string());
    CHECK_FALSE(written.error().message.empty());
    return true;
}

mode_t mode_of(const fs::path& path) {
    struct stat about {};
    REQUIRE(::stat(path.c_str(), &about) == 0);
    return about.st_mode & 07777;
}

// Whether it holds in a process of its own, whose limits die with it.
bool holds_in_child(const std::function<bool()>& check) {
    const auto child = ::fork();
    if (child == 0) ::_exit(check() ? 0 : 1);
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

// The superuser may write everywhere; in a child it can become somebody else.
bool holds_for_ordinary_user(const Folder& folder, const std::function<bool()>& check) {
    constexpr uid_t nobody = 65534;
    if (::geteuid() != 0) return holds_in_child(check);
    for (const auto& entry : fs::directory_iterator{folder.path()})
        REQUIRE(::chown(entry.path().c_str(), nobody, nobody) == 0);
    REQUIRE(::chown(folder.path().c_str(), nobody, nobody) == 0);
    return holds_in_child(
        [&] { return ::setgid(nobody) == 0 && ::setuid(nobody) == 0 && check(); });
}

bool limit_file_size(rlim_t bytes) {
    const rlimit limit{bytes, bytes};
    return ::setrlimit(RLIMIT_FSIZE, &limit) == 0;
}

}  // namespace

// ---- reading ------------------------------------------------------------------------------------

TEST_CASE("a file is read whole", "[engine][file]") {
    const Folder folder;
    const std::string bytes{"a\0b\r\n\xFF", 6};
    put(folder / "a", bytes);
    CHECK(bytes_of(folder / "a") == bytes);
    put(folder / "empty", "");
    CHECK(bytes_of(folder / "empty").empty());
}

TEST_CASE("a file larger than allowed is refused", "[engine][file]") {
    const Folder folder;
    put(folder / "a", std::string(1000, 'x'));
    CHECK(read_whole_file(folder / "a", 1000));
    const auto bytes = read_whole_file(folder / "a", 999);
    REQUIRE_FALSE(bytes);
    CHECK(bytes.error().code == ErrorCode::bad_file);
    CHECK(bytes.error().message == "the file is larger than 999 bytes");
    CHECK(read_whole_file(folder / "a", UINTMAX_MAX));
}

TEST_CASE("what is no regular file is not read", "[engine][file]") {
    const Folder folder;
    const auto pipe = folder / "pipe";
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    for (const auto& path :
         {folder.path(), pipe, fs::path{"/dev/zero"}, folder / "missing", fs::path{}}) {
        const auto bytes = read_whole_file(path);
        CAPTURE(path);
        REQUIRE_FALSE(bytes);
        CHECK(bytes.error().code == ErrorCode::bad_file);
        CHECK(bytes.error().where == path.string());
    }
}

TEST_CASE("a file of the system that tells no size is read", "[engine][file]") {
    CHECK_FALSE(bytes_of("/proc/self/status").empty());
}

// ---- writing ------------------------------------------------------------------------------------

TEST_CASE("a file is replaced and nothing is left beside it", "[engine][file]") {
    const Folder folder;
    put(folder / "a", "old and long");
    put(folder / "a", "new");
    CHECK(bytes_of(folder / "a") == "new");
    CHECK(folder.count() == 1);
}

TEST_CASE("a new file gets the permissions that the umask leaves", "[engine][file]") {
    const Folder folder;
    const auto before = ::umask(027);
    put(folder / "a", "new");
    ::umask(before);
    CHECK(mode_of(folder / "a") == 0640);
}

TEST_CASE("a file that is replaced keeps its permissions", "[engine][file]") {
    const Folder folder;
    put(folder / "a", "old");
    for (const mode_t mode : {0600U, 0664U, 0755U}) {
        REQUIRE(::chmod((folder / "a").c_str(), mode) == 0);
        put(folder / "a", "new");
        CHECK(mode_of(folder / "a") == mode);
    }
}

TEST_CASE("a link stays a link and the file behind it is replaced", "[engine][file]") {
    const Folder folder;
    fs::create_directory(folder / "store");
    put(folder / "store/a", "old");
    fs::create_symlink("store/a", folder / "near");
    fs::create_symlink(folder / "near", folder / "far");
    put(folder / "far", "new");
    CHECK(fs::is_symlink(folder / "near"));
    CHECK(fs::is_symlink(folder / "far"));
    CHECK(bytes_of(folder / "store/a") == "new");
}

TEST_CASE("a link to nothing yet gets its file", "[engine][file]") {
    const Folder folder;
    fs::create_symlink("a", folder / "link");
    put(folder / "link", "new");
    CHECK(fs::is_symlink(folder / "link"));
    CHECK(bytes_of(folder / "a") == "new");
}

TEST_CASE("links in a circle are refused", "[engine][file]") {
    const Folder folder;
    fs::create_symlink("b", folder / "a");
    fs::create_symlink("a", folder / "b");
    CHECK(is_refused(folder / "a"));
    CHECK(folder.count() == 2);
}

TEST_CASE("what is no regular file is not written", "[engine][file]") {
    const Folder folder;
    CHECK(is_refused(folder.path()));
    CHECK(is_refused("/dev/full"));
    fs::create_symlink("/dev/full", folder / "link");
    CHECK(is_refused(folder / "link"));
    CHECK(fs::is_symlink(folder / "link"));
    CHECK(is_refused(folder / "missing/a"));
    CHECK(is_refused(""));
    CHECK(is_refused(folder / std::string(300, 'n')));
    CHECK(folder.count() == 1);
}

TEST_CASE("a write-protected file is left as it is", "[engine][file]") {
    const Folder folder;
    put(folder / "a", "old");
    REQUIRE(::chmod((folder / "a").c_str(), 0444) == 0);
    CHECK(holds_for_ordinary_user(folder, [&] { return !write_whole_file(folder / "a", "new"); }));
    CHECK(bytes_of(folder / "a") == "old");
    CHECK(folder.count() == 1);
}

TEST_CASE("a folder that allows no new file is an error", "[engine][file]") {
    const Folder folder;
    put(folder / "a", "old");
    REQUIRE(::chmod(folder.path().c_str(), 0555) == 0);
    CHECK(holds_for_ordinary_user(folder, [&] { return !write_whole_file(folder / "a", "new"); }));
    CHECK(bytes_of(folder / "a") == "old");
}

TEST_CASE("an ordinary user replaces a file of their own", "[engine][file]") {
    const Folder folder;
    put(folder / "a", "old");
    CHECK(holds_for_ordinary_user(
        folder, [&] { return write_whole_file(folder / "a", "new").has_value(); }));
    CHECK(bytes_of(folder / "a") == "new");
}

TEST_CASE("when the system takes no more bytes the old file stands alone", "[engine][file]") {
    const Folder folder;
    put(folder / "a", "old");
    const std::string large(100'000, 'x');
    CHECK(holds_in_child([&] {
        return limit_file_size(5000) && !write_whole_file(folder / "a", large) &&
               write_whole_file(folder / "b", "small");
    }));
    CHECK(bytes_of(folder / "a") == "old");
    CHECK(bytes_of(folder / "b") == "small");
    CHECK(folder.count() == 2);
}

TEST_CASE("a name in use for the new file is passed over", "[engine][file]") {
    const Folder folder;
    const auto taken = folder / (".part-" + std::to_string(::getpid()) + "-0");
    put(taken, "of a run that crashed");
    put(folder / "a", "new");
    CHECK(bytes_of(folder / "a") == "new");
    CHECK(bytes_of(taken) == "of a run that crashed");
}
