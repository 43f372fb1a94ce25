#include "editor/band_worker.h"

#include "editor/background_work.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

bool is_same_shop_and_room(const model::Project& a, const model::Project& b) {
    return a.shown == b.shown && a.room == b.room && a.stock == b.stock && a.frames == b.frames &&
           a.shop == b.shop;
}

}  // namespace

BandWorker::BandWorker(std::function<void()> wake, Work work)
    : wake_{std::move(wake)}, work_{std::move(work)}, thread_{[this] { run(); }} {}

BandWorker::~BandWorker() {
    {
        const std::lock_guard lock(mutex_);
        ends_ = true;
        is_stale_ = true;
    }
    changed_.notify_all();
    thread_.join();
}

void BandWorker::want(BandsWanted wanted) {
    {
        const std::lock_guard lock(mutex_);
        wanted_ = std::move(wanted);
        std::erase_if(known_, [&](const auto& known) {
            return std::ranges::find(wanted_.dimensions, known.first) == wanted_.dimensions.end();
        });
        for (auto& [dimension, known] : known_) {
            known.state.is_settled = holds(known.of, known.scans, dimension);
        }
        if (!working_on_.empty() && !holds(working_of_.project, working_of_.scans, working_on_)) {
            is_stale_ = true;
        }
    }
    changed_.notify_all();
}

std::optional<model::Band> BandWorker::band(const std::string& dimension) const {
    auto known = state(dimension);
    return known.is_settled ? std::move(known.band) : std::nullopt;
}

BandState BandWorker::state(const std::string& dimension) const {
    const std::lock_guard lock(mutex_);
    const auto known = known_.find(dimension);
    return known == known_.end() ? BandState{} : known->second.state;
}

void BandWorker::forget() {
    {
        const std::lock_guard lock(mutex_);
        wanted_ = {};
        known_.clear();
        is_stale_ = true;
    }
    changed_.notify_all();
}

void BandWorker::wait() {
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [&] { return working_on_.empty() && next_wanted().empty(); });
}

bool BandWorker::is_busy() const {
    const std::lock_guard lock(mutex_);
    return !working_on_.empty() || !next_wanted().empty();
}

std::string BandWorker::next_wanted() const {
    for (const auto& dimension : wanted_.dimensions) {
        const auto known = known_.find(dimension);
        if (known == known_.end() || !known->second.state.is_settled) return dimension;
    }
    return {};
}

bool BandWorker::holds(const Snapshot& of,
                       const std::shared_ptr<const model::ScanLibrary>& scans,
                       const std::string& dimension) const {
    return of && wanted_.project && scans == wanted_.scans &&
           is_same_but_for(*of, *wanted_.project, dimension);
}

bool BandWorker::is_same_but_for(const model::Project& a,
                                 const model::Project& b,
                                 const std::string& dimension) {
    if (&a == &b) return true;
    if (a.dimensions.size() != b.dimensions.size()) return false;
    for (std::size_t i = 0; i < a.dimensions.size(); ++i) {
        auto other = b.dimensions[i];
        if (other.name == dimension) other.formula = a.dimensions[i].formula;
        if (other != a.dimensions[i]) return false;
    }
    return is_same_shop_and_room(a, b);
}

void BandWorker::run() {
    std::unique_lock lock(mutex_);
    while (true) {
        changed_.wait(lock, [&] { return ends_ || !next_wanted().empty(); });
        if (ends_) return;
        working_on_ = next_wanted();
        working_of_ = wanted_;
        is_stale_ = false;
        const auto dimension = working_on_;
        const auto job = wanted_;
        lock.unlock();
        auto known = worked_out(job, dimension);
        lock.lock();
        if (!is_stale_) known_[dimension] = std::move(known);
        working_on_.clear();
        working_of_ = {};
        changed_.notify_all();
        if (!wake_) continue;
        lock.unlock();
        wake_();
        lock.lock();
    }
}

BandWorker::Known BandWorker::worked_out(const BandsWanted& job,
                                         const std::string& dimension) const {
    const auto goes_on = [this] {
        const std::lock_guard lock(mutex_);
        return !is_stale_;
    };
    Known known{.state = {.is_settled = true}, .of = job.project, .scans = job.scans};
    auto band =
        caught<std::optional<model::Band>>([&]() -> engine::Result<std::optional<model::Band>> {
            return work_(*job.project, *job.catalogue, *job.scans, dimension, goes_on);
        });
    if (band) {
        known.state.band = std::move(band).value();
    } else {
        known.state.trouble = engine::to_text(band.error());
    }
    return known;
}

}  // namespace editor
