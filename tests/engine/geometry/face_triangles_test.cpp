#include "engine/geometry/face_triangles.h"

#include "engine/geometry/unit_circle.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <random>
#include <utility>

namespace {

using engine::FacePoint;

struct Face {
    std::vector<FacePoint> points;
    std::vector<std::uint32_t> loop_ends;
};

void add_loop(Face& face, const std::vector<FacePoint>& loop) {
    face.points.insert(face.points.end(), loop.begin(), loop.end());
    face.loop_ends.push_back(static_cast<std::uint32_t>(face.points.size()));
}

void add_circle(Face& face, double x, double y, double radius) {
    std::vector<FacePoint> loop;
    const auto& circle = engine::unit_circle();
    for (auto corner = circle.rbegin(); corner != circle.rend(); ++corner)
        loop.push_back({x + radius * (*corner)[0], y + radius * (*corner)[1]});
    add_loop(face, loop);
}

Face rectangle(double width, double height) {
    Face face;
    add_loop(face, {{0.0, 0.0}, {width, 0.0}, {width, height}, {0.0, height}});
    return face;
}

double twice_area(const FacePoint& a, const FacePoint& b, const FacePoint& c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

double area_of_loops(const Face& face) {
    double sum = 0.0;
    std::size_t first = 0;
    for (const auto end : face.loop_ends) {
        for (std::size_t i = first; i < end; ++i) {
            const auto& p = face.points[i];
            const auto& q = face.points[i + 1 == end ? first : i + 1];
            sum += (p[0] * q[1] - p[1] * q[0]) / 2.0;
        }
        first = end;
    }
    return sum;
}

// Number, direction and area of the triangles, and that each edge inside lies between two.
void check_cut(const Face& face) {
    engine::FaceTriangles cutter;
    const auto triangles = cutter.of(face.points, face.loop_ends);
    REQUIRE(triangles.size() == 3 * (face.points.size() + 2 * (face.loop_ends.size() - 1) - 2));
    double area = 0.0;
    std::size_t turned_over = 0;
    std::map<std::pair<std::uint32_t, std::uint32_t>, int> runs;
    for (std::size_t i = 0; i < triangles.size(); i += 3) {
        const auto own = twice_area(face.points[triangles[i]], face.points[triangles[i + 1]],
                                    face.points[triangles[i + 2]]);
        if (own <= 0.0) ++turned_over;
        area += own / 2.0;
        for (std::size_t k = 0; k < 3; ++k) ++runs[{triangles[i + k], triangles[i + (k + 1) % 3]}];
    }
    CHECK(turned_over == 0);
    CHECK(area == Approx(area_of_loops(face)).epsilon(1e-12));
    std::size_t outside = 0;
    std::size_t repeated = 0;
    for (const auto& [edge, count] : runs) {
        if (count != 1) ++repeated;
        if (!runs.contains({edge.second, edge.first})) ++outside;
    }
    CHECK(repeated == 0);
    CHECK(outside == face.points.size());
}

}  // namespace

TEST_CASE("a rectangle is cut into two triangles", "[engine][face_triangles]") {
    check_cut(rectangle(100.0, 25.0));
}

TEST_CASE("holes in a row at equal height are cut cleanly", "[engine][face_triangles]") {
    auto face = rectangle(914.4, 25.4);
    for (int i = 0; i < 40; ++i) add_circle(face, 10.0 + 22.5 * i, 12.7, 2.45);
    check_cut(face);
}

TEST_CASE("holes straight above one another are cut cleanly", "[engine][face_triangles]") {
    auto face = rectangle(200.0, 50.0);
    for (int i = 0; i < 5; ++i) {
        add_circle(face, 20.0 + 30.0 * i, 10.0, 2.45);
        add_circle(face, 20.0 + 30.0 * i, 25.0, 2.45);
        add_circle(face, 20.0 + 30.0 * i, 40.0, 2.45);
    }
    check_cut(face);
}

TEST_CASE("holes that share part of their width are cut cleanly", "[engine][face_triangles]") {
    auto face = rectangle(100.0, 25.4);
    add_circle(face, 20.0, 6.0, 2.5);
    add_circle(face, 23.0, 16.0, 2.5);
    add_circle(face, 25.0, 9.0, 2.0);
    add_circle(face, 50.0, 12.0, 10.0);
    add_circle(face, 61.0, 4.0, 2.0);
    add_circle(face, 61.0, 20.0, 2.0);
    check_cut(face);
}

TEST_CASE("an outline with bays and spikes is cut cleanly", "[engine][face_triangles]") {
    Face face;
    add_loop(face, {{0.0, 0.0},
                    {30.0, 5.0},
                    {10.0, 10.0},
                    {60.0, 12.0},
                    {60.0, 0.0},
                    {80.0, 0.0},
                    {80.0, 40.0},
                    {70.0, 40.0},
                    {70.0, 20.0},
                    {50.0, 20.0},
                    {50.0, 40.0},
                    {20.0, 30.0},
                    {40.0, 18.0},
                    {0.0, 16.0},
                    {5.0, 8.0}});
    add_circle(face, 74.0, 10.0, 3.0);
    add_circle(face, 75.0, 30.0, 3.0);
    add_circle(face, 44.0, 30.0, 2.0);
    check_cut(face);
}

TEST_CASE("random holes in a plate are cut cleanly", "[engine][face_triangles]") {
    const auto seed = GENERATE(range(0U, 150U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    const auto pick = [&random](double low, double high, unsigned steps) {
        return low + (high - low) * static_cast<double>(random() % (steps + 1)) / steps;
    };
    auto face = rectangle(120.0, 60.0);
    std::vector<std::array<double, 3>> circles;
    // A coarse raster, so that many holes share rows and columns.
    for (int i = 0; i < 60; ++i) {
        const double x = pick(8.0, 112.0, 26);
        const double y = pick(8.0, 52.0, 11);
        const double r = pick(1.0, 7.0, 6);
        bool is_free = true;
        for (const auto& c : circles)
            is_free = is_free && std::hypot(c[0] - x, c[1] - y) > c[2] + r + 0.01;
        if (!is_free) continue;
        circles.push_back({x, y, r});
        add_circle(face, x, y, r);
    }
    check_cut(face);
}

TEST_CASE("random star-shaped outlines are cut cleanly", "[engine][face_triangles]") {
    const auto seed = GENERATE(range(0U, 200U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    const auto points = static_cast<unsigned>(3U + random() % 40U);
    std::vector<FacePoint> loop;
    for (unsigned i = 0; i < points; ++i) {
        const double angle = 6.283185307179586 * i / points;
        const double radius = 10.0 + 40.0 * static_cast<double>(random() % 1000U) / 1000.0;
        loop.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    Face face;
    add_loop(face, loop);
    add_circle(face, 0.0, 0.0, 3.0);
    check_cut(face);
}

TEST_CASE("loops that cross give no triangles and no crash", "[engine][face_triangles]") {
    const auto seed = GENERATE(range(0U, 150U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    Face face;
    std::vector<FacePoint> loop;
    for (unsigned i = 0; i < 12U; ++i) {
        const auto x = static_cast<double>(random() % 7U);
        const auto y = static_cast<double>(random() % 7U);
        loop.push_back({x, y});
    }
    add_loop(face, loop);
    add_loop(face, {{1.0, 1.0}, {1.0, 3.0}, {3.0, 3.0}});
    engine::FaceTriangles cutter;
    const auto triangles = cutter.of(face.points, face.loop_ends);
    const bool is_none_or_full = triangles.empty() || triangles.size() == 3 * (15 + 2 - 2);
    CHECK(is_none_or_full);
    CHECK(cutter.of({}, {}).empty());
}
