// How many random cases a test draws.
#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace tests {

// `usual`, or fewer where BARWRIGHT_SEEDS is a smaller count, as it is under sanitizers.
inline std::uint32_t seed_count(std::uint32_t usual) {
    const char* text = std::getenv("BARWRIGHT_SEEDS");
    if (text == nullptr || std::string_view{text}.find('-') != std::string_view::npos) return usual;
    const auto count = std::strtoul(text, nullptr, 10);
    return count > 0 ? std::min(usual, static_cast<std::uint32_t>(count)) : usual;
}

}  // namespace tests
