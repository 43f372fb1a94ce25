// Random draws that are the same with every compiler: std::mt19937 used directly, since the
// standard distributions differ between libraries.
#pragma once

#include <cassert>
#include <cstddef>
#include <cstdint>
#include <random>

namespace tests {

// Draw in statements of their own: the order in which arguments are evaluated is unspecified.
class Dice {
public:
    explicit Dice(std::uint32_t seed) : engine_{seed} {}

    // 0 .. count - 1; count is at least 1.
    std::uint32_t below(std::uint32_t count) {
        return static_cast<std::uint32_t>(engine_()) % count;
    }

    std::int64_t between(std::int64_t least, std::int64_t most) {
        const std::uint64_t high = engine_();
        const std::uint64_t low = engine_();
        assert(least <= most);
        const auto span = static_cast<std::uint64_t>(most - least) + 1;
        return least + static_cast<std::int64_t>(((high << 32U) | low) % span);
    }

    bool chance(std::uint32_t percent) { return below(100) < percent; }

    template <class List>
    const auto& one_of(const List& list) {
        return list[below(static_cast<std::uint32_t>(list.size()))];
    }

private:
    std::mt19937 engine_;
};

}  // namespace tests
