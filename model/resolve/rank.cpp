#include "model/resolve/rank.h"

#include "engine/geometry/box_tree.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace model {
namespace {

// A bar shifts inward by the layers above it; pairs are sought that far around.
Nm search_reach(const std::vector<Bar>& bars) {
    Nm deepest = 0;
    for (const auto& bar : bars) {
        deepest = std::max({deepest, bar.shape->layer[0], bar.shape->layer[1]});
    }
    return 4 * deepest;
}

void find_close_pairs(FrameSkeleton& s, const std::vector<Box>& bodies) {
    const engine::BoxTree tree(bodies);
    const Nm reach = search_reach(s.bars);
    std::vector<Index> found;
    for (Index i = 0; i < bodies.size(); ++i) {
        Box probe = bodies[i];
        for (std::size_t k = 0; k < 3; ++k) {
            probe.lo[k] -= reach;
            probe.hi[k] += reach;
        }
        found.clear();
        tree.for_each_touching(probe, [&](Index j) {
            if (j > i) found.push_back(j);
        });
        std::sort(found.begin(), found.end());
        for (const Index j : found) s.close.push_back({i, j});
    }
}

void list_neighbours(FrameSkeleton& s) {
    s.around.assign(s.bars.size(), {});
    for (const auto& [a, b] : s.close) {
        ++s.around[a].count;
        ++s.around[b].count;
    }
    Index first = 0;
    for (auto& range : s.around) {
        range.first = first;
        first += range.count;
        range.count = 0;
    }
    s.near.assign(first, 0);
    for (const auto& [a, b] : s.close) {
        s.near[s.around[a].first + s.around[a].count++] = b;
        s.near[s.around[b].first + s.around[b].count++] = a;
    }
}

// How `bar` meets `other`, from where its ends lie in the other's body.
Meets meets(const Bar& bar, const Box& other) {
    const std::size_t run = index_of(bar.run);
    const auto holds = [&](Nm end) { return other.lo[run] <= end && end <= other.hi[run]; };
    if (holds(bar.from)) return Meets::at_from;
    if (holds(bar.to)) return Meets::at_to;
    if (bar.from < other.lo[run] && other.hi[run] < bar.to) return Meets::in_passing;
    return Meets::not_at_all;
}

bool ends(Meets m) { return m == Meets::at_from || m == Meets::at_to; }

bool outranks_at_corner(const Bar& a, Index ia, const Bar& b, Index ib) {
    return std::tuple(a.corner_order, ia) < std::tuple(b.corner_order, ib);
}

// Meetings whose upper bar is known from the meeting alone; crossings are kept apart.
struct Sorted {
    std::vector<Meeting> ranked;
    std::vector<Meeting> crossings;
};

Sorted sort_meetings(const FrameSkeleton& s, const std::vector<Box>& bodies) {
    Sorted sorted;
    sorted.ranked.reserve(s.close.size());
    for (const auto& [a, b] : s.close) {
        const Bar& first = s.bars[a];
        const Bar& second = s.bars[b];
        if (first.run == second.run) continue;
        const Meets first_meets = meets(first, bodies[b]);
        const Meets second_meets = meets(second, bodies[a]);
        const bool first_ends = ends(first_meets);
        const bool second_ends = ends(second_meets);
        const bool first_is_upper =
            first_ends == second_ends ? outranks_at_corner(first, a, second, b) : second_ends;
        const Meeting meeting = first_is_upper ? Meeting{a, b, first_meets, second_meets}
                                               : Meeting{b, a, second_meets, first_meets};
        // Bars that are merely near may come to meet when they are set in: they follow the rest.
        const bool decides = (first_ends || second_ends) && engine::touches(bodies[a], bodies[b]);
        (decides ? sorted.ranked : sorted.crossings).push_back(meeting);
    }
    return sorted;
}

void report_loop(const FrameSkeleton& s,
                 const Frame& frame,
                 const std::vector<Index>& waiting,
                 const std::vector<Meeting>& ranked,
                 std::vector<Finding>& findings) {
    // Strip those that merely hang below the loop: they rank above nobody who waits.
    std::vector<char> in_loop(s.bars.size(), 0);
    for (const Index i : waiting) in_loop[i] = 1;
    for (bool changed = true; changed;) {
        changed = false;
        std::vector<char> is_upper(s.bars.size(), 0);
        for (const auto& m : ranked) {
            if (in_loop[m.upper] != 0 && in_loop[m.lower] != 0) is_upper[m.upper] = 1;
        }
        for (const Index i : waiting) {
            if (in_loop[i] != 0 && is_upper[i] == 0) {
                in_loop[i] = 0;
                changed = true;
            }
        }
    }
    Finding finding{.code = "rank_loop",
                    .severity = Severity::warning,
                    .what = "each of these members would have to lie outside the next",
                    .mend = "give one of them a rank, or let one run on past the other"};
    for (const Index i : waiting) {
        if (in_loop[i] != 0) finding.concerns.push_back(member_subject(frame, s.bars[i].member));
    }
    findings.push_back(std::move(finding));
}

// Longest chain above each bar, by taking bars away once all above them are gone.
class Depths {
public:
    Depths(FrameSkeleton& s, const std::vector<Meeting>& ranked) : s_{s}, ranked_{ranked} {
        open_.assign(s.bars.size(), 0);
        first_.assign(s.bars.size() + 1, 0);
        for (const auto& m : ranked) {
            ++open_[m.lower];
            ++first_[m.upper + 1];
        }
        std::partial_sum(first_.begin(), first_.end(), first_.begin());
        below_.resize(ranked.size());
        std::vector<Index> next(first_.begin(), first_.end() - 1);
        for (const auto& m : ranked) below_[next[m.upper]++] = m.lower;
    }

    void find(const Frame& frame, std::vector<Finding>& findings) {
        done_.assign(s_.bars.size(), 0);
        std::size_t left = s_.bars.size();
        for (Index i = 0; i < s_.bars.size(); ++i) {
            if (open_[i] == 0) ready_.push_back(i);
        }
        bool reported = false;
        while (left > 0) {
            if (ready_.empty()) {
                const auto waiting = those_waiting();
                if (!reported) report_loop(s_, frame, waiting, ranked_, findings);
                reported = true;
                ready_.push_back(outermost(waiting));
            }
            const Index i = ready_.back();
            ready_.pop_back();
            if (done_[i] != 0) continue;
            done_[i] = 1;
            --left;
            release_below(i);
        }
    }

private:
    std::vector<Index> those_waiting() const {
        std::vector<Index> waiting;
        for (Index i = 0; i < s_.bars.size(); ++i) {
            if (done_[i] == 0) waiting.push_back(i);
        }
        return waiting;
    }

    Index outermost(const std::vector<Index>& waiting) const {
        return *std::min_element(waiting.begin(), waiting.end(), [this](Index a, Index b) {
            return outranks_at_corner(s_.bars[a], a, s_.bars[b], b);
        });
    }

    void release_below(Index i) {
        for (Index k = first_[i]; k < first_[i + 1]; ++k) {
            const Index lower = below_[k];
            if (done_[lower] != 0) continue;
            s_.bars[lower].depth = std::max(s_.bars[lower].depth, s_.bars[i].depth + 1);
            if (--open_[lower] == 0) ready_.push_back(lower);
        }
    }

    FrameSkeleton& s_;
    const std::vector<Meeting>& ranked_;
    std::vector<Index> open_;   // how many above a bar are still there
    std::vector<Index> first_;  // per bar: start of its own in below_
    std::vector<Index> below_;
    std::vector<Index> ready_;
    std::vector<char> done_;
};

// A loop leaves pairs whose order contradicts the depths; they follow the depths like crossings.
void follow_depths(const FrameSkeleton& s, std::vector<Meeting>& meetings) {
    const auto key = [&](Index i) {
        return std::tuple(s.bars[i].depth, s.bars[i].corner_order, i);
    };
    for (auto& m : meetings) {
        if (key(m.upper) < key(m.lower)) continue;
        std::swap(m.upper, m.lower);
        std::swap(m.upper_meets, m.lower_meets);
    }
}

void group_by_lower(FrameSkeleton& s,
                    std::vector<Meeting> ranked,
                    const std::vector<Meeting>& crossings) {
    ranked.insert(ranked.end(), crossings.begin(), crossings.end());
    s.above.assign(s.bars.size(), {});
    for (const auto& m : ranked) ++s.above[m.lower].count;
    Index first = 0;
    for (auto& range : s.above) {
        range.first = first;
        first += range.count;
        range.count = 0;
    }
    s.meetings.resize(ranked.size());
    for (const auto& m : ranked) s.meetings[s.above[m.lower].first + s.above[m.lower].count++] = m;
}

}  // namespace

void rank_bars(FrameSkeleton& s, const Frame& frame, std::vector<Finding>& findings) {
    std::vector<Box> bodies;
    bodies.reserve(s.bars.size());
    for (const auto& bar : s.bars) bodies.push_back(body(bar));
    find_close_pairs(s, bodies);
    list_neighbours(s);

    auto sorted = sort_meetings(s, bodies);
    Depths(s, sorted.ranked).find(frame, findings);
    follow_depths(s, sorted.ranked);
    follow_depths(s, sorted.crossings);
    group_by_lower(s, std::move(sorted.ranked), sorted.crossings);

    s.order.resize(s.bars.size());
    std::iota(s.order.begin(), s.order.end(), Index{0});
    std::sort(s.order.begin(), s.order.end(), [&](Index a, Index b) {
        return std::tuple(s.bars[a].depth, s.bars[a].corner_order, a) <
               std::tuple(s.bars[b].depth, s.bars[b].corner_order, b);
    });
}

}  // namespace model
