// Finds the first of many bins that has room, in logarithmic time.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace model {

// A tree over the bins in which each knot knows the largest room below it.
class FirstFit {
public:
    static constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

    void add(std::int64_t room) {
        if (count_ == leaves_) double_leaves();
        set(count_++, room);
    }

    void set(std::size_t bin, std::int64_t room) {
        auto knot = leaves_ + bin;
        largest_[knot] = room;
        while (knot > 1) {
            knot /= 2;
            largest_[knot] = std::max(largest_[2 * knot], largest_[2 * knot + 1]);
        }
    }

    // The first bin with at least that much room, or none.
    std::size_t first_with(std::int64_t wanted) const {
        if (largest_[1] < wanted) return none;
        std::size_t knot = 1;
        while (knot < leaves_) {
            knot *= 2;
            if (largest_[knot] < wanted) ++knot;
        }
        return knot - leaves_;
    }

private:
    static constexpr std::int64_t no_room = std::numeric_limits<std::int64_t>::min();

    void double_leaves() {
        const std::vector<std::int64_t> rooms(
            largest_.begin() + static_cast<std::ptrdiff_t>(leaves_), largest_.end());
        leaves_ *= 2;
        largest_.assign(2 * leaves_, no_room);
        for (std::size_t i = 0; i < count_; ++i) set(i, rooms[i]);
    }

    std::size_t count_ = 0;
    std::size_t leaves_ = 1;
    std::vector<std::int64_t> largest_{no_room, no_room};  // [1] is the root, [leaves_] bin 0
};

}  // namespace model
