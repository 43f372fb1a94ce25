#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

TEST_CASE("what is not in the catalogue is not found", "[model][catalogue]") {
    const auto& catalogue = shipped_catalogue();
    CHECK(model::find_section(catalogue, "angle") == nullptr);
    CHECK(model::find_alloy(catalogue, "") == nullptr);
    CHECK(model::find_drill(catalogue, "#300") == nullptr);
    CHECK(model::find_rivet(catalogue, "machine screw M4") == nullptr);
    CHECK(model::find_screw(catalogue, "blind rivet 1/8") == nullptr);
}

TEST_CASE("a section written without spaces is found among the nearest", "[model][catalogue]") {
    const auto ids = model::nearest_section_ids(shipped_catalogue(), "Angle 1x1x1/8");
    REQUIRE_FALSE(ids.empty());
    CHECK(ids.front() == "angle 1 x 1 x 1/8");
}

TEST_CASE("a section with a letter wrong is found among the nearest", "[model][catalogue]") {
    const auto ids = model::nearest_section_ids(shipped_catalogue(), "angel 30 x 30 x 3 mm");
    REQUIRE_FALSE(ids.empty());
    CHECK(ids.front() == "angle 30 x 30 x 3 mm");
}

TEST_CASE("no more section ids are offered than were asked for", "[model][catalogue]") {
    CHECK(model::nearest_section_ids(shipped_catalogue(), "flat 1 x 1/8", 2).size() == 2);
    CHECK(model::nearest_section_ids(shipped_catalogue(), "flat 1 x 1/8", 0).empty());
}

TEST_CASE("a text that is near no section gets no offer", "[model][catalogue]") {
    CHECK(model::nearest_section_ids(shipped_catalogue(), "").empty());
    CHECK(model::nearest_section_ids(shipped_catalogue(), "oak board").empty());
    CHECK(model::nearest_section_ids(shipped_catalogue(), std::string(100'000, 'x')).empty());
}
