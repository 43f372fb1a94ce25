#include "tests/model/book/strip_on_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace tests {
namespace {

using engine::PageBox;
using engine::PagePoint;

constexpr double cross_reach = 4.0;

bool is_about(double a, double b, double by = 0.25) { return std::abs(a - b) < by; }

// A closed path along the axes that is not filled: what is cut along.
std::optional<PageBox> outline_of(const engine::PageItem& item) {
    const auto* path = std::get_if<engine::DrawnPath>(&item);
    if (path == nullptr || !path->is_closed || path->points.size() != 4 || path->paint.fill)
        return std::nullopt;
    const PagePoint from = path->points[0];
    const PagePoint to = path->points[2];
    return PageBox{from.x, from.y, to.x - from.x, to.y - from.y};
}

// Two lines that cross in their middles, with arms of a hole's cross.
std::optional<PageBox> cross_of(const engine::PageItem& item) {
    const auto* drawn = std::get_if<engine::DrawnLines>(&item);
    if (drawn == nullptr || drawn->lines.size() != 2) return std::nullopt;
    const auto& [level, upright] = std::array{drawn->lines[0], drawn->lines[1]};
    const PageBox box{level[0].x, upright[0].y, level[1].x - level[0].x,
                      upright[1].y - upright[0].y};
    const bool is_cross = level[0].y == level[1].y && upright[0].x == upright[1].x &&
                          is_about(box.width, 2 * cross_reach) &&
                          is_about(box.height, 2 * cross_reach);
    return is_cross ? std::optional{box} : std::nullopt;
}

// Of a chain line down the paper.
std::optional<PagePoint> fold_of(const engine::PageItem& item, const PageBox& paper) {
    const auto* drawn = std::get_if<engine::DrawnLines>(&item);
    if (drawn == nullptr || drawn->lines.empty() || drawn->pen.dash != engine::Dash::chain)
        return std::nullopt;
    const auto& from = drawn->lines.front()[0];  // broken at words
    const auto& to = drawn->lines.back()[1];
    const bool is_its = from.x > paper.left && from.x < paper.left + paper.width &&
                        from.y > paper.top - 2.0 && to.y < paper.top + paper.height + 2.0;
    return is_its ? std::optional{PagePoint{from.x, from.y + 1.0}} : std::nullopt;
}

void read_legs(PaperOnSheet& paper, const engine::Page& page) {
    std::vector<double> edges{paper.box.left, paper.box.left + paper.box.width};
    double top = paper.box.top;
    for (const auto& item : page.items()) {
        const auto fold = fold_of(item, paper.box);
        if (!fold) continue;
        edges.push_back(fold->x);
        top = fold->y;
    }
    std::sort(edges.begin(), edges.end());
    const double height = paper.box.top + paper.box.height - top;
    for (std::size_t i = 0; i + 1 < edges.size(); ++i)
        paper.legs.push_back({edges[i], top, edges[i + 1] - edges[i], height});
}

void read_within(PaperOnSheet& paper, const engine::Page& page) {
    for (const auto& item : page.items()) {
        if (const auto cross = cross_of(item); cross && lies_within(*cross, paper.box))
            paper.holes.push_back(*cross);
        const auto* path = std::get_if<engine::DrawnPath>(&item);
        const bool is_head = path != nullptr && !path->is_closed && path->points.size() == 3;
        if (is_head && lies_within({path->points[1].x, path->points[1].y, 0.0, 0.0}, paper.box))
            ++paper.arrows;
    }
}

}  // namespace

bool lies_within(const PageBox& inner, const PageBox& outer) {
    return inner.left >= outer.left && inner.top >= outer.top &&
           inner.left + inner.width <= outer.left + outer.width &&
           inner.top + inner.height <= outer.top + outer.height;
}

std::vector<PaperOnSheet> papers_on(const engine::Page& page) {
    const auto texts = texts_on(page);
    std::vector<PaperOnSheet> papers;
    for (const auto& item : page.items()) {
        const auto outline = outline_of(item);
        if (!outline) continue;
        PaperOnSheet paper{.box = *outline};
        double nearest = paper.box.top;
        for (const auto& text : texts) {
            const double above = paper.box.top - text.bottom();
            if (lies_within(text.box, paper.box)) paper.texts.push_back(text);
            if (text.lettering.weight != engine::LetterWeight::bold || above < 0.0 ||
                above > nearest || !is_about(text.box.left, paper.box.left) || above < 8.0)
                continue;
            nearest = above;
            paper.name = text.text;
        }
        read_legs(paper, page);
        read_within(paper, page);
        papers.push_back(std::move(paper));
    }
    return papers;
}

std::vector<std::string> said_among(const std::string& words, std::vector<std::string> names) {
    std::sort(names.begin(), names.end(),
              [](const auto& a, const auto& b) { return a.size() > b.size(); });
    std::string rest = words;
    std::vector<std::string> said;
    for (const auto& name : names) {
        const auto at = rest.find(name);
        if (at == std::string::npos) continue;
        rest.replace(at, name.size(), "|");
        said.push_back(name);
    }
    return said;
}

std::string words_within(const PaperOnSheet& paper, const PageBox& box) {
    std::string words;
    for (const auto& text : paper.texts)
        if (lies_within(text.box, box)) words += (words.empty() ? "" : " ") + text.text;
    return words;
}

}  // namespace tests
