#include "model/book/line_drawing.h"

#include "engine/geometry/vectors.h"
#include "model/book/leader_labels.h"
#include "model/book/paint_order.h"

#include "tests/model/book/book_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace {

model::BodyOfPiece box(model::Index piece, const engine::Vector& lo, const engine::Vector& hi) {
    return {piece, engine::convex_body(lo, hi)};
}

double turn(engine::PagePoint a, engine::PagePoint b, engine::PagePoint c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

}  // namespace

TEST_CASE("what stands before something else is painted after it", "[model][book][drawing]") {
    // From the front, smaller y is nearer.
    const std::vector<model::BodyOfPiece> bodies{box(0, {0, 0, 0}, {10, 1, 10}),
                                                 box(1, {2, 5, 2}, {8, 6, 8}),
                                                 box(2, {0, 9, 0}, {10, 10, 10})};
    CHECK(model::paint_order(bodies, model::front_sight) == std::vector<std::size_t>{2, 1, 0});
    CHECK(model::piece_at(model::seen_bodies(bodies, model::front_sight), {5, 5}) == 0U);
}

TEST_CASE("three bars that hide one another in a ring are all painted, each once",
          "[model][book][drawing]") {
    // Seen from where all coordinates grow, each lies before the one that is told before it.
    const std::vector<model::BodyOfPiece> bodies{
        box(0, {0, 1, 0}, {3, 2, 1}), box(1, {0, 0, 1}, {1, 3, 2}), box(2, {1, 0, 0}, {2, 1, 3})};
    model::Sight sight;
    sight.right = engine::unit({-1, 1, 0});
    sight.towards = engine::unit({1, 1, 1});
    sight.up = engine::cross(sight.towards, sight.right);
    auto order = model::paint_order(bodies, sight);
    REQUIRE(order.size() == 3);
    std::sort(order.begin(), order.end());
    CHECK(order == std::vector<std::size_t>{0, 1, 2});
}

TEST_CASE("where two walls of a piece go over into each other there is no line",
          "[model][book][drawing]") {
    // An angle in two parts, seen onto its broad leg: one rectangle, without a seam.
    const std::vector<model::BodyOfPiece> angle{box(7, {0, 0, 0}, {20, 2, 30}),
                                                box(7, {0, 2, 0}, {2, 20, 30})};
    const auto left = model::seen_bodies(angle, model::left_sight);
    double level_and_upright = 0.0;
    for (const auto& body : left) {
        for (const auto& line : body.outlines) {
            for (std::size_t i = 0; i + 1 < line.size(); ++i) {
                // The seam would be an upright line at y = 2, which is -2 on the sheet.
                const bool is_seam = line[i][0] == Approx(-2.0) && line[i + 1][0] == Approx(-2.0);
                CHECK_FALSE(is_seam);
                level_and_upright +=
                    std::abs(line[i][0] - line[i + 1][0]) + std::abs(line[i][1] - line[i + 1][1]);
            }
        }
    }
    CHECK(level_and_upright == Approx(2 * 20.0 + 2 * 30.0));
}

TEST_CASE("a piece that is hidden has no place to point at", "[model][book][drawing]") {
    const std::vector<model::BodyOfPiece> bodies{box(0, {0, 0, 0}, {10, 1, 10}),
                                                 box(1, {2, 5, 2}, {8, 6, 8})};
    const auto seen = model::seen_bodies(bodies, model::front_sight);
    CHECK_FALSE(model::places_to_point_at(seen, 0).empty());
    CHECK(model::places_to_point_at(seen, 1).empty());
    CHECK_FALSE(model::is_hidden(seen, 0));
    CHECK(model::is_hidden(seen, 1));
}

TEST_CASE("a hidden piece is drawn dashed over what hides it, and pointed at where it is",
          "[model][book][drawing]") {
    const std::vector<model::BodyOfPiece> bodies{box(0, {0, 0, 0}, {10, 1, 10}),
                                                 box(1, {2, 5, 2}, {8, 6, 8})};
    const auto seen = model::seen_bodies(bodies, model::front_sight);
    engine::Page page{engine::Paper::a4};
    model::draw_hidden(page, seen, {.origin = {50, 50}, .scale = 2.0}, 1);
    REQUIRE(page.items().size() == 1);
    const auto* drawn = std::get_if<engine::DrawnLines>(&page.items().front());
    REQUIRE(drawn != nullptr);
    CHECK(drawn->pen.width == engine::wide_width);
    double length = 0.0;
    for (const auto& [from, to] : drawn->lines) {
        for (const auto& at : {from, to}) {
            CHECK((at.x > 53.99 && at.x < 66.01));
            CHECK((at.y > 33.99 && at.y < 46.01));
        }
        CHECK(std::hypot(to.x - from.x, to.y - from.y) < 3.0);
        length += std::hypot(to.x - from.x, to.y - from.y);
    }
    // Two thirds of the four sides of 12 mm and a little more, since each ends with a dash.
    CHECK(length > 32.0);
    CHECK(length < 40.0);
    const auto places = model::places_of_hidden(seen, 1);
    REQUIRE_FALSE(places.empty());
    CHECK(places.front()[0] == Approx(5.0));
    CHECK(places.front()[1] == Approx(5.0));
}

TEST_CASE("what is pointed at is seen there, on all samples", "[model][book][drawing][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto job = tests::book_job(tests::sample(name));
        std::size_t found = 0;
        for (model::Index f = 0; f < job.resolved.frames.size(); ++f) {
            const auto bodies = model::frame_bodies(job.resolved, f);
            const auto seen = model::seen_bodies(bodies, model::corner_sight());
            CHECK(seen.size() == bodies.size());
            for (const auto& it : bodies) {
                for (const auto& at : model::places_to_point_at(seen, it.piece)) {
                    ++found;
                    CHECK(model::piece_at(seen, at) == it.piece);
                }
            }
        }
        CHECK(found > 0);
    }
}

TEST_CASE("lines that lead to names do not cross", "[model][book][labels]") {
    engine::Page page{engine::Paper::a4};
    const engine::PageBox picture{50, 50, 100, 100};
    std::vector<model::LeaderLabel> labels;
    for (int i = 0; i < 40; ++i) {
        labels.push_back({{{55.0 + (i * 37) % 90, 55.0 + (i * 53) % 90}}, "A" + std::to_string(i)});
    }
    CHECK(model::draw_leader_labels(page, labels, picture) == labels.size());
    std::vector<std::array<engine::PagePoint, 2>> lines;
    for (const auto& item : page.items()) {
        if (const auto* drawn = std::get_if<engine::DrawnLines>(&item))
            lines.insert(lines.end(), drawn->lines.begin(), drawn->lines.end());
    }
    REQUIRE(lines.size() == labels.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        for (std::size_t k = i + 1; k < lines.size(); ++k) {
            const auto& [a, b] = lines[i];
            const auto& [c, d] = lines[k];
            const bool do_cross =
                turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
            CHECK_FALSE(do_cross);
        }
    }
}
