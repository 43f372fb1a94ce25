// How much the search may still do: counted in steps, so that the same input gives the same plan on
// every machine, and stopped from outside where the user no longer waits.
#pragma once

#include <cstdint>
#include <functional>
#include <utility>

namespace engine::cutting {

class Effort {
public:
    // `go_on` is asked each few million steps, and may be empty.
    Effort(std::int64_t limit, std::function<bool(std::int64_t)> go_on)
        : limit_{limit}, go_on_{std::move(go_on)} {}

    void spend(std::int64_t steps) {
        done_ += steps;
        if (done_ < ask_at_) return;
        ask_at_ = done_ + between_asks;
        if (go_on_ && !go_on_(done_)) is_stopped_ = true;
    }

    bool is_over() const { return is_stopped_ || done_ >= limit_; }
    bool is_stopped() const { return is_stopped_; }  // from outside
    std::int64_t done() const { return done_; }
    std::int64_t left() const { return is_over() ? 0 : limit_ - done_; }

private:
    static constexpr std::int64_t between_asks = 5'000'000;

    std::int64_t limit_;
    std::function<bool(std::int64_t)> go_on_;
    std::int64_t done_ = 0;
    std::int64_t ask_at_ = between_asks;
    bool is_stopped_ = false;
};

}  // namespace engine::cutting
