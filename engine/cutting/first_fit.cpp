#include "engine/cutting/first_fit.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>

namespace engine::cutting {

namespace {

constexpr std::int64_t most_looks = 20'000'000;

struct Begun {
    Pattern pattern;
    std::int64_t used = 0;
    std::int64_t longest = 0;
};

class FirstFit {
public:
    explicit FirstFit(const Task& task) : task_{task}, order_{bars_by_worth(task)} {
        for (const Bar& bar : task.bars) left_.push_back(bar.supply);
    }

    bool place(std::size_t item) {
        const Item& of = task_.items[item];
        for (std::size_t i = first_with_room(of); i < begun_.size(); ++i) {
            ++looks_;
            if (!has_room(begun_[i], of)) continue;
            put(begun_[i], item);
            return true;
        }
        return begin(item);
    }

    std::int64_t looks() const { return looks_; }

    Packing packing() && {
        Packing packing;
        for (Begun& begun : begun_) packing.push_back({std::move(begun.pattern), 1});
        return packing;
    }

private:
    bool has_room(const Begun& begun, const Item& item) const {
        const Bar& bar = task_.bars[static_cast<std::size_t>(begun.pattern.bar)];
        return begun.used + item.weight <= room(bar, std::max(begun.longest, item.longest));
    }

    // What had no room for the last of an item has none for the next.
    std::size_t first_with_room(const Item& item) {
        if (&item != last_item_) from_ = 0;
        last_item_ = &item;
        return from_;
    }

    void put(Begun& begun, std::size_t item) {
        const Item& of = task_.items[item];
        auto& parts = begun.pattern.parts;
        if (parts.empty() || parts.back().item != static_cast<int>(item))
            parts.push_back({static_cast<int>(item), 0});
        ++parts.back().count;
        begun.used += of.weight;
        begun.longest = std::max(begun.longest, of.longest);
        from_ = static_cast<std::size_t>(&begun - begun_.data());
    }

    bool begin(std::size_t item) {
        for (const int bar : order_) {
            Begun begun{{bar, {}}, 0, 0};
            auto& left = left_[static_cast<std::size_t>(bar)];
            if (left <= 0 || !has_room(begun, task_.items[item])) continue;
            --left;
            begun_.push_back(std::move(begun));
            put(begun_.back(), item);
            return true;
        }
        return false;
    }

    const Task& task_;
    std::vector<int> order_;
    std::vector<int> left_;
    std::vector<Begun> begun_;
    const Item* last_item_ = nullptr;
    std::size_t from_ = 0;
    std::int64_t looks_ = 0;
};

}  // namespace

std::vector<int> bars_by_worth(const Task& task) {
    std::vector<int> bars(task.bars.size());
    std::iota(bars.begin(), bars.end(), 0);
    std::stable_sort(bars.begin(), bars.end(), [&](int a, int b) {
        const Bar& first = task.bars[static_cast<std::size_t>(a)];
        const Bar& second = task.bars[static_cast<std::size_t>(b)];
        if (first.price == 0 || second.price == 0)
            return std::pair{first.price, first.capacity} <
                   std::pair{second.price, second.capacity};
        return static_cast<double>(first.price) / static_cast<double>(first.capacity) <
               static_cast<double>(second.price) / static_cast<double>(second.capacity);
    });
    return bars;
}

std::optional<Packing> first_fit(const Task& task, Effort& effort) {
    FirstFit plan(task);
    for (std::size_t item = 0; item < task.items.size(); ++item) {
        const std::int64_t before = plan.looks();
        for (int i = 0; i < task.items[item].demand; ++i) {
            if (!plan.place(item) || plan.looks() > most_looks) return std::nullopt;
        }
        effort.spend((plan.looks() - before) / 4 + task.items[item].demand);
        if (effort.is_over()) return std::nullopt;
    }
    return std::move(plan).packing();
}

}  // namespace engine::cutting
