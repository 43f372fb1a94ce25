#include "model/assembly/piece_bodies.h"

#include "engine/geometry/vectors.h"
#include "model/resolve/flat_prism.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/piece_prisms.h"
#include "model/resolve/sheet_outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace model {
namespace {

using engine::Prism;
using engine::Vector;

// Squeezed towards its middle by `touch_mm` on each side.
Prism thinner(Prism prism, const engine::OrientedBox& around) {
    for (auto* face : {&prism.near, &prism.far}) {
        for (auto& corner : *face) {
            const Vector off = engine::minus(corner, around.centre);
            for (std::size_t k = 0; k < 3; ++k) {
                if (around.half[k] <= 2.0 * touch_mm) continue;
                const double by = engine::dot(off, around.axes[k]) * touch_mm / around.half[k];
                corner = engine::minus(corner, engine::scaled(around.axes[k], by));
            }
        }
    }
    return prism;
}

bool make_solid(PieceBody& body, const Prism& prism) {
    const auto whole = engine::solid_body(prism);
    if (!whole) return false;
    const auto solid = engine::solid_body(thinner(prism, whole->around));
    if (!solid) return false;
    body.solid = *solid;
    body.facets = engine::facets_of(body.solid);
    return true;
}

Prism prism_of(const Box& box) {
    Prism prism;
    for (const auto& [x, y] : {std::pair{0, 0}, {1, 0}, {1, 1}, {0, 1}}) {
        const double at_x = in_mm(x == 0 ? box.lo[0] : box.hi[0]);
        const double at_y = in_mm(y == 0 ? box.lo[1] : box.hi[1]);
        prism.near.push_back({at_x, at_y, in_mm(box.lo[2])});
        prism.far.push_back({at_x, at_y, in_mm(box.hi[2])});
    }
    return prism;
}

Box box_of(const Prism& prism) {
    Box box{{INT64_MAX, INT64_MAX, INT64_MAX}, {INT64_MIN, INT64_MIN, INT64_MIN}};
    for (const auto* face : {&prism.near, &prism.far}) {
        for (const auto& corner : *face) {
            for (std::size_t k = 0; k < 3; ++k) {
                box.lo[k] = std::min<Nm>(box.lo[k], std::llround(std::floor(corner[k] * 1e6)));
                box.hi[k] = std::max<Nm>(box.hi[k], std::llround(std::ceil(corner[k] * 1e6)));
            }
        }
    }
    return box;
}

// ---- outlines -----------------------------------------------------------------------------------

struct Edge {
    FlatPoint from{};
    FlatPoint to{};  // further along [0]

    double at(double u) const {
        return from[1] + (to[1] - from[1]) * (u - from[0]) / (to[0] - from[0]);
    }
};

void add_edges(const FlatPolygon& loop, std::vector<Edge>& edges, std::vector<double>& ends) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& a = loop[i];
        const auto& b = loop[(i + 1) % loop.size()];
        ends.push_back(a[0]);
        if (a[0] < b[0]) edges.push_back({a, b});
        if (b[0] < a[0]) edges.push_back({b, a});
    }
}

// A plate's outline between two straight cuts across it.
struct Strip {
    std::array<double, 2> u{};
    std::array<double, 2> low{};  // at both ends
    std::array<double, 2> high{};

    bool is_rectangle() const { return low[0] == low[1] && high[0] == high[1]; }
};

std::vector<Strip> strips_of(Piece piece, const Plate& plate, const Outline& outline) {
    piece.plates[0] = plate;  // the one that sheet_loop looks at
    std::vector<Edge> edges;
    std::vector<double> ends;
    add_edges(sheet_loop(piece, outline.corners), edges, ends);
    for (const auto& cut_out : outline.cut_outs) add_edges(sheet_loop(piece, cut_out), edges, ends);
    std::ranges::sort(ends);
    ends.erase(std::unique(ends.begin(), ends.end()), ends.end());
    std::vector<Strip> strips;
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        const std::array<double, 2> u{ends[i], ends[i + 1]};
        const double middle = (u[0] + u[1]) / 2.0;
        std::vector<const Edge*> across;
        for (const auto& edge : edges) {
            if (edge.from[0] <= u[0] && edge.to[0] >= u[1]) across.push_back(&edge);
        }
        std::ranges::stable_sort(across, {}, [&](const Edge* edge) { return edge->at(middle); });
        for (std::size_t k = 0; k + 1 < across.size(); k += 2) {
            strips.push_back({u,
                              {across[k]->at(u[0]), across[k]->at(u[1])},
                              {across[k + 1]->at(u[0]), across[k + 1]->at(u[1])}});
        }
    }
    return strips;
}

PieceBody body_of(const Strip& strip, const Plate& plate) {
    const std::size_t normal = plate.normal_axis;
    const auto axes = axes_across(normal);
    PieceBody body{.box = plate.box};
    body.box.lo[axes[0]] = std::llround(strip.u[0]);
    body.box.hi[axes[0]] = std::llround(strip.u[1]);
    body.box.lo[axes[1]] = std::llround(std::min(strip.low[0], strip.low[1]));
    body.box.hi[axes[1]] = std::llround(std::max(strip.high[0], strip.high[1]));
    if (strip.is_rectangle()) return body;
    const FlatPolygon corners{{strip.u[0], strip.low[0]},
                              {strip.u[1], strip.low[1]},
                              {strip.u[1], strip.high[1]},
                              {strip.u[0], strip.high[0]}};
    body.is_box = !make_solid(body, flat_prism(corners, plate, normal));
    return body;
}

// A wall that leans or ends on a slant.
PieceBody body_of(const Prism& prism, const Plate& plate) {
    PieceBody body{.box = box_of(prism)};
    body.is_box = !make_solid(body, prism);
    if (body.is_box) body.box = plate.box;
    return body;
}

}  // namespace

std::vector<PieceBody> bodies_of(const Slants& slants, const Piece& piece) {
    std::vector<PieceBody> bodies;
    const bool leans = slants.lean(piece);
    std::vector<Prism> prisms;
    if (is_oblique(piece, slants)) prisms = prisms_of(piece, slants);
    std::size_t next = 0;
    for (const auto& plate : piece.walls()) {
        if (plate.is_root_fillet) continue;
        const std::size_t prism = next++;
        if (!leans && plate.outline < slants.outlines.size()) {
            for (const auto& strip : strips_of(piece, plate, slants.outlines[plate.outline])) {
                auto body = body_of(strip, plate);
                if (!engine::is_empty(body.box)) bodies.push_back(std::move(body));
            }
        } else if (prism < prisms.size()) {
            bodies.push_back(body_of(prisms[prism], plate));
        } else {
            bodies.push_back({.box = plate.box});
        }
    }
    return bodies;
}

void add_solid(PieceBody& body) {
    if (body.solid.corners.empty()) make_solid(body, prism_of(body.box));
}

bool reaches_into(const Box& room, const std::vector<PieceBody>& bodies) {
    return std::ranges::any_of(bodies, [&](const PieceBody& body) {
        if (!engine::overlaps(room, body.box)) return false;
        if (body.is_box) return true;
        const auto solid =
            engine::convex_body({in_mm(room.lo[0]), in_mm(room.lo[1]), in_mm(room.lo[2])},
                                {in_mm(room.hi[0]), in_mm(room.hi[1]), in_mm(room.hi[2])});
        return engine::is_deeper(solid, body.solid, 0.0);
    });
}

}  // namespace model
