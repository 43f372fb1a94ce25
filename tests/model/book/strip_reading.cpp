#include "tests/model/book/strip_reading.h"

#include "engine/measure/tape.h"
#include "model/book/strip_words.h"

#include "tests/engine/drawing/pdf_file.h"
#include "tests/model/book/strip_on_sheet.h"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <map>

namespace tests {

bool is_near_on_paper(double a, double b, double by) { return std::abs(a - b) < by; }

namespace {

constexpr double mm_per_point = 25.4 / 72.0;

bool is_cross(const TracedStroke& s, double arm_x, double arm_y) {
    return is_near_on_paper(s[0].y, s[1].y) && is_near_on_paper(s[2].x, s[3].x) &&
           is_near_on_paper(s[1].x - s[0].x, 2 * arm_x) &&
           is_near_on_paper(s[3].y - s[2].y, 2 * arm_y);
}

// Of one part, or of several down one line.
bool is_upright(const TracedStroke& stroke) {
    return stroke.size() >= 2 && std::all_of(stroke.begin(), stroke.end(), [&](const auto& point) {
               return is_near_on_paper(point.x, stroke[0].x);
           });
}

// The paper of a strip whose name stands there.
const ReadBox* paper_below(const ReadPage& page, const TextOnPage& name) {
    const ReadBox* nearest = nullptr;
    for (const auto& box : page.boxes) {
        if (!is_near_on_paper(box.left, name.box.left, 0.05) || box.top < name.bottom() ||
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

class Reader {
public:
    Reader(const PrintedSample& sample, const ReadPage& page, const model::PrinterScale& printer)
        : sample_{sample}, page_{page}, printer_{printer} {}

    std::optional<ReadStrip> strip_of(const model::MarkFacts& facts,
                                      const TextOnPage& name,
                                      const std::vector<TextOnPage>& texts) {
        const ReadBox* outline = paper_below(page_, name);
        if (outline == nullptr) return std::nullopt;
        const auto* paper = &(without_tab_ = *outline);
        without_tab_.top = top_of(*outline);
        ReadStrip strip{.paper = *paper};
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
    double top_of(const ReadBox& outline) const {
        for (const auto& line : page_.levels) {
            const bool is_across = is_near_on_paper(line.left, outline.left) &&
                                   is_near_on_paper(line.right, outline.right) &&
                                   line.top > outline.top + 0.5 && line.top < outline.bottom - 0.5;
            const bool is_joint = std::any_of(
                page_.registers.begin(), page_.registers.end(),
                [&](const ReadCross& cross) { return is_near_on_paper(cross.y, line.top); });
            if (is_across && !is_joint) return line.top;
        }
        return outline.top;
    }

    std::vector<double> edges_of(const ReadBox& paper) const {
        std::vector<double> edges{paper.left, paper.right};
        for (const auto& line : page_.uprights) {
            const bool is_fold = line.left > paper.left + 1 && line.left < paper.right - 1 &&
                                 is_near_on_paper(line.top, paper.top - 1.0) &&
                                 is_near_on_paper(line.bottom, paper.bottom + 1.0);
            if (is_fold) edges.push_back(line.left);
        }
        std::sort(edges.begin(), edges.end());
        return edges;
    }

    // Named by the words within it; its heel lies where the piece, seen from outside, has it.
    static void add_leg(ReadStrip& strip,
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
        const auto said = said_among(words, names);
        for (const auto& wall : walls) {
            if (std::count(said.begin(), said.end(), model::strip_leg_words(wall)) == 0) continue;
            const bool is_heel_left = wall.heel < wall.toe;
            strip.legs.push_back(
                {wall.name, edges[is_heel_left ? 0 : 1], edges[is_heel_left ? 1 : 0]});
        }
    }

    // "from left: leg b, outside; leg a, outside": all of them, in order.
    static void read_legs_on_tab(ReadStrip& strip,
                                 const ReadBox& outline,
                                 const model::MarkFacts& facts,
                                 const std::vector<TextOnPage>& texts,
                                 const std::vector<double>& edges) {
        std::string words;
        for (const auto& text : texts)
            if (outline.holds({text.box.left, text.bottom()}) && text.bottom() < strip.paper.top)
                words += text.text + " ";
        const auto from = words.find("from left: ");
        if (from == std::string::npos) return;
        std::map<std::size_t, ReadLeg> in_order;
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

    void read_head(ReadStrip& strip, const TextOnPage& name, const TextOnPage& text) const {
        const auto& paper = strip.paper;
        const bool is_mine = is_near_on_paper(text.box.left, name.box.left, 0.05) &&
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

    double first_register(const ReadBox& paper) const {
        double first = paper.bottom;
        for (const auto& cross : page_.registers) {
            const bool is_mine = is_near_on_paper(cross.x, paper.left) && cross.y > paper.top;
            if (is_mine) first = std::min(first, cross.y);
        }
        return first;
    }

    const PrintedSample& sample_;
    const ReadPage& page_;
    model::PrinterScale printer_;
    ReadBox without_tab_;
};

}  // namespace

ReadPage read_page(const std::filesystem::path& pdf,
                   int number,
                   const model::PrinterScale& printer) {
    ReadPage page;
    for (auto stroke : traced_strokes(pdf, number)) {
        for (auto& point : stroke) point = {point.x * mm_per_point, point.y * mm_per_point};
        if (is_upright(stroke)) {
            page.uprights.push_back({stroke[0].x, stroke[0].y, stroke[0].x, stroke.back().y});
        } else if (stroke.size() == 2 && is_near_on_paper(stroke[0].y, stroke[1].y)) {
            page.levels.push_back({stroke[0].x, stroke[0].y, stroke[1].x, stroke[1].y});
        }
        if (stroke.size() != 4) continue;
        const ReadCross middle{(stroke[0].x + stroke[1].x) / 2, stroke[0].y};
        if (is_cross(stroke, 4.0 / printer.across, 4.0 / printer.down)) {
            page.crosses.push_back(middle);
        } else if (is_cross(stroke, 2.5, 2.5)) {
            page.registers.push_back(middle);
        } else if (is_near_on_paper(stroke[0].y, stroke[1].y) &&
                   is_near_on_paper(stroke[1].x, stroke[2].x) && stroke[2].x > stroke[0].x &&
                   stroke[2].y > stroke[0].y) {
            page.boxes.push_back({stroke[0].x, stroke[0].y, stroke[2].x, stroke[2].y});
        }
    }
    return page;
}

std::optional<ReadStrip> strip_below(const TextOnPage& name,
                                     const model::MarkFacts& facts,
                                     const PrintedSample& sample,
                                     const ReadPage& page,
                                     const std::vector<TextOnPage>& texts,
                                     const model::PrinterScale& printer) {
    return Reader(sample, page, printer).strip_of(facts, name, texts);
}

}  // namespace tests
