#include "model/schedule/page_flow.h"

#include "engine/drawing/lettering.h"

namespace model {

void PageFlow::text(std::string_view words, const engine::Lettering& lettering, double height) {
    page().draw_text({left(), y_ + lettering.size}, words, lettering);
    skip(height);
}

void PageFlow::wrapped(std::string_view words, double size) {
    std::string line;
    const auto put = [&] {
        make_room(size + 1.2);
        text(line, {.size = size}, size + 1.2);
        line.clear();
    };
    while (!words.empty()) {
        const auto end = words.find(' ');
        const std::string word(words.substr(0, end));
        words = end == std::string_view::npos ? std::string_view() : words.substr(end + 1);
        const std::string longer = line.empty() ? word : line + " " + word;
        if (!line.empty() && engine::text_width(longer, size) > width()) {
            put();
            line = word;
        } else {
            line = longer;
        }
    }
    if (!line.empty()) put();
}

std::vector<engine::Page> PageFlow::numbered(std::string_view title) && {
    const double y = size_.height - margin;
    for (std::size_t i = 0; i < pages_.size(); ++i) {
        pages_[i].draw_text({left(), y}, title, {.size = 3.0, .ink = engine::Ink::grey_75});
        pages_[i].draw_text(
            {size_.width - margin, y},
            "page " + std::to_string(i + 1) + " of " + std::to_string(pages_.size()),
            {.size = 3.0, .anchor = engine::TextAnchor::end, .ink = engine::Ink::grey_75});
    }
    return std::move(pages_);
}

}  // namespace model
