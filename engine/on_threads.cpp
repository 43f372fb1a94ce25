#include "engine/on_threads.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace engine {
namespace {

class Work {
public:
    Work(std::size_t count, const std::function<void(std::size_t)>& act)
        : count_{count}, act_{act} {}

    // The next thing; false where there is none left, or all is to end.
    bool act_once() {
        const std::size_t i = is_stopped_ ? count_ : next_++;
        if (i >= count_) return false;
        try {
            act_(i);
        } catch (...) {
            stop();
            const std::lock_guard lock(thrown_guard_);
            if (!thrown_) thrown_ = std::current_exception();
        }
        return true;
    }

    bool is_left() const { return !is_stopped_ && next_ < count_; }

    void stop() { is_stopped_ = true; }

    // When all threads are done.
    bool has_ended_whole() const {
        if (thrown_) std::rethrow_exception(thrown_);
        return !is_stopped_;
    }

private:
    std::size_t count_;
    const std::function<void(std::size_t)>& act_;
    std::atomic<std::size_t> next_ = 0;
    std::atomic<bool> is_stopped_ = false;
    std::mutex thrown_guard_;
    std::exception_ptr thrown_;
};

}  // namespace

std::size_t spare_threads() { return std::max(std::thread::hardware_concurrency(), 3U) - 1U; }

bool for_each_on_threads(std::size_t count,
                         const std::function<void(std::size_t)>& act,
                         const std::function<bool()>& go_on,
                         std::size_t threads) {
    Work work(count, act);
    {
        std::vector<std::jthread> helpers;  // waited for at the end of this block
        for (std::size_t i = 1; i < std::min(count, threads); ++i) {
            helpers.emplace_back([&work] {
                while (work.act_once()) {
                }
            });
        }
        try {
            while (work.is_left()) {
                if (go_on && !go_on()) work.stop();
                work.act_once();
            }
        } catch (...) {  // the helpers are waited for, but not for all that is left
            work.stop();
            throw;
        }
    }
    return work.has_ended_whole();
}

}  // namespace engine
