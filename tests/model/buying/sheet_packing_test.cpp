#include "model/buying/sheet_packing.h"

#include "tests/support/dice.h"
#include "tests/support/seeds.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <utility>

using engine::Nm;
using namespace model;

namespace {

using Size = std::array<Nm, 2>;
constexpr int any = std::numeric_limits<int>::max();
constexpr Nm cm = 10'000'000;

struct Laid {
    Size lo{};
    Size hi{};
};

Laid laid(const PackingTask& task, const PackedPart& part) {
    Size size = task.parts[part.part];
    if (part.is_turned) std::swap(size[0], size[1]);
    return {part.at, {part.at[0] + size[0], part.at[1] + size[1]}};
}

bool is_apart(const Laid& a, const Laid& b, Nm kerf) {
    for (std::size_t k = 0; k < 2; ++k) {
        if (a.lo[k] - b.hi[k] >= kerf || b.lo[k] - a.hi[k] >= kerf) return true;
    }
    return false;
}

// Whether cuts from edge to edge part them all.
bool can_be_cut(const std::vector<Laid>& parts, Nm kerf) {
    if (parts.size() < 2) return true;
    for (std::size_t k = 0; k < 2; ++k) {
        for (const auto& edge : parts) {
            std::vector<Laid> before;
            std::vector<Laid> behind;
            for (const auto& it : parts) {
                if (it.hi[k] <= edge.hi[k]) before.push_back(it);
                if (it.lo[k] >= edge.hi[k] + kerf) behind.push_back(it);
            }
            if (behind.empty() || before.size() + behind.size() != parts.size()) continue;
            return can_be_cut(before, kerf) && can_be_cut(behind, kerf);
        }
    }
    return false;
}

void check_packing(const PackingTask& task, const Packing& packing) {
    std::vector<int> seen(task.parts.size());
    std::vector<int> used(task.sheets.size());
    for (const auto& sheet : packing.sheets) {
        ++used[sheet.offer];
        CHECK_FALSE(sheet.parts.empty());
        std::vector<Laid> parts;
        for (const auto& part : sheet.parts) {
            ++seen[part.part];
            const auto it = laid(task, part);
            if (part.is_turned) CHECK(task.sheets[sheet.offer].may_turn);
            for (std::size_t k = 0; k < 2; ++k) {
                CHECK(it.lo[k] >= 0);
                CHECK(it.hi[k] <= task.sheets[sheet.offer].size[k]);
            }
            for (const auto& other : parts) CHECK(is_apart(it, other, task.kerf));
            parts.push_back(it);
        }
        CHECK(can_be_cut(parts, task.kerf));
    }
    for (const auto part : packing.too_large) {
        ++seen[part];
        const auto size = task.parts[part];
        for (const auto& sheet : task.sheets) {
            CHECK_FALSE((size[0] <= sheet.size[0] && size[1] <= sheet.size[1]));
            if (sheet.may_turn) CHECK_FALSE((size[1] <= sheet.size[0] && size[0] <= sheet.size[1]));
        }
    }
    for (const auto part : packing.left_out) ++seen[part];
    CHECK(std::ranges::all_of(seen, [](int times) { return times == 1; }));
    for (std::size_t i = 0; i < used.size(); ++i) CHECK(used[i] <= task.sheets[i].left);
}

PackingTask random_task(std::uint32_t seed) {
    tests::Dice dice{seed};
    PackingTask task;
    task.kerf = dice.between(0, cm / 2);
    const auto kinds = 1 + dice.below(3);
    for (std::uint32_t i = 0; i < kinds; ++i) {
        SheetOffer sheet;
        sheet.size = {dice.between(40, 130) * cm, 0};
        sheet.size[1] = dice.between(40, 250) * cm;
        if (dice.chance(60)) sheet.price = dice.between(1, 9'000);
        sheet.left = dice.chance(50) ? any : static_cast<int>(dice.below(4));
        sheet.may_turn = dice.chance(70);
        task.sheets.push_back(sheet);
    }
    const auto parts = dice.below(40);
    for (std::uint32_t i = 0; i < parts; ++i) {
        const auto width = dice.between(1, 140 * cm);
        const auto length = dice.chance(20) ? width : dice.between(1, 140 * cm);
        task.parts.push_back({width, length});
    }
    return task;
}

}  // namespace

TEST_CASE("parts of random sizes lie apart by the kerf, on their sheets, once each, and can be cut",
          "[model][buying][sheet]") {
    const auto cases = tests::seed_count(400);
    for (std::uint32_t seed = 0; seed < cases; ++seed) {
        CAPTURE(seed);
        const auto task = random_task(seed);
        check_packing(task, packing_of(task));
    }
}

TEST_CASE("parts that just fill a sheet with the kerfs between them lie on one",
          "[model][buying][sheet]") {
    // Two of 40 and 1 between: 81 across; three of 20 and 2 between: 62 along.
    PackingTask task{.parts = std::vector<Size>(6, {40 * cm, 20 * cm}),
                     .sheets = {{.size = {81 * cm, 62 * cm}, .left = any}},
                     .kerf = cm};
    CHECK(packing_of(task).sheets.size() == 1);
    task.sheets[0].size = {81 * cm - 1, 62 * cm};
    CHECK(packing_of(task).sheets.size() == 2);
}

TEST_CASE("a part is turned where that alone lets it fit, but not across the grain",
          "[model][buying][sheet]") {
    PackingTask task{.parts = {{100 * cm, 20 * cm}},
                     .sheets = {{.size = {50 * cm, 120 * cm}, .left = any}}};
    REQUIRE(packing_of(task).sheets.size() == 1);
    CHECK(packing_of(task).sheets[0].parts[0].is_turned);
    task.sheets[0].may_turn = false;
    CHECK(packing_of(task).sheets.empty());
    CHECK(packing_of(task).too_large == std::vector<std::size_t>{0});
}

TEST_CASE("the cheaper size is bought where both hold the parts", "[model][buying][sheet]") {
    const SheetOffer small{.size = {60 * cm, 60 * cm}, .price = 3'000, .left = any};
    const SheetOffer large{.size = {120 * cm, 240 * cm}, .price = 9'000, .left = any};
    PackingTask task{.parts = {{50 * cm, 50 * cm}}, .sheets = {large, small}, .kerf = cm};
    REQUIRE(packing_of(task).sheets.size() == 1);
    CHECK(packing_of(task).sheets[0].offer == 1);
    // Eight of 50 x 50 lie on the large one for 90; on small ones they cost 240.
    task.parts.assign(8, {50 * cm, 50 * cm});
    REQUIRE(packing_of(task).sheets.size() == 1);
    CHECK(packing_of(task).sheets[0].offer == 0);
}

TEST_CASE("parts for which the sheets run out are told", "[model][buying][sheet]") {
    const PackingTask task{.parts = std::vector<Size>(3, {50 * cm, 50 * cm}),
                           .sheets = {{.size = {60 * cm, 60 * cm}, .left = 2}}};
    CHECK(packing_of(task).sheets.size() == 2);
    CHECK(packing_of(task).left_out.size() == 1);
}
