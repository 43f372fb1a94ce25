#include "model/catalogue/threads.h"

#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

using namespace engine::literals;

TEST_CASE("the hole for a percentage leaves that percentage", "[model][catalogue][threads]") {
    const auto major = 16_in_64;
    const auto pitch = engine::Length::from_nm(1'270'000);
    const auto percent = GENERATE(50.0, 65.0, 75.0, 100.0);
    CHECK(model::percent_of_thread(major, pitch, model::tap_hole(major, pitch, percent)) ==
          Approx(percent).epsilon(1e-6));
}

TEST_CASE("every screw's tap drill lies within its thread's limits",
          "[model][catalogue][threads]") {
    for (const auto& screw : shipped_catalogue().screws) {
        CAPTURE(screw.id, screw.tap_drill);
        const auto hole = model::find_drill(shipped_catalogue(), screw.tap_drill)->diameter;
        // A drill cuts up to 0.003 in over its size; 4-48 with #42 needs that.
        const auto oversize = engine::Length::from_nm(76'200);
        CHECK(model::judge_tap_hole(screw, hole + oversize) != model::TapHole::too_small);
        CHECK(model::judge_tap_hole(screw, hole) != model::TapHole::too_large);
        const double percent = model::percent_of_thread(screw.diameter, screw.pitch, hole);
        CHECK(percent >= model::usual_thread_least);
        CHECK(percent <= 80.0);
    }
}

TEST_CASE("the limits of a tap hole belong to the right holes", "[model][catalogue][threads]") {
    const auto* screw = model::find_screw(shipped_catalogue(), "machine screw 8-32");
    REQUIRE(screw != nullptr);
    const auto one = engine::Length::from_nm(1);
    CHECK(model::judge_tap_hole(*screw, screw->minor_least) == model::TapHole::right);
    CHECK(model::judge_tap_hole(*screw, screw->minor_least - one) == model::TapHole::too_small);
    CHECK(model::judge_tap_hole(*screw, screw->minor_most) == model::TapHole::right);
    CHECK(model::judge_tap_hole(*screw, screw->minor_most + one) == model::TapHole::too_large);
}

TEST_CASE("an eighth of an inch holds four threads of 8-32 and too few of 1/4-20",
          "[model][catalogue][threads]") {
    const auto threads = [](const char* id) {
        const auto* screw = model::find_screw(shipped_catalogue(), id);
        return model::threads_in_wall(8_in_64, screw->pitch);
    };
    CHECK(threads("machine screw 8-32") == Approx(4.0));
    CHECK(threads("machine screw 10-24") >= model::threads_least - 1e-6);
    CHECK(threads("machine screw 1/4-20") < model::threads_least);
}

TEST_CASE("a numbered screw has its diameter in the catalogue", "[model][catalogue][threads]") {
    for (const auto& [id, number] :
         {std::pair{"machine screw 4-40", 4}, std::pair{"machine screw 6-32", 6},
          std::pair{"machine screw 8-32", 8}, std::pair{"machine screw 10-24", 10}}) {
        CAPTURE(id);
        CHECK(model::find_screw(shipped_catalogue(), id)->diameter ==
              model::numbered_screw_diameter(number));
    }
}
