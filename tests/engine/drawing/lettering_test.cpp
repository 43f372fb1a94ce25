#include "engine/drawing/lettering.h"

#include <catch2/catch.hpp>

using namespace engine;

// The font's own table (hmtx) gives a digit 1151 of 2048 parts of the size: 0.56201.
TEST_CASE("a text is as wide as the advances of its letters", "[engine][drawing]") {
    CHECK(text_width("", 10.0) == 0.0);
    CHECK(text_width("0000", 10.0) == Approx(4 * 5.62));
    CHECK(text_width("AV", 10.0) == Approx(text_width("A", 10.0) + text_width("V", 10.0)));
    CHECK(text_width("A1", 7.0) == Approx(2 * text_width("A1", 3.5)));
    CHECK(text_width("A1", 7.0, LetterWeight::bold) > text_width("A1", 7.0));
}

TEST_CASE("all digits are equally wide, so that numbers stand in columns", "[engine][drawing]") {
    for (const auto weight : {LetterWeight::regular, LetterWeight::bold}) {
        for (char digit = '1'; digit <= '9'; ++digit)
            CHECK(text_width(std::string(1, digit), 3.5, weight) == text_width("0", 3.5, weight));
    }
}

TEST_CASE("what the first font lacks is drawn by the second", "[engine][drawing]") {
    const auto runs = text_runs("at \u2300 3", LetterWeight::bold);
    REQUIRE(runs.size() == 3);
    CHECK(runs[0].font == FontFile::roboto_medium);
    CHECK(runs[1].font == FontFile::dejavu_sans);
    CHECK(runs[2].font == FontFile::roboto_medium);
    REQUIRE(runs[1].letters.size() == 1);
    CHECK(runs[1].letters[0].glyph != 0);
    CHECK(runs[1].at == Approx(text_width("at ", 1.0, LetterWeight::bold)));
}

TEST_CASE("what both fonts lack keeps its character and has a width", "[engine][drawing]") {
    const auto runs = text_runs("\u94BB", LetterWeight::regular);
    REQUIRE(runs.size() == 1);
    CHECK(runs[0].letters[0].character == U'\u94BB');
    CHECK(runs[0].letters[0].glyph == 0);
    CHECK(text_width("\u94BB", 1.0) > 0.3);
}

TEST_CASE("a control character is as wide as the sign that stands for it", "[engine][drawing]") {
    CHECK(text_width("\x01", 3.5) == text_width("\uFFFD", 3.5));
    CHECK(text_width("a\nb", 3.5) == text_width("a b", 3.5));
}

TEST_CASE("capitals are 0.71 of the size high", "[engine][drawing]") {
    CHECK(capital_height(10.0) == Approx(7.11).margin(0.01));
    CHECK(capital_height(10.0, LetterWeight::bold) == Approx(7.11).margin(0.01));
}
