#include "model/book/mark_pages.h"

#include "engine/drawing/pdf.h"
#include "model/book/mark_drill_list.h"
#include "model/book/mark_facts.h"
#include "model/schedule/decimal_inches.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/page_flow.h"

#include "tests/model/book/printed_sample.h"
#include "tests/model/book/texts_on_page.h"
#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <string>
#include <vector>

using engine::Paper;
using model::mark_drawings;
using tests::PrintedSample;
using tests::words_on;

namespace {

constexpr std::array papers{Paper::a4, Paper::letter, Paper::a3};

// What stands on the pages of a mark: from its first one to that of the next.
std::string words_of(const model::MarkDrawings& drawn, std::size_t mark) {
    const std::size_t last =
        mark + 1 < drawn.places.size() ? drawn.places[mark + 1].page : drawn.pages.size() - 1;
    std::string words;
    for (auto page = drawn.places[mark].page; page <= last; ++page)
        words += words_on(drawn.pages[page]);
    return words;
}

void check_holds(const std::string& words, const std::string& part) {
    CAPTURE(part);
    if (words.find(part) == std::string::npos) FAIL_CHECK(words);
}

// A hole is drilled in one row and may be tapped in another one.
bool tells_row_of(const model::MarkFacts& facts,
                  const std::string& hole,
                  const std::string& words) {
    return std::ranges::any_of(facts.drills, [&](const model::DrillRow& row) {
        const std::string lies = "gauge " + model::decimal_mm(row.gauge) +
                                 " mm; datum end at the " +
                                 (row.datum_end == model::TableEnd::left ? "left " : "right ");
        return "h" + std::to_string(row.hole) == hole && words.find(lies) != std::string::npos &&
               words.find(model::work_words(row)) != std::string::npos;
    });
}

bool is_hole_number(const std::string& text) {
    return text.size() > 1 && text[0] == 'h' &&
           std::all_of(text.begin() + 1, text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// Whether all of it stands between the words "drilling continued" and the number of the first hole.
void check_first_hole(const std::vector<tests::TextOnPage>& texts,
                      std::size_t continued,
                      const model::MarkFacts& facts) {
    std::string words;
    for (auto i = continued + 1; i < texts.size(); ++i) {
        if (!is_hole_number(texts[i].text)) {
            words += texts[i].text + " ";
            continue;
        }
        CAPTURE(texts[continued].text, texts[i].text, words);
        CHECK(tells_row_of(facts, texts[i].text, words));
        return;
    }
    FAIL_CHECK("no hole below " << texts[continued].text);
}

// Gives on how many pages the list of that mark goes on.
std::size_t check_goes_on(const model::MarkDrawings& drawn,
                          const model::Resolved& resolved,
                          const model::MarkFacts& facts) {
    const auto head = model::name_of_mark(resolved, facts) + ", drilling continued";
    std::size_t continued = 0;
    for (const auto& page : drawn.pages) {
        const auto texts = tests::texts_on(page);
        const auto at = std::ranges::find(texts, head, &tests::TextOnPage::text);
        if (at == texts.end()) continue;
        ++continued;
        check_first_hole(texts, static_cast<std::size_t>(at - texts.begin()), facts);
    }
    return continued;
}

}  // namespace

TEST_CASE("where a drill list goes on with another page, how the piece lies is told again",
          "[model][book][marks]") {
    std::size_t continued = 0;
    for (const auto& name : model_tests::sample_names()) {
        for (const auto& shown : {tests::inches, tests::millimetres}) {
            const PrintedSample sample(name, shown);
            for (const auto paper : papers) {
                CAPTURE(name, engine::name_of(paper));
                const auto drawn =
                    mark_drawings(sample.project, shipped_catalogue(), sample.resolved, paper);
                for (const auto& facts :
                     model::mark_facts(sample.project, shipped_catalogue(), sample.resolved))
                    continued += check_goes_on(drawn, sample.resolved, facts);
            }
        }
    }
    CHECK(continued > 3);
}

TEST_CASE("a drill list that goes on in a new column says what its next hole meets",
          "[model][book][marks]") {
    std::size_t needed = 0;
    const PrintedSample sample("sleeping_platform.json");
    for (const auto& facts :
         model::mark_facts(sample.project, shipped_catalogue(), sample.resolved)) {
        const auto list = model::mark_drill_list(sample.project, facts, 52.0);
        std::string meets;
        for (std::size_t i = 0; i < list.size(); ++i) {
            const auto again = model::told_again(list, i);
            const bool tells_all = std::ranges::any_of(again, &model::ListedLine::tells_all);
            CHECK(tells_all == (i > 0 && list.front().tells_all && !list[i].tells_all));
            if (list[i].has_rule) CHECK(std::ranges::all_of(again, &model::ListedLine::tells_all));
            if (list[i].tells_mates) {
                const bool goes_on = i > 0 && list[i - 1].tells_mates;
                meets = (goes_on ? meets + " " : "") + list[i].texts.front().words;
            }
            if (!list[i].needs_mates) continue;
            ++needed;
            REQUIRE(again.size() > 1);
            CHECK(std::ranges::find(again, false, &model::ListedLine::tells_all)->has_rule);
            std::string last;
            for (const auto& line : again)
                if (line.tells_mates) last += (last.empty() ? "" : " ") + line.texts.front().words;
            CHECK(last == meets);
            CHECK(again.back().tells_mates);
        }
    }
    CHECK(needed > 10);
}

TEST_CASE("every number of the cut and drill schedules of a mark stands on its page",
          "[model][book][marks]") {
    for (const auto& name : model_tests::sample_names()) {
        for (const auto& shown : {tests::inches, tests::millimetres}) {
            CAPTURE(name);
            const PrintedSample sample(name, shown);
            const auto& project = sample.project;
            const auto drawn =
                mark_drawings(project, shipped_catalogue(), sample.resolved, Paper::letter);
            const auto all = model::mark_facts(project, shipped_catalogue(), sample.resolved);
            REQUIRE(drawn.places.size() == all.size());
            for (std::size_t i = 0; i < all.size(); ++i) {
                const auto& cut = all[i].cut;
                CHECK(drawn.places[i].mark == cut.mark);
                CHECK(drawn.places[i].hand == cut.hand);
                const std::string words = words_of(drawn, i);
                check_holds(words, " " + sample.resolved.marks[cut.mark].name + " ");
                check_holds(words, " " + std::to_string(cut.quantity) + " piece");
                check_holds(words, model::length_on_paper(project, cut.length));
                check_holds(words, model::decimal_mm(cut.length) + " mm");
                check_holds(words, cut.section);
                check_holds(words, cut.alloy);
                if (model::is_of_sheet(cut.kind)) {
                    check_holds(words, " " + model::length_text(project, cut.width) + " ");
                    check_holds(words, model::decimal_mm(cut.width) + " mm");
                } else {
                    check_holds(words, cut.end_a);
                    check_holds(words, cut.end_b);
                }
                for (const auto& row : all[i].drills) {
                    check_holds(words, " h" + std::to_string(row.hole) + " " +
                                           model::length_text(project, row.from_datum) + " ");
                    check_holds(words, " " + model::decimal_mm(row.from_datum) + " ");
                    check_holds(words,
                                " fence " + model::length_text(project, row.gauge) + " " + row.leg);
                    check_holds(words, "gauge " + model::decimal_mm(row.gauge) + " mm");
                    check_holds(words, row.drill);
                    check_holds(words, model::decimal_inches(row.diameter) + " in");
                    check_holds(words, model::decimal_mm(row.diameter) + " mm");
                    check_holds(words, row.fastener);
                    check_holds(words, row.mates_with);
                }
            }
        }
    }
}

TEST_CASE("no number or word of a mark's page lies on another one or off the page",
          "[model][book][marks]") {
    for (const auto& name : model_tests::sample_names()) {
        for (const auto& shown : {tests::inches, tests::millimetres}) {
            const PrintedSample sample(name, shown);
            for (const auto paper : papers) {
                const auto drawn =
                    mark_drawings(sample.project, shipped_catalogue(), sample.resolved, paper);
                for (std::size_t i = 0; i < drawn.pages.size(); ++i) {
                    CAPTURE(name, engine::name_of(paper), i);
                    CHECK(tests::clash_on(drawn.pages[i]) == "");
                    CHECK_FALSE(drawn.pages[i].fault());
                }
            }
        }
    }
}

TEST_CASE("the distances that one drills from have capitals of 3.5 mm", "[model][book][marks]") {
    const PrintedSample sample("work_counter.json");
    const auto drawn =
        mark_drawings(sample.project, shipped_catalogue(), sample.resolved, Paper::letter);
    const auto all = model::mark_facts(sample.project, shipped_catalogue(), sample.resolved);
    std::size_t seen = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (const auto& row : all[i].drills) {
            const auto wanted = model::length_text(sample.project, row.from_datum);
            const auto texts = tests::texts_on(drawn.pages[drawn.places[i].page]);
            seen += static_cast<std::size_t>(
                std::count_if(texts.begin(), texts.end(), [&](const tests::TextOnPage& text) {
                    return text.text == wanted && text.box.height >= 3.5;
                }));
            CAPTURE(row.hole, wanted);
            CHECK(std::any_of(texts.begin(), texts.end(), [&](const tests::TextOnPage& text) {
                return text.text == wanted && text.box.height >= 3.5;
            }));
        }
    }
    CHECK(seen > 200);
}

TEST_CASE("the same marks make the same file", "[model][book][marks]") {
    const PrintedSample sample("sleeping_platform.json");
    const auto bytes = [&] {
        return engine::pdf_bytes(
            {"Marks",
             model::mark_pages(sample.project, shipped_catalogue(), sample.resolved, Paper::a4),
             {}});
    };
    const auto first = bytes();
    const auto second = bytes();
    REQUIRE(first);
    REQUIRE(second);
    CHECK(*first == *second);
}

TEST_CASE("a project without pieces has no mark pages", "[model][book][marks]") {
    CHECK(model::mark_pages({}, shipped_catalogue(), {}, Paper::a4).empty());
}
