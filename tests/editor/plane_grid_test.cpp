#include "editor/view/plane_grid.h"

#include "editor/by_name.h"
#include "editor/view/plane_snap.h"
#include "editor/view/sketch_member.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <set>

using namespace editor;
using model::Axis;

namespace {

// A starter's frame as the view's logic needs it, without a window.
struct Fixture {
    Desk desk{tests::test_catalogue()};
    PlaneGrid grid;

    explicit Fixture(StarterKind kind) {
        tests::start_frame(desk, kind);
        desk.ui.view.viewport = {900, 700};
        desk.ui.view.camera =
            engine::fitted(desk.ui.view.camera, engine::bounds_of(scene(desk).solid), {900, 700});
        grid = plane_grid(derived(desk), 0);
    }

    const model::Frame& frame() const { return project_of(desk).frames[0]; }

    glm::dvec2 pixel(const GridNode& node) const {
        const auto at = engine::pixel_of(desk.ui.view.camera, in_room(grid, point_of(grid, node)),
                                         desk.ui.view.viewport);
        REQUIRE(at);
        return *at;
    }

    glm::dvec2 middle(const GridSegment& segment) const {
        return (pixel(segment.from) + pixel(segment.end())) / 2.0;
    }
};

std::size_t plane_named(const PlaneGrid& grid, Axis axis, std::string_view name) {
    const auto* plane = by_name(grid.across(axis), name);
    REQUIRE(plane != nullptr);
    return static_cast<std::size_t>(plane - grid.across(axis).data());
}

// The line on which a starter's member lies.
GridSegment line_of(const PlaneGrid& grid, const model::Member& member) {
    const auto cross = model::across(member.run);
    GridSegment line{.run = member.run};
    for (std::size_t i = 0; i < 2; ++i)
        line.from[model::index_of(cross[i])] = plane_named(grid, cross[i], member.on[i]);
    line.from[model::index_of(member.run)] = plane_named(grid, member.run, member.from);
    line.to = plane_named(grid, member.run, member.to);
    return line;
}

}  // namespace

TEST_CASE("the planes of a frame are a grid of lines and nodes", "[editor][sketch]") {
    const Fixture box(StarterKind::box);  // left, right; front, back; bottom, shelf, top
    CHECK(nodes_of(box.grid).size() == 2 * 2 * 3);
    CHECK(segments_of(box.grid).size() == 6 + 6 + 8);
    CHECK(point_of(box.grid, {0, 0, 0}) == model::Point{0, 0, 0});
}

TEST_CASE("the middle of a line that is seen alone is pointed at", "[editor][sketch]") {
    const Fixture box(StarterKind::box);
    const auto& view = box.desk.ui.view;
    std::size_t found = 0;
    for (const auto& segment : segments_of(box.grid)) {
        const auto at = segment_at(box.grid, view, box.middle(segment), 6.0);
        REQUIRE(at);
        if (*at == segment) ++found;
    }
    CHECK(found >= segments_of(box.grid).size() - 2);
}

TEST_CASE("far from every line and node nothing is pointed at", "[editor][sketch]") {
    const Fixture box(StarterKind::box);
    CHECK_FALSE(segment_at(box.grid, box.desk.ui.view, {2.0, 2.0}, 9.0));
    CHECK_FALSE(node_at(box.grid, box.desk.ui.view, {2.0, 2.0}, 9.0));
}

TEST_CASE("a node is pointed at where it shows", "[editor][sketch]") {
    const Fixture box(StarterKind::box);
    const GridNode node{1, 0, 2};
    CHECK(node_at(box.grid, box.desk.ui.view, box.pixel(node), 9.0) == node);
}

TEST_CASE("a pull across nodes covers all segments up to the pointer", "[editor][sketch]") {
    const Fixture box(StarterKind::box);
    const GridSegment lower{Axis::z, {1, 0, 0}, 1};
    const GridSegment upper{Axis::z, {1, 0, 1}, 2};
    const GridSegment whole{Axis::z, {1, 0, 0}, 2};
    const auto& view = box.desk.ui.view;
    CHECK(stretch_to(box.grid, view, lower, {}, box.middle(upper)) == whole);
    CHECK(stretch_to(box.grid, view, lower, GridNode{1, 0, 0}, box.middle(upper)) == whole);
    CHECK(stretch_to(box.grid, view, lower, GridNode{1, 0, 1}, box.middle(upper)) == upper);
    CHECK(whole_line(box.grid, upper) == whole);
}

TEST_CASE("a place along a line is the one under the pointer", "[editor][sketch]") {
    const Fixture box(StarterKind::box);
    const GridSegment rail{Axis::x, {0, 0, 2}, 1};
    const auto place = place_along(box.grid, box.desk.ui.view, rail, box.pixel({0, 0, 2}));
    REQUIRE(place);
    CHECK(static_cast<double>(*place) == Approx(0.0).margin(1e5));
    const auto end = place_along(box.grid, box.desk.ui.view, rail, box.pixel({1, 0, 2}));
    REQUIRE(end);
    CHECK(static_cast<double>(*end) ==
          Approx(static_cast<double>(box.grid.planes[0][1].at)).margin(1e5));
}

TEST_CASE("the space in front is the first one under the pointer", "[editor][sketch]") {
    Fixture box(StarterKind::box);
    const auto front = (box.pixel({0, 0, 0}) + box.pixel({1, 0, 1})) / 2.0;
    const auto cells = cells_under(box.grid, box.desk.ui.view, front);
    REQUIRE_FALSE(cells.empty());
    CHECK(cells.front() == GridCell{{0, 0, 0}});
}

TEST_CASE("a member that lies on a line is found on each of its segments", "[editor][sketch]") {
    const Fixture box(StarterKind::box);
    for (const auto& member : box.frame().members) {
        const auto line = line_of(box.grid, member);
        INFO(member.name);
        const auto* found = member_on(box.frame(), box.grid, line);
        REQUIRE(found != nullptr);
        CHECK(found->name == member.name);
    }
}

TEST_CASE("a new member lies as the starter laid the one that was there", "[editor][sketch]") {
    for (const auto kind : {StarterKind::box, StarterKind::stepped}) {
        Fixture starter(kind);
        std::size_t same = 0;
        for (const auto& member : starter.frame().members) {
            auto frame = starter.frame();
            std::erase_if(frame.members,
                          [&](const model::Member& other) { return other.name == member.name; });
            const auto again =
                new_member(frame, starter.grid, line_of(starter.grid, member), member.stock);
            INFO(member.name);
            CHECK(again.run == member.run);
            CHECK(again.on == member.on);
            CHECK(again.from == member.from);
            CHECK(again.to == member.to);
            CHECK(again.seat == member.seat);
            // In line with the well's top a leg may go up or down: the starter says why it does.
            const bool is_beside_well = member.name.find("well top") != std::string::npos;
            if (!is_beside_well) CHECK(again.legs == member.legs);
            if (again.name == member.name) ++same;
        }
        CHECK(same * 4 >= starter.frame().members.size() * 3);
    }
}

TEST_CASE("in a frame without bays legs point to its middle", "[editor][sketch]") {
    const Fixture bare(StarterKind::planes);
    REQUIRE(bare.frame().members.empty());
    REQUIRE(bare.frame().bays.empty());
    for (const auto& segment : segments_of(bare.grid)) {
        const auto member = new_member(bare.frame(), bare.grid, segment, "x");
        const auto cross = model::across(member.run);
        for (std::size_t i = 0; i < 2; ++i) {
            const auto c = model::index_of(cross[i]);
            const std::size_t last = bare.grid.planes[c].size() - 1;
            if (segment.from[c] == 0) CHECK(member.legs[i] == model::Sense::plus);
            if (segment.from[c] == last) CHECK(member.legs[i] == model::Sense::minus);
        }
        CHECK(member.seat == model::Seat::heel);
    }
}

TEST_CASE("a plane comes to rest at a snap within reach, else on a mark of the tape",
          "[editor][sketch]") {
    const engine::TapeStyle tape{.denominator = 16};
    const std::vector<PlaneSnap> snaps{{101'000'000, "half-way"}, {150'000'000, "at a wall"}};
    const model::Nm reach = 3'000'000;
    CHECK(snapped(99'500'000, snaps, reach, tape) == PlanePlace{101'000'000, "half-way"});
    CHECK(snapped(148'000'001, snaps, reach, tape) == PlanePlace{150'000'000, "at a wall"});
    const auto mark = snapped(120'000'000, snaps, reach, tape);
    CHECK(mark.words.empty());
    CHECK(mark.at % (engine::Length::nm_per_inch / 16) == 0);
    CHECK(std::abs(mark.at - 120'000'000) <= engine::Length::nm_per_inch / 32);
}

TEST_CASE("a plane snaps beside an obstacle by its clearance, on either side", "[editor][sketch]") {
    Fixture box(StarterKind::box);
    model::Obstacle well{
        .name = "tank",
        .shape = model::BoxObstacle{{"30 in", "0", "0"}, {"40 in", "9 in", "9 in"}},
        .clearance = "1/2 in"};
    REQUIRE(submit(box.desk, change_of(model::PutObstacle{well, {}})));
    const auto snaps = plane_snaps(derived(box.desk), 0, Axis::x, {});
    std::set<double> inches;
    for (const auto& snap : snaps) {
        if (snap.words.find("tank") == std::string::npos) continue;
        inches.insert(static_cast<double>(snap.at) / 25.4e6);
    }
    REQUIRE(inches.size() == 2);
    CHECK(*inches.begin() == Approx(29.5));
    CHECK(*inches.rbegin() == Approx(40.5));
}
