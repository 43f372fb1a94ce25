#include "engine/geometry/plate_solid.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace engine {
namespace {

bool is_plate(const PlateShape& shape) {
    const auto& near = shape.near;
    const auto& far = shape.far != nullptr ? *shape.far : near;
    if (!(shape.thickness > least_gap) || near.empty() || far.size() != near.size()) return false;
    for (std::size_t i = 0; i < near.size(); ++i) {
        if (near[i].size() < 3 || far[i].size() != near[i].size()) return false;
        for (const auto* loop : {&near[i], &far[i]}) {
            const double area = twice_area(*loop);
            if (!(i == 0 ? area > 0.0 : area < 0.0)) return false;
        }
    }
    return true;
}

class Maker {
public:
    Maker(Solid& solid, const PlateShape& shape)
        : solid_{solid},
          builder_{solid},
          shape_{shape},
          far_{shape.far != nullptr ? *shape.far : shape.near} {}

    void make() {
        lay_corners();
        drill();
        write_face(0);
        write_face(1);
        for (std::size_t i = 0; i < shape_.near.size(); ++i) write_edges(i);
        for (const auto& rims : rims_) write_hole(rims);
    }

private:
    struct Rims {
        RoundHole hole;
        std::array<EdgeUse, 2> uses{};  // counter-clockwise seen from above
    };

    void lay_corners() {
        for (std::size_t face = 0; face < 2; ++face) {
            for (const auto& loop : face == 0 ? shape_.near : far_) {
                auto& corners = corners_[face].emplace_back();
                for (const auto& at : loop)
                    corners.push_back(builder_.corner({at[0], at[1], height(face)}));
            }
        }
    }

    double height(std::size_t face) const { return face == 0 ? 0.0 : shape_.thickness; }

    bool fits(const RoundHole& hole) const {
        if (!(hole.radius > least_gap)) return false;
        for (const auto* loops : {&shape_.near, &far_}) {
            for (std::size_t i = 0; i < loops->size(); ++i) {
                const auto& loop = (*loops)[i];
                if (is_inside(hole.at, loop) != (i == 0) || !is_clear_of(hole, loop)) return false;
            }
        }
        return std::ranges::all_of(
            rims_, [&](const Rims& other) { return is_clear_of(hole, other.hole); });
    }

    void drill() {
        for (const auto& hole : shape_.holes) {
            if (!fits(hole)) continue;
            Rims rims{.hole = hole};
            for (std::size_t face = 0; face < 2; ++face) {
                SolidEdge rim{.centre = {hole.at[0], hole.at[1], height(face)},
                              .cosine = {hole.radius, 0.0, 0.0},
                              .sine = {0.0, hole.radius, 0.0},
                              .angle = 2.0 * std::numbers::pi};
                rim.from = rim.to = builder_.corner(plus(rim.centre, rim.cosine));
                rims.uses[face] = builder_.arc(rim);
            }
            rims_.push_back(rims);
        }
        solid_.hole_count = static_cast<std::uint32_t>(rims_.size());
    }

    void write_face(std::size_t face) {
        builder_.begin(
            {.origin = {0.0, 0.0, height(face)}, .axis = {0.0, 0.0, face == 0 ? -1.0 : 1.0}});
        for (const auto& loop : corners_[face]) {
            const std::size_t count = loop.size();
            for (std::size_t i = 0; i < count; ++i) {
                const std::size_t from = face == 0 ? count - 1 - i : i;
                const std::size_t to = face == 0 ? (2 * count - 2 - i) % count : (i + 1) % count;
                builder_.use(builder_.line(loop[from], loop[to]));
            }
            builder_.end_loop();
        }
        for (const auto& rims : rims_) {
            builder_.use(face == 0 ? rims.uses[0] : reversed(rims.uses[1]));
            builder_.end_loop();
        }
    }

    void write_edges(std::size_t loop) {
        const auto& near = corners_[0][loop];
        const auto& far = corners_[1][loop];
        for (std::size_t i = 0; i < near.size(); ++i) {
            const std::size_t next = (i + 1) % near.size();
            const std::array<std::uint32_t, 4> round{near[i], near[next], far[next], far[i]};
            const auto& corners = solid_.corners;
            const auto across = cross(minus(corners[round[2]], corners[round[0]]),
                                      minus(corners[round[3]], corners[round[1]]));
            Vector middle{};
            for (const auto corner : round) middle = plus(middle, scaled(corners[corner], 0.25));
            builder_.begin({.origin = middle, .axis = unit(across)});
            for (std::size_t k = 0; k < 4; ++k)
                builder_.use(builder_.line(round[k], round[(k + 1) % 4]));
            builder_.end_loop();
        }
    }

    void write_hole(const Rims& rims) {
        builder_.begin({.kind = FaceKind::cylinder,
                        .is_hollow = true,
                        .origin = {rims.hole.at[0], rims.hole.at[1], 0.0},
                        .axis = {0.0, 0.0, 1.0},
                        .radius = rims.hole.radius});
        builder_.use(reversed(rims.uses[0]));
        builder_.end_loop();
        builder_.use(rims.uses[1]);
        builder_.end_loop();
    }

    Solid& solid_;
    SolidBuilder builder_;
    const PlateShape& shape_;
    const PlateLoops& far_;
    std::array<std::vector<std::vector<std::uint32_t>>, 2> corners_;
    std::vector<Rims> rims_;
};

double turn_of(const FacePoint& a, const FacePoint& b, const FacePoint& c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

bool is_between(const FacePoint& at, const FacePoint& a, const FacePoint& b) {
    return std::min(a[0], b[0]) <= at[0] && at[0] <= std::max(a[0], b[0]) &&
           std::min(a[1], b[1]) <= at[1] && at[1] <= std::max(a[1], b[1]);
}

struct Side {
    FacePoint from{};
    FacePoint to{};
};

bool meet(const Side& a, const Side& b) {
    const double from = turn_of(a.from, a.to, b.from);
    const double to = turn_of(a.from, a.to, b.to);
    const double back_from = turn_of(b.from, b.to, a.from);
    const double back_to = turn_of(b.from, b.to, a.to);
    if (((from > 0.0 && to < 0.0) || (from < 0.0 && to > 0.0)) &&
        ((back_from > 0.0 && back_to < 0.0) || (back_from < 0.0 && back_to > 0.0)))
        return true;
    return (from == 0.0 && is_between(b.from, a.from, a.to)) ||
           (to == 0.0 && is_between(b.to, a.from, a.to)) ||
           (back_from == 0.0 && is_between(a.from, b.from, b.to)) ||
           (back_to == 0.0 && is_between(a.to, b.from, b.to));
}

// Neighbours may share their corner, and nothing else.
bool fold_back(const Side& a, const Side& b) {
    const double ahead = (a.to[0] - a.from[0]) * (b.to[0] - b.from[0]) +
                         (a.to[1] - a.from[1]) * (b.to[1] - b.from[1]);
    return turn_of(a.from, a.to, b.to) == 0.0 && !(ahead > 0.0);
}

}  // namespace

bool make_plate(Solid& solid, const PlateShape& shape) {
    if (!is_plate(shape)) {
        SolidBuilder{solid};
        return false;
    }
    Maker{solid, shape}.make();
    return true;
}

bool make_box(Solid& solid, const std::array<double, 3>& size) {
    const PlateLoops loops{{{0.0, 0.0}, {size[0], 0.0}, {size[0], size[1]}, {0.0, size[1]}}};
    return make_plate(solid, {.near = loops, .thickness = size[2], .holes = {}});
}

bool is_simple(const PlateLoops& loops) {
    std::vector<Side> sides;
    std::vector<std::size_t> next;
    for (const auto& loop : loops) {
        const std::size_t first = sides.size();
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const bool is_last = i + 1 == loop.size();
            sides.push_back({loop[i], loop[is_last ? 0 : i + 1]});
            next.push_back(is_last ? first : first + i + 1);
        }
    }
    for (std::size_t i = 0; i < sides.size(); ++i) {
        if (fold_back(sides[i], sides[next[i]])) return false;
        for (std::size_t k = i + 1; k < sides.size(); ++k) {
            if (next[i] != k && next[k] != i && meet(sides[i], sides[k])) return false;
        }
    }
    return true;
}

}  // namespace engine
