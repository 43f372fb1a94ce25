// Whether a frame hangs together.
#include "tests/model/resolve/resolve_support.h"

using model::Axis;
using tests::inches;

namespace {

model::Project box_with_shelf() {
    tests::BoxShape shape;
    shape.shelves = {inches(12)};
    return tests::box_project(shape, "angle 1 x 1 x 1/8", "6063-T52");
}

}  // namespace

TEST_CASE("a box with a shelf hangs together", "[model][connected]") {
    CHECK(tests::count_of(tests::resolved(box_with_shelf()), "not_joined") == 0);
}

TEST_CASE("a shelf above the posts hangs on nothing", "[model][connected]") {
    auto project = box_with_shelf();
    for (auto& plane : project.frames[0].planes) {
        if (plane.axis == Axis::z && plane.position == "12 in") plane.position = "40 in";
    }
    REQUIRE(project != box_with_shelf());
    const auto resolved = tests::resolved(project);
    REQUIRE(tests::count_of(resolved, "not_joined") == 1);
    const auto* finding = tests::first_of(resolved, "not_joined");
    CHECK(finding->severity == model::Severity::error);
    CHECK(finding->concerns.size() == 4);  // the rails of the shelf
}

TEST_CASE("without posts the rings of rails are told apart", "[model][connected]") {
    auto project = box_with_shelf();
    std::erase_if(project.frames[0].members,
                  [](const model::Member& member) { return member.run == Axis::z; });
    CHECK(tests::count_of(tests::resolved(project), "not_joined") == 2);  // of three rings
}
