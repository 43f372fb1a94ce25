// One-dimensional nesting: which bars to take, and which pieces to cut from each, at the least
// cost. It says "cheapest" only where that is proven; otherwise it tells how much cheaper a plan
// could be.
//
// The cut is modelled as at a saw with a stop (common practice): every piece takes its length and
// one kerf, and a bar offers its length less its trims and plus one kerf, since the kerf after the
// last piece may hang over the end. What a trim takes includes the kerf of its own cut.
#pragma once

#include "engine/result.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace engine {

// All lengths are in one whole unit of the caller's choice (nanometres, 1/64 in); prices are in
// cents.
struct NestPiece {
    std::int64_t length = 0;
    std::int64_t quantity = 1;
};

struct NestStock {
    std::int64_t length = 0;
    std::int64_t price = 0;              // of one bar; 0 only where the supply is limited
    std::optional<std::int64_t> supply;  // nothing: as many as are wanted
    std::int64_t trim_start = 0;         // cut off at the datum end before the first piece
    std::int64_t trim_end = 0;           // not to be used at the other end
    bool is_remnant = false;  // on hand: not part of the bought length, whatever its price
};

struct NestProblem {
    std::vector<NestPiece> pieces;
    std::vector<NestStock> stock;
    std::int64_t kerf = 0;
    // The vice must hold what is left of the bar when its last piece is cut: that piece and all
    // that is behind it are at least so long together (common practice for a saw's clamp). 0: no
    // such rule.
    std::int64_t least_held = 0;
};

struct NestCount {
    std::size_t piece = 0;  // place in NestProblem::pieces
    std::int64_t count = 0;

    bool operator==(const NestCount&) const = default;
};

// Bars that are cut alike.
struct NestLayout {
    std::size_t stock = 0;  // place in NestProblem::stock
    std::int64_t bars = 0;  // how many of them
    std::vector<NestCount>
        cuts;  // of one bar, the longest first: a piece cut wrong can be recut shorter
    std::int64_t offcut = 0;  // usable length left over in each bar

    bool operator==(const NestLayout&) const = default;
};

// In the order in which they count: the cheapest plan; of those the one with the least bought
// length; of those the one with the longest single offcut; of those the one with the fewest
// layouts.
struct NestPlan {
    std::vector<NestLayout> layouts;
    std::int64_t cost = 0;
    std::int64_t bought_length = 0;
    std::int64_t longest_offcut = 0;

    bool operator==(const NestPlan&) const = default;
};

struct Nest {
    NestPlan plan;
    std::int64_t least_cost = 0;  // no plan costs less: proven in whole numbers
    bool is_cheapest = false;     // proven: plan.cost == least_cost
    bool is_shortest = false;     // proven besides: none of that cost needs less bought length
    std::int64_t work = 0;        // steps taken, the same on every machine
};

// What is known so far, told while the work goes on.
struct NestProgress {
    std::optional<std::int64_t> cost;  // of the best plan found yet
    std::int64_t least_cost = 0;
    std::int64_t work = 0;
    // That plan, to be shown meanwhile: it can be cut, and what counts after cost and bought length
    // is still to come. There only while it is told of.
    const NestPlan* plan = nullptr;
};

struct NestLimits {
    std::int64_t work =
        4'000'000'000;  // steps: some seconds. Results depend on it, never on the clock. What
                        // counts after cost and bought length takes a few more, less than 0.1 s
    // Called now and then from the calling thread. Where it answers false, the work ends and what
    // has been found is given. May be empty.
    std::function<bool(const NestProgress&)> go_on;
};

// Errors: invalid_value (a length, quantity, price or supply that cannot be, told by its place),
// out_of_range (too large to count with; a piece longer than every bar; a supply that is too small,
// or within which no plan was found in the allowed work), cancelled (stopped before there was any
// plan).
Result<Nest> nest(const NestProblem& problem, const NestLimits& limits = {});

// What contradicts that `plan` can be cut as `problem` asks, in words; nothing where it can.
std::optional<std::string> fault(const NestProblem& problem, const NestPlan& plan);

}  // namespace engine
