#include "editor/view/plane_tag_places.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace editor {
namespace {

using model::Axis;

constexpr double shortest_edge = 26.0;  // pixels: a shorter one is seen end on
constexpr float first_offset = 20.0F;   // between the outline and the nearest tag
constexpr int most_rows = 10;

// An edge of the outline along an axis, in pixels of the picture.
struct Edge {
    GridNode from{};
    glm::dvec2 a{0.0};
    glm::dvec2 z{0.0};
    glm::dvec2 outward{0.0};
};

class OnScreenPlanes {
public:
    OnScreenPlanes(const PlaneGrid& grid, const ViewState& view) : grid_{grid}, view_{view} {}

    std::optional<glm::dvec2> at(const model::Point& point) const {
        return engine::pixel_of(view_.camera, in_room(grid_, point), view_.viewport);
    }

    std::optional<glm::dvec2> middle() const {
        const auto box = outline_in_room(grid_);
        if (engine::is_empty(box)) return std::nullopt;
        return engine::pixel_of(view_.camera, (box.lo + box.hi) / 2.0, view_.viewport);
    }

private:
    const PlaneGrid& grid_;
    const ViewState& view_;
};

// The one of the four that lies outermost: lowest for edges that lie, leftmost for those that
// stand.
std::optional<Edge> outermost_edge(const PlaneGrid& grid, const OnScreenPlanes& seen, Axis axis) {
    const auto cross = model::across(axis);
    const auto k = model::index_of(axis);
    std::optional<Edge> best;
    double best_place = 0.0;
    for (const bool b_high : {false, true}) {
        for (const bool c_high : {false, true}) {
            GridNode from{};
            const auto b = model::index_of(cross[0]);
            const auto c = model::index_of(cross[1]);
            from[b] = b_high ? grid.planes[b].size() - 1 : 0;
            from[c] = c_high ? grid.planes[c].size() - 1 : 0;
            GridNode to = from;
            to[k] = grid.planes[k].size() - 1;
            const auto p = seen.at(point_of(grid, from));
            const auto q = seen.at(point_of(grid, to));
            if (!p || !q) continue;
            const double place = axis == Axis::z ? -(p->x + q->x) : p->y + q->y;
            if (best && place <= best_place) continue;
            best_place = place;
            best = Edge{from, *p, *q, {}};
        }
    }
    return best;
}

std::optional<Edge> edge_of(const PlaneGrid& grid, const OnScreenPlanes& seen, Axis axis) {
    auto edge = outermost_edge(grid, seen, axis);
    const auto middle = seen.middle();
    if (!edge || !middle) return std::nullopt;
    const auto along = edge->z - edge->a;
    const double length = glm::length(along);
    if (length < shortest_edge) return std::nullopt;
    edge->outward = {-along.y / length, along.x / length};
    if (glm::dot(edge->outward, *middle - edge->a) > 0.0) edge->outward = -edge->outward;
    return edge;
}

bool stand_apart(const Area& a, const Area& b) {
    const float gap = scaled(3);
    return a.x + a.width + gap <= b.x || b.x + b.width + gap <= a.x ||
           a.y + a.height + gap <= b.y || b.y + b.height + gap <= a.y;
}

bool is_within(const Area& tag, const Area& area) {
    return tag.x >= area.x && tag.y >= area.y && tag.x + tag.width <= area.x + area.width &&
           tag.y + tag.height <= area.y + area.height;
}

// The further out the later, and at each distance as near to its anchor as there is room.
Area place_of(
    ImVec2 anchor, ImVec2 outward, ImVec2 size, const Area& area, const std::vector<Area>& taken) {
    std::optional<Area> first;
    const ImVec2 along{-outward.y, outward.x};
    for (int row = 0; row < most_rows; ++row) {
        const float away = scaled(first_offset) + static_cast<float>(row) * (size.y + scaled(4));
        for (const float aside : {0.0F, 0.5F, -0.5F, 1.0F, -1.0F}) {
            const ImVec2 middle{anchor.x + outward.x * (away + size.x / 2 * std::abs(outward.x)) +
                                    along.x * aside * size.y,
                                anchor.y + outward.y * (away + size.y / 2 * std::abs(outward.y)) +
                                    along.y * aside * size.y};
            const Area tag{middle.x - size.x / 2, middle.y - size.y / 2, size.x, size.y};
            if (!first) first = tag;
            const bool is_free = std::ranges::all_of(
                taken, [&](const Area& other) { return stand_apart(tag, other); });
            if (is_free && is_within(tag, area)) return tag;
        }
    }
    return *first;
}

}  // namespace

std::vector<PlaneTag> plane_tags(const PlaneGrid& grid,
                                 const ViewState& view,
                                 const Area& area,
                                 float pixel_scale,
                                 std::vector<Area> taken,
                                 const std::function<ImVec2(const GridPlane&)>& size_of) {
    std::vector<PlaneTag> tags;
    // Without a plane across some axis no line of the grid goes anywhere.
    if (std::ranges::any_of(grid.planes, [](const auto& planes) { return planes.empty(); }))
        return tags;
    const OnScreenPlanes seen(grid, view);
    for (const auto axis : {Axis::x, Axis::y, Axis::z}) {
        const auto k = model::index_of(axis);
        const auto edge = edge_of(grid, seen, axis);
        if (!edge) continue;
        const double mm =
            static_cast<double>(grid.planes[k].back().at - grid.planes[k].front().at) / 1.0e6;
        for (const auto& plane : grid.planes[k]) {
            auto point = point_of(grid, edge->from);
            point[k] = plane.at;
            const auto pixel = seen.at(point);
            if (!pixel) continue;
            PlaneTag tag{.axis = axis, .plane = plane};
            tag.anchor = {area.x + static_cast<float>(pixel->x) / pixel_scale,
                          area.y + static_cast<float>(pixel->y) / pixel_scale};
            const ImVec2 outward{static_cast<float>(edge->outward.x),
                                 static_cast<float>(edge->outward.y)};
            tag.at = place_of(tag.anchor, outward, size_of(plane), area, taken);
            tag.pixels_per_mm = (edge->z - edge->a) / mm;
            taken.push_back(tag.at);
            tags.push_back(tag);
        }
    }
    return tags;
}

}  // namespace editor
