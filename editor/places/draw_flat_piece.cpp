#include "editor/kit/widgets.h"
#include "editor/places/piece_panel.h"
#include "editor/places/unrolled_piece.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <cmath>

namespace editor {
namespace {

constexpr float label_room = 62.0F;
constexpr float most_across = 2.7F;  // pixels a mm at scale 1
constexpr float hole_gap = 17.0F;    // pixels between holes at different distances

// Where the holes at each distance lie along the drawing. A rail is far longer than wide, so the
// drawing is not to scale lengthwise: holes stay in order, and as far apart as it takes to tell
// them apart.
struct Lengthwise {
    std::vector<double> distances;  // mm, rising
    std::vector<float> places;      // pixels

    float at(double distance) const {
        const auto found =
            std::lower_bound(distances.begin(), distances.end(), distance - same_distance);
        return places[static_cast<std::size_t>(found - distances.begin())];
    }

    static constexpr double same_distance = 1.0e-4;
};

std::vector<double> distances_of(const UnrolledPiece& flat) {
    std::vector<double> all;
    for (const auto& hole : flat.holes) all.push_back(hole.from_datum);
    std::sort(all.begin(), all.end());
    const auto same = [](double a, double b) { return b - a < Lengthwise::same_distance; };
    all.erase(std::unique(all.begin(), all.end(), same), all.end());
    return all;
}

// Places that are at least a gap apart and as near as can be to where they belong: those that
// crowd each other share a run around their middle (pool adjacent violators).
struct Run {
    float sum = 0.0F;  // of the places less the gaps before them
    std::size_t count = 0;

    float middle() const { return sum / static_cast<float>(count); }
};

void push_apart(std::vector<float>& places, float least, float most) {
    if (places.empty()) return;
    const float gap =
        std::min(scaled(hole_gap), (most - least) / static_cast<float>(places.size()));
    std::vector<Run> runs;
    for (std::size_t i = 0; i < places.size(); ++i) {
        runs.push_back({places[i] - gap * static_cast<float>(i), 1});
        while (runs.size() > 1 && runs[runs.size() - 2].middle() > runs.back().middle()) {
            const Run last = runs.back();
            runs.pop_back();
            runs.back().sum += last.sum;
            runs.back().count += last.count;
        }
    }
    const float end = most - gap * static_cast<float>(places.size() - 1);
    std::size_t i = 0;
    for (const auto& run : runs) {
        const float first = std::clamp(run.middle(), least, std::max(least, end));
        for (std::size_t n = 0; n < run.count; ++n, ++i) {
            places[i] = first + gap * static_cast<float>(i);
        }
    }
}

struct Paper {
    ImVec2 at;
    float across = 1.0F;  // pixels a mm
    float reach = 0.0F;   // width of the whole in pixels
    float length = 0.0F;  // pixels
    Lengthwise lengthwise;

    float x(double mm) const { return at.x + static_cast<float>(mm) * across; }
    ImVec2 place(const UnrolledHole& hole) const {
        return {x(hole.across), lengthwise.at(hole.from_datum)};
    }
};

Paper paper_for(const Area& area, const UnrolledPiece& flat) {
    const float room_x = area.width - 2 * scaled(label_room);
    const float top = scaled(46);
    const float room_y = area.height - top - scaled(38);
    const auto width = static_cast<float>(std::max(flat.width, 1.0));
    const auto length = static_cast<float>(std::max(flat.length, 1.0));
    Paper paper;
    paper.across = std::min(room_x / width, scaled(most_across));
    paper.reach = width * paper.across;
    paper.lengthwise.distances = distances_of(flat);
    const float needed =
        scaled(hole_gap) * static_cast<float>(paper.lengthwise.distances.size() + 1);
    paper.length = std::min(room_y, std::max(length * paper.across, needed));
    paper.at = {area.x + (area.width - paper.reach) / 2, area.y + top};
    for (const double distance : paper.lengthwise.distances) {
        paper.lengthwise.places.push_back(paper.at.y +
                                          static_cast<float>(distance) / length * paper.length);
    }
    push_apart(paper.lengthwise.places, paper.at.y + scaled(9),
               paper.at.y + paper.length - scaled(9));
    return paper;
}

void draw_outline(ImDrawList& on, const Paper& paper, const UnrolledPiece& flat) {
    const float end = paper.at.y + paper.length;
    on.AddRect(paper.at, {paper.at.x + paper.reach, end}, colour::scribed, 0, 0, scaled(1.3F));
    for (const auto& wall : flat.walls) {
        const float middle = paper.x((wall.left() + wall.right()) / 2);
        draw_text_at(on, {middle, paper.at.y - scaled(20)}, wall.name, Type::small,
                     colour::scribed_soft, Align::middle);
        if (wall.right() >= flat.width) continue;
        const float x = paper.x(wall.right());
        for (float y = paper.at.y; y < end; y += scaled(10)) {
            on.AddLine({x, y}, {x, std::min(y + scaled(6), end)}, colour::scribed_soft, 1);
        }
    }
}

bool is_left(const UnrolledPiece& flat, const UnrolledHole& hole) {
    const auto& wall = flat.walls[hole.wall];
    return wall.left() + wall.right() < flat.width;
}

// The distances of one side, each once.
void draw_distances(ImDrawList& on,
                    const Paper& paper,
                    const UnrolledPiece& flat,
                    const Derived& derived,
                    bool left) {
    std::vector<const UnrolledHole*> holes;
    for (const auto& hole : flat.holes) {
        if (is_left(flat, hole) == left) holes.push_back(&hole);
    }
    std::sort(holes.begin(), holes.end(), [](const UnrolledHole* a, const UnrolledHole* b) {
        return a->from_datum < b->from_datum;
    });
    const float edge = left ? paper.at.x - scaled(9) : paper.at.x + paper.reach + scaled(9);
    float free = -1.0F;
    for (const auto* hole : holes) {
        const float y = paper.lengthwise.at(hole->from_datum);
        if (y < free) continue;  // the same again, or no room: the table has all
        free = y + scaled(12);
        const auto nm = derived.resolved.holes[hole->hole].from_datum;
        draw_text_at(on, {edge, y - scaled(8)},
                     model::length_text(*derived.project, engine::Length::from_nm(nm)), Type::small,
                     colour::scribed, left ? Align::right : Align::left);
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
    draw_distances(on, paper, flat, derived, true);
    draw_distances(on, paper, flat, derived, false);
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    for (const auto& hole : flat.holes) {
        const ImVec2 at = paper.place(hole);
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
    draw_text_at(on, {area.x + scaled(12), bottom - scaled(25)},
                 "inside faces; length not to scale", Type::small, colour::scribed_soft);
    const auto length = engine::Length::from_nm(derived.resolved.pieces[piece].length);
    draw_text_at(on, {area.x + area.width - scaled(12), bottom - scaled(27)},
                 model::length_text(*derived.project, length), Type::strong, colour::scribed,
                 Align::right);
    return under_pointer;
}

}  // namespace editor
