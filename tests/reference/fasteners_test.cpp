#include "engine/measure/tape.h"
#include "model/catalogue/catalogue.h"
#include "model/catalogue/drilling_speed.h"
#include "model/catalogue/rivet_code.h"
#include "model/catalogue/threads.h"

#include "tests/reference/reference_table.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace engine::literals;
using engine::Length;

namespace {

const model::Catalogue& catalogue() {
    static const auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(to_text(loaded.error()));
    return *loaded;
}

Length inches(double value) {
    return Length::from_nm(std::llround(value * static_cast<double>(Length::nm_per_inch)));
}

Length read(const std::string& text) {
    const auto length = engine::read_length(text, engine::LengthUnit::inch);
    if (!length) FAIL(text << " is no length");
    return *length;
}

Length pitch_of(const ReferenceRow& row) { return inches(1.0 / row.number("threads_per_inch")); }

const model::MachineScrew& screw_of(const ReferenceRow& row) {
    const auto* screw = model::find_screw(catalogue(), row.text("thread_or_major"));
    if (screw == nullptr) FAIL(row.name() << ": no such screw");
    return *screw;
}

double drill_mm(const std::string& name) {
    const auto* drill = model::find_drill(catalogue(), name);
    if (drill == nullptr) FAIL("no drill " << name);
    return drill->diameter.mm();
}

double computed(const ReferenceRow& row) {
    const auto check = row.text("check");
    if (check == "numbered screw diameter") {
        const auto number = static_cast<int>(row.number("thread_or_major"));
        return model::numbered_screw_diameter(number).inches();
    }
    if (check == "tap hole") {
        return model::tap_hole(inches(row.number("thread_or_major")), pitch_of(row),
                               row.number("percent"))
            .inches();
    }
    if (check == "percent of thread") {
        return model::percent_of_thread(inches(row.number("thread_or_major")), pitch_of(row),
                                        inches(row.number("hole")));
    }
    const auto& screw = screw_of(row);
    const double area = model::stress_area_mm2(screw.system, screw.diameter, screw.pitch);
    if (check == "stress area mm2") return area;
    if (check == "stress area in2") return area / (25.4 * 25.4);
    if (check == "tap drill mm") return drill_mm(screw.tap_drill);
    if (check == "close hole mm") return drill_mm(screw.clearance_drill);
    if (check == "medium hole mm") return drill_mm(screw.free_drill);
    if (check == "free hole mm") return drill_mm(screw.loose_drill);
    FAIL(row.name() << ": no check is called " << check);
    return 0.0;
}

// Stress areas are compared in per cent, all else as printed.
double allowed(const ReferenceRow& row) {
    const double tolerance = row.number("tolerance");
    const bool percent = row.text("check").rfind("stress area", 0) == 0;
    return percent ? tolerance / 100.0 * row.number("expected") : tolerance;
}

}  // namespace

TEST_CASE("threads and tap holes are those of the charts", "[reference][threads]") {
    for (const auto& row : reference_rows("threads.csv")) {
        const double value = computed(row);
        INFO(row.name() << ": " << row.text("check") << " " << row.text("thread_or_major") << " is "
                        << row.text("expected") << ", here " << value);
        CHECK(std::abs(value - row.number("expected")) <= allowed(row) + 1e-9);
    }
}

TEST_CASE("the catalogue's stress areas are those of the formula", "[reference][threads]") {
    for (const auto& screw : catalogue().screws) {
        CAPTURE(screw.id);
        const double area = model::stress_area_mm2(screw.system, screw.diameter, screw.pitch);
        CHECK(screw.stress_area_mm2 == Approx(area).epsilon(0.005));
    }
}

// ASME B1.1, class 2B: least minor diameter of 8-32 is 0.1300 in (UNC internal thread sheet, read).
TEST_CASE("an 8-32 tap needs more than a 1/8 in or a #30 hole", "[reference][threads]") {
    const auto* screw = model::find_screw(catalogue(), "machine screw 8-32");
    REQUIRE(screw != nullptr);
    const auto judged = [&](const char* drill) {
        return model::judge_tap_hole(*screw, model::find_drill(catalogue(), drill)->diameter);
    };
    CHECK(judged("1/8") == model::TapHole::too_small);
    CHECK(judged("#30") == model::TapHole::too_small);
    CHECK(judged("#29") == model::TapHole::right);
    CHECK(judged("9/64") == model::TapHole::too_large);
}

// A thread engagement page (read): stress area 0.1, major diameter 0.5, pitch 0.1 give 0.2927.
TEST_CASE("engagement for equal metals follows the published example", "[reference][threads]") {
    CHECK(model::engagement_for_equal_metals_mm(0.1, 0.5, 0.1) == Approx(0.2927).margin(0.00005));
}

// FED-STD-H28/2B: 8-32 in a 1/8 in wall; the formula read, its value evaluated apart: 0.04179 in2.
TEST_CASE("an 8-32 thread strips on the area of the standard's formula", "[reference][threads]") {
    const double area = model::internal_strip_area_mm2({.pitch = 1.0 / 32,
                                                        .engagement = 0.125,
                                                        .external_major_least = 0.1571,
                                                        .internal_pitch_diameter_most = 0.1475});
    CHECK(area == Approx(0.04179).margin(0.000005));
}

TEST_CASE("grips are chosen as the published tables do", "[reference][rivets]") {
    for (const auto& row : reference_rows("rivet_grips.csv")) {
        INFO(row.name() << ": " << row.text("rivet") << ", " << row.text("stack"));
        const auto* rivet = model::find_rivet(catalogue(), row.text("rivet"));
        REQUIRE(rivet != nullptr);
        const auto* grip = model::grip_for(*rivet, read(row.text("stack")));
        REQUIRE(grip != nullptr);
        CHECK(grip->code == row.text("code"));
    }
}

// US Army TM 10-5410-221-14/1, Table 4-3 (read): constant through each series.
TEST_CASE("a rivet's body is its greatest grip and a constant of the series long",
          "[reference][rivets]") {
    const auto [id, extra] = GENERATE(table<std::string, double>({{"blind rivet 3/32", 0.087},
                                                                  {"blind rivet 1/8", 0.107},
                                                                  {"blind rivet 5/32", 0.129},
                                                                  {"blind rivet 1/4", 0.197}}));
    const auto* rivet = model::find_rivet(catalogue(), id);
    REQUIRE(rivet != nullptr);
    for (const auto& grip : rivet->grips) {
        CAPTURE(id, grip.code);
        CHECK((grip.body_length - grip.most).inches() == Approx(extra).margin(0.0011));
    }
}

// An article on rivet sizes (read): the first number is 1/32 in, the second 1/16 in.
TEST_CASE("a rivet's code says its diameter and its greatest grip", "[reference][rivets]") {
    CHECK(model::read_rivet_code("4-4") == model::RivetCode{8_in_64, 16_in_64});
    for (const auto& rivet : catalogue().rivets) {
        if (rivet.system == model::MeasureSystem::metric) continue;
        for (const auto& grip : rivet.grips) {
            CAPTURE(grip.code);
            CHECK(model::read_rivet_code(grip.code) == model::RivetCode{rivet.diameter, grip.most});
        }
    }
}

// US Army TM 10-5410-221-14/1, Table 4-3, and for 3/16 an article on rivet drills (read).
TEST_CASE("the drills of blind rivets are those of the trade", "[reference][rivets]") {
    const auto [id, drill] = GENERATE(table<std::string, std::string>({{"blind rivet 3/32", "#41"},
                                                                       {"blind rivet 1/8", "#30"},
                                                                       {"blind rivet 5/32", "#20"},
                                                                       {"blind rivet 3/16", "#11"},
                                                                       {"blind rivet 1/4", "F"}}));
    CAPTURE(id);
    CHECK(model::find_rivet(catalogue(), id)->drill == drill);
}

// US Army TM 10-5410-229-13&P, NAVEDTRA 14018 and an aviation layout page (read).
TEST_CASE("the layout of 1/8 in rivets is that of the manuals", "[reference][rivets]") {
    const auto times_diameter = [](std::optional<double> rule) { return rule.value() * 0.125; };
    const auto* edge = model::find_layout_rule(catalogue(), "edge distance");
    const auto* pitch = model::find_layout_rule(catalogue(), "pitch");
    const auto* row = model::find_layout_rule(catalogue(), "row spacing");
    REQUIRE(edge != nullptr);
    REQUIRE(pitch != nullptr);
    REQUIRE(row != nullptr);
    CHECK(times_diameter(edge->least) == Approx(0.250));
    CHECK(times_diameter(edge->usual_least) == Approx(0.3125));
    CHECK(times_diameter(pitch->least) == Approx(0.375));
    CHECK(times_diameter(pitch->usual_least) == Approx(0.50));
    CHECK(times_diameter(pitch->usual_most) == Approx(0.75));
    CHECK(times_diameter(pitch->most) == Approx(1.00));
    CHECK(times_diameter(row->least) == Approx(0.3125));
    // A builders' forum (read) prints 0.188 for a 3/32 in rivet.
    CHECK(edge->least.value() * 0.09375 == Approx(0.188).margin(0.0006));
    // NAVEDTRA 14018 (read): a solid rivet is 1.5 diameters longer than its grip.
    const auto* solid = model::find_layout_rule(catalogue(), "solid rivet beyond the stack");
    REQUIRE(solid != nullptr);
    CHECK(0.25 + times_diameter(solid->usual_least) == Approx(0.4375));
}

TEST_CASE("drills turn as the charts say", "[reference][drilling]") {
    for (const auto& row : reference_rows("drilling_speeds.csv")) {
        const double speed = model::metres_from_feet(row.number("feet_per_minute"));
        const double rpm = model::drill_rpm(speed, read(row.text("drill")), 1e6);
        INFO(row.name() << ": " << row.text("rpm") << ", here " << rpm);
        CHECK(std::abs(rpm - row.number("rpm")) <= row.number("tolerance_rpm"));
    }
}

TEST_CASE("drills measure what the charts say", "[reference][drilling]") {
    for (const auto& row : reference_rows("drill_sizes.csv")) {
        const auto* drill = model::find_drill(catalogue(), row.text("drill"));
        INFO(row.name() << ": drill " << row.text("drill"));
        REQUIRE(drill != nullptr);
        CHECK(drill->diameter.inches() ==
              Approx(row.number("inches")).margin(row.number("tolerance_in")));
    }
}
