// Random frames put together step by step by a checker that knows nothing of how the order was
// found; small ones in every way that there is.
#include "model/project/edit.h"

#include "tests/model/assembly/replay.h"
#include "tests/model/resolve/resolve_support.h"
#include "tests/support/random_frames.h"
#include "tests/support/random_project.h"
#include "tests/support/seeds.h"

#include <algorithm>
#include <string>
#include <utility>

namespace {

using model::Index;

std::string joined(const tests::Complaints& complaints) {
    std::string text;
    for (std::size_t i = 0; i < std::min<std::size_t>(complaints.size(), 8); ++i) {
        text += "\n  " + complaints[i];
    }
    return text;
}

struct Case {
    explicit Case(model::Project of)
        : project{std::move(of)},
          resolved{tests::resolved(project)},
          order{model::assembly_order(project, tests::shipped_catalogue(), resolved)},
          world{project, tests::shipped_catalogue(), resolved} {}

    model::Project project;
    model::Resolved resolved;
    model::AssemblyOrder order;
    tests::NaiveWorld world;

    // Of the frame: neither a joint that is not reached nor a piece without a way.
    bool is_said_to_work(Index frame) const {
        const auto is_of_it = [&](const auto& thing) { return thing.frame == frame; };
        return std::ranges::none_of(order.joints_not_reached,
                                    [&](Index j) { return is_of_it(resolved.joints[j]); }) &&
               std::ranges::none_of(order.pieces_without_way,
                                    [&](Index p) { return is_of_it(resolved.pieces[p]); });
    }
};

// A few members of a tangle, with shelves' worth of joints between them.
model::Project small_tangle(std::uint32_t seed) {
    tests::Dice dice{seed};
    tests::Ruler ruler{tests::inches(1)};
    model::Project project;
    project.stock = {tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"),
                     tests::stock_of("channel", "channel 1 x 1 x 1/8", "6063-T5"),
                     tests::stock_of("flat", "flat 1 x 1/8", "6063-T52")};
    project.frames = {tests::random_tangle(dice, "tangle", {"main", "channel", "flat"}, ruler)};
    const std::size_t most = 4 + dice.below(5);
    auto& members = project.frames[0].members;
    if (members.size() > most) members.resize(most);
    return project;
}

}  // namespace

TEST_CASE("random frames go together step by step as their order says", "[model][assembly]") {
    const auto count = tests::seed_count(500);
    std::uint32_t frames = 0;
    std::uint32_t flat = 0;
    for (std::uint32_t seed = 1; frames < count; ++seed) {
        const Case it(tests::random_project(seed, tests::shipped_catalogue()).project);
        CAPTURE(seed);
        REQUIRE(it.world.is_readable());
        const auto complaints = tests::replay_complaints(it.world, it.resolved, it.order);
        INFO(joined(complaints));
        CHECK(complaints.empty());
        for (Index f = 0; f < it.resolved.frames.size(); ++f) {
            ++frames;
            const bool works = it.is_said_to_work(f);
            if (it.resolved.frames[f].piece_count > 10) continue;
            CHECK(works == tests::can_be_put_together(it.world, it.resolved, f));
        }
        flat += static_cast<std::uint32_t>(std::ranges::count(
            it.order.steps, model::AssemblyWork::flat_on_bench, &model::AssemblyStep::work));
    }
    CHECK(flat > count / 2);
}

TEST_CASE("small tangles have an order just when some order of all works", "[model][assembly]") {
    const auto count = tests::seed_count(500);
    for (std::uint32_t seed = 1; seed <= count; ++seed) {
        const Case it(small_tangle(seed));
        CAPTURE(seed);
        REQUIRE(it.world.is_readable());
        const auto complaints = tests::replay_complaints(it.world, it.resolved, it.order);
        INFO(joined(complaints));
        CHECK(complaints.empty());
        if (it.resolved.frames[0].piece_count == 0 || it.resolved.frames[0].piece_count > 11)
            continue;
        const bool can_be = tests::can_be_put_together(it.world, it.resolved, 0);
        CHECK(it.is_said_to_work(0) == can_be);
    }
}
