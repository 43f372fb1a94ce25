#include "model/book/draw_mark_numbers.h"

#include "engine/drawing/lettering.h"
#include "engine/drawing/push_apart.h"

#include <array>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

using engine::Page;
using engine::PagePoint;
using engine::TextAnchor;
using Lines = std::vector<std::array<PagePoint, 2>>;

constexpr engine::Pen leader_pen{.width = engine::thin_width};
constexpr engine::Pen hair_pen{.width = engine::hair_width};
constexpr double cap = 0.355;     // of a font's size: half of its capitals
constexpr double edge_gap = 1.0;  // from the outline to where a leader begins

class Numbers {
public:
    Numbers(Page& page, const PlacedMark& placed) : page_{page}, placed_{placed} {}

    void draw() {
        draw_below();
        draw_side(layout().ordinates.left, true);
        draw_side(layout().ordinates.right, false);
    }

private:
    const MarkLayout& layout() const { return *placed_.layout; }

    void draw_side(const std::vector<Ordinate>& ordinates, bool left) {
        if (ordinates.empty()) return;
        std::vector<double> places{placed_.top};
        for (const auto& it : ordinates) places.push_back(placed_.y(it.at));
        engine::push_apart(places, MarkLayout::pitch, placed_.top - 5.0, placed_.bottom() + 3.0);
        const double edge = left ? placed_.left : placed_.right();
        const double out = left ? -1.0 : 1.0;
        Lines leaders{leader_of(edge, out, placed_.top, places.front())[0],
                      leader_of(edge, out, placed_.top, places.front())[1]};
        Lines extensions;
        draw_number({edge + out * MarkLayout::leader, places.front()}, "0", {}, left, false);
        for (std::size_t i = 0; i < ordinates.size(); ++i) {
            const auto& it = ordinates[i];
            const double level = placed_.y(it.at);
            for (const auto& line : leader_of(edge, out, level, places[i + 1]))
                leaders.push_back(line);
            const bool is_near = placed_.facts->is_sheet() == left;
            const double inner = placed_.x(is_near ? it.nearest : it.farthest);
            if (!it.is_end) extensions.push_back({{{edge, level}, {inner, level}}});
            draw_number({edge + out * MarkLayout::leader, places[i + 1]}, it.text, it.numbers, left,
                        it.is_end);
        }
        page_.draw_lines(std::move(extensions), hair_pen);
        page_.draw_lines(std::move(leaders), leader_pen);
        page_.draw_circle({edge + out * edge_gap, placed_.top}, 0.8, {.pen = leader_pen});
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
        const auto& ordinates = layout().ordinates.below;
        if (ordinates.empty()) return;
        std::vector<double> places;
        for (const auto& it : ordinates) places.push_back(placed_.x(it.at));
        const double half = layout().below_pitch / 2;
        engine::push_apart(places, layout().below_pitch, placed_.outer_left + half,
                           placed_.outer_left + layout().width() - half);
        const double edge = placed_.bottom() + edge_gap;
        const double foot = placed_.bottom() + MarkLayout::below_leader;
        Lines leaders;
        Lines extensions;
        for (std::size_t i = 0; i < ordinates.size(); ++i) {
            const auto& it = ordinates[i];
            const PagePoint knee{placed_.x(it.at), edge + 1.5};
            leaders.push_back({{{placed_.x(it.at), edge}, knee}});
            leaders.push_back({{knee, {places[i], foot}}});
            extensions.push_back({{{placed_.x(it.at), placed_.y(it.farthest)},
                                   {placed_.x(it.at), placed_.bottom()}}});
            draw_gauge({places[i], foot + 1.0}, it.text);
        }
        for (const double heel : layout().ordinates.heels)
            page_.draw_circle({placed_.x(heel), edge + 0.8}, 0.8, {.pen = leader_pen});
        page_.draw_lines(std::move(extensions), hair_pen);
        page_.draw_lines(std::move(leaders), leader_pen);
    }

    void draw_gauge(PagePoint at, const std::string& text) {
        const double size = MarkLayout::number_size;
        if (layout().is_turned_below) {
            page_.draw_text({at.x + cap * size, at.y}, text,
                            {.size = size, .anchor = TextAnchor::end, .turned_deg = 90.0});
        } else {
            page_.draw_text({at.x, at.y + 2 * cap * size}, text,
                            {.size = size, .anchor = TextAnchor::middle});
        }
    }

    Page& page_;
    const PlacedMark& placed_;
};

}  // namespace

void draw_mark_numbers(Page& page, const PlacedMark& placed) { Numbers(page, placed).draw(); }

}  // namespace model
