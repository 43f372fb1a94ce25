#include "tests/support/skeleton_checks.h"

#include <cctype>
#include <cmath>
#include <cstdlib>

namespace tests {
namespace {

// A decimal or mixed number in front: "1/8", "1 1/4", "4.0".
std::optional<double> number_in(std::string_view text) {
    const std::string copy{text};
    char* end = nullptr;
    const double whole = std::strtod(copy.c_str(), &end);
    if (end == copy.c_str()) return std::nullopt;
    if (*end != '/') return whole;
    const double below = std::strtod(end + 1, nullptr);
    if (below <= 0) return std::nullopt;
    return whole / below;
}

Nm nm_from(double value, double unit) { return static_cast<Nm>(std::llround(value * unit)); }

}  // namespace

std::optional<Nm> diameter_of_spec(std::string_view spec) {
    constexpr double inch = 25'400'000.0;
    constexpr double millimetre = 1'000'000.0;
    const auto after = [&](std::string_view start) { return spec.substr(start.size()); };
    if (spec.rfind("blind rivet ", 0) == 0) {
        const auto rest = after("blind rivet ");
        const auto number = number_in(rest);
        if (!number) return std::nullopt;
        const bool metric = rest.substr(0, rest.find(',')).find("mm") != std::string_view::npos;
        return nm_from(*number, metric ? millimetre : inch);
    }
    if (spec.rfind("machine screw ", 0) == 0) {
        const auto rest = after("machine screw ");
        const bool metric = !rest.empty() && rest.front() == 'M';
        const auto number = number_in(metric ? rest.substr(1) : rest);
        if (!number) return std::nullopt;
        if (metric) return nm_from(*number, millimetre);
        // Number sizes: 0.060 in + 0.013 in a number (ASME B1.1, basic major diameters; from
        // memory). Fractions are their own size.
        const bool is_fraction = rest.substr(0, rest.find('-')).find('/') != std::string_view::npos;
        return nm_from(is_fraction ? *number : 0.060 + 0.013 * *number, inch);
    }
    return std::nullopt;
}

std::optional<Nm> length_of_screw(std::string_view spec) {
    const auto at = spec.find(" x ");
    if (at == std::string_view::npos) return std::nullopt;
    const auto text = spec.substr(at + 3);
    const bool metric = text.find("mm") != std::string_view::npos;
    const double unit = metric ? 1'000'000.0 : 25'400'000.0;
    const auto first = number_in(text);
    if (!first) return std::nullopt;
    // "1 1/4 in": a whole number and a fraction.
    const auto gap = text.find(' ');
    const bool is_mixed =
        gap + 1 < text.size() && std::isdigit(static_cast<unsigned char>(text[gap + 1])) != 0;
    const double rest = is_mixed ? number_in(text.substr(gap + 1)).value_or(0.0) : 0.0;
    return nm_from(*first + rest, unit);
}

}  // namespace tests
