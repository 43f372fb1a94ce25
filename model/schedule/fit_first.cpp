// Longest piece first, onto the first bar that has room.
#include "model/schedule/bar_stock.h"
#include "model/schedule/first_fit.h"

#include <algorithm>
#include <limits>

namespace model {
namespace {

class Planner {
public:
    Planner(const Resolved& resolved, const PlanTask& task, BarPlan& plan)
        : resolved_{resolved}, kerf_{resolved.shop.kerf}, stock_{task.stock}, plan_{plan} {
        for (std::size_t i = 0; i < stock_.size(); ++i) {
            if (stock_[i].from == BarFrom::shop) continue;
            while (stock_[i].left > 0) open_bar(i);
        }
    }

    void place(Index piece) {
        const Nm length = resolved_.pieces[piece].length;
        auto bar = room_.first_with(length);
        if (bar == FirstFit::none) bar = buy_bar_for(length);
        if (bar == FirstFit::none) {
            plan_.left_out.push_back(piece);
        } else {
            cut(bar, piece, length);
        }
    }

    void finish() {
        for (std::size_t i = 0; i < plan_.bars.size(); ++i) {
            const bool is_bought = plan_.bars[i].from == BarFrom::shop;
            if (is_bought) exchange_for_shortest(i);
            if (is_bought) plan_.cost += stock_[is_of_[i]].counted;
        }
        plan_.cost = (plan_.cost + cost_of_odd_halves(stock_, plan_.bars)) / 2;
        std::erase_if(plan_.bars, [](const PlannedBar& bar) {
            return bar.from != BarFrom::saw && bar.cuts.empty();
        });
    }

private:
    std::size_t open_bar(std::size_t stock) {
        if (stock_[stock].from != BarFrom::saw) plan_.bars.push_back(planned_bar(stock_[stock]));
        is_of_.push_back(stock);
        room_.add(stock_[stock].room());
        if (stock_[stock].left < std::numeric_limits<int>::max()) --stock_[stock].left;
        return is_of_.size() - 1;
    }

    std::size_t buy_bar_for(Nm piece_length) {
        for (std::size_t i = 0; i < stock_.size(); ++i) {
            const auto& offer = stock_[i];
            if (offer.from != BarFrom::shop || offer.left == 0) continue;
            if (piece_length <= offer.room()) return open_bar(i);
        }
        return FirstFit::none;
    }

    void cut(std::size_t bar_index, Index piece, Nm length) {
        auto& bar = plan_.bars[bar_index];
        bar.cuts.push_back({.piece = piece, .start = bar.next_start});
        bar.next_start += length + kerf_;
        room_.set(bar_index, bar.length - stock_[is_of_[bar_index]].end_trim - bar.next_start);
    }

    // A new bar is the longest on offer; now that all is cut, a shorter one may hold its cuts.
    void exchange_for_shortest(std::size_t bar_index) {
        auto& bar = plan_.bars[bar_index];
        const auto now = is_of_[bar_index];
        const Nm least = bar.next_start - kerf_ + stock_[now].end_trim;
        for (auto i = stock_.size(); i-- > 0;) {
            auto& offer = stock_[i];
            if (offer.from != BarFrom::shop || offer.length >= bar.length) return;
            if (offer.left == 0 || offer.length < least) continue;
            if (stock_[now].left < std::numeric_limits<int>::max()) ++stock_[now].left;
            if (offer.left < std::numeric_limits<int>::max()) --offer.left;
            is_of_[bar_index] = i;
            auto other = planned_bar(offer);
            other.cuts = std::move(bar.cuts);
            other.next_start = bar.next_start;
            bar = std::move(other);
            return;
        }
    }

    const Resolved& resolved_;
    Nm kerf_;
    std::vector<PlanStock> stock_;
    BarPlan& plan_;
    std::vector<std::size_t> is_of_;  // of each bar: in stock_
    FirstFit room_;
};

}  // namespace

void fit_first(const Resolved& resolved, const PlanTask& task, BarPlan& plan) {
    Planner planner{resolved, task, plan};
    for (const auto piece : task.pieces) planner.place(piece);
    planner.finish();
}

}  // namespace model
