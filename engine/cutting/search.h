// The search for the cheapest packing, from a plan at once to a proof.
//
// A. Counts of bars that could do are listed, the cheapest first (count_vectors).
// B. The first of them that can be filled quickly gives a plan (fill).
// C. The linear relaxation over all bars strikes off counts (column_bound).
// D. Each count that is left and better than the plan is relaxed by itself: struck off, or rounded
// and
//    dived into for a plan (dive).
// E. What is open still is settled by branch and price (branch).
// Since every count below the plan's is struck off by a proof in whole numbers, no rounding of a
// bound to "the next bar" is needed: with several prices that would be no proof.
#pragma once

#include "engine/cutting/count_vectors.h"
#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <functional>
#include <optional>
#include <vector>

namespace engine::cutting {

struct Found {
    std::optional<Packing> packing;  // in kinds
    CountVector vector;              // its bars: never fewer than it uses
    Price least;                     // nothing is below
};

class Search {
public:
    Search(const Task& task, Effort& effort);

    const Found& run();

    // At any time; what `effort` tells whom it asks.
    const Found& found() const { return found_; }
    // Whatever there is below the plan, or at all without one, is proven impossible.
    bool is_settled() const { return open_.empty() && !(from_ < upper()); }
    // No plan is cheaper, as far as is known.
    std::int64_t least_cost() const;

private:
    enum class State { packed, refuted, open };

    CountVectors next_vectors();
    Price upper() const;
    Task with(const CountVector& vector) const;
    bool meets_all(const CountVector& vector) const;
    void keep(const CountVector& vector, Packing packing);
    void keep(const Packing& packing);  // in items
    void keep_greedy();
    void fill_quickly();
    void bound_all();
    void settle_all();
    bool settle_window(const CountVectors& window);
    State settle(const CountVector& vector);
    Relaxed relaxed_with(const Task& task);
    void branch_open();
    State branched(const CountVector& vector);
    void forget_dearer();

    const Task& task_;
    Effort& effort_;
    Found found_;
    std::vector<Need> needs_;
    std::vector<Pattern> patterns_;  // that were of use
    std::vector<CountVector> open_;  // not settled, ascending
    Price from_;                     // all below is struck off or in open_
    std::int64_t width_ = 0;         // of costs that are listed at once
};

}  // namespace engine::cutting
