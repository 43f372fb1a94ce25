// The settings of the stop on paper.
#include "model/schedule/bar_pages.h"

#include "tests/model/book/texts_on_page.h"
#include "tests/model/schedule/saw_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <string>

using tests::mm;

namespace {

struct StopsOnPaper {
    explicit StopsOnPaper(const std::vector<model::StopRow>& stops)
        : document{model::bar_pages(
              job.project, job.resolved, {}, stops, {"Bars", "none"}, engine::Paper::a4)} {}

    static tests::SmallJob shown_in_mm() {
        auto job = tests::saw_job({1500});
        job.project.shown.form = engine::TapeForm::millimetre;
        job.project.shown.decimals = 0;
        return job;
    }

    std::string words() const {
        std::string all;
        for (const auto& page : document.pages) all += tests::words_on(page);
        return all;
    }

    tests::SmallJob job = shown_in_mm();
    engine::Document document;
};

model::StopRow row_of(engine::Nm length, std::string ends = "square") {
    return {.setting = 1,
            .section = "angle 1 x 1 x 1/8",
            .length = engine::Length::from_nm(length),
            .bar = 1,
            .pieces = 2,
            .mark = 0,
            .ends = std::move(ends)};
}

// As high as it is wide, and no larger than a thumb.
bool is_box_to_tick(const engine::PageItem& item) {
    const auto* path = std::get_if<engine::DrawnPath>(&item);
    if (path == nullptr || !path->is_closed || path->points.size() != 4) return false;
    const double width = path->points[2].x - path->points[0].x;
    return width == path->points[2].y - path->points[0].y && width < 6.0;
}

}  // namespace

TEST_CASE("each column of the stop's settings begins with the length", "[model][schedule][stops]") {
    const std::string ends = GENERATE("square",
                                      "mitre 45 deg across leg a, long point at the heel; leg b "
                                      "notched back ~30 mm (30.25 mm) | mitre 36.9 deg across leg "
                                      "b, long point at the toe of leg b");
    const StopsOnPaper paper(std::vector<model::StopRow>(90, row_of(mm(595), ends)));
    std::size_t columns = 0;
    for (std::size_t i = 1; i < paper.document.pages.size(); ++i) {
        std::map<bool, tests::TextOnPage> highest;  // in the left column, then the right one
        const auto& page = paper.document.pages[i];
        for (const auto& text : tests::texts_on(page)) {
            CHECK(text.bottom() < page.size().height - 12.0);
            const bool is_large = text.lettering.size >= 4.0;
            if (!is_large || text.text == "Settings of the stop") continue;
            const auto [it, is_new] =
                highest.try_emplace(text.box.left > page.size().width / 2, text);
            if (!is_new && text.box.top < it->second.box.top) it->second = text;
        }
        for (const auto& [is_right, text] : highest) {
            ++columns;
            CHECK(text.text == (columns == 1 ? "595 mm" : "595 mm, continued"));
            CAPTURE(i, is_right);
        }
    }
    CHECK(columns > 3);
}

TEST_CASE("a length that is not on the tape has its exact millimetres at the stop",
          "[model][schedule][stops]") {
    const auto off = StopsOnPaper({row_of(mm(595) - 312'500)}).words();
    CHECK_THAT(off, Catch::Contains("~595 mm 594.69 mm; stop 1, angle") ||
                        Catch::Contains("594.69 mm; stop 1, angle 1 x 1 x 1/8 ~595 mm"));
    const auto on = StopsOnPaper({row_of(mm(595))}).words();
    CHECK_THAT(on, !Catch::Contains("~") && !Catch::Contains("mm;"));
}

TEST_CASE("pieces that the saw makes alike are told apart by hand at the stop",
          "[model][schedule][stops]") {
    auto row = row_of(mm(595));
    CHECK_THAT(StopsOnPaper({row}).words(), !Catch::Contains("opp."));
    row.opposite = 1;
    CHECK_THAT(StopsOnPaper({row}).words(), Catch::Contains("from bar 1, 1 of them opp."));
    row.opposite = 2;
    CHECK_THAT(StopsOnPaper({row}).words(),
               Catch::Contains(" opp.") && !Catch::Contains("of them"));
}

TEST_CASE("beside a spoiled piece there is no box to tick", "[model][schedule][stops]") {
    const auto job = tests::saw_job({1500});
    model::SawBar bar{.number = 1,
                      .section = "angle 1 x 1 x 1/8",
                      .length = engine::Length::from_nm(mm(3000)),
                      .from = model::BarFrom::saw};
    bar.cuts.push_back({.mark = "A1",
                        .length = engine::Length::from_nm(mm(1500)),
                        .start = engine::Length::from_nm(mm(5)),
                        .taken = engine::Length::from_nm(mm(1500))});
    const auto boxes = [&] {
        const auto page = model::bar_picture(job.project, job.resolved, {bar}, {"Bars", "none"});
        return std::ranges::count_if(page.items(), is_box_to_tick);
    };
    CHECK(boxes() == 1);
    bar.cuts[0].state = model::CutState::spoiled;
    CHECK(boxes() == 0);
}
