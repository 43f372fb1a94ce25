// A cursor over the text of a mesh file: words and numbers, by the "C" locale whatever the user's
// is, and the line it stands on. Lines end as any system ends them.
#pragma once

#include <charconv>
#include <cstddef>
#include <string>
#include <string_view>
#include <system_error>

namespace engine {

// Reads a number at the beginning of [at, end) and gives the place behind it, null where there is
// none. What is too large for a float becomes infinite, what is too small becomes nought.
const char* read_float(const char* at, const char* end, float& value);

class ScanText {
public:
    explicit ScanText(std::string_view text, std::size_t first_line = 1)
        : begin_{text.data()}, at_{begin_}, end_{begin_ + text.size()}, line_{first_line} {}

    std::size_t offset() const { return static_cast<std::size_t>(at_ - begin_); }
    std::size_t line() const { return line_; }
    bool is_at_end() const { return at_ == end_; }

    // Over blanks; a backslash at the end of a line joins the next one to it.
    void skip_blanks() {
        for (; at_ != end_ && (is_blank(*at_) || is_join(at_)); ++at_)
            if (*at_ == '\\') step_onto_line_end();
    }
    // Over blanks and line ends.
    void skip_space() {
        while (at_ != end_ && is_space(*at_)) step();
    }
    // To the beginning of the next line.
    void skip_line();

    // Up to the next blank or line end; empty where there is none.
    std::string_view word() {
        const char* const begin = at_;
        while (at_ != end_ && !is_space(*at_) && !is_join(at_)) ++at_;
        return {begin, static_cast<std::size_t>(at_ - begin)};
    }
    // The same, but stays before it.
    std::string_view next_word() const { return ScanText{*this}.word(); }

    bool takes_word(std::string_view wanted) {
        const std::string_view rest{at_, static_cast<std::size_t>(end_ - at_)};
        return rest.starts_with(wanted) && ends_word(at_ + wanted.size());
    }

    bool is_at_line_end() const { return at_ == end_ || *at_ == '\n' || *at_ == '\r'; }

    // A whole word that is a number; else false, and the cursor stays.
    bool number(float& value) {
        const char* const behind = read_float(at_, end_, value);
        return ends_word(behind);
    }
    template <class Integer>
    bool integer(Integer& value) {
        const auto [behind, fault] = std::from_chars(at_, end_, value);
        return fault == std::errc{} && ends_word(behind);
    }
    // A number that may be a part of a word.
    template <class Integer>
    bool leading_integer(Integer& value) {
        const auto [behind, fault] = std::from_chars(at_, end_, value);
        if (fault != std::errc{}) return false;
        at_ = behind;
        return true;
    }
    bool takes(char wanted) {
        if (at_ == end_ || *at_ != wanted) return false;
        ++at_;
        return true;
    }

private:
    static bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\v' || c == '\f'; }
    static bool is_space(char c) { return is_blank(c) || c == '\n' || c == '\r'; }

    bool ends_word(const char* behind) {
        if (behind == nullptr || (behind != end_ && !is_space(*behind) && !is_join(behind)))
            return false;
        at_ = behind;
        return true;
    }
    void step() {
        const char c = *at_++;
        if (c == '\n' || (c == '\r' && (at_ == end_ || *at_ != '\n'))) ++line_;
    }
    // A backslash before a line end.
    bool is_join(const char* at) const {
        return *at == '\\' && at + 1 != end_ && (at[1] == '\n' || at[1] == '\r');
    }
    // From such a backslash to the last character of the line end.
    void step_onto_line_end();

    const char* begin_;
    const char* at_;
    const char* end_;
    std::size_t line_;
};

// "abc" is no number: the reason, with the mend where it can be guessed.
std::string no_number(std::string_view word);

}  // namespace engine
