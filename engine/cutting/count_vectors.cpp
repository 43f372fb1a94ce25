#include "engine/cutting/count_vectors.h"

#include "engine/cutting/wide.h"

#include <algorithm>
#include <limits>

namespace engine::cutting {

namespace {

constexpr std::int64_t most_nodes = 2'000'000;
constexpr std::int64_t more_than_any_cost = std::numeric_limits<std::int64_t>::max() / 4;

class Enumeration {
public:
    Enumeration(const std::vector<Bar>& bars,
                const std::vector<Need>& needs,
                std::int64_t from,
                const Price& below,
                std::size_t most)
        : bars_{bars}, needs_{needs}, from_{from}, below_{below}, most_{most} {
        vector_.counts.assign(bars.size(), 0);
        for (std::size_t b = 0; b < bars.size(); ++b) {
            if (is_free(bars[b]))
                vector_.counts[b] = bars[b].supply;
            else
                axes_.push_back(b);
        }
        for (const Need& need : needs) left_.push_back(need.wanted - worth(need));
    }

    CountVectors run() {
        count_axis(0);
        std::sort(found_.vectors.begin(), found_.vectors.end());
        return std::move(found_);
    }

private:
    std::int64_t worth(const Need& need) const {
        std::int64_t sum = 0;
        for (std::size_t b = 0; b < bars_.size(); ++b) sum += need.worth[b] * vector_.counts[b];
        return sum;
    }

    // What the axes from here on can add to a need within the money left does not do.
    bool is_hopeless(std::size_t axis, std::size_t need) const {
        if (left_[need] <= 0) return false;
        const Wide money = below_.cost - vector_.price.cost;
        Wide by_supply = 0;
        bool is_by_money_possible = false;
        for (std::size_t a = axis; a < axes_.size(); ++a) {
            const Bar& bar = bars_[axes_[a]];
            const std::int64_t each = needs_[need].worth[axes_[a]];
            by_supply += Wide{each} * bar.supply;
            if (bar.price == 0 || Wide{each} * money >= Wide{left_[need]} * bar.price)
                is_by_money_possible = true;
        }
        return by_supply < left_[need] || !is_by_money_possible;
    }

    void count_axis(std::size_t axis) {
        if (++nodes_ > most_nodes || found_.vectors.size() >= most_) {
            found_.is_complete = false;
            return;
        }
        for (std::size_t n = 0; n < needs_.size(); ++n) {
            if (is_hopeless(axis, n)) return;
        }
        if (axis == axes_.size()) return keep();
        const Bar& bar = bars_[axes_[axis]];
        int count = axis + 1 == axes_.size() ? fewest(axis) : 0;
        change(axis, count);
        for (; count <= bar.supply && vector_.price < below_; ++count) {
            count_axis(axis + 1);
            change(axis, 1);
        }
        change(axis, -count);
    }

    // Of the last axis: fewer would not meet the needs.
    int fewest(std::size_t axis) const {
        std::int64_t fewest = 0;
        for (std::size_t n = 0; n < needs_.size(); ++n) {
            const std::int64_t each = needs_[n].worth[axes_[axis]];
            if (left_[n] > 0 && each > 0) fewest = std::max(fewest, (left_[n] + each - 1) / each);
        }
        return static_cast<int>(std::min<std::int64_t>(fewest, bars_[axes_[axis]].supply));
    }

    void change(std::size_t axis, int by) {
        const std::size_t b = axes_[axis];
        vector_.counts[b] += by;
        vector_.price.cost += bars_[b].price * by;
        vector_.price.bought += bars_[b].bought * by;
        for (std::size_t n = 0; n < needs_.size(); ++n) left_[n] -= needs_[n].worth[b] * by;
    }

    void keep() {
        if (vector_.price.cost >= from_ && vector_.price < below_)
            found_.vectors.push_back(vector_);
    }

    const std::vector<Bar>& bars_;
    const std::vector<Need>& needs_;
    std::int64_t from_;
    Price below_;
    std::size_t most_;
    std::int64_t nodes_ = 0;
    std::vector<std::size_t> axes_;
    std::vector<std::int64_t> left_;
    CountVector vector_;
    CountVectors found_;
};

}  // namespace

bool meets(const CountVector& vector, const Need& need) {
    std::int64_t worth = 0;
    for (std::size_t b = 0; b < vector.counts.size(); ++b)
        worth += need.worth[b] * vector.counts[b];
    return worth >= need.wanted;
}

CountVectors count_vectors(const std::vector<Bar>& bars,
                           const std::vector<Need>& needs,
                           std::int64_t from,
                           const Price& below,
                           std::size_t most) {
    return Enumeration(bars, needs, from, below, most).run();
}

// The best worth for its price, as often as it takes.
std::int64_t least_cost(const std::vector<Bar>& bars, const Need& need) {
    std::int64_t left = need.wanted;
    for (std::size_t b = 0; b < bars.size(); ++b) {
        if (bars[b].price == 0) left -= need.worth[b] * bars[b].supply;
    }
    if (left <= 0) return 0;
    std::int64_t least = more_than_any_cost;
    for (std::size_t b = 0; b < bars.size(); ++b) {
        if (bars[b].price == 0 || need.worth[b] <= 0) continue;
        const Wide cost = (Wide{left} * bars[b].price + need.worth[b] - 1) / need.worth[b];
        if (cost < least) least = static_cast<std::int64_t>(cost);
    }
    return least;
}

}  // namespace engine::cutting
