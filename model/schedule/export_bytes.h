// Little-endian numbers at the end of a text of bytes.
#pragma once

#include <bit>
#include <cstdint>
#include <string>

namespace model {

inline void append_u16(std::string& out, std::uint16_t value) {
    for (unsigned i = 0; i < 2; ++i) out += static_cast<char>((value >> (8U * i)) & 0xFFU);
}

inline void append_u32(std::string& out, std::uint32_t value) {
    for (unsigned i = 0; i < 4; ++i) out += static_cast<char>((value >> (8U * i)) & 0xFFU);
}

inline void append_float(std::string& out, float value) {
    append_u32(out, std::bit_cast<std::uint32_t>(value));
}

}  // namespace model
