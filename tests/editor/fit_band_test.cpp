#include "editor/band_worker.h"
#include "editor/dimension_values.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <mutex>
#include <new>
#include <thread>

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

// Lets bands be worked out only while it is open, and remembers which were asked for.
class Gate {
public:
    std::atomic<bool> is_open{true};

    editor::BandWorker::Work work() {
        return [this](const auto& project, const auto& catalogue, const auto& scans,
                      const auto& dimension, const auto& go_on) -> std::optional<model::Band> {
            {
                const std::lock_guard lock(mutex_);
                asked_.push_back(dimension);
            }
            while (!is_open) {
                if (!go_on()) return std::nullopt;
                std::this_thread::yield();
            }
            return model::band_of(project, catalogue, scans, dimension, go_on);
        };
    }

    std::vector<std::string> asked() const {
        const std::lock_guard lock(mutex_);
        return asked_;
    }

    void wait_for_work() const {
        while (asked().empty()) std::this_thread::yield();
    }

private:
    mutable std::mutex mutex_;
    std::vector<std::string> asked_;
};

// Where the strips of the list stand.
std::vector<float> tops(HeadlessUi& ui) {
    std::vector<float> all;
    for (const auto& dimension : ui.now().project->dimensions) {
        all.push_back(ui.item("Lay out/edit " + dimension.name).top);
    }
    all.push_back(ui.item("Lay out/New dimension").top);
    return all;
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

TEST_CASE("a worker wakes the window once for each band", "[editor][room]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    std::atomic<int> woken = 0;
    auto worker = std::make_unique<editor::BandWorker>([&] { ++woken; });
    worker->want({ui.desk.history.now(),
                  ui.desk.catalogue,
                  ui.desk.scans,
                  {"width", "depth", "height", "nothing"}});
    worker->wait();
    CHECK_FALSE(worker->is_busy());
    CHECK(worker->band("depth").has_value());
    CHECK_FALSE(worker->band("nothing").has_value());
    CHECK(worker->state("nothing").is_settled);
    worker.reset();  // the last one may still have been on its way
    CHECK(woken == 4);
}

TEST_CASE("a worker can be put away while it works", "[editor][room]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    Gate gate;
    gate.is_open = false;
    std::atomic<int> woken = 0;
    auto worker = std::make_unique<editor::BandWorker>([&] { ++woken; }, gate.work());
    worker->want(
        {ui.desk.history.now(), ui.desk.catalogue, ui.desk.scans, {"width", "depth", "height"}});
    gate.wait_for_work();
    worker.reset();
    CHECK(woken <= 1);  // what was given up is no band
    CHECK(gate.asked() == std::vector<std::string>{"width"});
}

TEST_CASE("the dimension in the hand is worked out first, then those that are chosen",
          "[editor][room]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    Gate gate;
    ui.desk.bands = std::make_unique<editor::BandWorker>(std::function<void()>{}, gate.work());
    ui.desk.ui.selection.subjects = {{model::SubjectKind::dimension, {}, "height"}};
    ui.settle();
    ui.desk.bands->wait();
    REQUIRE(gate.asked().size() >= 3);
    CHECK(gate.asked().front() == "height");
    const auto before = gate.asked().size();
    ui.desk.ui.hand.typed = editor::TypedFormula{"depth", "list", "20 in"};
    state(ui, wall_at("36"));
    ui.desk.bands->wait();
    REQUIRE(gate.asked().size() > before);
    CHECK(gate.asked().at(before) == "depth");
}

TEST_CASE("too little memory for a band is told in its place", "[editor][room]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.bands = std::make_unique<editor::BandWorker>(
        std::function<void()>{},
        [](const auto&, const auto&, const auto&, const auto&,
           const auto&) -> std::optional<model::Band> { throw std::bad_alloc(); });
    ui.settle();
    ui.desk.bands->wait();
    ui.settle();
    CHECK_THAT(ui.item("Lay out/band width").value, Catch::Contains("not enough memory"));
    CHECK_FALSE(ui.has("Lay out/Largest width"));
}

TEST_CASE("the list keeps its places whatever is known of its bands", "[editor][room]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    state(ui, wall_at("36"));
    Gate gate;
    gate.is_open = false;
    ui.desk.bands = std::make_unique<editor::BandWorker>(std::function<void()>{}, gate.work());
    ui.settle();
    CHECK_THAT(ui.item("Lay out/awaited band width").value, Catch::Contains("working out"));
    const auto awaited = tops(ui);
    gate.is_open = true;
    ui.desk.bands->wait();
    ui.settle();
    REQUIRE(ui.has("Lay out/Largest width"));
    CHECK_FALSE(ui.has("Lay out/awaited band width"));
    CHECK(tops(ui) == awaited);
}

TEST_CASE("while a dimension is dragged the bands of the others stay, pale, in their places",
          "[editor][room]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    state(ui, wall_at("36"));
    Gate gate;
    ui.desk.bands = std::make_unique<editor::BandWorker>(std::function<void()>{}, gate.work());
    ui.settle();
    ui.desk.bands->wait();
    ui.settle();
    const auto before = tops(ui);
    const auto depth = ui.item("Lay out/band depth").value;
    gate.is_open = false;
    const auto strip = ui.item("Lay out/width");
    ui.move_to(strip.middle_x(), strip.middle_y());
    ui.input.button(0, true);
    ui.frame();
    for (const float by : {8.0F, 16.0F, 24.0F, 32.0F}) {
        ui.input.move(strip.middle_x() + by, strip.middle_y());
        ui.frame();
        ui.frame();
        INFO("pulled by " << by);
        CHECK(tops(ui) == before);
    }
    REQUIRE(ui.desk.ui.hand.dragged);
    CHECK(ui.shown("width") != "24");
    CHECK(ui.has("Lay out/band width"));  // its own does not depend on it
    CHECK(ui.item("Lay out/awaited band depth").value == depth);
    CHECK_FALSE(ui.has("Lay out/Largest depth"));
    ui.input.button(0, false);
    gate.is_open = true;
    ui.settle();
    ui.desk.bands->wait();
    ui.settle();
    CHECK(ui.has("Lay out/band depth"));
}

TEST_CASE("another project's bands are not shown while the new ones are worked out",
          "[editor][room]") {
    HeadlessUi ui;
    start(ui);
    const auto project = ui.now().project;
    editor::replace_project(ui.desk, *project, {});
    CHECK_FALSE(ui.desk.bands->state("width").band);
    ui.settle();
    ui.desk.bands->wait();
    CHECK(ui.desk.bands->band("width"));
}

TEST_CASE("nothing is said to fit while an obstacle's scan is not read", "[editor][room]") {
    HeadlessUi ui;
    start(ui);
    REQUIRE(ui.has("Lay out/Largest width"));
    state(ui, model::PutObstacle{
                  {.name = "van", .shape = model::ScannedObstacle{.file = "missing.ply"}}, {}});
    ui.desk.bands->wait();
    ui.settle();
    CHECK_THAT(ui.item("Lay out/band width").value, Catch::Contains("missing.ply is not read"));
    CHECK_FALSE(ui.has("Lay out/Largest width"));
}

TEST_CASE("nothing is said to fit where an error of the room stands whatever the value",
          "[editor][room]") {
    HeadlessUi ui;
    start(ui);
    state(ui, model::PutObstacle{{.name = "ledge",
                                  .shape = model::BoxObstacle{{"-5", "-5", "2"}, {"5", "5", "6"}}},
                                 {}});
    ui.desk.bands->wait();
    ui.settle();
    CHECK_THAT(ui.item("Lay out/band width").value, Catch::Contains("whatever it is"));
    CHECK_THAT(ui.item("Lay out/band width").value, Catch::Contains("ledge"));
    CHECK_FALSE(ui.has("Lay out/Largest width"));
}
