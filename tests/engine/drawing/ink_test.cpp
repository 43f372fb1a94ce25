#include "engine/drawing/ink.h"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>

using namespace engine;

namespace {

// Relative luminance of a colour: WCAG 2.1.
double luminance(Ink ink) {
    const InkParts parts = parts_of(ink);
    const auto linear = [](std::uint8_t part) {
        const double share = part / 255.0;
        return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(parts.red) + 0.7152 * linear(parts.green) + 0.0722 * linear(parts.blue);
}

double contrast_on_white(Ink ink) { return 1.05 / (luminance(ink) + 0.05); }

}  // namespace

TEST_CASE("coloured inks are read as well as dark grey in black and white", "[engine][drawing]") {
    // 7 is what WCAG 2.1 asks of small text at its stricter level.
    for (const Ink ink : {Ink::black, Ink::grey_75, Ink::blue, Ink::red})
        CHECK(contrast_on_white(ink) > 7.0);
}

TEST_CASE("greys are told apart", "[engine][drawing]") {
    constexpr std::array greys{Ink::black,   Ink::grey_75, Ink::grey_50,
                               Ink::grey_25, Ink::grey_10, Ink::white};
    for (std::size_t i = 1; i < greys.size(); ++i) {
        const InkParts parts = parts_of(greys[i]);
        CHECK(parts.red == parts.green);
        CHECK(parts.green == parts.blue);
        CHECK(parts.red >= parts_of(greys[i - 1]).red + 25);
    }
}

TEST_CASE("dashes grow with the width of their line", "[engine][drawing]") {
    CHECK(dash_lengths({.width = 0.5}).empty());
    CHECK(dash_lengths({.width = 0.5, .dash = Dash::dashed}) == std::vector{6.0, 1.5});
    CHECK(dash_lengths({.width = 0.25, .dash = Dash::dashed}) == std::vector{3.0, 0.75});
    CHECK(dash_lengths({.width = 0.5, .dash = Dash::chain}) == std::vector{12.0, 1.5, 0.5, 1.5});
    CHECK(dash_lengths({.width = 0.5, .dash = Dash::dotted}) == std::vector{0.5, 1.5});
}
