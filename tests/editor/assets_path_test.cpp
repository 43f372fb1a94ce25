#include "editor/assets_path.h"

#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <filesystem>

namespace fs = std::filesystem;
using tests::ScratchFolder;

TEST_CASE("the assets are found above the program, however deep the build folder lies",
          "[editor][assets]") {
    const ScratchFolder scratch{"assets_above"};
    fs::create_directories(scratch.path / "assets/catalogue");
    const auto found =
        editor::assets_path({.executable = scratch.path / "build/dev/editor/barwright"});
    REQUIRE(found);
    CHECK(*found == scratch.path / "assets");
}

TEST_CASE("an installed program finds its assets under share", "[editor][assets]") {
    const ScratchFolder scratch{"assets_share"};
    fs::create_directories(scratch.path / "share/barwright/assets/catalogue");
    const auto found = editor::assets_path({.executable = scratch.path / "bin/barwright"});
    REQUIRE(found);
    CHECK(*found == scratch.path / "share/barwright/assets");
}

TEST_CASE("a folder that is asked for is taken or refused, never replaced by another",
          "[editor][assets]") {
    const ScratchFolder scratch{"assets_asked"};
    fs::create_directories(scratch.path / "assets/catalogue");
    const auto found = editor::assets_path(
        {.asked_for = scratch.path / "elsewhere", .executable = scratch.path / "barwright"});
    REQUIRE_FALSE(found);
    CHECK(found.error().where == "BARWRIGHT_ASSETS");
    CHECK_THAT(found.error().message, Catch::Contains("elsewhere"));
}

TEST_CASE("the source folder is the last resort, and without it the error says what to do",
          "[editor][assets]") {
    const ScratchFolder scratch{"assets_none"};
    fs::create_directories(scratch.path / "source/assets/catalogue");
    const fs::path executable = scratch.path / "empty/barwright";
    const auto found =
        editor::assets_path({.executable = executable, .built_from = scratch.path / "source"});
    REQUIRE(found);
    CHECK(*found == scratch.path / "source/assets");

    const auto missing =
        editor::assets_path({.executable = executable, .built_from = scratch.path / "gone"});
    REQUIRE_FALSE(missing);
    CHECK_THAT(missing.error().message, Catch::Contains("BARWRIGHT_ASSETS"));
}
