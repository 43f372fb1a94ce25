// What is meant to come apart and is shut in: only what truly keeps it in is named.
#include "tests/model/assembly/box_pile.h"
#include "tests/model/assembly/replay.h"
#include "tests/support/dice.h"
#include "tests/support/seeds.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>

namespace {

using model::Index;
using tests::BoxPile;
using tests::Nm;
using Pieces = std::set<Index>;

// Of the words of a finding: "... only while p3 and p4 are off; so ...".
Pieces named_in(const std::string& what) {
    Pieces named;
    const auto end = what.find(" are off");
    for (std::size_t at = what.find(" p"); at < end; at = what.find(" p", at + 1)) {
        if (what[at + 2] >= '0' && what[at + 2] <= '9') named.insert(Index(what[at + 2] - '0'));
    }
    return named;
}

// By which pieces are held together by rivets: each set with its least piece as the key.
std::map<Index, Pieces> held_for_good(const BoxPile& pile) {
    const auto& resolved = pile.resolved();
    std::vector<Index> of(resolved.pieces.size());
    for (Index i = 0; i < of.size(); ++i) of[i] = i;
    for (std::size_t round = 0; round < of.size(); ++round) {
        for (const auto& joint : resolved.joints) {
            const auto& fastener = resolved.fasteners[joint.first_fastener];
            if (fastener.spec.kind != model::FastenerSpec::Kind::blind_rivet) continue;
            const Index least = std::min(of[joint.pieces[0]], of[joint.pieces[1]]);
            of[joint.pieces[0]] = of[joint.pieces[1]] = least;
        }
    }
    std::map<Index, Pieces> groups;
    for (Index i = 0; i < of.size(); ++i) groups[of[i]].insert(i);
    return groups;
}

// What holds on the rest by screws alone, where the rest is at least half of all.
std::vector<Pieces> loose_parts(const BoxPile& pile) {
    const auto groups = held_for_good(pile);
    const auto& resolved = pile.resolved();
    const Pieces* main = nullptr;
    for (const auto& [least, group] : groups)
        if (main == nullptr || group.size() > main->size()) main = &group;
    std::vector<Pieces> loose;
    if (main == nullptr || 2 * main->size() < resolved.pieces.size()) return loose;
    for (const auto& [least, group] : groups) {
        const Pieces& pieces = group;
        if (&pieces == main) continue;
        const bool hangs = std::ranges::any_of(resolved.joints, [&](const model::Joint& joint) {
            return pieces.count(joint.pieces[0]) != pieces.count(joint.pieces[1]);
        });
        if (hangs) loose.push_back(pieces);
    }
    return loose;
}

class Brute {
public:
    explicit Brute(const BoxPile& pile)
        : pile_{pile}, world_{BoxPile::catalogue(), pile.resolved()} {
        for (const auto& part : loose_parts(pile)) loose_.insert(part.begin(), part.end());
    }

    // Of all sets of pieces that come later and stay, the size of a least one without which the
    // part comes out; none where the order does not bring the part as one.
    std::optional<std::size_t> fewest(const model::AssemblyOrder& order, const Pieces& part) const {
        const auto present = before(order, part);
        if (!present) return std::nullopt;
        const Pieces later = later_for_good(part, *present);
        const std::vector<Index> all(later.begin(), later.end());
        std::size_t least = all.size() + 1;
        for (std::uint32_t off = 0; off < (1U << all.size()); ++off) {
            Pieces stays = *present;
            std::size_t count = 0;
            for (std::size_t k = 0; k < all.size(); ++k) {
                if ((off >> k & 1U) != 0U) ++count;
                if ((off >> k & 1U) == 0U) stays.insert(all[k]);
            }
            if (count < least && comes_out(part, stays)) least = count;
        }
        return least;
    }

    bool comes_out_without(const model::AssemblyOrder& order,
                           const Pieces& part,
                           const Pieces& off) const {
        const auto present = before(order, part).value();
        Pieces stays = present;
        for (const Index i : later_for_good(part, present))
            if (off.count(i) == 0) stays.insert(i);
        return comes_out(part, stays);
    }

    // What stays and keeps the driver off the joint's screws.
    Pieces in_way_of(Index joint) const {
        Pieces in_way;
        const auto own = world_.pieces_of(joint);
        for (Index i = 0; i < pile_.resolved().pieces.size(); ++i) {
            if (own.count(i) > 0 || loose_.count(i) > 0) continue;
            if (world_.keeps_nose_off(joint, i) || world_.keeps_housing_off(joint, true, i))
                in_way.insert(i);
        }
        return in_way;
    }

private:
    std::optional<Pieces> before(const model::AssemblyOrder& order, const Pieces& part) const {
        std::map<Index, Pieces> benches;
        for (const auto& step : order.steps) {
            for (const auto& move : step.moves) {
                const Pieces moved(move.pieces.begin(), move.pieces.end());
                if (moved == part && step.assembly == 0) return benches[0];
                benches[step.assembly].insert(moved.begin(), moved.end());
            }
        }
        return std::nullopt;
    }

    Pieces later_for_good(const Pieces& part, const Pieces& present) const {
        Pieces later;
        for (Index i = 0; i < pile_.resolved().pieces.size(); ++i) {
            if (part.count(i) + present.count(i) + loose_.count(i) == 0) later.insert(i);
        }
        return later;
    }

    bool comes_out(const Pieces& part, const Pieces& stays) const {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (const double sense : {1.0, -1.0}) {
                tests::Direction travel{};
                travel[axis] = sense;
                const bool is_free = std::ranges::none_of(part, [&](Index own) {
                    return std::ranges::any_of(stays, [&](Index other) {
                        return world_.is_stopped_by(own, travel, other);
                    });
                });
                if (is_free) return true;
            }
        }
        return false;
    }

    const BoxPile& pile_;
    tests::NaiveWorld world_;
    Pieces loose_;
};

// A cage of walls, each of which may be lacking or not reach all the way, with one thing inside or
// two. The walls are riveted to each other, the things screwed to what they touch.
BoxPile random_pile(std::uint32_t seed) {
    tests::Dice dice{seed};
    BoxPile pile;
    std::map<std::array<Nm, 3>, Index> taken;
    const auto put = [&](std::array<Nm, 3> lo, std::array<Nm, 3> hi) {
        const auto number = pile.piece({BoxPile::box(lo, hi)});
        for (Nm x = lo[0]; x < hi[0]; ++x) {
            for (Nm y = lo[1]; y < hi[1]; ++y) {
                for (Nm z = lo[2]; z < hi[2]; ++z) taken[{x, y, z}] = number;
            }
        }
    };
    const auto wall = [&](std::array<Nm, 3> lo, std::array<Nm, 3> hi, std::size_t along) {
        if (dice.chance(8)) return;
        if (dice.chance(15)) hi[along] -= 1 + dice.below(2);
        put(lo, hi);
    };
    wall({0, 0, 0}, {5, 5, 1}, 0);
    wall({0, 0, 1}, {1, 5, 4}, 1);
    wall({4, 0, 1}, {5, 5, 4}, 1);
    wall({1, 0, 1}, {4, 1, 4}, 2);
    wall({1, 4, 1}, {4, 5, 4}, 2);
    wall({0, 0, 4}, {5, 5, 5}, 0);
    const auto walls = static_cast<Index>(pile.resolved().pieces.size());
    const Nm deep = 1 + dice.below(3);
    put({1, 1, 1}, {2 + Nm{dice.below(3)}, 1 + deep, 2 + Nm{dice.below(3)}});
    if (deep < 3 && dice.chance(50)) put({1, 1 + deep, 1}, {4, 4, 2});
    std::set<std::pair<Index, Index>> joined;
    for (const auto& [cell, piece] : taken) {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (const int drive : {1, -1}) {
                auto next = cell;
                next[axis] += drive;
                const auto other = taken.find(next);
                if (other == taken.end() || other->second == piece) continue;
                if (!joined.insert(std::minmax(piece, other->second)).second) continue;
                const std::array<Nm, 3> middle{cell[0] * 64 + 32, cell[1] * 64 + 32,
                                               cell[2] * 64 + 32};
                const bool is_screwed = piece >= walls || other->second >= walls;
                if (is_screwed) pile.screw(piece, other->second, middle, axis, drive);
                if (!is_screwed) pile.rivet(piece, other->second, middle, axis, drive);
            }
        }
    }
    return pile;
}

}  // namespace

TEST_CASE("of what is put on after a part that comes apart only that is named which keeps it in",
          "[model][assembly]") {
    BoxPile pile;
    // A drawer between two sides, which a lid closes above; a bar far off is riveted on later too.
    const Index floor = pile.piece({BoxPile::box({0, 0, 0}, {9, 4, 1})});
    const Index left = pile.piece({BoxPile::box({0, 0, 1}, {1, 4, 4})});
    const Index right = pile.piece({BoxPile::box({4, 0, 1}, {5, 4, 4})});
    const Index back = pile.piece({BoxPile::box({1, 3, 1}, {4, 4, 4})});
    const Index front = pile.piece({BoxPile::box({1, 0, 1}, {4, 1, 4})});
    const Index lid = pile.piece({BoxPile::box({0, 0, 4}, {5, 4, 5})});
    const Index far = pile.piece({BoxPile::box({7, 0, 1}, {8, 1, 9})});
    const Index drawer = pile.piece({BoxPile::box({1, 1, 1}, {4, 3, 2})});
    const auto rivet = [&](Index on, Index other, Nm x, Nm y, Nm z) {
        pile.rivet(on, other, {x * 64 + 32, y * 64 + 32, z * 64 + 32}, 2, -1);
    };
    rivet(left, floor, 0, 0, 1);
    rivet(right, floor, 4, 0, 1);
    rivet(back, floor, 2, 3, 1);
    rivet(front, floor, 2, 0, 1);
    rivet(lid, left, 0, 0, 4);
    rivet(lid, right, 4, 0, 4);
    rivet(far, floor, 7, 0, 1);
    pile.screw(floor, drawer, {2 * 64 + 32, 2 * 64 + 32, 32}, 2, 1);
    const auto order = pile.order();
    const tests::NaiveWorld world(BoxPile::catalogue(), pile.resolved());
    CHECK(tests::replay_complaints(world, pile.resolved(), order).empty());
    const auto early = std::ranges::find(order.problems, "screwed_on_early", &model::Finding::code);
    REQUIRE(early != order.problems.end());
    CHECK(named_in(early->what).size() == 1);
    CHECK(named_in(early->what).count(far) == 0);
}

TEST_CASE("what is named as keeping a part or its screws in is the least that does, by brute force",
          "[model][assembly]") {
    const auto count = tests::seed_count(600);
    std::size_t ways = 0;
    std::size_t drivers = 0;
    std::size_t free = 0;
    for (std::uint32_t seed = 1; seed <= count; ++seed) {
        const auto pile = random_pile(seed);
        const auto order = pile.order();
        if (!order.joints_not_reached.empty() || !order.pieces_without_way.empty()) continue;
        CAPTURE(seed);
        const Brute brute(pile);
        std::map<std::string, Pieces> of_part;  // by what a finding concerns
        std::map<std::string, Pieces> of_joint;
        for (const auto& problem : order.problems) {
            for (const auto& subject : problem.concerns) {
                auto& all = subject.kind == model::SubjectKind::joint ? of_joint : of_part;
                all[subject.name] = named_in(problem.what);
            }
        }
        for (const auto& part : loose_parts(pile)) {
            const auto fewest = brute.fewest(order, part);
            if (!fewest) continue;
            const auto found = of_part.find("p" + std::to_string(*part.begin()));
            CHECK((found != of_part.end()) == (*fewest > 0));
            if (found == of_part.end()) {
                ++free;
                continue;
            }
            ++ways;
            CHECK(found->second.size() == *fewest);
            CHECK(brute.comes_out_without(order, part, found->second));
        }
        for (const auto& [names, named] : of_joint) {
            std::optional<Index> joint;
            for (Index j = 0; j < pile.resolved().joints.size(); ++j) {
                const auto& pieces = pile.resolved().joints[j].pieces;
                const auto a = "p" + std::to_string(pieces[0]);
                const auto b = "p" + std::to_string(pieces[1]);
                if (names == a + " + " + b || names == b + " + " + a) joint = j;
            }
            REQUIRE(joint);
            ++drivers;
            CHECK(named == brute.in_way_of(*joint));
        }
    }
    CAPTURE(ways, drivers, free);
    // More than 5, 5 and 20 of 600 piles; fewer of fewer.
    CHECK(ways * 120 > count);
    CHECK(drivers * 120 > count);
    CHECK(free * 30 > count);
}
