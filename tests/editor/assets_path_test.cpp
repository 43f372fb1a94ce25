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

TEST_CASE("an installed program takes its own assets, not those that lie above its prefix",
          "[editor][assets]") {
    const ScratchFolder scratch{"assets_nearest"};
    fs::create_directories(scratch.path / "assets/catalogue");
    fs::create_directories(scratch.path / "stage/usr/share/barwright/assets/catalogue");
    const auto found =
        editor::assets_path({.executable = scratch.path / "stage/usr/bin/barwright"});
    REQUIRE(found);
    CHECK(*found == scratch.path / "stage/usr/share/barwright/assets");
}

TEST_CASE("without assets near the program the error says what to do", "[editor][assets]") {
    const ScratchFolder scratch{"assets_none"};
    fs::create_directories(scratch.path / "beside/assets/catalogue");
    const auto missing = editor::assets_path({.executable = scratch.path / "empty/barwright"});
    REQUIRE_FALSE(missing);
    CHECK_THAT(missing.error().message, Catch::Contains("BARWRIGHT_ASSETS"));
}
