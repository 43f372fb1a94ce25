#include "model/book/draw_strip.h"

#include "model/book/draw_strip_labels.h"
#include "model/book/fitted_text.h"
#include "model/book/letter_sizes.h"
#include "model/book/strip_paper.h"

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
using Segments = std::vector<std::array<PagePoint, 2>>;

constexpr double strip_name_size = 4.2;
constexpr double register_reach = 2.5;
constexpr double least_width = 40.0;  // of a paper, for the words over it
constexpr double end_width = 0.7;
constexpr double fold_reach = 1.0;  // of its line, beyond the paper
constexpr double foot_line = 3.6;
constexpr engine::Pen cut_pen{.width = engine::thin_width};
constexpr engine::Pen strip_pen{.width = engine::hair_width};

// On two lines where one would have to be small.
std::vector<std::string> foot_lines(const StripPart& part, double room) {
    std::vector<std::string> lines{strip_end_words(part)};
    const auto drill = StripTools(*part.facts).drill_words();
    if (drill.empty()) return lines;
    const auto one = lines.front() + "; " + drill;
    if (engine::text_width(one, strip_letters) <= room) return {one};
    lines.push_back(drill);
    return lines;
}

double room_for_words(const StripPaper& paper) { return std::max(paper.width(), least_width); }

class Strip {
public:
    Strip(Page& page, PagePoint at, const StripDrawing& strip)
        : page_{page},
          strip_{strip},
          tile_{*strip.part.tile},
          paper_{*strip.part.outside, tile_, strip.part.printer},
          head_{at},
          left_{at.x},
          top_{at.y + strip_head + strip.labels.tab} {}

    void draw() {
        draw_head();
        draw_outline();
        draw_cut_edges();
        draw_folds();
        draw_joint(tile_.start);
        draw_joint(tile_.end);
        draw_holes();
        draw_strip_labels(page_, {left_, top_}, strip_.labels);
        draw_foot();
    }

private:
    bool has_tab() const { return strip_.labels.tab > 0.0; }
    double right() const { return left_ + paper_.width(); }
    double bottom() const { return top_ + paper_.height(); }

    void write(double base, const std::string& words, double size, LetterWeight weight) {
        const double room = room_for_words(paper_);
        page_.draw_text({head_.x, base}, words,
                        {.size = size_to_fit(words, size, room, weight), .weight = weight});
    }

    void draw_head() {
        const auto& part = strip_.part;
        write(head_.y + 4.0, strip_name(part), strip_name_size, LetterWeight::bold);
        write(head_.y + 8.0, strip_count_words(part), strip_letters, LetterWeight::regular);
        write(head_.y + 12.0, strip_start_words(part, has_tab()), strip_letters,
              LetterWeight::bold);
    }

    // What is cut out, its tab with it; heavy where the piece ends, but with a tab nothing else is
    // than what is laid.
    void draw_outline() {
        if (has_tab()) {
            draw_outline_with_tab();
        } else {
            page_.draw_rectangle({left_, top_, paper_.width(), paper_.height()}, {.pen = cut_pen});
        }
        if (has_tab()) return;
        if (tile_.start.kind == TileEnd::piece) draw_level(top_, end_width);
        if (tile_.end.kind == TileEnd::piece) draw_level(bottom(), end_width);
    }

    // Dashed round the tab. Heavy is what the words over the paper say where to lay.
    void draw_outline_with_tab() {
        const double tab = strip_.labels.tab;
        page_.draw_rectangle(
            {left_, top_ - tab, paper_.width(), paper_.height() + tab},
            {.pen = engine::Pen{.width = cut_pen.width, .dash = engine::Dash::dashed}});
        page_.draw_polyline(
            {{left_, top_}, {left_, bottom()}, {right(), bottom()}, {right(), top_}}, cut_pen);
        draw_level(top_, tile_.start.kind == TileEnd::joint ? cut_pen.width : end_width);
    }

    void draw_level(double level, double width) {
        page_.draw_line({left_, level}, {right(), level}, {.width = width});
    }

    // Of a piece that is notched or slopes within its paper.
    void draw_cut_edges() {
        const auto& flat = *strip_.part.outside;
        if (flat.loops.empty()) return;
        page_.draw_clipped({left_, top_, paper_.width(), paper_.height()}, [&] {
            Segments edges;
            for (const auto& [from, to] : cut_edges(flat))
                edges.push_back({{place(from), place(to)}});
            page_.draw_lines(std::move(edges), {.width = engine::narrow_width});
        });
    }

    PagePoint place(const std::array<double, 2>& on_piece) const {
        return {left_ + paper_.x(on_piece[0]), top_ + paper_.y(on_piece[1])};
    }

    // Broken where words lie across it.
    void draw_folds() {
        for (std::size_t i = 0; i + 1 < paper_.leg_count(); ++i) {
            const double fold = paper_.x(paper_.wall(i).right());
            Segments parts;
            double from = -fold_reach;
            const auto reach = [&](double to) {
                if (from < to)
                    parts.push_back({{{left_ + fold, top_ + from}, {left_ + fold, top_ + to}}});
            };
            for (const auto& [begin, end] : words_across(strip_.labels, fold)) {
                reach(begin);
                from = std::max(from, end);
            }
            reach(paper_.height() + fold_reach);
            page_.draw_lines(std::move(parts),
                             {.width = engine::narrow_width, .dash = engine::Dash::chain});
        }
    }

    // A line across with a cross at both edges, the same on both papers.
    void draw_joint(const TileEdge& edge) {
        if (edge.kind != TileEnd::joint) return;
        const double level = top_ + paper_.y(edge.at.mm());
        page_.draw_line({left_, level}, {right(), level},
                        {.width = engine::thin_width, .dash = engine::Dash::dashed});
        for (const double side : {left_, right()})
            page_.draw_lines(cross_at({side, level}, register_reach, register_reach), cut_pen);
    }

    static Segments cross_at(PagePoint at, double across, double down) {
        return {{{{at.x - across, at.y}, {at.x + across, at.y}}},
                {{{at.x, at.y - down}, {at.x, at.y + down}}}};
    }

    void draw_holes() {
        for (const auto& hole : paper_.holes()) {
            const PagePoint at{left_ + hole.at.x, top_ + hole.at.y};
            page_.draw_lines(cross_at(at, paper_.reach_across(), paper_.reach_down()), strip_pen);
            page_.draw_circle(at, hole.radius, {.pen = strip_pen});
        }
    }

    void draw_foot() {
        double base = bottom() + 4.0;
        for (const auto& line : foot_lines(strip_.part, room_for_words(paper_))) {
            write(base, line, strip_letters, LetterWeight::regular);
            base += foot_line;
        }
    }

    Page& page_;
    const StripDrawing& strip_;
    const StripTile& tile_;
    StripPaper paper_;
    PagePoint head_;
    double left_ = 0.0;
    double top_ = 0.0;
};

}  // namespace

PackedSize size_of(const StripDrawing& strip) {
    const StripPaper paper(*strip.part.outside, *strip.part.tile, strip.part.printer);
    const double room = room_for_words(paper);
    const auto lines = static_cast<double>(foot_lines(strip.part, room).size());
    return {room, strip_head + strip.labels.tab + paper.height() + strip_foot +
                      (lines - 1.0) * foot_line};
}

void draw_strip(Page& page, PagePoint at, const StripDrawing& strip) {
    Strip(page, at, strip).draw();
}

}  // namespace model
