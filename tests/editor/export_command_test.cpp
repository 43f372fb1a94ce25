#include "tests/editor/command_run.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

using tests::run;

namespace {

namespace fs = std::filesystem;

std::string bytes_of(const fs::path& file) {
    std::ifstream in{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

const std::string sample = BARWRIGHT_SAMPLES "/parts_box.json";

}  // namespace

TEST_CASE("a project is exported in every format, twice the same", "[editor][command line]") {
    const tests::ScratchFolder scratch{"export_every"};
    for (const auto* name : {"a.step", "b.stp", "c.glb", "d.STL", "e.obj"}) {
        CAPTURE(name);
        const auto file = scratch.path / name;
        const auto first = run({"export", sample, "--out", file.string()});
        CAPTURE(first.out, first.err);
        CHECK(first.status == 0);
        CHECK_THAT(first.out, Catch::Contains(name));
        const auto bytes = bytes_of(file);
        CHECK(bytes.size() > 1'000);
        CHECK(run({"export", sample, "--out", file.string()}).status == 0);
        CHECK(bytes_of(file) == bytes);
    }
}

TEST_CASE("an ending that tells no format is refused with those that do",
          "[editor][command line]") {
    const tests::ScratchFolder scratch{"export_unknown"};
    for (const auto* name : {"a.png", "a", "a.step.txt", ".step"}) {
        const auto file = scratch.path / name;
        const auto refused = run({"export", sample, "--out", file.string()});
        CAPTURE(name, refused.out, refused.err);
        CHECK(refused.status == 2);
        CHECK_THAT(refused.err, Catch::Contains(name) && Catch::Contains(".glb"));
        CHECK_FALSE(fs::exists(file));
    }
}

TEST_CASE("an export that cannot be written, or has nothing in it, ends with status 2",
          "[editor][command line]") {
    const tests::ScratchFolder scratch{"export_nothing"};
    CHECK(
        run({"export", sample, "--out", (scratch.path / "no_folder" / "a.stl").string()}).status ==
        2);
    CHECK(run({"export", (scratch.path / "missing.json").string(), "--out",
               (scratch.path / "a.stl").string()})
              .status == 2);
}
