#include "engine/measure/text_scan.h"

#include <cassert>

namespace engine {
namespace {

constexpr char32_t unreadable = 0xFFFD;

// How many bytes a character has by its first one; 0 for a byte that can start none.
constexpr std::size_t bytes_after_first(unsigned char first) {
    if (first >= 0xC2 && first <= 0xDF) return 1;
    if (first >= 0xE0 && first <= 0xEF) return 2;
    if (first >= 0xF0 && first <= 0xF4) return 3;
    return 0;
}

}  // namespace

Character decoded_character(std::string_view text, std::size_t at) {
    assert(at < text.size());
    const auto first = static_cast<unsigned char>(text[at]);
    if (first == 0) return {unreadable, 1};
    if (first < 0x80) return {first, 1};
    const auto more = bytes_after_first(first);
    if (more == 0 || at + more >= text.size()) return {unreadable, 1};
    char32_t code = first & (0x3FU >> more);
    for (std::size_t i = 1; i <= more; ++i) {
        const auto byte = static_cast<unsigned char>(text[at + i]);
        if ((byte & 0xC0U) != 0x80U) return {unreadable, 1};
        code = (code << 6U) | (byte & 0x3FU);
    }
    return {code, more + 1};
}

std::size_t column_of(std::string_view text, std::size_t at) {
    std::size_t column = 1;
    for (std::size_t i = 0; i < at && i < text.size(); ++column)
        i += decoded_character(text, i).bytes;
    return column;
}

bool is_rare_letter(char32_t c) {
    const bool is_sign = c == 0xD7 || c == 0xF7;  // times and divided by
    return !is_sign && (is_between(c, 0xC0, 0x24F) || is_between(c, 0x370, 0x4FF));
}

bool is_rare_space(char32_t c) { return c == 0xA0 || is_between(c, 0x2000, 0x200A) || c == 0x202F; }

// Hyphens, figure dash, en dash and minus sign.
bool is_rare_dash(char32_t c) { return is_between(c, 0x2010, 0x2013) || c == 0x2212; }

// Fraction slash and division slash.
bool is_rare_slash(char32_t c) { return c == 0x2044 || c == 0x2215; }

std::string quoted(std::string_view part) {
    constexpr std::size_t most = 40;
    std::size_t end = part.size();
    if (end > most) {
        end = 0;
        while (end < most) end += decoded_character(part, end).bytes;
    }
    std::string text{'`'};
    text += part.substr(0, end);
    text += end < part.size() ? "...`" : "`";
    return text;
}

std::string TextScan::passed_since(std::size_t begin) const {
    return quoted(text_.substr(begin, at_ - begin));
}

Error TextScan::error() const {
    assert(error_);
    return {error_->code, "column " + std::to_string(column_of(text_, error_->at)),
            error_->message};
}

}  // namespace engine
