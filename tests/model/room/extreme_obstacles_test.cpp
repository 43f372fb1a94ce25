#include "model/resolve/resolve.h"
#include "model/room/clearance.h"

#include "tests/model/room/room_projects.h"
#include "tests/support/dice.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace {

using namespace model;
using tests::Dice;

// What nobody measures, and some of what one does.
Formula measure(Dice& dice) {
    static const std::array<Formula, 25> measures{
        "0",        "0.000001 mm", "-0.000001 mm", "0.000099 mm", "0.0001 mm", "0.0009999 mm",
        "0.001 mm", "0.01 mm",     "0.1 mm",       "1 mm",        "-1 mm",     "25 mm",
        "100 mm",   "300 mm",      "500 mm",       "-500 mm",     "2000 mm",   "9000 mm",
        "900 m",    "-900 m",      "1000 m",       "1001 m",      "1e30 m",    "1 mm / 0",
        "nothing"};
    return dice.one_of(measures);
}

Formula angle(Dice& dice) {
    static const std::array<Formula, 18> angles{
        "0",   "0.000000001", "0.0000001", "0.001", "1",    "6",      "59.9999", "60",    "90",
        "180", "-90",         "360",       "-360",  "3600", "3600.1", "1e17",    "1e300", "1 / 0"};
    return dice.one_of(angles);
}

Axis axis(Dice& dice) { return static_cast<Axis>(dice.below(3)); }
Sense sense(Dice& dice) { return dice.chance(50) ? Sense::plus : Sense::minus; }

Place place(Dice& dice) {
    Place at;
    for (auto& one : at) one = measure(dice);
    return at;
}

template <class Offset>
std::vector<Offset> offsets(Dice& dice) {
    std::vector<Offset> all;
    const auto count = dice.below(5);
    for (std::uint32_t i = 0; i < count; ++i) {
        const auto where = measure(dice);
        const auto in = measure(dice);
        all.push_back({where, in});
    }
    return all;
}

template <class Profile>
Profile profile(Dice& dice) {
    Profile made;
    made.at = measure(dice);
    made.from = measure(dice);
    made.to = measure(dice);
    made.offsets = offsets<typename decltype(made.offsets)::value_type>(dice);
    const auto count = dice.below(3);
    for (std::uint32_t i = 0; i < count; ++i) {
        auto& station = made.stations.emplace_back();
        station.along = measure(dice);
        station.offsets = offsets<typename decltype(made.offsets)::value_type>(dice);
    }
    return made;
}

WheelWell well(Dice& dice) {
    WheelWell made;
    made.least = place(dice);
    made.most = place(dice);
    made.top_radius = measure(dice);
    made.corner_radius = measure(dice);
    made.inner_side = axis(dice);
    made.inner_sense = sense(dice);
    made.lean = angle(dice);
    if (dice.chance(50)) {  // or else next to none is any good
        made.least = {"0", "0", "0"};
        if (dice.chance(50)) made.top_radius = "0";
        if (dice.chance(50)) made.lean = "0";
    }
    return made;
}

ObstacleShape shape(Dice& dice) {
    switch (dice.below(6)) {
        case 0: {
            BoxObstacle box;
            box.least = place(dice);
            box.most = place(dice);
            return box;
        }
        case 1:
            return well(dice);
        case 2: {
            auto wall = profile<WallProfile>(dice);
            wall.inside = sense(dice);
            return wall;
        }
        case 3:
            return profile<CeilingProfile>(dice);
        case 4: {
            CylinderObstacle cylinder;
            cylinder.foot = place(dice);
            cylinder.along = axis(dice);
            cylinder.radius = measure(dice);
            cylinder.length = measure(dice);
            return cylinder;
        }
        default: {
            DoorSwing door;
            door.hinge = place(dice);
            door.width = measure(dice);
            door.height = measure(dice);
            door.closed = angle(dice);
            door.open = angle(dice);
            return door;
        }
    }
}

bool is_whole(const engine::ConvexBody& body) {
    const auto is_unit = [](const engine::BodyFace& face) {
        return std::abs(engine::dot(face.normal, face.normal) - 1.0) < 1e-9;
    };
    return body.faces.size() >= 4 && body.faces.size() <= engine::ConvexBody::most_faces &&
           std::ranges::all_of(body.faces, is_unit);
}

}  // namespace

TEST_CASE("whatever is stated of an obstacle, it is a solid or it is told why not",
          "[model][room]") {
    Project project = room_tests::cabinet({"0", "0", "0"});
    const auto resolved = resolve(project, room_tests::catalogue());
    std::size_t solid = 0;
    std::size_t refused = 0;
    for (std::uint32_t seed = 0; seed < 20'000; ++seed) {
        Dice dice{seed};
        CAPTURE(seed);
        project.room = {{.name = "thing", .shape = shape(dice), .clearance = measure(dice)}};
        std::vector<Finding> findings;
        const auto obstacles = room_obstacles(project, resolved, {}, findings);
        for (const auto& finding : findings) CHECK(finding.code == "bad_obstacle");
        if (!findings.empty()) ++refused;
        for (const auto& obstacle : obstacles) {
            if (!std::ranges::all_of(obstacle.bodies, is_whole)) FAIL("a body that is none");
            ++solid;
        }
        if (obstacles.empty() || seed % 16 != 0) continue;
        for (const auto& near :
             near_places(resolved, room_tests::catalogue(), obstacles, {.with_depth = false})) {
            if (!std::isfinite(near.distance) || near.depth < 0.0) FAIL("no distance");
        }
    }
    CHECK(solid > 500);
    CHECK(refused > 2'000);
}
