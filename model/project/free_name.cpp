#include "model/project/free_name.h"

#include "model/project/references.h"

#include <charconv>

namespace model {

std::optional<NumberedName> numbered(const std::string& name) {
    const std::size_t space = name.rfind(' ');
    if (space == name.npos || space == 0 || space + 1 == name.size()) return std::nullopt;
    NumberedName parted{name.substr(0, space)};
    const char* const end = name.data() + name.size();
    const char* const digits = name.data() + space + 1;
    const auto [stop, error] = std::from_chars(digits, end, parted.number);
    constexpr int most = 1'000'000;  // beyond it a number is no count of things
    const bool is_count = *digits >= '1' && *digits <= '9' && parted.number < most;
    if (error != std::errc() || stop != end || !is_count) return std::nullopt;
    return parted;
}

std::string with_number(const std::string& stem, int number) {
    return stem + " " + std::to_string(number);
}

bool has_bar(const Frame& frame, const std::string& name) {
    return has_target({}, &frame, {Target::member, name});
}

std::string free_bar_name(const Frame& frame, const std::string& wanted) {
    return free_name(wanted, [&](const std::string& name) { return has_bar(frame, name); });
}

}  // namespace model
