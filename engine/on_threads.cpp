#include "engine/on_threads.h"

#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

namespace engine {
namespace {

std::size_t threads_for(std::size_t count) {
    const std::size_t spare = std::max(std::thread::hardware_concurrency(), 2U) - 1U;
    return std::min(count, spare);
}

}  // namespace

bool for_each_on_threads(std::size_t count,
                         const std::function<void(std::size_t)>& act,
                         const std::function<bool()>& go_on) {
    std::atomic<std::size_t> next = 0;
    std::atomic<bool> is_stopped = false;
    const auto help = [&] {
        for (std::size_t i = 0; !is_stopped && (i = next++) < count;) act(i);
    };
    std::vector<std::jthread> helpers;
    for (std::size_t i = 1; i < threads_for(count); ++i) helpers.emplace_back(help);
    for (std::size_t i = 0; (i = next++) < count;) {
        if (go_on && !go_on()) {
            is_stopped = true;
            break;
        }
        act(i);
    }
    helpers.clear();  // which waits for them
    return !is_stopped;
}

}  // namespace engine
