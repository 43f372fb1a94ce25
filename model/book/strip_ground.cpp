#include "model/book/strip_ground.h"

#include <algorithm>

namespace model {
namespace {

constexpr double around_cross = 0.6;
constexpr double beside_line = 3.2;  // of a joint, with its register marks
constexpr double under_next = 10.5;  // mm before the line that the next paper lies upon
constexpr double beside_edge = 0.6;

// What is left of a segment between two bounds of one axis, from and to in shares of it.
bool is_clipped_away(double at, double by, double least, double most, double& from, double& to) {
    if (by == 0.0) return at < least || at > most;
    double first = (least - at) / by;
    double last = (most - at) / by;
    if (first > last) std::swap(first, last);
    from = std::max(from, first);
    to = std::min(to, last);
    return from > to;
}

bool crosses(const UnrolledEdge& edge, const engine::PageBox& box) {
    double from = 0.0;
    double to = 1.0;
    const auto& [a, b] = edge;
    return !is_clipped_away(a[0], b[0] - a[0], box.left, box.left + box.width, from, to) &&
           !is_clipped_away(a[1], b[1] - a[1], box.top, box.top + box.height, from, to);
}

// Within an odd number of loops: what is cut out lies within the outline.
bool is_within(const std::vector<UnrolledLoop>& loops, double across, double down) {
    bool is_in = false;
    for (const auto& loop : loops) {
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const auto& a = loop[i];
            const auto& b = loop[(i + 1) % loop.size()];
            if ((a[1] > down) == (b[1] > down)) continue;
            const double at = a[0] + (down - a[1]) / (b[1] - a[1]) * (b[0] - a[0]);
            if (across < at) is_in = !is_in;
        }
    }
    return is_in;
}

}  // namespace

StripGround::StripGround(const StripPart& part, const StripPaper& paper)
    : flat_{*part.outside}, paper_{paper} {
    if (!flat_.loops.empty()) edges_ = cut_edges(flat_);
    block_crosses();
    block_joints(*part.tile);
}

void StripGround::block(const engine::PageBox& box, double around) {
    blocked_.push_back(
        {box.left - around, box.top - around, box.width + 2 * around, box.height + 2 * around});
}

std::optional<engine::PageBox> StripGround::free_place_in(const engine::PageBox& area,
                                                          BoxSize size) const {
    if (edges_.empty()) return free_place(area, blocked_, size);
    return free_place(area, blocked_, size,
                      [&](const engine::PageBox& box) { return is_on_piece(box); });
}

void StripGround::block_crosses() {
    for (const auto& hole : paper_.holes()) {
        const double across = std::max(paper_.reach_across(), hole.radius);
        const double down = std::max(paper_.reach_down(), hole.radius);
        block({hole.at.x - across, hole.at.y - down, 2 * across, 2 * down}, around_cross);
    }
}

void StripGround::block_joints(const StripTile& tile) {
    if (tile.start.kind == TileEnd::joint)
        block({0.0, paper_.y(tile.start.at.mm()), paper_.width(), 0.0}, beside_line);
    if (tile.end.kind != TileEnd::joint) return;
    const double from = paper_.y(tile.end.at.mm()) - under_next;
    block({0.0, from, paper_.width(), paper_.height() - from}, 0.0);
}

bool StripGround::is_on_piece(const engine::PageBox& box) const {
    const double left = paper_.across_at(box.left - beside_edge);
    const double top = paper_.along_at(box.top - beside_edge);
    const engine::PageBox on_piece{left, top,
                                   paper_.across_at(box.left + box.width + beside_edge) - left,
                                   paper_.along_at(box.top + box.height + beside_edge) - top};
    const bool is_cut = std::ranges::any_of(
        edges_, [&](const UnrolledEdge& edge) { return crosses(edge, on_piece); });
    // A little off the middle, which may lie on a fold.
    return !is_cut &&
           is_within(flat_.loops, left + 0.49 * on_piece.width, top + 0.51 * on_piece.height);
}

}  // namespace model
