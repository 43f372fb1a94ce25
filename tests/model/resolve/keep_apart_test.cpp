// Set fasteners as bodies in space, and laps whose fasteners are moved out of one another's way.
#include "model/resolve/keep_apart.h"

#include "model/resolve/fastener_body.h"

#include "tests/model/resolve/resolve_support.h"

using model::Axis;
using tests::inches;
using tests::inches_64;

namespace {

constexpr std::uint8_t along_x = 0;
constexpr std::uint8_t along_y = 1;

// 1/8 in rivet in two plates of 1/8 in: shank 1/4 in long, tail 1/8 in long and 3/16 in across.
model::FastenerBody rivet_at(model::Point at, std::uint8_t axis) {
    const auto& catalogue = tests::shipped_catalogue();
    const auto* rivet = model::find_rivet(catalogue, "blind rivet 1/8");
    const model::FastenerSpec spec{
        .index = static_cast<model::Index>(rivet - catalogue.rivets.data()), .grip = 0};
    return {.shape = model::body_shape(catalogue, spec, inches_64(16), inches_64(8)),
            .at = at,
            .axis = axis,
            .drive = 1,
            .grip = inches_64(16)};
}

model::Project small_angle_box(const char* rivet) {
    tests::BoxShape shape;
    shape.width = inches(24);
    shape.depth = inches(16);
    shape.height = inches(20);
    auto project = tests::box_project(shape, "angle 3/4 x 3/4 x 1/8", "6063-T52");
    project.shop.fastener = rivet;
    return project;
}

}  // namespace

TEST_CASE("side by side the heads of two rivets are what meets", "[model][keep_apart]") {
    const auto rivet = rivet_at({0, 0, 0}, along_x);
    const auto head = 2 * rivet.shape.head_radius;
    CHECK(model::bodies_meet(rivet, rivet_at({0, 0, head - 1}, along_x)));
    CHECK_FALSE(model::bodies_meet(rivet, rivet_at({0, 0, head}, along_x)));
    // One whole body further along the axis the first head lies beyond the other's tail.
    CHECK_FALSE(model::bodies_meet(rivet, rivet_at({inches(1), 0, 0}, along_x)));
}

TEST_CASE("two tails in the corner of an angle meet until one is a tail's width further on",
          "[model][keep_apart]") {
    // Driven along x and along y from two outer faces; both tails stand between 16/64 and 24/64 in.
    const auto across = rivet_at({0, inches_64(20), 0}, along_x);
    const auto tail_width = inches_64(12);
    CHECK(model::bodies_meet(across, rivet_at({inches_64(20), 0, 0}, along_y)));
    CHECK(model::bodies_meet(across, rivet_at({inches_64(20), 0, tail_width - 1}, along_y)));
    CHECK_FALSE(model::bodies_meet(across, rivet_at({inches_64(20), 0, tail_width}, along_y)));
}

TEST_CASE("round tails that pass each other's corner do not meet where their boxes would",
          "[model][keep_apart]") {
    // The second tail ends 5/64 in short of the first one's axis plane, where that is only
    // 2 sqrt(6^2 - 5^2) = 6.63/64 in wide instead of 12.
    const auto first = rivet_at({0, inches_64(29), 0}, along_x);
    const auto off = [](model::Nm z) { return rivet_at({inches_64(20), 0, z}, along_y); };
    CHECK(model::bodies_meet(first, off(inches_64(9))));
    CHECK_FALSE(model::bodies_meet(first, off(inches_64(10))));
}

TEST_CASE("in the corners of small angle the rivets of two legs are set past each other",
          "[model][keep_apart]") {
    const auto project = small_angle_box("blind rivet 3/32");
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "fasteners_meet") == 0);
    const auto& catalogue = tests::shipped_catalogue();
    std::vector<model::FastenerBody> bodies;
    for (const auto& f : resolved.fasteners) {
        const auto far = f.stack[f.stack_count - 1U].thickness;
        bodies.push_back(
            {model::body_shape(catalogue, f.spec, f.grip, far), f.at, f.axis, f.drive, f.grip});
    }
    for (std::size_t i = 0; i < bodies.size(); ++i) {
        for (std::size_t j = i + 1; j < bodies.size(); ++j) {
            CAPTURE(i, j);
            CHECK_FALSE(model::bodies_meet(bodies[i], bodies[j]));
        }
    }
}

TEST_CASE("setting rivets past each other loses none of them", "[model][keep_apart]") {
    const auto resolved = tests::resolved(small_angle_box("blind rivet 3/32"));
    model::Index wanted = 0;
    for (const auto& joint : resolved.joints) wanted += joint.wanted;
    const auto few = tests::count_of(resolved, "too_few_fasteners");
    CHECK(resolved.fasteners.size() == wanted - static_cast<std::size_t>(few));
}

TEST_CASE("laps without freedom stay where they are and are named", "[model][keep_apart]") {
    const auto project = small_angle_box("blind rivet 3/32");
    const auto& catalogue = tests::shipped_catalogue();
    const auto resolved = tests::resolved(project);
    // Two laps on one rail, each with one centre that may lie on a single mark.
    const auto joint_of = [&](std::uint8_t normal) -> const model::Joint& {
        for (const auto& joint : resolved.joints) {
            const auto& lower = resolved.pieces[joint.pieces[1]];
            if (lower.run == Axis::y && joint.normal_axis == normal) return joint;
        }
        FAIL("no such joint");
        return resolved.joints[0];
    };
    std::vector<model::LapPlan> plans;
    std::vector<model::Centres> centres;
    for (const std::uint8_t normal : {std::uint8_t{0}, std::uint8_t{2}}) {
        const auto& joint = joint_of(normal);
        model::LapPlan plan;
        plan.lap = {.upper = joint.pieces[0],
                    .lower = joint.pieces[1],
                    .upper_wall = joint.walls[0],
                    .lower_wall = joint.walls[1],
                    .normal_axis = joint.normal_axis,
                    .towards_lower = 1,
                    .rect = joint.lap};
        plan.fastener.spec = resolved.fasteners[joint.first_fastener].spec;
        plan.layout.pattern = model::Pattern::row;
        plan.layout.count = 1;
        plan.layout.marks.step = inches_64(1);
        // Across the rail both tails stand in its corner; the post's heel and that of the x-rail,
        // which is set in by 8/64, are what the marks along it count from.
        const model::Nm along = normal == 0 ? 24 : 16;
        plan.layout.least = plan.layout.most = {12, along};
        plans.push_back(plan);
        centres.push_back({{inches_64(12), inches_64(along)}});
    }
    const auto before = centres;
    const std::vector<model::Index> alike{0};
    using Pairs = std::vector<model::LapPair>;
    CHECK(model::keep_apart(catalogue, plans, resolved.pieces, alike, centres) == Pairs{{0, 1}});
    CHECK(centres == before);

    plans[1].layout.most[1] = 40;  // along the rail
    CHECK(model::keep_apart(catalogue, plans, resolved.pieces, alike, centres).empty());
    CHECK(centres[0] == before[0]);
    CHECK(centres[1] != before[1]);
}
