// Points that are equal in all bits become one.
#pragma once

#include "engine/files/scan_reading.h"

#include <array>
#include <bit>

namespace engine {

class PointWelder {
public:
    explicit PointWelder(ScanReading& reading);
    ~PointWelder() { reading_.give_back(bytes_of(slots_.capacity())); }
    PointWelder(const PointWelder&) = delete;
    PointWelder& operator=(const PointWelder&) = delete;

    // Room for that many different points; more make it grow. False: reading's error has the
    // reason.
    bool expect(std::size_t points);

    // Asks for the memory that `find` will look into, some time before.
    void prepare(const ScanPoint& point) const {
        __builtin_prefetch(slots_.data() + (mixed(point) >> shift_));
    }

    // The index of the point in the reading's mesh, added where it is new. False as above.
    bool find(const ScanPoint& point, std::uint32_t& index);

private:
    static std::size_t bytes_of(std::size_t slots) { return slots * sizeof(std::uint32_t); }
    std::uint64_t mixed(const ScanPoint& point) const;
    std::size_t slot_of(const ScanPoint& point) const;
    bool spread_over(std::size_t slots);

    ScanReading& reading_;
    std::vector<std::uint32_t> slots_;  // index + 1, or 0 for free; a power of two of them
    unsigned shift_ = 0;
    std::array<std::uint64_t, 4> secret_;
};

// Multiply-add with secret factors: for any two points the high bits are equal by chance alone, so
// that nobody can make a file whose points all seek the same slot (Dietzfelbinger, "Universal
// hashing and k-wise independent random variables via integer arithmetic without primes", 1996;
// from memory). What follows breaks up the rows in which regular points would otherwise lie.
inline std::uint64_t PointWelder::mixed(const ScanPoint& point) const {
    const auto bits = [&](std::size_t axis) {
        return static_cast<std::uint64_t>(std::bit_cast<std::uint32_t>(point[axis]));
    };
    std::uint64_t sum =
        secret_[0] + secret_[1] * bits(0) + secret_[2] * bits(1) + secret_[3] * bits(2);
    sum ^= sum >> 32U;
    return sum * 0xD6E8FEB86659FD93U;
}

}  // namespace engine
