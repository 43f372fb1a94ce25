#include "model/book/mark_head.h"

#include "engine/drawing/lettering.h"
#include "model/book/letter_sizes.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/page_flow.h"
#include "model/schedule/wrapped_lines.h"

namespace model {
namespace {

using engine::LetterWeight;

constexpr double name_size = 11.0;  // mm
constexpr double count_size = 6.0;
constexpr double stock_size = 3.8;
constexpr double name_height = 12.5;
constexpr double stock_height = 5.4;
constexpr double place_height = 4.2;
constexpr std::size_t most_places = 2;  // lines

std::string count_words(const CutRow& cut) {
    std::string words = std::to_string(cut.quantity) + (cut.quantity == 1 ? " piece" : " pieces");
    if (cut.hand == Hand::as_drawn) words += ", as drawn";
    if (cut.hand == Hand::opposite) words += ", opposite hand";
    return words;
}

std::string size_words(const Project& project, const CutRow& cut) {
    const std::string length = length_on_paper(project, cut.length);
    if (!is_of_sheet(cut.kind)) return length;
    return length_text(project, cut.width) + " x " + length;
}

std::string stock_words(const CutRow& cut) {
    std::string words = cut.section;
    if (!cut.alloy.empty()) words += ", " + cut.alloy;
    words += "; exactly ";
    if (is_of_sheet(cut.kind)) words += decimal_mm(cut.width) + " mm x ";
    return words + decimal_mm(cut.length) + " mm";
}

std::vector<std::string> place_lines(const CutRow& cut, double width) {
    auto lines = wrapped_lines(cut.frames + ": " + cut.members, small_letters, width - 8.0);
    if (lines.size() <= most_places) return lines;
    lines.resize(most_places);
    lines.back() += " ...";
    return lines;
}

}  // namespace

MarkHead::MarkHead(const Project& project,
                   const Resolved& resolved,
                   const MarkFacts& facts,
                   double width)
    : name_{resolved.marks[facts.cut.mark].name},
      count_{count_words(facts.cut)},
      size_{size_words(project, facts.cut)},
      width_{width},
      stock_{wrapped_lines(stock_words(facts.cut), stock_size, width)},
      ends_{wrapped_lines(ends_sentence(facts), stock_size, width)},
      places_{place_lines(facts.cut, width)} {}

double MarkHead::height() const {
    return name_height + stock_height * static_cast<double>(stock_.size() + ends_.size()) +
           place_height * static_cast<double>(places_.size()) + 2.0;
}

void MarkHead::draw(engine::Page& page, engine::PagePoint at) const {
    page.draw_line(at, {at.x + width_, at.y}, {.width = engine::wide_width});
    const double base = at.y + name_height - 2.0;
    page.draw_text({at.x, base}, name_, {.size = name_size, .weight = LetterWeight::bold});
    const double after = engine::text_width(name_, name_size, LetterWeight::bold) + 5.0;
    page.draw_text({at.x + after, base}, count_,
                   {.size = count_size, .weight = LetterWeight::bold});
    page.draw_text(
        {at.x + width_, base}, size_,
        {.size = count_size, .weight = LetterWeight::bold, .anchor = engine::TextAnchor::end});
    double y = at.y + name_height;
    const auto write = [&](const std::vector<std::string>& lines, double size, double height,
                           engine::Ink ink, LetterWeight weight) {
        for (const auto& line : lines) {
            page.draw_text({at.x, y + size}, line, {.size = size, .weight = weight, .ink = ink});
            y += height;
        }
    };
    write(stock_, stock_size, stock_height, engine::Ink::black, LetterWeight::regular);
    write(ends_, stock_size, stock_height, engine::Ink::black, LetterWeight::bold);
    write(places_, small_letters, place_height, engine::Ink::grey_75, LetterWeight::regular);
}

}  // namespace model
