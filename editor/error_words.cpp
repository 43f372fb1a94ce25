#include "editor/error_words.h"

#include "engine/measure/text_scan.h"

#include <charconv>
#include <cstddef>
#include <optional>

namespace editor {
namespace {

constexpr std::string_view column_word = "column ";

// The number behind "column" at the end of a place.
std::optional<std::size_t> column_in(std::string_view where) {
    const auto at = where.rfind(column_word);
    if (at == std::string_view::npos) return std::nullopt;
    const std::string_view digits = where.substr(at + column_word.size());
    std::size_t column = 0;
    const char* end = digits.data() + digits.size();
    const auto read = std::from_chars(digits.data(), end, column);
    if (read.ec != std::errc{} || read.ptr != end) return std::nullopt;
    return column;
}

std::string_view before_column(std::string_view text, std::size_t column) {
    std::size_t at = 0;
    for (std::size_t i = 1; i < column && at < text.size(); ++i) {
        at += engine::decoded_character(text, at).bytes;
    }
    return text.substr(0, at);
}

}  // namespace

std::string error_words(const engine::Error& error, std::string_view typed) {
    const auto column = column_in(error.where);
    if (!column) return engine::to_text(error);
    const std::string_view before = before_column(typed, *column);
    if (before.find_first_not_of(' ') == std::string_view::npos) return error.message;
    return "behind " + engine::quoted(before) + ": " + error.message;
}

}  // namespace editor
