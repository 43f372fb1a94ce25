// How bars to buy and their prices are said.
#include "editor/places/bar_text.h"
#include "editor/places/estimate_list.h"
#include "editor/places/saw_changes.h"

#include <catch2/catch.hpp>

#include <memory>
#include <optional>
#include <string>
#include <vector>

using namespace engine::literals;

namespace {

// Stocks of one section, each with bars of its own to buy and so many halves, the second with a bar
// at home too.
editor::Derived stocks_with(const std::vector<int>& halves) {
    const std::vector<std::string> names{"one", "other", "third"};
    auto project = std::make_shared<model::Project>();
    editor::Derived now;
    for (model::Index stock = 0; stock < halves.size(); ++stock) {
        project->stock.push_back({.name = names.at(stock), .section = "angle"});
        model::BarPlan plan{.stock = stock};
        plan.bars.assign(stock + 1U, {.length = (192_in).nm()});
        for (int i = 0; i < halves[stock]; ++i)
            plan.bars.push_back({.length = (119_in).nm(), .halved_from = (240_in).nm()});
        int number = static_cast<int>(now.saw.size());
        for (const auto& bar : plan.bars) {
            now.saw.push_back({.number = ++number,
                               .stock = stock,
                               .section = "angle",
                               .length = engine::Length::from_nm(bar.length),
                               .halved_from = engine::Length::from_nm(bar.halved_from),
                               .cuts = {{}}});
        }
        now.plans.push_back(plan);
    }
    now.bars.push_back({.bar = 9, .section = "angle", .from = model::BarFrom::home, .stock = 1});
    now.project = project;
    return now;
}

}  // namespace

TEST_CASE("each of two stocks of one section shows its own bars", "[editor][buy]") {
    const auto now = stocks_with({0, 0});
    CHECK(editor::bars_text(now, 0) == "1 x 16 ft");
    CHECK(editor::bars_text(now, 1) == "2 x 16 ft + a bar at home");
    CHECK(editor::bars_text(now) == "3 x 16 ft");
}

TEST_CASE("a stock that shares a bar cut in half tells its halves", "[editor][buy]") {
    const auto shared = stocks_with({1, 3});
    CHECK(editor::bars_text(shared, 0) == "a half of 20 ft + 1 x 16 ft");
    CHECK(editor::bars_text(shared, 1) == "3 halves of 20 ft + 2 x 16 ft + a bar at home");
    CHECK(editor::bars_text(shared) == "2 x 20 ft in halves + 3 x 16 ft");
    const auto alone = stocks_with({1, 2});
    CHECK(editor::bars_text(alone, 0) == "1 x 20 ft in halves + 1 x 16 ft");
    CHECK(editor::bars_text(alone, 1) == "1 x 20 ft in halves + 2 x 16 ft + a bar at home");
}

TEST_CASE("halves are told of the length that is shared, of another one whole bars",
          "[editor][buy]") {
    auto now = stocks_with({1, 1});
    now.plans[0].bars.push_back({.length = (143_in).nm(), .halved_from = (288_in).nm()});
    CHECK(editor::bars_text(now, 0) == "1 x 24 ft in halves + a half of 20 ft + 1 x 16 ft");
    // What costs something else is another seller's bar.
    auto dearer = stocks_with({1, 1});
    dearer.plans[1].bars.back().price = 1'000;
    CHECK(editor::bars_text(dearer, 0) == "1 x 20 ft in halves + 1 x 16 ft");
}

TEST_CASE("of three stocks with an odd half the third has its bar to itself", "[editor][buy]") {
    const auto now = stocks_with({1, 1, 1});
    CHECK(editor::bars_text(now, 0) == "a half of 20 ft + 1 x 16 ft");
    CHECK(editor::bars_text(now, 1) == "a half of 20 ft + 2 x 16 ft + a bar at home");
    CHECK(editor::bars_text(now, 2) == "1 x 20 ft in halves + 3 x 16 ft");
}

TEST_CASE("what a tick says tells whose bars come with those of its stock", "[editor][buy][saw]") {
    const auto now = stocks_with({1, 1, 1});
    const std::string end = " then count as bought, at the prices of the plan";
    CHECK(
        editor::bought_by_tick(now, {{1, 0}}) ==
        ": the bars of its stock, and those of other, since they share a bar that is cut in half," +
            end);
    CHECK(editor::bought_by_tick(now, {{9, 0}}) == ": the bars of its stock" + end);
    CHECK(editor::bought_by_tick(now, {{1, 0}, {3, 0}}) == ": the bars of their stocks" + end);
}

TEST_CASE("what a length of bar is worth is said with what is not proven of it", "[editor][buy]") {
    const auto words = [](std::optional<model::Cents> cost, bool is_proven) {
        return editor::difference_words({.with = 5'000, .cost = cost, .is_proven = is_proven},
                                        "crowns");
    };
    CHECK(words(6'250, true) == "12.50 crowns more");
    CHECK(words(6'250, false) == "about 12.50 crowns more");
    CHECK(words(4'000, false) == "about 10.00 crowns less");
    CHECK(words(5'000, true) == "costs the same");
    CHECK(words(5'000, false) == "costs about the same");
    CHECK(words(std::nullopt, false) == "not all could be cut");
}
