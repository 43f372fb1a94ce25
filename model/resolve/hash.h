// Mixing of whole numbers into a hash.
#pragma once

#include <cstdint>

namespace model {

inline std::uint64_t mixed(std::uint64_t h, std::uint64_t value) {
    h = (h ^ value) * 0x9E3779B97F4A7C15ULL;
    return h ^ (h >> 29U);
}

inline std::uint64_t as_bits(std::int64_t value) { return static_cast<std::uint64_t>(value); }

}  // namespace model
