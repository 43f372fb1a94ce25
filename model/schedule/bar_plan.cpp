#include "model/schedule/bar_plan.h"

#include "model/schedule/first_fit.h"

#include <algorithm>
#include <limits>

namespace model {
namespace {

class Planner {
public:
    Planner(const Resolved& resolved, BarSupply supply, Index stock)
        : resolved_{resolved}, kerf_{resolved.shop.kerf}, trim_{resolved.shop.end_trim} {
        plan_.stock = stock;
        for (const auto& offer : supply.offers) note_room(offer.length);
        for (const auto offcut : supply.offcuts) {
            note_room(offcut);
            open_bar(offcut, BarFrom::offcut);
        }
        left_ = supply.offers;
        plan_.supply = std::move(supply);
    }

    // Pieces come longest first.
    void place(Index piece) {
        const Nm length = resolved_.pieces[piece].length;
        auto bar = room_.first_with(length);
        if (bar == FirstFit::none) bar = buy_bar_for(length);
        if (bar != FirstFit::none) {
            cut(bar, piece, length);
        } else if (length > plan_.longest_piece_room) {
            plan_.too_long.push_back(piece);
        } else {
            plan_.left_out.push_back(piece);
        }
    }

    BarPlan finished() && {
        std::erase_if(plan_.bars, [](const PlannedBar& bar) { return bar.cuts.empty(); });
        for (auto& bar : plan_.bars) {
            if (bar.from == BarFrom::shop) exchange_for_shortest(bar);
        }
        return std::move(plan_);
    }

private:
    void note_room(Nm bar_length) {
        plan_.longest_piece_room = std::max(plan_.longest_piece_room, bar_length - 2 * trim_);
    }

    std::size_t open_bar(Nm length, BarFrom from) {
        plan_.bars.push_back({.length = length, .from = from, .next_start = trim_});
        room_.add(length - 2 * trim_);
        return plan_.bars.size() - 1;
    }

    std::size_t buy_bar_for(Nm piece_length) {
        for (auto& offer : left_) {
            if (offer.left == 0 || piece_length > offer.length - 2 * trim_) continue;
            --offer.left;
            return open_bar(offer.length, BarFrom::shop);
        }
        return FirstFit::none;
    }

    void cut(std::size_t bar_index, Index piece, Nm length) {
        auto& bar = plan_.bars[bar_index];
        bar.cuts.push_back({.piece = piece, .start = bar.next_start});
        bar.next_start += length + kerf_;
        room_.set(bar_index, bar.length - trim_ - bar.next_start);
    }

    void exchange_for_shortest(PlannedBar& bar) {
        const Nm least = bar.next_start - kerf_ + trim_;
        for (auto offer = left_.rbegin(); offer != left_.rend(); ++offer) {
            if (offer->length >= bar.length) return;
            if (offer->left == 0 || offer->length < least) continue;
            give_back(bar.length);
            --offer->left;
            bar.length = offer->length;
            return;
        }
    }

    void give_back(Nm length) {
        const auto offer = std::ranges::find(left_, length, &OfferedBar::length);
        if (offer->left < std::numeric_limits<int>::max()) ++offer->left;
    }

    const Resolved& resolved_;
    Nm kerf_;
    Nm trim_;
    std::vector<OfferedBar> left_;
    FirstFit room_;
    BarPlan plan_;
};

// The pieces cut from each stock, longest first.
std::vector<std::vector<Index>> pieces_by_stock(const Project& project, const Resolved& resolved) {
    std::vector<std::vector<Index>> pieces(project.stock.size());
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        if (piece.stock < pieces.size()) pieces[piece.stock].push_back(i);
    }
    for (auto& of_stock : pieces) {
        std::ranges::stable_sort(of_stock, std::ranges::greater{},
                                 [&](Index i) { return resolved.pieces[i].length; });
    }
    return pieces;
}

}  // namespace

std::vector<BarPlan> bar_plans(const Project& project, const Resolved& resolved) {
    std::vector<BarPlan> plans;
    const auto pieces = pieces_by_stock(project, resolved);
    for (Index stock = 0; stock < pieces.size(); ++stock) {
        if (pieces[stock].empty()) continue;
        Planner planner{resolved, bar_supply(project, resolved, project.stock[stock]), stock};
        for (const auto piece : pieces[stock]) planner.place(piece);
        plans.push_back(std::move(planner).finished());
    }
    return plans;
}

}  // namespace model
