#include "model/assembly/assembly_order.h"
#include "model/schedule/sheet_pins.h"
#include "model/schedule/tables.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace engine::literals;

namespace {

const model::FastenerRow& row_of(const std::vector<model::FastenerRow>& rows,
                                 const std::string& fastener) {
    for (const auto& row : rows) {
        if (row.fastener == fastener) return row;
    }
    FAIL("no row for " + fastener);
    return rows.front();
}

std::vector<model::FastenerRow> rows_of(const tests::SmallJob& job) {
    return model::fastener_rows(job.project, job.catalogue, job.resolved);
}

}  // namespace

TEST_CASE("rivets are counted by size and grip, with spares rounded up",
          "[model][schedule][fasteners]") {
    const auto rows = rows_of(tests::small_job());
    const auto& rivets = row_of(rows, "blind rivet 1/8, grip 4-4");
    CHECK(rivets.needed == 4);
    CHECK(rivets.spares == 1);
    CHECK(rivets.joints == 2);
    CHECK(rivets.stack == 16_in_64);
    CHECK(rivets.diameter == "1/8 in");
    CHECK(rivets.grip_or_length == "3/16 in to 1/4 in");
}

TEST_CASE("ten per cent of fifty is five spares, not six", "[model][schedule][fasteners]") {
    auto job = tests::small_job();
    job.resolved.fasteners.resize(1);
    job.resolved.fasteners.resize(50, job.resolved.fasteners[0]);
    CHECK(row_of(rows_of(job), "blind rivet 1/8, grip 4-4").spares == 5);
}

TEST_CASE("a spare percentage that makes no sense gives no spares",
          "[model][schedule][fasteners]") {
    auto job = tests::small_job();
    for (const double percent : {-5.0, 0.0, std::numeric_limits<double>::quiet_NaN()}) {
        job.project.shop.spare_percent = percent;
        CHECK(row_of(rows_of(job), "blind rivet 1/8, grip 4-4").spares == 0);
    }
}

TEST_CASE("screws are counted together, tapped or not, and one that goes through needs a nut",
          "[model][schedule][fasteners]") {
    const auto rows = rows_of(tests::small_job());
    const auto& nuts = row_of(rows, "nut for machine screw 8-32");
    CHECK(nuts.needed == 1);
    CHECK(row_of(rows, "machine screw 8-32 x 1/2 in").needed == 2);
    CHECK(nuts.diameter == "0.164 in");
}

TEST_CASE("a row of several stacks shows none", "[model][schedule][fasteners]") {
    auto job = tests::small_job();
    job.resolved.fasteners[0].grip = (14_in_64).nm();
    CHECK(row_of(rows_of(job), "blind rivet 1/8, grip 4-4").stack == engine::Length{});
}

TEST_CASE("pins are enough for the frame that needs most, and are not spent",
          "[model][schedule][fasteners]") {
    auto job = tests::small_job();
    const auto pins = row_of(rows_of(job), "sheet pin 1/8");
    CHECK(pins.needed == 4);
    CHECK(pins.spares == 0);
    CHECK(pins.joints == 2);

    job.resolved.joints[1].frame = 1;  // dry-fitted apart: two pins at a time are enough
    CHECK(row_of(rows_of(job), "sheet pin 1/8").needed == 2);
}

TEST_CASE("pins are enough for the step of the assembly that holds most at once",
          "[model][schedule][fasteners]") {
    const auto job = tests::small_job();
    const auto needed = [&](const model::AssemblyOrder& order) {
        return row_of(model::fastener_rows(job.project, job.catalogue, job.resolved, &order),
                      "sheet pin 1/8")
            .needed;
    };
    // Two pins hold each joint. One is riveted before the other is pinned.
    model::AssemblyOrder order;
    order.steps = {{.pins = {{.joint = 0}}, .sets = {{.joint = 0}}},
                   {.pins = {{.joint = 1}}, .sets = {{.joint = 1}}}};
    CHECK(needed(order) == 2);
    // Both are pinned before one of them is riveted.
    order.steps = {{.pins = {{.joint = 0}}},
                   {.pins = {{.joint = 1}}, .sets = {{.joint = 0}, {.joint = 1}}}};
    CHECK(needed(order) == 4);
    // Where no step says so, none comes out before another goes in.
    CHECK(needed({}) == 4);
}

TEST_CASE("where no pin holds the stack, longer ones are asked for by what they must hold",
          "[model][schedule][fasteners]") {
    auto job = tests::small_job();
    for (const std::size_t fastener : {2U, 3U})
        job.resolved.fasteners[fastener].grip = (20_in_64).nm();
    const auto rows = rows_of(job);
    CHECK(row_of(rows, "sheet pin 1/8").needed == 2);
    CHECK(row_of(rows, "sheet pin 1/8, long").needed == 2);
    CHECK(row_of(rows, "sheet pin 1/8, long").grip_or_length == "at least 5/16 in");
}

TEST_CASE("every third hole of a joint is pinned, at least two, never more than there are",
          "[model][schedule][fasteners]") {
    CHECK(model::pins_in_joint(0) == 0);
    CHECK(model::pins_in_joint(1) == 1);
    CHECK(model::pins_in_joint(2) == 2);
    CHECK(model::pins_in_joint(6) == 2);
    CHECK(model::pins_in_joint(7) == 3);
    CHECK(model::pins_in_joint(12) == 4);
}

TEST_CASE("a pin is chosen by the hole, then by the stack it has to hold",
          "[model][schedule][fasteners]") {
    auto job = tests::small_job();
    auto long_pin = job.catalogue.pins[1];
    long_pin.id = "sheet pin 1/8 long";
    long_pin.grip_most = 32_in_64;
    job.catalogue.pins.insert(job.catalogue.pins.begin(), long_pin);
    const auto& rivet = job.catalogue.rivets[0];
    CHECK(model::pin_for(job.catalogue, rivet, 16_in_64)->id == "sheet pin 1/8");
    CHECK(model::pin_for(job.catalogue, rivet, 20_in_64)->id == "sheet pin 1/8 long");
    CHECK(model::pin_for(job.catalogue, rivet, 64_in_64)->id == "sheet pin 1/8 long");
}
