#include "model/assembly/assembly_order.h"
#include "model/book/book_chapters.h"
#include "model/book/stamp.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/page_table.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/square.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <array>

namespace model {
namespace {

using engine::LetterWeight;
using engine::TextAnchor;

constexpr TextAnchor to_end = TextAnchor::end;
constexpr LetterWeight bold = LetterWeight::bold;

// No tape tells more than a tenth of a millimetre.
engine::Length to_tenth(engine::Length length) {
    constexpr Nm tenth = engine::Length::nm_per_mm / 10;
    return engine::Length::from_nm((length.nm() + tenth / 2) / tenth * tenth);
}

// "bar of angle 1 x 1 x 1/8"; a part of sheet is named by its kind already.
std::string what_of(const CutRow& row) {
    const std::string kind{name_of(row.kind)};
    return row.section.starts_with(kind) ? row.section : kind + " of " + row.section;
}

}  // namespace

void add_fasteners(BookPages& book, const BookOf& of, const AssemblyOrder& order) {
    PageFlow flow = book.flow();
    draw_page_head(flow, "Fasteners and pins",
                   "Pins hold the dry fit and are taken out again: enough of them for the step of "
                   "the assembly that holds most at once.");
    const auto rows = fastener_rows(of.project, of.catalogue, of.resolved, &order);
    if (rows.empty()) draw_words(flow, "Nothing is fastened yet.");
    std::vector<TableCells> cells;
    for (const auto& row : rows) {
        cells.push_back({row.fastener, row.diameter, row.grip_or_length,
                         row.stack.nm() > 0 ? length_on_paper(of.project, row.stack) : "several",
                         std::to_string(row.needed), std::to_string(row.spares),
                         std::to_string(row.joints)});
    }
    if (!cells.empty()) {
        draw_table(flow,
                   {{.head = "Fastener", .weight = bold},
                    {.head = "Diameter"},
                    {.head = "Grip or length"},
                    {.head = "Stack"},
                    {.head = "Needed", .anchor = to_end, .weight = bold},
                    {.head = "Spare", .anchor = to_end},
                    {.head = "Joints", .anchor = to_end}},
                   cells, 3.6);
    }
    flow.skip(4.0);
    draw_words(flow, strength_note, 3.3);
    book.begin_chapter("Fasteners and pins");
    book.add(flow.pages());
}

void add_checks(BookPages& book, const BookOf& of, const AssemblyOrder& order) {
    PageFlow flow = book.flow();
    draw_page_head(flow, "Diagonals and checks",
                   "Measure over the outside corners as soon as a step has pinned a face, before "
                   "its first rivet and again before its last one. Both diagonals of a face are to "
                   "be as long as the table says; push on the ends of the longer one. \"Heel to "
                   "heel\": from where the heels of two bars cross to where those opposite do.");
    std::vector<TableCells> cells;
    for (const auto& row : order.squares) {
        cells.push_back({of.project.frames[row.frame].name, row.face,
                         row.between[0][0] + " to " + row.between[0][1] + ", " + row.between[1][0] +
                             " to " + row.between[1][1] +
                             (row.is_heel_to_heel ? ", heel to heel" : ""),
                         length_on_paper(of.project, row.size[0]) + " x " +
                             length_on_paper(of.project, row.size[1]),
                         length_on_paper(of.project, row.diagonal),
                         decimal_mm(to_tenth(row.diagonal)), "__________", "__________", ""});
    }
    if (cells.empty()) {
        draw_words(flow, "No face of a frame has four corners that a tape finds.");
    } else {
        draw_table(flow,
                   {{.head = "Frame"},
                    {.head = "Face", .weight = bold},
                    {.head = "Between"},
                    {.head = "Size"},
                    {.head = "Diagonal", .anchor = to_end, .weight = bold},
                    {.head = "mm", .anchor = to_end},
                    {.head = "One"},
                    {.head = "Other"},
                    {.head = "Signed", .is_box = true}},
                   cells, 3.4);
    }
    draw_part_head(flow, "Before the next work begins");
    constexpr std::array<std::string_view, 8> checks{
        "All pieces are there, by the cut list, and marked.",
        "All cut ends and both faces of every hole are deburred.",
        "Every hole is there, by the drawing of its mark, and no other one.",
        "What a step puts together stands pinned, without force, and its diagonals agree, before "
        "its first rivet.",
        "All fasteners are set: heads lie flat, tails are formed, none turns.",
        "Screws are tight and kept from shaking loose.",
        "No edge or point that a hand or a strap comes near is sharp.",
        "What lies behind the van's walls, floor and ceiling was looked for before anything was "
        "drilled into them."};
    for (const auto check : checks) draw_tick(flow, check);
    flow.skip(6.0);
    flow.make_room(12.0);
    flow.text("Date ____________________   Name ________________________________________",
              {.size = 3.8}, 8.0);
    draw_words(flow, strength_note, 3.3);
    book.begin_chapter("Diagonals and checks");
    book.add(flow.pages());
}

namespace {

struct Progress {
    std::vector<TableColumn> columns{{.head = "Mark", .weight = bold},
                                     {.head = "Hand"},
                                     {.head = "Length", .anchor = to_end},
                                     {.head = "What"},
                                     {.head = "Cut", .is_box = true},
                                     {.head = "Deburred", .is_box = true},
                                     {.head = "Drilled", .is_box = true, .box_needs_text = true}};
    std::vector<TableCells> rows;

    void draw(PageFlow& flow, double size) const {
        draw_part_head(flow, "How far each mark is");
        draw_table(flow, columns, rows, size);
    }

    bool fits(PageFlow flow, double size) const {
        const auto pages = flow.pages().size();
        draw(flow, size);
        return flow.pages().size() == pages;
    }
};

Progress progress_of(const BookOf& of) {
    Progress progress;
    for (const auto& row : cut_rows(of.project, of.catalogue, of.resolved)) {
        const auto pieces =
            std::to_string(row.quantity) + (row.quantity == 1 ? " piece" : " pieces");
        const bool is_drilled = std::ranges::any_of(of.resolved.pieces, [&](const Piece& piece) {
            return piece.mark == row.mark && piece.hand == row.hand && piece.hole_count > 0;
        });
        progress.rows.push_back({of.resolved.marks[row.mark].name, std::string(name_of(row.hand)),
                                 length_on_paper(of.project, row.length), what_of(row), pieces,
                                 pieces, is_drilled ? pieces : ""});
    }
    return progress;
}

}  // namespace

// A few rows are not left over for a page of their own: smaller letters make room for them, or all
// of it goes to the next page, where that holds it.
void draw_progress(PageFlow& flow, const BookOf& of) {
    constexpr double usual = 3.4;
    constexpr double small = 3.0;
    const auto progress = progress_of(of);
    const bool fits = progress.fits(flow, usual);
    if (!fits && progress.fits(flow, small)) return progress.draw(flow, small);
    PageFlow next = flow;
    next.new_page();
    if (!fits && progress.fits(next, usual)) flow.new_page();
    progress.draw(flow, usual);
}

void add_index(BookPages& book, const BookOf& of, const PagesOfMarks& drawn) {
    PageFlow flow = book.flow(engine::PaperTurn::landscape);
    draw_page_head(flow, "Index of marks",
                   "The stamp of a mark changes when its page would be printed otherwise.");
    const auto stamps = book_stamps(of.project, of.catalogue, of.resolved).marks;
    std::vector<TableCells> cells;
    for (const auto& row : cut_rows(of.project, of.catalogue, of.resolved)) {
        const std::size_t hand = row.hand == Hand::opposite ? 1 : 0;
        std::string page;
        if (row.mark < drawn.size() && drawn[row.mark][hand].has_value())
            page = std::to_string(drawn[row.mark][hand].value() + 1);
        cells.push_back({of.resolved.marks[row.mark].name, std::string(name_of(row.hand)),
                         std::to_string(row.quantity), what_of(row),
                         length_on_paper(of.project, row.length), std::move(page), row.frames,
                         row.members, stamps[row.mark].stamp});
    }
    if (cells.empty()) {
        draw_words(flow, "There is no mark yet.");
    } else {
        draw_table(flow,
                   {{.head = "Mark", .weight = bold},
                    {.head = "Hand"},
                    {.head = "Pieces", .anchor = to_end},
                    {.head = "What"},
                    {.head = "Length", .anchor = to_end},
                    {.head = "Page", .anchor = to_end, .weight = bold},
                    {.head = "Frame"},
                    {.head = "Where"},
                    {.head = "Stamp"}},
                   cells, 3.3);
    }
    book.begin_chapter("Index of marks");
    book.add(flow.pages());
}

}  // namespace model
