// Numbers out of raw bytes of either order.
#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cstring>

namespace engine {

enum class ByteOrder { little, big };

// The bytes need not be aligned.
template <class Value>
Value value_at(const char* at, ByteOrder order) {
    std::array<char, sizeof(Value)> raw;
    std::memcpy(raw.data(), at, sizeof(Value));
    const bool is_little_here = std::endian::native == std::endian::little;
    if ((order == ByteOrder::little) != is_little_here) std::reverse(raw.begin(), raw.end());
    return std::bit_cast<Value>(raw);
}

}  // namespace engine
