#include "engine/drawing/printable_text.h"

#include "engine/files/json_text.h"

#include "tests/support/dice.h"

#include <catch2/catch.hpp>

using namespace engine;

TEST_CASE("a text that can be printed stays as it is", "[engine][drawing]") {
    for (const char* text : {"", "A1 near", "18 3/8 \u00D7 1\u00BD", "\u0416 \u94BB \U0001F6B2"})
        CHECK(printable_text(text) == text);
}

TEST_CASE("line breaks and tabs become spaces", "[engine][drawing]") {
    CHECK(printable_text("a\nb\tc\rd\r\ne\u2028f") == "a b c d e f");
}

TEST_CASE("what is no text becomes the sign for that", "[engine][drawing]") {
    using namespace std::string_literals;
    CHECK(printable_text("a\0b\x1B\x7F"s) == "a\uFFFDb\uFFFD\uFFFD");
    CHECK(printable_text("\xFF|\xC3|\x80") == "\uFFFD|\uFFFD|\uFFFD");
    CHECK(printable_text("\xC0\xAF") == "\uFFFD\uFFFD");                      // too long a "/"
    CHECK(printable_text("\xE0\x80\xAF") == "\uFFFD\uFFFD\uFFFD");            // the same
    CHECK(printable_text("\xED\xA0\x80") == "\uFFFD\uFFFD\uFFFD");            // half of a pair
    CHECK(printable_text("\xF4\x90\x80\x80") == "\uFFFD\uFFFD\uFFFD\uFFFD");  // beyond the last
    CHECK(printable_text("\xEF\xBF\xBE") == "\uFFFD");                        // never a character
}

TEST_CASE("random bytes become well-formed text that stays as it is",
          "[engine][drawing][property]") {
    const auto seed = GENERATE(range(1U, 21U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    for (int i = 0; i < 200; ++i) {
        std::string bytes(dice.below(12), ' ');
        for (char& byte : bytes) {
            // High bytes often, so that they meet.
            const auto value = dice.chance(70) ? 0x80U + dice.below(0x80) : dice.below(0x80);
            byte = static_cast<char>(value);
        }
        const std::string printable = printable_text(bytes);
        REQUIRE(is_utf8(printable));
        REQUIRE(printable_text(printable) == printable);
        std::string again;
        for (const char32_t character : characters_of(printable))
            append_character(again, character);
        REQUIRE(again == printable);
    }
}
