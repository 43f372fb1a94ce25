// How many random cases a test draws.
#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace tests {

// `usual`, or fewer where BARWRIGHT_SEEDS is a small count, as it is under sanitizers: a fifth of
// it, since these cases take longer than the skeletons that it counts.
inline std::uint32_t seed_count(std::uint32_t usual) {
    const char* text = std::getenv("BARWRIGHT_SEEDS");
    if (text == nullptr || std::string_view{text}.find('-') != std::string_view::npos) return usual;
    const auto count = std::strtoul(text, nullptr, 10);
    return std::clamp(static_cast<std::uint32_t>(count / 5), 1U, usual);
}

}  // namespace tests
