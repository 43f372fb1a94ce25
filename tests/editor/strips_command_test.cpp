#include "editor/command_line.h"

#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <sstream>

namespace fs = std::filesystem;
using tests::ScratchFolder;

namespace {

struct Run {
    int status = 0;
    std::string out;
    std::string err;
};

Run run(std::vector<std::string> arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const int status = editor::run_command_line(arguments, out, err);
    return {status, out.str(), err.str()};
}

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

// Of a sample in inches and of one in millimetres.
const std::string in_inches = BARWRIGHT_SAMPLES "/work_counter.json";
const std::string in_mm = BARWRIGHT_SAMPLES "/sleeping_platform.json";

std::vector<std::string> strips_of(const std::string& project,
                                   const fs::path& file,
                                   const std::vector<std::string>& more = {}) {
    std::vector<std::string> arguments{"strips", project, "--out", file.string()};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return arguments;
}

// Tables of a test's own, until its end.
struct AssetsInUse {
    explicit AssetsInUse(const fs::path& assets) {
        if (const char* is = std::getenv("BARWRIGHT_ASSETS")) was = is;
        setenv("BARWRIGHT_ASSETS", assets.c_str(), 1);
    }
    ~AssetsInUse() {
        if (was) {
            setenv("BARWRIGHT_ASSETS", was->c_str(), 1);
        } else {
            unsetenv("BARWRIGHT_ASSETS");
        }
    }
    AssetsInUse(const AssetsInUse&) = delete;
    AssetsInUse& operator=(const AssetsInUse&) = delete;

    std::optional<std::string> was;
};

}  // namespace

TEST_CASE("drill strips are written on the paper of the project's units, and say what to measure",
          "[editor][command line][strips]") {
    const ScratchFolder scratch("strips_command");
    const auto file = scratch.path / "strips.pdf";
    const auto inches = run(strips_of(in_inches, file));
    CHECK(inches.status == 0);
    CHECK_THAT(inches.out, Catch::Contains("both rulers of 4 in"));
    CHECK_THAT(bytes_of(file), Catch::StartsWith("%PDF") && Catch::Contains("612 792"));
    const auto metric = run(strips_of(in_mm, file));
    CHECK(metric.status == 0);
    CHECK_THAT(metric.out, Catch::Contains("both rulers of 100 mm"));
    CHECK_THAT(bytes_of(file), Catch::Contains("595.27"));
    CHECK(run(strips_of(in_mm, file, {"--paper", "tabloid"})).status == 0);
    CHECK_THAT(bytes_of(file), Catch::Contains("792 1224"));
}

TEST_CASE("what the rulers measure is read as all lengths are", "[editor][command line][strips]") {
    const ScratchFolder scratch("strips_rulers");
    const auto file = scratch.path / "strips.pdf";
    REQUIRE(run(strips_of(in_inches, file)).status == 0);
    const auto uncorrected = bytes_of(file);
    CHECK(run(strips_of(in_inches, file, {"--ruler-across", "4", "--ruler-down", "101.6 mm"}))
              .status == 0);
    CHECK(bytes_of(file) == uncorrected);
    CHECK(run(strips_of(in_inches, file, {"--ruler-across", "3 31/32"})).status == 0);
    CHECK(bytes_of(file) != uncorrected);
}

TEST_CASE("a ruler that cannot be is refused, and nothing is written",
          "[editor][command line][strips]") {
    const ScratchFolder scratch("strips_refused");
    const auto file = scratch.path / "strips.pdf";
    const auto far = run(strips_of(in_inches, file, {"--ruler-down", "4 1/4"}));
    CHECK(far.status == 2);
    CHECK_THAT(far.err, Catch::Contains("ruler down") && Catch::Contains("4 1/4 in") &&
                            Catch::Contains("print the sheet at 100 %"));
    const auto other_unit = run(strips_of(in_mm, file, {"--ruler-across", "4"}));
    CHECK(other_unit.status == 2);
    CHECK_THAT(other_unit.err, Catch::Contains("100 mm"));
    const auto word = run(strips_of(in_mm, file, {"--ruler-across", "about right"}));
    CHECK(word.status == 2);
    CHECK_THAT(word.err, Catch::Contains("--ruler-across \"about right\""));
    CHECK(run(strips_of(in_mm, file, {"--paper", "bark"})).status == 2);
    CHECK_FALSE(fs::exists(file));
}

TEST_CASE("strips of a project in which nothing is drilled are refused",
          "[editor][command line][strips]") {
    const ScratchFolder scratch("strips_nothing");
    const auto project = scratch.path / "nothing.json";
    std::ofstream(project) << R"({"barwright": 1, "name": "Nothing yet"})";
    const auto refused = run(strips_of(project.string(), scratch.path / "strips.pdf"));
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Catch::Contains("nothing in it is drilled"));
}

TEST_CASE("a piece that is too wide for the paper is named, and the others are written",
          "[editor][command line][strips]") {
    const ScratchFolder scratch("strips_wide");
    // A catalogue in which the flat bar of the sample is 200 mm wide.
    fs::copy(fs::path(BARWRIGHT_SAMPLES).parent_path() / "assets", scratch.path / "assets",
             fs::copy_options::recursive);
    const auto sections = scratch.path / "assets" / "catalogue" / "sections.csv";
    std::string table = bytes_of(sections);
    const std::string narrow = "flat 40 x 3 mm,flat,metric,40,";
    const auto at = table.find(narrow);
    REQUIRE(at != std::string::npos);
    table.replace(at, narrow.size(), "flat 40 x 3 mm,flat,metric,200,");
    std::ofstream(sections, std::ios::binary) << table;
    const AssetsInUse other(scratch.path / "assets");
    const auto file = scratch.path / "strips.pdf";
    const auto made = run(strips_of(in_mm, file));
    CAPTURE(made.out, made.err);
    CHECK(made.status == 1);
    CHECK_THAT(made.err, Catch::Contains("has no strip: it is 200") &&
                             Catch::Contains("print the strips on larger paper: a3"));
    CHECK(fs::exists(file));
}

TEST_CASE("each mark and hand gets a DXF file", "[editor][command line][dxf]") {
    const ScratchFolder scratch("dxf_command");
    const auto folder = scratch.path / "parts";
    const auto done = run({"dxf", in_inches, "--out", folder.string()});
    CHECK(done.status == 0);
    std::size_t files = 0;
    for (const auto& entry : fs::directory_iterator(folder)) {
        CHECK(entry.path().extension() == ".dxf");
        ++files;
    }
    CHECK(files > 10);
    CHECK_THAT(done.out, Catch::Contains(std::to_string(files) + " files"));
    CHECK(fs::exists(folder / "A1.dxf"));
    CHECK(fs::exists(folder / "A1_opposite.dxf"));
}
