#include "engine/files/scan_weld.h"

#include <algorithm>
#include <bit>
#include <chrono>
#include <cstdint>

namespace engine {
namespace {

// One of a row of numbers that look random (splitmix64, Steele, Lea and Flood, "Fast splittable
// pseudorandom number generators", 2014; from memory).
std::uint64_t next_random(std::uint64_t& state) {
    state += 0x9E3779B97F4A7C15U;
    std::uint64_t z = (state ^ (state >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
}

}  // namespace

// Another secret each time. It tells nowhere but in the time that it takes.
PointWelder::PointWelder(ScanReading& reading) : reading_{reading} {
    auto state =
        static_cast<std::uint64_t>(std::chrono::steady_clock::now().time_since_epoch().count());
    state ^= std::bit_cast<std::uintptr_t>(this);
    for (auto& one : secret_) one = next_random(state);
}

std::size_t PointWelder::slot_of(const ScanPoint& point) const {
    std::size_t slot = mixed(point) >> shift_;
    while (slots_[slot] != 0 && reading_.point(slots_[slot] - 1) != point)
        slot = (slot + 1) & (slots_.size() - 1);
    return slot;
}

bool PointWelder::spread_over(std::size_t slots) {
    if (!reading_.take(bytes_of(slots))) return false;
    const auto old = std::move(slots_);
    slots_ = std::vector<std::uint32_t>(slots);
    shift_ = 64U - static_cast<unsigned>(std::countr_zero(slots));
    for (const auto index : old)
        if (index != 0) slots_[slot_of(reading_.point(index - 1))] = index;
    reading_.give_back(bytes_of(old.size()));
    return true;
}

bool PointWelder::expect(std::size_t points) {
    const std::size_t slots = std::bit_ceil(std::max<std::size_t>(points, 64) * 3 / 2);
    return slots <= slots_.size() || spread_over(slots);
}

bool PointWelder::find(const ScanPoint& point, std::uint32_t& index) {
    if (reading_.point_count() * 3 / 2 >= slots_.size() && !spread_over(slots_.size() * 2))
        return false;
    auto& found = slots_[slot_of(point)];
    if (found == 0) {
        if (!reading_.add(point)) return false;
        found = static_cast<std::uint32_t>(reading_.point_count());
    }
    index = found - 1;
    return true;
}

}  // namespace engine
