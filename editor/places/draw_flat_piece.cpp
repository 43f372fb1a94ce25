#include "editor/kit/widgets.h"
#include "editor/places/piece_panel.h"
#include "editor/places/unrolled_piece.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <cmath>

namespace editor {
namespace {

// From millimetres on the piece to pixels. Across and along have their own scales: a rail is far
// longer than wide, and what matters is the order of its holes.
struct Paper {
    ImVec2 at;
    float across = 1.0F;  // pixels a mm
    float along = 1.0F;
    float reach = 0.0F;  // width of the whole in pixels

    ImVec2 point(double x, double y) const {
        return {at.x + static_cast<float>(x) * across, at.y + static_cast<float>(y) * along};
    }
};

constexpr float label_room = 62.0F;
constexpr float most_across = 2.7F;  // pixels a mm at scale 1

Paper paper_for(const Area& area, const UnrolledPiece& flat) {
    const float room_x = area.width - 2 * scaled(label_room);
    const float top = scaled(46);
    const float room_y = area.height - top - scaled(38);
    const auto width = static_cast<float>(std::max(flat.width, 1.0));
    const auto length = static_cast<float>(std::max(flat.length, 1.0));
    Paper paper;
    paper.across = std::min(room_x / width, scaled(most_across));
    paper.along = std::min(room_y / length, paper.across);
    paper.reach = width * paper.across;
    paper.at = {area.x + (area.width - paper.reach) / 2, area.y + top};
    return paper;
}

void draw_outline(ImDrawList& on, const Paper& paper, const UnrolledPiece& flat) {
    on.AddRect(paper.point(0, 0), paper.point(flat.width, flat.length), colour::scribed, 0, 0,
               scaled(1.3F));
    for (const auto& wall : flat.walls) {
        const float middle = paper.point((wall.left() + wall.right()) / 2, 0).x;
        draw_text_at(on, {middle, paper.at.y - scaled(20)}, wall.name, Type::small,
                     colour::scribed_soft, Align::middle);
        if (wall.right() >= flat.width) continue;
        const ImVec2 top = paper.point(wall.right(), 0);
        const ImVec2 end = paper.point(wall.right(), flat.length);
        for (float y = top.y; y < end.y; y += scaled(10)) {
            on.AddLine({top.x, y}, {top.x, std::min(y + scaled(6), end.y)}, colour::scribed_soft,
                       1);
        }
    }
}

// Labels of one side, pushed apart so that each can be read.
struct DistanceLabel {
    double from_datum = 0.0;
    model::Index hole = 0;
    float y = 0.0F;      // where the hole lies
    float shown = 0.0F;  // where the text stands
};

void push_apart(std::vector<DistanceLabel>& labels, float least, float most) {
    const float gap = scaled(14);
    float free = least;
    for (auto& label : labels) {
        label.shown = std::max(label.y, free);
        free = label.shown + gap;
    }
    float end = most;
    for (auto at = labels.rbegin(); at != labels.rend(); ++at) {
        at->shown = std::min(at->shown, end);
        end = at->shown - gap;
    }
}

std::vector<DistanceLabel> labels_of(const UnrolledPiece& flat, const Paper& paper, bool left) {
    std::vector<DistanceLabel> labels;
    for (const auto& hole : flat.holes) {
        const auto& wall = flat.walls[hole.wall];
        const bool is_left = wall.left() + wall.right() < flat.width;
        if (is_left != left) continue;
        labels.push_back({hole.from_datum, hole.hole, paper.point(0, hole.from_datum).y});
    }
    std::sort(labels.begin(), labels.end(), [](const DistanceLabel& a, const DistanceLabel& b) {
        return a.from_datum < b.from_datum;
    });
    const auto same = [](const DistanceLabel& a, const DistanceLabel& b) {
        return std::abs(a.from_datum - b.from_datum) < 1.0e-9;
    };
    labels.erase(std::unique(labels.begin(), labels.end(), same), labels.end());
    return labels;
}

void draw_labels(ImDrawList& on,
                 const Area& area,
                 const Paper& paper,
                 const Derived& derived,
                 std::vector<DistanceLabel> labels,
                 bool left) {
    const float least = area.y + scaled(34);
    const float most = area.y + area.height - scaled(40);
    push_apart(labels, least, most);
    const float edge = left ? paper.at.x : paper.at.x + paper.reach;
    const float side = left ? -1.0F : 1.0F;
    for (const auto& label : labels) {
        if (label.shown < least - 1) continue;  // more than there is room for: the table has all
        const auto length = engine::Length::from_nm(derived.resolved.holes[label.hole].from_datum);
        on.AddLine({edge + side * scaled(2), label.y}, {edge + side * scaled(10), label.shown},
                   colour::from_rgb(0xb9c5f2, 120), 1);
        draw_text_at(on, {edge + side * scaled(13), label.shown - scaled(8)},
                     model::length_text(*derived.project, length), Type::small, colour::scribed,
                     left ? Align::right : Align::left);
    }
}

void draw_hole(ImDrawList& on, ImVec2 at, float radius, bool is_hovered) {
    const ImU32 ink = is_hovered ? colour::tape : colour::scribed;
    const float cross = radius + scaled(3.5F);
    if (is_hovered) on.AddCircleFilled(at, radius + scaled(3), colour::from_rgb(0xf1c948, 60));
    on.AddLine({at.x - cross, at.y}, {at.x + cross, at.y}, ink, 1);
    on.AddLine({at.x, at.y - cross}, {at.x, at.y + cross}, ink, 1);
    on.AddCircle(at, radius, ink, 0, scaled(1.4F));
}

bool is_near(ImVec2 a, ImVec2 b, float reach) {
    return std::abs(a.x - b.x) < reach && std::abs(a.y - b.y) < reach;
}

}  // namespace

std::optional<model::Index> draw_flat_piece(const Area& area,
                                            const Derived& derived,
                                            const model::Catalogue& catalogue,
                                            model::Index piece,
                                            std::optional<model::Index> marked_hole) {
    std::optional<model::Index> under_pointer;
    const UnrolledPiece flat = unrolled_piece(derived, catalogue, piece);
    const Paper paper = paper_for(area, flat);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    draw_outline(on, paper, flat);
    draw_labels(on, area, paper, derived, labels_of(flat, paper, true), true);
    draw_labels(on, area, paper, derived, labels_of(flat, paper, false), false);
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    for (const auto& hole : flat.holes) {
        const ImVec2 at = paper.point(hole.across, hole.from_datum);
        const float radius =
            std::max(scaled(2.5F), static_cast<float>(hole.diameter) / 2 * paper.across);
        if (ImGui::IsWindowHovered() && is_near(mouse, at, radius + scaled(4))) {
            under_pointer = hole.hole;
        }
        draw_hole(on, at, radius, marked_hole == hole.hole || under_pointer == hole.hole);
    }
    const float bottom = area.y + area.height;
    draw_text_at(on, {area.x + scaled(12), area.y + scaled(10)}, "datum end", Type::small,
                 colour::scribed_soft);
    draw_text_at(on, {area.x + scaled(12), bottom - scaled(25)}, "inside faces, opened out",
                 Type::small, colour::scribed_soft);
    const auto length = engine::Length::from_nm(derived.resolved.pieces[piece].length);
    draw_text_at(on, {area.x + area.width - scaled(12), bottom - scaled(27)},
                 model::length_text(*derived.project, length), Type::strong, colour::scribed,
                 Align::right);
    return under_pointer;
}

}  // namespace editor
