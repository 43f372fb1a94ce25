#include "engine/cutting/search.h"

#include "engine/cutting/branch.h"
#include "engine/cutting/dive.h"
#include "engine/cutting/fill.h"
#include "engine/cutting/first_fit.h"

#include <algorithm>
#include <limits>

namespace engine::cutting {

namespace {

constexpr std::size_t most_vectors = 5'000;
constexpr std::size_t most_needs = 24;
constexpr std::int64_t dive_steps = 300'000'000;
constexpr std::int64_t patient_dive_steps = 600'000'000;
constexpr std::size_t most_rows = 1'500;  // more would take a dense inverse of too much memory
constexpr int quick_tries = 8;
constexpr int patient_tries = 40;

Need material(const Task& task) {
    Need need;
    for (const Bar& bar : task.bars) need.worth.push_back(std::max<std::int64_t>(0, bar.capacity));
    need.wanted = wanted_weight(task);
    return need;
}

std::vector<double> prices(const Task& task) {
    std::vector<double> prices;
    for (const Bar& bar : task.bars) prices.push_back(static_cast<double>(bar.price));
    return prices;
}

}  // namespace

Search::Search(const Task& task, Effort& effort) : task_{task}, effort_{effort} {
    needs_.push_back(material(task));
    from_.cost = cutting::least_cost(task.bars, needs_.back());
    for (const Bar& bar : task.bars) width_ = std::max({width_, bar.price, std::int64_t{1}});
}

const Found& Search::run() {
    keep_greedy();
    fill_quickly();
    if (task_.items.size() + task_.bars.size() <= most_rows) {
        if (!found_.packing || from_ < found_.vector.price) bound_all();
        settle_all();
        branch_open();
    }
    found_.least = open_.empty() ? upper() : std::min(open_.front().price, upper());
    if (from_ < found_.least) found_.least = from_;
    return found_;
}

std::int64_t Search::least_cost() const {
    const std::int64_t least =
        open_.empty() ? from_.cost : std::min(from_.cost, open_.front().price.cost);
    return found_.packing ? std::min(least, found_.vector.price.cost) : least;
}

// Better than the plan there is; without one, whatever there is to buy.
Price Search::upper() const {
    if (found_.packing) return found_.vector.price;
    Price all{1, 0};
    for (const Bar& bar : task_.bars) all.cost += bar.price * bar.supply;
    return all;
}

Task Search::with(const CountVector& vector) const {
    Task task = task_;
    for (std::size_t b = 0; b < task.bars.size(); ++b) task.bars[b].supply = vector.counts[b];
    return task;
}

bool Search::meets_all(const CountVector& vector) const {
    return std::all_of(needs_.begin(), needs_.end(),
                       [&](const Need& need) { return meets(vector, need); });
}

void Search::keep(const CountVector& vector, Packing packing) {
    if (found_.packing && !(vector.price < found_.vector.price)) return;
    found_.packing = std::move(packing);
    found_.vector = vector;
    forget_dearer();
}

void Search::forget_dearer() {
    std::erase_if(open_, [&](const CountVector& open) {
        return !(open.price < found_.vector.price) || !meets_all(open);
    });
}

void Search::keep_greedy() {
    if (const auto packing = first_fit(task_, effort_)) keep(*packing);
    if (const auto packing = filled_greedily(task_, effort_)) keep(*packing);
}

void Search::keep(const Packing& packing) {
    CountVector vector{{}, std::vector<int>(task_.bars.size(), 0)};
    for (std::size_t b = 0; b < task_.bars.size(); ++b) {
        if (is_free(task_.bars[b])) vector.counts[b] = task_.bars[b].supply;
    }
    for (const Filled& filled : packing) {
        const Bar& bar = task_.bars[static_cast<std::size_t>(filled.pattern.bar)];
        if (is_free(bar)) continue;
        vector.counts[static_cast<std::size_t>(filled.pattern.bar)] += filled.times;
        vector.price.cost += bar.price * filled.times;
        vector.price.bought += bar.bought * filled.times;
    }
    keep(vector, in_kinds(task_, packing));
}

// The costs from from_ on, as many as can be listed; leaves width_ such that they were.
CountVectors Search::next_vectors() {
    while (true) {
        const Price below = std::min(upper(), Price{from_.cost + width_, 0});
        CountVectors vectors = count_vectors(task_.bars, needs_, from_.cost, below, most_vectors);
        effort_.spend(200'000 + static_cast<std::int64_t>(vectors.vectors.size()) * 100);
        if (vectors.is_complete || width_ <= 1 || effort_.is_over()) return vectors;
        width_ /= 2;
    }
}

void Search::fill_quickly() {
    const CountVectors window = next_vectors();
    if (window.is_complete && window.vectors.empty()) {
        from_ = std::min(upper(), Price{from_.cost + width_, 0});
        return;
    }
    const std::int64_t end = effort_.done() + 100'000'000;
    bool is_first = window.is_complete;
    for (const CountVector& vector : window.vectors) {
        if (effort_.is_over() || effort_.done() > end) return;
        const Task task = with(vector);
        const auto packing = filled(task, is_first ? patient_tries : quick_tries, effort_);
        if (packing) keep(vector, in_kinds(task, *packing));
        if (packing && is_first) from_ = vector.price;
        if (packing) return;
        is_first = false;
    }
}

// Every need that is better than the last is kept; enough once nothing cheaper can be.
void Search::bound_all() {
    std::int64_t best = from_.cost;
    const auto is_enough = [&](const Need& need) {
        const std::int64_t least = cutting::least_cost(task_.bars, need);
        if (least < best) return false;
        best = least;
        needs_.push_back(need);
        if (needs_.size() > most_needs) needs_.erase(needs_.begin() + 1);
        return found_.packing && Price{best, 0} >= found_.vector.price;
    };
    std::vector<Pattern> start;
    if (found_.packing) {
        for (const Filled& filled : in_items(task_, *found_.packing))
            start.push_back(filled.pattern);
    }
    const Relaxed relaxed = relax(task_,
                                  {.prices = prices(task_),
                                   .patterns = std::move(start),
                                   .is_enough = is_enough,
                                   .care = Care::rough},
                                  effort_);
    patterns_ = relaxed.patterns;
    if (Price{best, 0} > from_) from_ = {best, 0};
}

void Search::settle_all() {
    const Price end = upper();
    while (from_ < upper() && !effort_.is_over()) {
        const CountVectors window = next_vectors();
        if (!window.is_complete) return;
        const Price next = std::min(upper(), Price{from_.cost + width_, 0});
        if (!settle_window(window)) return;
        from_ = std::min(next, end);
    }
}

// Until a plan is found: the rest of the window is dearer. False: cut short.
bool Search::settle_window(const CountVectors& window) {
    for (const CountVector& vector : window.vectors) {
        if (effort_.is_over()) return false;
        if (!meets_all(vector)) continue;
        const State state = settle(vector);
        if (state == State::packed) return true;
        if (state == State::open) open_.push_back(vector);
        if (from_ < vector.price && state == State::refuted) from_ = vector.price;
    }
    return true;
}

Relaxed Search::relaxed_with(const Task& task) {
    Relaxed relaxed = relax(task,
                            {.prices = prices_by_room(task),
                             .patterns = patterns_,
                             .is_enough =
                                 [&](const Need& need) {
                                     if (!is_short(task, need)) return false;
                                     needs_.push_back(need);
                                     return true;
                                 }},
                            effort_);
    if (needs_.size() > most_needs) needs_.erase(needs_.begin() + 1);
    return relaxed;
}

Search::State Search::settle(const CountVector& vector) {
    const Task task = with(vector);
    const Relaxed relaxed = relaxed_with(task);
    if (relaxed.is_refuted) return State::refuted;
    std::optional<Packing> packing;
    if (const auto quick = filled(task, quick_tries, effort_)) packing = in_kinds(task, *quick);
    if (!packing)
        packing = Dive(effort_, dive_steps, Care::rough)
                      .packing(task, relaxed, {.others = 2, .depth = 4});
    if (!packing) return State::open;
    keep(vector, std::move(*packing));
    return State::packed;
}

// The cheapest first, each with half of what effort is left.
void Search::branch_open() {
    std::vector<CountVector> given_up;
    const auto is_new = [&](const CountVector& vector) {
        return std::find(given_up.begin(), given_up.end(), vector) == given_up.end();
    };
    while (!effort_.is_over()) {
        const auto next = std::find_if(open_.begin(), open_.end(), is_new);
        if (next == open_.end()) return;
        const CountVector vector = *next;
        if (branched(vector) == State::open)
            given_up.push_back(vector);
        else
            std::erase(open_, vector);
    }
}

Search::State Search::branched(const CountVector& vector) {
    const Task task = with(vector);
    const Relaxed relaxed = relaxed_with(task);
    if (relaxed.is_refuted) return State::refuted;
    if (!relaxed.is_solved) return State::open;
    if (auto packing = Dive(effort_, patient_dive_steps, Care::fine)
                           .packing(task, relaxed, {.others = 4, .depth = 8})) {
        keep(vector, std::move(*packing));
        return State::packed;
    }
    Settled settled = branch(task, relaxed, effort_.left() / 2 + 1, effort_);
    if (settled.packing) keep(vector, std::move(*settled.packing));
    if (settled.packing) return State::packed;
    return settled.is_refuted ? State::refuted : State::open;
}

}  // namespace engine::cutting
