#include "model/book/book_pages.h"

#include "model/schedule/wrapped_lines.h"

namespace model {
namespace {

using engine::LetterWeight;
using engine::TextAnchor;

constexpr double title_size = 6.5;  // mm
constexpr double part_size = 4.6;
constexpr double caution_size = 3.2;
constexpr double foot_size = 3.0;
constexpr double line_of = 1.28;  // from line to line, in sizes of the font

}  // namespace

engine::Document BookPages::finished(std::string_view stamp) && {
    for (std::size_t i = 0; i < document_.pages.size(); ++i) {
        auto& page = document_.pages[i];
        const double y = page.size().height - PageFlow::margin + 2.0;
        const double right = page.size().width - PageFlow::margin;
        const double third = (right - PageFlow::margin) / 3.0;
        page.draw_line({PageFlow::margin, y - 4.2}, {right, y - 4.2},
                       {.width = engine::hair_width});
        page.draw_text({PageFlow::margin, y}, shortened(document_.title, foot_size, 1.4 * third),
                       {.size = foot_size});
        page.draw_text({PageFlow::margin + 1.95 * third, y}, "stamp " + std::string(stamp),
                       {.size = foot_size, .anchor = TextAnchor::middle});
        page.draw_text(
            {right, y},
            "page " + std::to_string(i + 1) + " of " + std::to_string(document_.pages.size()),
            {.size = foot_size, .anchor = TextAnchor::end});
    }
    return std::move(document_);
}

void draw_words(PageFlow& flow, std::string_view words, double size, LetterWeight weight) {
    for (const auto& line : wrapped_lines(words, size, flow.width(), weight)) {
        flow.make_room(size * line_of);
        flow.text(line, {.size = size, .weight = weight}, size * line_of);
    }
}

void draw_page_head(PageFlow& flow, std::string_view title, std::string_view words) {
    draw_words(flow, title, title_size, LetterWeight::bold);
    if (!words.empty()) {
        flow.skip(0.5);
        draw_words(flow, words);
    }
    flow.skip(3.0);
}

void draw_part_head(PageFlow& flow, std::string_view title) {
    flow.skip(4.0);
    flow.make_room(part_size * line_of + 24.0);  // never alone at the foot of a page
    draw_words(flow, title, part_size, LetterWeight::bold);
    flow.skip(1.5);
}

void draw_caution(PageFlow& flow, Work work) {
    const auto& caution = caution_of(work);
    const double indent = 5.0;
    const double width = flow.width() - indent;
    const std::string head =
        "Caution, " + std::string(name_of(work)) + ": " + std::string(caution.line);
    std::string further;
    for (const auto sentence : caution.further) further += std::string(sentence) + " ";
    const auto bold = wrapped_lines(head, caution_size + 0.4, width, LetterWeight::bold);
    const auto plain = wrapped_lines(further, caution_size, width);
    const double height = static_cast<double>(bold.size()) * (caution_size + 0.4) * line_of +
                          static_cast<double>(plain.size()) * caution_size * line_of;
    flow.make_room(height + 4.0);
    flow.page().draw_rectangle({flow.left(), flow.y(), 1.6, height + 1.0},
                               engine::filled(engine::Ink::black));
    const auto put = [&](const std::vector<std::string>& lines, double size, LetterWeight weight) {
        for (const auto& line : lines) {
            flow.page().draw_text({flow.left() + indent, flow.y() + size}, line,
                                  {.size = size, .weight = weight});
            flow.skip(size * line_of);
        }
    };
    put(bold, caution_size + 0.4, LetterWeight::bold);
    put(plain, caution_size, LetterWeight::regular);
    flow.skip(4.0);
}

void draw_tick(PageFlow& flow, std::string_view words) {
    const double size = 3.8;
    const double indent = 8.0;
    const auto lines = wrapped_lines(words, size, flow.width() - indent);
    flow.make_room(static_cast<double>(lines.size()) * size * line_of + 2.5);
    flow.page().draw_rectangle({flow.left(), flow.y(), 4.5, 4.5});
    for (const auto& line : lines) {
        flow.page().draw_text({flow.left() + indent, flow.y() + size}, line, {.size = size});
        flow.skip(size * line_of);
    }
    flow.skip(2.5);
}

}  // namespace model
