// What of a plane grid lies under the pointer.
#include "editor/view/plane_grid.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

namespace editor {
namespace {

using model::Axis;

constexpr double shortest_seen = 10.0;  // pixels: a shorter line is seen end on
constexpr double as_near = 2.0;         // pixels: what lies on one another in the picture

// How near a line comes to a pixel.
struct Nearness {
    double pixels = 0.0;
    double depth = 0.0;  // mm before the eye, where it is nearest
};

double depth_of(const ViewState& view, const glm::dvec3& place) {
    return glm::dot(place - engine::eye_of(view.camera), engine::forward_of(view.camera));
}

std::optional<Nearness> nearness_of(const PlaneGrid& grid,
                                    const ViewState& view,
                                    const GridSegment& segment,
                                    glm::dvec2 pixel) {
    const auto from = in_room(grid, point_of(grid, segment.from));
    const auto to = in_room(grid, point_of(grid, segment.end()));
    const auto a = engine::pixel_of(view.camera, from, view.viewport);
    const auto z = engine::pixel_of(view.camera, to, view.viewport);
    if (!a || !z) return std::nullopt;
    const auto along = *z - *a;
    const double length = glm::length(along);
    if (length < shortest_seen) return std::nullopt;
    const double t = std::clamp(glm::dot(pixel - *a, along) / (length * length), 0.0, 1.0);
    return Nearness{glm::distance(pixel, *a + along * t),
                    depth_of(view, from) * (1.0 - t) + depth_of(view, to) * t};
}

// The nearest one; of those that are nearly as near, the one in front.
template <class Thing>
struct Nearest {
    std::vector<std::pair<Thing, Nearness>> all;

    void add(const Thing& thing, const std::optional<Nearness>& nearness, double reach) {
        if (nearness && nearness->pixels <= reach) all.emplace_back(thing, *nearness);
    }

    std::optional<Thing> best() const {
        double least = std::numeric_limits<double>::max();
        for (const auto& one : all) least = std::min(least, one.second.pixels);
        const std::pair<Thing, Nearness>* found = nullptr;
        for (const auto& one : all) {
            if (one.second.pixels > least + as_near) continue;
            if (found == nullptr || one.second.depth < found->second.depth - 1e-6) found = &one;
        }
        return found == nullptr ? std::nullopt : std::optional(found->first);
    }
};

std::optional<Nearness> nearness_of(const PlaneGrid& grid,
                                    const ViewState& view,
                                    const GridNode& node,
                                    glm::dvec2 pixel) {
    const auto place = in_room(grid, point_of(grid, node));
    const auto at = engine::pixel_of(view.camera, place, view.viewport);
    if (!at) return std::nullopt;
    return Nearness{glm::distance(pixel, *at), depth_of(view, place)};
}

// The segments of the line on which a segment lies.
std::vector<GridSegment> along_line(const PlaneGrid& grid, const GridSegment& segment) {
    std::vector<GridSegment> line;
    const auto k = model::index_of(segment.run);
    for (std::size_t i = 0; i + 1 < grid.planes[k].size(); ++i) {
        GridSegment one = segment;
        one.from[k] = i;
        one.to = i + 1;
        line.push_back(one);
    }
    return line;
}

// From a node on the line to the far end of the segment, seen from there.
GridSegment stretch(GridSegment part, std::size_t node) {
    const auto k = model::index_of(part.run);
    if (node <= part.from[k]) {
        part.from[k] = node;
    } else {
        part.to = std::max(node, part.to);
    }
    return part;
}

GridSegment joined(GridSegment a, const GridSegment& b) {
    const auto k = model::index_of(a.run);
    a.from[k] = std::min(a.from[k], b.from[k]);
    a.to = std::max(a.to, b.to);
    return a;
}

// A ray in the frame's own axes, mm.
engine::Ray in_frame(const PlaneGrid& grid, const engine::Ray& ray) {
    engine::Ray own;
    const auto start = ray.origin - in_room(grid, {});
    for (int k = 0; k < 3; ++k) {
        std::array<int, 3> unit{};
        unit[static_cast<std::size_t>(k)] = 1;
        const auto d = model::direction_to_room(grid.placed, unit);
        const glm::dvec3 axis(d[0], d[1], d[2]);
        own.origin[k] = glm::dot(start, axis);
        own.direction[k] = glm::dot(ray.direction, axis);
    }
    return own;
}

// Where the ray goes into a box and out of it; none where it passes by or the box lies behind.
std::optional<double> way_into(const engine::Ray& ray, const glm::dvec3& lo, const glm::dvec3& hi) {
    double enters = 0.0;
    double leaves = std::numeric_limits<double>::max();
    for (int k = 0; k < 3; ++k) {
        if (std::abs(ray.direction[k]) < 1e-12) {
            if (ray.origin[k] < lo[k] || ray.origin[k] > hi[k]) return std::nullopt;
            continue;
        }
        const double a = (lo[k] - ray.origin[k]) / ray.direction[k];
        const double b = (hi[k] - ray.origin[k]) / ray.direction[k];
        enters = std::max(enters, std::min(a, b));
        leaves = std::min(leaves, std::max(a, b));
    }
    return enters < leaves ? std::optional(enters) : std::nullopt;
}

glm::dvec3 in_mm(const model::Point& p) { return glm::dvec3(p[0], p[1], p[2]) / 1.0e6; }

}  // namespace

std::optional<GridSegment> segment_at(const PlaneGrid& grid,
                                      const ViewState& view,
                                      glm::dvec2 pixel,
                                      double reach) {
    Nearest<GridSegment> nearest;
    for (const auto& segment : segments_of(grid)) {
        nearest.add(segment, nearness_of(grid, view, segment, pixel), reach);
    }
    return nearest.best();
}

std::optional<GridNode> node_at(const PlaneGrid& grid,
                                const ViewState& view,
                                glm::dvec2 pixel,
                                double reach) {
    Nearest<GridNode> nearest;
    for (const auto& node : nodes_of(grid)) {
        nearest.add(node, nearness_of(grid, view, node, pixel), reach);
    }
    return nearest.best();
}

GridSegment stretch_to(const PlaneGrid& grid,
                       const ViewState& view,
                       const GridSegment& pressed,
                       const std::optional<GridNode>& pressed_node,
                       glm::dvec2 pixel) {
    constexpr double anywhere = std::numeric_limits<double>::max();
    Nearest<GridSegment> nearest;
    const auto add_line = [&](const GridSegment& line) {
        for (const auto& one : along_line(grid, line)) {
            nearest.add(one, nearness_of(grid, view, one, pixel), anywhere);
        }
    };
    if (!pressed_node) {
        add_line(pressed);
        const auto now = nearest.best();
        return now ? joined(pressed, *now) : pressed;
    }
    for (const auto run : {Axis::x, Axis::y, Axis::z}) add_line({run, *pressed_node, 0});
    const auto now = nearest.best();
    return now ? stretch(*now, (*pressed_node)[model::index_of(now->run)]) : pressed;
}

// The point of the line that comes nearest to the line of sight.
std::optional<model::Nm> place_along(const PlaneGrid& grid,
                                     const ViewState& view,
                                     const GridSegment& segment,
                                     glm::dvec2 pixel) {
    const auto ray = in_frame(grid, engine::ray_through(view.camera, pixel, view.viewport));
    const auto k = model::index_of(segment.run);
    const auto axis = static_cast<int>(k);
    const auto start = in_mm(point_of(grid, segment.from));
    const auto between = start - ray.origin;
    const double slope = ray.direction[axis];
    const double apart = 1.0 - slope * slope;
    if (apart < 1e-9) return std::nullopt;  // seen end on
    const double along = (slope * glm::dot(between, ray.direction) - between[axis]) / apart;
    const auto at = static_cast<model::Nm>(std::llround((start[axis] + along) * 1.0e6));
    return std::clamp(at, grid.planes[k][segment.from[k]].at, grid.planes[k][segment.to].at);
}

std::vector<GridCell> cells_under(const PlaneGrid& grid, const ViewState& view, glm::dvec2 pixel) {
    const auto ray = in_frame(grid, engine::ray_through(view.camera, pixel, view.viewport));
    std::vector<std::pair<double, GridCell>> found;
    for (const auto& node : nodes_of(grid)) {
        GridNode next = node;
        for (auto& i : next) ++i;
        if (next[0] >= grid.planes[0].size() || next[1] >= grid.planes[1].size() ||
            next[2] >= grid.planes[2].size()) {
            continue;
        }
        const auto way = way_into(ray, in_mm(point_of(grid, node)), in_mm(point_of(grid, next)));
        if (way) found.emplace_back(*way, GridCell{node});
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<GridCell> cells;
    for (const auto& one : found) cells.push_back(one.second);
    return cells;
}

}  // namespace editor
