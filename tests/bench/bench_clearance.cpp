// Exact distances of pieces from a mesh of triangles, beside FCL where it is installed.
// Usage: bench_clearance [PIECES] [TRIANGLES]   (default: 500 200000)
// Figures are processor time, medians, and compare within one run.
#include "engine/geometry/triangle_tree.h"

#include "tests/bench/processor_time.h"
#include "tests/support/clearance_job.h"
#ifdef BARWRIGHT_HAS_FCL
#include "tests/oracle/fcl_scan.h"
#endif

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <span>

namespace {

constexpr int runs = 9;

using engine::TriangleTree;
using Distances = std::vector<double>;

struct Job {
    tests::VanMesh mesh;
    std::vector<tests::BarPiece> pieces;
};

struct CutOff {
    const char* name;
    double mm;
};

constexpr std::array cut_offs{CutOff{"exact distances, without limit", TriangleTree::without_limit},
                              CutOff{"cut off at 25 mm", 25.0}, CutOff{"cut off at 1/4 in", 6.35}};

// As many triangles as asked, or a few more, in the proportions of a van.
tests::VanMesh mesh_of(std::size_t triangles) {
    const double around = std::ceil(std::sqrt(static_cast<double>(triangles) / 5.0));
    const double along = std::ceil(static_cast<double>(triangles) / 2.0 / around);
    return tests::van_mesh(static_cast<std::uint32_t>(along), static_cast<std::uint32_t>(around));
}

void print(const char* what, double ms, std::size_t pieces) {
    std::printf("  %-44s %9.2f ms %9.4f ms a piece\n", what, ms, ms / static_cast<double>(pieces));
}

double build_ms(const tests::VanMesh& mesh) {
    return tests::median_ms(3, [&] { const TriangleTree tree(mesh.points, mesh.triangles); });
}

// Those beyond the cut-off count as the cut-off.
double measure_ours(const Job& job, const TriangleTree& tree, double cut_off, Distances& found) {
    const double ms = tests::median_ms(runs, [&] {
        found.clear();
        for (const auto& piece : job.pieces) {
            const auto nearest = tree.nearest(piece, cut_off);
            found.push_back(nearest ? nearest->distance : cut_off);
        }
    });
    print("ours", ms, job.pieces.size());
    return ms;
}

double making_ms(const Job& job) {
    return tests::median_ms(runs, [&] {
        double sum = 0.0;
        for (const auto& piece : job.pieces)
            for (const auto& body : piece)
                sum += engine::convex_body(body.bounds.lo, body.bounds.hi).bounds.lo[0];
        if (std::isnan(sum)) std::abort();
    });
}

#ifdef BARWRIGHT_HAS_FCL
class Fcl {
public:
    explicit Fcl(const Job& job) : scan_{job.mesh.points, job.mesh.triangles} {
        for (const auto& piece : job.pieces) pieces_.emplace_back(piece);
    }

    void compare(double cut_off, double ours_ms, const Distances& ours) const {
        const double limit = std::min(cut_off, tests::FclScan::without_limit);
        Distances theirs;
        const double surfaces = time(
            theirs, [&](const auto& piece) { return scan_.distance_of_surfaces(piece, limit); });
        report("FCL: mesh against mesh", surfaces, ours_ms, worst(ours, theirs));
        const double shapes = time(theirs, [&](const auto& piece) {
            return scan_.distance_of_shapes(piece, limit, 1e-6);
        });
        report("FCL: boxes and solids against mesh", shapes, ours_ms, worst(ours, theirs));
    }

    void compare_hits(double ours_ms) const {
        Distances hits;
        const double ms =
            time(hits, [&](const auto& piece) { return scan_.shapes_cross(piece) ? 1.0 : 0.0; });
        report("FCL: boxes and solids against mesh", ms, ours_ms, 0.0);
    }

private:
    template <class Ask>
    double time(Distances& found, const Ask& ask) const {
        return tests::median_ms(3, [&] {
            found.clear();
            for (const auto& piece : pieces_) found.push_back(ask(piece));
        });
    }

    static double worst(const Distances& ours, const Distances& theirs) {
        double most = 0.0;
        for (std::size_t i = 0; i < ours.size(); ++i)
            most = std::max(most, std::abs(ours[i] - theirs[i]));
        return most;
    }

    void report(const char* what, double ms, double ours_ms, double off) const {
        print(what, ms, pieces_.size());
        std::printf("      %.1f times ours; off ours by at most %.1e mm\n", ms / ours_ms, off);
    }

    tests::FclScan scan_;
    std::vector<tests::FclPiece> pieces_;
};
#endif

}  // namespace

int main(int count, char** arguments) {
    const int pieces = count > 1 ? std::atoi(arguments[1]) : 500;
    const int triangles = count > 2 ? std::atoi(arguments[2]) : 200'000;
    if (pieces <= 0 || triangles <= 0) {
        std::fprintf(stderr, "usage: bench_clearance [PIECES] [TRIANGLES]\n");
        return 2;
    }
    const Job job{mesh_of(static_cast<std::size_t>(triangles)),
                  tests::random_pieces(1, static_cast<std::size_t>(pieces))};
    std::printf("%zu pieces, %zu triangles; the tree takes %.0f ms to build\n", job.pieces.size(),
                job.mesh.triangles.size(), build_ms(job.mesh));
    std::printf("of 1,000,000 triangles it takes %.0f ms\n", build_ms(mesh_of(1'000'000)));
    std::printf("boxes as many as there are bodies take %.2f ms to make\n", making_ms(job));
    const TriangleTree tree(job.mesh.points, job.mesh.triangles);
#ifdef BARWRIGHT_HAS_FCL
    const double start = tests::processor_ms();
    const Fcl fcl(job);
    std::printf("FCL takes %.0f ms to build its tree and the pieces\n",
                tests::processor_ms() - start);
#else
    std::printf("SKIPPED: FCL: libfcl-dev was not here when this was built\n");
#endif
    for (const auto& cut_off : cut_offs) {
        std::printf("%s\n", cut_off.name);
        Distances ours;
        [[maybe_unused]] const double ms = measure_ours(job, tree, cut_off.mm, ours);
#ifdef BARWRIGHT_HAS_FCL
        fcl.compare(cut_off.mm, ms, ours);
#endif
    }
    std::printf("hits alone\n");
    std::size_t hits = 0;
    const double ms = tests::median_ms(runs, [&] {
        hits = 0;
        for (const auto& piece : job.pieces)
            hits +=
                std::ranges::any_of(piece, [&](const auto& body) { return tree.crosses(body); });
    });
    print("ours", ms, job.pieces.size());
#ifdef BARWRIGHT_HAS_FCL
    fcl.compare_hits(ms);
#endif
    std::printf("%zu pieces run into the mesh\n", hits);
    return 0;
}
