#include "model/schedule/wrapped_lines.h"

#include "engine/drawing/printable_text.h"

namespace model {
namespace {

// Bytes of a printable text's beginning that are no wider, in whole characters; one at least.
std::size_t bytes_that_fit(std::string_view printable,
                           double size,
                           double width,
                           engine::LetterWeight weight) {
    std::string begun;
    for (const char32_t character : engine::characters_of(printable)) {
        std::string longer = begun;
        engine::append_character(longer, character);
        if (!begun.empty() && engine::text_width(longer, size, weight) > width) break;
        begun = std::move(longer);
    }
    return begun.size();
}

}  // namespace

std::vector<std::string> wrapped_lines(std::string_view text,
                                       double size,
                                       double width,
                                       engine::LetterWeight weight) {
    const std::string printable = engine::printable_text(text);
    std::string_view rest = printable;
    std::vector<std::string> lines;
    std::string line;
    while (!rest.empty()) {
        const auto end = rest.find(' ');
        std::string_view word = rest.substr(0, end);
        rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
        std::string longer = line.empty() ? std::string(word) : line + " " + std::string(word);
        if (engine::text_width(longer, size, weight) <= width) {
            line = std::move(longer);
            continue;
        }
        if (!line.empty()) lines.push_back(line);
        while (engine::text_width(word, size, weight) > width) {
            const auto bytes = bytes_that_fit(word, size, width, weight);
            if (bytes >= word.size()) break;
            lines.emplace_back(word.substr(0, bytes));
            word = word.substr(bytes);
        }
        line = std::string(word);
    }
    if (!line.empty() || lines.empty()) lines.push_back(line);
    return lines;
}

std::string shortened(std::string_view text,
                      double size,
                      double width,
                      engine::LetterWeight weight) {
    std::string printable = engine::printable_text(text);
    if (engine::text_width(printable, size, weight) <= width) return printable;
    const std::string dots = "\u2026";
    const double room = width - engine::text_width(dots, size, weight);
    return printable.substr(0, bytes_that_fit(printable, size, room, weight)) + dots;
}

}  // namespace model
