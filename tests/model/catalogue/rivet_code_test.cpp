#include "model/catalogue/rivet_code.h"

#include <catch2/catch.hpp>

using namespace engine::literals;

TEST_CASE("a rivet code is thirty-seconds and sixteenths", "[model][catalogue]") {
    CHECK(model::read_rivet_code("6-10") == model::RivetCode{12_in_64, 40_in_64});
}

TEST_CASE("what is no rivet code is not read as one", "[model][catalogue]") {
    for (const auto* text :
         {"", "-", "4", "4-", "-4", "4-4-4", "4 x 8", "4-4a", "0-4", "4-0", "4--4", "400-4"}) {
        CAPTURE(text);
        CHECK_FALSE(model::read_rivet_code(text));
    }
}
