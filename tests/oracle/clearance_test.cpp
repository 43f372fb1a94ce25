#include "engine/geometry/triangle_tree.h"

#include "tests/oracle/fcl_scan.h"
#include "tests/support/clearance_job.h"
#include "tests/support/distance_proof.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace {

struct Job {
    tests::VanMesh mesh = tests::van_mesh(500, 200);
    std::vector<tests::BarPiece> pieces = tests::random_pieces(1, 500);
    engine::TriangleTree tree{mesh.points, mesh.triangles};
    tests::FclScan fcl{mesh.points, mesh.triangles};
};

const Job& job() {
    static const Job the_job;
    return the_job;
}

// What a mesh of the body's faces cannot see: a part of the van wholly inside it.
bool holds_a_point(const tests::VanMesh& mesh, const tests::BarPiece& piece) {
    return std::ranges::any_of(piece, [&](const engine::ConvexBody& body) {
        return std::ranges::any_of(mesh.points, [&](const engine::Vector& at) {
            return touches(body.bounds, engine::Bounds{at, at}) && tests::holds(body, at, 0.0);
        });
    });
}

}  // namespace

TEST_CASE(
    "FCL finds the same distances of 500 pieces from 200,000 triangles, to a millionth of a mm",
    "[oracle][clearance]") {
    REQUIRE(job().mesh.triangles.size() == 200'000);
    double worst = 0.0;
    std::size_t apart = 0;
    for (std::size_t i = 0; i < job().pieces.size(); ++i) {
        CAPTURE(i);
        const auto& piece = job().pieces[i];
        const auto ours = job().tree.nearest(piece);
        REQUIRE(ours);
        if (holds_a_point(job().mesh, piece)) {
            CHECK(ours->distance == 0.0);
            continue;
        }
        const double theirs = job().fcl.distance_of_surfaces(tests::FclPiece(piece));
        worst = std::max(worst, std::abs(ours->distance - theirs));
        apart += ours->distance > 0.0;
        CHECK(std::abs(ours->distance - theirs) <= 1e-6);
    }
    std::printf("%zu pieces are apart from the mesh; distances differ by at most %.1e mm\n", apart,
                worst);
    CHECK(worst <= 1e-6);
    CHECK(apart > 250);
}

TEST_CASE("FCL finds the same of 500 pieces to run into 200,000 triangles", "[oracle][clearance]") {
    std::size_t hits = 0;
    for (std::size_t i = 0; i < job().pieces.size(); ++i) {
        CAPTURE(i);
        const auto& piece = job().pieces[i];
        const bool theirs =
            job().fcl.surfaces_cross(tests::FclPiece(piece)) || holds_a_point(job().mesh, piece);
        const bool ours =
            std::ranges::any_of(piece, [](const auto& body) { return job().tree.crosses(body); });
        CHECK(ours == theirs);
        CHECK((job().tree.nearest(piece)->distance == 0.0) == theirs);
        hits += theirs;
    }
    std::printf("%zu of %zu pieces run into the mesh\n", hits, job().pieces.size());
    CHECK(hits > 50);
}

TEST_CASE("FCL's own solids run into the mesh where ours do", "[oracle][clearance]") {
    for (std::size_t i = 0; i < job().pieces.size(); ++i) {
        CAPTURE(i);
        const auto& piece = job().pieces[i];
        CHECK(job().fcl.shapes_cross(tests::FclPiece(piece)) ==
              (job().tree.nearest(piece)->distance == 0.0));
    }
}
