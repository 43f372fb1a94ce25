#include "editor/scan_placing.h"

#include "engine/geometry/vectors.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>

namespace editor {
namespace {

using engine::Vector;

constexpr double degree = std::numbers::pi / 180.0;

constexpr double least_mm = 1.0;

bool are_apart(const Vector& a, const Vector& b) {
    return engine::length_of(engine::minus(a, b)) > least_mm;
}

// Whether the third lies far enough beside the line of the other two to say where the floor is.
bool is_beside(const Vector& a, const Vector& b, const Vector& third) {
    const auto along = engine::minus(b, a);
    const auto across = engine::cross(along, engine::minus(third, a));
    return engine::length_of(across) > least_mm * engine::length_of(along);
}

// With a point as decimal sign, whatever the locale: only digits are written.
std::string decimal(double value, const char* unit) {
    const auto millionths = std::llround(std::abs(value) * 1e6);
    const auto digits = std::to_string(millionths % 1'000'000);
    return (value < 0.0 && millionths > 0 ? "-" : "") + std::to_string(millionths / 1'000'000) +
           "." + std::string(6 - digits.size(), '0') + digits + unit;
}

}  // namespace

std::optional<model::ScannedObstacle> placed_by(model::ScannedObstacle scan,
                                                const std::vector<Vector>& points) {
    if (points.size() != 3) return std::nullopt;
    if (!are_apart(points[1], points[0])) return std::nullopt;
    if (!is_beside(points[0], points[1], points[2])) return std::nullopt;
    const auto along = engine::minus(points[1], points[0]);
    const auto across = engine::cross(along, engine::minus(points[2], points[0]));
    // The room's axes, seen in the scan's: the rows of the turn from the scan into the room.
    const auto x = engine::unit(along);
    const auto z = engine::unit(across);
    const auto y = engine::cross(z, x);
    // It is a turn about X, then about Y, then about Z.
    std::array<double, 3> turn{std::atan2(z[1], z[2]), std::atan2(-z[0], std::hypot(x[0], y[0])),
                               std::atan2(y[0], x[0])};
    // A quarter turn about Y: the other two turn about one line, so one of them is enough.
    constexpr double along_one_line = 1e-9;
    if (std::hypot(x[0], y[0]) < along_one_line) {
        turn[0] = std::atan2(-y[2], y[1]);
        turn[2] = 0.0;
    }
    for (std::size_t k = 0; k < 3; ++k) scan.turn[k] = decimal(turn[k] / degree, " deg");
    const std::array rows{x, y, z};
    for (std::size_t k = 0; k < 3; ++k) {
        scan.at[k] = decimal(-engine::dot(rows[k], points[0]), " mm");
    }
    return scan;
}

void pick(ScanPlacing& placing, const Vector& point) {
    auto& points = placing.points;
    placing.trouble.clear();
    if (points.size() == 1 && !are_apart(points[0], point)) {
        placing.trouble = "That is the first point once more";
    } else if (points.size() == 2 && !is_beside(points[0], points[1], point)) {
        placing.trouble = "That point lies in one line with the other two";
    } else {
        points.push_back(point);
    }
}

std::string placing_words(const ScanPlacing& placing) {
    switch (placing.points.size()) {
        case 0:
            return "Click the point of the scan that is to be X 0, Y 0, Z 0: a corner on the floor";
        case 1:
            return "Click a point of it straight across the van from there, along X";
        default:
            return "Click a third point on the floor, further along the van";
    }
}

}  // namespace editor
