#include "model/book/draw_strip.h"

#include "engine/drawing/lettering.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

using engine::LetterWeight;
using engine::Page;
using engine::PagePoint;
using engine::TextAnchor;

constexpr double strip_name_size = 4.6;
constexpr double strip_count_size = 3.0;
constexpr double edge_size = 2.8;
constexpr double least_size = 1.6;
constexpr double cross_reach = 4.0;  // from a hole's middle
constexpr double register_reach = 2.5;
constexpr double least_width = 40.0;  // of a paper, for its words
constexpr engine::Pen cut_pen{.width = engine::thin_width};
constexpr engine::Pen strip_pen{.width = engine::hair_width};

std::string place_text(const Project& project, engine::Length length) {
    auto style = project.shown;
    style.with_unit = true;
    return engine::exact_text(length, style);
}

std::string name_words(const StripDrawing& strip) {
    return name_of_mark(*strip.resolved, *strip.facts);
}

std::string count_words(const StripDrawing& strip) {
    const int count = strip.facts->cut.quantity;
    std::string words = "for " + std::to_string(count) + (count == 1 ? " piece" : " pieces");
    if (strip.tile->parts > 1) {
        words += ", part " + std::to_string(strip.tile->part) + " of " +
                 std::to_string(strip.tile->parts);
    }
    return words;
}

std::string start_words(const StripDrawing& strip) {
    const auto& start = strip.tile->start;
    switch (start.kind) {
        case TileEnd::piece:
            break;
        case TileEnd::blank:
            return "lay off " + place_text(*strip.project, start.at) + " from datum end";
        case TileEnd::joint:
            return "line on line, " + place_text(*strip.project, start.at);
    }
    return "DATUM END at this edge";
}

std::string end_words(const StripDrawing& strip) {
    const auto& end = strip.tile->end;
    if (end.kind == TileEnd::joint)
        return "part " + std::to_string(strip.tile->part + 1) + " goes on at the line";
    if (end.kind == TileEnd::piece) return "far end at this edge";
    if (strip.next == nullptr) return "nothing more is drilled";
    return "part " + std::to_string(strip.tile->part + 1) + ": at " +
           place_text(*strip.project, strip.next->start.at);
}

double size_to_fit(const std::string& words, double size, double width, LetterWeight weight) {
    const double is = engine::text_width(words, size, weight);
    return is <= width ? size : std::max(least_size, size * width / is);
}

// "#30"; what is done otherwise than drilling is named: "match-drill #30, through the mate".
std::string drill_words(const DrillRow& row) {
    if (row.operation == HoleOperation::drill) return row.drill;
    const auto words = std::string(name_of(row.operation)) + " " + row.drill;
    return row.operation == HoleOperation::match_drill ? words + ", through the mate" : words;
}

// What is done with the one drill of a mark: "#30", "#30 or match-drill #30, through the mate".
std::string all_drill_words(const MarkFacts& facts) {
    std::string all;
    std::vector<HoleOperation> seen;
    for (const auto& row : facts.drills) {
        if (std::find(seen.begin(), seen.end(), row.operation) != seen.end()) continue;
        seen.push_back(row.operation);
        all += (all.empty() ? "" : " or ") + drill_words(row);
    }
    return all;
}

// All holes of the mark take one drill.
bool has_one_drill(const MarkFacts& facts) {
    return std::all_of(facts.drills.begin(), facts.drills.end(), [&](const DrillRow& row) {
        return row.drill == facts.drills.front().drill;
    });
}

const DrillRow* row_of(const MarkFacts& facts, Index hole) {
    for (const auto& row : facts.drills)
        if (row.pattern_hole == hole) return &row;
    return nullptr;
}

class Strip {
public:
    Strip(Page& page, PagePoint at, const StripDrawing& strip)
        : page_{page},
          strip_{strip},
          tile_{*strip.tile},
          flat_{*strip.outside},
          head_{at},
          first_left_{wall(0).left()},
          left_{at.x},
          top_{at.y + strip_head} {}

    void draw() {
        draw_head();
        draw_outline();
        draw_folds();
        draw_joint(tile_.start);
        draw_joint(tile_.end);
        draw_holes();
        draw_foot();
    }

private:
    const UnrolledWall& wall(std::size_t i) const { return flat_.walls[tile_.first_wall + i]; }
    double width() const { return wall(tile_.wall_count - 1).right() - first_left_; }
    double x(double across) const { return left_ + (across - first_left_) / strip_.printer.across; }
    double y(double along) const { return top_ + (along - tile_.from) / strip_.printer.down; }
    double right() const { return x(first_left_ + width()); }
    double bottom() const { return y(tile_.to); }

    void write(double base, const std::string& words, double size, LetterWeight weight) {
        const double room = std::max(right() - left_, least_width);
        page_.draw_text({head_.x, base}, words,
                        {.size = size_to_fit(words, size, room, weight), .weight = weight});
    }

    void draw_head() {
        write(head_.y + 4.4, name_words(strip_), strip_name_size, LetterWeight::bold);
        write(head_.y + 8.4, count_words(strip_), strip_count_size, LetterWeight::regular);
        write(head_.y + 12.4, start_words(strip_), edge_size, LetterWeight::bold);
        for (std::size_t i = 0; i < tile_.wall_count; ++i) {
            const double room = x(wall(i).right()) - x(wall(i).left());
            const auto& name = wall(i).name;
            page_.draw_text({x((wall(i).left() + wall(i).right()) / 2), top_ - 1.5}, name,
                            {.size = size_to_fit(name, edge_size, room, LetterWeight::regular),
                             .anchor = TextAnchor::middle});
        }
    }

    // The paper's edges, heavy where the piece ends; what is notched or slopes within it.
    void draw_outline() {
        page_.draw_rectangle({left_, top_, right() - left_, bottom() - top_}, {.pen = cut_pen});
        const auto draw_end = [&](double level) {
            page_.draw_line({left_, level}, {right(), level}, {.width = 0.7});
        };
        if (tile_.start.kind == TileEnd::piece) draw_end(top_);
        if (tile_.end.kind == TileEnd::piece) draw_end(bottom());
        if (flat_.loops.empty()) return;
        page_.draw_clipped({left_, top_, right() - left_, bottom() - top_}, [&] {
            std::vector<std::array<PagePoint, 2>> edges;
            for (const auto& [from, to] : cut_edges(flat_))
                edges.push_back({{{x(from[0]), y(from[1])}, {x(to[0]), y(to[1])}}});
            page_.draw_lines(std::move(edges), {.width = engine::narrow_width});
        });
    }

    void draw_folds() {
        for (std::size_t i = 0; i + 1 < tile_.wall_count; ++i) {
            const double fold = x(wall(i).right());
            page_.draw_line({fold, top_ - 1.0}, {fold, bottom() + 1.0},
                            {.width = engine::narrow_width, .dash = engine::Dash::chain});
        }
    }

    // A line across with a cross at both edges, the same on both papers.
    void draw_joint(const TileEdge& edge) {
        if (edge.kind != TileEnd::joint) return;
        const double level = y(edge.at.mm());
        page_.draw_line({left_, level}, {right(), level},
                        {.width = engine::thin_width, .dash = engine::Dash::dashed});
        for (const double side : {left_, right()}) {
            page_.draw_lines({{{{side - register_reach, level}, {side + register_reach, level}}},
                              {{{side, level - register_reach}, {side, level + register_reach}}}},
                             cut_pen);
        }
    }

    void draw_holes() {
        const bool is_one = has_one_drill(*strip_.facts);
        for (std::size_t i = 0; i < flat_.holes.size(); ++i) {
            const auto& hole = flat_.holes[i];
            const bool is_on_it = hole.wall >= tile_.first_wall &&
                                  hole.wall < tile_.first_wall + tile_.wall_count &&
                                  hole.down > tile_.from && hole.down < tile_.to;
            if (!is_on_it) continue;
            const PagePoint at{x(hole.across), y(hole.down)};
            const double reach_x = cross_reach / strip_.printer.across;
            const double reach_y = cross_reach / strip_.printer.down;
            page_.draw_lines({{{{at.x - reach_x, at.y}, {at.x + reach_x, at.y}}},
                              {{{at.x, at.y - reach_y}, {at.x, at.y + reach_y}}}},
                             strip_pen);
            page_.draw_circle(at, hole.diameter / 2 / strip_.printer.across, {.pen = strip_pen});
            draw_number(at, hole, is_one);
        }
    }

    void draw_number(PagePoint at, const UnrolledHole& hole, bool is_one) {
        const auto* row = row_of(*strip_.facts, hole.hole);
        if (row == nullptr) return;
        std::string words = std::to_string(row->hole);
        if (!is_one) words += ": " + row->drill;
        const double off = std::max(1.2, 0.36 * hole.diameter);
        page_.draw_text({at.x + off, at.y - off}, words, {.size = 2.2});
    }

    void draw_foot() {
        std::string words = end_words(strip_);
        if (has_one_drill(*strip_.facts) && !strip_.facts->drills.empty())
            words += "; all " + all_drill_words(*strip_.facts);
        write(bottom() + 4.0, words, edge_size, LetterWeight::regular);
    }

    Page& page_;
    const StripDrawing& strip_;
    const StripTile& tile_;
    const UnrolledPiece& flat_;
    PagePoint head_;
    double first_left_ = 0.0;
    double left_ = 0.0;
    double top_ = 0.0;
};

}  // namespace

PackedSize size_of(const StripDrawing& strip) {
    const auto& walls = strip.outside->walls;
    const auto& tile = *strip.tile;
    const double width =
        walls[tile.first_wall + tile.wall_count - 1].right() - walls[tile.first_wall].left();
    return {std::max(width / strip.printer.across, least_width),
            strip_head + (tile.to - tile.from) / strip.printer.down + strip_foot};
}

void draw_strip(Page& page, PagePoint at, const StripDrawing& strip) {
    Strip(page, at, strip).draw();
}

}  // namespace model
