#include "engine/cutting/column_bound.h"

#include "engine/cutting/column_master.h"
#include "engine/cutting/knapsack.h"
#include "engine/cutting/triple_cut.h"

#include <algorithm>
#include <optional>

namespace engine::cutting {

namespace {

// How fine the table and how far the search goes: coarse first, since most columns are found so.
struct Fineness {
    std::int64_t cells;
    std::int64_t nodes;
};
constexpr Fineness fineness[] = {{4'000, 2'000}, {32'000, 40'000}, {100'000, 400'000}};

constexpr std::size_t cuts_a_round = 20;
constexpr std::size_t most_cuts = 120;

class Relaxation {
public:
    Relaxation(const Task& task, const Relaxing& relaxing, Effort& effort)
        : task_{task},
          relaxing_{relaxing},
          effort_{effort},
          master_{std::in_place, task, relaxing.prices, std::vector<Triple>{}},
          cut_rounds_{relaxing.cut_rounds},
          knapsack_{task, fineness[0].cells} {
        for (const Pattern& pattern : relaxing.patterns) master_->add(pattern);
        for (std::size_t i = 0; i < task.items.size(); ++i) add_alone(static_cast<int>(i));
    }

    Relaxed run() {
        bool is_refuted = false;
        bool is_solved = false;
        while (!is_refuted && !is_solved && !effort_.is_over()) {
            master_->minimise(effort_);
            const bool is_improved = add_columns();
            is_refuted = relaxing_.is_enough(need_);
            is_solved = !is_improved && !master_->raise_lack_cost() && !refine() && !cut();
        }
        Relaxed relaxed = master_->relaxed();
        relaxed.is_refuted = is_refuted;
        relaxed.is_solved = is_solved;
        return relaxed;
    }

private:
    // As many of one item as go into a bar.
    void add_alone(int item) {
        const Item& of = task_.items[static_cast<std::size_t>(item)];
        for (std::size_t b = 0; b < task_.bars.size(); ++b) {
            if (task_.bars[b].supply <= 0 || of.demand == 0) continue;
            const std::int64_t most = room(task_.bars[b], of.longest) / of.weight;
            const bool is_one = std::find(of.apart.begin(), of.apart.end(), item) != of.apart.end();
            const std::int64_t count = std::min<std::int64_t>(is_one ? 1 : of.demand, most);
            if (count > 0) master_->add({static_cast<int>(b), {{item, static_cast<int>(count)}}});
        }
    }

    // Whether there were any. Leaves in need_ what the values prove.
    bool add_columns() {
        const std::vector<std::int32_t> values = master_->values(knapsack_);
        knapsack_.set_values(values, effort_);
        need_.wanted = 0;
        for (std::size_t i = 0; i < values.size(); ++i)
            need_.wanted += std::int64_t{values[i]} * task_.items[i].demand;
        const std::vector<std::int32_t> penalties = master_->penalties();
        for (std::size_t c = 0; c < penalties.size(); ++c)
            need_.wanted -= std::int64_t{penalties[c]} * most_halves(task_, master_->cuts()[c]);
        knapsack_.set_penalties(master_->cuts(), penalties);
        need_.worth.clear();
        is_cut_off_ = false;
        bool is_any = false;
        for (std::size_t b = 0; b < task_.bars.size(); ++b)
            is_any = add_columns_of(static_cast<int>(b)) || is_any;
        return is_any;
    }

    bool add_columns_of(int bar) {
        if (task_.bars[static_cast<std::size_t>(bar)].supply <= 0) {
            need_.worth.push_back(knapsack_.bound(bar));
            return false;
        }
        const Best best =
            knapsack_.best(bar, master_->worth_adding(bar), fineness[level_].nodes, effort_);
        need_.worth.push_back(best.bound);
        is_cut_off_ = is_cut_off_ || !best.is_exact;
        bool is_any = false;
        for (const Pattern& pattern : best.patterns) is_any = master_->add(pattern) || is_any;
        return is_any;
    }

    bool refine() {
        const bool is_worth_it = relaxing_.care == Care::fine ||
                                 (relaxing_.care == Care::until_feasible && master_->is_lacking());
        if (level_ > 0 && !is_worth_it) return false;
        if (!is_cut_off_ || level_ + 1 >= std::size(fineness)) return false;
        ++level_;
        knapsack_ = Knapsack(task_, fineness[level_].cells);
        return true;
    }

    // Cuts off what is solved, as long as whole bars could not be so.
    bool cut() {
        if (cut_rounds_ == 0 || master_->is_lacking() || master_->cuts().size() > most_cuts)
            return false;
        --cut_rounds_;
        const Relaxed relaxed = master_->relaxed();
        std::vector<Triple> cuts = master_->cuts();
        const std::vector<Triple> more = violated_triples(task_, relaxed, cuts, cuts_a_round);
        if (more.empty()) return false;
        cuts.insert(cuts.end(), more.begin(), more.end());
        master_.emplace(task_, relaxing_.prices, std::move(cuts));
        for (const Pattern& pattern : relaxed.patterns) master_->add(pattern);
        return true;
    }

    const Task& task_;
    const Relaxing& relaxing_;
    Effort& effort_;
    std::optional<ColumnMaster> master_;
    int cut_rounds_;
    Knapsack knapsack_;
    Need need_;
    std::size_t level_ = 0;
    bool is_cut_off_ = false;
};

}  // namespace

bool is_short(const Task& task, const Need& need) {
    std::int64_t worth = 0;
    for (std::size_t b = 0; b < task.bars.size(); ++b)
        worth += need.worth[b] * std::max(0, task.bars[b].supply);
    return worth < need.wanted;
}

Relaxed relax(const Task& task, const Relaxing& relaxing, Effort& effort) {
    return Relaxation(task, relaxing, effort).run();
}

}  // namespace engine::cutting
