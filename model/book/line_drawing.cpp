#include "model/book/line_drawing.h"

#include "engine/geometry/vectors.h"
#include "model/book/convex_hull.h"
#include "model/book/paint_order.h"
#include "model/book/piece_outlines.h"
#include "model/book/short_dashes.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace model {
namespace {

using engine::Vector;

SeenBody seen_body(const BodyOfPiece& it, std::span<const BodyOfPiece> whole, const Sight& sight) {
    SeenBody seen{.piece = it.piece};
    for (const auto& face : it.body.faces) {
        if (engine::dot(face.normal, sight.towards) < 1e-9) continue;
        std::vector<SeenPoint> polygon;
        for (std::uint16_t i = 0; i < face.count; ++i) {
            const auto corner = it.body.loops[static_cast<std::size_t>(face.first) + i];
            polygon.push_back(seen_point(it.body.corners[corner], sight));
        }
        seen.faces.push_back(std::move(polygon));
    }
    std::vector<SeenPoint> corners;
    for (const auto& corner : it.body.corners) corners.push_back(seen_point(corner, sight));
    seen.round = convex_hull(std::move(corners));
    seen.outlines = outlines_of(it.body, whole, sight);
    return seen;
}

bool is_in(const std::vector<SeenPoint>& polygon, const SeenPoint& at) {
    int turns = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const auto& p = polygon[i];
        const auto& q = polygon[(i + 1) % polygon.size()];
        const double turn = (q[0] - p[0]) * (at[1] - p[1]) - (q[1] - p[1]) * (at[0] - p[0]);
        if (turn == 0.0) return false;
        turns += turn > 0.0 ? 1 : -1;
    }
    return static_cast<std::size_t>(std::abs(turns)) == polygon.size() && !polygon.empty();
}

double area_of(const std::vector<SeenPoint>& face) {
    double twice = 0.0;
    for (std::size_t i = 0; i < face.size(); ++i) {
        const auto& p = face[i];
        const auto& q = face[(i + 1) % face.size()];
        twice += p[0] * q[1] - p[1] * q[0];
    }
    return std::abs(twice) / 2;
}

// Between two opposite sides of a face of four corners: at a share of its length and in its middle
// across.
SeenPoint in_face(const std::vector<SeenPoint>& face, double share) {
    const auto mid = [](const SeenPoint& a, const SeenPoint& b, double t) {
        return SeenPoint{a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t};
    };
    if (face.size() != 4) {
        SeenPoint sum{};
        for (const auto& p : face)
            for (std::size_t i = 0; i < 2; ++i) sum[i] += p[i] / static_cast<double>(face.size());
        return mid(sum, face.front(), share - 0.5);
    }
    const auto length = [&](std::size_t i) {
        return std::hypot(face[(i + 1) % 4][0] - face[i][0], face[(i + 1) % 4][1] - face[i][1]);
    };
    const std::size_t first = length(0) + length(2) >= length(1) + length(3) ? 0 : 1;
    const auto one = mid(face[first], face[first + 1], share);
    const auto two = mid(face[(first + 3) % 4], face[first + 2], share);
    return mid(one, two, 0.5);
}

// Those of a piece that look at the viewer, the largest first.
std::vector<const std::vector<SeenPoint>*> faces_of(std::span<const SeenBody> seen, Index piece) {
    std::vector<const std::vector<SeenPoint>*> faces;
    for (const auto& body : seen) {
        if (body.piece != piece) continue;
        for (const auto& face : body.faces) faces.push_back(&face);
    }
    std::ranges::stable_sort(faces, std::greater<>{},
                             [](const auto* face) { return area_of(*face); });
    return faces;
}

// Shares of a face's length, the middle first.
constexpr std::array<double, 7> along_face{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8};

std::vector<engine::PagePoint> placed(const std::vector<SeenPoint>& points, const OnPage& place) {
    std::vector<engine::PagePoint> on_page;
    for (const auto& p : points) on_page.push_back(place(p));
    return on_page;
}

}  // namespace

Sight corner_sight() {
    // From before, to the right and above: an axonometric picture in which no two of a box's faces
    // look alike. Turned 32 deg about the upright, tilted by 24 deg.
    const double turn = 32.0 * 0.017453292519943295;
    const double tilt = 24.0 * 0.017453292519943295;
    Sight sight;
    sight.right = {std::cos(turn), std::sin(turn), 0.0};
    sight.towards = {std::sin(turn) * std::cos(tilt), -std::cos(turn) * std::cos(tilt),
                     std::sin(tilt)};
    sight.up = engine::cross(sight.towards, sight.right);
    return sight;
}

SeenPoint seen_point(const Vector& at, const Sight& sight) {
    return {engine::dot(at, sight.right), engine::dot(at, sight.up)};
}

std::vector<SeenBody> seen_bodies(std::span<const BodyOfPiece> bodies, const Sight& sight) {
    // Bodies of a piece stand one behind the other.
    std::vector<std::pair<std::size_t, std::size_t>> whole(bodies.size());
    for (std::size_t i = 0; i < bodies.size();) {
        std::size_t end = i;
        while (end < bodies.size() && bodies[end].piece == bodies[i].piece) ++end;
        for (std::size_t k = i; k < end; ++k) whole[k] = {i, end - i};
        i = end;
    }
    std::vector<SeenBody> seen;
    for (const auto i : paint_order(bodies, sight)) {
        seen.push_back(
            seen_body(bodies[i], bodies.subspan(whole[i].first, whole[i].second), sight));
    }
    return seen;
}

SeenBounds bounds_of(std::span<const SeenBody> seen) {
    SeenBounds bounds;
    bool is_first = true;
    for (const auto& body : seen) {
        for (const auto& face : body.faces) {
            for (const auto& p : face) {
                if (is_first) bounds = {p, p};
                is_first = false;
                for (std::size_t i = 0; i < 2; ++i) {
                    bounds.lo[i] = std::min(bounds.lo[i], p[i]);
                    bounds.hi[i] = std::max(bounds.hi[i], p[i]);
                }
            }
        }
    }
    return bounds;
}

OnPage fitted(const SeenBounds& bounds, const engine::PageBox& box) {
    const double across = std::max(bounds.width(), 1e-3);
    const double down = std::max(bounds.height(), 1e-3);
    OnPage place{.scale = std::min(box.width / across, box.height / down)};
    place.origin = {box.left + box.width / 2 - place.scale * (bounds.lo[0] + bounds.hi[0]) / 2,
                    box.top + box.height / 2 + place.scale * (bounds.lo[1] + bounds.hi[1]) / 2};
    return place;
}

void draw_seen(engine::Page& page,
               std::span<const SeenBody> seen,
               const OnPage& place,
               const std::vector<bool>& bold) {
    const auto on_page = [&](const auto& points) { return placed(points, place); };
    for (const auto& body : seen) {
        const bool is_bold = body.piece < bold.size() && bold[body.piece];
        if (!bold.empty() && !is_bold) {
            page.draw_polygon(on_page(body.round), {.pen = engine::Pen{.width = engine::thin_width},
                                                    .fill = engine::Ink::white});
            continue;
        }
        page.draw_polygon(on_page(body.round),
                          engine::filled(is_bold ? engine::Ink::grey_25 : engine::Ink::white));
        for (const auto& line : body.outlines) {
            page.draw_polyline(on_page(line),
                               {.width = is_bold ? engine::wide_width : engine::narrow_width});
        }
    }
}

void draw_hidden(engine::Page& page,
                 std::span<const SeenBody> seen,
                 const OnPage& place,
                 Index piece) {
    std::vector<std::array<engine::PagePoint, 2>> dashes;
    for (const auto& body : seen) {
        if (body.piece != piece) continue;
        for (const auto& line : body.outlines) append_short_dashes(dashes, placed(line, place));
    }
    page.draw_lines(std::move(dashes), {.width = engine::wide_width});
}

std::optional<Index> piece_at(std::span<const SeenBody> seen, const SeenPoint& at) {
    for (auto body = seen.rbegin(); body != seen.rend(); ++body) {
        for (const auto& face : body->faces)
            if (is_in(face, at)) return body->piece;
    }
    return std::nullopt;
}

std::vector<SeenPoint> places_to_point_at(std::span<const SeenBody> seen, Index piece) {
    const auto faces = faces_of(seen, piece);
    std::vector<SeenPoint> places;
    const auto append_at = [&](const std::vector<SeenPoint>& face, double share) {
        const auto at = in_face(face, share);
        if (piece_at(seen, at) == piece) places.push_back(at);
    };
    for (const auto* face : faces) {
        for (const double share : along_face) append_at(*face, share);
        if (!places.empty()) return places;
    }
    for (const auto* face : faces)
        for (const double share : {0.1, 0.9, 0.04, 0.96}) append_at(*face, share);
    return places;
}

std::vector<SeenPoint> places_of_hidden(std::span<const SeenBody> seen, Index piece) {
    const auto faces = faces_of(seen, piece);
    std::vector<SeenPoint> places;
    if (faces.empty()) return places;
    for (const double share : along_face) places.push_back(in_face(*faces.front(), share));
    return places;
}

bool is_hidden(std::span<const SeenBody> seen, Index piece) {
    constexpr std::size_t found_among =
        8;  // one place in so many is found at a glance, from trying
    std::size_t count = 0;
    std::size_t shown = 0;
    for (const auto* face : faces_of(seen, piece)) {
        for (const double share : along_face) {
            ++count;
            if (piece_at(seen, in_face(*face, share)) == piece) ++shown;
        }
    }
    return count > 0 && shown * found_among < count;
}

}  // namespace model
