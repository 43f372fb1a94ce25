#include "editor/view/plane_grid.h"

#include "editor/by_name.h"

#include <algorithm>

namespace editor {
namespace {

using model::Axis;

constexpr std::array axes{Axis::x, Axis::y, Axis::z};

bool has_nodes(const PlaneGrid& grid) {
    return std::ranges::none_of(grid.planes, [](const auto& planes) { return planes.empty(); });
}

void keep_one_at_each_place(std::vector<GridPlane>& planes) {
    std::ranges::stable_sort(planes, {}, &GridPlane::at);
    const auto is_same = [](const GridPlane& a, const GridPlane& b) { return a.at == b.at; };
    planes.erase(std::unique(planes.begin(), planes.end(), is_same), planes.end());
}

}  // namespace

PlaneGrid plane_grid(const Derived& derived, std::size_t frame) {
    PlaneGrid grid{.frame = frame};
    const auto& frames = derived.project->frames;
    if (frame >= frames.size() || frame >= derived.resolved.frames.size()) return grid;
    grid.placed = derived.resolved.frames[frame];
    const auto& stated = frames[frame].planes;
    for (std::size_t i = 0; i < stated.size() && i < grid.placed.planes.size(); ++i) {
        const auto& plane = grid.placed.planes[i];
        if (!plane.position) continue;
        grid.planes[model::index_of(plane.axis)].push_back({stated[i].name, *plane.position});
    }
    for (auto& planes : grid.planes) keep_one_at_each_place(planes);
    return grid;
}

std::optional<model::Nm> place_of_plane(const model::Frame& frame,
                                        const PlaneGrid& grid,
                                        std::string_view plane) {
    const auto* it = by_name(frame.planes, plane);
    if (it == nullptr) return std::nullopt;
    const auto i = static_cast<std::size_t>(it - frame.planes.data());
    return i < grid.placed.planes.size() ? grid.placed.planes[i].position : std::nullopt;
}

model::Point point_of(const PlaneGrid& grid, const GridNode& node) {
    model::Point point{};
    for (std::size_t k = 0; k < 3; ++k) point[k] = grid.planes[k][node[k]].at;
    return point;
}

glm::dvec3 in_room(const PlaneGrid& grid, const model::Point& in_frame) {
    constexpr double mm = 1.0 / static_cast<double>(engine::Length::nm_per_mm);
    const auto p = model::to_room(grid.placed, in_frame);
    return glm::dvec3(p[0], p[1], p[2]) * mm;
}

engine::SceneBounds outline_in_room(const PlaneGrid& grid) {
    engine::SceneBounds bounds;
    if (!has_nodes(grid)) return bounds;
    GridNode last{};
    for (std::size_t k = 0; k < 3; ++k) last[k] = grid.planes[k].size() - 1;
    bounds = engine::with_point(bounds, in_room(grid, point_of(grid, GridNode{})));
    return engine::with_point(bounds, in_room(grid, point_of(grid, last)));
}

std::vector<GridNode> nodes_of(const PlaneGrid& grid) {
    std::vector<GridNode> nodes;
    for (std::size_t z = 0; z < grid.planes[2].size(); ++z) {
        for (std::size_t y = 0; y < grid.planes[1].size(); ++y) {
            for (std::size_t x = 0; x < grid.planes[0].size(); ++x) nodes.push_back({x, y, z});
        }
    }
    return nodes;
}

std::vector<GridSegment> segments_of(const PlaneGrid& grid) {
    std::vector<GridSegment> segments;
    for (const auto& node : nodes_of(grid)) {
        for (const auto run : axes) {
            const auto next = node[model::index_of(run)] + 1;
            if (next < grid.across(run).size()) segments.push_back({run, node, next});
        }
    }
    return segments;
}

GridSegment whole_line(const PlaneGrid& grid, const GridSegment& segment) {
    GridSegment line = segment;
    line.from[model::index_of(line.run)] = 0;
    line.to = has_nodes(grid) ? grid.across(line.run).size() - 1 : 0;
    return line;
}

}  // namespace editor
