#include "model/book/draw_mark.h"

#include "engine/drawing/push_apart.h"
#include "model/book/mark_signs.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

using engine::Page;
using engine::PagePoint;
using engine::Pen;
using engine::TextAnchor;
using Lines = std::vector<std::array<PagePoint, 2>>;

constexpr Pen outline_pen{.width = engine::wide_width};
constexpr Pen thin_pen{.width = engine::thin_width};
constexpr Pen hair_pen{.width = engine::hair_width};
constexpr double datum_width = 0.9;
constexpr double word_size = 3.4;
constexpr double cap = 0.355;       // of a font's size: half of its capitals
constexpr double edge_gap = 1.0;    // from the outline to where a leader begins
constexpr double least_hole = 0.7;  // radius on paper

class Drawing {
public:
    Drawing(Page& page,
            PagePoint at,
            const Resolved& resolved,
            const MarkFacts& facts,
            const MarkLayout& layout)
        : page_{page},
          resolved_{resolved},
          facts_{facts},
          layout_{layout},
          left_{at.x + layout.left_room},
          top_{at.y + layout.above},
          outer_left_{at.x} {}

    void draw() {
        draw_outline();
        draw_walls();
        draw_below();
        draw_side(layout_.ordinates.left, true);
        draw_side(layout_.ordinates.right, false);
        draw_breaks();
        draw_holes();
        draw_note();
    }

private:
    double x(double across) const { return left_ + across / layout_.scale; }
    double y(double along) const { return top_ + layout_.lengthwise.at(along); }
    double right() const { return left_ + layout_.piece_width; }
    double bottom() const { return top_ + layout_.lengthwise.height(); }

    void draw_outline() {
        const auto& flat = facts_.flat;
        if (flat.loops.empty()) {
            page_.draw_rectangle({left_, top_, layout_.piece_width, bottom() - top_},
                                 {.pen = outline_pen});
        } else if (flat.walls.size() == 1) {
            for (const auto& loop : flat.loops) draw_loop(loop);
        } else {
            Lines edges;
            for (const auto& [from, to] : cut_edges(flat))
                edges.push_back({{{x(from[0]), y(from[1])}, {x(to[0]), y(to[1])}}});
            page_.draw_lines(std::move(edges), outline_pen);
        }
        page_.draw_line({left_ - 1.5, top_}, {right() + 1.5, top_}, {.width = datum_width});
        page_.draw_text(
            {left_ + layout_.piece_width / 2, top_ - layout_.above + 5.5}, "DATUM END",
            {.size = 3.6, .weight = engine::LetterWeight::bold, .anchor = TextAnchor::middle});
    }

    void draw_loop(const UnrolledLoop& loop) {
        std::vector<PagePoint> corners;
        for (const auto& [across, down] : loop) corners.push_back({x(across), y(down)});
        page_.draw_polygon(std::move(corners), {.pen = outline_pen});
    }

    // Their names above, the folds between them.
    void draw_walls() {
        bool is_raised = false;
        for (const auto& wall : facts_.flat.walls) {
            const double middle = x((wall.left() + wall.right()) / 2);
            page_.draw_text({middle, top_ - (is_raised ? 5.6 : 2.0)}, wall.name,
                            {.size = word_size, .anchor = TextAnchor::middle});
            is_raised = layout_.has_staggered_names && !is_raised;
            if (wall.right() > facts_.flat.width - 0.01) continue;
            page_.draw_line({x(wall.right()), top_}, {x(wall.right()), bottom()},
                            {.width = engine::narrow_width, .dash = engine::Dash::dashed});
        }
    }

    // Two zigzags with nothing between them (ISO 128-2, from memory).
    void draw_breaks() {
        constexpr double half = 1.0;
        for (const double place : layout_.lengthwise.breaks()) {
            const double middle = top_ + place;
            page_.draw_rectangle({left_ - 2.0, middle - half, layout_.piece_width + 4.0, 2 * half},
                                 engine::filled(engine::Ink::white));
            for (const double side : {middle - half, middle + half}) {
                const double centre = left_ + layout_.piece_width / 2;
                page_.draw_polyline({{left_ - 3.0, side},
                                     {centre - 1.6, side},
                                     {centre - 0.7, side - 1.6},
                                     {centre + 0.7, side + 1.6},
                                     {centre + 1.6, side},
                                     {right() + 3.0, side}},
                                    thin_pen);
            }
        }
    }

    void draw_side(const std::vector<Ordinate>& ordinates, bool left) {
        if (ordinates.empty()) return;
        std::vector<double> places{top_};
        for (const auto& it : ordinates) places.push_back(y(it.at));
        engine::push_apart(places, MarkLayout::pitch, top_ - 5.0, bottom() + 3.0);
        const double edge = left ? left_ : right();
        const double out = left ? -1.0 : 1.0;
        Lines leaders{leader_of(edge, out, top_, places.front())[0],
                      leader_of(edge, out, top_, places.front())[1]};
        Lines extensions;
        draw_number({edge + out * MarkLayout::leader, places.front()}, "0", {}, left, false);
        for (std::size_t i = 0; i < ordinates.size(); ++i) {
            const auto& it = ordinates[i];
            const double level = y(it.at);
            for (const auto& line : leader_of(edge, out, level, places[i + 1]))
                leaders.push_back(line);
            const bool is_near = facts_.is_sheet() == left;
            const double inner = x(is_near ? it.nearest : it.farthest);
            if (!it.is_end) extensions.push_back({{{edge, level}, {inner, level}}});
            draw_number({edge + out * MarkLayout::leader, places[i + 1]}, it.text, it.numbers, left,
                        it.is_end);
        }
        page_.draw_lines(std::move(extensions), hair_pen);
        page_.draw_lines(std::move(leaders), thin_pen);
        page_.draw_circle({edge + out * edge_gap, top_}, 0.8, {.pen = thin_pen});
    }

    // Level, and on to where its number has room.
    static std::array<std::array<PagePoint, 2>, 2> leader_of(double edge,
                                                             double out,
                                                             double from,
                                                             double to) {
        const PagePoint knee{edge + out * 3.0, from};
        return {{{{{edge + out * edge_gap, from}, knee}},
                 {{knee, {edge + out * (MarkLayout::leader - 1.0), to}}}}};
    }

    void draw_number(PagePoint at,
                     const std::string& text,
                     const std::string& numbers,
                     bool left,
                     bool is_bold) {
        const auto weight = is_bold ? engine::LetterWeight::bold : engine::LetterWeight::regular;
        const auto anchor = left ? TextAnchor::end : TextAnchor::start;
        const double base = at.y + cap * MarkLayout::number_size;
        page_.draw_text({at.x, base}, text,
                        {.size = MarkLayout::number_size, .weight = weight, .anchor = anchor});
        if (numbers.empty()) return;
        const double width = engine::text_width(text, MarkLayout::number_size, weight) + 2.0;
        page_.draw_text(
            {left ? at.x - width : at.x + width, base}, numbers,
            {.size = MarkLayout::hole_size, .anchor = anchor, .ink = engine::Ink::grey_75});
    }

    // Gauges, from the heels.
    void draw_below() {
        const auto& ordinates = layout_.ordinates.below;
        if (ordinates.empty()) return;
        std::vector<double> places;
        for (const auto& it : ordinates) places.push_back(x(it.at));
        const double half = layout_.below_pitch / 2;
        engine::push_apart(places, layout_.below_pitch, outer_left_ + half,
                           outer_left_ + layout_.width() - half);
        const double edge = bottom() + edge_gap;
        const double foot = bottom() + MarkLayout::below_leader;
        Lines leaders;
        Lines extensions;
        for (std::size_t i = 0; i < ordinates.size(); ++i) {
            const auto& it = ordinates[i];
            const PagePoint knee{x(it.at), edge + 1.5};
            leaders.push_back({{{x(it.at), edge}, knee}});
            leaders.push_back({{knee, {places[i], foot}}});
            extensions.push_back({{{x(it.at), y(it.farthest)}, {x(it.at), bottom()}}});
            draw_gauge({places[i], foot + 1.0}, it.text);
        }
        for (const double heel : layout_.ordinates.heels)
            page_.draw_circle({x(heel), edge + 0.8}, 0.8, {.pen = thin_pen});
        page_.draw_lines(std::move(extensions), hair_pen);
        page_.draw_lines(std::move(leaders), thin_pen);
    }

    void draw_gauge(PagePoint at, const std::string& text) {
        const double size = MarkLayout::number_size;
        if (layout_.is_turned_below) {
            page_.draw_text({at.x + cap * size, at.y}, text,
                            {.size = size, .anchor = TextAnchor::end, .turned_deg = 90.0});
        } else {
            page_.draw_text({at.x, at.y + 2 * cap * size}, text,
                            {.size = size, .anchor = TextAnchor::middle});
        }
    }

    void draw_holes() {
        for (const auto& hole : facts_.flat.holes) {
            const auto& it = resolved_.holes[hole.hole];
            draw_hole_sign(page_,
                           {.at = {x(hole.across), y(hole.down)},
                            .radius = std::max(hole.diameter / 2 / layout_.scale, least_hole),
                            .sign = sign_of(resolved_, it),
                            .is_matched = it.operation == HoleOperation::match_drill});
        }
    }

    void draw_note() {
        std::string number = std::to_string(layout_.scale);
        number.erase(number.find_last_not_of('0') + 1);
        if (number.back() == '.') number.pop_back();
        std::string words = "scale 1:" + number + ", inner faces up";
        if (!layout_.lengthwise.breaks().empty()) words += ", blank lengths broken out";
        if (layout_.has_more) words += "; more distances in the table";
        const double base = top_ - layout_.above + layout_.height() - 1.0;
        const double half = engine::text_width(words, 2.8) / 2;
        const double centre = std::max(left_ + layout_.piece_width / 2, outer_left_ + half);
        page_.draw_text({centre, base}, words,
                        {.size = 2.8, .anchor = TextAnchor::middle, .ink = engine::Ink::grey_75});
    }

    Page& page_;
    const Resolved& resolved_;
    const MarkFacts& facts_;
    const MarkLayout& layout_;
    double left_ = 0.0;  // upper left corner of the piece
    double top_ = 0.0;
    double outer_left_ = 0.0;
};

}  // namespace

void draw_mark(Page& page,
               PagePoint at,
               const Resolved& resolved,
               const MarkFacts& facts,
               const MarkLayout& layout) {
    if (facts.flat.walls.empty()) return;
    Drawing(page, at, resolved, facts, layout).draw();
}

}  // namespace model
