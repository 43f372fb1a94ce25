// Fills pages from top to bottom: what does not fit on one goes to the next.
#pragma once

#include "engine/drawing/page.h"

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
        y_ = margin;
    }

    // Goes to a new page where less height is left on this one, unless nothing is on it yet.
    void make_room(double height) {
        if (y_ > margin && y_ + height > size_.height - margin - foot) new_page();
    }

    void skip(double height) { y_ += height; }

    // A line of text whose capitals begin here, and then that far down.
    void text(std::string_view words, const engine::Lettering& lettering, double height);
    // On as many lines as it needs.
    void wrapped(std::string_view words, double size);

    engine::Page& page() { return pages_.back(); }
    const std::vector<engine::Page>& pages() const { return pages_; }
    double left() const { return margin; }
    double width() const { return size_.width - 2 * margin; }
    double y() const { return y_; }

    // All pages with their numbers and that title at the foot.
    std::vector<engine::Page> numbered(std::string_view title) &&;

private:
    engine::PaperSize size_;
    std::vector<engine::Page> pages_;
    double y_ = margin;
};

}  // namespace model
