#include "model/book/changed_pages.h"

#include "model/book/book_pages.h"
#include "model/book/mark_pages.h"
#include "model/book/name_on_paper.h"
#include "model/book/stamp.h"

#include <algorithm>
#include <set>

namespace model {

engine::Document changed_pages(const Project& project,
                               const Catalogue& catalogue,
                               const Resolved& resolved,
                               const std::vector<Index>& marks,
                               engine::Paper paper,
                               bool has_errors) {
    const auto drawings = mark_drawings(project, catalogue, resolved, paper);
    const auto& places = drawings.places;
    std::set<std::size_t> pages;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (std::ranges::find(marks, places[i].mark) == marks.end()) continue;
        // A drawing goes on to the pages before the next one begins.
        const auto next =
            std::find_if(places.begin() + static_cast<std::ptrdiff_t>(i), places.end(),
                         [&](const MarkPlace& place) { return place.page > places[i].page; });
        const auto end = next == places.end() ? drawings.pages.size() : next->page;
        for (auto page = places[i].page; page < end; ++page) pages.insert(page);
    }
    BookPages book("Changed marks: " + name_on_paper(project), paper);
    if (pages.empty()) return {};
    book.begin_chapter("Changed marks");
    for (const auto page : pages) book.add({drawings.pages[page]});
    return std::move(book).finished(project_stamp(project) +
                                    (has_errors ? ", NOT FIT TO CUT FROM" : ""));
}

}  // namespace model
