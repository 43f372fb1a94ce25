#include "model/buying/list_lengths.h"

#include <catch2/catch.hpp>

using engine::LengthUnit;
using namespace engine::literals;
using model::read_list_length;
using model::read_sheet_size;

TEST_CASE("a length in a list is read as everywhere, and with a decimal comma", "[model][buying]") {
    CHECK(*read_list_length("20 ft", LengthUnit::inch, ',') == 240_in);
    CHECK(*read_list_length("240", LengthUnit::inch, ',') == 240_in);
    CHECK(*read_list_length("16' 6\"", LengthUnit::millimetre, ',') == 198_in);
    CHECK(*read_list_length("6,1 m", LengthUnit::inch, ',') == 6100_mm);
    CHECK(*read_list_length("6.1 m", LengthUnit::inch, ';') == 6100_mm);
    CHECK(*read_list_length("0,125 in", LengthUnit::millimetre, ';') == 8_in_64);
}

TEST_CASE("a length whose mark may part thousands is refused", "[model][buying]") {
    CHECK_FALSE(read_list_length("6,096 m", LengthUnit::inch, ','));
    CHECK_FALSE(read_list_length("6.096 m", LengthUnit::inch, ';'));
    CHECK(*read_list_length("6.096 m", LengthUnit::inch, ',') == 240_in);
    CHECK_FALSE(read_list_length("6,1,2 m", LengthUnit::inch, ','));
}

TEST_CASE("a length is more than zero and can be worked with", "[model][buying]") {
    for (const std::string text : {"0", "-3 ft", "", "long", "2 km", "2000 m"}) {
        CAPTURE(text);
        CHECK_FALSE(read_list_length(text, LengthUnit::inch, ','));
    }
}

TEST_CASE("numbers of a sheet's size are in the unit that stands behind them", "[model][buying]") {
    const std::array inches{8_in_64, 48_in, 96_in};
    CHECK(*read_sheet_size("1/8 x 48 x 96 in", LengthUnit::millimetre, ',') == inches);
    CHECK(*read_sheet_size("1/8\" X 48\" X 96\"", LengthUnit::millimetre, ',') == inches);
    CHECK(*read_sheet_size("1/8 in * 4 ft * 8 ft", LengthUnit::millimetre, ',') == inches);
    CHECK(*read_sheet_size("1/8 \xC3\x97 48 \xC3\x97 96", LengthUnit::inch, ',') == inches);
    const std::array mixed{6_mm, 48_in, 96_in};
    CHECK(*read_sheet_size("6 mm x 48 x 96 in", LengthUnit::millimetre, ',') == mixed);
    const std::array metric{15_mm, 1250_mm, 2500_mm};
    CHECK(*read_sheet_size("15 x 1250 x 2500 mm", LengthUnit::inch, ';') == metric);
    CHECK_FALSE(read_sheet_size("48 x 96 in", LengthUnit::inch, ','));
    CHECK_FALSE(read_sheet_size("1/8 x 48 x 96 x 2 in", LengthUnit::inch, ','));
    CHECK_FALSE(read_sheet_size("1/8 x x 96 in", LengthUnit::inch, ','));
}
