// Piles of boxes: some lock into each other, some rivets can be reached in no order.
#include "tests/model/assembly/box_pile.h"
#include "tests/model/assembly/replay.h"
#include "tests/support/dice.h"
#include "tests/support/seeds.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <optional>

namespace {

using model::Index;
using tests::BoxPile;
using tests::Nm;
using Cell = std::array<Nm, 3>;

std::size_t findings_of(const model::AssemblyOrder& order, const std::string& code) {
    return static_cast<std::size_t>(
        std::ranges::count(order.problems, code, &model::Finding::code));
}

tests::Complaints replayed(const BoxPile& pile) {
    const tests::NaiveWorld world(BoxPile::catalogue(), pile.resolved());
    return tests::replay_complaints(world, pile.resolved(), pile.order());
}

bool can_be(const BoxPile& pile) {
    const tests::NaiveWorld world(BoxPile::catalogue(), pile.resolved());
    return tests::can_be_put_together(world, pile.resolved(), 0);
}

// ---- random piles -------------------------------------------------------------------------------

constexpr Nm side = 5;

struct Cells {
    std::map<Cell, Index> taken;

    std::optional<Index> at(const Cell& cell) const {
        const auto found = taken.find(cell);
        return found == taken.end() ? std::nullopt : std::optional{found->second};
    }
};

Cell random_cell(tests::Dice& dice) {
    Cell cell{};
    for (auto& c : cell) c = static_cast<Nm>(dice.below(side));
    return cell;
}

Cell next_to(const Cell& cell, std::size_t axis, int sense) {
    Cell next = cell;
    next[axis] += sense;
    return next;
}

bool is_free(const Cells& cells, const Cell& cell, Index piece) {
    const bool is_inside = std::ranges::all_of(cell, [](Nm c) { return c >= 0 && c < side; });
    return is_inside && cells.at(cell).value_or(piece) == piece;
}

// Straight runs of cells, each from where the last one ended.
void add_piece(tests::Dice& dice, BoxPile& pile, Cells& cells) {
    Cell at = random_cell(dice);
    if (cells.at(at)) return;
    const auto number = static_cast<Index>(pile.resolved().pieces.size());
    std::vector<model::Box> boxes;
    const std::uint32_t runs = 1 + dice.below(6);
    while (boxes.size() < runs) {
        const auto axis = dice.below(3);
        const int sense = dice.chance(50) ? 1 : -1;
        const Cell from = at;
        cells.taken[at] = number;
        for (auto left = dice.below(4); left > 0; --left) {
            const Cell next = next_to(at, axis, sense);
            if (!is_free(cells, next, number)) break;
            at = next;
            cells.taken[at] = number;
        }
        Cell lo{};
        Cell hi{};
        for (std::size_t k = 0; k < 3; ++k) {
            lo[k] = std::min(from[k], at[k]);
            hi[k] = std::max(from[k], at[k]) + 1;
        }
        boxes.push_back(BoxPile::box(lo, hi));
    }
    pile.piece(boxes);
}

// A box from cell to cell, turned so that its axes are others.
model::Box turned_box(std::uint32_t turns, Cell lo, Cell hi, Index piece, Cells& cells) {
    for (std::uint32_t i = 0; i < turns; ++i) {
        lo = {lo[2], lo[0], lo[1]};
        hi = {hi[2], hi[0], hi[1]};
    }
    for (Nm x = lo[0]; x < hi[0]; ++x) {
        for (Nm y = lo[1]; y < hi[1]; ++y) {
            for (Nm z = lo[2]; z < hi[2]; ++z) cells.taken[{x, y, z}] = piece;
        }
    }
    return BoxPile::box(lo, hi);
}

// A ring, and a bar through it with one wide end or two.
void add_ring_and_bar(tests::Dice& dice, BoxPile& pile, Cells& cells) {
    const auto turns = dice.below(3);
    const auto box = [&](const Cell& lo, const Cell& hi, Index piece) {
        return turned_box(turns, lo, hi, piece, cells);
    };
    pile.piece({box({0, 0, 2}, {3, 1, 3}, 0), box({0, 2, 2}, {3, 3, 3}, 0),
                box({0, 1, 2}, {1, 2, 3}, 0), box({2, 1, 2}, {3, 2, 3}, 0)});
    std::vector<model::Box> bar{box({1, 1, 0}, {2, 2, 5}, 1), box({0, 1, 0}, {3, 2, 1}, 1)};
    if (dice.chance(70)) bar.push_back(box({0, 1, 4}, {3, 2, 5}, 1));
    pile.piece(bar);
}

void add_rivets(tests::Dice& dice, BoxPile& pile, const Cells& cells, std::uint32_t percent) {
    std::map<std::pair<Index, Index>, bool> done;
    for (const auto& [cell, piece] : cells.taken) {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (const int drive : {1, -1}) {
                const auto other = cells.at(next_to(cell, axis, drive));
                if (!other || *other == piece || !dice.chance(percent)) continue;
                bool& is_done = done[std::minmax(piece, *other)];
                if (is_done) continue;
                is_done = true;
                pile.rivet(piece, *other, {cell[0] * 64 + 32, cell[1] * 64 + 32, cell[2] * 64 + 32},
                           axis, drive);
            }
        }
    }
}

BoxPile random_pile(std::uint32_t seed) {
    tests::Dice dice{seed};
    BoxPile pile;
    Cells cells;
    if (dice.chance(15)) add_ring_and_bar(dice, pile, cells);
    for (std::uint32_t tries = 0; tries < 40 && pile.resolved().pieces.size() < 7; ++tries) {
        add_piece(dice, pile, cells);
    }
    add_rivets(dice, pile, cells, 10 + dice.below(60));
    return pile;
}

}  // namespace

TEST_CASE("a bar with wide ends in a closed ring has no way into its place", "[model][assembly]") {
    BoxPile pile;
    const Index ring =
        pile.piece({BoxPile::box({0, 0, 5}, {5, 1, 6}), BoxPile::box({0, 4, 5}, {5, 5, 6}),
                    BoxPile::box({0, 1, 5}, {1, 4, 6}), BoxPile::box({4, 1, 5}, {5, 4, 6})});
    const Index bar =
        pile.piece({BoxPile::box({2, 2, 0}, {3, 3, 10}), BoxPile::box({0, 2, 0}, {5, 3, 1}),
                    BoxPile::box({0, 2, 9}, {5, 3, 10})});
    CHECK_FALSE(can_be(pile));
    const auto order = pile.order();
    CHECK(findings_of(order, "no_way_into_place") == 1);
    REQUIRE(order.pieces_without_way.size() == 1);
    CHECK((order.pieces_without_way[0] == ring || order.pieces_without_way[0] == bar));
    CHECK(order.problems[0].what.find(order.pieces_without_way[0] == ring ? "p1" : "p0") !=
          std::string::npos);
    CHECK(replayed(pile).empty());
}

TEST_CASE("the same bar with one narrow end slides in from above", "[model][assembly]") {
    BoxPile pile;
    pile.piece({BoxPile::box({0, 0, 5}, {5, 1, 6}), BoxPile::box({0, 4, 5}, {5, 5, 6}),
                BoxPile::box({0, 1, 5}, {1, 4, 6}), BoxPile::box({4, 1, 5}, {5, 4, 6})});
    const Index bar =
        pile.piece({BoxPile::box({2, 2, 0}, {3, 3, 10}), BoxPile::box({0, 2, 9}, {5, 3, 10})});
    CHECK(can_be(pile));
    const auto order = pile.order();
    CHECK(order.problems.empty());
    REQUIRE(order.steps.size() == 1);
    REQUIRE(order.steps[0].moves.size() == 2);
    // Bar or ring first: one comes down on the other, or the other comes up.
    const bool bar_comes = order.steps[0].moves[1].pieces[0] == bar;
    CHECK(model::words_of(order.steps[0].moves[1].along) ==
          (bar_comes ? "from above" : "from below"));
}

TEST_CASE("a rivet behind a piece is set before that is put on", "[model][assembly]") {
    BoxPile pile;
    const Index a = pile.piece({BoxPile::box({0, 0, 0}, {1, 1, 1})});
    const Index b = pile.piece({BoxPile::box({1, 0, 0}, {2, 1, 1})});
    const Index cover = pile.piece({BoxPile::box({-2, 0, 0}, {-1, 1, 1})});
    const Index joint = pile.rivet(a, b, {32, 32, 32}, 0, 1);
    const auto order = pile.order();
    CHECK(order.problems.empty());
    CHECK(replayed(pile).empty());
    REQUIRE(order.steps.size() == 2);
    REQUIRE(order.steps[0].sets.size() == 1);
    CHECK(order.steps[0].sets[0].joint == joint);
    REQUIRE(order.steps[1].moves.size() == 1);
    CHECK(order.steps[1].moves[0].pieces[0] == cover);
}

TEST_CASE("two pairs whose heads look at each other are riveted apart, then put together",
          "[model][assembly]") {
    BoxPile pile;
    const Index a = pile.piece({BoxPile::box({0, 0, 0}, {1, 1, 1})});
    const Index b = pile.piece({BoxPile::box({1, 0, 0}, {2, 1, 1})});
    const Index c = pile.piece({BoxPile::box({-4, 0, 0}, {-3, 1, 1})});
    const Index d = pile.piece({BoxPile::box({-5, 0, 0}, {-4, 1, 1})});
    pile.rivet(a, b, {32, 32, 32}, 0, 1);
    pile.rivet(c, d, {-3 * 64 - 32, 32, 32}, 0, -1);
    const auto order = pile.order();
    CHECK(order.problems.empty());
    CHECK(replayed(pile).empty());
    CHECK(order.steps.front().assembly == 1);
    CHECK(order.steps.front().sets.size() == 1);
    CHECK(order.steps.back().assembly == 0);
    CHECK(order.steps.back().moves.back().pieces.size() == 2);
}

// Either side goes on the middle first; the other side's rivet then has an arm of it before its
// head.
TEST_CASE("of two rivets that shut each other in one is named", "[model][assembly]") {
    BoxPile pile;
    const Index middle = pile.piece({BoxPile::box({0, 0, 0}, {1, 1, 1})});
    const Index left =
        pile.piece({BoxPile::box({-1, 0, 0}, {0, 1, 1}), BoxPile::box({-1, -1, 0}, {0, 0, 1}),
                    BoxPile::box({-1, -2, 0}, {4, -1, 1}), BoxPile::box({3, -1, 0}, {4, 1, 1})});
    const Index right =
        pile.piece({BoxPile::box({1, 0, 0}, {2, 1, 1}), BoxPile::box({1, 1, 0}, {2, 2, 1}),
                    BoxPile::box({-3, 2, 0}, {2, 3, 1}), BoxPile::box({-3, 0, 0}, {-2, 2, 1})});
    pile.rivet(left, middle, {-32, 32, 32}, 0, 1);
    pile.rivet(right, middle, {64 + 32, 32, 32}, 0, -1);
    CHECK_FALSE(can_be(pile));
    const auto order = pile.order();
    CHECK(order.joints_not_reached.size() == 1);
    CHECK(order.pieces_without_way.empty());
    REQUIRE(findings_of(order, "no_order_of_rivets") == 1);
    CHECK(order.problems[0].concerns[0].kind == model::SubjectKind::joint);
    CHECK(replayed(pile).empty());
}

TEST_CASE("piles of boxes have an order just when some order of all works", "[model][assembly]") {
    const auto count = tests::seed_count(1'000);
    std::map<std::string, std::uint32_t> problems;
    std::uint32_t fine = 0;
    for (std::uint32_t seed = 1; seed <= count; ++seed) {
        const auto pile = random_pile(seed);
        CAPTURE(seed);
        const auto order = pile.order();
        const auto complaints = replayed(pile);
        INFO((complaints.empty() ? std::string{} : complaints.front()));
        CHECK(complaints.empty());
        for (const auto& problem : order.problems) ++problems[problem.code];
        CHECK(order.problems.empty() == can_be(pile));
        fine += order.problems.empty() ? 1U : 0U;
    }
    CAPTURE(fine, problems["no_order_of_rivets"], problems["no_way_into_place"]);
    CHECK(fine > count / 10);
    CHECK(problems["no_order_of_rivets"] > count / 100);
    CHECK(problems["no_way_into_place"] > count / 50);
}
