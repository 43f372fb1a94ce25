#include "editor/band_worker.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

bool is_same_shop_and_room(const model::Project& a, const model::Project& b) {
    return a.shown == b.shown && a.room == b.room && a.stock == b.stock && a.frames == b.frames &&
           a.shop == b.shop;
}

}  // namespace

BandWorker::BandWorker(std::function<void()> wake)
    : wake_{std::move(wake)}, thread_{[this] { run(); }} {}

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
        const bool is_other_room = wanted.scans != wanted_.scans;
        wanted_ = std::move(wanted);
        const auto holds = [&](const Snapshot& of, const std::string& dimension) {
            return !is_other_room && of && is_same_but_for(*of, *wanted_.project, dimension);
        };
        std::erase_if(known_,
                      [&](const auto& known) { return !holds(known.second.of, known.first); });
        if (!working_on_.empty() && !holds(working_of_, working_on_)) is_stale_ = true;
    }
    changed_.notify_all();
}

std::optional<model::Band> BandWorker::band(const std::string& dimension) const {
    const std::lock_guard lock(mutex_);
    const auto known = known_.find(dimension);
    return known == known_.end() ? std::nullopt : known->second.band;
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
        if (!known_.contains(dimension)) return dimension;
    }
    return {};
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
        working_of_ = wanted_.project;
        is_stale_ = false;
        const auto dimension = working_on_;
        const auto job = wanted_;
        lock.unlock();
        const auto goes_on = [this] {
            const std::lock_guard inner(mutex_);
            return !is_stale_;
        };
        auto band = model::band_of(*job.project, *job.catalogue, *job.scans, dimension, goes_on);
        lock.lock();
        if (!is_stale_) known_[dimension] = {std::move(band), job.project};
        working_on_.clear();
        changed_.notify_all();
        if (!wake_) continue;
        lock.unlock();
        wake_();
        lock.lock();
    }
}

}  // namespace editor
