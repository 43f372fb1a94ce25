#include "model/buying/bars_in_hand.h"

#include "model/buying/purchase_made.h"

#include <algorithm>

namespace model {
namespace {

bool is_begun(const BarAtSaw& bar) {
    return bar.is_used_up || std::ranges::any_of(bar.cuts, [](const BarCut& cut) {
               return cut.state != CutState::planned;
           });
}

bool is_any_begun(const Project& project, int purchase) {
    return std::ranges::any_of(project.stock, [&](const Stock& stock) {
        return std::ranges::any_of(stock.at_saw, [&](const BarAtSaw& bar) {
            return bar.purchase == purchase && is_begun(bar);
        });
    });
}

}  // namespace

const Purchase* purchase_left_uncut(const Purchases& bought,
                                    const Project& before,
                                    const Project& after) {
    const auto left = std::ranges::find_if(bought.all, [&](const Purchase& it) {
        return it.number != 0 && is_of_bars_in_hand(it) && counts_as_paid(it, after) &&
               is_any_begun(before, it.number) && !is_any_begun(after, it.number);
    });
    return left == bought.all.end() ? nullptr : &*left;
}

}  // namespace model
