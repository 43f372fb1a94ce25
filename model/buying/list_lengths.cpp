#include "model/buying/list_lengths.h"

#include "engine/measure/text_scan.h"
#include "model/buying/list_rows.h"
#include "model/resolve/values.h"

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;
using engine::LengthUnit;

bool is_digit_of(std::string_view text, std::size_t at) {
    return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

std::size_t digits_from(std::string_view text, std::size_t at) {
    std::size_t count = 0;
    while (is_digit_of(text, at + count)) ++count;
    return count;
}

Error two_readings(std::string_view text) {
    return {.code = ErrorCode::invalid_text,
            .where = "",
            .message = engine::quoted(text) +
                       " can be read in two ways; write it in whole "
                       "millimetres without a mark, as in 6096 mm"};
}

// Whether three digits follow the mark and it may part thousands.
bool may_part_thousands(std::string_view text, std::size_t mark) {
    const bool is_zero_before = text[mark - 1] == '0' && (mark < 2 || !is_digit_of(text, mark - 2));
    return digits_from(text, mark + 1) == 3 && !is_zero_before;
}

engine::Result<std::string> with_points(std::string_view text, char separator) {
    std::string plain{text};
    std::size_t commas = 0;
    for (std::size_t at = 1; at < plain.size(); ++at) {
        const bool is_mark = plain[at] == ',' || (plain[at] == '.' && separator == ';');
        if (!is_mark || !is_digit_of(plain, at - 1) || !is_digit_of(plain, at + 1)) continue;
        if (may_part_thousands(plain, at)) return two_readings(text);
        if (plain[at] == ',' && ++commas > 1) return two_readings(text);
        plain[at] = '.';
    }
    return plain;
}

// The unit at the end of a text.
std::optional<LengthUnit> unit_behind(std::string_view text) {
    static constexpr std::array<std::pair<std::string_view, LengthUnit>, 10> units{{
        {"inches", LengthUnit::inch},
        {"inch", LengthUnit::inch},
        {"in", LengthUnit::inch},
        {"\"", LengthUnit::inch},
        {"feet", LengthUnit::foot},
        {"foot", LengthUnit::foot},
        {"ft", LengthUnit::foot},
        {"'", LengthUnit::foot},
        {"mm", LengthUnit::millimetre},
        {"cm", LengthUnit::centimetre},
    }};
    const auto ends_with = [&](std::string_view unit) {
        return text.size() >= unit.size() && text.substr(text.size() - unit.size()) == unit;
    };
    for (const auto& [name, unit] : units) {
        if (ends_with(name)) return unit;
    }
    if (ends_with("m")) return LengthUnit::metre;
    return std::nullopt;
}

// Parted by x, by the sign for times or by *.
std::vector<std::string_view> factors(std::string_view text) {
    std::vector<std::string_view> parts;
    std::size_t begin = 0;
    for (std::size_t at = 0; at < text.size();) {
        const auto character = engine::decoded_character(text, at);
        const bool is_times = character.code == U'x' || character.code == U'X' ||
                              character.code == 0xD7 || character.code == U'*';
        if (is_times) {
            parts.push_back(trimmed(text.substr(begin, at - begin)));
            begin = at + character.bytes;
        }
        at += character.bytes;
    }
    parts.push_back(trimmed(text.substr(begin)));
    return parts;
}

}  // namespace

engine::Result<engine::Length> read_list_length(std::string_view text,
                                                LengthUnit bare,
                                                char separator) {
    const auto plain = with_points(text, separator);
    if (!plain) return plain.error();
    const auto length = engine::read_length(*plain, bare);
    if (!length) {
        return Error{.code = length.error().code,
                     .where = "",
                     .message = engine::quoted(text) + " is no length: " + length.error().message +
                                "; write it like 20 ft or 6000 mm"};
    }
    if (length->nm() > 0 && length->nm() <= most_length) return *length;
    return Error{.code = ErrorCode::invalid_value,
                 .where = "",
                 .message = "the length " + engine::quoted(text) +
                            (length->nm() > 0 ? " is too long" : " is not more than zero") +
                            "; write it like 20 ft or 6000 mm"};
}

engine::Result<std::array<engine::Length, 3>> read_sheet_size(std::string_view text,
                                                              LengthUnit bare,
                                                              char separator) {
    const auto parts = factors(text);
    if (parts.size() != 3) {
        return Error{.code = ErrorCode::invalid_text,
                     .where = "",
                     .message = engine::quoted(text) +
                                " is no size of sheet; write thickness, width and length, as in "
                                "1/8 x 48 x 96 in"};
    }
    std::array<engine::Length, 3> size;
    for (std::size_t i = 3; i-- > 0;) {
        if (const auto unit = unit_behind(parts[i])) bare = *unit;
        const auto length = read_list_length(parts[i], bare, separator);
        if (!length) return length.error();
        size[i] = *length;
    }
    return size;
}

}  // namespace model
