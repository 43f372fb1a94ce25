#include "tests/model/book/texts_on_page.h"

#include <cmath>

namespace tests {
namespace {

// Level, or read upwards.
engine::PageBox box_of(const engine::DrawnText& text) {
    const auto& look = text.lettering;
    const double width = engine::text_width(text.text, look.size, look.weight);
    const double height = engine::capital_height(look.size, look.weight);
    const double before = engine::before_anchor(width, look.anchor);
    if (look.turned_deg == 90.0)
        return {text.at.x - height, text.at.y + before - width, height, width};
    return {text.at.x - before, text.at.y - height, width, height};
}

bool are_apart(const engine::PageBox& a, const engine::PageBox& b) {
    return a.left + a.width <= b.left || b.left + b.width <= a.left || a.top + a.height <= b.top ||
           b.top + b.height <= a.top;
}

bool is_on(const engine::PageBox& box, engine::PaperSize size) {
    constexpr double edge = 4.0;  // mm that no printer reaches
    return box.left >= edge && box.top >= edge && box.left + box.width <= size.width - edge &&
           box.top + box.height <= size.height - edge;
}

}  // namespace

std::vector<TextOnPage> texts_on(const engine::Page& page) {
    std::vector<TextOnPage> texts;
    for (const auto& item : page.items()) {
        if (const auto* text = std::get_if<engine::DrawnText>(&item))
            texts.push_back({text->text, box_of(*text), text->lettering});
    }
    return texts;
}

std::string words_on(const engine::Page& page) {
    std::string words;
    for (const auto& text : texts_on(page)) words += " " + text.text;
    return words + " ";
}

std::string clash_on(const engine::Page& page) {
    const auto texts = texts_on(page);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        if (!is_on(texts[i].box, page.size())) return texts[i].text + " is not on the page";
        for (std::size_t n = 0; n < i; ++n) {
            if (!are_apart(texts[i].box, texts[n].box))
                return texts[i].text + " lies on " + texts[n].text;
        }
    }
    return {};
}

}  // namespace tests
