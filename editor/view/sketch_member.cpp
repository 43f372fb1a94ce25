#include "editor/view/sketch_member.h"

#include "editor/by_name.h"
#include "editor/node_bars.h"

#include <algorithm>
#include <map>

namespace editor {
namespace {

using model::Axis;
using model::Nm;
using model::Sense;

struct Range {
    Nm least = 0;
    Nm most = 0;

    bool holds(Nm at) const { return least < at && at < most; }
};

using Space = std::array<Range, 3>;

std::optional<Range> range_of(const model::Frame& frame,
                              const PlaneGrid& grid,
                              const std::array<std::string, 2>& planes) {
    const auto a = place_of_plane(frame, grid, planes[0]);
    const auto b = place_of_plane(frame, grid, planes[1]);
    if (!a || !b) return std::nullopt;
    return Range{std::min(*a, *b), std::max(*a, *b)};
}

std::optional<Space> space_of(const model::Frame& frame,
                              const PlaneGrid& grid,
                              const model::Bay& bay) {
    const auto x = range_of(frame, grid, bay.x);
    const auto y = range_of(frame, grid, bay.y);
    const auto z = range_of(frame, grid, bay.z);
    if (!x || !y || !z) return std::nullopt;
    return Space{*x, *y, *z};
}

bool holds(const Space& space, const model::Point& at) {
    return space[0].holds(at[0]) && space[1].holds(at[1]) && space[2].holds(at[2]);
}

Space outline_of(const PlaneGrid& grid) {
    Space space;
    for (std::size_t k = 0; k < 3; ++k)
        space[k] = {grid.planes[k].front().at, grid.planes[k].back().at};
    return space;
}

std::vector<Space> spaces_of(const model::Frame& frame, const PlaneGrid& grid) {
    std::vector<Space> spaces;
    for (const auto& bay : frame.bays) {
        if (const auto space = space_of(frame, grid, bay)) spaces.push_back(*space);
    }
    if (spaces.empty()) spaces.push_back(outline_of(grid));
    return spaces;
}

// Whether the cabinet is there on each of the four sides of a line: [towards larger values of the
// first axis across the run][the same of the second].
using Sides = std::array<std::array<bool, 2>, 2>;

// Half-way to the next plane on that side; beyond the outermost one there is nothing.
std::optional<Nm> beside(const std::vector<GridPlane>& planes, std::size_t plane, bool above) {
    if (above ? plane + 1 >= planes.size() : plane == 0) return std::nullopt;
    return (planes[plane].at + planes[above ? plane + 1 : plane - 1].at) / 2;
}

bool is_inside(const PlaneGrid& grid,
               const GridSegment& segment,
               const std::array<bool, 2>& above,
               const std::vector<Space>& spaces) {
    const auto cross = model::across(segment.run);
    const auto k = model::index_of(segment.run);
    model::Point at{};
    for (std::size_t i = 0; i < 2; ++i) {
        const auto c = model::index_of(cross[i]);
        const auto place = beside(grid.planes[c], segment.from[c], above[i]);
        if (!place) return false;
        at[c] = *place;
    }
    std::size_t inside = 0;
    for (std::size_t i = segment.from[k]; i < segment.to; ++i) {
        at[k] = (grid.planes[k][i].at + grid.planes[k][i + 1].at) / 2;
        if (std::ranges::any_of(spaces, [&](const Space& space) { return holds(space, at); }))
            ++inside;
    }
    return 2 * inside >= segment.to - segment.from[k];
}

Sides sides_of(const PlaneGrid& grid,
               const GridSegment& segment,
               const std::vector<Space>& spaces) {
    Sides sides{};
    for (const bool a : {false, true}) {
        for (const bool b : {false, true}) {
            sides[a ? 1 : 0][b ? 1 : 0] = is_inside(grid, segment, {a, b}, spaces);
        }
    }
    return sides;
}

int count_of(const Sides& sides) {
    int count = 0;
    for (const auto& row : sides) count += static_cast<int>(std::ranges::count(row, true));
    return count;
}

bool is_side(const Sides& sides, std::size_t axis, std::size_t above) {
    return axis == 0 ? sides[above][0] || sides[above][1] : sides[0][above] || sides[1][above];
}

// Between bays, as the starters do it (model/project/start_box.cpp): a rail's upright leg hangs
// below the shelf; a divider's own rail stands on the others.
Sense usual_sense(Axis run, Axis axis, bool stands_on_divider) {
    if (axis != Axis::z) return Sense::plus;
    return run == Axis::y && stands_on_divider ? Sense::plus : Sense::minus;
}

void point_legs(model::Member& member, const Sides& sides) {
    const auto cross = model::across(member.run);
    if (count_of(sides) == 3) {
        // A re-entrant edge: the metal is where the cabinet is not.
        for (std::size_t a = 0; a < 2; ++a) {
            for (std::size_t b = 0; b < 2; ++b) {
                if (sides[a][b]) continue;
                member.legs = {a == 1 ? Sense::plus : Sense::minus,
                               b == 1 ? Sense::plus : Sense::minus};
            }
        }
        member.seat = model::Seat::root;
        return;
    }
    const bool is_on_divider = is_side(sides, 0, 0) && is_side(sides, 0, 1);
    for (std::size_t axis = 0; axis < 2; ++axis) {
        const bool below = is_side(sides, axis, 0);
        const bool above = is_side(sides, axis, 1);
        member.legs[axis] = below == above ? usual_sense(member.run, cross[axis], is_on_divider)
                            : above        ? Sense::plus
                                           : Sense::minus;
    }
}

std::string free_bar_name(const model::Frame& frame, const std::string& wanted) {
    std::string name = wanted;
    for (int n = 2; is_taken(frame, name); ++n) name = wanted + " " + std::to_string(n);
    return name;
}

// As the starters call them: "post front left", "rail front top", "rail left top".
std::string usual_name(const model::Member& member) {
    if (member.run == Axis::z) return "post " + member.on[1] + " " + member.on[0];
    return "rail " + member.on[0] + " " + member.on[1];
}

}  // namespace

const model::Member* member_on(const model::Frame& frame,
                               const PlaneGrid& grid,
                               const GridSegment& segment) {
    const auto cross = model::across(segment.run);
    const auto k = model::index_of(segment.run);
    const Range wanted{grid.planes[k][segment.from[k]].at, grid.planes[k][segment.to].at};
    for (const auto& member : frame.members) {
        if (member.run != segment.run) continue;
        bool is_on_line = true;
        for (std::size_t i = 0; i < 2; ++i) {
            const auto c = model::index_of(cross[i]);
            is_on_line = is_on_line && place_of_plane(frame, grid, member.on[i]) ==
                                           grid.planes[c][segment.from[c]].at;
        }
        const auto range = range_of(frame, grid, {member.from, member.to});
        if (!is_on_line || !range) continue;
        if (range->least < wanted.most && wanted.least < range->most) return &member;
    }
    return nullptr;
}

model::Member new_member(const model::Frame& frame,
                         const PlaneGrid& grid,
                         const GridSegment& segment,
                         const std::string& stock) {
    const auto cross = model::across(segment.run);
    model::Member member{.stock = stock, .run = segment.run};
    for (std::size_t i = 0; i < 2; ++i) {
        member.on[i] = grid.across(cross[i])[segment.from[model::index_of(cross[i])]].name;
    }
    const auto& along = grid.across(segment.run);
    member.from = along[segment.from[model::index_of(segment.run)]].name;
    member.to = along[segment.to].name;
    auto sides = sides_of(grid, segment, spaces_of(frame, grid));
    if (count_of(sides) == 0) sides = sides_of(grid, segment, {outline_of(grid)});
    point_legs(member, sides);
    member.name = free_bar_name(frame, usual_name(member));
    return member;
}

std::string usual_stock_of(const model::Project& project, const model::Frame& frame) {
    std::map<std::string, int> uses;
    for (const auto& member : frame.members) ++uses[member.stock];
    const auto most = std::ranges::max_element(
        uses, [](const auto& a, const auto& b) { return a.second < b.second; });
    if (most != uses.end()) return most->first;
    return project.stock.empty() ? std::string() : project.stock.front().name;
}

const model::Bay* bay_at(const model::Frame& frame, const PlaneGrid& grid, const GridCell& cell) {
    model::Point middle{};
    for (std::size_t k = 0; k < 3; ++k) {
        const auto& planes = grid.planes[k];
        middle[k] = (planes[cell.least[k]].at + planes[cell.least[k] + 1].at) / 2;
    }
    for (const auto& bay : frame.bays) {
        const auto space = space_of(frame, grid, bay);
        if (space && holds(*space, middle)) return &bay;
    }
    return nullptr;
}

model::Bay new_bay(const PlaneGrid& grid, const GridCell& cell, std::string name) {
    const auto pair = [&](std::size_t k) {
        return std::array{grid.planes[k][cell.least[k]].name,
                          grid.planes[k][cell.least[k] + 1].name};
    };
    return {.name = std::move(name), .x = pair(0), .y = pair(1), .z = pair(2)};
}

}  // namespace editor
