#include "model/book/strip_packing.h"

#include <catch2/catch.hpp>

#include <random>

using model::packed_in_groups;
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

// Groups of one to four that follow each other.
std::vector<std::size_t> random_groups(unsigned seed, std::size_t count) {
    std::mt19937 random(seed);
    std::vector<std::size_t> groups;
    for (std::size_t group = 0; groups.size() < count; ++group)
        for (std::size_t left = 1 + random() % 4U; left > 0 && groups.size() < count; --left)
            groups.push_back(group);
    return groups;
}

std::vector<std::size_t> each_alone(std::size_t count) {
    std::vector<std::size_t> groups(count);
    for (std::size_t i = 0; i < count; ++i) groups[i] = i;
    return groups;
}

}  // namespace

TEST_CASE("papers lie within their sheets, a gap apart", "[model][book][strips]") {
    for (unsigned seed = 0; seed < 100; ++seed) {
        CAPTURE(seed);
        const auto sizes = random_sizes(seed);
        const auto groups = random_groups(seed, sizes.size());
        const auto places = packed_in_groups(sizes, groups, sheet, gap);
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
    const auto places =
        packed_in_groups(std::vector<PackedSize>(6, {50.8, 230.0}), each_alone(6), sheet, gap);
    for (std::size_t i = 0; i < places.size(); ++i) CHECK(places[i].sheet == i / 3);
    const auto low =
        packed_in_groups(std::vector<PackedSize>(6, {50.8, 100.0}), each_alone(6), sheet, gap);
    for (const auto& place : low) CHECK(place.sheet == 0);
}

TEST_CASE("the papers of a group follow each other over the sheets", "[model][book][strips]") {
    for (unsigned seed = 0; seed < 100; ++seed) {
        CAPTURE(seed);
        const auto sizes = random_sizes(seed);
        const auto groups = random_groups(seed, sizes.size());
        const auto places = packed_in_groups(sizes, groups, sheet, gap);
        for (std::size_t i = 1; i < sizes.size(); ++i) {
            if (groups[i] != groups[i - 1]) continue;
            CHECK(places[i].sheet >= places[i - 1].sheet);
            CHECK(places[i].sheet <= places[i - 1].sheet + 1);
        }
    }
}

TEST_CASE("a group that an earlier sheet still has room for lies on that sheet",
          "[model][book][strips]") {
    // Two fill most of the first sheet, the third needs one of its own, the last two are small.
    const std::vector<PackedSize> sizes{
        {180.0, 100.0}, {180.0, 100.0}, {180.0, 200.0}, {60.0, 30.0}, {60.0, 30.0}};
    const auto places = packed_in_groups(sizes, {0, 0, 1, 2, 2}, sheet, gap);
    CHECK(places[2].sheet == 1);
    CHECK(places[3].sheet == 0);
    CHECK(places[4].sheet == 0);
}
