// Holes of drill strips where the schedule has them, read back from the file.
#include "model/book/drill_strips.h"
#include "model/book/mark_facts.h"
#include "model/resolve/resolve.h"

#include "tests/engine/drawing/pdf_file.h"
#include "tests/model/book/strip_reading.h"
#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <set>

using engine::Paper;
using model::PrinterScale;
using tests::PdfFile;
using tests::PrintedSample;
using tests::read_page;
using tests::ReadBox;
using tests::ReadCross;
using tests::ReadLeg;
using tests::ReadStrip;

namespace {

constexpr double tolerance = 0.05;  // mm: what the strips promise

// Whether a cross lies where a row of the drill schedule has its hole: on that leg, so far from the
// datum end and so far from the leg's heel.
bool is_row(const model::MarkFacts& facts,
            const ReadStrip& strip,
            const ReadCross& at,
            const model::DrillRow& row,
            const PrinterScale& printer) {
    const double along = strip.from + (at.y - strip.paper.top) * printer.down;
    if (!tests::is_near_on_paper(along, row.from_datum.mm(), tolerance)) return false;
    return std::any_of(strip.legs.begin(), strip.legs.end(), [&](const ReadLeg& leg) {
        return (leg.name == row.leg || facts.is_sheet()) && leg.holds(at.x) &&
               tests::is_near_on_paper(std::abs(at.x - leg.heel) * printer.across, row.gauge.mm(),
                                       tolerance);
    });
}

struct Reading {
    std::size_t crosses = 0;
    std::size_t joints = 0;
    std::size_t laid_off = 0;
};

// Every cross is a hole of its mark, and every hole has its cross.
Reading check_strips(const PrintedSample& sample, Paper paper, const PrinterScale& printer) {
    const auto document = model::drill_strips(sample.project, shipped_catalogue(), sample.resolved,
                                              {.paper = paper, .printer = printer})
                              .document;
    const auto all = model::mark_facts(sample.project, shipped_catalogue(), sample.resolved);
    std::map<std::string, const model::MarkFacts*> by_name;
    for (const auto& facts : all) by_name[model::name_of_mark(sample.resolved, facts)] = &facts;
    const PdfFile file{document};
    Reading reading;
    std::set<std::pair<std::string, model::Index>> found;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const auto page = read_page(file.path, static_cast<int>(i) + 1, printer);
        const auto texts = tests::texts_on(document.pages[i]);
        std::size_t on_strips = 0;
        for (const auto& text : texts) {
            const auto facts = by_name.find(text.text);
            // The name that stands over a paper, not that which is cut out with it.
            const bool is_head =
                facts != by_name.end() &&
                std::none_of(page.boxes.begin(), page.boxes.end(), [&](const ReadBox& box) {
                    return box.holds({text.box.left, text.box.top});
                });
            if (!is_head) continue;
            const auto strip =
                tests::strip_below(text, *facts->second, sample, page, texts, printer);
            CAPTURE(text.text, i);
            REQUIRE(strip);
            REQUIRE_FALSE(strip->legs.empty());
            if (strip->from > 0.0) ++reading.laid_off;
            for (const auto& cross : page.crosses) {
                if (!strip->paper.holds(cross)) continue;
                ++on_strips;
                std::size_t matches = 0;
                for (const auto& row : facts->second->drills) {
                    if (!is_row(*facts->second, *strip, cross, row, printer)) continue;
                    ++matches;
                    found.emplace(text.text, row.pattern_hole);
                }
                CAPTURE(cross.x - strip->paper.left, cross.y - strip->paper.top, strip->from,
                        strip->legs.size(), strip->legs[0].name);
                CHECK(matches > 0);
            }
        }
        CHECK(on_strips == page.crosses.size());
        reading.crosses += on_strips;
        reading.joints += page.registers.size();
    }
    for (const auto& facts : all) {
        if (facts.cut.kind == model::PieceKind::panel) continue;
        for (const auto& row : facts.drills) {
            const auto name = model::name_of_mark(sample.resolved, facts);
            CAPTURE(name, row.hole);
            CHECK(found.count({name, row.pattern_hole}) == 1);
        }
    }
    return reading;
}

// The lengths of all lines that run level, or down.
std::size_t lines_of(const std::vector<ReadBox>& lines, bool down, double length) {
    std::size_t count = 0;
    for (const auto& line : lines) {
        const double is = down ? line.bottom - line.top : line.right - line.left;
        if (tests::is_near_on_paper(is, length, 0.002)) ++count;
    }
    return count;
}

}  // namespace

TEST_CASE("the strips of every sample mark each hole within 0.05 mm, read from the page stream",
          "[model][book][strips]") {
    Reading all;
    for (const auto& name : model_tests::sample_names()) {
        CAPTURE(name);
        for (const auto paper : {Paper::letter, Paper::a4}) {
            const auto one = check_strips(PrintedSample(name), paper, {});
            all.crosses += one.crosses;
            all.laid_off += one.laid_off;
        }
    }
    CHECK(all.crosses > 1000);
    CHECK(all.laid_off > 50);
}

TEST_CASE("strips that are corrected for a printer are true when it prints them",
          "[model][book][strips]") {
    for (const auto* name : {"work_counter.json", "sleeping_platform.json"}) {
        CAPTURE(name);
        check_strips(PrintedSample(name), Paper::letter, {.across = 1.012, .down = 0.985});
        check_strips(PrintedSample(name), Paper::a4, {.across = 0.97, .down = 1.04});
    }
}

TEST_CASE("on narrow legs holes are measured from the line below the tab",
          "[model][book][strips]") {
    PrintedSample sample("work_counter.json");
    sample.project.stock[0].section = "angle 1/2 x 1/2 x 1/16";
    sample.resolved = model::resolve(sample.project, shipped_catalogue());
    for (const auto paper : {Paper::letter, Paper::a4}) {
        const auto reading = check_strips(sample, paper, {});
        CHECK(reading.crosses > 60);
        CHECK(reading.laid_off > 5);
    }
}

TEST_CASE("a row of holes that is longer than the sheet goes over papers that overlap",
          "[model][book][strips]") {
    PrintedSample sample("work_counter.json");
    // One piece more holes than its own: every 50 mm along the leg that it has holes in.
    auto& resolved = sample.resolved;
    auto longest = std::max_element(
        resolved.pieces.begin(), resolved.pieces.end(),
        [](const model::Piece& a, const model::Piece& b) { return a.length < b.length; });
    const auto pattern = resolved.marks[longest->mark].pattern;
    auto& piece = resolved.pieces[pattern];
    REQUIRE(piece.hole_count > 0);
    const model::Hole hole = resolved.holes[piece.first_hole];
    const auto first = static_cast<model::Index>(resolved.holes.size());
    constexpr model::Nm pitch = 50'800'000;
    for (model::Nm at = pitch / 2; at < piece.length; at += pitch) {
        model::Hole more = hole;
        more.from_datum = at;
        resolved.holes.push_back(more);
    }
    piece.first_hole = first;
    piece.hole_count = static_cast<model::Index>(resolved.holes.size()) - first;
    CHECK(check_strips(sample, Paper::letter, {}).joints >= 8);
    CHECK(check_strips(sample, Paper::a4, {.across = 1.01, .down = 0.99}).joints >= 8);
}

TEST_CASE("each sheet has rulers of 100 mm and 4 in across and down", "[model][book][strips]") {
    const PrintedSample sample("work_counter.json");
    for (const PrinterScale printer : {PrinterScale{}, PrinterScale{1.02, 0.98}}) {
        const auto document =
            model::drill_strips(sample.project, shipped_catalogue(), sample.resolved,
                                {.paper = Paper::letter, .printer = printer})
                .document;
        const PdfFile file{document};
        for (std::size_t i = 0; i < document.pages.size(); ++i) {
            const auto page = read_page(file.path, static_cast<int>(i) + 1, printer);
            CHECK(lines_of(page.levels, false, 100.0 / printer.across) == 1);
            CHECK(lines_of(page.levels, false, 101.6 / printer.across) == 1);
            CHECK(lines_of(page.uprights, true, 100.0 / printer.down) == 1);
            CHECK(lines_of(page.uprights, true, 101.6 / printer.down) == 1);
            CHECK_THAT(tests::words_on(document.pages[i]), Catch::Contains("Print at 100 %"));
        }
    }
}
