#include "model/book/drill_strips.h"

#include "model/book/mark_facts.h"
#include "model/book/stamp.h"
#include "model/book/strip_words.h"
#include "model/resolve/resolve.h"

#include "tests/engine/drawing/pdf_file.h"
#include "tests/model/book/printed_sample.h"
#include "tests/model/book/strip_on_sheet.h"
#include "tests/model/book/texts_on_page.h"
#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

#include <array>
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
        if (!is_near(box.left, name.box.left, 0.05) || box.top < name.bottom() ||
            box.top > name.bottom() + 12.0)
            continue;
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

struct Leg {
    std::string name;
    double heel = 0;  // places on the sheet
    double toe = 0;

    bool holds(double x) const { return x > std::min(heel, toe) && x < std::max(heel, toe); }
};

struct Strip {
    Box paper;
    double from = 0;  // mm from the datum end at its upper edge
    std::vector<Leg> legs;
};

class Reader {
public:
    Reader(const PrintedSample& sample, const ReadPage& page, const PrinterScale& printer)
        : sample_{sample}, page_{page}, printer_{printer} {}

    std::optional<Strip> strip_of(const model::MarkFacts& facts,
                                  const TextOnPage& name,
                                  const std::vector<TextOnPage>& texts) {
        const Box* outline = paper_below(page_, name);
        if (outline == nullptr) return std::nullopt;
        const auto* paper = &(without_tab_ = *outline);
        without_tab_.top = top_of(*outline);
        Strip strip{.paper = *paper};
        for (const auto& text : texts) read_head(strip, name, text);
        const auto edges = edges_of(*paper);
        for (std::size_t i = 0; i + 1 < edges.size(); ++i)
            add_leg(strip, facts, texts, {edges[i], edges[i + 1]});
        if (strip.legs.size() + 1 < edges.size())
            read_legs_on_tab(strip, *outline, facts, texts, edges);
        return strip;
    }

private:
    // Where the piece begins: below the tab, where there is one, a line goes from edge to edge.
    double top_of(const Box& outline) const {
        for (const auto& line : page_.levels) {
            const bool is_across = is_near(line.left, outline.left) &&
                                   is_near(line.right, outline.right) &&
                                   line.top > outline.top + 0.5 && line.top < outline.bottom - 0.5;
            const bool is_joint =
                std::any_of(page_.registers.begin(), page_.registers.end(),
                            [&](const Cross& cross) { return is_near(cross.y, line.top); });
            if (is_across && !is_joint) return line.top;
        }
        return outline.top;
    }

    std::vector<double> edges_of(const Box& paper) const {
        std::vector<double> edges{paper.left, paper.right};
        for (const auto& line : page_.uprights) {
            const bool is_fold = line.left > paper.left + 1 && line.left < paper.right - 1 &&
                                 is_near(line.top, paper.top - 1.0) &&
                                 is_near(line.bottom, paper.bottom + 1.0);
            if (is_fold) edges.push_back(line.left);
        }
        std::sort(edges.begin(), edges.end());
        return edges;
    }

    // Named by the words within it; its heel lies where the piece, seen from outside, has it.
    static void add_leg(Strip& strip,
                        const model::MarkFacts& facts,
                        const std::vector<TextOnPage>& texts,
                        const std::array<double, 2>& edges) {
        std::string words;
        for (const auto& text : texts) {
            const bool is_in = text.box.left > edges[0] && text.right() < edges[1] &&
                               text.box.top > strip.paper.top && text.bottom() < strip.paper.bottom;
            if (is_in) words += text.text + " ";
        }
        const auto walls = model::seen_from_outside(facts.flat).walls;
        std::vector<std::string> names;
        for (const auto& wall : walls) names.push_back(model::strip_leg_words(wall));
        const auto said = tests::said_among(words, names);
        for (const auto& wall : walls) {
            if (std::count(said.begin(), said.end(), model::strip_leg_words(wall)) == 0) continue;
            const bool is_heel_left = wall.heel < wall.toe;
            strip.legs.push_back(
                {wall.name, edges[is_heel_left ? 0 : 1], edges[is_heel_left ? 1 : 0]});
        }
    }

    // "from left: leg b, outside; leg a, outside": all of them, in order.
    static void read_legs_on_tab(Strip& strip,
                                 const Box& outline,
                                 const model::MarkFacts& facts,
                                 const std::vector<TextOnPage>& texts,
                                 const std::vector<double>& edges) {
        std::string words;
        for (const auto& text : texts)
            if (outline.holds({text.box.left, text.bottom()}) && text.bottom() < strip.paper.top)
                words += text.text + " ";
        const auto from = words.find("from left: ");
        if (from == std::string::npos) return;
        std::map<std::size_t, Leg> in_order;
        for (const auto& wall : model::seen_from_outside(facts.flat).walls) {
            const auto at = words.find(model::strip_leg_words(wall), from);
            if (at != std::string::npos) in_order[at] = {wall.name, wall.heel, wall.toe};
        }
        REQUIRE(in_order.size() + 1 == edges.size());
        strip.legs.clear();
        for (const auto& [at, leg] : in_order) {
            const auto i = strip.legs.size();
            const bool is_heel_left = leg.heel < leg.toe;
            strip.legs.push_back(
                {leg.name, edges[is_heel_left ? i : i + 1], edges[is_heel_left ? i + 1 : i]});
        }
    }

    void read_head(Strip& strip, const TextOnPage& name, const TextOnPage& text) const {
        const auto& paper = strip.paper;
        const bool is_mine = is_near(text.box.left, name.box.left, 0.05) &&
                             text.box.top > name.box.top && text.bottom() < paper.top;
        if (!is_mine) return;
        for (const std::string before : {"lay off ", "lay the heavy line at "})
            if (text.text.rfind(before, 0) == 0)
                strip.from = length_within(sample_.project, text.text, before);
        if (text.text.rfind("line on line, ", 0) == 0) {
            strip.from = length_within(sample_.project, text.text, "line on line, ") -
                         (first_register(paper) - paper.top) * printer_.down;
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
    Box without_tab_;
};

// Whether a cross lies where a row of the drill schedule has its hole: on that leg, so far from the
// datum end and so far from the leg's heel.
bool is_row(const model::MarkFacts& facts,
            const Strip& strip,
            const Cross& at,
            const model::DrillRow& row,
            const PrinterScale& printer) {
    const double along = strip.from + (at.y - strip.paper.top) * printer.down;
    if (!is_near(along, row.from_datum.mm(), tolerance)) return false;
    return std::any_of(strip.legs.begin(), strip.legs.end(), [&](const Leg& leg) {
        return (leg.name == row.leg || facts.is_sheet()) && leg.holds(at.x) &&
               is_near(std::abs(at.x - leg.heel) * printer.across, row.gauge.mm(), tolerance);
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
                std::none_of(page.boxes.begin(), page.boxes.end(), [&](const Box& box) {
                    return box.holds({text.box.left, text.box.top});
                });
            if (!is_head) continue;
            const auto strip = Reader(sample, page, printer).strip_of(*facts->second, text, texts);
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
