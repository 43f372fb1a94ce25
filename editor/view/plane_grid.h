// The layout planes of a frame as a grid: lines where two planes meet, nodes where three meet,
// cells between six; and which of them lies under a pixel of the view.
#pragma once

#include "editor/derived.h"
#include "editor/view/view_state.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <glm/vec2.hpp>
#include <glm/vec3.hpp>

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace editor {

struct GridPlane {
    std::string name;
    model::Nm at = 0;  // in the frame
};

struct PlaneGrid {
    std::size_t frame = 0;        // in the project
    model::ResolvedFrame placed;  // as it was resolved
    // By axis, rising. Planes without a place are left out, and of those at one place all but the
    // first.
    std::array<std::vector<GridPlane>, 3> planes;

    const std::vector<GridPlane>& across(model::Axis axis) const {
        return planes[model::index_of(axis)];
    }
};

using GridNode = std::array<std::size_t, 3>;  // which plane across x, y and z

// A piece of a grid line, from one node to a later one.
struct GridSegment {
    model::Axis run = model::Axis::x;
    GridNode from{};
    std::size_t to = 0;  // which plane across `run`

    GridNode end() const {
        GridNode node = from;
        node[model::index_of(run)] = to;
        return node;
    }

    bool operator==(const GridSegment&) const = default;
};

// Between the planes of this node and the next ones along each axis.
struct GridCell {
    GridNode least{};

    bool operator==(const GridCell&) const = default;
};

// Empty where the frame was not resolved.
PlaneGrid plane_grid(const Derived& derived, std::size_t frame);

// The place of one of the frame's planes, also of one that the grid leaves out.
std::optional<model::Nm> place_of_plane(const model::Frame& frame,
                                        const PlaneGrid& grid,
                                        std::string_view plane);

model::Point point_of(const PlaneGrid& grid, const GridNode& node);

// In the room, mm.
glm::dvec3 in_room(const PlaneGrid& grid, const model::Point& in_frame);

// Between its outermost planes; empty where it has no nodes.
engine::SceneBounds outline_in_room(const PlaneGrid& grid);

// Between nodes that are next to each other, all of them.
std::vector<GridSegment> segments_of(const PlaneGrid& grid);
std::vector<GridNode> nodes_of(const PlaneGrid& grid);

// The line from the first plane across its run to the last one.
GridSegment whole_line(const PlaneGrid& grid, const GridSegment& segment);

// That from node to next node whose line comes nearest to the pixel, within `reach` pixels; of
// lines that lie on one another in the picture the one in front.
std::optional<GridSegment> segment_at(const PlaneGrid& grid,
                                      const ViewState& view,
                                      glm::dvec2 pixel,
                                      double reach);

std::optional<GridNode> node_at(const PlaneGrid& grid,
                                const ViewState& view,
                                glm::dvec2 pixel,
                                double reach);

// From where the pointer was pressed to where it is now, as a stretch of one line; it was pressed
// on the segment, or on a node, from which three lines run.
GridSegment stretch_to(const PlaneGrid& grid,
                       const ViewState& view,
                       const GridSegment& pressed,
                       const std::optional<GridNode>& pressed_node,
                       glm::dvec2 pixel);

// Where along the segment the pointer is: a place on the axis of its run.
std::optional<model::Nm> place_along(const PlaneGrid& grid,
                                     const ViewState& view,
                                     const GridSegment& segment,
                                     glm::dvec2 pixel);

// Those that the line of sight goes through, the nearest first.
std::vector<GridCell> cells_under(const PlaneGrid& grid, const ViewState& view, glm::dvec2 pixel);

}  // namespace editor
