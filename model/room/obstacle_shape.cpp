#include "model/room/obstacle_shape.h"

#include "model/room/shapes.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <variant>

namespace model {
namespace {

constexpr double degree = std::numbers::pi / 180.0;

SolidObstacle solid_of(const BoxObstacle& box, const NamedValues& values) {
    const auto least = values.point(box.least);
    const auto most = values.point(box.most);
    if (!least || !most) return {};
    if (auto fault = fault_between(*least, *most); !fault.empty())
        return {.fault = std::move(fault)};
    engine::Prism prism;
    for (const auto& [x_hi, y_hi] :
         {std::pair{false, false}, {true, false}, {true, true}, {false, true}}) {
        const double x = mm_of((x_hi ? *most : *least)[0]);
        const double y = mm_of((y_hi ? *most : *least)[1]);
        prism.near.push_back({x, y, mm_of((*least)[2])});
        prism.far.push_back({x, y, mm_of((*most)[2])});
    }
    return {.bodies = {std::move(prism)}};
}

// Corners of a polygon that holds a circle's arc: where the lines that touch it at equal steps
// meet.
void add_arc_round(std::vector<std::array<double, 2>>& corners,
                   double radius,
                   double from,
                   double to,
                   std::size_t faces) {
    const double half = (to - from) / static_cast<double>(faces) / 2.0;
    for (std::size_t i = 0; i < faces; ++i) {
        const double at = from + half * (2.0 * static_cast<double>(i) + 1.0);
        const double out = radius / std::cos(half);
        corners.push_back({out * std::cos(at), out * std::sin(at)});
    }
}

SolidObstacle solid_of(const CylinderObstacle& cylinder, const NamedValues& values) {
    const auto foot = values.point(cylinder.foot);
    const auto radius = values.length(cylinder.radius);
    const auto length = values.length(cylinder.length);
    if (!foot || !radius || !length) return {};
    if (*radius < least_measure) return {.fault = "its radius is not above 0"};
    if (*length < least_measure) return {.fault = "its length is not above 0"};
    std::vector<std::array<double, 2>> circle;
    // A multiple of four, so that faces look along both axes and the cylinder is as wide as stated.
    const std::size_t enough = faces_round(mm_of(*radius), 2.0 * std::numbers::pi);
    const std::size_t faces = std::max<std::size_t>(8, (enough + 3) / 4 * 4);
    add_arc_round(circle, mm_of(*radius), 0.0, 2.0 * std::numbers::pi, faces);
    const std::size_t axis = index_of(cylinder.along);
    engine::Prism prism;
    for (const auto& corner : circle) {
        engine::Vector at{};
        at[axis] = mm_of((*foot)[axis]);
        for (std::size_t k = 0; k < 2; ++k) {
            const std::size_t across = (axis + 1 + k) % 3;
            at[across] = mm_of((*foot)[across]) + corner[k];
        }
        prism.near.push_back(at);
        at[axis] += mm_of(*length);
        prism.far.push_back(at);
    }
    return {.bodies = {std::move(prism)}};
}

// A sector of less than half a turn.
engine::Prism sector(const Point& hinge, double radius, double height, double from, double to) {
    std::vector<std::array<double, 2>> corners{{0.0, 0.0},
                                               {radius * std::cos(from), radius * std::sin(from)}};
    add_arc_round(corners, radius, from, to, faces_round(radius, to - from));
    corners.push_back({radius * std::cos(to), radius * std::sin(to)});
    engine::Prism prism;
    for (const auto& [x, y] : corners) {
        const double z = mm_of(hinge[2]);
        prism.near.push_back({mm_of(hinge[0]) + x, mm_of(hinge[1]) + y, z});
        prism.far.push_back({mm_of(hinge[0]) + x, mm_of(hinge[1]) + y, z + height});
    }
    return prism;
}

SolidObstacle solid_of(const DoorSwing& door, const NamedValues& values) {
    const auto hinge = values.point(door.hinge);
    const auto width = values.length(door.width);
    const auto height = values.length(door.height);
    const auto closed = values.angle(door.closed);
    const auto open = values.angle(door.open);
    if (!hinge || !width || !height || !closed || !open) return {};
    if (*width < least_measure) return {.fault = "the door's width is not above 0"};
    if (*height < least_measure) return {.fault = "the door's height is not above 0"};
    constexpr double turns = 3600.0;  // of so many degrees a double still tells a hair
    if (!(std::abs(*closed) <= turns && std::abs(*open) <= turns))
        return {.fault = "an angle of the door is beyond ten turns"};
    const auto [least, most] = std::minmax(*closed, *open);
    const double sweep = (most - least) * degree * mm_of(*width);  // at its free edge
    if (sweep < mm_of(least_measure)) return {.fault = "the door is as open as it is closed"};
    if (most - least > 360.0) return {.fault = "the door turns by more than a whole turn"};
    SolidObstacle solid;
    const auto parts = static_cast<int>(std::ceil((most - least) / 120.0));
    const double step = (most - least) / parts;
    for (int i = 0; i < parts; ++i) {
        solid.bodies.push_back(sector(*hinge, mm_of(*width), mm_of(*height),
                                      (least + step * i) * degree,
                                      (least + step * (i + 1)) * degree));
    }
    return solid;
}

SolidObstacle solid_of(const ScannedObstacle&, const NamedValues&) { return {}; }

}  // namespace

std::string fault_between(const Point& least, const Point& most) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (most[k] - least[k] >= least_measure) continue;
        return "its least corner does not lie below its most corner along " +
               std::string(1, "XYZ"[k]);
    }
    return {};
}

std::size_t faces_round(double radius, double angle, std::size_t most) {
    const double half = std::acos(1.0 / (1.0 + round_tolerance_mm / std::max(radius, 1e-3)));
    return static_cast<std::size_t>(
        std::clamp(std::ceil(std::abs(angle) / (2.0 * half)), 1.0, static_cast<double>(most)));
}

SolidObstacle obstacle_shape(const ObstacleShape& shape, const NamedValues& values) {
    return std::visit([&](const auto& one) { return solid_of(one, values); }, shape);
}

}  // namespace model
