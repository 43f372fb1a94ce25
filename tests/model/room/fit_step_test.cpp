// What a step over an obstacle wants beside its clearance, worked out from the stock and fasteners.
#include "model/room/fit_step.h"

#include "model/room/resolve_in_room.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Matchers::Contains;
using namespace model;

namespace {

const Catalogue& catalogue() {
    static const auto loaded = load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(engine::to_text(loaded.error()));
    return *loaded;
}

Project edited(const Project& before, const Edit& edit) {
    auto after = apply(before, edit);
    if (!after) FAIL(to_text(after.error()));
    return *after;
}

// A counter 20 x 48 x 34 in over a well in the middle of its left side; the step's top is at 11 in
// and what heads want.
Project counter(const std::string& section, const Formula& shelf = "24") {
    Project project{.stock = {{.name = "angle", .section = section, .alloy = "6063-T52"}}};
    project = edited(project, StartBoxFrame{.frame = "counter",
                                            .stock = "angle",
                                            .width = "20",
                                            .depth = "48",
                                            .height = "34",
                                            .shelf_levels = {shelf}});
    return edited(project, PutObstacle{{.name = "well",
                                        .shape = WheelWell{.least = {"0", "8", "0"},
                                                           .most = {"8 1/4", "39", "10 3/4"}}}});
}

const StepOver over_well{.frame = "counter", .obstacle = "well"};

std::string faults(const Project& project) {
    std::string text;
    for (const Finding& finding : resolve_in_room(project, catalogue()).findings) {
        if (finding.severity == Severity::note) continue;
        text += finding.code + ": " + where_text(finding) + "; " + finding.what + "\n";
    }
    return text;
}

}  // namespace

TEST_CASE("heads and tails keep the clearance once the step is fitted", "[model][room][fit_step]") {
    const std::string section =
        GENERATE("angle 1 x 1 x 1/8", "angle 1 1/4 x 1 1/4 x 1/8", "angle 1 1/2 x 1 1/2 x 1/8");
    CAPTURE(section);
    const Project project = counter(section);
    CHECK_THAT(faults(edited(project, over_well)), Contains("clearance: obstacle well"));
    const Project after = edited(project, fitted_step(project, catalogue(), over_well));
    CHECK(faults(after) == "");
    CHECK(faults(edited(after, SetFormula{"well top", "12 1/2"})) == "");
    CHECK(faults(edited(after, SetFormula{"clearance", "3/4 in"})) == "");
}

TEST_CASE("a thicker rivet asks for more room for its heads", "[model][room][fit_step]") {
    Project project = counter("angle 2 x 2 x 1/8");
    const auto room_with = [&](const char* rivet) {
        project.shop.fastener = rivet;
        const auto edit = fitted_step(project, catalogue(), over_well);
        CHECK(faults(edited(project, edit)) == "");
        return engine::read_length(edit.standing, engine::LengthUnit::inch)->nm();
    };
    CHECK(room_with("blind rivet 1/4") > room_with("blind rivet 1/8"));
}

TEST_CASE("a shelf near above the step is taken where its legs find room",
          "[model][room][fit_step]") {
    const Project above = counter("angle 1 x 1 x 1/8", "13");
    CHECK(faults(edited(above, fitted_step(above, catalogue(), over_well))) == "");
    const Project wider = counter("angle 1 1/2 x 1 1/2 x 1/8", "13 1/4");
    CHECK(faults(edited(wider, fitted_step(wider, catalogue(), over_well))) == "");
}

TEST_CASE("as far apart as is asked for is enough for legs that turn to one another",
          "[model][room][fit_step]") {
    struct Case {
        const char* section;
        const char* crowded;
        const char* asked;
        const char* moved;  // so far above 11 in and 1/8 in for heads
    };
    const auto it = GENERATE(Case{"angle 1 x 1 x 1/8", "12", "2 1/2 apart", "13 5/8"},
                             Case{"angle 1 1/2 x 1 1/2 x 1/8", "12 3/4", "3 1/2 apart", "14 5/8"},
                             Case{"angle 1 x 1 x 1/16", "12", "2 1/4 apart", "13 3/8"});
    const Project crowded = counter(it.section, it.crowded);
    const auto refused = apply(crowded, fitted_step(crowded, catalogue(), over_well));
    REQUIRE_FALSE(refused);
    CHECK(refused.error().where == "frame counter, plane shelf 1");
    CHECK_THAT(refused.error().message, Contains(it.asked));
    const Project moved = edited(crowded, SetFormula{"shelf 1", it.moved});
    CHECK(faults(edited(moved, fitted_step(moved, catalogue(), over_well))) == "");
}

TEST_CASE("what the user states of the step is kept", "[model][room][fit_step]") {
    const Project project = counter("angle 1 x 1 x 1/8", "13");
    StepOver edit = over_well;
    edit.standing = "1/2 in";
    edit.apart = "3 in";
    const auto fitted = fitted_step(project, catalogue(), edit);
    CHECK(fitted.standing == "1/2 in");
    CHECK(fitted.apart == "3 in");
    CHECK_FALSE(apply(project, fitted));
}

TEST_CASE("a step that cannot be made is left as it was asked for", "[model][room][fit_step]") {
    const Project project = counter("angle 1 x 1 x 1/8");
    const auto fitted = fitted_step(project, catalogue(), {.frame = "locker", .obstacle = "well"});
    CHECK(fitted.standing.empty());
    CHECK_FALSE(apply(project, fitted));
}
