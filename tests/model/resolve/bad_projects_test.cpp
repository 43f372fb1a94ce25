// Projects that can be read and make no sense: findings, no crash, no hang, and the schedules of
// what is left can still be written.
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolve.h"
#include "model/schedule/write_all.h"

#include "tests/model/resolve/resolve_support.h"
#include "tests/support/frame_builder.h"
#include "tests/support/run_project.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <functional>
#include <limits>
#include <string>
#include <vector>

namespace {

using model::Axis;
using model::Sense;
using tests::inches;
using tests::Nm;

const model::Catalogue& shipped() {
    static const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(catalogue);
    return *catalogue;
}

model::Project good_box() {
    tests::BoxShape shape;
    shape.shelves = {inches(12)};
    return tests::box_project(shape, "angle 1 x 1 x 1/8", "6063-T52");
}

// Resolves and writes; whatever remains must still be a sound skeleton.
model::Resolved survived(const model::Project& project) {
    auto resolved = model::resolve(project, shipped());
    tests::SkeletonFiles files;
    for (const auto& file : model::schedule_files(project, shipped(), resolved)) {
        files[file.name] = file.text;
    }
    CHECK(files.size() == model::schedule_names.size());
    CHECK(tests::read_skeleton(files));
    return resolved;
}

bool says_something(const model::Resolved& resolved) {
    return std::any_of(resolved.findings.begin(), resolved.findings.end(), [](const auto& finding) {
        return !finding.code.empty() && !finding.what.empty() &&
               finding.severity != model::Severity::note;
    });
}

bool mentions(const model::Resolved& resolved, const std::string& part) {
    return std::any_of(resolved.findings.begin(), resolved.findings.end(), [&](const auto& f) {
        return (where_text(f) + " " + f.what + " " + f.mend).find(part) != std::string::npos;
    });
}

struct Spoiling {
    const char* name;
    std::function<void(model::Project&)> spoil;
    const char* named;  // what a finding must mention
};

model::Frame& frame_of(model::Project& project) { return project.frames.front(); }

model::Member& member_of(model::Project& project, std::size_t index) {
    return frame_of(project).members[index];
}

std::vector<Spoiling> spoilings() {
    return {
        {"a member on a plane that is not there",
         [](auto& p) { member_of(p, 4).on[0] = "nowhere"; }, "nowhere"},
        {"a member from a plane that is not there",
         [](auto& p) { member_of(p, 4).from = "nowhere"; }, "nowhere"},
        {"a member to no plane at all", [](auto& p) { member_of(p, 4).to.clear(); }, "m5"},
        {"two members of one name", [](auto& p) { member_of(p, 5).name = "m5"; }, "m5"},
        {"a member without a name", [](auto& p) { member_of(p, 5).name.clear(); }, "name"},
        {"two planes of one name",
         [](auto& p) { frame_of(p).planes.push_back(frame_of(p).planes.front()); }, "x0"},
        {"two frames of one name", [](auto& p) { p.frames.push_back(p.frames.front()); }, "box"},
        {"two stocks of one name", [](auto& p) { p.stock.push_back(p.stock.front()); }, "main"},
        {"two dimensions of one name",
         [](auto& p) {
             p.dimensions.push_back({.name = "width", .formula = "36 in"});
             p.dimensions.push_back({.name = "width", .formula = "37 in"});
         },
         "width"},
        {"dimensions that need each other",
         [](auto& p) {
             p.dimensions.push_back({.name = "up", .formula = "down + 1 in"});
             p.dimensions.push_back({.name = "down", .formula = "up - 1 in"});
             frame_of(p).planes[0].position = "up";
         },
         "up"},
        {"a dimension that needs itself",
         [](auto& p) { p.dimensions.push_back({.name = "self", .formula = "self"}); }, "self"},
        {"a plane whose formula cannot be read",
         [](auto& p) { frame_of(p).planes[0].position = "36 inn"; }, "x0"},
        {"a plane without a formula", [](auto& p) { frame_of(p).planes[0].position.clear(); },
         "x0"},
        {"a plane at an angle", [](auto& p) { frame_of(p).planes[0].position = "30 deg"; }, "x0"},
        {"a plane a long way off", [](auto& p) { frame_of(p).planes[0].position = "1e15 in"; },
         "x0"},
        {"a plane at a power of ten no tape has",
         [](auto& p) { frame_of(p).planes[0].position = "1e400 mm"; }, "x0"},
        {"a member of no length", [](auto& p) { member_of(p, 4).to = member_of(p, 4).from; }, "m5"},
        {"a member from its far end to its near end",
         [](auto& p) { std::swap(member_of(p, 4).from, member_of(p, 4).to); }, "m5"},
        {"a member from and to planes across another axis",
         [](auto& p) { member_of(p, 4).from = member_of(p, 0).from; }, "m5"},
        {"a member on two planes of one axis",
         [](auto& p) { member_of(p, 4).on[1] = member_of(p, 4).on[0]; }, "m5"},
        {"a member of a stock that is not there", [](auto& p) { member_of(p, 4).stock = "brass"; },
         "brass"},
        {"a section that is not in the catalogue",
         [](auto& p) { p.stock[0].section = "angle 9 x 9 x 9"; }, "angle 9 x 9 x 9"},
        {"an alloy that is not in the catalogue", [](auto& p) { p.stock[0].alloy = "unobtainium"; },
         "unobtainium"},
        {"a member longer than a kilometre",
         [](auto& p) { frame_of(p).planes[1].position = "1500 m"; }, "m"},
        {"two members on the same line",
         [](auto& p) {
             auto twin = member_of(p, 4);
             twin.name = "twin";
             frame_of(p).members.push_back(twin);
         },
         "twin"},
        {"an allowance longer than the member",
         [](auto& p) { member_of(p, 4).allowance_from = "50 in"; }, "m5"},
        {"an allowance that cannot be read",
         [](auto& p) { member_of(p, 4).allowance_to = "a little"; }, "m5"},
        {"an edge distance that is no number",
         [](auto& p) { p.shop.edge_distance = std::numeric_limits<double>::quiet_NaN(); }, "edge"},
        {"an edge distance without end",
         [](auto& p) { p.shop.edge_distance = std::numeric_limits<double>::infinity(); }, "edge"},
        {"an edge distance below nothing", [](auto& p) { p.shop.edge_distance = -2; }, "edge"},
        {"a pitch that is no number",
         [](auto& p) { p.shop.pitch = std::numeric_limits<double>::quiet_NaN(); }, "pitch"},
        {"a kerf below nothing", [](auto& p) { p.shop.kerf = "-1/8 in"; }, "kerf"},
        {"a kerf that cannot be read", [](auto& p) { p.shop.kerf = "thin"; }, "kerf"},
        {"an end gap below nothing", [](auto& p) { p.shop.end_gap = "-1 in"; }, "gap"},
        {"an end gap wider than the box", [](auto& p) { p.shop.end_gap = "40 in"; }, "m"},
        {"a tape without graduations", [](auto& p) { p.shop.graduation = "0"; }, "graduation"},
        {"a graduation below nothing", [](auto& p) { p.shop.graduation = "-1 mm"; }, "graduation"},
        {"a nose below nothing", [](auto& p) { p.shop.nose_radius = "-1 in"; }, "nose"},
        {"a fastener that is not in the catalogue", [](auto& p) { p.shop.fastener = "hot glue"; },
         "hot glue"},
        {"no fastener per lap", [](auto& p) { p.shop.per_lap = 0; }, ""},
        {"fewer fasteners per lap than none", [](auto& p) { p.shop.per_lap = -3; }, "lap"},
        {"a thousand fasteners per lap", [](auto& p) { p.shop.per_lap = 1000; }, "m"},
        {"more fasteners per lap than can be counted",
         [](auto& p) { p.shop.per_lap = std::numeric_limits<int>::max(); }, "m"},
        {"a drill that is not in the catalogue", [](auto& p) { p.shop.drills = {"blunt"}; },
         "blunt"},
        {"a member joined to itself",
         [](auto& p) {
             frame_of(p).joints.push_back({.members = {"m1", "m1"}});
         },
         "m1"},
        {"a joint of members that are not there",
         [](auto& p) {
             frame_of(p).joints.push_back({.members = {"m1", "ghost"}});
         },
         "ghost"},
        {"a joint of a recipe that is not there",
         [](auto& p) {
             frame_of(p).joints.push_back({.members = {"m1", "m5"}, .recipe = "hope"});
         },
         "hope"},
        {"a joint of a fastener that is not there",
         [](auto& p) {
             frame_of(p).joints.push_back({.members = {"m1", "m5"}, .fastener = "hope"});
         },
         "hope"},
        {"a joint of minus two fasteners",
         [](auto& p) {
             frame_of(p).joints.push_back({.members = {"m1", "m5"}, .count = -2});
         },
         "m5"},
        {"a frame at a place that cannot be read",
         [](auto& p) { frame_of(p).origin[1] = "over there"; }, "box"},
        {"a frame at the end of the world", [](auto& p) { frame_of(p).origin[1] = "9000000 km"; },
         "box"},
        {"a bay between planes that are not there",
         [](auto& p) {
             frame_of(p).bays.push_back(
                 {.name = "hole", .x = {"a", "b"}, .y = {"c", "d"}, .z = {"e", "f"}});
         },
         "hole"},
    };
}

}  // namespace

TEST_CASE("a project that makes no sense gets a finding and its schedules", "[resolve][bad]") {
    for (const auto& spoiling : spoilings()) {
        DYNAMIC_SECTION(spoiling.name) {
            auto project = good_box();
            spoiling.spoil(project);
            const auto resolved = survived(project);
            for (const auto& finding : resolved.findings) {
                UNSCOPED_INFO(finding.code + " | " + where_text(finding) + " | " + finding.what);
            }
            const bool asks_for_nothing = std::string(spoiling.named).empty();
            CHECK((asks_for_nothing ||
                   (says_something(resolved) && mentions(resolved, spoiling.named))));
        }
    }
}

TEST_CASE("a fault in one member leaves the others resolved", "[resolve][bad]") {
    auto project = good_box();
    member_of(project, 4).on[0] = "nowhere";
    const auto resolved = survived(project);
    CHECK(resolved.pieces.size() == 15);
    CHECK(resolved.fasteners.size() > 40);
}

TEST_CASE("quarter turns beyond a full turn are taken as the turn that they are",
          "[resolve][bad]") {
    auto project = good_box();
    const int turns =
        GENERATE(-1, 4, 7, std::numeric_limits<int>::max(), std::numeric_limits<int>::min());
    frame_of(project).quarter_turns = turns;
    CHECK(survived(project).pieces.size() == 16);
}

TEST_CASE("an empty project resolves to nothing, quietly", "[resolve][bad]") {
    const auto resolved = survived(model::Project{});
    CHECK(resolved.pieces.empty());
    CHECK_FALSE(says_something(resolved));
}

TEST_CASE("an empty frame and a frame of one member resolve", "[resolve][bad]") {
    auto project = good_box();
    frame_of(project).members.resize(1);
    auto& empty = project.frames.emplace_back();
    empty.name = "empty";
    CHECK(survived(project).pieces.size() == 1);
}

TEST_CASE("members that each end on the next in a ring are reported, and still shown",
          "[resolve][bad]") {
    // Four flats in a plane, each ending on the span of the next.
    tests::FrameBuilder builder{"ring"};
    const auto flat = [&](Axis run, std::array<Nm, 2> on, Nm from, Nm to) {
        builder.member("main", run, on, from, to, {Sense::plus, Sense::plus});
    };
    const Nm a = inches(5);
    const Nm b = inches(15);
    flat(Axis::x, {0, a}, 0, b);
    flat(Axis::z, {b, 0}, 0, b);
    flat(Axis::x, {0, b}, a, inches(20));
    flat(Axis::z, {a, 0}, a, inches(20));
    model::Project project;
    project.stock.push_back(tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    project.frames.push_back(builder.frame());
    const auto resolved = survived(project);
    CHECK(says_something(resolved));
    CHECK_FALSE(resolved.pieces.empty());
}

TEST_CASE("a great many members on one node end in findings, soon", "[resolve][bad]") {
    tests::FrameBuilder builder{"knot"};
    for (int i = 0; i < 5'000; ++i) {
        const auto run = static_cast<Axis>(i % 3);
        const bool ends = i % 2 == 0;
        builder.member(
            "main", run, {inches(10), inches(10)}, ends ? inches(10) : 0, inches(20),
            {i % 5 < 2 ? Sense::plus : Sense::minus, i % 7 < 3 ? Sense::plus : Sense::minus});
    }
    model::Project project;
    project.stock.push_back(tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    project.frames.push_back(builder.frame());
    const auto start = std::chrono::steady_clock::now();
    const auto resolved = model::resolve(project, shipped());
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    CHECK(says_something(resolved));
    // Generous: what must not happen is a wait without end. A sanitizer build on a busy machine is
    // some thirty times slower than a release build.
    CHECK(took.count() < 120.0);
}

TEST_CASE("many long formulas in a chain resolve", "[resolve][bad]") {
    auto project = good_box();
    project.dimensions.push_back({.name = "d0", .formula = "1/64 in"});
    for (int i = 1; i < 3'000; ++i) {
        project.dimensions.push_back({.name = "d" + std::to_string(i),
                                      .formula = "d" + std::to_string(i - 1) + " + 1/64 in"});
    }
    frame_of(project).planes.push_back({"far", Axis::x, "d2999"});
    const auto resolved = survived(project);
    REQUIRE(resolved.frames[0].planes.back().position);
    CHECK(*resolved.frames[0].planes.back().position == tests::inches_64(3'000));
}

TEST_CASE("a recipe that there is not is told, and the members are lapped", "[resolve][bad]") {
    auto project = good_box();
    const auto lapped = survived(project);
    CHECK(tests::count_of(lapped, "unknown_recipe") == 0);
    project.shop.recipe = "no such way";
    project.frames[0].recipe = "none either";
    project.frames[0].joints.push_back(
        {.members = {project.frames[0].members[0].name, project.frames[0].members[4].name},
         .recipe = "nor this"});
    const auto resolved = survived(project);
    CHECK(tests::count_of(resolved, "unknown_recipe") == 3);
    CHECK((resolved.pieces == lapped.pieces));
}

TEST_CASE("without a catalogue there are findings and no pieces", "[resolve][bad]") {
    const auto resolved = model::resolve(good_box(), model::Catalogue{});
    CHECK(resolved.pieces.empty());
    CHECK(says_something(resolved));
}

TEST_CASE("resolving twice writes the same bytes", "[resolve][determinism]") {
    const auto project = good_box();
    CHECK(tests::written_files(project, shipped()) == tests::written_files(project, shipped()));
}
