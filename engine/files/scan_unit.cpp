#include "engine/files/scan_unit.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace engine {
namespace {

struct Candidate {
    LengthUnit unit;
    double miss;  // 1 where it fits, else by which factor it does not
};

// Metres with two figures behind the first one that is not nought: "3.21 m", "0.00321 m".
std::string in_metres(double mm) {
    std::array<char, 32> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), mm / 1000.0,
                                   std::chars_format::general, 3);
    return std::string(text.data(), end.ptr) + " m";
}

double longest_side(const ScanPoint& lo, const ScanPoint& hi) {
    double longest = 0.0;
    for (std::size_t axis = 0; axis < 3; ++axis)
        longest = std::max(longest, static_cast<double>(hi[axis]) - static_cast<double>(lo[axis]));
    return longest;
}

double miss_of(double mm, const ExpectedSpan& expected) {
    return std::max({1.0, expected.least_mm / mm, mm / expected.most_mm});
}

std::string reason_of(double mm, const ExpectedSpan& expected) {
    const std::string span = in_metres(expected.least_mm) + " to " + in_metres(expected.most_mm);
    const std::string side = "the longest side would be " + in_metres(mm);
    if (mm < expected.least_mm) return side + ", shorter than the " + span + " that are expected";
    if (mm > expected.most_mm) return side + ", longer than the " + span + " that are expected";
    return side + ", within the " + span + " that are expected";
}

}  // namespace

double mm_in(LengthUnit unit) {
    switch (unit) {
        case LengthUnit::inch:
            return 25.4;
        case LengthUnit::foot:
            return 304.8;
        case LengthUnit::millimetre:
            return 1.0;
        case LengthUnit::centimetre:
            return 10.0;
        case LengthUnit::metre:
            break;
    }
    return 1000.0;
}

std::vector<UnitGuess> guessed_unit(const ScanPoint& lo,
                                    const ScanPoint& hi,
                                    const ExpectedSpan& expected) {
    const double longest = longest_side(lo, hi);
    if (!(longest > 0.0 && std::isfinite(longest))) return {};
    std::array candidates = {Candidate{LengthUnit::metre, 1.0},
                             Candidate{LengthUnit::millimetre, 1.0},
                             Candidate{LengthUnit::centimetre, 1.0},
                             Candidate{LengthUnit::inch, 1.0}, Candidate{LengthUnit::foot, 1.0}};
    for (auto& one : candidates) one.miss = miss_of(longest * mm_in(one.unit), expected);
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Candidate& a, const Candidate& b) { return a.miss < b.miss; });
    std::vector<UnitGuess> guesses;
    for (const auto& one : candidates)
        guesses.push_back(
            {one.unit, one.miss == 1.0, reason_of(longest * mm_in(one.unit), expected)});
    return guesses;
}

}  // namespace engine
