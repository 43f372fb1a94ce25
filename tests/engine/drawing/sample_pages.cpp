#include "tests/engine/drawing/sample_pages.h"

#include <array>
#include <string>

using namespace engine;

namespace tests {
namespace {

void draw_bar(Page& page, PagePoint at) {
    const std::array<double, 4> lengths{52.0, 52.0, 38.0, 18.0};
    const std::array<const char*, 4> marks{"A1", "A1", "B2", "offcut"};
    double left = at.x;
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const PageBox box{left, at.y, lengths[i], 8.0};
        if (i == 3) page.draw_hatch(box);
        page.draw_rectangle(box, {.pen = Pen{.width = wide_width}});
        const double middle = left + lengths[i] / 2;
        page.draw_text(
            {middle, at.y + 5.3}, marks[i],
            {.weight = LetterWeight::bold, .anchor = TextAnchor::middle, .has_ground = i == 3});
        page.draw_line({left, at.y - 8}, {left, at.y - 1}, {.width = thin_width});
        page.draw_text({left + 1.0, at.y - 9.0}, std::to_string(i * 52) + " \u00D7 1/8",
                       {.size = 2.8, .turned_deg = 90});
        left += lengths[i];
    }
}

void draw_section(Page& page, PagePoint at) {
    const std::vector<PagePoint> angle{{at.x, at.y},           {at.x + 4, at.y},
                                       {at.x + 4, at.y + 26},  {at.x + 30, at.y + 26},
                                       {at.x + 30, at.y + 30}, {at.x, at.y + 30}};
    page.draw_hatch({angle}, {.spacing = 1.5});
    page.draw_polygon(angle, {.pen = Pen{.width = wide_width}});
    page.draw_circle({at.x + 18, at.y + 12}, 6.0, {.fill = Ink::grey_10});
    page.draw_arc({at.x + 18, at.y + 12}, 9.0, 30.0, 240.0, {.ink = Ink::blue});
    page.draw_line({at.x + 6, at.y + 12}, {at.x + 30, at.y + 12},
                   {.width = thin_width, .dash = Dash::chain});
}

void draw_pens(Page& page, PagePoint at) {
    double y = at.y;
    for (const Dash dash : {Dash::continuous, Dash::dashed, Dash::chain, Dash::dotted}) {
        page.draw_line({at.x, y}, {at.x + 60, y}, {.width = narrow_width, .dash = dash});
        y += 4;
    }
    double x = at.x;
    for (int i = 0; i < 8; ++i, x += 7.5)
        page.draw_rectangle({x, y, 7.5, 7.5}, {.fill = static_cast<Ink>(i)});
}

}  // namespace

Page sample_page(PaperSize size) {
    Page page{size};
    page.draw_text({20, 20}, "Bars to cut", {.size = 7.0, .weight = LetterWeight::bold});
    page.draw_text({20, 28},
                   "Angle 1 \u00D7 1 \u00D7 1/8, stop at 18 3/8 \u2300 3.2 \u2220 45\u00B0 <&>");
    page.draw_line({20, 40}, {120, 40}, {.width = 0.35});
    page.draw_text({70, 39}, "100 mm", {.size = 2.8, .anchor = TextAnchor::middle});
    draw_bar(page, {20, 62});
    draw_section(page, {20, 85});
    draw_pens(page, {70, 90});
    page.draw_clipped({150, 85, 30, 30}, [&] {
        page.draw_circle({150, 85}, 25.0, {.fill = Ink::grey_25});
        page.draw_polyline({{140, 100}, {160, 90}, {170, 110}, {190, 95}}, {.width = wide_width});
    });
    page.draw_text({size.width - 15, size.height - 10}, "Page \u00B7 right",
                   {.anchor = TextAnchor::end});
    return page;
}

Document sample_document() {
    Document document{"Bars of the tool counter", {}, {}};
    for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter, Paper::tabloid}) {
        const auto turn =
            document.pages.size() % 2 == 0 ? PaperTurn::portrait : PaperTurn::landscape;
        document.bookmarks.push_back(
            {"Sheet " + std::string(name_of(paper)), document.pages.size(), 0});
        document.bookmarks.push_back({"Bars \u2220", document.pages.size(), 1});
        document.pages.push_back(sample_page(paper_size(paper, turn)));
    }
    return document;
}

}  // namespace tests
