#include "model/room/band.h"

#include "model/room/resolve_in_room.h"

#include "tests/model/room/room_projects.h"
#include "tests/support/dice.h"
#include "tests/support/seeds.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace {

using namespace model;
using room_tests::box;
using room_tests::cabinet;
using room_tests::catalogue;

Band band(const Project& project, const std::string& dimension) {
    const auto found = band_of(project, catalogue(), {}, dimension);
    REQUIRE(found.has_value());
    return *found;
}

// Whether the value lies in a part of the band.
bool holds(const Band& band, Nm value) {
    return std::ranges::any_of(band.intervals, [&](const BandInterval& interval) {
        return value >= interval.from && value <= interval.to;
    });
}

using Said = std::vector<std::string>;

std::string words(const Subject& subject) {
    return std::string(name_of(subject.kind)) + " " + subject.frame + "/" + subject.name;
}

// What is said of the first and each other that it concerns.
std::set<Said> said_of(const Finding& finding) {
    std::set<Said> said;
    const auto& all = finding.concerns;
    if (all.size() < 2) said.insert({finding.code, all.empty() ? "" : words(all[0])});
    for (std::size_t i = 1; i < all.size(); ++i)
        said.insert({finding.code, words(all[0]), words(all[i])});
    return said;
}

// What keeps the project from fitting at that value, apart from what is wrong whatever it is. Told
// by resolving it anew, not by what the band looked at.
std::set<Said> faults_at(const Project& project, const Band& band, Nm value) {
    std::set<Said> regardless;
    for (const auto& finding : band.regardless) regardless.merge(said_of(finding));
    std::set<Said> faults;
    const auto there = with_dimension(project, band.dimension, value);
    for (const auto& finding : resolve_in_room(there, catalogue()).findings) {
        if (!keeps_from_fitting(finding)) continue;
        for (const auto& one : said_of(finding)) {
            if (!regardless.contains(one)) faults.insert(one);
        }
    }
    return faults;
}

}  // namespace

TEST_CASE("a width goes as far as the wall lets it, less clearance and heads", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back(box("wall right", {"60", "0", "0"}, {"61", "80", "80"}));
    const auto width = band(project, "width");
    CHECK(width.fits_now);
    REQUIRE(width.intervals.size() == 1);
    const auto& interval = width.intervals[0];
    CHECK(interval.above.by == "wall right");
    CHECK(interval.above.finding.code == "clearance");
    // 50 in of room less 1/4 in and the rivets' heads.
    const auto resolved = resolve_in_room(project, catalogue());
    const auto head = catalogue().rivets[resolved.fasteners[0].spec.index].head_height_most.nm();
    const Nm most = tests::inches(50) - tests::inches(1) / 4 - head;
    CHECK(interval.to <= most);
    CHECK(interval.to > most - band_step(project.shown));
    CHECK(largest_that_fits(width, project.shown) ==
          interval.to / tests::inches_64(2) * tests::inches_64(2));
}

TEST_CASE("a post in the way parts the band in two", "[model][room]") {
    auto project = cabinet({"10", "10", "0"}, "30 in");
    // The posts may stand before it or behind it; rails and floor pass below it.
    project.room.push_back(box("roof strut", {"50", "0", "30 1/2"}, {"52", "80", "80"}));
    project.dimensions[2].formula = "40 in";  // height
    const auto width = band(project, "width");
    REQUIRE(!width.intervals.empty());
    CHECK(width.intervals[0].above.by == "roof strut");
    CHECK(width.fits_now);
    const auto height = band(with_dimension(project, "width", tests::inches(45)), "height");
    CHECK_FALSE(height.fits_now);
    // So high that the strut passes below the top, it fits again.
    REQUIRE(height.intervals.size() == 2);
    CHECK(height.intervals[0].above.by == "roof strut");
    CHECK(height.intervals[1].below.by == "roof strut");
    CHECK(height.intervals[1].from > tests::inches(80));
    CHECK(height.intervals[0].to < tests::inches(61) / 2);
    CHECK(largest_that_fits(height, project.shown) <= tests::inches(61) / 2);
}

TEST_CASE("the dimension's own least and most end the band", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.dimensions[0].least = "20 in";
    project.dimensions[0].most = "40 in";
    const auto width = band(project, "width");
    REQUIRE(width.intervals.size() == 1);
    CHECK(width.intervals[0].from == tests::inches(20));
    CHECK(width.intervals[0].to == tests::inches(40));
    CHECK(width.intervals[0].above.by == "the most it may be");
    CHECK(width.intervals[0].below.by == "the least it may be");
}

TEST_CASE("a band ends where the frame binds in the opening as it was measured", "[model][room]") {
    auto project = cabinet({"0", "0", "0"});
    project.frames[0].openings = {{.name = "niche",
                                   .height = "40 in",
                                   .widths = {"37 in", "37 in", "37 in"},
                                   .plumb = {"1/4 in", "-1/4 in"}}};
    const auto width = band(project, "width");
    REQUIRE(width.intervals.size() == 1);
    CHECK(width.intervals[0].above.by == "niche");
    CHECK(width.intervals[0].above.finding.code == "opening_binds");
    // At the top of the frame, 30 of 40 in up, the left side is 3/16 in further in; the right one
    // is furthest in at the bottom.
    const Nm most = tests::inches(37) - tests::inches_64(12);
    CHECK(width.intervals[0].to == most);
}

TEST_CASE("what is wrong whatever the value is left out of account and told", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back(box("floor rib", {"12", "12", "-1"}, {"20", "40", "1"}));
    project.room.push_back(box("wall right", {"60", "0", "0"}, {"61", "80", "80"}));
    const auto width = band(project, "width");
    CHECK(width.fits_now);
    CHECK_FALSE(width.regardless.empty());
    REQUIRE(width.intervals.size() >= 1);
    CHECK(width.intervals.back().above.by == "wall right");
}

// At other heights still more of it vanishes, which is less to complain of and no mend.
TEST_CASE("no fault is told as there whatever the value that the present one has not",
          "[model][room]") {
    const auto project = cabinet({"10", "10", "0"}, "24 in", "1/4 in", "20 in");
    const auto height = band(project, "height");
    REQUIRE_FALSE(height.regardless.empty());
    auto nothing_left_out = height;
    nothing_left_out.regardless.clear();
    const auto now = faults_at(project, nothing_left_out, height.value);
    for (const auto& finding : height.regardless) {
        CHECK(std::ranges::includes(now, said_of(finding)));
    }
    CHECK(holds(height, height.value));
}

namespace {

// A cabinet of 12 x 12 x 12 in whose place depends on the dimension "away".
Project on_its_way(const Place& origin) {
    auto project = cabinet(origin, "12 in", "12 in", "12 in");
    project.dimensions.push_back(
        {.name = "away", .formula = "5 in", .least = "0", .most = "240 in"});
    return project;
}

}  // namespace

// Wherever it stands, also where it is as far from two values looked at.
TEST_CASE("what a frame passes on its way is found", "[model][room]") {
    for (int x = 60; x < 72; ++x) {
        CAPTURE(x);
        auto project = on_its_way({"away", "0", "10 in"});
        const auto at = std::to_string(x) + " in";
        project.room.push_back({.name = "strut",
                                .shape = CylinderObstacle{
                                    .foot = {at, "0", "0"}, .radius = "1/4 in", .length = "40"}});
        const auto away = band(project, "away");
        CHECK(away.is_proved);
        CHECK(away.intervals.size() == 2);
        CHECK_FALSE(holds(away, tests::inches(x)));       // its left posts stand there
        CHECK_FALSE(holds(away, tests::inches(x - 12)));  // its right ones
    }
}

TEST_CASE("what a frame passes is found however fast it moves", "[model][room]") {
    SECTION("askew") {
        auto project = on_its_way({"away", "0", "away"});
        project.room.push_back({.name = "bar",
                                .shape = CylinderObstacle{.foot = {"112", "-10", "106.8 in"},
                                                          .along = Axis::y,
                                                          .radius = "1/4 in",
                                                          .length = "40"}});
        CHECK_FALSE(holds(band(project, "away"), tests::inches(106)));
    }
    SECTION("with its planes moving in it") {
        auto project = on_its_way({"away", "0", "10 in"});
        for (auto& plane : project.frames[0].planes) {
            if (plane.axis == Axis::x)
                plane.position = plane.position == "width" ? "width + away" : "away";
        }
        project.room.push_back(
            {.name = "strut",
             .shape = CylinderObstacle{
                 .foot = {"212 in", "0", "0"}, .radius = "1/4 in", .length = "40"}});
        CHECK_FALSE(holds(band(project, "away"), tests::inches(106)));
    }
}

TEST_CASE("frames that pass through each other are found", "[model][room]") {
    auto project = on_its_way({"away", "0", "10 in"});
    for (const auto* at : {"103 in", "103.4 in"}) {
        CAPTURE(at);
        auto other = cabinet({at, "0", "10 in"}, "1 1/4 in", "12 in", "12 in");
        other.frames[0].name = "neighbour";
        project.frames.resize(1);
        project.frames.push_back(other.frames[0]);
        for (auto& plane : project.frames[1].planes) {
            if (plane.position == "width") plane.position = "1 1/2 in";
        }
        const auto away = band(project, "away");
        CHECK_FALSE(holds(away, tests::inches(104)));
        CHECK(holds(away, tests::inches(80)));
        CHECK(holds(away, tests::inches(120)));
    }
}

TEST_CASE("what stands in an obstacle whatever the value fits nowhere", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back(box("floor rib", {"12", "12", "-1"}, {"20", "40", "1"}));
    const auto height = band(project, "height");
    CHECK(fits_nowhere(height));
    CHECK_FALSE(largest_that_fits(height, project.shown).has_value());
    // It comes no nearer to a second one because of that.
    project.room.push_back(box("lamp", {"12", "12", "31"}, {"20", "40", "40"}));
    const auto below = band(project, "height");
    REQUIRE(!below.intervals.empty());
    CHECK(below.intervals.front().to < tests::inches(31));
    CHECK(below.intervals.front().above.by == "lamp");
}

// Without its obstacle a cabinet has nothing to run into.
TEST_CASE("an obstacle without a shape is no better than one in the way", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.dimensions.push_back({.name = "reach", .formula = "20 in"});
    project.room.push_back(box("ledge", {"5", "0", "0"}, {"reach", "40", "20"}));
    const auto reach = band(project, "reach");
    CHECK_FALSE(reach.fits_now);
    for (const auto& interval : reach.intervals) CHECK(interval.from > tests::inches(5));
}

TEST_CASE("a scan that is not read is told with the band", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back({.name = "van", .shape = ScannedObstacle{.file = "van.ply"}});
    const auto width = band(project, "width");
    REQUIRE(width.not_measured.size() == 1);
    CHECK(width.not_measured[0].code == "scan_not_read");
}

TEST_CASE("what is no length has no band, and one that is told to stop has none either",
          "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.dimensions.push_back(
        {.name = "tilt", .kind = engine::QuantityKind::angle, .formula = "5"});
    CHECK_FALSE(band_of(project, catalogue(), {}, "tilt").has_value());
    CHECK_FALSE(band_of(project, catalogue(), {}, "nothing").has_value());
    int asked = 0;
    CHECK_FALSE(band_of(project, catalogue(), {}, "width", [&] { return ++asked < 5; }));
    CHECK(asked == 5);
}

namespace {

std::string sixty_fourths(std::int64_t count) { return std::to_string(count) + "/64 in"; }

// An invented corner of a van and a cabinet in it: walls that lean, wheel wells, boxes, pipes.
Obstacle random_obstacle(tests::Dice& dice, int number) {
    const auto name = "obstacle " + std::to_string(number);
    const auto draw = [&](int least, int most) {
        return sixty_fourths(dice.between(least * 64, most * 64));
    };
    const auto kind = dice.below(7);
    if (kind == 5) {
        const auto x = draw(30, 60);
        const auto y = draw(0, 40);
        return {.name = name,
                .shape = DoorSwing{.hinge = {x, y, "1 in"},
                                   .width = "14 in",
                                   .height = "20 in",
                                   .closed = "90",
                                   .open = "180"},
                .stays_clear = true};
    }
    if (kind == 6) {
        const auto x = dice.between(25 * 64, 60 * 64);
        auto walkway =
            box(name, {sixty_fourths(x), "-20", "0"}, {sixty_fourths(x + 640), "60", "80"});
        walkway.stays_clear = true;
        return walkway;
    }
    if (kind == 0) {
        const auto at = draw(35, 60);
        const auto top = draw(0, 6);
        return {.name = name,
                .shape = WallProfile{.at = at,
                                     .inside = Sense::minus,
                                     .from = "-20",
                                     .to = "120",
                                     .offsets = {{"0", "0"}, {"20", "1/2 in"}, {"50", top}}}};
    }
    if (kind == 1) {
        const auto out = dice.between(25 * 64, 50 * 64);
        const auto high = draw(5, 14);
        const auto from = dice.between(0, 30 * 64);
        const auto to = from + dice.between(20 * 64, 40 * 64);
        return {.name = name,
                .shape = WheelWell{.least = {sixty_fourths(out), sixty_fourths(from), "0"},
                                   .most = {sixty_fourths(out + 10 * 64), sixty_fourths(to), high},
                                   .top_radius = "2 in",
                                   .corner_radius = "1 in",
                                   .inner_sense = Sense::minus,
                                   .lean = "5"}};
    }
    if (kind == 2) {
        const auto x = draw(30, 60);
        const auto y = draw(0, 40);
        return {.name = name,
                .shape = CylinderObstacle{.foot = {x, y, "0"}, .radius = "2 in", .length = "90"}};
    }
    if (kind == 3) {
        const auto drop = draw(0, 10);
        return {.name = name,
                .shape = CeilingProfile{
                    .at = "55", .from = "-20", .to = "120", .offsets = {{"0", "0"}, {"40", drop}}}};
    }
    const auto x = dice.between(25 * 64, 60 * 64);
    const auto y = dice.between(-10 * 64, 40 * 64);
    const auto z = dice.between(0, 40 * 64);
    return box(name, {sixty_fourths(x), sixty_fourths(y), sixty_fourths(z)},
               {sixty_fourths(x + 640), sixty_fourths(y + 640), sixty_fourths(z + 640)});
}

Project random_room(tests::Dice& dice) {
    const auto width = sixty_fourths(dice.between(12 * 64, 30 * 64));
    const auto depth = sixty_fourths(dice.between(10 * 64, 20 * 64));
    const auto height = sixty_fourths(dice.between(15 * 64, 40 * 64));
    auto project = cabinet({"2", "3", "1/2"}, width, depth, height);
    if (dice.chance(30)) {  // a neighbour that the first one may grow into
        auto other = cabinet({"40", "5", "0"}, "10 in", "12 in", "20 in").frames[0];
        other.name = "neighbour";
        for (auto& plane : other.planes) {
            if (plane.position == "width") plane.position = "10 in";
            if (plane.position == "depth") plane.position = "12 in";
            if (plane.position == "height") plane.position = "20 in";
        }
        project.frames.push_back(std::move(other));
    }
    const auto count = 1 + static_cast<int>(dice.below(3));
    for (int i = 0; i < count; ++i) project.room.push_back(random_obstacle(dice, i + 1));
    return project;
}

}  // namespace

// Brute force: each end fits and the next mark beyond does not, and values drawn anywhere in the
// range fit where the band says so and nowhere else.
TEST_CASE("bands of random rooms hold against looking at every end and at random values",
          "[model][room]") {
    std::uint32_t ends = 0;
    int parted = 0;
    const auto seeds = tests::seed_count(200);
    for (std::uint32_t seed = 1; seed <= seeds; ++seed) {
        CAPTURE(seed);
        tests::Dice dice{seed};
        const auto project = random_room(dice);
        const std::array<std::string, 3> names{"width", "depth", "height"};
        const auto name = dice.one_of(names);
        const auto found = band(project, name);
        const Nm step = band_step(project.shown);
        CAPTURE(name, found.looked_at);
        for (const auto& interval : found.intervals) {
            CAPTURE(interval.from / step, interval.to / step, interval.above.by);
            CHECK(faults_at(project, found, interval.from).empty());
            CHECK(faults_at(project, found, interval.to).empty());
            if (interval.to < found.searched_to) {
                CHECK_FALSE(faults_at(project, found, interval.to + step).empty());
                CHECK_FALSE(interval.above.by.empty());
                ++ends;
            }
            if (interval.from > found.searched_from) {
                CHECK_FALSE(faults_at(project, found, interval.from - step).empty());
                ++ends;
            }
        }
        if (found.intervals.size() > 1) ++parted;
        for (int i = 0; i < 10; ++i) {
            const Nm value =
                dice.between(found.searched_from / step, found.searched_to / step) * step;
            const bool is_in = std::ranges::any_of(found.intervals, [&](const auto& interval) {
                return value >= interval.from && value <= interval.to;
            });
            CAPTURE(value / step, is_in);
            CHECK(faults_at(project, found, value).empty() == is_in);
        }
    }
    CHECK(ends > seeds);
    if (seeds >= 100) CHECK(parted >= 3);
}
