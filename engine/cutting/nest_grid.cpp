#include "engine/cutting/nest_grid.h"

#include "engine/cutting/nest_input.h"

#include <algorithm>
#include <numeric>

namespace engine {

namespace {

std::int64_t rounded_down(std::int64_t length, std::int64_t step) {
    return length / step - (length % step < 0 ? 1 : 0);
}

std::int64_t rounded_up(std::int64_t length, std::int64_t step) {
    return -rounded_down(-length, step);
}

std::int64_t common_step(const NestProblem& problem) {
    std::int64_t step = std::gcd(problem.kerf, problem.least_held);
    for (const NestPiece& piece : problem.pieces) {
        if (piece.quantity > 0) step = std::gcd(step, piece.length);
    }
    for (const NestStock& stock : problem.stock) {
        step = std::gcd(step, stock.length);
        step = std::gcd(step, std::gcd(stock.trim_start, stock.trim_end));
    }
    return step;
}

// The kerf in steps is rounded up, and what it won is taken off the piece again: they count
// together, and so no trim has to be less than nothing below.
NestPiece on_grid(const NestPiece& piece, const NestProblem& problem, std::int64_t step) {
    const std::int64_t weight = rounded_up(piece.length + problem.kerf, step);
    const std::int64_t kerf = rounded_up(problem.kerf, step);
    return {.length = std::max<std::int64_t>(1, weight - kerf), .quantity = piece.quantity};
}

// Down in steps: the bar, what is behind its first trim, and what it offers with one kerf.
NestStock on_grid(NestStock stock, const NestProblem& problem, std::int64_t step) {
    const std::int64_t behind_trim = rounded_down(stock.length - stock.trim_start, step);
    const std::int64_t offered =
        rounded_down(stock.length - stock.trim_start - stock.trim_end + problem.kerf, step);
    stock.length = std::max<std::int64_t>(1, rounded_down(stock.length, step));
    stock.trim_start = stock.length - behind_trim;
    stock.trim_end = behind_trim + rounded_up(problem.kerf, step) - offered;
    return stock;
}

// Lengths that are rounded are not compared exactly.
bool has_whole_bars(const NestProblem& problem, std::int64_t step) {
    return std::all_of(problem.stock.begin(), problem.stock.end(), [&](const NestStock& stock) {
        return stock.is_remnant || stock.price == 0 || stock.length % step == 0;
    });
}

NestLimits telling(const NestProblem& problem, const NestLimits& limits) {
    if (!limits.go_on) return limits;
    NestLimits telling = limits;
    telling.go_on = [&problem, &limits](const NestProgress& on_grid) {
        if (!on_grid.plan) return limits.go_on(on_grid);
        const NestPlan plan = cutting::retold(problem, *on_grid.plan);
        NestProgress progress = on_grid;
        progress.plan = &plan;
        return limits.go_on(progress);
    };
    return telling;
}

}  // namespace

namespace cutting {

NestProblem on_grid(const NestProblem& problem, std::int64_t step) {
    NestProblem result{.pieces = {}, .stock = {}};
    result.kerf = rounded_up(problem.kerf, step);
    result.least_held = rounded_up(problem.least_held, step);
    for (const NestPiece& piece : problem.pieces)
        result.pieces.push_back(engine::on_grid(piece, problem, step));
    for (const NestStock& stock : problem.stock)
        result.stock.push_back(engine::on_grid(stock, problem, step));
    return result;
}

NestPlan retold(const NestProblem& problem, NestPlan plan) {
    plan.bought_length = 0;
    plan.longest_offcut = 0;
    for (NestLayout& layout : plan.layouts) {
        const NestStock& stock = problem.stock[layout.stock];
        layout.offcut = stock.length - stock.trim_start - stock.trim_end;
        for (const NestCount& cut : layout.cuts)
            layout.offcut -= (problem.pieces[cut.piece].length + problem.kerf) * cut.count;
        layout.offcut = std::max<std::int64_t>(0, layout.offcut);
        std::stable_sort(layout.cuts.begin(), layout.cuts.end(),
                         [&](const NestCount& a, const NestCount& b) {
                             return problem.pieces[a.piece].length > problem.pieces[b.piece].length;
                         });
        plan.longest_offcut = std::max(plan.longest_offcut, layout.offcut);
        if (!stock.is_remnant && stock.price > 0) plan.bought_length += stock.length * layout.bars;
    }
    return plan;
}

}  // namespace cutting

Result<Nest> nest_on_grid(const NestProblem& problem, std::int64_t step, const NestLimits& limits) {
    if (auto error = cutting::mistake(problem)) return *error;
    if (step <= 1 || common_step(problem) >= step) return nest(problem, limits);
    auto nest = engine::nest(cutting::on_grid(problem, step), telling(problem, limits));
    if (!nest && nest.error().code != ErrorCode::cancelled) return engine::nest(problem, limits);
    if (!nest) return nest;
    Nest result = *nest;
    result.plan = cutting::retold(problem, std::move(result.plan));
    result.is_shortest = result.is_shortest && has_whole_bars(problem, step);
    return result;
}

}  // namespace engine
