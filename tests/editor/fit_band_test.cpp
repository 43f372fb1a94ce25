#include "editor/band_worker.h"
#include "editor/dimension_values.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <chrono>

using tests::HeadlessUi;

namespace {

model::Edit wall_at(const std::string& x) {
    return model::PutObstacle{
        {.name = "wall right",
         .shape = model::BoxObstacle{{x, "-100", "-10"}, {"90", "100", "100"}}},
        {}};
}

void state(HeadlessUi& ui, model::Edit edit) {
    REQUIRE(editor::submit(ui.desk, editor::change_of(std::move(edit))));
    ui.settle();
}

// A box 24 in wide with a wall 36 in away.
void start(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    state(ui, wall_at("36"));
    ui.desk.bands = std::make_unique<editor::BandWorker>();
    ui.settle();
    ui.desk.bands->wait();
    ui.settle();
}

}  // namespace

TEST_CASE("a dimension shows how far it may go and what stops it", "[editor][room]") {
    HeadlessUi ui;
    start(ui);
    REQUIRE(ui.has("Lay out/band width"));
    CHECK_THAT(ui.item("Lay out/band width").value, Catch::Contains("then wall right"));
    CHECK_THAT(ui.item("Lay out/band width").value, Catch::Contains("to 35 "));
}

TEST_CASE("one click makes a dimension the largest that fits, on the tape", "[editor][room]") {
    HeadlessUi ui;
    start(ui);
    const auto wrong = ui.now().summary.open();
    ui.click("Lay out/Largest width");
    const auto width = editor::value_of(ui.now(), "width");
    REQUIRE(width.has_value());
    CHECK(width->length.inches() > 35.5);
    CHECK(width->length.inches() < 35.75);
    CHECK(engine::is_on_mark(width->length, ui.now().project->shown));
    CHECK(ui.now().summary.open() <= wrong);
    CHECK(ui.desk.history.undo_label() == "Make width the largest that fits");
    ui.desk.bands->wait();
    ui.settle();
    CHECK_FALSE(ui.has("Lay out/Largest width"));  // there it is
}

TEST_CASE("a band follows when the wall moves", "[editor][room]") {
    HeadlessUi ui;
    start(ui);
    state(ui, wall_at("30"));
    ui.desk.bands->wait();
    ui.settle();
    CHECK_THAT(ui.item("Lay out/band width").value, Catch::Contains("to 29 "));
}

TEST_CASE("a band stays while its own dimension is dragged", "[editor][room]") {
    HeadlessUi ui;
    start(ui);
    const auto before = ui.desk.bands->band("width");
    REQUIRE(before.has_value());
    state(ui, model::SetFormula{"width", "30 in"});
    const auto after = ui.desk.bands->band("width");
    REQUIRE(after.has_value());
    CHECK(after->intervals == before->intervals);
}

TEST_CASE("a worker wakes the window and can be put away while it works", "[editor][room]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    std::atomic<int> woken = 0;
    auto worker = std::make_unique<editor::BandWorker>([&] { ++woken; });
    const auto want = [&] {
        worker->want({ui.desk.history.now(),
                      ui.desk.catalogue,
                      ui.desk.scans,
                      {"width", "depth", "height", "nothing"}});
    };
    want();
    worker->wait();
    CHECK(woken >= 3);  // the last one may still be on its way
    CHECK_FALSE(worker->is_busy());
    CHECK(worker->band("depth").has_value());
    CHECK_FALSE(worker->band("nothing").has_value());
    state(ui, wall_at("40"));
    want();
    worker.reset();
    CHECK(woken <= 8);
}
