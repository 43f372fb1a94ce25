// Walks over a text that a user typed, character by character, and keeps the first error.
#pragma once

#include "engine/result.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace engine {

struct Character {
    char32_t code = 0;
    std::size_t bytes = 0;
};

// The character that starts at a byte of a UTF-8 text; what is no UTF-8 counts as a character a
// byte. Requires at < text.size().
Character decoded_character(std::string_view text, std::size_t at);

// The column, from 1 and in characters, of a byte of the text.
std::size_t column_of(std::string_view text, std::size_t at);

// The same questions about characters beyond ASCII, which are rare: the blocks of the Unicode
// Standard for accented Latin, Greek and Cyrillic letters, and its spaces, dashes and slashes.
bool is_rare_letter(char32_t c);
bool is_rare_space(char32_t c);
bool is_rare_dash(char32_t c);
bool is_rare_slash(char32_t c);

constexpr bool is_between(char32_t c, char32_t first, char32_t last) {
    return c >= first && c <= last;
}
constexpr bool is_digit(char32_t c) { return is_between(c, U'0', U'9'); }
inline bool is_letter(char32_t c) {
    if (c >= 0x80) return is_rare_letter(c);
    return is_between(c, U'a', U'z') || is_between(c, U'A', U'Z');
}
inline bool is_space(char32_t c) {
    if (c >= 0x80) return is_rare_space(c);
    return c == U' ' || is_between(c, U'\t', U'\r');
}
inline bool is_dash(char32_t c) { return c == U'-' || (c >= 0x80 && is_rare_dash(c)); }
inline bool is_slash(char32_t c) { return c == U'/' || (c >= 0x80 && is_rare_slash(c)); }

struct ScanError {
    ErrorCode code{};
    std::size_t at = 0;  // byte
    std::string message;
};

class TextScan {
public:
    static constexpr char32_t end_of_text = 0;  // a zero byte in the text counts as unreadable

    explicit TextScan(std::string_view text) : text_{text} {}

    std::string_view text() const { return text_; }
    std::size_t at() const { return at_; }
    void go_to(std::size_t at) { at_ = at; }

    bool is_at_end() const { return at_ >= text_.size(); }
    char32_t next() const { return character().code; }
    void step() { at_ += character().bytes; }
    bool take(char32_t c) {
        if (next() != c) return false;
        step();
        return true;
    }
    void skip_spaces() {
        while (is_space(next())) step();
    }
    // What was passed since `begin`, shortened where it would not fit into a message.
    std::string passed_since(std::size_t begin) const;

    // Keeps the error and says that there is no value.
    std::nullopt_t fail(ErrorCode code, std::size_t at, std::string message) {
        if (!error_) error_ = ScanError{code, at, std::move(message)};
        return std::nullopt;
    }
    bool has_failed() const { return error_.has_value(); }
    // The error as the user is told it. Requires has_failed().
    Error error() const;

private:
    Character character() const {
        if (at_ >= text_.size()) return {end_of_text, 0};
        const auto byte = static_cast<unsigned char>(text_[at_]);
        if (byte != 0 && byte < 0x80) return {byte, 1};
        return decoded_character(text_, at_);
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::optional<ScanError> error_;
};

// A part of what the user typed, in quotes, shortened where it would not fit into a message.
std::string quoted(std::string_view part);

}  // namespace engine
