#include "model/book/mark_pages.h"

#include "model/book/draw_mark.h"
#include "model/book/mark_drill_list.h"
#include "model/book/mark_head.h"
#include "model/schedule/page_flow.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

constexpr double least_piece = 54.0;       // mm of paper along a piece, where it is long enough
constexpr double around_piece = 60.0;      // mm of paper above and below it, at most
constexpr double list_gap = 7.0;           // between the drawing and its drill table
constexpr double block_gap = 6.0;          // between two marks
constexpr double column_width = 84.0;      // of a table below a drawing, at least
constexpr double least_list = 52.0;        // of one beside it
constexpr double continued_height = 11.0;  // of the words above what goes on from the last page

// A line that belongs to the next one stays with it.
bool fits(const std::vector<ListedLine>& list, std::size_t i, double room) {
    double needed = list[i].height;
    for (; list[i].keeps_with_next && i + 1 < list.size(); ++i) needed += list[i + 1].height;
    return needed <= room;
}

// Where a column ends that begins with line `next`; it has at least so many lines.
std::size_t end_of_column(const std::vector<ListedLine>& list,
                          std::size_t next,
                          double room,
                          std::size_t least) {
    room -= height_of(told_again(list, next));
    const std::size_t first = next;
    while (next < list.size() && (next < first + least || fits(list, next, room)))
        room -= list[next++].height;
    return next;
}

// How high so many columns side by side must be to hold the list, but no higher than `most`.
double height_in_columns(const std::vector<ListedLine>& list, int columns, double most) {
    constexpr double for_breaks = 12.0;  // what is left empty under columns, from trying
    for (double height = height_of(list) / columns + for_breaks; height < most; height += 2.0) {
        std::size_t next = 0;
        for (int i = 0; i < columns; ++i) next = end_of_column(list, next, height, 0);
        if (next == list.size()) return height;
    }
    return most;
}

class Sheets {
public:
    Sheets(const Project& project, const Resolved& resolved, engine::PaperSize size)
        : project_{project}, resolved_{resolved}, flow_{size}, size_{size} {}

    // Gives the page on which it begins.
    std::size_t add(const MarkFacts& facts) {
        const MarkHead head(project_, resolved_, facts, flow_.width());
        const Block block = block_of(facts, page_height() - head.height());
        flow_.make_room(std::min(head.height() + block.height() + block_gap, page_height()));
        const std::size_t page = flow_.pages().size() - 1;
        head.draw(flow_.page(), {flow_.left(), flow_.y()});
        flow_.skip(head.height());
        draw_mark(flow_.page(), {flow_.left(), flow_.y()}, resolved_, facts, block.layout);
        draw_list(facts, block);
        flow_.skip(block_gap);
        return page;
    }

    std::vector<engine::Page> pages() && { return flow_.pages(); }

private:
    // A drawing and its drill table, beside it or below.
    struct Block {
        MarkLayout layout;
        std::vector<ListedLine> list;
        double list_width = 0.0;
        double list_height = 0.0;
        bool is_below = false;
        int columns = 1;  // of a table below

        double height() const {
            return is_below ? layout.height() + list_height
                            : std::max(layout.height(), list_height);
        }
    };

    Block block_of(const MarkFacts& facts, double height) const {
        MarkRoom piece{least_piece, height - around_piece};
        Block block{.layout = mark_layout(project_, resolved_, facts, piece)};
        block.list_width = flow_.width() - block.layout.width() - list_gap;
        block.is_below = block.list_width < least_list;
        if (block.is_below) {
            block.columns = columns_of(column_width);
            block.list_width = (flow_.width() + list_gap) / block.columns - list_gap;
        }
        block.list = mark_drill_list(project_, facts, block.list_width);
        block.list_height = height_of(block.list);
        if (block.is_below) {
            block.list_height = height_in_columns(block.list, block.columns, page_height());
            return block;
        }
        const double around = block.layout.height() - block.layout.lengthwise.height();
        piece.most = height - around;
        piece.wanted = std::min(std::max(block.list_height - around, least_piece), piece.most);
        block.layout = mark_layout(project_, resolved_, facts, piece);
        return block;
    }

    int columns_of(double width) const {
        return std::max(1, static_cast<int>((flow_.width() + list_gap) / (width + list_gap)));
    }

    double foot() const { return size_.height - PageFlow::margin - PageFlow::foot; }
    double page_height() const { return foot() - PageFlow::margin; }

    void draw_list(const MarkFacts& facts, const Block& block) {
        std::size_t next = 0;
        if (block.is_below) {
            flow_.skip(block.layout.height());
            next = draw_columns(block, next, block.list_height);
        } else {
            const double left = flow_.left() + flow_.width() - block.list_width;
            const double reached = draw_column(block, next, left, foot());
            flow_.skip(std::max(block.layout.height(), reached - flow_.y()));
        }
        while (next < block.list.size()) {
            flow_.new_page();
            flow_.text(name_of_mark(resolved_, facts) + ", drilling continued",
                       {.size = 6.0, .weight = engine::LetterWeight::bold}, continued_height);
            next = draw_columns(block, next, page_height());
        }
    }

    // From here down, as many side by side as there is room for. Gives the next line.
    std::size_t draw_columns(const Block& block, std::size_t next, double height) {
        const double lowest = std::min(flow_.y() + height, foot());
        double reached = flow_.y();
        double left = flow_.left();
        for (int i = columns_of(block.list_width); i > 0 && next < block.list.size(); --i) {
            reached = std::max(reached, draw_column(block, next, left, lowest));
            left += block.list_width + list_gap;
        }
        flow_.skip(reached - flow_.y());
        return next;
    }

    // Gives how far down it came. In the middle of a setting that is told once more. Nothing where
    // not even the next hole has room, unless the page is still empty.
    double draw_column(const Block& block, std::size_t& next, double left, double lowest) {
        const bool is_fresh = flow_.y() < PageFlow::margin + continued_height + 1.0;
        const std::size_t end =
            end_of_column(block.list, next, lowest - flow_.y(), is_fresh ? 1U : 0U);
        if (end == next) return flow_.y();
        double y = flow_.y();
        const auto put = [&](const ListedLine& line) {
            draw_listed_line(flow_.page(), {left, y, block.list_width, 0.0}, resolved_, line);
            y += line.height;
        };
        for (const auto& line : told_again(block.list, next)) put(line);
        while (next < end) put(block.list[next++]);
        return y;
    }

    const Project& project_;
    const Resolved& resolved_;
    PageFlow flow_;
    engine::PaperSize size_;
};

}  // namespace

MarkDrawings mark_drawings(const Project& project,
                           const Catalogue& catalogue,
                           const Resolved& resolved,
                           engine::Paper paper) {
    MarkDrawings made;
    const auto all = mark_facts(project, catalogue, resolved);
    if (all.empty()) return made;
    Sheets sheets(project, resolved, engine::paper_size(paper));
    for (const auto& facts : all)
        made.places.push_back({facts.cut.mark, facts.cut.hand, sheets.add(facts)});
    made.pages = std::move(sheets).pages();
    return made;
}

std::vector<engine::Page> mark_pages(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     engine::Paper paper) {
    return mark_drawings(project, catalogue, resolved, paper).pages;
}

}  // namespace model
