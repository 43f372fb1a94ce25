// Bars that the seller cuts in half, and stocks that share them.
#pragma once

#include "tests/model/schedule/saw_job.h"

#include <string>
#include <vector>

namespace tests {

// A whole bar of 6 m in halves for 20.00 and 5.00 for its cut, or bars of 3 m for 12.00 each.
inline model::BarSupply halves_or_short(int free_cuts) {
    constexpr int any = 1'000'000;
    return {.offers = {{.length = mm(2998),
                        .left = any,
                        .price = 1250,
                        .halved_from = mm(6000),
                        .halved_price = 2500},
                       {.length = mm(2990), .left = any, .price = 1200}},
            .free_cuts = free_cuts,
            .cut_fee = 500};
}

// One piece of each stock, which fills half a bar; all stocks are of one section and alloy.
inline SmallJob half_of_each(std::size_t stocks) {
    auto job = saw_job(std::vector<int>(stocks, 2900));
    job.project.stock.assign(stocks, model::Stock(job.project.stock[0]));
    for (std::size_t i = 0; i < stocks; ++i) {
        job.project.stock[i].name = "stock " + std::to_string(i);
        job.resolved.pieces[i].stock = static_cast<model::Index>(i);
    }
    return job;
}

// A whole bar of 6 m in halves for 20.00 and 5.00 for its cut, and nothing else.
inline model::BarSupply halves_alone(int free_cuts) {
    auto supply = halves_or_short(free_cuts);
    supply.offers.pop_back();
    return supply;
}

}  // namespace tests
