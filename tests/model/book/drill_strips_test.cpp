// Sheets of drill strips: what they hold, say and refuse.
#include "model/book/drill_strips.h"

#include "model/book/mark_facts.h"
#include "model/book/stamp.h"

#include "tests/engine/drawing/pdf_file.h"
#include "tests/model/book/printed_sample.h"
#include "tests/model/book/strip_on_sheet.h"
#include "tests/model/book/texts_on_page.h"
#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

using engine::Paper;
using tests::PrintedSample;

TEST_CASE("no word of a sheet of strips lies on another one or off the sheet",
          "[model][book][strips]") {
    for (const auto& name : model_tests::sample_names()) {
        for (const auto& shown : {tests::inches, tests::millimetres}) {
            const PrintedSample sample(name, shown);
            for (const auto paper : {Paper::letter, Paper::a4}) {
                const auto document = model::drill_strips(sample.project, shipped_catalogue(),
                                                          sample.resolved, {.paper = paper})
                                          .document;
                for (std::size_t i = 0; i < document.pages.size(); ++i) {
                    CAPTURE(name, engine::name_of(paper), i);
                    CHECK(tests::clash_on(document.pages[i]) == "");
                }
            }
        }
    }
}

TEST_CASE("the same strips make the same file", "[model][book][strips]") {
    const PrintedSample sample("work_counter.json");
    const auto bytes = [&] {
        return tests::pdf_of(model::drill_strips(sample.project, shipped_catalogue(),
                                                 sample.resolved, {.paper = Paper::letter})
                                 .document);
    };
    CHECK(bytes() == bytes());
}

TEST_CASE("a project without holes has no strips", "[model][book][strips]") {
    const auto strips = model::drill_strips({}, shipped_catalogue(), {}, {});
    CHECK(strips.document.pages.empty());
    CHECK(strips.refused.empty());
}

TEST_CASE("each sheet of strips carries the book's stamp, and says when nothing is to be cut yet",
          "[model][book][strips]") {
    const PrintedSample sample("tool_cabinet.json");
    const auto unfit = "NOT FIT TO CUT FROM";
    for (const bool has_errors : {false, true}) {
        const auto strips = model::drill_strips(sample.project, shipped_catalogue(),
                                                sample.resolved, {.has_errors = has_errors});
        for (const auto& page : strips.document.pages) {
            const auto words = tests::words_on(page);
            CHECK_THAT(words,
                       Catch::Contains("stamp " + model::project_stamp(sample.project) + " "));
            CHECK((words.find(unfit) != std::string::npos) == has_errors);
            CHECK(tests::clash_on(page) == "");
        }
    }
}

TEST_CASE("each sheet names what is on it, and a strip goes from sheet to sheet in order",
          "[model][book][strips]") {
    for (const auto& name : model_tests::sample_names()) {
        CAPTURE(name);
        const PrintedSample sample(name);
        const auto strips = model::drill_strips(sample.project, shipped_catalogue(),
                                                sample.resolved, {.paper = Paper::letter});
        std::map<std::string, int> parts_seen;
        std::map<std::string, std::size_t> last_sheet;
        for (std::size_t i = 0; i < strips.document.pages.size(); ++i) {
            const auto words = tests::words_on(strips.document.pages[i]);
            const auto from = words.find("On this sheet: ");
            REQUIRE(from != std::string::npos);
            const auto list = words.substr(from, words.find(". ", from) - from);
            for (const auto& paper : tests::papers_on(strips.document.pages[i])) {
                CAPTURE(i, paper.name, list);
                CHECK_THAT(list, Catch::Contains(paper.name));
                const auto within = tests::words_within(paper, paper.box);
                const auto part = within.find("part ");
                const int number =
                    part == std::string::npos ? 1 : std::stoi(within.substr(part + 5));
                CHECK(number == ++parts_seen[paper.name]);
                if (number > 1) CHECK(i - last_sheet[paper.name] <= 1);
                last_sheet[paper.name] = i;
            }
        }
    }
}

TEST_CASE("a piece whose papers come out longer than the sheet is refused, not drawn over its edge",
          "[model][book][strips]") {
    const PrintedSample sample("work_counter.json");
    const auto strips = model::drill_strips(sample.project, shipped_catalogue(), sample.resolved,
                                            {.paper = Paper::letter, .printer = {1.0, 0.15}});
    REQUIRE_FALSE(strips.refused.empty());
    CHECK_THAT(strips.refused.front(), Catch::Contains("longer than letter has room for") &&
                                           Catch::Contains("larger paper"));
    for (const auto& page : strips.document.pages)
        for (const auto& paper : tests::papers_on(page))
            CHECK(paper.box.top + paper.box.height < page.size().height - 5.0);
}

TEST_CASE("a piece that is wider than the paper is refused by its name, and the rest is printed",
          "[model][book][strips]") {
    const PrintedSample sample("mixed_bench.json");
    auto catalogue = shipped_catalogue();
    const auto all = model::mark_facts(sample.project, catalogue, sample.resolved);
    const auto wide = std::find_if(all.begin(), all.end(), [](const model::MarkFacts& facts) {
        return !facts.is_sheet() && facts.flat.walls.size() == 3 && !facts.drills.empty();
    });
    REQUIRE(wide != all.end());
    const auto name = model::name_of_mark(sample.resolved, *wide);
    auto& section = catalogue.sections[sample.resolved.pieces[wide->pattern()].section];
    section.a = section.b = engine::Length::from_nm(200 * engine::Length::nm_per_mm);
    const auto refused =
        model::drill_strips(sample.project, catalogue, sample.resolved, {.paper = Paper::letter});
    REQUIRE_FALSE(refused.refused.empty());
    CHECK_THAT(refused.refused.front(),
               Catch::StartsWith(name + " has no strip: it is ") &&
                   Catch::Contains("print the strips on larger paper: tabloid"));
    REQUIRE_FALSE(refused.document.pages.empty());
    for (const auto& page : refused.document.pages) {
        CHECK_THAT(tests::words_on(page), Catch::Contains("No strip: " + name));
        for (const auto& paper : tests::papers_on(page)) {
            CHECK(paper.name != name);
            CHECK(paper.box.left + paper.box.width < page.size().width - 5.0);
        }
    }
    const auto larger =
        model::drill_strips(sample.project, catalogue, sample.resolved, {.paper = Paper::tabloid});
    CHECK(larger.refused.empty());
    section.a = section.b = engine::Length::from_nm(400 * engine::Length::nm_per_mm);
    const auto none =
        model::drill_strips(sample.project, catalogue, sample.resolved, {.paper = Paper::letter});
    REQUIRE_FALSE(none.refused.empty());
    CHECK_THAT(none.refused.front(), Catch::Contains("mark it from its drawing"));
}

TEST_CASE("strips of a project without a name say so", "[model][book][strips]") {
    PrintedSample sample("tool_cabinet.json");
    sample.project.name.clear();
    const auto strips =
        model::drill_strips(sample.project, shipped_catalogue(), sample.resolved, {});
    CHECK(strips.document.title == "Drill strips: no name");
    REQUIRE_FALSE(strips.document.pages.empty());
    CHECK_THAT(tests::words_on(strips.document.pages[0]),
               Catch::Contains("Drill strips: no name, sheet 1 of "));
}
