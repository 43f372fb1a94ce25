#include "engine/drawing/document_fault.h"

#include "engine/drawing/printable_text.h"

namespace engine {
namespace {

// mm. The longest side of a page is 14,400 points (ISO 32000-1, Annex C.2).
constexpr double least_side = 1.0;
constexpr double longest_side = 5'080.0;

// Also for what is no number.
bool is_side(double side) { return side >= least_side && side <= longest_side; }

Error invalid_drawing(std::string where, std::string message) {
    return {ErrorCode::invalid_value, std::move(where), std::move(message)};
}

}  // namespace

std::optional<Error> page_fault(const Page& page) {
    if (!is_side(page.size().width) || !is_side(page.size().height)) {
        return invalid_drawing("the page's size",
                               "a page must be between 1 mm and 5080 mm wide and high");
    }
    if (page.fault()) return invalid_drawing("", *page.fault());
    return std::nullopt;
}

std::optional<Error> document_fault(const Document& document) {
    if (document.pages.empty()) return invalid_drawing("", "there is no page to draw");
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        auto error = page_fault(document.pages[i]);
        if (!error) continue;
        const std::string page = "page " + std::to_string(i + 1);
        error->where = error->where.empty() ? page : page + ", " + error->where;
        return error;
    }
    for (const Bookmark& bookmark : document.bookmarks) {
        if (bookmark.page < document.pages.size()) continue;
        return invalid_drawing("bookmark " + printable_text(bookmark.title),
                               "leads to page " + std::to_string(bookmark.page + 1) + " of " +
                                   std::to_string(document.pages.size()));
    }
    return std::nullopt;
}

}  // namespace engine
