// What fills one bar best, of the items that are left, beginning with the heaviest that fits.
#pragma once

#include "engine/cutting/task.h"

#include <cstdint>
#include <vector>

namespace engine::cutting {

class BestFill {
public:
    explicit BestFill(const Task& task) : task_{task} {}

    // Stops at contents that leave no more than `slack` free. Empty: nothing fits.
    std::vector<Part> parts(const std::vector<int>& left, int bar, std::int64_t slack);
    std::int64_t nodes() const { return nodes_; }

private:
    void add_from(std::size_t item, std::int64_t free, std::int64_t longest);
    std::size_t first_that_fits(std::size_t from, std::int64_t free) const;
    bool is_enough() const { return best_free_ <= slack_ || nodes_left_ <= 0; }
    void prepare(const std::vector<int>& left);

    const Task& task_;
    const std::vector<int>* left_ = nullptr;
    const Bar* bar_ = nullptr;
    std::int64_t slack_ = 0;
    std::int64_t nodes_left_ = 0;
    std::int64_t nodes_ = 0;
    std::vector<std::int64_t> rest_;      // weight of all that is left from an item on
    std::vector<std::int64_t> lightest_;  // of what is left from an item on
    std::vector<Part> taken_;
    std::vector<Part> best_;
    std::int64_t best_free_ = 0;
};

}  // namespace engine::cutting
