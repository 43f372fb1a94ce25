#include "engine/cutting/nest_plan.h"

#include <algorithm>
#include <map>

namespace engine::cutting {

namespace {

// Pieces of one length that are asked for in several places, handed out in that order.
class PiecesByLength {
public:
    explicit PiecesByLength(const NestProblem& problem) : problem_{problem} {
        for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
            if (problem.pieces[p].quantity > 0)
                left_[problem.pieces[p].length].push_back({p, problem.pieces[p].quantity});
        }
    }

    // The most bars, up to `bars`, for which `count` a bar are of one place.
    std::int64_t alike(int kind, std::int64_t count, std::int64_t bars) const {
        const std::vector<NestCount>& left = left_.at(length(kind));
        const std::int64_t most = left.front().count / count;
        return std::clamp<std::int64_t>(most, 1, bars);
    }

    std::vector<NestCount> take(int kind, std::int64_t count, std::int64_t bars) {
        std::vector<NestCount>& left = left_.at(length(kind));
        std::vector<NestCount> cuts;
        while (count > 0 && !left.empty()) {
            const std::int64_t now = std::min(count, left.front().count / bars);
            cuts.push_back({left.front().piece, now});
            left.front().count -= now * bars;
            count -= now;
            if (left.front().count == 0) left.erase(left.begin());
        }
        return cuts;
    }

private:
    std::int64_t length(int kind) const {
        return problem_.pieces[static_cast<std::size_t>(kind)].length;
    }

    const NestProblem& problem_;
    std::map<std::int64_t, std::vector<NestCount>> left_;
};

// Bars of a pattern, parted where their pieces come from different places.
void add_layouts(NestPlan& plan,
                 PiecesByLength& pieces,
                 const Filled& filled,
                 std::int64_t offcut) {
    for (std::int64_t left = filled.times; left > 0;) {
        std::int64_t bars = left;
        for (const Part& part : filled.pattern.parts)
            bars = std::min(bars, pieces.alike(part.item, part.count, left));
        NestLayout layout{static_cast<std::size_t>(filled.pattern.bar), bars, {}, offcut};
        for (const Part& part : filled.pattern.parts) {
            const auto cuts = pieces.take(part.item, part.count, bars);
            layout.cuts.insert(layout.cuts.end(), cuts.begin(), cuts.end());
        }
        plan.layouts.push_back(std::move(layout));
        left -= bars;
    }
}

// Alike bars together.
std::map<Pattern, int> times_by_pattern(const Packing& packing) {
    std::map<Pattern, int> times;
    for (const Filled& filled : packing) {
        if (!filled.pattern.parts.empty() && filled.times > 0)
            times[filled.pattern] += filled.times;
    }
    return times;
}

std::int64_t offcut_of(const NestProblem& problem, const Pattern& pattern) {
    const NestStock& stock = problem.stock[static_cast<std::size_t>(pattern.bar)];
    std::int64_t left = stock.length - stock.trim_start - stock.trim_end;
    for (const Part& part : pattern.parts)
        left -= (problem.pieces[static_cast<std::size_t>(part.item)].length + problem.kerf) *
                part.count;
    return std::max<std::int64_t>(0, left);
}

}  // namespace

NestPlan plan_of(const NestProblem& problem, const Task& task, const Packing& packing) {
    NestPlan plan;
    PiecesByLength pieces(problem);
    for (auto& [pattern, times] : times_by_pattern(packing)) {
        const Bar& bar = task.bars[static_cast<std::size_t>(pattern.bar)];
        Filled filled{pattern, times};
        std::stable_sort(filled.pattern.parts.begin(), filled.pattern.parts.end(),
                         [&](const Part& a, const Part& b) {
                             return problem.pieces[static_cast<std::size_t>(a.item)].length >
                                    problem.pieces[static_cast<std::size_t>(b.item)].length;
                         });
        const std::int64_t offcut = offcut_of(problem, pattern);
        add_layouts(plan, pieces, filled, offcut);
        plan.cost += bar.price * times;
        plan.bought_length += bar.bought * times;
        plan.longest_offcut = std::max(plan.longest_offcut, offcut);
    }
    return plan;
}

}  // namespace engine::cutting
