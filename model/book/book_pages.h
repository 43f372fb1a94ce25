// The pages of a book in the making: chapters, their heads and cautions, and the foot of each page.
#pragma once

#include "engine/drawing/document.h"
#include "model/schedule/cautions.h"
#include "model/schedule/page_flow.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

class BookPages {
public:
    BookPages(std::string title, engine::Paper paper) : paper_{paper} {
        document_.title = std::move(title);
    }

    engine::Paper paper() const { return paper_; }
    PageFlow flow(engine::PaperTurn turn = engine::PaperTurn::portrait) const {
        return PageFlow(engine::paper_size(paper_, turn));
    }

    // The next page that is added begins it. A part stands below the last chapter.
    void begin_chapter(std::string title) { begin(std::move(title), 0); }
    void begin_part(std::string title) { begin(std::move(title), 1); }

    void add(const std::vector<engine::Page>& pages) {
        document_.pages.insert(document_.pages.end(), pages.begin(), pages.end());
    }
    std::size_t count() const { return document_.pages.size(); }

    // With a foot on each page: the book's title, the stamp, and the page's number.
    engine::Document finished(std::string_view stamp) &&;

private:
    void begin(std::string title, int level) {
        document_.bookmarks.push_back({std::move(title), document_.pages.size(), level});
    }

    engine::Paper paper_;
    engine::Document document_;
};

// The title of a page, on as many lines as it needs, and what is said below it.
void draw_page_head(PageFlow& flow, std::string_view title, std::string_view words = {});

// A head within a page.
void draw_part_head(PageFlow& flow, std::string_view title);

// What to take care of, with a black bar beside it.
void draw_caution(PageFlow& flow, Work work);

// Lines of text in the width of the flow, which breaks pages as it goes.
void draw_words(PageFlow& flow,
                std::string_view words,
                double size = 3.6,
                engine::LetterWeight weight = engine::LetterWeight::regular);

// A box to tick with a pen, and beside it what is ticked.
void draw_tick(PageFlow& flow, std::string_view words);

}  // namespace model
