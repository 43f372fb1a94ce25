#include "engine/files/scan_text.h"

#include "engine/files/json_text.h"

#include <cmath>
#include <cstring>
#include <limits>

namespace engine {
namespace {

// Of a number that a float cannot hold.
float far_number(const char* at, const char* behind) {
    double value = 0.0;
    const auto fault = std::from_chars(at, behind, value).ec;
    const std::string_view text{at, static_cast<std::size_t>(behind - at)};
    if (fault == std::errc::result_out_of_range) {
        const bool is_small =
            text.find("e-") != std::string_view::npos || text.find("E-") != std::string_view::npos;
        return is_small ? 0.0F : std::numeric_limits<float>::infinity();
    }
    if (std::abs(value) > static_cast<double>(std::numeric_limits<float>::max()))
        return std::numeric_limits<float>::infinity();
    return static_cast<float>(value);
}

}  // namespace

const char* read_float(const char* at, const char* end, float& value) {
    if (at != end && *at == '+') {  // from_chars knows none
        ++at;
        if (at != end && *at == '-') return nullptr;
    }
    const auto [behind, fault] = std::from_chars(at, end, value);
    if (fault == std::errc::invalid_argument) return nullptr;
    if (fault == std::errc::result_out_of_range) value = far_number(at, behind);
    return behind;
}

void ScanText::skip_line() {
    while (at_ != end_ && *at_ != '\n' && *at_ != '\r') ++at_;
    if (at_ == end_) return;
    if (*at_ == '\r' && at_ + 1 != end_ && at_[1] == '\n') ++at_;
    step();
}

void ScanText::step_onto_line_end() {
    ++at_;
    if (*at_ == '\r' && at_ + 1 != end_ && at_[1] == '\n') ++at_;
    ++line_;
}

std::string no_number(std::string_view word) {
    if (word.empty()) return "a number is missing here; the file may be cut off, so save it again";
    std::string message = json_quoted(in_short(word, 30)) + " is not a number";
    if (word.find(',') != word.npos) message += "; decimals take a point, not a comma";
    return message;
}

}  // namespace engine
