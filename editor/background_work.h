// One long piece of work on a thread of its own, with its progress; it can be cancelled.
#pragma once

#include "engine/result.h"

#include <atomic>
#include <functional>
#include <memory>
#include <optional>
#include <thread>
#include <utility>

namespace editor {

template <class T>
class BackgroundWork {
public:
    using GoOn = std::function<bool(double done)>;  // 0 to 1; answers false when it was cancelled
    using Work = std::function<engine::Result<T>(const GoOn& go_on)>;

    explicit BackgroundWork(Work work)
        : thread_{[this, work = std::move(work)](const std::stop_token& stop) {
              result_ = work([this, &stop](double done) {
                  done_ = done;
                  return !stop.stop_requested();
              });
              is_finished_ = true;
          }} {}

    // Cancels, and waits for the work to notice.
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
