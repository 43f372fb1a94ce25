// What a paper with a tab tells to lay on the bar, read from whole sheets.
#include "model/book/drill_strips.h"
#include "model/book/strip_labels.h"
#include "model/resolve/resolve.h"

#include "tests/model/book/printed_sample.h"
#include "tests/model/book/strip_on_sheet.h"
#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

using engine::PageBox;
using tests::PaperOnSheet;
using tests::PrintedSample;

namespace {

PrintedSample narrow_counter() {
    PrintedSample sample("work_counter.json");
    sample.project.stock[0].section = "angle 1/2 x 1/2 x 1/16";
    sample.resolved = model::resolve(sample.project, shipped_catalogue());
    return sample;
}

// That stands over a paper.
std::string head_of(const engine::Page& page, const PaperOnSheet& paper) {
    std::string words;
    for (const auto& text : tests::texts_on(page)) {
        const double above = paper.box.top - text.bottom();
        if (above > 0.0 && above < 12.0 && std::abs(text.box.left - paper.box.left) < 0.3)
            words += text.text + "|";
    }
    return words;
}

// Levels of the lines that go from edge to edge of a paper and are as wide as that.
std::vector<double> levels_across(const engine::Page& page,
                                  const PaperOnSheet& paper,
                                  double width) {
    std::vector<double> levels;
    for (const auto& item : page.items()) {
        const auto* drawn = std::get_if<engine::DrawnLines>(&item);
        if (drawn == nullptr || drawn->lines.size() != 1 || drawn->pen.width != width) continue;
        const auto& [from, to] = drawn->lines.front();
        const bool is_across = from.y == to.y && std::abs(from.x - paper.box.left) < 0.01 &&
                               std::abs(to.x - paper.box.left - paper.box.width) < 0.01;
        if (is_across && from.y >= paper.box.top && from.y <= paper.box.top + paper.box.height)
            levels.push_back(from.y);
    }
    return levels;
}

bool is_outline_dashed(const engine::Page& page, const PaperOnSheet& paper) {
    return std::any_of(page.items().begin(), page.items().end(), [&](const auto& item) {
        const auto* path = std::get_if<engine::DrawnPath>(&item);
        return path != nullptr && path->is_closed && path->paint.pen &&
               path->paint.pen->dash == engine::Dash::dashed &&
               path->points[0].x == paper.box.left && path->points[0].y == paper.box.top;
    });
}

// With what is said of its start: "piece", "blank" or "joint".
std::string check_tab(const engine::Page& page, const PaperOnSheet& paper) {
    const double below = paper.legs.front().top;
    const auto head = head_of(page, paper);
    const auto on_tab = tests::words_within(
        paper, {paper.box.left, paper.box.top, paper.box.width, below - paper.box.top});
    const auto all = tests::words_within(paper, paper.box);
    CAPTURE(paper.name, head, on_tab, all);
    CHECK_THAT(on_tab, Catch::Contains("tab,"));
    CHECK(is_outline_dashed(page, paper));
    CHECK(head.find("this edge") == std::string::npos);
    CHECK(head.find("lay off") == std::string::npos);
    CHECK(all.find("this edge") == std::string::npos);
    CHECK(all.find("upper edge") == std::string::npos);
    const bool is_joint = head.find("line on line") != std::string::npos;
    const auto heavy = levels_across(page, paper, 0.7);
    const bool is_heavy = std::any_of(heavy.begin(), heavy.end(),
                                      [&](double y) { return std::abs(y - below) < 0.01; });
    CHECK(is_heavy == !is_joint);
    CHECK(heavy.size() == (is_joint ? 0 : 1));  // it is "the" heavy line
    if (is_joint) return "joint";
    const bool is_piece = head.find("DATUM END at the heavy line") != std::string::npos;
    CHECK((is_piece || head.find("lay the heavy line at ") != std::string::npos));
    CHECK_THAT(all, Catch::Contains("heavy line"));
    if (is_piece) CHECK_THAT(on_tab, Catch::Contains("beyond the piece"));
    return is_piece ? "piece" : "blank";
}

}  // namespace

TEST_CASE("a paper with a tab is laid by the heavy line below it, and says so",
          "[model][book][strips]") {
    const auto sample = narrow_counter();
    std::multiset<std::string> starts;
    std::size_t papers = 0;
    for (const auto size : {engine::Paper::letter, engine::Paper::a4}) {
        const auto strips = model::drill_strips(sample.project, shipped_catalogue(),
                                                sample.resolved, {.paper = size});
        for (const auto& page : strips.document.pages) {
            for (const auto& paper : tests::papers_on(page)) {
                ++papers;
                if (paper.legs.front().top > paper.box.top + 0.5)
                    starts.insert(check_tab(page, paper));
            }
        }
    }
    CHECK(papers > 40);
    CHECK(starts.count("piece") > 2);
    CHECK(starts.count("blank") > 2);
}

TEST_CASE("a paper without a tab is laid by its edge, of which alone it tells the place",
          "[model][book][strips]") {
    const PrintedSample sample("work_counter.json");
    const auto strips = model::drill_strips(sample.project, shipped_catalogue(), sample.resolved,
                                            {.paper = engine::Paper::letter});
    std::size_t laid_off = 0;
    for (const auto& page : strips.document.pages) {
        for (const auto& paper : tests::papers_on(page)) {
            if (paper.legs.front().top > paper.box.top + 0.5) continue;
            const auto head = head_of(page, paper);
            const auto words = tests::words_within(paper, paper.box);
            CAPTURE(paper.name, head, words);
            CHECK(words.find("heavy line") == std::string::npos);
            if (head.find("lay off ") == std::string::npos) continue;
            ++laid_off;
            CHECK_THAT(words, Catch::Contains("upper edge:"));
        }
    }
    CHECK(laid_off > 5);
}
