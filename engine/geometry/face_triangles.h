// Triangles of a flat face: an outline and the holes in it, using only the points given.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

namespace engine {

using FacePoint = std::array<double, 2>;

// Cuts a face into triangles by a sweep from left to right that splits it into monotone parts
// (M. de Berg et al., Computational Geometry, 3rd edition, sections 3.2 and 3.3, from memory).
// Points that lie in rows and columns, the usual case of drilled bars, need no special care: the
// sweep takes points by x, then y. Keeps its working memory between faces.
class FaceTriangles {
public:
    // `points` (mm) holds closed loops one after the other; `loop_ends` says where each ends. The
    // outline runs counter-clockwise, holes clockwise; no loop crosses or touches itself or
    // another, none has fewer than three points. Gives three indices for each triangle,
    // counter-clockwise; valid until the next call. n points in h + 1 loops give n + 2 h - 2
    // triangles. Empty for loops that break these rules in a way that the sweep meets.
    std::span<const std::uint32_t> of(std::span<const FacePoint> points,
                                      std::span<const std::uint32_t> loop_ends);

private:
    using Id = std::uint32_t;
    enum class Side : std::uint8_t { lower, upper };

    // A monotone part that is being cut: points already passed that still lack triangles, all of
    // them but the first on one side.
    struct Part {
        std::vector<Id> waiting;
        Side side = Side::lower;
    };

    // What lies between two neighbouring boundaries at the sweep line. After two regions have
    // merged, it holds two parts until the next point tells where they are joined.
    struct Region {
        Id lower = 0;  // last point passed on the boundary below
        Id upper = 0;
        std::uint32_t part = 0;        // the lower one, where there are two
        std::uint32_t upper_part = 0;  // the same, where there is one
    };

    void link(std::span<const std::uint32_t> loop_ends);
    void collect_turns();
    bool sweep();
    bool take(Id turn);
    bool start(Id turn);
    bool split(Id turn);
    bool end(Id turn);
    bool merge(Id turn);

    bool advance(Region& region, Id until);
    void pass(Region& region, Id point, Side side);
    void push(std::uint32_t part, Id point, Side side);
    void fan(const Part& part, Id last);
    void finish(std::uint32_t part, Id last);
    void emit(Id a, Id b, Id c);
    std::uint32_t new_part(Id first);
    bool find_by_place(Id turn, std::size_t& found);
    bool find_by_upper_end(Id turn, std::size_t& found);

    bool is_before(Id a, Id b) const {
        const auto& p = points_[a];
        const auto& q = points_[b];
        return p[0] < q[0] || (p[0] == q[0] && p[1] < q[1]);
    }
    bool is_ear(Id a, Id b, Id c, Side side) const;
    double turn_of(Id a, Id b, Id c) const;

    std::span<const FacePoint> points_;
    std::vector<Id> next_;
    std::vector<Id> previous_;
    std::vector<Id> turns_;
    std::vector<Region> regions_;  // from the lowest to the highest
    std::vector<Part> parts_;
    std::vector<std::uint32_t> free_parts_;
    std::vector<std::uint32_t> triangles_;
    std::size_t index_count_ = 0;
};

}  // namespace engine
