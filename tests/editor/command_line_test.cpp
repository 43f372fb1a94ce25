#include "editor/command_line.h"

#include "model/schedule/write_all.h"

#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <streambuf>

namespace fs = std::filesystem;
using tests::ScratchFolder;

namespace {

struct Run {
    int status = 0;
    std::string out;
    std::string err;
};

Run run(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const int status = editor::run_command_line(arguments, out, err);
    return {status, out.str(), err.str()};
}

fs::path written(const ScratchFolder& scratch, const std::string& name, const std::string& text) {
    const auto file = scratch.path / name;
    std::ofstream(file, std::ios::binary) << text;
    return file;
}

// An empty project is a project: nothing to cut, nothing to find.
constexpr auto empty_project = R"({"barwright": 1, "name": "Nothing yet"})";

// Its one frame has a member that stands on planes that are not there.
constexpr auto broken_project = R"({
  "barwright": 1, "name": "Broken",
  "stock": [{"name": "angle", "section": "angle 1 x 1 x 1/8", "alloy": "6063-T52"}],
  "frames": [{"name": "box", "members": [
    {"name": "post", "stock": "angle", "run": "z", "on": ["left", "front"],
     "legs": ["plus", "plus"],
     "from": "floor", "to": "top"}]}]})";

void check_refused(const Run& refused, const std::string& named) {
    CHECK(refused.status == 2);
    CHECK(refused.out.empty());
    CHECK_THAT(refused.err, Catch::Contains(named));
}

}  // namespace

TEST_CASE("help and version are no failure", "[editor][command line]") {
    CHECK(run({"--help"}).status == 0);
    CHECK_THAT(run({"--help"}).out, Catch::Contains("schedule"));
    CHECK(run({"--version"}).status == 0);
    CHECK(run({"check", "--help"}).status == 0);
}

TEST_CASE("a command that is not understood ends with status 2", "[editor][command line]") {
    CHECK(run({}).status == 2);
    CHECK(run({"cut"}).status == 2);
    CHECK(run({"check"}).status == 2);
    CHECK(run({"schedule", "a.json"}).status == 2);
    CHECK(run({"check", "a.json", "b.json"}).status == 2);
}

TEST_CASE("a file that is not there is named", "[editor][command line]") {
    check_refused(run({"check", "no/such/project.json"}), "no/such/project.json");
    check_refused(run({"schedule", "no/such/project.json", "--out", "nowhere"}),
                  "no/such/project.json");
}

TEST_CASE("a folder in the place of a project is refused", "[editor][command line]") {
    const ScratchFolder scratch{"command_line_folder"};
    check_refused(run({"check", scratch.path.string()}), scratch.path.string());
}

TEST_CASE("what is no project at all is refused by name", "[editor][command line]") {
    const ScratchFolder scratch{"command_line_binary"};
    const std::string binary(
        "\x7f"
        "ELF\x02\x01\x00\x00\xff\xfe",
        10);
    check_refused(run({"check", written(scratch, "program", binary).string()}), "program");
    check_refused(run({"check", written(scratch, "empty", "").string()}), "empty");
    check_refused(run({"check", written(scratch, "cut.json", R"({"barwright": 1,)").string()}),
                  "cut.json");
}

TEST_CASE("a file of 100 MB is refused in a moment", "[editor][command line]") {
    const ScratchFolder scratch{"command_line_large"};
    const auto file = written(scratch, "large.json", "{");
    fs::resize_file(file, std::uintmax_t{100} << 20U);
    const auto before = std::chrono::steady_clock::now();
    check_refused(run({"check", file.string()}), "large.json");
    CHECK(std::chrono::steady_clock::now() - before < std::chrono::seconds{1});
}

TEST_CASE("brackets nested ten thousand deep are refused", "[editor][command line]") {
    const ScratchFolder scratch{"command_line_deep"};
    const auto file = written(scratch, "deep.json", std::string(10'000, '['));
    check_refused(run({"check", file.string()}), "deep.json");
}

TEST_CASE("a project without findings is checked with status 0", "[editor][command line]") {
    const ScratchFolder scratch{"command_line_empty"};
    const auto checked = run({"check", written(scratch, "a.json", empty_project).string()});
    CAPTURE(checked.out, checked.err);
    CHECK(checked.status == 0);
    CHECK(checked.err.empty());
    CHECK_THAT(checked.out, Catch::Contains("Nothing yet"));
}

TEST_CASE("a finding that is an error gives status 1 and is printed with its mend",
          "[editor][command line]") {
    const ScratchFolder scratch{"command_line_broken"};
    const auto checked = run({"check", written(scratch, "a.json", broken_project).string()});
    CAPTURE(checked.out, checked.err);
    CHECK(checked.status == 1);
    CHECK_THAT(checked.out, Catch::Contains("post") && Catch::Contains("mend: "));
}

TEST_CASE("schedules of a project with errors are written all the same, with status 1",
          "[editor][command line]") {
    const ScratchFolder scratch{"command_line_schedule"};
    const auto project = written(scratch, "a.json", broken_project);
    const auto out = scratch.path / "out";
    const auto scheduled = run({"schedule", project.string(), "--out", out.string()});
    CAPTURE(scheduled.out, scheduled.err);
    CHECK(scheduled.status == 1);
    CHECK_THAT(scheduled.err, Catch::Contains("findings.csv"));
    for (const auto name : model::schedule_names) {
        INFO(name);
        CHECK(fs::is_regular_file(out / name));
    }
}

TEST_CASE("a folder that cannot be written ends with status 2 and its name",
          "[editor][command line]") {
    const ScratchFolder scratch{"command_line_no_folder"};
    const auto project = written(scratch, "a.json", empty_project);
    const auto blocked = written(scratch, "a_file", "here");
    check_refused(run({"schedule", project.string(), "--out", blocked.string()}), "a_file");
}

TEST_CASE("every sample has its schedules written", "[editor][command line][samples]") {
    const ScratchFolder scratch{"command_line_samples"};
    int samples = 0;
    for (const auto& entry : fs::directory_iterator(BARWRIGHT_SAMPLES)) {
        if (entry.path().extension() != ".json") continue;
        const auto scheduled =
            run({"schedule", entry.path().string(), "--out", scratch.path.string()});
        CAPTURE(entry.path(), scheduled.out, scheduled.err);
        CHECK(scheduled.status == 0);
        ++samples;
    }
    CHECK(samples > 0);
}

TEST_CASE("a word that is no command is named, with those that are", "[editor][command line]") {
    check_refused(run({"frob"}), "frob");
    check_refused(run({"--frob"}), "--frob");
    CHECK_THAT(run({"frob", "a.json"}).err, Catch::Contains("schedule"));
    check_refused(run({"check", "a.json", "--frob"}), "--frob");
}

TEST_CASE("a size out of the window's range is refused with the range", "[editor][command line]") {
    for (const auto* size : {"10x10", "719x480", "720x479", "20000x900", "wide"}) {
        check_refused(run({"edit", "--size", size}), "720x480 to 16384x16384");
    }
    check_refused(run({"picture", "a.json", "--out", "a.png", "--size", "10x10"}),
                  "16x16 to 8192x8192");
}

namespace {

struct Device : std::streambuf {
    explicit Device(bool full) : is_full{full} {}
    int_type overflow(int_type byte) override { return is_full ? traits_type::eof() : byte; }
    int sync() override { return is_full ? -1 : 0; }

    bool is_full = false;
};

}  // namespace

TEST_CASE("output that cannot be written ends with status 2 and is told",
          "[editor][command line]") {
    const ScratchFolder scratch{"command_line_full"};
    const auto project = written(scratch, "a.json", empty_project).string();
    for (const bool is_full : {false, true}) {
        Device device(is_full);
        std::ostream out(&device);
        std::ostringstream err;
        const int status = editor::run_command_line({"check", project}, out, err);
        CHECK(status == (is_full ? 2 : 0));
        CHECK(err.str().empty() != is_full);
    }
}

TEST_CASE("fit prints how far each dimension may go, or one", "[editor][command line]") {
    const auto sample = fs::path(BARWRIGHT_SAMPLES) / "work_counter.json";
    const auto all = run({"fit", sample.string()});
    CHECK(all.status == 0);
    CHECK_THAT(all.out, Catch::Contains("depth: ") && Catch::Contains("largest that fits"));
    const auto one = run({"fit", sample.string(), "--dimension", "depth"});
    CHECK(one.status == 0);
    CHECK_THAT(one.out, Catch::StartsWith("depth: "));
    CHECK(one.out.size() < all.out.size());
    check_refused(run({"fit", sample.string(), "--dimension", "nothing"}), "nothing");
    check_refused(run({"fit", "missing.json"}), "missing.json");
}
