// One long piece of work on a thread of its own, with its progress; it can be cancelled.
#pragma once

#include "engine/result.h"

#include <atomic>
#include <exception>
#include <functional>
#include <memory>
#include <new>
#include <optional>
#include <string>
#include <thread>
#include <utility>

namespace editor {

inline engine::Error not_enough_memory() {
    return {engine::ErrorCode::out_of_range, "", "there is not enough memory for it"};
}

// What the work throws - there may be too little memory for it - becomes an error: out of a thread
// it would end the program, and with it what is not saved.
template <class T, class Work>
engine::Result<T> caught(const Work& work) {
    try {
        return work();
    } catch (const std::bad_alloc&) {
        return not_enough_memory();
    } catch (const std::exception& thrown) {
        return engine::Error{engine::ErrorCode::out_of_range, "",
                             std::string("it cannot be worked out: ") + thrown.what()};
    }
}

template <class T>
class BackgroundWork {
public:
    using GoOn = std::function<bool(double done)>;  // 0 to 1; answers false when it was cancelled
    using Work = std::function<engine::Result<T>(const GoOn& go_on)>;

    // `at_end` is called from the thread once it is finished; may be empty.
    explicit BackgroundWork(Work work, std::function<void()> at_end = {})
        : thread_{[this, work = std::move(work), at_end = std::move(at_end)](
                      const std::stop_token& stop) {
              const GoOn go_on = [this, &stop](double done) {
                  done_ = done;
                  return !stop.stop_requested();
              };
              result_ = caught<T>([&] { return work(go_on); });
              is_finished_ = true;
              if (at_end) at_end();
          }} {}

    // Cancels, and waits for the work to notice: it asks often.
    ~BackgroundWork() = default;
    BackgroundWork(const BackgroundWork&) = delete;
    BackgroundWork& operator=(const BackgroundWork&) = delete;

    double done() const { return done_; }
    bool is_finished() const { return is_finished_; }
    void cancel() { thread_.request_stop(); }

    // Once it is finished.
    const engine::Result<T>& result() const { return *result_; }

private:
    std::atomic<double> done_{0.0};
    std::atomic<bool> is_finished_{false};
    std::optional<engine::Result<T>> result_;
    std::jthread thread_;  // the last: it uses the others
};

}  // namespace editor
