// What is told of a piece that was cut holds for every piece of its mark and hand, and for no other
// that the saw must make differently.
#include "model/schedule/saw_seen.h"

#include "model/resolve/resolve.h"
#include "model/schedule/bar_work.h"

#include "tests/model/resolve/resolve_support.h"
#include "tests/support/random_project.h"

#include <catch2/catch.hpp>

#include <map>
#include <utility>

TEST_CASE("pieces of one mark and hand are told alike, opposite ones apart",
          "[model][schedule][saw]") {
    int opposite = 0;
    for (std::uint32_t seed = 1; seed <= 60; ++seed) {
        const auto random = tests::random_project(seed, tests::shipped_catalogue());
        const auto& project = random.project;
        const auto resolved = tests::resolved(project);
        std::map<std::pair<model::Index, model::Hand>, std::string> told;
        for (const auto& piece : resolved.pieces) {
            if (piece.stock == model::no_index || piece.mark == model::no_index) continue;
            const auto text =
                model::ends_text(project, tests::shipped_catalogue(), resolved, piece);
            const auto [at, is_new] = told.try_emplace({piece.mark, piece.hand}, text);
            CAPTURE(seed, resolved.marks[piece.mark].name, at->second, text);
            CHECK(at->second == text);
        }
        for (const auto& [key, text] : told) {
            const auto other = told.find({key.first, model::Hand::opposite});
            if (key.second != model::Hand::as_drawn || other == told.end()) continue;
            if (text == "square; square") continue;
            CAPTURE(seed, resolved.marks[key.first].name, text);
            CHECK(other->second != text);
            ++opposite;
        }
    }
    CHECK(opposite > 0);
}

TEST_CASE("all bars of a random project are bought and cut, piece by piece, until none is left",
          "[model][schedule][saw]") {
    const auto& catalogue = tests::shipped_catalogue();
    for (std::uint32_t seed = 1; seed <= 25; ++seed) {
        auto project = tests::random_project(seed, catalogue).project;
        const auto resolved = tests::resolved(project);
        const auto plans = model::bar_plans(project, catalogue, resolved);
        for (const auto& edit : model::bars_bought(project, catalogue, resolved, plans)) {
            auto next = model::apply(std::move(project), edit);
            REQUIRE(next);
            project = std::move(next).value();
        }
        const auto after = model::bar_plans(project, catalogue, resolved);
        REQUIRE(after.size() == plans.size());
        for (std::size_t i = 0; i < plans.size(); ++i) {
            CAPTURE(seed, project.stock[plans[i].stock].name);
            CHECK(after[i].cost == 0);
            CHECK(after[i].left_out == plans[i].left_out);
            std::size_t before_cuts = 0;
            std::size_t after_cuts = 0;
            for (const auto& bar : plans[i].bars) before_cuts += bar.cuts.size();
            for (const auto& bar : after[i].bars) after_cuts += bar.cuts.size();
            CHECK(before_cuts == after_cuts);
        }
        for (auto& stock : project.stock) {
            for (auto& bar : stock.at_saw) {
                for (auto& cut : bar.cuts) cut.state = model::CutState::cut;
            }
        }
        for (const auto& plan : model::bar_plans(project, catalogue, resolved)) {
            CAPTURE(seed, project.stock[plan.stock].name);
            for (const auto& bar : plan.bars) CHECK(bar.cuts.empty());
        }
    }
}
