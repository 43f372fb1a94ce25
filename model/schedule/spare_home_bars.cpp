#include "model/schedule/spare_home_bars.h"

#include "engine/cutting/nest_grid.h"

#include <cstddef>
#include <utility>

namespace model {
namespace {

std::int64_t bars_of_stock(const engine::NestPlan& plan, std::size_t stock) {
    std::int64_t bars = 0;
    for (const auto& layout : plan.layouts) bars += layout.stock == stock ? layout.bars : 0;
    return bars;
}

// The same pieces from no more bars of the shop than the plan has, where nothing costs anything but
// the length of the whole bars at home that are begun.
engine::NestProblem begun_at_home(engine::NestProblem problem,
                                  const std::vector<BarFrom>& from,
                                  std::int64_t grid,
                                  const engine::NestPlan& plan) {
    for (std::size_t i = 0; i < from.size(); ++i) {
        auto& stock = problem.stock[i];
        stock.price = from[i] == BarFrom::home ? stock.length / grid : 0;
        if (from[i] == BarFrom::shop) stock.supply = bars_of_stock(plan, i);
    }
    return problem;
}

bool buy_the_same(const engine::NestPlan& one,
                  const engine::NestPlan& other,
                  const std::vector<BarFrom>& from) {
    for (std::size_t i = 0; i < from.size(); ++i) {
        if (from[i] == BarFrom::shop && bars_of_stock(one, i) != bars_of_stock(other, i))
            return false;
    }
    return true;
}

}  // namespace

void spare_home_bars(const engine::NestProblem& problem,
                     const std::vector<BarFrom>& from,
                     std::int64_t grid,
                     engine::NestLimits limits,
                     engine::NestPlan& plan) {
    const auto at_home = begun_at_home(problem, from, grid, plan);
    const auto begun_by = [&](const engine::NestPlan& one) {
        std::int64_t length = 0;
        for (std::size_t i = 0; i < from.size(); ++i)
            length += bars_of_stock(one, i) * at_home.stock[i].price;
        return length;
    };
    if (begun_by(plan) == 0) return;
    limits.work = 20'000'000;
    auto found = engine::nest_on_grid(at_home, grid, limits);
    if (!found) return;
    auto spared = std::move(found).value().plan;
    if (!buy_the_same(spared, plan, from) || begun_by(spared) >= begun_by(plan)) return;
    // By the problem's own prices both buy the same.
    spared.cost = plan.cost;
    spared.bought_length = plan.bought_length;
    plan = std::move(spared);
}

}  // namespace model
