#include "engine/measure/tape.h"

#include <catch2/catch.hpp>

#include <array>
#include <limits>
#include <random>

using namespace engine;

namespace {

constexpr std::array forms{TapeForm::inch_fraction, TapeForm::feet_inches, TapeForm::inch_decimal,
                           TapeForm::millimetre,    TapeForm::centimetre,  TapeForm::metre};
constexpr int draws = 3000;

std::int64_t any_64_bits(std::mt19937& random) {
    const std::uint64_t high = random();
    const std::uint64_t low = random();
    return static_cast<std::int64_t>((high << 32U) | low);
}

// Lengths of every size, with the ends of the range among them.
Length any_length(std::mt19937& random) {
    const auto pick = random() % 32;
    if (pick == 0) return Length::from_nm(std::numeric_limits<std::int64_t>::max());
    if (pick == 1) return Length::from_nm(std::numeric_limits<std::int64_t>::min());
    const auto shift = random() % 64;
    return Length::from_nm(any_64_bits(random) >> shift);
}

TapeStyle any_style(std::mt19937& random) {
    TapeStyle style;
    style.form = forms[random() % forms.size()];
    style.denominator = 1 << (random() % 7);
    style.decimals = static_cast<int>(random() % 8);
    style.with_unit = random() % 2 == 0;
    return style;
}

std::string any_noise(std::mt19937& random) {
    static const std::array<std::string, 26> parts{"1",      "8",
                                                   "0",      "18",
                                                   "3/8",    "/",
                                                   "-",      " ",
                                                   ".",      "'",
                                                   "\"",     "in",
                                                   "ft",     "mm",
                                                   "cm",     "m",
                                                   "x",      "\u215C",
                                                   "\u2033", "deg",
                                                   "+",      "999999999999999999999",
                                                   ",",      "(",
                                                   "\xFF",   "\t"};
    std::string text;
    for (auto left = random() % 8; left > 0; --left) text += parts[random() % parts.size()];
    return text;
}

}  // namespace

TEST_CASE("what is printed reads as exactly what is printed again", "[engine][tape][property]") {
    const auto seed = GENERATE(range(1U, 9U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < draws; ++i) {
        const auto length = any_length(random);
        const auto style = any_style(random);
        const auto text = tape_text(length, style);
        const auto again = read_length(text, bare_unit(style));
        CAPTURE(length.nm(), text);
        REQUIRE(again);
        REQUIRE(tape_text(*again, style) == text);
    }
}

TEST_CASE("what is printed is no more than half a mark off", "[engine][tape][property]") {
    const auto seed = GENERATE(range(1U, 5U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < draws; ++i) {
        const auto length = Length::from_nm(any_64_bits(random) >> 8U);
        auto style = any_style(random);
        const auto text = tape_text(length, style);
        const auto again = read_length(text, bare_unit(style));
        CAPTURE(length.nm(), text);
        REQUIRE(again);
        const auto off = again->nm() > length.nm() ? *again - length : length - *again;
        REQUIRE(off.nm() <= (tape_step(style).nm() + 1) / 2);
    }
}

TEST_CASE("an exact text reads as the same length", "[engine][tape][property]") {
    const auto seed = GENERATE(range(1U, 9U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < draws; ++i) {
        const auto length = any_length(random);
        const auto style = any_style(random);
        const auto text = exact_text(length, style);
        const auto again = read_length(text, bare_unit(style));
        CAPTURE(length.nm(), text);
        REQUIRE(again);
        REQUIRE(*again == length);
    }
}

TEST_CASE("every length on the marks of a tape is printed exactly", "[engine][tape][property]") {
    const auto seed = GENERATE(range(1U, 5U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < draws; ++i) {
        auto style = any_style(random);
        style.decimals %= 5;  // marks that are whole nanometres in every form
        const auto length =
            tape_step(style) * (static_cast<std::int64_t>(random()) - 2'000'000'000);
        const auto text = tape_text(length, style);
        CAPTURE(length.nm(), text);
        const auto again = read_length(text, bare_unit(style));
        REQUIRE(again);
        REQUIRE(*again == length);
        const auto plain_text = [&] {
            auto plain = style;
            plain.with_unit = false;
            return tape_text(length, plain);
        };
        const auto exact = exact_text(length, style);
        REQUIRE((exact == text || exact == plain_text()));
    }
}

TEST_CASE("noise is read or refused at a column within it", "[engine][tape][property]") {
    const auto seed = GENERATE(range(1U, 9U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < draws; ++i) {
        const auto text = any_noise(random);
        const auto length = read_length(text, LengthUnit::inch);
        CAPTURE(text);
        if (length) {
            REQUIRE(*read_length(exact_text(*length, {}), LengthUnit::inch) == *length);
            continue;
        }
        REQUIRE(length.error().where.substr(0, 7) == "column ");
        const auto column = std::stoul(length.error().where.substr(7));
        REQUIRE(column >= 1);
        REQUIRE(column <= text.size() + 1);
        REQUIRE_FALSE(length.error().message.empty());
    }
}
