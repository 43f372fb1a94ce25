#include "engine/measure/fraction.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <limits>
#include <random>
#include <string>

using namespace engine;

namespace {

constexpr WideInteger largest = (static_cast<WideInteger>(1) << 126) - 1;

bool are_equal(const Fraction& a, const Fraction& b) { return comparison(a, b) == 0; }

std::string any_digits(std::mt19937& random, std::size_t count) {
    std::string digits{static_cast<char>('1' + random() % 9)};
    while (digits.size() < count) digits += static_cast<char>('0' + random() % 10);
    return digits;
}

WideInteger integer_of(const std::string& digits) {
    WideInteger value = 0;
    for (const char c : digits) value = value * 10 + (c - '0');
    return value;
}

}  // namespace

TEST_CASE("fractions are added, multiplied and divided exactly", "[engine][fraction]") {
    CHECK(are_equal(*sum({1, 3}, {1, 6}), {1, 2}));
    CHECK(are_equal(*difference({1, 3}, {1, 2}), {-1, 6}));
    CHECK(are_equal(*product({-2, 3}, {3, 4}), {-1, 2}));
    CHECK(are_equal(*quotient({1, 2}, {-3, 4}), {-2, 3}));
    CHECK_FALSE(quotient({1, 2}, {0, 1}));
}

TEST_CASE("arithmetic beyond 64 bits stays exact", "[engine][fraction]") {
    const Fraction large{static_cast<WideInteger>(1) << 100, 3};
    CHECK(are_equal(*quotient(*product(large, {7, 9}), {7, 9}), large));
    CHECK(are_equal(*difference(*sum(large, {1, 7}), {1, 7}), large));
    CHECK(are_equal(*product(large, {3, static_cast<WideInteger>(1) << 100}), {1, 1}));
}

TEST_CASE("what does not fit gives no value", "[engine][fraction]") {
    CHECK_FALSE(sum({largest, 1}, {1, 1}));
    CHECK_FALSE(product({largest, 1}, {2, 1}));
    CHECK_FALSE(product({1, largest}, {1, 2}));
    CHECK_FALSE(sum({1, largest}, {1, largest - 1}));
    CHECK_FALSE(comparison({largest, 1}, {-largest, 1}));
    CHECK(sum({largest, 1}, {-largest, 1}));
}

TEST_CASE("whole numbers are rounded as asked", "[engine][fraction]") {
    const auto rounded = [](int n, int d, Rounding rounding) {
        return static_cast<int>(whole_number({n, d}, rounding));
    };
    CHECK(rounded(5, 2, Rounding::nearest) == 3);
    CHECK(rounded(-5, 2, Rounding::nearest) == -3);
    CHECK(rounded(7, 3, Rounding::nearest) == 2);
    CHECK(rounded(-8, 3, Rounding::nearest) == -3);
    CHECK(rounded(5, 2, Rounding::down) == 2);
    CHECK(rounded(-5, 2, Rounding::down) == -3);
    CHECK(rounded(5, 2, Rounding::up) == 3);
    CHECK(rounded(-5, 2, Rounding::up) == -2);
    CHECK(rounded(-6, 2, Rounding::up) == -3);
}

TEST_CASE("the nearest double is the one the C library reads", "[engine][fraction][property]") {
    const auto seed = GENERATE(range(1U, 9U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < 500; ++i) {
        const auto whole = any_digits(random, 1 + random() % 18);
        const auto decimals = any_digits(random, 1 + random() % 18);
        Fraction value{integer_of(whole + decimals), 1};
        for (std::size_t d = 0; d < decimals.size(); ++d) value.denominator *= 10;
        const auto text = whole + "." + decimals;
        CAPTURE(text);
        REQUIRE(nearest_double(value) == std::strtod(text.c_str(), nullptr));
        REQUIRE(nearest_double(negated(value)) == -std::strtod(text.c_str(), nullptr));
        const Fraction small{1, value.numerator};
        const auto digits = whole + decimals;
        const auto expected = 1.0L / std::strtold(digits.c_str(), nullptr);
        const auto off = static_cast<long double>(nearest_double(small)) / expected - 1.0L;
        REQUIRE(std::abs(off) < 0x1p-52L);
    }
}

TEST_CASE("a fraction that passes through a double is itself again",
          "[engine][fraction][property]") {
    const auto seed = GENERATE(range(1U, 9U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < 1000; ++i) {
        const Fraction value{static_cast<WideInteger>(random() % 20'000'001U) - 10'000'000,
                             static_cast<WideInteger>(1 + random() % 10'000U)};
        const auto again = simplest_fraction(nearest_double(value));
        REQUIRE(again);
        REQUIRE(are_equal(*again, value));
    }
}

TEST_CASE("every double gives a fraction with that double, or none", "[engine][fraction]") {
    const auto seed = GENERATE(range(1U, 9U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < 1000; ++i) {
        const double digits =
            static_cast<double>(random()) * 4294967296.0 + static_cast<double>(random());
        const double value = std::ldexp(digits, static_cast<int>(random() % 120) - 110);
        CAPTURE(value);
        const auto fraction = simplest_fraction(value);
        REQUIRE(fraction);
        REQUIRE(nearest_double(*fraction) == value);
    }
}

TEST_CASE("doubles that are no number or far too large give no fraction", "[engine][fraction]") {
    CHECK_FALSE(simplest_fraction(std::numeric_limits<double>::infinity()));
    CHECK_FALSE(simplest_fraction(std::numeric_limits<double>::quiet_NaN()));
    CHECK_FALSE(simplest_fraction(std::numeric_limits<double>::max()));
    CHECK_FALSE(simplest_fraction(std::numeric_limits<double>::denorm_min()));
    CHECK(are_equal(*simplest_fraction(0.0), {0, 1}));
    CHECK(are_equal(*simplest_fraction(-0.0), {0, 1}));
}
