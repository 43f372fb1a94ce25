#include "model/book/spread.h"

#include <algorithm>
#include <cstddef>

namespace model {

std::vector<double> spread(const std::vector<double>& wanted,
                           double pitch,
                           double least,
                           double most) {
    // Without the pitch it is a rising fit, found by pooling neighbours that do not rise.
    struct Pool {
        double sum = 0.0;
        std::size_t count = 0;
        double mean() const { return sum / static_cast<double>(count); }
    };
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        pools.push_back({wanted[i] - pitch * static_cast<double>(i), 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() >= pools.back().mean()) {
            pools[pools.size() - 2].sum += pools.back().sum;
            pools[pools.size() - 2].count += pools.back().count;
            pools.pop_back();
        }
    }
    std::vector<double> places;
    for (const auto& pool : pools) {
        for (std::size_t k = 0; k < pool.count; ++k) {
            const double last = most - pitch * static_cast<double>(wanted.size() - 1);
            const double base = std::max(least, std::min(pool.mean(), last));
            places.push_back(base + pitch * static_cast<double>(places.size()));
        }
    }
    return places;
}

}  // namespace model
