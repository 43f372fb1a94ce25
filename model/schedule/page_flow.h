// Fills pages from top to bottom: what does not fit on one goes to the next.
#pragma once

#include "engine/drawing/page.h"
#include "model/project/project.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

// Millimetres.
class PageFlow {
public:
    static constexpr double margin = 12.0;
    static constexpr double foot = 6.0;  // for the page's number

    explicit PageFlow(engine::PaperSize size) : size_{size} { new_page(); }

    void new_page() {
        pages_.emplace_back(size_);
        top_ = y_ = margin;
        column_ = 0;
    }

    // From here down the page, and on the pages that follow, text runs in so many columns.
    void use_columns(int count) {
        columns_ = count;
        column_ = 0;
        top_ = y_;
    }

    // Goes to the next column, or to a new page, where less height is left in this one, unless
    // nothing is in it yet.
    void make_room(double height) {
        if (y_ <= top_ || y_ + height <= size_.height - margin - foot) return;
        if (column_ + 1 >= columns_) return new_page();
        ++column_;
        y_ = top_;
    }

    void skip(double height) { y_ += height; }

    // As far down a page as this one and with the same columns, with nothing drawn yet.
    PageFlow blank() const {
        PageFlow same(size_);
        same.columns_ = columns_;
        same.column_ = column_;
        same.top_ = top_;
        same.y_ = y_;
        return same;
    }

    // A line of text whose capitals begin here, and then that far down.
    void text(std::string_view words, const engine::Lettering& lettering, double height);
    // On as many lines as it needs.
    void wrapped(std::string_view words, double size);

    engine::Page& page() { return pages_.back(); }
    const std::vector<engine::Page>& pages() const { return pages_; }
    double left() const { return margin + column_ * (width() + gutter); }
    double width() const { return (size_.width - 2 * margin - (columns_ - 1) * gutter) / columns_; }
    double y() const { return y_; }
    double room() const { return size_.height - margin - foot - y_; }  // from here down
    double room_of_page() const { return size_.height - 2 * margin - foot; }

private:
    static constexpr double gutter = 10.0;  // between columns

    engine::PaperSize size_;
    std::vector<engine::Page> pages_;
    int columns_ = 1;
    int column_ = 0;
    double top_ = margin;  // of the columns on this page
    double y_ = margin;
};

// As the project's tape shows it, with its unit: "44 1/2 in".
std::string length_on_paper(const Project& project, engine::Length length);

// Puts their numbers and that title at the foot of pages.
void number_pages(std::vector<engine::Page>& pages, std::string_view title);

}  // namespace model
