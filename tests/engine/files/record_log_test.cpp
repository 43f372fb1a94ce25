#include "engine/files/record_log.h"

#include "engine/files/whole_file.h"

#include <catch2/catch.hpp>
#include <sys/resource.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

namespace {

using namespace engine;
namespace fs = std::filesystem;

class Folder {
public:
    Folder() : path_{fs::temp_directory_path() / ("record_log_" + std::to_string(::getpid()))} {
        fs::remove_all(path_);
        fs::create_directories(path_);
    }
    ~Folder() { fs::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    fs::path file(const char* name = "log") const { return path_ / name; }

private:
    fs::path path_;
};

RecordLog new_log(const fs::path& path) {
    auto log = RecordLog::create(path);
    if (!log) FAIL(to_text(log.error()));
    return std::move(log).value();
}

using Records = std::vector<std::string>;

Records records_of(const fs::path& path) {
    const auto read = read_records(path);
    if (!read) FAIL(to_text(read.error()));
    return read->records;
}

const Records three{"first", std::string("with\nlines\0 and nothing", 22), ""};

void write_three(const fs::path& path) {
    auto log = new_log(path);
    for (const auto& record : three) REQUIRE(log.append(record));
    REQUIRE(log.flush());
}

}  // namespace

TEST_CASE("records are read as they were appended", "[engine][file]") {
    const Folder folder;
    write_three(folder.file());
    const auto read = read_records(folder.file());
    REQUIRE(read);
    CHECK(read->records == three);
    CHECK_FALSE(read->is_cut);
}

TEST_CASE("cut anywhere, a log gives the whole records before the cut", "[engine][file]") {
    const Folder folder;
    write_three(folder.file());
    const auto bytes = read_whole_file(folder.file());
    REQUIRE(bytes);
    std::vector<std::size_t> ends{0};
    for (const auto& record : three) ends.push_back(ends.back() + 18 + record.size() + 1);
    REQUIRE(ends.back() == bytes->size());
    for (std::size_t size = 0; size <= bytes->size(); ++size) {
        CAPTURE(size);
        REQUIRE(write_whole_file(folder.file("cut"), bytes->substr(0, size)));
        const auto read = read_records(folder.file("cut"));
        REQUIRE(read);
        std::size_t whole = 0;
        while (whole < three.size() && ends[whole + 1] <= size) ++whole;
        CHECK(read->records == Records(three.begin(), three.begin() + static_cast<int>(whole)));
        CHECK(read->is_cut == (ends[whole] != size));
    }
}

TEST_CASE("a byte that went bad ends the log before its record", "[engine][file]") {
    const Folder folder;
    write_three(folder.file());
    const auto bytes = read_whole_file(folder.file());
    REQUIRE(bytes);
    for (std::size_t at = 0; at < bytes->size(); ++at) {
        CAPTURE(at);
        auto bad = *bytes;
        bad[at] = static_cast<char>(bad[at] ^ 0x20);
        REQUIRE(write_whole_file(folder.file("bad"), bad));
        const auto read = read_records(folder.file("bad"));
        REQUIRE(read);
        // Capital and small hexadecimal digits are one, so some bytes of a head may change.
        const bool is_as_before = read->records == three;
        const bool is_shorter = read->records.size() < three.size() && read->is_cut;
        CHECK((is_as_before || is_shorter));
        if (at >= 18 && at < 18 + three[0].size()) CHECK(read->records.empty());
    }
}

TEST_CASE("a log does not write over a file that is there", "[engine][file]") {
    const Folder folder;
    std::ofstream(folder.file()) << "somebody's";
    const auto log = RecordLog::create(folder.file());
    REQUIRE_FALSE(log);
    CHECK(log.error().code == ErrorCode::cannot_write);
    CHECK(read_whole_file(folder.file()).value() == "somebody's");
    CHECK(RecordLog::create(folder.file("missing/log")).error().code == ErrorCode::cannot_write);
}

TEST_CASE("a log that lives is told from one that was left behind", "[engine][file]") {
    const Folder folder;
    {
        const auto log = new_log(folder.file());
        CHECK(is_being_written(folder.file()));
    }
    CHECK_FALSE(is_being_written(folder.file()));
    CHECK_FALSE(is_being_written(folder.file("none")));
}

TEST_CASE("what a full disk cut off is taken back, and the next record is whole",
          "[engine][file]") {
    const Folder folder;
    auto log = new_log(folder.file());
    REQUIRE(log.append("before"));
    rlimit old{};
    REQUIRE(::getrlimit(RLIMIT_FSIZE, &old) == 0);
    rlimit small = old;
    small.rlim_cur = 60;
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &small) == 0);
    const auto refused = log.append(std::string(100, 'x'));
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &old) == 0);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == ErrorCode::cannot_write);
    CHECK(records_of(folder.file()) == Records{"before"});
    REQUIRE(log.append("after"));
    CHECK(records_of(folder.file()) == Records{"before", "after"});
}

TEST_CASE("a log takes another name, but not that of a file that is there", "[engine][file]") {
    const Folder folder;
    auto log = RecordLog::create(folder.file("log.new")).value();
    REQUIRE(log.append("one"));
    std::ofstream(folder.file("mine")) << "mine";
    CHECK_FALSE(log.rename_to(folder.file("mine")));
    CHECK(log.path() == folder.file("log.new"));
    REQUIRE(log.rename_to(folder.file()));
    REQUIRE(log.append("two"));
    CHECK_FALSE(fs::exists(folder.file("log.new")));
    CHECK(is_being_written(folder.file()));
    CHECK(read_records(folder.file())->records == std::vector<std::string>{"one", "two"});
    CHECK(fs::file_size(folder.file("mine")) == 4);
}
