#include "model/schedule/page_flow.h"

#include "model/schedule/length_texts.h"
#include "model/schedule/wrapped_lines.h"

namespace model {

void PageFlow::text(std::string_view words, const engine::Lettering& lettering, double height) {
    page().draw_text({left(), y_ + lettering.size}, words, lettering);
    skip(height);
}

void PageFlow::wrapped(std::string_view words, double size) {
    if (words.empty()) return;
    for (const auto& line : wrapped_lines(words, size, width())) {
        make_room(size + 1.2);
        text(line, {.size = size}, size + 1.2);
    }
}

std::string length_on_paper(const Project& project, engine::Length length) {
    auto style = project.shown;
    style.with_unit = true;
    LengthTexts shown{style};
    return std::string(shown(length));
}

void number_pages(std::vector<engine::Page>& pages, std::string_view title) {
    for (std::size_t i = 0; i < pages.size(); ++i) {
        auto& page = pages[i];
        const double y = page.size().height - PageFlow::margin;
        page.draw_text({PageFlow::margin, y}, title, {.size = 3.0, .ink = engine::Ink::grey_75});
        page.draw_text(
            {page.size().width - PageFlow::margin, y},
            "page " + std::to_string(i + 1) + " of " + std::to_string(pages.size()),
            {.size = 3.0, .anchor = engine::TextAnchor::end, .ink = engine::Ink::grey_75});
    }
}

}  // namespace model
