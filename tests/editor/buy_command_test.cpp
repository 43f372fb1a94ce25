// The command that writes the lists to buy by.
#include "editor/prices.h"
#include "engine/files/csv.h"
#include "model/buying/buying_files.h"

#include "tests/editor/at_buy.h"
#include "tests/editor/command_run.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <string>

using tests::run;
using tests::text_of;
using tests::write;

namespace fs = std::filesystem;

namespace {

const std::string sample = BARWRIGHT_SAMPLES "/tool_cabinet.json";

}  // namespace

TEST_CASE("buy writes every list, and says what it comes to", "[editor][command line][buy]") {
    const tests::ScratchFolder scratch{"buy_files"};
    const auto folder = scratch.path / "out";
    const auto made = run({"buy", sample, "--out", folder.string(), "--paper", "letter"});
    CAPTURE(made.out, made.err);
    CHECK(made.status != 2);
    CHECK(made.out.find("proven cheapest") != std::string::npos);
    for (const auto name : model::buying_names) {
        CAPTURE(name);
        CHECK(fs::file_size(folder / name) > 50);
    }
    CHECK(text_of(folder / "bars.pdf").starts_with("%PDF"));
    for (const auto* name : {"buy.csv", "compare.csv", "what_if.csv", "nest.csv", "stops.csv"}) {
        CAPTURE(name);
        CHECK(engine::read_csv(text_of(folder / name)));
    }
    const auto first = text_of(folder / "bars.pdf");
    run({"buy", sample, "--out", folder.string(), "--paper", "letter"});
    CHECK(text_of(folder / "bars.pdf") == first);
}

TEST_CASE("a supplier that the project does not have is refused with those it has",
          "[editor][command line][buy]") {
    const tests::ScratchFolder scratch{"buy_unknown"};
    const auto refused = run({"buy", sample, "--out", scratch.path.string(), "--supplier", "moon"});
    CHECK(refused.status == 2);
    CHECK(refused.err.find("moon") != std::string::npos);
    CHECK_FALSE(fs::exists(scratch.path / "buy.csv"));
}

TEST_CASE("a price list that was filled in is not written over", "[editor][command line][buy]") {
    const tests::ScratchFolder scratch{"buy_twice"};
    const auto list = scratch.path / "prices_to_fill_in.csv";
    write(list, "mine");
    const auto again = run({"buy", sample, "--out", scratch.path.string()});
    CHECK(again.out.find("is kept") != std::string::npos);
    CHECK(text_of(list) == "mine");
    CHECK(fs::exists(scratch.path / "buy.csv"));
}
