// Numbers that look drawn at random and are the same on every machine.
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace engine::cutting {

// The multiplier and the shift are those of "splitmix64" (public domain; from memory).
class Draw {
public:
    explicit Draw(std::uint64_t start) : state_{start} {}

    std::uint64_t below(std::uint64_t end) {
        state_ += 0x9E3779B97F4A7C15ULL;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
        return (z ^ (z >> 31)) % end;
    }

    template <class T>
    void shuffle(std::vector<T>& things) {
        for (std::size_t i = things.size(); i > 1; --i)
            std::swap(things[i - 1], things[static_cast<std::size_t>(below(i))]);
    }

private:
    std::uint64_t state_;
};

}  // namespace engine::cutting
