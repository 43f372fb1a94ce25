#include "model/book/label_shape.h"

#include "engine/drawing/lettering.h"
#include "model/schedule/kept_together.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>

namespace model {
namespace {

constexpr double below_line = 0.22;  // of a font's size: how far its letters hang down

using TextLines = std::vector<std::string>;

double widest(const TextLines& lines, double size, engine::LetterWeight weight) {
    double width = 0.0;
    for (const auto& line : lines) width = std::max(width, engine::text_width(line, size, weight));
    return width;
}

double widest_measure(const TextLines& paragraphs, double size, engine::LetterWeight weight) {
    double width = 0.0;
    for (const auto& paragraph : paragraphs) {
        for (const auto measure : kept_together(paragraph))
            width = std::max(width, engine::text_width(measure, size, weight));
    }
    return width;
}

TextLines broken(const TextLines& paragraphs,
                 double size,
                 double width,
                 engine::LetterWeight weight) {
    TextLines all;
    for (const auto& paragraph : paragraphs)
        for (auto& line : wrapped_lines(paragraph, size, width, weight))
            all.push_back(std::move(line));
    return all;
}

TextLines joined(const LabelWords& words) {
    std::string all;
    for (const auto& paragraph : words.paragraphs)
        all += (all.empty() ? "" : words.between) + paragraph;
    return {all};
}

LabelShape shape_of(const LabelWords& words, TextLines lines, double size, bool is_turned) {
    const double along = widest(lines, size, words.weight);
    const double down = static_cast<double>(lines.size() - 1) * label_pitch * size +
                        engine::capital_height(size, words.weight) + below_line * size;
    LabelShape shape{std::move(lines), size, is_turned, {along, down}};
    const bool has_arrow = words.arrow != LabelArrow::none;
    if (is_turned) {
        shape.box = {down, along + (has_arrow ? label_arrow + 1.0 : 0.0)};
        if (has_arrow) shape.box.width = std::max(shape.box.width, label_arrow_room);
    } else if (has_arrow) {
        shape.box = {along + label_arrow_room, std::max(down, label_arrow)};
    }
    return shape;
}

// Of a width between that of the widest word and that of the widest line.
TextLines broken_to_share(const TextLines& paragraphs,
                          double share,
                          double size,
                          engine::LetterWeight weight) {
    const double natural = widest(paragraphs, size, weight) + 0.01;
    const double least = widest_measure(paragraphs, size, weight) + 0.01;
    return broken(paragraphs, size, std::max(share * natural, least), weight);
}

bool offer_in_sizes(const LabelWords& words,
                    const std::vector<double>& sizes,
                    const std::function<bool(const LabelShape&)>& is_taken) {
    const TextLines one = joined(words);
    for (const double share : {1.0, 0.75, 0.55, 0.4, 0.0}) {
        for (const bool is_turned : {false, true}) {
            for (const auto* paragraphs : {&words.paragraphs, &one}) {
                for (const double size : sizes) {
                    auto lines = broken_to_share(*paragraphs, share, size, words.weight);
                    if (is_taken(shape_of(words, std::move(lines), size, is_turned))) return true;
                }
            }
        }
    }
    return false;
}

}  // namespace

bool offer_shapes(const LabelWords& words,
                  const std::vector<double>& sizes,
                  const std::function<bool(const LabelShape&)>& is_taken) {
    constexpr std::size_t large_count = 2;
    const auto split =
        sizes.begin() + static_cast<std::ptrdiff_t>(std::min(large_count, sizes.size()));
    return offer_in_sizes(words, {sizes.begin(), split}, is_taken) ||
           offer_in_sizes(words, {split, sizes.end()}, is_taken);
}

LabelShape label_in_width(const LabelWords& words, double size, double width) {
    const double room = words.arrow == LabelArrow::none ? width : width - label_arrow_room;
    return shape_of(words, broken(words.paragraphs, size, room, words.weight), size, false);
}

}  // namespace model
