#include "engine/measure/length.h"

#include <catch2/catch.hpp>

using engine::Length;
using namespace engine::literals;

TEST_CASE("every sixty-fourth of an inch is a whole number of nanometres", "[engine][length]") {
    CHECK(1_in_64 == Length::from_nm(396'875));
    CHECK(64_in_64 == 1_in);
    CHECK(1_in * 10 == 254_mm);
}

TEST_CASE("a sum beyond the range is refused or stops at the end", "[engine][length]") {
    const auto most = Length::from_nm(std::numeric_limits<std::int64_t>::max());
    const auto least = Length::from_nm(std::numeric_limits<std::int64_t>::min());
    CHECK_FALSE(Length::checked_sum(most, Length::from_nm(1)));
    CHECK_FALSE(Length::checked_difference(least, Length::from_nm(1)));
    CHECK_FALSE(Length::checked_product(most, 2));
    CHECK(most + 1_in == most);
    CHECK(least - 1_in == least);
    CHECK(most * -2 == least);
    CHECK(-least == most);
}
