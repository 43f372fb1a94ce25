#include "model/book/drill_strips.h"

#include "model/book/mark_facts.h"

#include "tests/engine/drawing/pdf_file.h"
#include "tests/model/book/printed_sample.h"
#include "tests/model/book/texts_on_page.h"
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
using tests::TextOnPage;

namespace {

constexpr double mm_per_point = 25.4 / 72.0;
constexpr double tolerance = 0.05;  // mm: what the strips promise

struct Cross {
    double x = 0;
    double y = 0;
};

struct Box {
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;

    bool holds(const Cross& at) const {
        return at.x > left && at.x < right && at.y > top && at.y < bottom;
    }
};

bool is_near(double a, double b, double by = 0.01) { return std::abs(a - b) < by; }

// What is stroked on a page of the file, as mutool finds it in its stream; mm.
struct ReadPage {
    std::vector<Box> boxes;
    std::vector<Cross> crosses;    // arms of 4 mm: holes
    std::vector<Cross> registers;  // arms of 2.5 mm
    std::vector<Box> uprights;     // lines down
    std::vector<Box> levels;       // lines across
};

bool is_cross(const tests::TracedStroke& s, double arm_x, double arm_y) {
    return is_near(s[0].y, s[1].y) && is_near(s[2].x, s[3].x) &&
           is_near(s[1].x - s[0].x, 2 * arm_x) && is_near(s[3].y - s[2].y, 2 * arm_y);
}

ReadPage read_page(const std::filesystem::path& pdf, int number, const PrinterScale& printer) {
    ReadPage page;
    for (auto stroke : tests::traced_strokes(pdf, number)) {
        for (auto& point : stroke) point = {point.x * mm_per_point, point.y * mm_per_point};
        if (stroke.size() == 2 && is_near(stroke[0].x, stroke[1].x)) {
            page.uprights.push_back({stroke[0].x, stroke[0].y, stroke[1].x, stroke[1].y});
        } else if (stroke.size() == 2 && is_near(stroke[0].y, stroke[1].y)) {
            page.levels.push_back({stroke[0].x, stroke[0].y, stroke[1].x, stroke[1].y});
        }
        if (stroke.size() != 4) continue;
        const Cross middle{(stroke[0].x + stroke[1].x) / 2, stroke[0].y};
        if (is_cross(stroke, 4.0 / printer.across, 4.0 / printer.down)) {
            page.crosses.push_back(middle);
        } else if (is_cross(stroke, 2.5, 2.5)) {
            page.registers.push_back(middle);
        } else if (is_near(stroke[0].y, stroke[1].y) && is_near(stroke[1].x, stroke[2].x) &&
                   stroke[2].x > stroke[0].x && stroke[2].y > stroke[0].y) {
            page.boxes.push_back({stroke[0].x, stroke[0].y, stroke[2].x, stroke[2].y});
        }
    }
    return page;
}

// The paper of a strip whose name stands there.
const Box* paper_below(const ReadPage& page, const TextOnPage& name) {
    const Box* nearest = nullptr;
    for (const auto& box : page.boxes) {
        if (!is_near(box.left, name.box.left, 0.05) || box.top < name.bottom()) continue;
        if (nearest == nullptr || box.top < nearest->top) nearest = &box;
    }
    return nearest;
}

// The length in "lay off 16 3/4 in from datum end".
double length_within(const model::Project& project, std::string words, const std::string& before) {
    words.erase(0, before.size());
    words.erase(std::min(words.find(" from"), words.size()));
    const auto length = engine::read_length(words, engine::bare_unit(project.shown));
    if (!length) FAIL(words);
    return length->mm();
}

struct Strip {
    Box paper;
    double from = 0;            // mm from the datum end at its upper edge
    std::vector<double> edges;  // of its walls
    std::vector<std::string> walls;
};

class Reader {
public:
    Reader(const PrintedSample& sample, const ReadPage& page, const PrinterScale& printer)
        : sample_{sample}, page_{page}, printer_{printer} {}

    std::optional<Strip> strip_of(const TextOnPage& name, const std::vector<TextOnPage>& texts) {
        const Box* paper = paper_below(page_, name);
        if (paper == nullptr) return std::nullopt;
        Strip strip{.paper = *paper};
        strip.edges = {paper->left, paper->right};
        for (const auto& line : page_.uprights) {
            const bool is_fold = line.left > paper->left + 1 && line.left < paper->right - 1 &&
                                 is_near(line.top, paper->top - 1.0) &&
                                 is_near(line.bottom, paper->bottom + 1.0);
            if (is_fold) strip.edges.push_back(line.left);
        }
        std::sort(strip.edges.begin(), strip.edges.end());
        for (const auto& text : texts) read_head(strip, name, text);
        return strip;
    }

private:
    void read_head(Strip& strip, const TextOnPage& name, const TextOnPage& text) const {
        const auto& paper = strip.paper;
        const double middle = text.box.left + text.box.width / 2;
        const bool is_over = text.box.top > name.box.top && text.bottom() < paper.top &&
                             middle > paper.left && middle < paper.left + 200.0;
        if (!is_over) return;
        const bool is_mine = is_near(text.box.left, name.box.left, 0.05);
        if (is_mine && text.text.rfind("lay off ", 0) == 0) {
            strip.from = length_within(sample_.project, text.text, "lay off ");
        } else if (is_mine && text.text.rfind("line on line, ", 0) == 0) {
            strip.from = length_within(sample_.project, text.text, "line on line, ") -
                         (first_register(paper) - paper.top) * printer_.down;
        } else if (paper.top - text.bottom() < 2.0 && middle < paper.right) {
            strip.walls.push_back(text.text);
        }
    }

    double first_register(const Box& paper) const {
        double first = paper.bottom;
        for (const auto& cross : page_.registers) {
            const bool is_mine = is_near(cross.x, paper.left) && cross.y > paper.top;
            if (is_mine) first = std::min(first, cross.y);
        }
        return first;
    }

    const PrintedSample& sample_;
    const ReadPage& page_;
    PrinterScale printer_;
};

// Where a cross lies on the piece, and which rows of the drill schedule it can be.
bool is_row(const Strip& strip,
            const Cross& at,
            const model::DrillRow& row,
            const PrinterScale& printer) {
    const double along = strip.from + (at.y - strip.paper.top) * printer.down;
    if (!is_near(along, row.from_datum.mm(), tolerance)) return false;
    for (std::size_t wall = 0; wall + 1 < strip.edges.size(); ++wall) {
        if (at.x < strip.edges[wall] || at.x > strip.edges[wall + 1]) continue;
        if (strip.walls.at(wall) != row.leg && strip.edges.size() > 2) return false;
        const double left = (at.x - strip.edges[wall]) * printer.across;
        const double right = (strip.edges[wall + 1] - at.x) * printer.across;
        return is_near(left, row.gauge.mm(), tolerance) ||
               is_near(right, row.gauge.mm(), tolerance);
    }
    return false;
}

struct Reading {
    std::size_t crosses = 0;
    std::size_t joints = 0;
    std::size_t laid_off = 0;
};

// Every cross is a hole of its mark, and every hole has its cross.
Reading check_strips(const PrintedSample& sample, Paper paper, const PrinterScale& printer) {
    const auto document =
        model::drill_strips(sample.project, shipped_catalogue(), sample.resolved, paper, printer);
    const auto all = model::mark_facts(sample.project, shipped_catalogue(), sample.resolved);
    std::map<std::string, const model::MarkFacts*> by_name;
    for (const auto& facts : all) by_name[model::name_of_mark(sample.resolved, facts)] = &facts;
    const PdfFile file{document};
    Reading reading;
    std::set<model::Index> found;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const auto page = read_page(file.path, static_cast<int>(i) + 1, printer);
        const auto texts = tests::texts_on(document.pages[i]);
        std::size_t on_strips = 0;
        for (const auto& text : texts) {
            const auto facts = by_name.find(text.text);
            if (facts == by_name.end()) continue;
            const auto strip = Reader(sample, page, printer).strip_of(text, texts);
            CAPTURE(text.text, i);
            REQUIRE(strip);
            REQUIRE(strip->walls.size() + 1 == strip->edges.size());
            if (strip->from > 0.0) ++reading.laid_off;
            for (const auto& cross : page.crosses) {
                if (!strip->paper.holds(cross)) continue;
                ++on_strips;
                std::size_t matches = 0;
                for (const auto& row : facts->second->drills) {
                    if (!is_row(*strip, cross, row, printer)) continue;
                    ++matches;
                    found.insert(row.pattern_hole);
                }
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
            CAPTURE(model::name_of_mark(sample.resolved, facts), row.hole);
            CHECK(found.count(row.pattern_hole) == 1);
        }
    }
    return reading;
}

// The lengths of all lines that run level, or down.
std::size_t lines_of(const std::vector<Box>& lines, bool down, double length) {
    std::size_t count = 0;
    for (const auto& line : lines) {
        const double is = down ? line.bottom - line.top : line.right - line.left;
        if (is_near(is, length, 0.002)) ++count;
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
        const auto document = model::drill_strips(sample.project, shipped_catalogue(),
                                                  sample.resolved, Paper::letter, printer);
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

TEST_CASE("no word of a sheet of strips lies on another one or off the sheet",
          "[model][book][strips]") {
    for (const auto& name : model_tests::sample_names()) {
        for (const auto& shown : {tests::inches, tests::millimetres}) {
            const PrintedSample sample(name, shown);
            for (const auto paper : {Paper::letter, Paper::a4}) {
                const auto document = model::drill_strips(sample.project, shipped_catalogue(),
                                                          sample.resolved, paper);
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
                                                 sample.resolved, Paper::letter));
    };
    CHECK(bytes() == bytes());
}

TEST_CASE("a project without holes has no strips", "[model][book][strips]") {
    CHECK(model::drill_strips({}, shipped_catalogue(), {}, Paper::a4).pages.empty());
}
