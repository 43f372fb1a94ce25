#include "engine/drawing/page.h"

#include "tests/engine/drawing/sample_pages.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace engine;

namespace {

template <class Item>
const Item& only(const Page& page) {
    REQUIRE(page.items().size() == 1);
    const auto* item = std::get_if<Item>(&page.items()[0]);
    REQUIRE(item != nullptr);
    return *item;
}

}  // namespace

TEST_CASE("a page keeps what was drawn on it", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_line({10, 20}, {110, 20}, {.width = wide_width, .dash = Dash::dashed});
    const auto& lines = only<DrawnLines>(page);
    CHECK(lines.lines[0] == std::array<PagePoint, 2>{{{10, 20}, {110, 20}}});
    CHECK(lines.pen == Pen{.width = 0.5, .dash = Dash::dashed});
    CHECK(page.size() == PaperSize{210, 297});
}

TEST_CASE("pages that are drawn alike are equal", "[engine][drawing]") {
    CHECK(tests::sample_document() == tests::sample_document());
    Page other = tests::sample_page(paper_size(Paper::a4));
    CHECK(other == tests::sample_page(paper_size(Paper::a4)));
    other.draw_line({0, 0}, {0, 0.01});
    CHECK(!(other == tests::sample_page(paper_size(Paper::a4))));
}

TEST_CASE("arcs are kept as seen, anticlockwise", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_arc({50, 50}, 10, 90, -90);
    const auto& arc = only<DrawnArc>(page);
    CHECK(arc.from_deg == 0);
    CHECK(arc.sweep_deg == 90);
    CHECK(point_on_arc(arc, 90).x == Approx(50));
    CHECK(point_on_arc(arc, 90).y == Approx(40));
    Page more{Paper::a4};
    more.draw_arc({50, 50}, 10, -450, 1000);
    CHECK(only<DrawnArc>(more).from_deg == 270);
    CHECK(only<DrawnArc>(more).sweep_deg == 360);
}

TEST_CASE("a text upon a hatch gets a ground as large as it is", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_text({100, 50}, "offcut",
                   {.size = 4, .anchor = TextAnchor::end, .turned_deg = 90, .has_ground = true});
    REQUIRE(page.items().size() == 2);
    const auto& ground = std::get<DrawnPath>(page.items()[0]);
    CHECK(ground.paint == filled(Ink::white));
    const double width = text_width("offcut", 4);
    // Turned to read upwards and ending at the place, it hangs below it.
    CHECK(ground.points[0].x == Approx(100 - capital_height(4) - 1));
    CHECK(ground.points[0].y == Approx(50 + width + 1));
    CHECK(ground.points[2].x == Approx(101));
    CHECK(ground.points[2].y == Approx(49));
}

TEST_CASE("what has no extent draws nothing and is no fault", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_polyline({});
    page.draw_polyline({{1, 1}});
    page.draw_polygon({});
    page.draw_text({10, 10}, "");
    page.draw_arc({10, 10}, 5, 30, 0);
    page.draw_hatch({10, 10, 0, 20});
    CHECK(page.items().empty());
    CHECK(!page.fault());
}

TEST_CASE("a number that is none is a fault of the page", "[engine][drawing]") {
    const double wrong = GENERATE(std::nan(""), std::numeric_limits<double>::infinity(),
                                  -std::numeric_limits<double>::infinity(), 1e300);
    CAPTURE(wrong);
    const auto is_fault = [](auto draw) {
        Page page{Paper::a4};
        draw(page);
        return page.items().empty() && page.fault().has_value();
    };
    CHECK(is_fault([&](Page& p) { p.draw_line({0, wrong}, {1, 1}); }));
    CHECK(is_fault([&](Page& p) { p.draw_line({0, 0}, {1, 1}, {.width = wrong}); }));
    CHECK(is_fault([&](Page& p) { p.draw_polyline({{0, 0}, {wrong, 1}}); }));
    CHECK(is_fault([&](Page& p) { p.draw_polygon({{0, 0}, {1, 1}, {wrong, 1}}); }));
    CHECK(is_fault([&](Page& p) { p.draw_rectangle({0, 0, wrong, 1}); }));
    CHECK(is_fault([&](Page& p) { p.draw_circle({0, 0}, wrong); }));
    CHECK(is_fault([&](Page& p) { p.draw_circle({0, 0}, 1, {.pen = Pen{.width = wrong}}); }));
    CHECK(is_fault([&](Page& p) { p.draw_arc({0, 0}, 1, wrong, 90); }));
    CHECK(is_fault([&](Page& p) { p.draw_arc({0, 0}, 1, 0, wrong); }));
    CHECK(is_fault([&](Page& p) { p.draw_hatch({0, 0, 10, 10}, {.spacing = wrong}); }));
    CHECK(is_fault([&](Page& p) { p.draw_hatch({0, wrong, 10, 10}); }));
    CHECK(is_fault([&](Page& p) { p.draw_text({wrong, 0}, "A1"); }));
    CHECK(is_fault([&](Page& p) { p.draw_text({0, 0}, "A1", {.size = wrong}); }));
    CHECK(is_fault([&](Page& p) { p.draw_text({0, 0}, "A1", {.turned_deg = wrong}); }));
    CHECK(is_fault([&](Page& p) { p.draw_clipped({0, 0, 1, wrong}, [] {}); }));
}

TEST_CASE("a size of nothing, and a hatch too dense to print, are faults", "[engine][drawing]") {
    const auto is_fault = [](auto draw) {
        Page page{Paper::a4};
        draw(page);
        return page.items().empty() && page.fault().has_value();
    };
    CHECK(is_fault([](Page& p) { p.draw_line({0, 0}, {1, 1}, {.width = 0}); }));
    CHECK(is_fault([](Page& p) { p.draw_rectangle({0, 0, -1, 1}); }));
    CHECK(is_fault([](Page& p) { p.draw_circle({0, 0}, -2); }));
    CHECK(is_fault([](Page& p) { p.draw_text({0, 0}, "A1", {.size = -3}); }));
    CHECK(is_fault([](Page& p) { p.draw_hatch({0, 0, 1, 1}, {.spacing = 0.1}); }));
    Page dense{Paper::a4};
    dense.draw_hatch({0, 0, 1, 1}, {.spacing = least_hatch_spacing});
    CHECK(!dense.fault());
}

TEST_CASE("the first fault of a page is the one it tells", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_circle({0, 0}, -2);
    page.draw_text({0, std::nan("")}, "A1");
    REQUIRE(page.fault());
    CHECK(page.fault()->rfind("a circle cannot be drawn", 0) == 0);
}
