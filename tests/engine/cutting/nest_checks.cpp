#include "tests/engine/cutting/nest_checks.h"

#include <algorithm>
#include <random>
#include <vector>

namespace tests {

namespace {

struct OpenBar {
    std::size_t stock = 0;
    std::int64_t lengths = 0;
    std::int64_t pieces = 0;
    std::int64_t longest = 0;
};

// Pieces one after the other from the datum end, a kerf after each but where the bar ends.
bool can_be_cut(const engine::NestProblem& problem, const OpenBar& bar) {
    const engine::NestStock& stock = problem.stock[bar.stock];
    const std::int64_t last_end = stock.trim_start + bar.lengths + (bar.pieces - 1) * problem.kerf;
    if (last_end > stock.length - stock.trim_end) return false;
    // The longest is cut last: in the vice it is with everything behind it.
    const std::int64_t begin_of_last = last_end - bar.longest;
    return stock.length - begin_of_last >= problem.least_held;
}

class Trying {
public:
    explicit Trying(const engine::NestProblem& problem) : problem_{problem} {
        for (const engine::NestPiece& piece : problem.pieces)
            pieces_.insert(pieces_.end(), static_cast<std::size_t>(piece.quantity), piece.length);
        std::sort(pieces_.rbegin(), pieces_.rend());
        used_.assign(problem.stock.size(), 0);
    }

    std::optional<LeastPrice> run() {
        place(0, {});
        return best_;
    }

private:
    void place(std::size_t at, const LeastPrice& price) {
        if (best_ && price >= *best_) return;
        if (at == pieces_.size()) {
            const bool is_cut = std::all_of(bars_.begin(), bars_.end(), [&](const OpenBar& bar) {
                return can_be_cut(problem_, bar);
            });
            if (is_cut) best_ = price;
            return;
        }
        for (std::size_t b = 0; b < bars_.size(); ++b) {
            const OpenBar before = bars_[b];
            add(bars_[b], pieces_[at]);
            place(at + 1, price);
            bars_[b] = before;
        }
        for (std::size_t s = 0; s < problem_.stock.size(); ++s) open(at, s, price);
    }

    void open(std::size_t at, std::size_t s, LeastPrice price) {
        const engine::NestStock& stock = problem_.stock[s];
        if (stock.supply && used_[s] >= *stock.supply) return;
        price.cost += stock.price;
        if (!stock.is_remnant && stock.price > 0) price.bought_length += stock.length;
        ++used_[s];
        bars_.push_back({s, 0, 0, 0});
        add(bars_.back(), pieces_[at]);
        place(at + 1, price);
        bars_.pop_back();
        --used_[s];
    }

    static void add(OpenBar& bar, std::int64_t length) {
        bar.lengths += length;
        ++bar.pieces;
        bar.longest = std::max(bar.longest, length);
    }

    const engine::NestProblem& problem_;
    std::vector<std::int64_t> pieces_;
    std::vector<std::int64_t> used_;
    std::vector<OpenBar> bars_;
    std::optional<LeastPrice> best_;
};

OpenBar bar_of(const engine::NestProblem& problem, const engine::NestLayout& layout) {
    OpenBar bar{layout.stock, 0, 0, 0};
    for (const engine::NestCount& cut : layout.cuts) {
        const std::int64_t length = problem.pieces.at(cut.piece).length;
        bar.lengths += length * cut.count;
        bar.pieces += cut.count;
        bar.longest = std::max(bar.longest, length);
    }
    return bar;
}

// Drawn straight from the engine: the standard's distributions differ between libraries.
int drawn(std::mt19937& random, int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
}

engine::NestStock random_stock(std::mt19937& random) {
    engine::NestStock stock;
    stock.length = drawn(random, 40, 130);
    stock.price = stock.length * 10 + drawn(random, -80, 80);
    if (drawn(random, 0, 3) == 0) stock.supply = drawn(random, 0, 3);
    if (drawn(random, 0, 2) == 0) stock.trim_start = drawn(random, 1, 4);
    if (drawn(random, 0, 2) == 0) stock.trim_end = drawn(random, 1, 4);
    return stock;
}

}  // namespace

std::string why_not(const engine::NestProblem& problem, const engine::NestPlan& plan) {
    std::vector<std::int64_t> pieces(problem.pieces.size(), 0);
    std::vector<std::int64_t> bars(problem.stock.size(), 0);
    std::int64_t cost = 0;
    std::int64_t bought = 0;
    for (const engine::NestLayout& layout : plan.layouts) {
        if (layout.bars < 1 || layout.cuts.empty()) return "an empty layout";
        if (!can_be_cut(problem, bar_of(problem, layout))) return "a bar that cannot be cut so";
        const engine::NestStock& stock = problem.stock.at(layout.stock);
        bars[layout.stock] += layout.bars;
        cost += layout.bars * stock.price;
        if (!stock.is_remnant && stock.price > 0) bought += layout.bars * stock.length;
        for (const engine::NestCount& cut : layout.cuts)
            pieces.at(cut.piece) += cut.count * layout.bars;
    }
    for (std::size_t p = 0; p < pieces.size(); ++p) {
        if (pieces[p] != problem.pieces[p].quantity) return "pieces lost or won";
    }
    for (std::size_t s = 0; s < bars.size(); ++s) {
        if (problem.stock[s].supply && bars[s] > *problem.stock[s].supply)
            return "more bars than there are";
    }
    if (cost != plan.cost || bought != plan.bought_length) return "a wrong sum";
    return {};
}

std::optional<LeastPrice> least_price_by_trying(const engine::NestProblem& problem) {
    return Trying(problem).run();
}

engine::NestProblem random_nest(std::uint32_t seed, int most_pieces) {
    std::mt19937 random(seed);
    engine::NestProblem problem;
    problem.kerf = drawn(random, 0, 3);
    if (drawn(random, 0, 2) == 0) problem.least_held = drawn(random, 5, 25);
    const int stocks = drawn(random, 1, 3);
    for (int s = 0; s < stocks; ++s) problem.stock.push_back(random_stock(random));
    problem.stock.front().supply.reset();
    for (int r = drawn(random, 0, 2); r > 0; --r) {
        engine::NestStock remnant{.length = drawn(random, 15, 60), .price = 0};
        if (drawn(random, 0, 1) == 0) remnant.price = drawn(random, 1, 300);
        remnant.supply = drawn(random, 1, 2);
        remnant.is_remnant = true;
        problem.stock.push_back(remnant);
    }
    const engine::NestStock& first = problem.stock.front();
    const int longest = static_cast<int>(first.length - first.trim_start - first.trim_end);
    int left = drawn(random, 1, most_pieces);
    const int shortest = drawn(random, 4, 12);
    while (left > 0) {
        const int quantity = drawn(random, 1, std::min(left, 1 + most_pieces / 4));
        const int most = drawn(random, 0, 2) == 0 ? longest : longest * 2 / 3;
        problem.pieces.push_back({.length = drawn(random, shortest, most), .quantity = quantity});
        left -= quantity;
    }
    return problem;
}

}  // namespace tests
