#include "model/schedule/decimal_mm.h"

#include <catch2/catch.hpp>

#include <limits>

namespace {

std::string text_of(std::int64_t nm) { return model::decimal_mm(engine::Length::from_nm(nm)); }

}  // namespace

TEST_CASE("millimetres are exact and carry no zeros at the end", "[model][schedule]") {
    CHECK(text_of(0) == "0");
    CHECK(text_of(25'400'000) == "25.4");
    CHECK(text_of(396'875) == "0.396875");
    CHECK(text_of(1) == "0.000001");
    CHECK(text_of(914'400'000) == "914.4");
    CHECK(text_of(3'000'000) == "3");
}

TEST_CASE("millimetres below zero keep their sign, to the very end of the range",
          "[model][schedule]") {
    CHECK(text_of(-1) == "-0.000001");
    CHECK(text_of(-3'175'000) == "-3.175");
    CHECK(text_of(std::numeric_limits<std::int64_t>::min()) == "-9223372036854.775808");
}
