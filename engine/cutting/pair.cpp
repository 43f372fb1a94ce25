#include "engine/cutting/pair.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace engine::cutting {

namespace {

constexpr double whole_within = 1e-4;

int count_of(const Pattern& pattern, int item) {
    for (const Part& part : pattern.parts) {
        if (part.item == item) return part.count;
    }
    return 0;
}

bool has_both(const Pattern& pattern, const Pair& pair) {
    if (pair.first == pair.second) return count_of(pattern, pair.first) >= 2;
    return count_of(pattern, pair.first) > 0 && count_of(pattern, pair.second) > 0;
}

Pattern with_fewer(Pattern pattern, int item, int by) {
    for (Part& part : pattern.parts) {
        if (part.item == item) part.count -= by;
    }
    std::erase_if(pattern.parts, [](const Part& part) { return part.count <= 0; });
    return pattern;
}

using Meetings = std::map<std::pair<int, int>, double>;

void add_meetings(Meetings& meetings, const Pattern& pattern, double amount) {
    for (std::size_t a = 0; a < pattern.parts.size(); ++a) {
        if (pattern.parts[a].count >= 2)
            meetings[{pattern.parts[a].item, pattern.parts[a].item}] += amount;
        for (std::size_t b = a + 1; b < pattern.parts.size(); ++b)
            meetings[{pattern.parts[a].item, pattern.parts[b].item}] += amount;
    }
}

std::int64_t weight(const Task& task, const std::pair<int, int>& pair) {
    return task.items[static_cast<std::size_t>(pair.first)].weight +
           task.items[static_cast<std::size_t>(pair.second)].weight;
}

// Among the undecided the surest to meet, in small steps so that of near equals the heaviest is
// taken.
std::optional<Pair> surest(const Task& task, const Meetings& meetings) {
    std::optional<Pair> best;
    std::pair<double, std::int64_t> most{-1.0, 0};
    for (const auto& [pair, amount] : meetings) {
        const double part = amount - std::floor(amount);
        if (part < whole_within || part > 1.0 - whole_within) continue;
        const std::pair<double, std::int64_t> now{std::floor(part * 20.0), weight(task, pair)};
        if (now <= most) continue;
        most = now;
        best = Pair{pair.first, pair.second};
    }
    return best;
}

std::optional<Pair> any_of_part_bar(const Relaxed& relaxed) {
    for (std::size_t p = 0; p < relaxed.patterns.size(); ++p) {
        const double part = relaxed.amounts[p] - std::floor(relaxed.amounts[p]);
        if (part < whole_within || part > 1.0 - whole_within) continue;
        Meetings meetings;
        add_meetings(meetings, relaxed.patterns[p], 1.0);
        if (!meetings.empty()) {
            const auto& pair = meetings.begin()->first;
            return Pair{pair.first, pair.second};
        }
    }
    return std::nullopt;
}

void set_apart(Item& item, int other) {
    const auto at = std::lower_bound(item.apart.begin(), item.apart.end(), other);
    if (at == item.apart.end() || *at != other) item.apart.insert(at, other);
}

void set_apart(Task& task, int a, int b) {
    set_apart(task.items[static_cast<std::size_t>(a)], b);
    set_apart(task.items[static_cast<std::size_t>(b)], a);
}

bool is_apart_from_itself(const Task& task, int item) {
    const std::vector<int>& apart = task.items[static_cast<std::size_t>(item)].apart;
    return std::binary_search(apart.begin(), apart.end(), item);
}

// What is kept apart from one of the two is kept apart from both together.
Item both_together(const Task& task, const Pair& pair) {
    const Item& first = task.items[static_cast<std::size_t>(pair.first)];
    const Item& second = task.items[static_cast<std::size_t>(pair.second)];
    Item both{.weight = first.weight + second.weight,
              .longest = std::max(first.longest, second.longest),
              .demand = 1,
              .kinds = first.kinds,
              .apart = {}};
    both.kinds.insert(both.kinds.end(), second.kinds.begin(), second.kinds.end());
    std::sort(both.kinds.begin(), both.kinds.end());
    std::set_union(first.apart.begin(), first.apart.end(), second.apart.begin(), second.apart.end(),
                   std::back_inserter(both.apart));
    return both;
}

// The place of what is tied: with those that are the same already, or a new one.
int add_tied(Task& task, const Pair& pair) {
    const Item both = both_together(task, pair);
    for (std::size_t i = 0; i < task.items.size(); ++i) {
        Item& item = task.items[i];
        if (item.kinds != both.kinds || item.apart != both.apart || item.demand == 0) continue;
        ++item.demand;
        return static_cast<int>(i);
    }
    const int place = static_cast<int>(task.items.size());
    task.items.push_back(both);
    for (const int other : both.apart) set_apart(task, place, other);
    if (is_apart_from_itself(task, pair.first) || is_apart_from_itself(task, pair.second))
        set_apart(task, place, place);
    return place;
}

}  // namespace

std::optional<Pair> undecided_pair(const Task& task, const Relaxed& relaxed) {
    Meetings meetings;
    for (std::size_t p = 0; p < relaxed.patterns.size(); ++p) {
        if (relaxed.amounts[p] > whole_within)
            add_meetings(meetings, relaxed.patterns[p], relaxed.amounts[p]);
    }
    const std::optional<Pair> best = surest(task, meetings);
    return best ? best : any_of_part_bar(relaxed);
}

Branched tied(const Task& task, const Pair& pair, const std::vector<Pattern>& patterns) {
    Task next = task;
    --next.items[static_cast<std::size_t>(pair.first)].demand;
    --next.items[static_cast<std::size_t>(pair.second)].demand;
    const int place = add_tied(next, pair);
    const Moved to = reordered(next);
    Branched branched{to.task, {}};
    for (const Pattern& pattern : patterns) {
        if (has_both(pattern, pair)) {
            Pattern both = with_fewer(with_fewer(pattern, pair.first, 1), pair.second, 1);
            const int before = count_of(both, place);
            both = with_fewer(std::move(both), place, before);
            both.parts.push_back({place, is_apart_from_itself(next, place) ? 1 : before + 1});
            branched.patterns.push_back(moved(to, both));
        }
        branched.patterns.push_back(moved(to, pattern));
    }
    return branched;
}

Branched kept_apart(const Task& task, const Pair& pair, const std::vector<Pattern>& patterns) {
    Branched branched{task, {}};
    set_apart(branched.task, pair.first, pair.second);
    for (const Pattern& pattern : patterns) {
        if (!has_both(pattern, pair)) {
            branched.patterns.push_back(pattern);
            continue;
        }
        const int first = count_of(pattern, pair.first);
        if (pair.first == pair.second) {
            branched.patterns.push_back(with_fewer(pattern, pair.first, first - 1));
            continue;
        }
        branched.patterns.push_back(with_fewer(pattern, pair.first, first));
        branched.patterns.push_back(
            with_fewer(pattern, pair.second, count_of(pattern, pair.second)));
    }
    return branched;
}

}  // namespace engine::cutting
