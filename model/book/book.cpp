#include "model/book/book.h"

#include "model/book/assembly_pages.h"
#include "model/book/book_chapters.h"
#include "model/book/corner_pages.h"
#include "model/book/cover.h"
#include "model/book/mark_pages.h"
#include "model/book/name_on_paper.h"
#include "model/book/stamp.h"
#include "model/book/view_pages.h"
#include "model/book/works_in.h"

namespace model {
namespace {

void add_frames(BookPages& book, const BookOf& of) {
    book.begin_chapter("Frames");
    const auto before = book.count();
    for (Index f = 0; f < of.resolved.frames.size() && f < of.project.frames.size(); ++f) {
        for (const auto& it : view_pages(of.project, of.resolved, f, book.paper())) {
            book.begin_part(of.project.frames[f].name + ": " + it.title);
            book.add({it.page});
        }
    }
    if (book.count() > before) return;
    PageFlow flow = book.flow();
    draw_page_head(flow, "Frames", "There is no frame with pieces yet.");
    book.add(flow.pages());
}

// As how_to_read tells it: the book lies at the drill press alone.
void draw_how_to_drill(PageFlow& flow) {
    draw_words(
        flow, "1. Set the fence: the number is from the fence to the middle of the drill (gauge).");
    draw_words(
        flow,
        "2. Lay the leg that is named flat on its outer face, heel against the fence, so that "
        "the other leg stands up along the fence, away from you.");
    draw_words(
        flow,
        "3. \"datum end at the right\" or \"left\" says at which hand the end then lies from "
        "which all distances are measured, to the middle of each hole.");
    draw_words(
        flow,
        "4. That end was marked at the saw, beside the mark and the hand: the order of assembly "
        "tells where it goes.");
    draw_words(flow,
               "\"~\" before a length: it lies on no mark of the tape; the mm beside it are exact. "
               "\"match-drill\": not by measure, but through the hole of its mate once both are "
               "pinned.");
    flow.skip(3.0);
}

// Gives on which page each mark is drawn.
PagesOfMarks add_marks(BookPages& book, const BookOf& of) {
    PagesOfMarks drawn(of.resolved.marks.size());
    const auto drawings = mark_drawings(of.project, of.catalogue, of.resolved, book.paper());
    if (drawings.pages.empty()) return drawn;
    book.begin_chapter("Marks to cut and drill");
    PageFlow flow = book.flow();
    draw_page_head(
        flow, "Marks to cut and drill",
        "One drawing for each mark and hand, unrolled: all its walls are folded out flat. "
        "All distances are from the one datum end; h1, h2 are the numbers of holes.");
    draw_cautions(flow, of.resolved, {Work::drilling, Work::tapping});
    draw_how_to_drill(flow);
    draw_progress(flow, of);
    book.add(flow.pages());
    const auto before = book.count();
    for (const auto& place : drawings.places) {
        drawn[place.mark][place.hand == Hand::opposite ? 1 : 0] = before + place.page;
    }
    book.add(drawings.pages);
    return drawn;
}

}  // namespace

engine::Document shop_book(const Project& project,
                           const Catalogue& catalogue,
                           const Resolved& resolved,
                           const BookSupply& supply,
                           engine::Paper paper) {
    const BookOf of{project, catalogue, resolved, supply};
    BookPages book("Shop book: " + name_on_paper(project), paper);
    add_cover(book, project, catalogue, resolved, supply);
    add_buying(book, of);
    add_cutting(book, of);
    const auto drawn = add_marks(book, of);
    add_frames(book, of);
    add_corner_pages(book, project, catalogue, resolved);
    const auto order = assembly_order(project, catalogue, resolved);
    add_fasteners(book, of, order);
    add_assembly(book, of, order);
    add_checks(book, of, order);
    add_index(book, of, drawn);
    return std::move(book).finished(project_stamp(project));
}

}  // namespace model
