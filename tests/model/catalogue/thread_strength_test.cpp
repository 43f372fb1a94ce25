#include "model/catalogue/thread_strength.h"

#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

using namespace engine::literals;

namespace {

constexpr double mm_per_inch = 25.4;
constexpr double newtons_per_pound = 4.4482216;

const model::MachineScrew& screw(const char* id) {
    const auto* found = model::find_screw(shipped_catalogue(), id);
    REQUIRE(found != nullptr);
    return *found;
}

}  // namespace

// Limits of 8-32 as a public paraphrase of FED-STD-H28/2B uses them: major diameter of the screw at
// least 0.1571 in, pitch diameter of the hole at most 0.1475 in. The standard rounds each part of a
// limit to 0.0001 in, we do not.
TEST_CASE("the worst limits of 8-32 are the published ones", "[model][catalogue][threads]") {
    const auto meeting = model::worst_meeting(screw("machine screw 8-32"), 8_in_64);
    CHECK(meeting.external_major_least / mm_per_inch == Approx(0.1571).margin(0.0001));
    CHECK(meeting.internal_pitch_diameter_most / mm_per_inch == Approx(0.1475).margin(0.0001));
}

// ISO 965-2: M4 of class 6g has a major diameter of at least 3.838 mm, of class 6H a pitch diameter
// of at most 3.663 mm; from memory.
TEST_CASE("the worst limits of M4 are the published ones", "[model][catalogue][threads]") {
    const auto meeting = model::worst_meeting(screw("machine screw M4"), 3_mm);
    CHECK(meeting.external_major_least == Approx(3.838).margin(0.002));
    CHECK(meeting.internal_pitch_diameter_most == Approx(3.663).margin(0.001));
}

// FED-STD-H28/2B, formula read: 0.04179 in2 for 8-32 in a 1/8 in wall.
TEST_CASE("8-32 in a 1/8 in wall strips on 0.0418 square inches", "[model][catalogue][threads]") {
    const auto meeting = model::worst_meeting(screw("machine screw 8-32"), 8_in_64);
    CHECK(model::internal_strip_area_mm2(meeting) / (mm_per_inch * mm_per_inch) ==
          Approx(0.04179).epsilon(0.005));
}

// Aluminum Design Manual, J.5, from memory: 861 lbf for 8-32 in 1/8 in of 35 000 psi yield.
TEST_CASE("the pull-out of 8-32 from 1/8 in is that of the design manual",
          "[model][catalogue][threads]") {
    const auto force = model::pull_out_n({.diameter_in = 0.164,
                                          .engagement_in = 0.125,
                                          .strip_area_in2_per_in = 0.3343,
                                          .yield_mpa = 35.0 * 6.8947573,
                                          .ultimate_mpa = 38.0 * 6.8947573});
    REQUIRE(force);
    CHECK(*force / newtons_per_pound == Approx(861).margin(0.5));
}

TEST_CASE("the pieces of the pull-out formula meet and end where they say",
          "[model][catalogue][threads]") {
    const auto at = [](double engagement) {
        return model::pull_out_n({.diameter_in = 0.164,
                                  .engagement_in = engagement,
                                  .strip_area_in2_per_in = 0.3343,
                                  .yield_mpa = 241.3,
                                  .ultimate_mpa = 262.0});
    };
    CHECK(*at(0.125) == Approx(*at(0.1250001)).epsilon(0.001));
    CHECK(*at(0.25) == Approx(*at(0.2500001)).epsilon(0.001));
    CHECK_FALSE(at(0.059));
    CHECK_FALSE(at(0.376));
}

TEST_CASE("more wall holds more, until the screw is what breaks", "[model][catalogue][threads]") {
    const auto* alloy = model::find_alloy(shipped_catalogue(), "6063-T52");
    REQUIRE(alloy != nullptr);
    const auto& eight = screw("machine screw 8-32");
    const double eighth = model::strip_force_n(eight, 8_in_64, *alloy);
    CHECK(eighth < model::screw_force_n(eight));
    CHECK(model::strip_force_n(eight, 16_in_64, *alloy) > eighth);
    const auto* strong = model::find_alloy(shipped_catalogue(), "6061-T6");
    REQUIRE(strong != nullptr);
    CHECK(model::strip_force_n(eight, 20_in_64, *strong) > model::screw_force_n(eight));
}

// 60 000 psi on the stress area of 0.0140 in2 (UNC internal thread sheet, read).
TEST_CASE("an 8-32 screw breaks at 840 pounds", "[model][catalogue][threads]") {
    CHECK(model::screw_force_n(screw("machine screw 8-32")) / newtons_per_pound ==
          Approx(840).epsilon(0.001));
}

TEST_CASE("the screw by the rule has a tap hole no larger than its plate is thick",
          "[model][catalogue][threads]") {
    const auto id = [](model::MeasureSystem system, engine::Length plate) {
        return model::screw_for(shipped_catalogue(), system, plate)->id;
    };
    using enum model::MeasureSystem;
    CHECK(id(inch, 8_in_64) == "machine screw 6-32");
    CHECK(id(inch, 12_in_64) == "machine screw 10-24");
    CHECK(id(inch, 16_in_64) == "machine screw 1/4-20");
    CHECK(id(metric, 3_mm) == "machine screw M3");
    CHECK(id(metric, 5_mm) == "machine screw M6");
    // Nothing finds its threads in 1/16 in: the finest there is.
    CHECK(id(inch, 4_in_64) == "machine screw 4-48");
}

TEST_CASE("a finer thread is one of the same diameter", "[model][catalogue][threads]") {
    const auto& catalogue = shipped_catalogue();
    REQUIRE(model::finer_thread(catalogue, screw("machine screw 10-24")) != nullptr);
    CHECK(model::finer_thread(catalogue, screw("machine screw 10-24"))->id ==
          "machine screw 10-32");
    CHECK(model::finer_thread(catalogue, screw("machine screw 10-32")) == nullptr);
}

TEST_CASE("a rivet nut goes through its hole and is held by its rim",
          "[model][catalogue][rivet_nut]") {
    for (const auto& nut : shipped_catalogue().rivet_nuts) {
        CAPTURE(nut.id);
        const auto* takes = model::find_screw(shipped_catalogue(), nut.screw);
        const auto* drill = model::find_drill(shipped_catalogue(), nut.drill);
        REQUIRE(takes != nullptr);
        REQUIRE(drill != nullptr);
        CHECK(drill->diameter > takes->diameter);
        CHECK(nut.rim_diameter > drill->diameter);
        CHECK(nut.body_length > nut.grip_most);
        CHECK(model::rivet_nut_for(shipped_catalogue(), *takes, nut.grip_most) != nullptr);
        CHECK_FALSE(nut.source.empty());
    }
}

TEST_CASE("the rivet nut is the one whose grip holds the wall", "[model][catalogue][rivet_nut]") {
    const auto* nut =
        model::rivet_nut_for(shipped_catalogue(), screw("machine screw 8-32"), 8_in_64);
    REQUIRE(nut != nullptr);
    CHECK(nut->id == "rivet nut 8-32, grip 0.120 to 0.160 in");
    CHECK(model::rivet_nut_for(shipped_catalogue(), screw("machine screw 8-32"), 32_in_64) ==
          nullptr);
}
