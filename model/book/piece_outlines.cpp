#include "model/book/piece_outlines.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace model {
namespace {

using engine::ConvexBody;
using engine::Vector;

constexpr double beside = 0.05;  // mm; how far beside an edge the piece is asked for

bool holds(const ConvexBody& body, const Vector& at) {
    return std::ranges::all_of(body.faces, [&](const engine::BodyFace& face) {
        return engine::height_above(face, at) <= 0.0;
    });
}

// The bodies of one piece, which together make it.
using Whole = std::span<const BodyOfPiece>;

bool holds(Whole whole, const Vector& at) {
    return std::ranges::any_of(whole, [&](const BodyOfPiece& it) { return holds(it.body, at); });
}

// Of the four places round a point of an edge, those in the piece tell: one, it ends there; three,
// it bends inwards; two side by side, its face goes straight on; four, the point lies within it.
bool is_outline(Whole whole, const Vector& at, const Vector& n1, const Vector& n2) {
    std::array<bool, 4> in{};
    for (std::size_t i = 0; i < 4; ++i) {
        const double one = i == 0 || i == 3 ? -beside : beside;
        const double two = i < 2 ? -beside : beside;
        in[i] =
            holds(whole,
                  engine::plus(at, engine::plus(engine::scaled(n1, one), engine::scaled(n2, two))));
    }
    const auto count = std::ranges::count(in, true);
    return count == 1 || count == 3 || (count == 2 && in[0] == in[2]);
}

// Where along an edge another body of the piece begins or ends, from 0 to 1, in order.
std::vector<double> breaks_of(Whole whole, const Vector& from, const Vector& along) {
    std::vector<double> breaks{0.0, 1.0};
    for (const auto& it : whole) {
        for (const auto& face : it.body.faces) {
            const double rise = engine::dot(face.normal, along);
            if (std::abs(rise) < 1e-9) continue;
            const double t = -engine::height_above(face, from) / rise;
            if (t > 1e-6 && t < 1.0 - 1e-6) breaks.push_back(t);
        }
    }
    std::ranges::sort(breaks);
    return breaks;
}

using Segments = std::vector<std::array<SeenPoint, 2>>;

Segments segments_of(const ConvexBody& body, Whole whole, const Sight& sight) {
    Segments outlines;
    for (const auto& edge : body.edges) {
        const auto& n1 = body.faces[edge.faces[0]].normal;
        const auto& n2 = body.faces[edge.faces[1]].normal;
        if (std::max(engine::dot(n1, sight.towards), engine::dot(n2, sight.towards)) < 1e-9)
            continue;
        const auto& from = body.corners[edge.corners[0]];
        const auto along = engine::minus(body.corners[edge.corners[1]], from);
        const auto breaks =
            whole.size() > 1 ? breaks_of(whole, from, along) : std::vector<double>{0.0, 1.0};
        std::optional<double> begun;
        for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
            const auto middle =
                engine::plus(from, engine::scaled(along, 0.5 * (breaks[i] + breaks[i + 1])));
            const bool is_drawn = whole.size() < 2 || is_outline(whole, middle, n1, n2);
            if (is_drawn && !begun) begun = breaks[i];
            const bool ends = begun && (!is_drawn || i + 2 == breaks.size());
            if (!ends) continue;
            const double end = is_drawn ? breaks[i + 1] : breaks[i];
            const auto p = seen_point(engine::plus(from, engine::scaled(along, *begun)), sight);
            const auto q = seen_point(engine::plus(from, engine::scaled(along, end)), sight);
            if (std::hypot(p[0] - q[0], p[1] - q[1]) > 1e-3) outlines.push_back({p, q});
            begun.reset();
        }
    }
    return outlines;
}

bool are_one(const SeenPoint& p, const SeenPoint& q) {
    return std::abs(p[0] - q[0]) < 1e-6 && std::abs(p[1] - q[1]) < 1e-6;
}

// Lines that hang together as one, each part of them once.
std::vector<std::vector<SeenPoint>> chained(Segments segments) {
    std::vector<std::vector<SeenPoint>> chains;
    while (!segments.empty()) {
        std::vector<SeenPoint> chain{segments.back()[0], segments.back()[1]};
        segments.pop_back();
        for (std::size_t i = 0; i < segments.size();) {
            const auto& [p, q] = segments[i];
            const bool goes_on = are_one(p, chain.back()) || are_one(q, chain.back());
            const SeenPoint next = are_one(p, chain.back()) ? q : p;
            if (goes_on && !are_one(next, chain[chain.size() - 2])) chain.push_back(next);
            if (!goes_on) {
                ++i;
                continue;
            }
            segments.erase(segments.begin() + static_cast<std::ptrdiff_t>(i));
            i = 0;
        }
        chains.push_back(std::move(chain));
    }
    return chains;
}

}  // namespace

std::vector<std::vector<SeenPoint>> outlines_of(const engine::ConvexBody& body,
                                                std::span<const BodyOfPiece> whole,
                                                const Sight& sight) {
    return chained(segments_of(body, whole, sight));
}

}  // namespace model
