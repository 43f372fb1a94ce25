#include "engine/cutting/branch.h"

#include "engine/cutting/dive.h"
#include "engine/cutting/fill.h"
#include "engine/cutting/pair.h"
#include "engine/cutting/reduced_task.h"

#include <cmath>
#include <utility>

namespace engine::cutting {

namespace {

constexpr int cut_rounds_at_first = 12;
constexpr int cut_rounds = 3;

class Branching {
public:
    Branching(std::int64_t steps, Effort& effort) : effort_{effort}, end_{effort.done() + steps} {}

    // Depth first, tied before apart: that way leads to plans.
    Settled run(const Task& task, const Relaxed& relaxed) {
        Settled settled;
        settled.packing = look_into({task, relaxed.patterns}, cut_rounds_at_first);
        while (!settled.packing && !open_.empty() && !is_over()) {
            Branched next = std::move(open_.back());
            open_.pop_back();
            settled.packing = look_into(next, cut_rounds);
        }
        settled.is_refuted = !settled.packing && open_.empty() && !is_open_;
        return settled;
    }

private:
    bool is_over() const { return effort_.is_over() || effort_.done() >= end_; }

    std::optional<Packing> look_into(const Branched& branched, int rounds) {
        const Relaxed relaxed =
            relax(branched.task,
                  {.prices = prices_by_room(branched.task),
                   .patterns = branched.patterns,
                   .is_enough = [&](const Need& need) { return is_short(branched.task, need); },
                   .cut_rounds = rounds},
                  effort_);
        if (relaxed.is_refuted) return std::nullopt;
        if (!relaxed.is_solved) {
            is_open_ = true;
            return std::nullopt;
        }
        return look_at(branched.task, relaxed);
    }

    // A plan near the relaxation, or two branches.
    std::optional<Packing> look_at(const Task& task, const Relaxed& relaxed) {
        if (auto packing = rounded(task, relaxed)) return packing;
        const std::optional<Pair> pair = undecided_pair(task, relaxed);
        if (!pair) {
            is_open_ = true;
            return std::nullopt;
        }
        open_.push_back(kept_apart(task, *pair, relaxed.patterns));
        open_.push_back(tied(task, *pair, relaxed.patterns));
        return std::nullopt;
    }

    std::optional<Packing> rounded(const Task& task, const Relaxed& relaxed) {
        Task rest = task;
        Packing packing;
        for (std::size_t p = 0; p < relaxed.patterns.size(); ++p) {
            Filled filled{relaxed.patterns[p],
                          static_cast<int>(std::floor(relaxed.amounts[p] + 1e-3))};
            if (filled.times <= 0 ||
                rest.bars[static_cast<std::size_t>(filled.pattern.bar)].supply < filled.times)
                continue;
            for (const Filled& taken : in_kinds(task, take_off(rest, filled)))
                packing.push_back(taken);
        }
        const auto last = filled(rest, 3, effort_);
        if (!last) return std::nullopt;
        for (const Filled& filled : in_kinds(rest, *last)) packing.push_back(filled);
        return packing;
    }

    Effort& effort_;
    std::int64_t end_;
    std::vector<Branched> open_;
    bool is_open_ = false;  // something could not be settled
};

}  // namespace

Settled branch(const Task& task, const Relaxed& relaxed, std::int64_t steps, Effort& effort) {
    return Branching(steps, effort).run(task, relaxed);
}

}  // namespace engine::cutting
