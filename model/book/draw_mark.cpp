#include "model/book/draw_mark.h"

#include "model/book/draw_mark_numbers.h"
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
constexpr double datum_width = 0.9;
constexpr double least_hole = 0.7;  // radius on paper

class Drawing {
public:
    Drawing(Page& page, const Resolved& resolved, const PlacedMark& placed)
        : page_{page},
          resolved_{resolved},
          facts_{*placed.facts},
          layout_{*placed.layout},
          placed_{placed} {}

    void draw() {
        draw_outline();
        draw_walls();
        draw_mark_numbers(page_, placed_);
        draw_breaks();
        draw_holes();
        draw_note();
    }

private:
    double x(double across) const { return placed_.x(across); }
    double y(double along) const { return placed_.y(along); }
    double right() const { return placed_.right(); }
    double bottom() const { return placed_.bottom(); }

    void draw_outline() {
        const auto& flat = facts_.flat;
        if (flat.loops.empty()) {
            page_.draw_rectangle(
                {placed_.left, placed_.top, layout_.piece_width, bottom() - placed_.top},
                {.pen = outline_pen});
        } else if (flat.walls.size() == 1) {
            for (const auto& loop : flat.loops) draw_loop(loop);
        } else {
            Lines edges;
            for (const auto& [from, to] : cut_edges(flat))
                edges.push_back({{{x(from[0]), y(from[1])}, {x(to[0]), y(to[1])}}});
            page_.draw_lines(std::move(edges), outline_pen);
        }
        page_.draw_line({placed_.left - 1.5, placed_.top}, {right() + 1.5, placed_.top},
                        {.width = datum_width});
        page_.draw_text(
            {placed_.left + layout_.piece_width / 2, placed_.top - layout_.above + 5.5},
            "DATUM END",
            {.size = 3.6, .weight = engine::LetterWeight::bold, .anchor = TextAnchor::middle});
    }

    void draw_loop(const UnrolledLoop& loop) {
        std::vector<PagePoint> corners;
        for (const auto& [across, down] : loop) corners.push_back({x(across), y(down)});
        page_.draw_polygon(std::move(corners), {.pen = outline_pen});
    }

    // Their names above, the folds between them.
    void draw_walls() {
        for (std::size_t i = 0; i < facts_.flat.walls.size(); ++i) {
            const auto& wall = facts_.flat.walls[i];
            const double up = 2.0 + MarkLayout::name_pitch * layout_.name_levels[i];
            page_.draw_text({x((wall.left() + wall.right()) / 2), placed_.top - up}, wall.name,
                            {.size = MarkLayout::name_size, .anchor = TextAnchor::middle});
            if (wall.right() > facts_.flat.width - 0.01) continue;
            page_.draw_line({x(wall.right()), placed_.top}, {x(wall.right()), bottom()},
                            {.width = engine::narrow_width, .dash = engine::Dash::dashed});
        }
    }

    // Two zigzags with nothing between them (ISO 128-2, from memory).
    void draw_breaks() {
        constexpr double half = 1.0;
        for (const double place : layout_.lengthwise.breaks()) {
            const double middle = placed_.top + place;
            page_.draw_rectangle(
                {placed_.left - 2.0, middle - half, layout_.piece_width + 4.0, 2 * half},
                engine::filled(engine::Ink::white));
            for (const double side : {middle - half, middle + half}) {
                const double centre = placed_.left + layout_.piece_width / 2;
                page_.draw_polyline({{placed_.left - 3.0, side},
                                     {centre - 1.6, side},
                                     {centre - 0.7, side - 1.6},
                                     {centre + 0.7, side + 1.6},
                                     {centre + 1.6, side},
                                     {right() + 3.0, side}},
                                    thin_pen);
            }
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
        const double base = placed_.top - layout_.above + layout_.height() - 1.0;
        const double half = engine::text_width(words, 2.8) / 2;
        const double centre =
            std::max(placed_.left + layout_.piece_width / 2, placed_.outer_left + half);
        page_.draw_text({centre, base}, words,
                        {.size = 2.8, .anchor = TextAnchor::middle, .ink = engine::Ink::grey_75});
    }

    Page& page_;
    const Resolved& resolved_;
    const MarkFacts& facts_;
    const MarkLayout& layout_;
    const PlacedMark& placed_;
};

}  // namespace

void draw_mark(Page& page,
               PagePoint at,
               const Resolved& resolved,
               const MarkFacts& facts,
               const MarkLayout& layout) {
    if (facts.flat.walls.empty()) return;
    const PlacedMark placed{.facts = &facts,
                            .layout = &layout,
                            .left = at.x + layout.left_room,
                            .top = at.y + layout.above,
                            .outer_left = at.x};
    Drawing(page, resolved, placed).draw();
}

}  // namespace model
