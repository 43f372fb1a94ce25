#include "model/book/cut_faces.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

constexpr double near_enough = 1e-3;  // mm

double turn_of(const SeenPoint& p, const SeenPoint& q, const SeenPoint& at) {
    return (q[0] - p[0]) * (at[1] - p[1]) - (q[1] - p[1]) * (at[0] - p[0]);
}

// 1 where the corners go round anticlockwise, else -1.
double sense_of(const std::vector<SeenPoint>& face) {
    double twice = 0.0;
    for (std::size_t i = 0; i < face.size(); ++i) {
        const auto& p = face[i];
        const auto& q = face[(i + 1) % face.size()];
        twice += p[0] * q[1] - p[1] * q[0];
    }
    return twice < 0.0 ? -1.0 : 1.0;
}

bool touches(const std::vector<SeenPoint>& face, const SeenPoint& at) {
    const double sense = sense_of(face);
    for (std::size_t i = 0; i < face.size(); ++i) {
        const auto& p = face[i];
        const auto& q = face[(i + 1) % face.size()];
        const double length = std::hypot(q[0] - p[0], q[1] - p[1]);
        if (turn_of(p, q, at) * sense < -near_enough * length) return false;
    }
    return true;
}

// Appends what of an edge of one face lies along no other one.
void append_free(std::vector<std::array<SeenPoint, 2>>& edges,
                 const CutFaces& faces,
                 std::size_t own,
                 const std::array<SeenPoint, 2>& edge) {
    const auto& [from, to] = edge;
    const SeenPoint along{to[0] - from[0], to[1] - from[1]};
    const double squared = along[0] * along[0] + along[1] * along[1];
    if (squared < 1e-12) return;
    std::vector<double> breaks{0.0, 1.0};
    for (std::size_t k = 0; k < faces.size(); ++k) {
        if (k == own) continue;
        for (const auto& p : faces[k]) {
            const double t = ((p[0] - from[0]) * along[0] + (p[1] - from[1]) * along[1]) / squared;
            if (t > 1e-6 && t < 1.0 - 1e-6) breaks.push_back(t);
        }
    }
    std::ranges::sort(breaks);
    for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
        const auto at = [&](double t) {
            return SeenPoint{edge[0][0] + along[0] * t, edge[0][1] + along[1] * t};
        };
        const auto middle = at(0.5 * (breaks[i] + breaks[i + 1]));
        bool is_free = true;
        for (std::size_t k = 0; k < faces.size(); ++k)
            is_free = is_free && (k == own || !touches(faces[k], middle));
        if (is_free) edges.push_back({at(breaks[i]), at(breaks[i + 1])});
    }
}

}  // namespace

// What a body leaves in the plane, round its middle.
std::vector<SeenPoint> cut_through(const engine::ConvexBody& body, const CornerCut& cut) {
    std::vector<SeenPoint> points;
    for (const auto& edge : body.edges) {
        const auto& p = body.corners[edge.corners[0]];
        const auto& q = body.corners[edge.corners[1]];
        const double before = p[cut.away] - cut.at[cut.away];
        const double behind = q[cut.away] - cut.at[cut.away];
        if ((before < 0.0) == (behind < 0.0)) continue;
        const auto at =
            engine::plus(p, engine::scaled(engine::minus(q, p), before / (before - behind)));
        points.push_back({at[cut.across] - cut.at[cut.across], at[cut.drive] - cut.at[cut.drive]});
    }
    SeenPoint middle{};
    for (const auto& p : points)
        for (std::size_t i = 0; i < 2; ++i) middle[i] += p[i] / static_cast<double>(points.size());
    std::ranges::sort(points, {}, [&](const SeenPoint& p) {
        return std::atan2(p[1] - middle[1], p[0] - middle[0]);
    });
    return points;
}

std::vector<std::array<SeenPoint, 2>> edges_of(const CutFaces& faces) {
    std::vector<std::array<SeenPoint, 2>> edges;
    for (std::size_t f = 0; f < faces.size(); ++f) {
        const auto& face = faces[f];
        for (std::size_t i = 0; i < face.size(); ++i)
            append_free(edges, faces, f, {face[i], face[(i + 1) % face.size()]});
    }
    return edges;
}

}  // namespace model
