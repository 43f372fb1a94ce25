// An exact length. Stored as whole nanometres because 1 in = 25 400 000 nm, so every 1/64 in and
// every micrometre has an exact value and sums in a schedule never drift.
#pragma once

#include <compare>
#include <cstdint>
#include <limits>
#include <optional>

namespace engine {

class Length {
public:
    // 1 in = 25.4 mm exactly: international yard and pound agreement of 1959, from memory
    // (restated in NIST SP 811, Appendix B).
    static constexpr std::int64_t nm_per_mm = 1'000'000;
    static constexpr std::int64_t nm_per_inch = 25'400'000;

    constexpr Length() = default;

    static constexpr Length from_nm(std::int64_t nm) { return Length{nm}; }

    constexpr std::int64_t nm() const { return nm_; }
    constexpr double mm() const {
        return static_cast<double>(nm_) / static_cast<double>(nm_per_mm);
    }
    constexpr double inches() const {
        return static_cast<double>(nm_) / static_cast<double>(nm_per_inch);
    }

    // No value where the exact result does not fit into 64 bits.
    static constexpr std::optional<Length> checked_sum(Length a, Length b) {
        std::int64_t sum = 0;
        if (__builtin_add_overflow(a.nm_, b.nm_, &sum)) return std::nullopt;
        return Length{sum};
    }
    static constexpr std::optional<Length> checked_difference(Length a, Length b) {
        std::int64_t difference = 0;
        if (__builtin_sub_overflow(a.nm_, b.nm_, &difference)) return std::nullopt;
        return Length{difference};
    }
    static constexpr std::optional<Length> checked_product(Length a, std::int64_t n) {
        std::int64_t product = 0;
        if (__builtin_mul_overflow(a.nm_, n, &product)) return std::nullopt;
        return Length{product};
    }

    // The operators stop at the ends of the range instead of wrapping round.
    friend constexpr Length operator+(Length a, Length b) {
        if (const auto sum = checked_sum(a, b)) return *sum;
        return end_of_range(b.nm_ > 0);
    }
    friend constexpr Length operator-(Length a, Length b) {
        if (const auto difference = checked_difference(a, b)) return *difference;
        return end_of_range(b.nm_ < 0);
    }
    friend constexpr Length operator*(Length a, std::int64_t n) {
        if (const auto product = checked_product(a, n)) return *product;
        return end_of_range((a.nm_ > 0) == (n > 0));
    }
    constexpr Length operator-() const { return Length{} - *this; }
    Length& operator+=(Length other) { return *this = *this + other; }
    Length& operator-=(Length other) { return *this = *this - other; }
    friend constexpr auto operator<=>(Length, Length) = default;

private:
    explicit constexpr Length(std::int64_t nm) : nm_{nm} {}

    static constexpr Length end_of_range(bool positive) {
        return Length{positive ? std::numeric_limits<std::int64_t>::max()
                               : std::numeric_limits<std::int64_t>::min()};
    }

    std::int64_t nm_ = 0;
};

namespace literals {

consteval Length operator""_mm(unsigned long long v) {
    return Length::from_nm(static_cast<std::int64_t>(v) * Length::nm_per_mm);
}
consteval Length operator""_in(unsigned long long v) {
    return Length::from_nm(static_cast<std::int64_t>(v) * Length::nm_per_inch);
}
// 11_in_64 is 11/64 in.
consteval Length operator""_in_64(unsigned long long v) {
    return Length::from_nm(static_cast<std::int64_t>(v) * (Length::nm_per_inch / 64));
}

}  // namespace literals

static_assert(Length::nm_per_inch % 64 == 0, "1/64 in must be exact");

}  // namespace engine
