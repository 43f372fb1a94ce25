#include "model/room/frame_distances.h"

#include "engine/geometry/convex_distance.h"
#include "model/resolve/resolve.h"

#include "tests/model/room/room_projects.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace {

using namespace model;
using room_tests::cabinet;
using room_tests::catalogue;

// Two cabinets, the second one to the right of the first by so much, and set back.
Project two_cabinets(const std::string& gap, const std::string& back = "0") {
    auto project = cabinet({"0", "0", "0"});
    auto second = project.frames[0];
    second.name = "neighbour";
    second.origin = {"36 in + " + gap, back, "0"};
    project.frames.push_back(second);
    return project;
}

// By comparing every body of one with every body of the other.
double by_brute_force(const Resolved& resolved) {
    const ThingBodies bodies{resolved, catalogue()};
    double least = std::numeric_limits<double>::max();
    const auto things = room_things(resolved, catalogue());
    for (const auto& one : things) {
        if (resolved.pieces[one.piece].frame != 0) continue;
        for (const auto& other : things) {
            if (resolved.pieces[other.piece].frame != 1) continue;
            for (const auto& p : bodies.of(one)) {
                for (const auto& q : bodies.of(other))
                    least = std::min(least, engine::nearest(p, q).distance);
            }
        }
    }
    return least;
}

}  // namespace

TEST_CASE("the distance of two frames is the least of all their pieces and fasteners",
          "[model][room]") {
    for (const char* back : {"0", "18 1/2 in", "40 in"}) {
        const auto resolved = resolve(two_cabinets("1 in", back), catalogue());
        const auto found = frame_distances(resolved, catalogue(), 2000.0);
        INFO(back);
        REQUIRE(found.size() == 1);
        CHECK(found[0].distance == Approx(by_brute_force(resolved)).margin(1e-9));
        CHECK(found[0].distance > 0.0);
        const auto& [one, other] = found[0].at;
        CHECK(std::hypot(other[0] - one[0], other[1] - one[1], other[2] - one[2]) ==
              Approx(found[0].distance).margin(1e-9));
        CHECK(resolved.pieces[found[0].things[0].piece].frame == 0);
        CHECK(resolved.pieces[found[0].things[1].piece].frame == 1);
    }
}

TEST_CASE("frames that stand in each other are no distance apart", "[model][room]") {
    const auto resolved = resolve(two_cabinets("-1/2 in"), catalogue());
    const auto found = frame_distances(resolved, catalogue(), 10.0);
    REQUIRE(found.size() == 1);
    CHECK(found[0].distance == 0.0);
}

TEST_CASE("frames further apart than is looked for, and a frame alone, have no distance",
          "[model][room]") {
    CHECK(frame_distances(resolve(two_cabinets("20 in"), catalogue()), catalogue(), 300.0).empty());
    CHECK(frame_distances(resolve(cabinet({"0", "0", "0"}), catalogue()), catalogue(), 300.0)
              .empty());
    auto project = two_cabinets("1 in");
    project.frames[1].members.clear();
    CHECK(frame_distances(resolve(project, catalogue()), catalogue(), 300.0).empty());
}
