#include "editor/kit/item_log.h"
#include "editor/kit/widgets.h"
#include "editor/places/hole_signs.h"
#include "editor/places/piece_panel.h"
#include "engine/drawing/push_apart.h"
#include "model/schedule/laying.h"
#include "model/schedule/tables.h"
#include "model/schedule/unrolled_piece.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace editor {
namespace {

constexpr float label_room = 62.0F;
constexpr float most_across = 2.7F;  // pixels a mm at scale 1
constexpr float hole_gap = 17.0F;    // pixels between holes at different distances
constexpr float fence_row = 14.0F;   // pixels from one row of fence settings to the next

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

std::vector<double> distances_of(const model::UnrolledPiece& flat) {
    std::vector<double> all;
    for (const auto& hole : flat.holes) all.push_back(hole.down);
    std::sort(all.begin(), all.end());
    const auto same = [](double a, double b) { return b - a < Lengthwise::same_distance; };
    all.erase(std::unique(all.begin(), all.end(), same), all.end());
    return all;
}

void push_apart(std::vector<float>& places, float least, float most) {
    std::vector<double> moved(places.begin(), places.end());
    engine::push_apart(moved, static_cast<double>(scaled(hole_gap)), static_cast<double>(least),
                       static_cast<double>(most));
    std::transform(moved.begin(), moved.end(), places.begin(),
                   [](double place) { return static_cast<float>(place); });
}

struct Paper {
    ImVec2 at;
    float across = 1.0F;  // pixels a mm
    float reach = 0.0F;   // width of the whole in pixels
    float length = 0.0F;  // pixels
    Lengthwise lengthwise;

    float x(double mm) const { return at.x + static_cast<float>(mm) * across; }
    ImVec2 place(const model::UnrolledHole& hole) const {
        return {x(hole.across), lengthwise.at(hole.down)};
    }
};

Paper paper_across(const Area& area, const model::UnrolledPiece& flat) {
    const float room_x = area.width - 2 * scaled(label_room);
    const auto width = static_cast<float>(std::max(flat.width, 1.0));
    Paper paper;
    paper.across = std::min(room_x / width, scaled(most_across));
    paper.reach = width * paper.across;
    paper.at = {area.x + (area.width - paper.reach) / 2,
                area.y + scaled(flat.datum_is_below ? 30 : 50)};
    return paper;
}

// What is said below the drawing has room for two rows of fence settings; more take from it.
void lay_lengthwise(Paper& paper,
                    const Area& area,
                    const model::UnrolledPiece& flat,
                    std::size_t fence_rows) {
    const float more_rows = static_cast<float>(std::max<std::size_t>(fence_rows, 2) - 2);
    const float room_y = area.height - (paper.at.y - area.y) -
                         scaled(flat.datum_is_below ? 82 : 62) - more_rows * scaled(fence_row);
    const auto length = static_cast<float>(std::max(flat.length, 1.0));
    paper.lengthwise.distances = distances_of(flat);
    const float needed =
        scaled(hole_gap) * static_cast<float>(paper.lengthwise.distances.size() + 1);
    paper.length = std::min(room_y, std::max(length * paper.across, needed));
    for (const double distance : paper.lengthwise.distances) {
        paper.lengthwise.places.push_back(paper.at.y +
                                          static_cast<float>(distance) / length * paper.length);
    }
    push_apart(paper.lengthwise.places, paper.at.y + scaled(9),
               paper.at.y + paper.length - scaled(9));
}

void draw_loop(ImDrawList& on,
               const Paper& paper,
               const model::UnrolledPiece& flat,
               const model::UnrolledLoop& loop) {
    std::vector<ImVec2> corners;
    for (const auto& [across, down] : loop) {
        const double share = down / std::max(flat.length, 1.0);
        corners.push_back({paper.x(across), paper.at.y + static_cast<float>(share) * paper.length});
    }
    on.AddPolyline(corners.data(), static_cast<int>(corners.size()), colour::scribed,
                   ImDrawFlags_Closed, scaled(1.3F));
}

void draw_outline(ImDrawList& on, const Paper& paper, const model::UnrolledPiece& flat) {
    const float end = paper.at.y + paper.length;
    if (flat.loops.empty()) {
        on.AddRect(paper.at, {paper.at.x + paper.reach, end}, colour::scribed, 0, 0, scaled(1.3F));
    }
    for (const auto& loop : flat.loops) draw_loop(on, paper, flat, loop);
    for (const auto& wall : flat.walls) {
        const float middle = paper.x((wall.left() + wall.right()) / 2);
        draw_text_at(on, {middle, paper.at.y - scaled(18)}, wall.name, Type::small,
                     colour::scribed_soft, Align::middle);
        if (wall.right() >= flat.width) continue;
        const float x = paper.x(wall.right());
        for (float y = paper.at.y; y < end; y += scaled(10)) {
            on.AddLine({x, y}, {x, std::min(y + scaled(6), end)}, colour::scribed_soft, 1);
        }
    }
}

bool is_left(const model::UnrolledPiece& flat, const model::UnrolledHole& hole) {
    const auto& wall = flat.walls[hole.wall];
    return wall.left() + wall.right() < flat.width;
}

// The distances of one side, each once.
void draw_distances(ImDrawList& on,
                    const Paper& paper,
                    const model::UnrolledPiece& flat,
                    const Derived& derived,
                    bool left) {
    std::vector<const model::UnrolledHole*> holes;
    for (const auto& hole : flat.holes) {
        if (is_left(flat, hole) == left) holes.push_back(&hole);
    }
    std::sort(holes.begin(), holes.end(),
              [](const model::UnrolledHole* a, const model::UnrolledHole* b) {
                  return a->down < b->down;
              });
    const float edge = left ? paper.at.x - scaled(9) : paper.at.x + paper.reach + scaled(9);
    float free = -1.0F;
    for (const auto* hole : holes) {
        const float y = paper.lengthwise.at(hole->down);
        if (y < free) continue;  // the same again, or no room: the table has all
        free = y + scaled(12);
        const auto nm = derived.resolved.holes[hole->hole].from_datum;
        draw_text_at(on, {edge, y - scaled(8)},
                     model::length_text(*derived.project, engine::Length::from_nm(nm)), Type::small,
                     colour::scribed, left ? Align::right : Align::left);
    }
}

// A line of holes along a wall: one setting of the fence. What would touch its neighbour goes a row
// down.
struct FenceLine {
    std::size_t wall = 0;
    double across = 0.0;
    std::string text;
    std::size_t row = 0;
};

// Holes that a tape cannot tell apart are of one line.
std::vector<FenceLine> fence_lines(const model::UnrolledPiece& flat,
                                   const Derived& derived,
                                   const Paper& paper) {
    std::vector<FenceLine> lines;
    for (const auto& hole : flat.holes) {
        const auto gauge = engine::Length::from_nm(derived.resolved.holes[hole.hole].gauge);
        std::string text = model::length_text(*derived.project, gauge);
        const bool is_known = std::any_of(lines.begin(), lines.end(), [&](const FenceLine& line) {
            return line.wall == hole.wall && line.text == text;
        });
        if (!is_known) lines.push_back({hole.wall, hole.across, std::move(text)});
    }
    std::sort(lines.begin(), lines.end(),
              [](const FenceLine& a, const FenceLine& b) { return a.across < b.across; });
    std::vector<float> ends;  // of each row so far
    for (auto& line : lines) {
        const float half = size_of_text(line.text, Type::small).x / 2;
        const float x = paper.x(line.across);
        while (line.row < ends.size() && x - half < ends[line.row] + scaled(5)) ++line.row;
        if (line.row == ends.size()) ends.push_back(0.0F);
        ends[line.row] = x + half;
    }
    return lines;
}

std::size_t rows_of(const std::vector<FenceLine>& lines) {
    std::size_t rows = 0;
    for (const auto& line : lines) rows = std::max(rows, line.row + 1);
    return rows;
}

// What the fence is set to, below each line of holes.
void draw_fences(ImDrawList& on,
                 const Paper& paper,
                 const model::UnrolledPiece& flat,
                 const std::vector<FenceLine>& lines) {
    if (lines.empty()) return;
    const float foot = paper.at.y + paper.length;
    const float top = foot + scaled(4);
    for (const auto& line : lines) {
        const float width = size_of_text(line.text, Type::small).x;
        const float x = paper.x(line.across);
        const float y = top + static_cast<float>(line.row) * scaled(fence_row);
        on.AddLine({x, foot - scaled(4)}, {x, y + scaled(2)}, colour::scribed_soft, 1);
        draw_text_at(on, {x - width / 2, y}, line.text, Type::small, colour::scribed);
        log_rectangle(
            flat.walls[line.wall].name + " fence " + line.text,
            {x - width / 2, y, x + width / 2, y + scaled(fence_row), true, true, line.text});
    }
    draw_text_at(on, {paper.at.x - scaled(9), top}, "fence", Type::small, colour::scribed_soft,
                 Align::right);
}

// At which hand the datum end lies when each wall is down on the table, beside that end.
void draw_datum_end(ImDrawList& on,
                    const Area& area,
                    const model::UnrolledPiece& flat,
                    const model::Piece& piece) {
    std::string sides;
    for (std::size_t i = 0; i < flat.walls.size(); ++i) {
        const auto& wall = flat.walls[i];
        const bool has_holes =
            std::any_of(flat.holes.begin(), flat.holes.end(),
                        [&](const model::UnrolledHole& hole) { return hole.wall == i; });
        if (!has_holes) continue;
        const std::string side =
            model::datum_end_on_table(piece, wall.wall) == model::TableEnd::left ? "left" : "right";
        sides += (sides.empty() ? ": " : ", ") + wall.name + " " + side;
        log_rectangle("hand of " + wall.name, {area.x, area.y, area.x, area.y, true, true, side});
    }
    const float y = flat.datum_is_below ? area.y + area.height - scaled(46) : area.y + scaled(9);
    const ImVec2 at{area.x + scaled(12), y};
    draw_text_at(on, at, text_to_fit("datum end" + sides, Type::small, area.width - scaled(24)),
                 Type::small, colour::scribed);
}

void draw_hole(ImDrawList& on, ImVec2 at, HoleLook look, bool is_hovered) {
    if (is_hovered) {
        on.AddCircleFilled(at, look.radius + scaled(3), colour::with_alpha(colour::tape, 60));
        look.ink = colour::tape;
    }
    draw_hole_sign(on, at, look);
}

void log_sign(std::size_t number, ImVec2 at, const HoleLook& look) {
    const float reach = look.radius + scaled(4);
    log_rectangle(
        "sign of hole " + std::to_string(number),
        {at.x - reach, at.y - reach, at.x + reach, at.y + reach, true, true, words_of(look.sign)});
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
    const model::UnrolledPiece flat = model::unrolled_piece(derived.resolved, catalogue, piece);
    Paper paper = paper_across(area, flat);
    const auto fences = fence_lines(flat, derived, paper);
    const auto& resolved = derived.resolved;
    const auto legend = hole_legend(resolved, resolved.pieces[piece]);
    const float legend_width = area.width - scaled(24);
    const float legend_height = height_of_legend(legend, legend_width);
    lay_lengthwise(paper, {area.x, area.y, area.width, area.height - legend_height}, flat,
                   rows_of(fences));
    ImDrawList& on = *ImGui::GetWindowDrawList();
    draw_outline(on, paper, flat);
    draw_distances(on, paper, flat, derived, true);
    draw_distances(on, paper, flat, derived, false);
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    std::size_t number = 0;
    for (const auto& hole : flat.holes) {
        const ImVec2 at = paper.place(hole);
        const auto& it = resolved.holes[hole.hole];
        const HoleLook look{
            sign_of(resolved, it), it.operation == model::HoleOperation::match_drill,
            std::max(scaled(2.5F), static_cast<float>(hole.diameter) / 2 * paper.across),
            colour::scribed};
        if (ImGui::IsWindowHovered() && is_near(mouse, at, look.radius + scaled(4))) {
            under_pointer = hole.hole;
        }
        draw_hole(on, at, look, marked_hole == hole.hole || under_pointer == hole.hole);
        log_sign(++number, at, look);
    }
    const float bottom = area.y + area.height;
    draw_fences(on, paper, flat, fences);
    draw_datum_end(on, {area.x, area.y, area.width, area.height - legend_height}, flat,
                   resolved.pieces[piece]);
    draw_legend(on, {area.x + scaled(12), bottom - scaled(27) - legend_height}, legend,
                legend_width);
    draw_text_at(on, {area.x + scaled(12), bottom - scaled(25)},
                 "inside faces; length not to scale", Type::small, colour::scribed_soft);
    const auto length = engine::Length::from_nm(derived.resolved.pieces[piece].length);
    draw_text_at(on, {area.x + area.width - scaled(12), bottom - scaled(27)},
                 model::length_text(*derived.project, length), Type::strong, colour::scribed,
                 Align::right);
    return under_pointer;
}

}  // namespace editor
