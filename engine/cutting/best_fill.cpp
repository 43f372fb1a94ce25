#include "engine/cutting/best_fill.h"

#include <algorithm>
#include <limits>

namespace engine::cutting {

namespace {

constexpr std::int64_t nodes_a_bar = 3'000;

}  // namespace

std::vector<Part> BestFill::parts(const std::vector<int>& left, int bar, std::int64_t slack) {
    bar_ = &task_.bars[static_cast<std::size_t>(bar)];
    slack_ = slack;
    prepare(left);
    for (std::size_t i = 0; i < left.size(); ++i) {
        const Item& item = task_.items[i];
        if (left[i] == 0 || item.weight > room(*bar_, item.longest)) continue;
        best_free_ = std::numeric_limits<std::int64_t>::max();
        const int most =
            static_cast<int>(std::min<std::int64_t>(left[i], bar_->capacity / item.weight));
        for (int count = most; count > 0 && !is_enough(); --count) {
            taken_ = {{static_cast<int>(i), count}};
            add_from(i + 1, bar_->capacity - count * item.weight, item.longest);
        }
        break;
    }
    nodes_ += nodes_a_bar - nodes_left_ + static_cast<std::int64_t>(left.size()) / 8;
    return best_;
}

void BestFill::prepare(const std::vector<int>& left) {
    left_ = &left;
    nodes_left_ = nodes_a_bar;
    best_.clear();
    rest_.assign(left.size() + 1, 0);
    lightest_.assign(left.size() + 1, std::numeric_limits<std::int64_t>::max());
    for (std::size_t i = left.size(); i-- > 0;) {
        rest_[i] = rest_[i + 1] + left[i] * task_.items[i].weight;
        lightest_[i] = lightest_[i + 1];
        if (left[i] > 0) lightest_[i] = std::min(lightest_[i], task_.items[i].weight);
    }
}

// The items stand with the heaviest first.
std::size_t BestFill::first_that_fits(std::size_t from, std::int64_t free) const {
    const auto first = task_.items.begin();
    const auto found =
        std::partition_point(first + static_cast<std::ptrdiff_t>(from), task_.items.end(),
                             [&](const Item& it) { return it.weight > free; });
    return static_cast<std::size_t>(found - first);
}

void BestFill::add_from(std::size_t item, std::int64_t free, std::int64_t longest) {
    --nodes_left_;
    if (free < best_free_ && bar_->capacity - free <= room(*bar_, longest)) {
        best_free_ = free;
        best_ = taken_;
    }
    for (std::size_t i = first_that_fits(item, free); i < left_->size() && !is_enough(); ++i) {
        if (lightest_[i] > free || free - rest_[i] >= best_free_) return;
        const Item& next = task_.items[i];
        const std::int64_t most = std::min<std::int64_t>((*left_)[i], free / next.weight);
        for (std::int64_t count = most; count > 0 && !is_enough(); --count) {
            taken_.push_back({static_cast<int>(i), static_cast<int>(count)});
            add_from(i + 1, free - count * next.weight, std::max(longest, next.longest));
            taken_.pop_back();
        }
    }
}

}  // namespace engine::cutting
