#include "model/buying/price_library.h"

#include "engine/files/whole_file.h"
#include "model/project/project_json.h"

#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

TEST_CASE("price lists are read from the project's folder, and errors are kept",
          "[model][buying][library]") {
    const tests::ScratchFolder scratch{"price_library"};
    REQUIRE(engine::write_whole_file(scratch.path / "good.csv",
                                     "what,size,price\nsheet pin 1/8,,0.45\n"));
    REQUIRE(engine::write_whole_file(scratch.path / "bad.csv",
                                     "what,size,price\nsheet pin 1/8,,much\n"));
    model::Project project;
    project.suppliers = {{.name = "a", .prices = "good.csv"},
                         {.name = "b", .prices = "bad.csv"},
                         {.name = "c", .prices = "none.csv"},
                         {.name = "d", .prices = ""},
                         {.name = "e", .prices = "good.csv", .way = model::WayHome::fetched}};
    const auto library =
        model::read_price_library(project, shipped_catalogue(), scratch.path / "van.json");
    CHECK(library.lists.size() == 4);
    const auto* good = model::prices_of(library, project.suppliers[0]);
    REQUIRE(good != nullptr);
    CHECK(good->boxes[0].price == 45);
    CHECK(model::prices_of(library, project.suppliers[4]) == good);
    CHECK(model::prices_of(library, project.suppliers[1]) == nullptr);
    CHECK(library.lists.at("bad.csv").error().where == "bad.csv, line 2, column price");
    CHECK_FALSE(library.lists.at("none.csv"));
    CHECK(library.lists.at("").error().message.find("choose its file") != std::string::npos);
}

TEST_CASE("the suppliers of the samples have price lists that read without a warning",
          "[model][buying][library][samples]") {
    const std::filesystem::path samples{BARWRIGHT_SAMPLES};
    const auto text = engine::read_whole_file(samples / "tool_cabinet.json");
    REQUIRE(text);
    const auto project = model::read_project_json(*text);
    REQUIRE(project);
    REQUIRE(project->suppliers.size() == 2);
    const auto library =
        model::read_price_library(*project, shipped_catalogue(), samples / "tool_cabinet.json");
    for (const auto& [file, list] : library.lists) {
        CAPTURE(file);
        if (!list) FAIL(engine::to_text(list.error()));
        CHECK(list->warnings.empty());
        CHECK(list->terms.currency == project->shop.currency);
        CHECK_FALSE(list->sheets.empty());
    }
}
