#include "model/buying/bars_in_hand.h"

#include "model/buying/purchase_made.h"

#include <algorithm>

namespace model {
namespace {

// How many bars of the stock came with those before it.
int bars_before(const Purchases& bought, const BarsThen& then) {
    int bars = 0;
    for (const auto& purchase : bought.all) {
        for (const auto& it : purchase.bars_then) {
            if (it.stock == then.stock && it.bars < then.bars) bars = std::max(bars, it.bars);
        }
    }
    return bars;
}

bool is_begun(const BarAtSaw& bar) {
    return bar.is_used_up || std::ranges::any_of(bar.cuts, [](const BarCut& cut) {
               return cut.state != CutState::planned;
           });
}

// What came last lies last at the saw.
bool is_any_begun(const Project& project, const BarsThen& then, int were_before) {
    const auto stock = std::ranges::find(project.stock, then.stock, &Stock::name);
    if (stock == project.stock.end()) return false;
    int bars = 0;
    return std::ranges::any_of(stock->at_saw, [&](const BarAtSaw& bar) {
        return !bar.was_offcut && ++bars > were_before && is_begun(bar);
    });
}

}  // namespace

const Purchase* purchase_left_uncut(const Purchases& bought,
                                    const Project& before,
                                    const Project& after) {
    for (std::size_t i = 0; i < bought.all.size(); ++i) {
        const auto& purchase = bought.all[i];
        if (!is_of_bars_in_hand(purchase) || !counts_as_paid(bought, i, after)) continue;
        const auto is_begun_in = [&](const Project& project) {
            return std::ranges::any_of(purchase.bars_then, [&](const BarsThen& then) {
                return is_any_begun(project, then, bars_before(bought, then));
            });
        };
        if (is_begun_in(before) && !is_begun_in(after)) return &purchase;
    }
    return nullptr;
}

}  // namespace model
