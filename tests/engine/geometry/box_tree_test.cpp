#include "engine/geometry/box_tree.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>
#include <vector>

using engine::Box;

namespace {

Box random_box(std::mt19937& rng) {
    Box box;
    for (std::size_t k = 0; k < 3; ++k) {
        box.lo[k] = static_cast<engine::Nm>(rng() % 1000);
        box.hi[k] = box.lo[k] + static_cast<engine::Nm>(rng() % 120);
    }
    return box;
}

}  // namespace

TEST_CASE("a tree finds just the boxes that touch", "[engine][box_tree][property]") {
    const auto seed = GENERATE(range(0U, 30U));
    CAPTURE(seed);
    std::mt19937 rng(seed);
    std::vector<Box> boxes(seed * 7);
    for (auto& box : boxes) box = random_box(rng);
    const engine::BoxTree tree(boxes);
    for (int i = 0; i < 20; ++i) {
        const Box probe = random_box(rng);
        std::vector<std::uint32_t> expected;
        for (std::uint32_t k = 0; k < boxes.size(); ++k) {
            if (engine::touches(boxes[k], probe)) expected.push_back(k);
        }
        std::vector<std::uint32_t> found;
        tree.for_each_touching(probe, [&](std::uint32_t k) { found.push_back(k); });
        std::sort(found.begin(), found.end());
        CHECK(found == expected);
    }
}
