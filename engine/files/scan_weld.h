// Points that are equal in all bits become one.
#pragma once

#include "engine/files/scan_reading.h"

namespace engine {

class PointWelder {
public:
    explicit PointWelder(ScanReading& reading) : reading_{reading} {}
    ~PointWelder() { reading_.give_back(bytes_of(slots_.capacity())); }
    PointWelder(const PointWelder&) = delete;
    PointWelder& operator=(const PointWelder&) = delete;

    // Room for that many different points; more make it grow. False: reading's error has the
    // reason.
    bool expect(std::size_t points);

    // The index of the point in the reading's mesh, added where it is new. False as above.
    bool find(const ScanPoint& point, std::uint32_t& index);

private:
    static std::size_t bytes_of(std::size_t slots) { return slots * sizeof(std::uint32_t); }
    std::size_t slot_of(const ScanPoint& point) const;
    bool spread_over(std::size_t slots);

    ScanReading& reading_;
    std::vector<std::uint32_t> slots_;  // index + 1, or 0 for free; a power of two of them
    unsigned shift_ = 0;
};

}  // namespace engine
