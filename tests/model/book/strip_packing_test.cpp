#include "model/book/strip_packing.h"

#include <catch2/catch.hpp>

#include <random>

using model::packed_in_rows;
using model::PackedSize;

namespace {

constexpr PackedSize sheet{180.0, 240.0};
constexpr double gap = 4.0;

std::vector<PackedSize> random_sizes(unsigned seed) {
    std::mt19937 random(seed);
    const auto within = [&](double least, double most) {
        return least + (most - least) * static_cast<double>(random() % 1000U) / 1000.0;
    };
    std::vector<PackedSize> sizes(5 + random() % 40U);
    for (auto& size : sizes) {
        size.width = within(20.0, 110.0);
        size.height = within(30.0, 240.0);
    }
    return sizes;
}

}  // namespace

TEST_CASE("papers lie within their sheets, a gap apart", "[model][book][strips]") {
    for (unsigned seed = 0; seed < 100; ++seed) {
        CAPTURE(seed);
        const auto sizes = random_sizes(seed);
        const auto places = packed_in_rows(sizes, sheet, gap);
        REQUIRE(places.size() == sizes.size());
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            CHECK(places[i].left >= 0.0);
            CHECK(places[i].top >= 0.0);
            CHECK(places[i].left + sizes[i].width <= sheet.width + 1e-9);
            CHECK(places[i].top + sizes[i].height <= sheet.height + 1e-9);
            for (std::size_t n = 0; n < i; ++n) {
                if (places[n].sheet != places[i].sheet) continue;
                const bool are_apart =
                    places[i].left + sizes[i].width + gap <= places[n].left + 1e-9 ||
                    places[n].left + sizes[n].width + gap <= places[i].left + 1e-9 ||
                    places[i].top + sizes[i].height + gap <= places[n].top + 1e-9 ||
                    places[n].top + sizes[n].height + gap <= places[i].top + 1e-9;
                CHECK(are_apart);
            }
        }
    }
}

TEST_CASE("papers lie side by side where they fit", "[model][book][strips]") {
    const auto places = packed_in_rows(std::vector<PackedSize>(6, {50.8, 230.0}), sheet, gap);
    for (std::size_t i = 0; i < places.size(); ++i) CHECK(places[i].sheet == i / 3);
    const auto low = packed_in_rows(std::vector<PackedSize>(6, {50.8, 100.0}), sheet, gap);
    for (const auto& place : low) CHECK(place.sheet == 0);
}
