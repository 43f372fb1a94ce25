// Random skeletons, all made, then changed: a piece is still right exactly where an outsider who
// measures the pieces of both in space finds them congruent.
#include "model/bench/bench.h"
#include "model/resolve/resolve.h"

#include "tests/support/random_project.h"
#include "tests/support/run_project.h"
#include "tests/support/seeds.h"
#include "tests/support/skeleton.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <random>
#include <string>
#include <vector>

namespace {

using model::BenchVerdict;
using tests::Direction;

const model::Catalogue& catalogue() {
    static const auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(loaded);
    return *loaded;
}

// A corner or the middle of a hole on one face of a plate, in the piece's own axes, mm.
struct Spot {
    std::string label;
    std::array<double, 3> at{};
};

using Spots = std::vector<Spot>;

constexpr double near_mm = 0.1 + 1.0e-4;

class Measured {
public:
    Measured(const tests::SkeletonPiece& piece, bool with_holes) {
        axes_[0] = piece.run;
        axes_[2] = piece.plates.front().n;
        axes_[1] = tests::cross(axes_[2], axes_[0]);
        for (const auto& plate : piece.plates) measure(plate, with_holes);
    }

    Spots take() && { return std::move(spots_); }

private:
    void measure(const tests::SkeletonPlate& plate, bool with_holes) {
        const double thick = static_cast<double>(plate.thickness) * 1.0e-6;
        const auto corners = [&](const auto& loop, double deep) {
            for (const auto& corner : loop) {
                add(plate, "corner", static_cast<double>(corner[0]) * 1.0e-6,
                    static_cast<double>(corner[1]) * 1.0e-6, deep);
            }
        };
        corners(plate.outline, 0.0);
        corners(plate.outline_far.empty() ? plate.outline : plate.outline_far, thick);
        for (const auto& cut_out : plate.cut_outs) corners(cut_out, 0.0);
        for (const auto& cut_out : plate.cut_outs) corners(cut_out, thick);
        if (!with_holes) return;
        for (const auto& hole : plate.holes) {
            const auto label = std::to_string(hole.diameter) + hole.tap;
            for (const double deep : {0.0, thick}) {
                add(plate, label, static_cast<double>(hole.in_plate[0]) * 1.0e-6,
                    static_cast<double>(hole.in_plate[1]) * 1.0e-6, deep);
            }
        }
    }

    void add(
        const tests::SkeletonPlate& plate, const std::string& label, double u, double v, double n) {
        Direction room{};
        for (std::size_t i = 0; i < 3; ++i) {
            room[i] = static_cast<double>(plate.origin[i]) * 1.0e-6 + plate.u[i] * u +
                      plate.v[i] * v + plate.n[i] * n;
        }
        Spot spot{label, {}};
        for (std::size_t i = 0; i < 3; ++i) spot.at[i] = tests::dot(room, axes_[i]);
        spots_.push_back(spot);
    }

    std::array<Direction, 3> axes_{};
    Spots spots_;
};

// Moved so that the least coordinates are 0; gives the greatest ones.
std::array<double, 3> settle(Spots& spots) {
    std::array<double, 3> size{};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto along = [&](const Spot& spot) { return spot.at[i]; };
        const double least = along(*std::ranges::min_element(spots, {}, along));
        for (auto& spot : spots) spot.at[i] -= least;
        size[i] = along(*std::ranges::max_element(spots, {}, along));
    }
    return size;
}

bool is_near(const std::array<double, 3>& a, const std::array<double, 3>& b) {
    return std::ranges::equal(a, b, [](double p, double q) { return std::abs(p - q) <= near_mm; });
}

bool are_same_spots(const Spots& a, const Spots& b) {
    std::vector<bool> is_taken(b.size(), false);
    return std::ranges::all_of(a, [&](const Spot& spot) {
        for (std::size_t i = 0; i < b.size(); ++i) {
            if (is_taken[i] || b[i].label != spot.label || !is_near(b[i].at, spot.at)) continue;
            is_taken[i] = true;
            return true;
        }
        return false;
    });
}

// Whether one of the 24 turns of a cube brings the one upon the other.
bool are_congruent(Spots a, const Spots& b) {
    if (a.size() != b.size()) return false;
    const auto size = settle(a);
    std::array<std::size_t, 3> order{0, 1, 2};
    do {
        const bool is_odd = (order[0] + 1) % 3 != order[1];
        for (unsigned signs = 0; signs < 8; ++signs) {
            const bool is_mirrored =
                (((signs & 1U) + ((signs >> 1U) & 1U) + (signs >> 2U)) & 1U) != 0;
            if (is_mirrored != is_odd) continue;
            Spots turned = b;
            for (std::size_t k = 0; k < b.size(); ++k) {
                for (std::size_t i = 0; i < 3; ++i) {
                    turned[k].at[i] =
                        ((signs >> i) & 1U) != 0 ? -b[k].at[order[i]] : b[k].at[order[i]];
                }
            }
            if (is_near(settle(turned), size) && are_same_spots(a, turned)) return true;
        }
    } while (std::ranges::next_permutation(order).found);
    return false;
}

// A project with its pieces as the program and as an outsider sees them.
struct Job {
    explicit Job(model::Project of)
        : project{std::move(of)},
          resolved{model::resolve(project, catalogue())},
          names{model::piece_names(project, resolved)} {
        auto read = tests::read_skeleton(tests::written_files(project, catalogue()));
        REQUIRE(read);
        skeleton = *std::move(read);
        REQUIRE(skeleton.pieces.size() == resolved.pieces.size());
    }

    std::vector<model::BenchPiece> seen(const model::BenchTicks& ticks) const {
        return model::bench_pieces(project, catalogue(), resolved, ticks);
    }

    model::Project project;
    model::Resolved resolved;
    std::vector<model::PieceName> names;
    tests::Skeleton skeleton;
};

model::BenchTicks all_ticked(const Job& job) {
    model::BenchTicks ticks;
    for (const auto& row : job.seen({})) {
        for (const auto work : model::bench_works) {
            if (row.state(work) == model::WorkState::not_needed) continue;
            auto next = model::ticked(job.project, catalogue(), job.resolved, std::move(ticks),
                                      row.piece, work);
            REQUIRE(next);
            ticks = std::move(next).value();
        }
    }
    return ticks;
}

bool is_same_piece(const Job& before, std::size_t was, const Job& after, std::size_t is) {
    const auto& old_piece = before.skeleton.pieces[was];
    const auto& new_piece = after.skeleton.pieces[is];
    const bool is_sheet = model::is_of_sheet(after.resolved.pieces[is].kind);
    if (!is_sheet && old_piece.section != new_piece.section) return false;
    // What was not drilled has no tick for holes.
    const bool with_holes = before.resolved.pieces[was].hole_count > 0;
    return are_congruent(Measured(old_piece, with_holes).take(),
                         Measured(new_piece, with_holes).take());
}

model::Project with_a_plane_moved(model::Project project, std::uint32_t seed) {
    std::mt19937 dice(seed);
    auto& frame = project.frames[dice() % project.frames.size()];
    auto& plane = frame.planes[dice() % frame.planes.size()];
    const auto sixteenths = static_cast<int>(dice() % 48) - 24;
    plane.position = "(" + plane.position + ") + " + std::to_string(sixteenths) + " * 1/16 in";
    return project;
}

}  // namespace

TEST_CASE("after random changes a piece is still right exactly where it is congruent",
          "[model][bench]") {
    std::map<BenchVerdict, int> count;
    constexpr std::uint32_t usual = 40;
    const auto seeds = tests::seed_count(usual);
    for (std::uint32_t seed = 1; seed <= seeds; ++seed) {
        CAPTURE(seed);
        const Job before(tests::random_project(seed, catalogue()).project);
        const auto ticks = all_ticked(before);
        for (const auto& row : before.seen(ticks)) {
            CHECK(row.verdict == BenchVerdict::still_right);
            CHECK_FALSE(model::next_work(row));
        }
        const Job after(with_a_plane_moved(before.project, seed));
        for (const auto& row : after.seen(ticks)) {
            ++count[row.verdict];
            const auto was = std::ranges::find(before.names, row.name);
            CHECK((was == before.names.end()) == (row.verdict == BenchVerdict::nothing_done));
            if (was == before.names.end()) continue;
            CAPTURE(model::words_of(row.name), row.sentence());
            const auto index = static_cast<std::size_t>(was - before.names.begin());
            const bool is_right = row.verdict == BenchVerdict::still_right;
            CHECK(is_right == is_same_piece(before, index, after, row.piece));
            CHECK(row.what.empty() == is_right);
            if (row.verdict != BenchVerdict::rework) continue;
            const auto reworked =
                model::reworked(after.project, catalogue(), after.resolved, ticks, row.piece);
            REQUIRE(reworked);
            const auto again = after.seen(*reworked);
            const auto its = std::ranges::find(again, row.piece, &model::BenchPiece::piece);
            CHECK(its->verdict == BenchVerdict::still_right);
        }
        // Undone, all is right again, by way of the file.
        const auto read = model::ticks_from_text(model::ticks_text(ticks));
        REQUIRE(read);
        CHECK(*read == ticks);
        for (const auto& row : before.seen(*read)) {
            CHECK(row.verdict == BenchVerdict::still_right);
        }
    }
    if (seeds < usual) return;
    CHECK(count[BenchVerdict::still_right] > 100);
    CHECK(count[BenchVerdict::rework] > 10);
    CHECK(count[BenchVerdict::spoiled] > 10);
}
