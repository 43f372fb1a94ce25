#include "engine/cutting/layout_swap.h"

#include <algorithm>
#include <map>
#include <optional>

namespace engine::cutting {

namespace {

constexpr std::int64_t nodes_a_split = 2'000;

// The pieces of some layouts, put into `first_times` bars alike and `second_times` others alike.
class Split {
public:
    Split(const Task& task,
          const Filled& first,
          const Filled& second,
          const std::map<int, int>& pieces)
        : task_{task}, first_{first}, second_{second}, pieces_(pieces.begin(), pieces.end()) {
        first_free_ = task.bars[static_cast<std::size_t>(first.pattern.bar)].capacity;
        second_free_ = task.bars[static_cast<std::size_t>(second.pattern.bar)].capacity;
    }

    std::optional<Packing> run() {
        if (!place(0)) return std::nullopt;
        Packing packing;
        for (const Filled& filled : {first_, second_}) {
            if (filled.times > 0 && !filled.pattern.parts.empty()) packing.push_back(filled);
        }
        return packing;
    }

    std::int64_t nodes() const { return nodes_; }

private:
    // Every way in which the pieces of one kind can be shared out to the last.
    bool place(std::size_t at) {
        if (at == pieces_.size()) return fits(task_, first_.pattern) && fits_second();
        const auto& [item, count] = pieces_[at];
        const std::int64_t each = task_.items[static_cast<std::size_t>(item)].weight;
        for (int in_first = count / first_.times; in_first >= 0; --in_first) {
            if (++nodes_ > nodes_a_split) return false;
            const int rest = count - in_first * first_.times;
            if (rest > 0 && (second_.times == 0 || rest % second_.times != 0)) continue;
            const int in_second = rest == 0 ? 0 : rest / second_.times;
            if (each * in_first > first_free_ || each * in_second > second_free_) continue;
            if (place_so(at, {item, in_first}, {item, in_second})) return true;
        }
        return false;
    }

    bool place_so(std::size_t at, const Part& first, const Part& second) {
        put(first_, first_free_, first, 1);
        put(second_, second_free_, second, 1);
        if (place(at + 1)) return true;
        put(first_, first_free_, first, -1);
        put(second_, second_free_, second, -1);
        return false;
    }

    void put(Filled& filled, std::int64_t& free, const Part& part, int sign) const {
        if (part.count == 0) return;
        free -= sign * part.count * task_.items[static_cast<std::size_t>(part.item)].weight;
        if (sign > 0)
            filled.pattern.parts.push_back(part);
        else
            filled.pattern.parts.pop_back();
    }

    bool fits_second() const { return second_.times == 0 || fits(task_, second_.pattern); }

    const Task& task_;
    Filled first_;
    Filled second_;
    std::vector<std::pair<int, int>> pieces_;
    std::int64_t first_free_ = 0;
    std::int64_t second_free_ = 0;
    std::int64_t nodes_ = 0;
};

using Places = std::vector<std::size_t>;

class Swaps {
public:
    Swaps(const Task& task, Packing packing, std::int64_t end, Effort& effort)
        : task_{task}, packing_{std::move(packing)}, end_{end}, effort_{effort} {}

    Packing run() {
        while (swap_pair() || swap_three()) {
        }
        return packing_;
    }

private:
    bool is_over() const { return effort_.is_over() || effort_.done() >= end_; }

    bool swap_pair() {
        for (std::size_t a = 0; a < packing_.size(); ++a) {
            for (std::size_t b = a + 1; b < packing_.size(); ++b) {
                if (is_over()) return false;
                if (packing_[a].pattern.bar == packing_[b].pattern.bar && swap({a, b})) return true;
            }
        }
        return false;
    }

    bool swap_three() {
        for (std::size_t a = 0; a < packing_.size(); ++a) {
            for (std::size_t b = a + 1; b < packing_.size(); ++b) {
                for (std::size_t c = b + 1; c < packing_.size(); ++c) {
                    if (is_over()) return false;
                    if (swap({a, b, c})) return true;
                }
            }
        }
        return false;
    }

    // All ways to part the bars in two groups alike; with a pair, one group.
    bool swap(const Places& places) {
        std::map<int, int> bars;
        std::map<int, int> pieces;
        for (const std::size_t place : places) {
            const Filled& filled = packing_[place];
            bars[filled.pattern.bar] += filled.times;
            for (const Part& part : filled.pattern.parts)
                pieces[part.item] += part.count * filled.times;
        }
        effort_.spend(200);
        if (bars.size() > 2 || bars.size() >= places.size()) return false;
        const auto [first, first_count] = *bars.begin();
        const auto [second, second_count] = *bars.rbegin();
        if (bars.size() == 2)
            return try_split(places, pieces, {{first, {}}, first_count},
                             {{second, {}}, second_count});
        const int least = places.size() == 2 ? first_count : (first_count + 1) / 2;
        for (int times = first_count; times >= least && !is_over(); --times) {
            if (try_split(places, pieces, {{first, {}}, times}, {{first, {}}, first_count - times}))
                return true;
        }
        return false;
    }

    bool try_split(const Places& places,
                   const std::map<int, int>& pieces,
                   const Filled& first,
                   const Filled& second) {
        Split split(task_, first, second, pieces);
        const auto packing = split.run();
        effort_.spend(split.nodes() * 10 + 100);
        if (!packing) return false;
        for (std::size_t i = places.size(); i-- > 0;)
            packing_.erase(packing_.begin() + static_cast<std::ptrdiff_t>(places[i]));
        packing_.insert(packing_.end(), packing->begin(), packing->end());
        return true;
    }

    const Task& task_;
    Packing packing_;
    std::int64_t end_;
    Effort& effort_;
};

}  // namespace

Packing swapped(const Task& task, Packing packing, std::int64_t end, Effort& effort) {
    return Swaps(task, std::move(packing), end, effort).run();
}

}  // namespace engine::cutting
