#include "engine/drawing/hatch_lines.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace engine {
namespace {

constexpr double shortest_line = 1e-6;  // mm; what touches a corner is none

// The page turned so that the lines lie level: along a line, and across all of them.
class HatchFrame {
public:
    explicit HatchFrame(double angle_deg) {
        const double angle = angle_deg * std::numbers::pi / 180.0;
        cos_ = std::cos(angle);
        sin_ = std::sin(angle);
    }

    PagePoint turned(PagePoint p) const {
        return {p.x * cos_ - p.y * sin_, p.x * sin_ + p.y * cos_};
    }
    PagePoint on_page(PagePoint p) const {
        return {p.x * cos_ + p.y * sin_, p.y * cos_ - p.x * sin_};
    }

private:
    double cos_ = 1;
    double sin_ = 0;
};

struct HatchEdge {
    PagePoint low;  // across the lines
    PagePoint high;
};

std::vector<HatchEdge> turned_edges(const std::vector<std::vector<PagePoint>>& polygons,
                                    const HatchFrame& frame) {
    std::vector<HatchEdge> edges;
    for (const auto& polygon : polygons) {
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            PagePoint a = frame.turned(polygon[i]);
            PagePoint b = frame.turned(polygon[(i + 1) % polygon.size()]);
            if (a.y > b.y) std::swap(a, b);
            edges.push_back({a, b});
        }
    }
    return edges;
}

// Where the edges cross the line. An edge holds its low end and not its high one: a line through a
// corner then still goes in and out.
std::vector<double> crossings(const std::vector<HatchEdge>& edges, double across) {
    std::vector<double> along;
    for (const HatchEdge& edge : edges) {
        if (across < edge.low.y || across >= edge.high.y) continue;
        const double share = (across - edge.low.y) / (edge.high.y - edge.low.y);
        along.push_back(edge.low.x + share * (edge.high.x - edge.low.x));
    }
    std::sort(along.begin(), along.end());
    return along;
}

}  // namespace

std::vector<std::array<PagePoint, 2>> hatch_lines(
    const std::vector<std::vector<PagePoint>>& polygons, const Hatching& hatching) {
    const HatchFrame frame{hatching.angle_deg};
    const auto edges = turned_edges(polygons, frame);
    double lowest = std::numeric_limits<double>::max();
    double highest = std::numeric_limits<double>::lowest();
    for (const HatchEdge& edge : edges) {
        lowest = std::min(lowest, edge.low.y);
        highest = std::max(highest, edge.high.y);
    }
    std::vector<std::array<PagePoint, 2>> lines;
    for (double step = std::ceil(lowest / hatching.spacing); step * hatching.spacing < highest;
         step += 1.0) {
        const double across = step * hatching.spacing;
        const auto along = crossings(edges, across);
        for (std::size_t i = 0; i + 1 < along.size(); i += 2) {
            if (along[i + 1] - along[i] < shortest_line) continue;
            lines.push_back(
                {frame.on_page({along[i], across}), frame.on_page({along[i + 1], across})});
        }
    }
    return lines;
}

}  // namespace engine
