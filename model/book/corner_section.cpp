#include "model/book/corner_section.h"

#include "model/book/corner_view.h"
#include "model/book/short_dimension.h"
#include "model/resolve/piece_place.h"
#include "model/schedule/page_flow.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace model {
namespace {

using engine::PageBox;
using engine::PagePoint;

// Enlarged and reduced scales of ISO 5455, from memory.
struct UsualScale {
    double factor = 1.0;
    std::string_view words;
};
constexpr std::array<UsualScale, 7> usual_scales{{{5.0, "5 : 1"},
                                                  {2.0, "2 : 1"},
                                                  {1.0, "1 : 1"},
                                                  {0.5, "1 : 2"},
                                                  {0.2, "1 : 5"},
                                                  {0.1, "1 : 10"},
                                                  {0.05, "1 : 20"}}};

class JointSection {
public:
    JointSection(const Project& project,
                 const Catalogue& catalogue,
                 const Resolved& resolved,
                 Index joint)
        : project_{project},
          resolved_{resolved},
          joint_{joint},
          view_{corner_view(catalogue, resolved, joint)},
          shape_{view_.shape},
          window_{view_.window},
          fastener_{resolved.fasteners[view_.cut.fastener]} {}

    std::string draw(engine::Page& page, const PageBox& box) {
        const auto scale = scale_for(box);
        place_ = {.origin = {box.left + box.width / 2, box.top + box.height / 2},
                  .scale = scale.factor};
        const auto middle =
            SeenPoint{(window_.lo[0] + window_.hi[0]) / 2, (window_.lo[1] + window_.hi[1]) / 2};
        place_.origin.x -= middle[0] * scale.factor;
        place_.origin.y += middle[1] * scale.factor;
        // The head is up, whichever way the fastener is driven.
        const auto corner = place_({window_.lo[0], window_.hi[1]});
        const PageBox shown{corner.x, corner.y, window_.width() * scale.factor,
                            window_.height() * scale.factor};
        page.draw_clipped(shown, [&] {
            for (std::size_t i = 0; i < view_.pieces.size(); ++i) draw_piece(page, i);
        });
        draw_fastener(page);
        draw_distances(page);
        return std::string(scale.words);
    }

private:
    UsualScale scale_for(const PageBox& box) const {
        for (const auto& scale : usual_scales) {
            if (window_.width() * scale.factor <= box.width &&
                window_.height() * scale.factor <= box.height)
                return scale;
        }
        return usual_scales.back();
    }

    void draw_piece(engine::Page& page, std::size_t piece) const {
        // Hatched one way and the other, so that two pieces are told apart; a third one closer.
        const engine::Hatching hatching{.spacing = piece < 2 ? 1.8 : 1.0,
                                        .angle_deg = piece % 2 == 0 ? 45.0 : 135.0};
        for (const auto& face : view_.pieces[piece]) {
            std::vector<PagePoint> corners;
            for (const auto& p : face) corners.push_back(place_(near_window(p)));
            page.draw_hatch({corners}, hatching);
        }
        draw_outline(page, view_.pieces[piece]);
    }

    // A long piece is drawn no further than a little beyond the window, which cuts it off.
    SeenPoint near_window(SeenPoint p) const {
        for (std::size_t i = 0; i < 2; ++i)
            p[i] = std::clamp(p[i], window_.lo[i] - 2.0, window_.hi[i] + 2.0);
        return p;
    }

    void draw_outline(engine::Page& page, const CutFaces& faces) const {
        for (const auto& [from, to] : edges_of(faces)) {
            page.draw_line(place_(near_window(from)), place_(near_window(to)),
                           {.width = engine::wide_width});
        }
    }

    // Fasteners are not hatched where they are cut along (ISO 128-3, from memory).
    void draw_fastener(engine::Page& page) const {
        const double grip = in_mm(fastener_.grip);
        const double up = in_mm(shape_.head_height);
        const double down = in_mm(shape_.tail_length);
        const double shank = in_mm(shape_.shank_radius);
        draw_solid(page, {{-shank, 0}, {shank, 0}, {shank, -grip}, {-shank, -grip}});
        if (const double head = in_mm(shape_.head_radius); head > 0.0 && up > 0.0) {
            draw_solid(page, {{-head, 0},
                              {head, 0},
                              {0.75 * head, 0.75 * up},
                              {0.35 * head, up},
                              {-0.35 * head, up},
                              {-0.75 * head, 0.75 * up}});
        }
        if (const double tail = in_mm(shape_.tail_radius); tail > 0.0 && down > 0.0) {
            const double under = -grip - down;
            draw_solid(page, {{-0.8 * tail, -grip},
                              {0.8 * tail, -grip},
                              {tail, -grip - 0.35 * down},
                              {0.7 * tail, under},
                              {-0.7 * tail, under},
                              {-tail, -grip - 0.35 * down}});
        }
        page.draw_line(place_({0, up + 3.0}), place_({0, -grip - down - 3.0}),
                       {.width = engine::thin_width, .dash = engine::Dash::chain});
    }

    void draw_solid(engine::Page& page, const std::vector<std::array<double, 2>>& corners) const {
        std::vector<engine::PagePoint> points;
        for (const auto& corner : corners) points.push_back(place_(corner));
        page.draw_polygon(std::move(points), {.pen = engine::Pen{.width = engine::narrow_width},
                                              .fill = engine::Ink::white});
    }

    // Above the head for the outer piece, below the tail for the inner one.
    void draw_distances(engine::Page& page) const {
        const auto distances = edge_distances_drawn(resolved_, joint_);
        const auto sides = corner_sides(resolved_, joint_);
        for (std::size_t k = 0; k < 2; ++k) {
            if (!distances[k]) continue;
            const auto edge = edge_shown(view_, resolved_, sides[k], *distances[k]);
            if (edge) draw_distance(page, k, *edge, *distances[k]);
        }
    }

    void draw_distance(engine::Page& page, std::size_t k, double edge, Length distance) const {
        const bool is_above = k == 0;
        const double beyond = is_above ? -1.0 : 1.0;
        const double end = is_above ? in_mm(shape_.head_height) + 3.0
                                    : -in_mm(fastener_.grip + shape_.tail_length) - 3.0;
        const double y =
            is_above ? place_({0, window_.hi[1]}).y - 3.0 : place_({0, window_.lo[1]}).y + 4.5;
        const double x0 = place_({0, 0}).x;
        const double x1 = place_({edge, 0}).x;
        const engine::Pen thin{.width = engine::thin_width};
        page.draw_line({x0, place_({0, end}).y}, {x0, y + beyond}, thin);
        page.draw_line({x1, place_({0, is_above ? 0.0 : -in_mm(fastener_.grip)}).y + beyond},
                       {x1, y + beyond}, thin);
        draw_short_dimension(page, x0, x1, y, length_on_paper(project_, distance));
    }

    const Project& project_;
    const Resolved& resolved_;
    Index joint_;
    CornerView view_;
    const BodyShape& shape_;
    const SeenBounds& window_;
    const Fastener& fastener_;
    OnPage place_;
};

}  // namespace

std::string draw_corner_section(engine::Page& page,
                                const PageBox& box,
                                const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved,
                                Index joint) {
    return JointSection(project, catalogue, resolved, joint).draw(page, box);
}

}  // namespace model
