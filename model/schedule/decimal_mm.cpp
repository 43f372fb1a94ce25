#include "model/schedule/decimal_mm.h"

#include <array>
#include <charconv>
#include <cstddef>

namespace model {
namespace {

constexpr std::size_t decimals = 6;  // 1 mm = 10^6 nm

void append_whole(std::string& out, std::uint64_t mm) {
    std::array<char, 20> digits;
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), mm).ptr;
    out.append(digits.data(), end);
}

void append_fraction(std::string& out, std::uint64_t nm) {
    std::array<char, decimals> digits;
    for (std::size_t i = decimals; i-- > 0; nm /= 10) {
        digits[i] = static_cast<char>('0' + nm % 10);
    }
    std::size_t kept = decimals;
    while (digits[kept - 1] == '0') --kept;
    out += '.';
    out.append(digits.data(), kept);
}

}  // namespace

void append_decimal_mm(std::string& out, std::int64_t nm) {
    constexpr auto nm_per_mm = static_cast<std::uint64_t>(engine::Length::nm_per_mm);
    const auto size = nm < 0 ? 0U - static_cast<std::uint64_t>(nm) : static_cast<std::uint64_t>(nm);
    if (nm < 0) out += '-';
    append_whole(out, size / nm_per_mm);
    if (size % nm_per_mm != 0) append_fraction(out, size % nm_per_mm);
}

}  // namespace model
