// How far the fasteners of a typical corner are from the edges, by where their holes are drilled.
#include "model/book/corner_kinds.h"

#include "model/schedule/page_flow.h"

#include "tests/model/book/book_job.h"
#include "tests/support/random_project.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

namespace {

using model::Index;
using model::Nm;
using Distances = std::array<std::optional<Nm>, 2>;

// Axes of the frame that a joint's section shows, and those of its walls.
std::vector<std::size_t> in_section(const model::Resolved& resolved, Index joint) {
    return {model::corner_cut(resolved, joint).across};
}

std::vector<std::size_t> in_walls(const model::Resolved& resolved, Index joint) {
    const auto cut = model::corner_cut(resolved, joint);
    return {cut.across, cut.away};
}

bool is_cut_away(const model::Piece& piece, std::uint8_t wall) {
    return std::ranges::any_of(piece.walls(), [&](const model::Plate& plate) {
        return plate.wall == wall && !plate.is_root_fillet && plate.outline != model::no_index;
    });
}

// What the schedules say of the joint's holes: from the datum end, and from the heel.
Distances from_holes(const model::Resolved& resolved,
                     Index joint,
                     Index fastener,
                     const std::vector<std::size_t>& axes) {
    constexpr Nm far_away = 60'000'000;  // of the other end of a piece
    const auto sides = model::corner_sides(resolved, joint);
    Distances least;
    for (std::size_t k = 0; k < 2; ++k) {
        const auto& piece = resolved.pieces[sides[k].piece];
        if (piece.lean != model::no_index || is_cut_away(piece, sides[k].wall)) continue;
        for (Index h = piece.first_hole; h < piece.first_hole + piece.hole_count; ++h) {
            const auto& hole = resolved.holes[h];
            if (hole.fastener != fastener || hole.wall != sides[k].wall ||
                hole.mate == model::no_index)
                continue;
            for (const auto axis : axes) {
                Nm width = 0;
                for (const auto& plate : piece.walls()) {
                    if (plate.is_root_fillet || plate.wall != hole.wall) continue;
                    width = plate.box.hi[axis] - plate.box.lo[axis];
                }
                const bool is_along = model::index_of(piece.run) == axis;
                const Nm at = is_along ? hole.from_datum : hole.gauge;
                const Nm edge = std::min(at, width - at);
                if (edge > 0 && edge < far_away) least[k] = std::min(least[k].value_or(edge), edge);
            }
        }
    }
    return least;
}

Distances least_from_holes(const model::Resolved& resolved,
                           Index joint,
                           const std::vector<std::size_t>& axes) {
    const auto& it = resolved.joints[joint];
    Distances least;
    for (Index f = it.first_fastener; f < it.first_fastener + it.fastener_count; ++f) {
        const auto here = from_holes(resolved, joint, f, axes);
        for (std::size_t k = 0; k < 2; ++k) {
            if (here[k]) least[k] = std::min(least[k].value_or(*here[k]), *here[k]);
        }
    }
    return least;
}

bool is_square_and_of_bars(const model::Resolved& resolved, Index joint) {
    return std::ranges::all_of(resolved.joints[joint].pieces, [&](Index piece) {
        const auto& it = resolved.pieces[piece];
        const bool is_square = std::ranges::all_of(it.ends, [](const model::PieceEnd& end) {
            return end.slope == std::array<double, 2>{} &&
                   std::ranges::all_of(end.wall_back, [](Nm back) { return back == 0; });
        });
        return it.kind == model::PieceKind::bar && it.lean == model::no_index && is_square;
    });
}

}  // namespace

TEST_CASE("the least edge distance of a corner is that of all its holes, not of the first",
          "[model][book]") {
    std::size_t looked_at = 0;
    std::size_t first_is_further = 0;
    for (std::uint32_t seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        const auto random = tests::random_project(seed, tests::book_catalogue());
        const auto resolved = model::resolve(random.project, tests::book_catalogue());
        for (Index j = 0; j < resolved.joints.size(); ++j) {
            if (resolved.joints[j].fastener_count == 0 || !is_square_and_of_bars(resolved, j))
                continue;
            const auto expected = least_from_holes(resolved, j, in_walls(resolved, j));
            const auto least = model::least_edge_distances(resolved, j);
            const auto first =
                from_holes(resolved, j, resolved.joints[j].first_fastener, in_walls(resolved, j));
            const auto drawn = model::edge_distances_drawn(resolved, j);
            const auto of_drawn = from_holes(resolved, j, model::corner_cut(resolved, j).fastener,
                                             in_section(resolved, j));
            CAPTURE(j);
            for (std::size_t k = 0; k < 2; ++k) {
                REQUIRE(least[k].has_value() == expected[k].has_value());
                REQUIRE(drawn[k].has_value() == of_drawn[k].has_value());
                if (drawn[k]) CHECK(drawn[k]->nm() == of_drawn[k].value());
                if (!least[k]) continue;
                ++looked_at;
                CHECK(least[k]->nm() == expected[k].value());
                if (first[k].value_or(0) > expected[k].value()) ++first_is_further;
            }
        }
    }
    CAPTURE(first_is_further);
    CHECK(looked_at > 500);
    CHECK(first_is_further > 0);
}

TEST_CASE("a corner is cut through the fastener that is nearest to an edge in its section",
          "[model][book][samples]") {
    std::size_t looked_at = 0;
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto project = tests::sample(name);
        const auto resolved = model::resolve(project, tests::book_catalogue());
        for (Index j = 0; j < resolved.joints.size(); ++j) {
            if (resolved.joints[j].fastener_count == 0 || !is_square_and_of_bars(resolved, j))
                continue;
            const auto least = least_from_holes(resolved, j, in_section(resolved, j));
            const auto drawn = model::edge_distances_drawn(resolved, j);
            CAPTURE(j);
            if (!least[0] && !least[1]) continue;
            ++looked_at;
            constexpr Nm far_away = 60'000'000;
            const Nm nearest = std::min(least[0].value_or(far_away), least[1].value_or(far_away));
            CHECK(((drawn[0] && drawn[0]->nm() == nearest) ||
                   (drawn[1] && drawn[1]->nm() == nearest)));
        }
    }
    CHECK(looked_at > 50);
}

TEST_CASE("no edge distance is told of a wall that is notched, coped or sloped",
          "[model][book][samples]") {
    std::size_t cut_away = 0;
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto resolved = model::resolve(tests::sample(name), tests::book_catalogue());
        for (Index j = 0; j < resolved.joints.size(); ++j) {
            if (resolved.joints[j].fastener_count == 0) continue;
            const auto sides = model::corner_sides(resolved, j);
            const auto least = model::least_edge_distances(resolved, j);
            for (std::size_t k = 0; k < 2; ++k) {
                if (!is_cut_away(resolved.pieces[sides[k].piece], sides[k].wall)) continue;
                ++cut_away;
                CAPTURE(j, k);
                CHECK_FALSE(least[k].has_value());
            }
        }
    }
    CHECK(cut_away > 10);
}

TEST_CASE("the words of a corner name its least edge distances", "[model][book][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto project = tests::sample(name);
        const auto resolved = model::resolve(project, tests::book_catalogue());
        for (const auto& kind : model::corner_kinds(project, tests::book_catalogue(), resolved)) {
            std::string words;
            for (const auto& line : kind.words) words += line + "\n";
            const auto least = model::least_edge_distances(resolved, kind.joints.front());
            for (std::size_t k = 0; k < 2; ++k) {
                if (!least[k]) continue;
                CHECK_THAT(words, Catch::Contains(model::length_on_paper(project, *least[k]) +
                                                  (k == 0 ? " outer" : " inner")));
            }
        }
    }
}

TEST_CASE("the outer piece of a corner is the one under the heads", "[model][book][samples]") {
    std::size_t lower_in_rank = 0;
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto resolved = model::resolve(tests::sample(name), tests::book_catalogue());
        for (Index j = 0; j < resolved.joints.size(); ++j) {
            const auto& it = resolved.joints[j];
            if (it.fastener_count == 0) continue;
            const auto under_head = resolved.fasteners[it.first_fastener].stack[0].piece;
            const auto sides = model::corner_sides(resolved, j);
            CAPTURE(j);
            for (std::size_t k = 0; k < 2; ++k) {
                const std::size_t rank = sides[k].piece == it.pieces[0] ? 0 : 1;
                CHECK(sides[k].piece == it.pieces[rank]);
                CHECK(sides[k].wall == it.walls[rank]);
            }
            CHECK(sides[0].piece != sides[1].piece);
            if (std::ranges::count(it.pieces, under_head) == 0) continue;
            CHECK(sides[0].piece == under_head);
            if (under_head == it.pieces[1]) ++lower_in_rank;
        }
    }
    CHECK(lower_in_rank > 0);
}
