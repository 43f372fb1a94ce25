#include "engine/measure/needs.h"

#include <algorithm>

namespace engine {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);

// Strongly connected components by one depth-first walk (R. Tarjan, SIAM J. Comput. 1 (1972) 146,
// from memory), with a stack of our own so that long chains do not exhaust the program's.
class Walk {
public:
    explicit Walk(const Needs& needs)
        : needs_{needs}, visit_(needs.count(), none), lowest_(needs.count(), none) {
        order_.things.reserve(needs.count());
        order_.group_of.assign(needs.count(), none);
    }

    NeedOrder order() {
        for (std::size_t thing = 0; thing < needs_.count(); ++thing) {
            if (visit_[thing] == none) walk_from(thing);
        }
        return std::move(order_);
    }

private:
    struct Step {
        std::size_t thing;
        std::size_t next;  // in needs_.on
    };

    void walk_from(std::size_t root) {
        enter(root);
        while (!path_.empty()) {
            auto& step = path_.back();
            if (step.next == needs_.first[step.thing + 1]) {
                leave(step.thing);
                continue;
            }
            const auto needed = needs_.on[step.next++];
            if (visit_[needed] == none) {
                enter(needed);
            } else if (order_.group_of[needed] == none) {
                lowest_[step.thing] = std::min(lowest_[step.thing], visit_[needed]);
            }
        }
    }

    void enter(std::size_t thing) {
        visit_[thing] = lowest_[thing] = visits_++;
        open_.push_back(thing);
        path_.push_back({thing, needs_.first[thing]});
    }

    void leave(std::size_t thing) {
        path_.pop_back();
        if (!path_.empty()) {
            auto& before = lowest_[path_.back().thing];
            before = std::min(before, lowest_[thing]);
        }
        if (lowest_[thing] != visit_[thing]) return;
        std::size_t last = none;
        while (last != thing) {
            last = open_.back();
            open_.pop_back();
            order_.group_of[last] = groups_;
            order_.things.push_back(last);
        }
        ++groups_;
    }

    const Needs& needs_;
    std::vector<std::size_t> visit_;
    std::vector<std::size_t> lowest_;
    std::vector<std::size_t> open_;
    std::vector<Step> path_;
    NeedOrder order_;
    std::size_t visits_ = 0;
    std::size_t groups_ = 0;
};

}  // namespace

NeedOrder need_order(const Needs& needs) { return Walk{needs}.order(); }

bool NeedOrder::is_on_loop(const Needs& needs, std::size_t thing) const {
    for (auto i = needs.first[thing]; i < needs.first[thing + 1]; ++i) {
        if (group_of[needs.on[i]] == group_of[thing]) return true;
    }
    return false;
}

LoopFinder::LoopFinder(const Needs& needs, const NeedOrder& order)
    : needs_{needs},
      order_{order},
      reached_from_(needs.count(), none),
      reached_in_(needs.count(), none),
      loop_number_(needs.count(), none),
      place_in_loop_(needs.count(), 0),
      first_loop_(needs.count(), none) {}

std::vector<std::size_t> LoopFinder::loop_of(std::size_t thing, std::size_t most) {
    const auto group = order_.group_of[thing];
    if (loop_number_[thing] == none && (effort_left_ > 0 || first_loop_[group] == none)) {
        keep_shortest_loop(thing);
    }
    const bool has_own = loop_number_[thing] != none;
    const auto& loop = loops_[has_own ? loop_number_[thing] : first_loop_[group]];
    std::vector<std::size_t> shown;
    for (auto at = place_in_loop_[thing]; shown.size() < std::min(most, loop.size()); ++at) {
        shown.push_back(loop[at % loop.size()]);
    }
    return shown;
}

void LoopFinder::keep_shortest_loop(std::size_t thing) {
    const auto loop = shortest_loop(thing);
    for (std::size_t i = 0; i < loop.size(); ++i) {
        if (loop_number_[loop[i]] != none) continue;
        loop_number_[loop[i]] = loops_.size();
        place_in_loop_[loop[i]] = i;
    }
    auto& first = first_loop_[order_.group_of[thing]];
    if (first == none) first = loops_.size();
    loops_.push_back(loop);
}

std::vector<std::size_t> LoopFinder::shortest_loop(std::size_t thing) {
    ++search_;
    std::vector<std::size_t> queue{thing};
    for (std::size_t at = 0; at < queue.size(); ++at) {
        const auto from = queue[at];
        for (auto i = needs_.first[from]; i < needs_.first[from + 1]; ++i) {
            const auto needed = needs_.on[i];
            effort_left_ -= effort_left_ > 0 ? 1 : 0;
            if (needed == thing) return path_back(from, thing);
            const bool is_new = reached_in_[needed] != search_;
            if (!is_new || order_.group_of[needed] != order_.group_of[thing]) continue;
            reached_in_[needed] = search_;
            reached_from_[needed] = from;
            queue.push_back(needed);
        }
    }
    return {thing};
}

// From `thing` to `from`, in the order of needing.
std::vector<std::size_t> LoopFinder::path_back(std::size_t from, std::size_t thing) const {
    std::vector<std::size_t> path;
    for (auto back = from; back != thing; back = reached_from_[back]) path.push_back(back);
    path.push_back(thing);
    std::reverse(path.begin(), path.end());
    return path;
}

}  // namespace engine
