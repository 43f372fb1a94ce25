#include "model/project/edit.h"
#include "model/project/project_json.h"
#include "model/project/shop_limits.h"

#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/full_project.h"
#include "tests/support/dice.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

using Catch::Matchers::Contains;
using engine::ErrorCode;
using engine::Length;
using namespace engine::literals;
using namespace model;

namespace {

constexpr double mm2_per_in2 = 25.4 * 25.4;

VentSizing sized(const VentDemand& demand) {
    const auto sizing = vent_sizing(demand);
    if (!sizing) FAIL(to_text(sizing.error()));
    return *sizing;
}

// A fan of 4 in behind an open hole; one opening behind a metal louvre.
VentDemand louvred() {
    return {.exhaust = RoundVent{4_in},
            .intake_free_area = 0.75,
            .count = 1,
            .height = 2_in,
            .graduation = 2_in_64};
}

VentRow two_openings() {
    return {.count = 2,
            .width = 5_in,
            .height = 2_in,
            .gap = 1_in,
            .sheet = {30_in, 20_in},
            .graduation = 2_in_64};
}

engine::Error refused(const VentDemand& demand) {
    const auto sizing = vent_sizing(demand);
    REQUIRE_FALSE(sizing.has_value());
    return sizing.error();
}

engine::Error refused(const VentRow& row) {
    const auto openings = vent_openings(row);
    REQUIRE_FALSE(openings.has_value());
    return openings.error();
}

Project with_panel(std::vector<CutOut> cut_outs = {}) {
    auto project = model_tests::full_project();
    auto& panels = project.frames.front().panels;
    project.shown = {};
    panels.front().name = "back";
    panels.front().cut_outs = std::move(cut_outs);
    return project;
}

PutVents vents(const VentRow& row) { return {.frame = "counter", .panel = "back", .row = row}; }

const Panel& back_of(const Project& project) { return project.frames.front().panels.front(); }

}  // namespace

// ---- how large ----------------------------------------------------------------------------------

TEST_CASE("an intake behind a louvre is as much larger as the louvre takes away", "[model][vent]") {
    // By hand: a circle of 4 in has pi * 2^2 = 12.566 in2; a metal louvre passes 0.75 of an
    // opening, so 12.566 / 0.75 = 16.755 in2; 16.755 / 2 = 8.378 in wide, and the next 1/32 is 8
    // 13/32 in.
    const auto sizing = sized(louvred());
    CHECK(sizing.exhaust_net_mm2 / mm2_per_in2 == Approx(12.566).epsilon(1e-4));
    CHECK(sizing.needed_net_mm2 == sizing.exhaust_net_mm2);
    CHECK(sizing.needed_gross_mm2 / mm2_per_in2 == Approx(16.755).epsilon(1e-4));
    CHECK(sizing.width == 8_in + 26_in_64);
    CHECK(sizing.reached_net_mm2 / mm2_per_in2 == Approx(8.40625 * 2 * 0.75));
}

TEST_CASE("the exhaust's cover and the ratio count", "[model][vent]") {
    // By hand: 6 x 4 in behind fine mesh passes 24 * 0.5 = 12 in2; half as much again is 18 in2;
    // two open openings 3 in high are 18 / (2 * 3) = 3 in wide, exactly.
    const VentDemand demand{.exhaust = RectangularVent{6_in, 4_in},
                            .exhaust_free_area = 0.5,
                            .ratio = 1.5,
                            .count = 2,
                            .height = 3_in,
                            .graduation = 2_in_64};
    const auto sizing = sized(demand);
    CHECK(sizing.needed_net_mm2 / mm2_per_in2 == Approx(18.0));
    CHECK(sizing.width == 3_in);
    CHECK(sizing.reached_net_mm2 == Approx(sizing.needed_net_mm2));
}

TEST_CASE("in millimetres widths are rounded up to whole millimetres", "[model][vent]") {
    // By hand: pi / 4 * 100^2 = 7853.98 mm2; 7853.98 / 40 = 196.35, so 197 mm.
    const auto sizing = sized({.exhaust = RoundVent{100_mm}, .height = 40_mm, .graduation = 1_mm});
    CHECK(sizing.width == 197_mm);
}

TEST_CASE("the openings let in what is needed, and one mark less would not", "[model][vent]") {
    const auto seed = GENERATE(range(0U, 200U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    VentDemand demand;
    demand.exhaust = RoundVent{Length::from_nm(dice.between(1'000'000, 400'000'000))};
    demand.exhaust_free_area = static_cast<double>(1 + dice.below(100)) / 100.0;
    demand.ratio = static_cast<double>(100 + dice.below(300)) / 100.0;
    demand.intake_free_area = static_cast<double>(1 + dice.below(100)) / 100.0;
    demand.count = 1 + static_cast<int>(dice.below(9));
    demand.height = Length::from_nm(dice.between(1'000'000, 100'000'000));
    demand.graduation = dice.chance(50) ? 1_mm : 2_in_64;
    const auto sizing = sized(demand);
    const double of_one_mark =
        demand.graduation.mm() * demand.height.mm() * demand.count * demand.intake_free_area;
    CHECK(sizing.width.nm() % demand.graduation.nm() == 0);
    CHECK(sizing.reached_net_mm2 > sizing.needed_net_mm2 * (1.0 - 1e-9));
    CHECK(sizing.reached_net_mm2 - of_one_mark < sizing.needed_net_mm2);
}

TEST_CASE("nothing can be sized from nonsense, and the error names it", "[model][vent]") {
    auto demand = louvred();
    SECTION("an exhaust of no size") {
        demand.exhaust = RoundVent{};
        CHECK(refused(demand).where == "exhaust");
        demand.exhaust = RectangularVent{4_in, -1_in};
        CHECK(refused(demand).where == "exhaust");
    }
    SECTION("covers that let nothing pass, or more than all") {
        for (const double part : {0.0, -0.5, 1.01, std::nan("")}) {
            demand = louvred();
            demand.intake_free_area = part;
            CHECK(refused(demand).where == "intake cover");
            demand = louvred();
            demand.exhaust_free_area = part;
            CHECK(refused(demand).where == "exhaust cover");
        }
    }
    SECTION("a ratio that is none") {
        for (const double ratio :
             {0.0, -1.0, 0.99, std::nan(""), std::numeric_limits<double>::infinity()}) {
            demand.ratio = ratio;
            CHECK(refused(demand).where == "ratio");
        }
    }
    SECTION("no openings") {
        demand.count = 0;
        CHECK_THAT(refused(demand).message, Contains("how many"));
    }
    SECTION("openings of no height") {
        demand.height = {};
        CHECK(refused(demand).where == "height");
    }
    SECTION("openings so low that they would have to be endless") {
        demand.height = Length::from_nm(1);
        CHECK_THAT(refused(demand).message, Contains("make them higher"));
    }
    SECTION("no tape") {
        demand.graduation = {};
        CHECK(refused(demand).where == "graduation");
    }
}

TEST_CASE("each cover of the catalogue lets some air pass", "[model][vent][catalogue]") {
    const auto& covers = shipped_catalogue().vent_covers;
    REQUIRE(covers.size() >= 4);
    for (const auto& cover : covers) {
        CAPTURE(cover.id);
        CHECK(cover.free_area > 0.0);
        CHECK(cover.free_area <= 1.0);
        CHECK_FALSE(cover.source.empty());
    }
    REQUIRE(find_vent_cover(shipped_catalogue(), "metal louvre") != nullptr);
    CHECK(find_vent_cover(shipped_catalogue(), "metal louvre")->free_area == 0.75);
    CHECK(find_vent_cover(shipped_catalogue(), "wood louvre")->free_area == 0.25);
}

// ---- where --------------------------------------------------------------------------------------

TEST_CASE("a row without a place lies in the middle of the sheet", "[model][vent]") {
    // By hand: 5 + 1 + 5 = 11 in of 30, so 9 1/2 in on either side; 2 of 20, so 9 in.
    const auto openings = vent_openings(two_openings());
    REQUIRE(openings);
    REQUIRE(openings->size() == 2);
    CHECK((*openings)[0].least == std::array{9_in + 32_in_64, 9_in});
    CHECK((*openings)[0].most == std::array{14_in + 32_in_64, 11_in});
    CHECK((*openings)[1].least == std::array{15_in + 32_in_64, 9_in});
}

TEST_CASE("openings one above another keep the gap between them", "[model][vent]") {
    auto row = two_openings();
    row.is_stacked = true;
    row.lower_corner = {3_in, 2_in};
    const auto openings = vent_openings(row);
    REQUIRE(openings);
    CHECK((*openings)[1].least == std::array{3_in, 5_in});
    CHECK((*openings)[1].most == std::array{8_in, 7_in});
}

TEST_CASE("openings that the panel cannot hold are refused with a mend", "[model][vent]") {
    auto row = two_openings();
    SECTION("wider than the panel") {
        row.sheet[0] = 11_in;
        CHECK_THAT(refused(row).message, Contains("larger than the panel in its width"));
    }
    SECTION("higher than the panel") {
        row.sheet[1] = 2_in;
        CHECK_THAT(refused(row).message, Contains("larger than the panel in its height"));
    }
    SECTION("over its edge") {
        row.lower_corner[0] = 20_in;
        CHECK(refused(row).where == "lower corner");
        row.lower_corner[0] = 0_in;
        CHECK(refused(row).where == "lower corner");
    }
    SECTION("without sheet between them") {
        row.gap = {};
        CHECK(refused(row).where == "gap");
    }
    SECTION("of no size") {
        row.width = {};
        CHECK(refused(row).where == "width");
    }
}

// ---- into the panel -----------------------------------------------------------------------------

TEST_CASE("openings replace those of their name and leave the others", "[model][edit][vent]") {
    const CutOut cable{.name = "cable", .least = {"1", "1"}, .most = {"2", "2"}};
    auto old = cable;
    old.name = "intake 3";
    auto other = cable;
    other.name = "intake grille";
    const auto after = apply(with_panel({old, cable, other}), vents(two_openings()));
    if (!after) FAIL(to_text(after.error()));
    std::vector<std::string> names;
    for (const auto& cut_out : back_of(*after).cut_outs) names.push_back(cut_out.name);
    CHECK(names == std::vector<std::string>{"cable", "intake grille", "intake 1", "intake 2"});
    CHECK(back_of(*after).cut_outs.back().is_vent);
    CHECK(back_of(*after).cut_outs.back().least[0] == "15 1/2");
    CHECK(label_of(vents({})) == "Put intake openings into panel back");
}

TEST_CASE("openings for a panel that is not there are refused", "[model][edit][vent]") {
    auto edit = vents(two_openings());
    edit.panel = "front";
    const auto after = apply(with_panel(), edit);
    REQUIRE_FALSE(after.has_value());
    CHECK(after.error().code == ErrorCode::unknown_name);
    CHECK(after.error().message == "there is no panel \"front\"");
}

TEST_CASE("openings that do not fit leave the panel as it was", "[model][edit][vent]") {
    auto row = two_openings();
    row.sheet[1] = 1_in;
    const auto after = apply(with_panel(), vents(row));
    REQUIRE_FALSE(after.has_value());
    CHECK(after.error().where == "frame counter, panel back, height");
    CHECK_THAT(after.error().message, Contains("make them smaller"));
}

TEST_CASE("openings of any size come back from the file as they were", "[model][edit][vent]") {
    const auto seed = GENERATE(range(0U, 100U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    auto project = with_panel();
    project.shown.form = static_cast<engine::TapeForm>(dice.below(6));
    VentRow row;
    row.count = 1 + static_cast<int>(dice.below(5));
    row.width = Length::from_nm(dice.between(1, 200'000'000));
    row.height = Length::from_nm(dice.between(1, 200'000'000));
    row.gap = Length::from_nm(dice.between(least_sheet_land.nm(), 50'000'000));
    row.is_stacked = dice.chance(50);
    row.sheet = {2000_mm, 2000_mm};
    const auto after = apply(project, vents(row));
    if (!after) FAIL(to_text(after.error()));
    const auto read = read_project_json(to_json_text(*after));
    if (!read) FAIL(to_text(read.error()));
    CHECK(*read == *after);
    const auto openings = vent_openings(row);
    REQUIRE(openings);
    for (std::size_t i = 0; i < openings->size(); ++i) {
        const auto& cut_out = back_of(*read).cut_outs[i];
        for (std::size_t k = 0; k < 2; ++k) {
            const auto bare = engine::bare_unit(project.shown);
            CHECK(*engine::read_length(cut_out.least[k], bare) == (*openings)[i].least[k]);
            CHECK(*engine::read_length(cut_out.most[k], bare) == (*openings)[i].most[k]);
        }
    }
}
