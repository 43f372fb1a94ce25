#include "model/schedule/wrapped_lines.h"

#include "engine/drawing/printable_text.h"
#include "model/schedule/kept_together.h"

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

class Wrapping {
public:
    Wrapping(double size, double width, engine::LetterWeight weight)
        : size_{size}, width_{width}, weight_{weight} {}

    // A measure that is wider than a line is broken at its spaces all the same.
    void add(std::string_view measure) {
        if (fits(measure)) return add_word(measure);
        for (const auto word : words_of(measure)) add_word(word);
    }

    std::vector<std::string> done() && {
        if (!line_.empty() || lines_.empty()) lines_.push_back(std::move(line_));
        return std::move(lines_);
    }

private:
    bool fits(std::string_view text) const {
        return engine::text_width(text, size_, weight_) <= width_;
    }

    void add_word(std::string_view word) {
        std::string longer = line_.empty() ? std::string(word) : line_ + " " + std::string(word);
        if (fits(longer)) {
            line_ = std::move(longer);
            return;
        }
        if (!line_.empty()) lines_.push_back(line_);
        while (!fits(word)) {
            const auto bytes = bytes_that_fit(word, size_, width_, weight_);
            if (bytes >= word.size()) break;
            lines_.emplace_back(word.substr(0, bytes));
            word = word.substr(bytes);
        }
        line_ = std::string(word);
    }

    double size_ = 0.0;
    double width_ = 0.0;
    engine::LetterWeight weight_;
    std::vector<std::string> lines_;
    std::string line_;
};

}  // namespace

std::vector<std::string> wrapped_lines(std::string_view text,
                                       double size,
                                       double width,
                                       engine::LetterWeight weight) {
    const std::string printable = engine::printable_text(text);
    Wrapping wrapping(size, width, weight);
    for (const auto measure : kept_together(printable)) wrapping.add(measure);
    return std::move(wrapping).done();
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
