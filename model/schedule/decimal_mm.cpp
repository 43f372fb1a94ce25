#include "model/schedule/decimal_mm.h"

#include <array>
#include <charconv>
#include <cstddef>

namespace model {
namespace {

constexpr int decimals = 6;          // 1 mm = 10^6 nm
constexpr std::size_t longest = 24;  // "-9223372036854.775808" and a little room

// Both write at `at` and give the end of what they wrote.
char* put_whole(char* at, char* end, std::uint64_t mm) { return std::to_chars(at, end, mm).ptr; }

char* put_fraction(char* at, std::uint64_t nm) {
    int digits = decimals;
    for (; nm % 10 == 0; nm /= 10) --digits;  // no zeros at the end
    *at = '.';
    for (int i = digits; i > 0; --i, nm /= 10) at[i] = static_cast<char>('0' + nm % 10);
    return at + digits + 1;
}

}  // namespace

void append_decimal_mm(std::string& out, std::int64_t nm) {
    constexpr auto nm_per_mm = static_cast<std::uint64_t>(engine::Length::nm_per_mm);
    const auto size = nm < 0 ? 0U - static_cast<std::uint64_t>(nm) : static_cast<std::uint64_t>(nm);
    std::array<char, longest> text;
    char* at = text.data();
    if (nm < 0) *at++ = '-';
    at = put_whole(at, text.data() + text.size(), size / nm_per_mm);
    if (size % nm_per_mm != 0) at = put_fraction(at, size % nm_per_mm);
    out.append(text.data(), at);
}

}  // namespace model
