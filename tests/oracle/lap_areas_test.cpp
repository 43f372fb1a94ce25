// Else it moves all corners onto a grid, coarse for a frame of some metres.
#define BOOST_GEOMETRY_NO_ROBUSTNESS

#include "model/schedule/pieces_json.h"

#include "tests/oracle/oracle_projects.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace {

namespace bg = boost::geometry;
using Flat = bg::model::d2::point_xy<double>;
using Polygon = bg::model::polygon<Flat>;
using Json = nlohmann::json;

double dot(const Json& a, const Json& b) {
    double sum = 0.0;
    for (std::size_t i = 0; i < 3; ++i) sum += a[i].get<double>() * b[i].get<double>();
    return sum;
}

// A wall's outline seen along one axis of the room.
Polygon seen_along(const Json& plate, std::size_t axis) {
    Polygon polygon;
    for (const auto& corner : plate["outline"]) {
        std::array<double, 3> at{};
        for (std::size_t i = 0; i < 3; ++i) {
            at[i] = plate["origin"][i].get<double>() +
                    corner[0].get<double>() * plate["u"][i].get<double>() +
                    corner[1].get<double>() * plate["v"][i].get<double>();
        }
        bg::append(polygon.outer(), Flat{at[(axis + 1) % 3], at[(axis + 2) % 3]});
    }
    bg::correct(polygon);
    return polygon;
}

std::vector<Polygon> common_part(const Json& a, const Json& b, std::size_t axis) {
    std::vector<Polygon> common;
    bg::intersection(seen_along(a, axis), seen_along(b, axis), common);
    return common;
}

double area_of(const std::vector<Polygon>& parts) {
    double area = 0.0;
    for (const auto& part : parts) area += bg::area(part);
    return area;
}

double mm(model::Nm length) { return static_cast<double>(length) / 1e6; }

// Corners of the joint's lap in its frame, one after the other round it.
std::vector<engine::Point> lap_corners(const model::Resolved& resolved, const model::Joint& joint) {
    const std::size_t u = joint.normal_axis == 0 ? 1 : 0;
    const std::size_t v = 3 - joint.normal_axis - u;
    const auto corner = [&](double at_u, double at_v) {
        engine::Point at = joint.lap.lo;
        at[u] = std::llround(at_u);
        at[v] = std::llround(at_v);
        return at;
    };
    std::vector<engine::Point> corners;
    if (joint.polygon != model::no_index) {
        for (const auto& [at_u, at_v] : resolved.lap_polygons[joint.polygon])
            corners.push_back(corner(at_u, at_v));
        return corners;
    }
    const auto& [lo, hi] = joint.lap;
    for (const auto& [at_u, at_v] : {std::array{lo[u], lo[v]}, std::array{hi[u], lo[v]},
                                     std::array{hi[u], hi[v]}, std::array{lo[u], hi[v]}}) {
        corners.push_back(corner(static_cast<double>(at_u), static_cast<double>(at_v)));
    }
    return corners;
}

// The joint's lap in the room, seen along one axis of it.
Polygon lap_seen_along(const model::Resolved& resolved,
                       const model::Joint& joint,
                       std::size_t axis) {
    Polygon polygon;
    for (const auto& corner : lap_corners(resolved, joint)) {
        const auto at = model::to_room(resolved.frames[joint.frame], corner);
        bg::append(polygon.outer(), Flat{mm(at[(axis + 1) % 3]), mm(at[(axis + 2) % 3])});
    }
    bg::correct(polygon);
    return polygon;
}

// How much of the lap lies where the two walls really share metal.
double area_within(const Polygon& lap, const std::vector<Polygon>& common) {
    double area = 0.0;
    for (const auto& part : common) {
        std::vector<Polygon> within;
        bg::intersection(lap, part, within);
        area += area_of(within);
    }
    return area;
}

// A wall of bar that a mitre slants or a cope notches. The lap on it is a rectangle within what the
// two walls share; it leaves out the corner beside the cut.
bool is_cut(const Json& piece, const Json& plate) {
    return piece.contains("cuts") || (plate["outline"].size() > 4 && !piece.contains("joins"));
}

const Json* plate_with(const Json& piece, std::size_t wall) {
    return wall < piece["plates"].size() ? &piece["plates"][wall] : nullptr;
}

// Whether two walls have a face in one plane across an axis of the room.
bool touch(const Json& one, const Json& other, std::size_t axis) {
    const auto faces_of = [&](const Json& plate) {
        const double outer = plate["origin"][axis].get<double>();
        const double thickness = plate["thickness"].get<double>();
        return std::array<double, 2>{outer, outer + plate["n"][axis].get<double>() * thickness};
    };
    for (const double face : faces_of(one))
        for (const double its : faces_of(other))
            if (std::abs(face - its) < 1e-7) return true;
    return false;
}

struct Compared {
    std::size_t laps = 0;
    std::size_t beside_cuts = 0;
    std::size_t oblique = 0;
    double worst = 0.0;
};

// Laps whose walls face the same axis of the room; walls come first in a piece, so that their
// number is their place in the file.
void compare(const tests::OracleJob& job, Compared& sum) {
    const auto file = Json::parse(model::pieces_json(job.project, job.catalogue, job.resolved));
    for (const auto& joint : job.resolved.joints) {
        const auto* one = plate_with(file["pieces"][joint.pieces[0]], joint.walls[0]);
        const auto* other = plate_with(file["pieces"][joint.pieces[1]], joint.walls[1]);
        if (one == nullptr || other == nullptr) continue;
        REQUIRE(std::abs(std::abs(dot((*one)["n"], (*other)["n"])) - 1.0) < 1e-9);
        std::size_t axis = 0;
        while (axis < 2 && std::abs((*one)["n"][axis].get<double>()) < 0.5) ++axis;
        const auto common = common_part(*one, *other, axis);
        const double theirs = area_of(common);
        const Polygon lap = lap_seen_along(job.resolved, joint, axis);
        const double ours = bg::area(lap);
        CAPTURE(joint.pieces[0], joint.pieces[1], static_cast<int>(joint.recipe), ours, theirs);
        if (!touch(*one, *other, axis)) {  // other walls may lie in the gap beside the shim
            CHECK(ours <= theirs * (1.0 + 1e-9));
            continue;
        }
        // A brace may be read from its other end afterwards, from a corner on a whole nanometre.
        const double rounding = joint.polygon == model::no_index ? 1e-9 : 1e-6;
        const bool is_of_brace = std::ranges::any_of(joint.pieces, [&](model::Index piece) {
            return job.resolved.pieces[piece].kind == model::PieceKind::brace;
        });
        sum.oblique += is_of_brace ? 1U : 0U;
        const bool is_beside_cut = is_cut(file["pieces"][joint.pieces[0]], *one) ||
                                   is_cut(file["pieces"][joint.pieces[1]], *other);
        if (is_beside_cut) {
            CHECK(area_within(lap, common) == Approx(ours).epsilon(rounding));
            ++sum.beside_cuts;
            continue;
        }
        CHECK(ours == Approx(theirs).epsilon(rounding));
        sum.worst = std::max(sum.worst, std::abs(ours - theirs) / theirs);
        ++sum.laps;
    }
}

}  // namespace

TEST_CASE("an independent library finds the laps of samples and random frames as large",
          "[oracle]") {
    Compared sum;
    for (const auto& file : tests::sample_files()) compare(tests::sample_job(file), sum);
    for (std::uint32_t seed = 0; seed < tests::frames_to_check(); ++seed) {
        CAPTURE(seed);
        compare(tests::random_job(seed), sum);
    }
    std::printf(
        "laps: %zu compared, %zu of them of braces, areas within %.1e of each other; %zu beside "
        "cuts lie in metal\n",
        sum.laps, sum.oblique, sum.worst, sum.beside_cuts);
    CHECK(sum.laps > 100);
    CHECK(sum.oblique > 0);
    CHECK(sum.beside_cuts > 10);
}
