#include "engine/geometry/bar_solid.h"

#include "engine/geometry/bar_section.h"
#include "engine/geometry/face_room.h"
#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace engine {
namespace {

using Corners = std::vector<std::uint32_t>;

// The corners above one node of the section, from the lowest to the highest.
struct Post {
    std::array<double, 6> z{};
    std::array<std::uint32_t, 6> corner{};
    std::uint32_t count = 0;
};

struct StraightFace {
    std::uint32_t first_node = 0;
    std::uint32_t side_count = 0;  // of the parted section
    Corners loop;
    std::vector<EdgeUse> rims;
};

struct AcceptedHole {
    CrossHole shape;
    std::array<std::uint32_t, 2> faces{};
};

}  // namespace

struct BarSolidWork {
    PartedSection section;
    std::vector<Post> posts;                   // by node
    std::vector<std::array<EdgeUse, 2>> arcs;  // by node, of the arc from there; at both ends
    std::vector<StraightFace> faces;
    std::vector<AcceptedHole> holes;
    std::vector<FacePoint> polygon;
    std::vector<bool> is_seen;
    std::vector<EdgeUse> loop;
};

namespace {

class Maker {
public:
    using Work = BarSolidWork;

    Maker(Work& work, Solid& solid, const BarShape& shape)
        : work_{work}, section_{work.section}, solid_{solid}, builder_{solid}, shape_{shape} {}

    bool make() {
        if (!raise_posts()) return false;
        make_arcs();
        lay_straight_faces();
        drill();
        write_straight_faces();
        write_cylinders();
        for (const auto& border : section_.borders) write_notch_walls(border);
        for (std::size_t end = 0; end < 2; ++end) write_end(end);
        return true;
    }

private:
    // ---- heights --------------------------------------------------------------------------------

    double back(std::uint32_t part, std::size_t end) const {
        return part == 0 ? 0.0 : shape_.notches[part - 1].back[end];
    }

    double height(std::uint32_t part, std::size_t end, const FacePoint& at) const {
        const auto& cut = shape_.cuts[end];
        const double from_end = cut.recedes + at[0] * cut.slope[0] + at[1] * cut.slope[1];
        return end == 0 ? from_end + back(part, end) : shape_.length - from_end - back(part, end);
    }

    bool raise_posts() {
        work_.posts.assign(section_.nodes.size(), {});
        for (std::uint32_t i = 0; i < section_.nodes.size(); ++i) {
            const auto& node = section_.nodes[i];
            if (!raise(i, node.part) || !raise(i, section_.nodes[node.previous].part)) return false;
            if (node.is_on_border && !raise(i, 0)) return false;
        }
        for (std::uint32_t i = 0; i < section_.nodes.size(); ++i) {
            auto& post = work_.posts[i];
            std::sort(post.z.begin(), post.z.begin() + post.count);
            const auto& at = section_.nodes[i].at;
            for (std::uint32_t k = 0; k < post.count; ++k)
                post.corner[k] = builder_.corner({at[0], at[1], post.z[k]});
        }
        return true;
    }

    bool raise(std::uint32_t node, std::uint32_t part) {
        auto& post = work_.posts[node];
        const auto& at = section_.nodes[node].at;
        const std::array<double, 2> z{height(part, 0, at), height(part, 1, at)};
        for (const double one : z) {
            const auto end = post.z.begin() + post.count;
            if (std::find(post.z.begin(), end, one) == end) post.z[post.count++] = one;
        }
        return z[1] - z[0] > least_gap;
    }

    std::uint32_t corner(std::uint32_t node, double z) const {
        const auto& post = work_.posts[node];
        const auto found = std::find(post.z.begin(), post.z.begin() + post.count, z);
        return post.corner[static_cast<std::size_t>(found - post.z.begin())];
    }

    std::uint32_t corner(std::uint32_t node, std::uint32_t part, std::size_t end) const {
        return corner(node, height(part, end, section_.nodes[node].at));
    }

    // From one height of a post to another; the corner at `from` is there already.
    void climb(Corners& loop, std::uint32_t node, double from, double to) const {
        const auto& post = work_.posts[node];
        if (from < to) {
            for (std::uint32_t k = 0; k < post.count; ++k)
                if (post.z[k] > from && post.z[k] <= to) loop.push_back(post.corner[k]);
        } else {
            for (std::uint32_t k = post.count; k-- > 0;)
                if (post.z[k] < from && post.z[k] >= to) loop.push_back(post.corner[k]);
        }
    }

    void climb(Corners& loop,
               std::uint32_t node,
               std::array<std::uint32_t, 2> parts,
               std::array<std::size_t, 2> ends) const {
        const auto& at = section_.nodes[node].at;
        climb(loop, node, height(parts[0], ends[0], at), height(parts[1], ends[1], at));
    }

    // ---- straight sides -------------------------------------------------------------------------

    void lay_straight_faces() {
        work_.faces.clear();
        const auto& nodes = section_.nodes;
        for (std::uint32_t i = 0; i < nodes.size(); ++i) {
            if (!nodes[i].starts_side || nodes[i].is_arc) continue;
            auto& face = work_.faces.emplace_back();
            face.first_node = i;
            std::uint32_t node = i;
            do {
                ++face.side_count;
                node = nodes[node].next;
            } while (!nodes[node].starts_side);
            face.loop = loop_of(face);
        }
    }

    Corners loop_of(const StraightFace& face) const {
        const auto& nodes = section_.nodes;
        Corners loop{corner(face.first_node, nodes[face.first_node].part, 0)};
        std::uint32_t node = face.first_node;
        for (std::uint32_t i = 0; i < face.side_count; ++i) {
            const auto part = nodes[node].part;
            node = nodes[node].next;
            loop.push_back(corner(node, part, 0));
            if (i + 1 < face.side_count) climb(loop, node, {part, nodes[node].part}, {0, 0});
        }
        auto part = nodes[nodes[node].previous].part;
        climb(loop, node, {part, part}, {0, 1});
        for (std::uint32_t i = 0; i < face.side_count; ++i) {
            node = nodes[node].previous;
            loop.push_back(corner(node, part, 1));
            if (i + 1 == face.side_count) break;
            const auto before = nodes[nodes[node].previous].part;
            climb(loop, node, {part, before}, {1, 1});
            part = before;
        }
        climb(loop, node, {part, part}, {1, 0});
        loop.pop_back();
        return loop;
    }

    void write_straight_faces() {
        for (const auto& face : work_.faces) {
            const auto& from = section_.nodes[face.first_node];
            const auto& to = section_.nodes[from.next];
            const double dx = to.at[0] - from.at[0];
            const double dy = to.at[1] - from.at[1];
            builder_.begin({.origin = {from.at[0], from.at[1], 0.0}, .axis = unit({dy, -dx, 0.0})});
            write(face.loop);
            for (const auto& rim : face.rims) {
                builder_.use(rim);
                builder_.end_loop();
            }
        }
    }

    void write(const Corners& loop) {
        for (std::size_t i = 0; i < loop.size(); ++i)
            builder_.use(builder_.line(loop[i], loop[(i + 1) % loop.size()]));
        builder_.end_loop();
    }

    // ---- holes ----------------------------------------------------------------------------------

    std::optional<std::uint32_t> face_at(const CrossHole& hole, double coordinate) {
        constexpr double same_place = 1e-6;
        const std::size_t other = 1U - hole.axis;
        for (std::uint32_t i = 0; i < work_.faces.size(); ++i) {
            const auto& face = work_.faces[i];
            const auto is_level = [&](std::uint32_t c) {
                return std::abs(solid_.corners[c][hole.axis] - coordinate) <= same_place;
            };
            if (!std::ranges::all_of(face.loop, is_level)) continue;
            work_.polygon.clear();
            for (const auto c : face.loop)
                work_.polygon.push_back({solid_.corners[c][2], solid_.corners[c][other]});
            const RoundHole round{{hole.along, hole.across}, hole.radius};
            if (is_inside(round.at, work_.polygon) && is_clear_of(round, work_.polygon)) return i;
        }
        return std::nullopt;
    }

    bool is_clear(const CrossHole& hole, const std::array<std::uint32_t, 2>& faces) const {
        return std::ranges::all_of(work_.holes, [&](const AcceptedHole& other) {
            if (other.faces[0] != faces[0] && other.faces[1] != faces[1]) return true;
            return is_clear_of(RoundHole{{hole.along, hole.across}, hole.radius},
                               {{other.shape.along, other.shape.across}, other.shape.radius});
        });
    }

    void drill() {
        work_.holes.clear();
        for (auto hole : shape_.holes) {
            if (!(hole.radius > least_gap) || hole.axis > 1) continue;
            if (hole.from > hole.to) std::swap(hole.from, hole.to);
            const auto first = face_at(hole, hole.from);
            const auto second = face_at(hole, hole.to);
            if (!first || !second || *first == *second) continue;
            if (!is_clear(hole, {*first, *second})) continue;
            work_.holes.push_back({hole, {*first, *second}});
            make_rims(work_.holes.back());
        }
        solid_.hole_count = static_cast<std::uint32_t>(work_.holes.size());
    }

    // The run and the way across make a circle that runs to the left seen against x or along y.
    void make_rims(const AcceptedHole& hole) {
        const std::size_t axis = hole.shape.axis;
        for (std::size_t i = 0; i < 2; ++i) {
            auto& face = work_.faces[hole.faces[i]];
            SolidEdge rim{.angle = 2.0 * std::numbers::pi};
            rim.centre[axis] = i == 0 ? hole.shape.from : hole.shape.to;
            rim.centre[1 - axis] = hole.shape.across;
            rim.centre[2] = hole.shape.along;
            rim.cosine = {0.0, 0.0, hole.shape.radius};
            rim.sine[1 - axis] = hole.shape.radius;
            rim.from = rim.to = builder_.corner(plus(rim.centre, rim.cosine));
            const auto made = builder_.arc(rim);
            const auto& from = section_.nodes[face.first_node];
            const auto& to = section_.nodes[from.next];
            const double outward = axis == 0 ? to.at[1] - from.at[1] : from.at[0] - to.at[0];
            const bool is_left = (axis == 0) == (outward < 0.0);
            face.rims.push_back(is_left ? reversed(made) : made);
        }
    }

    void write_cylinders() {
        std::vector<std::size_t> taken(work_.faces.size(), 0);
        for (const auto& hole : work_.holes) {
            SolidFace face{.kind = FaceKind::cylinder, .is_hollow = true};
            face.origin[1U - hole.shape.axis] = hole.shape.across;
            face.origin[2] = hole.shape.along;
            face.axis[hole.shape.axis] = 1.0;
            face.radius = hole.shape.radius;
            builder_.begin(face);
            for (const auto wall : hole.faces) {
                builder_.use(reversed(work_.faces[wall].rims[taken[wall]++]));
                builder_.end_loop();
            }
        }
        for (std::uint32_t i = 0; i < section_.nodes.size(); ++i)
            if (section_.nodes[i].is_arc) write_rounding(i);
    }

    // ---- roundings ------------------------------------------------------------------------------

    void make_arcs() {
        work_.arcs.assign(section_.nodes.size(), {});
        for (std::uint32_t i = 0; i < section_.nodes.size(); ++i) {
            if (!section_.nodes[i].is_arc) continue;
            for (std::size_t end = 0; end < 2; ++end) work_.arcs[i][end] = arc_over(i, end);
        }
    }

    EdgeUse arc_over(std::uint32_t index, std::size_t end) {
        const auto& node = section_.nodes[index];
        const auto& slope = shape_.cuts[end].slope;
        const double sign = end == 0 ? 1.0 : -1.0;
        const auto in_cut = [&](double x, double y) {
            return Vector{x, y, sign * (x * slope[0] + y * slope[1])};
        };
        const double x = node.at[0] - node.centre[0];
        const double y = node.at[1] - node.centre[1];
        const double turn = node.turn > 0.0 ? 1.0 : -1.0;
        return builder_.arc(
            {.from = corner(index, node.part, end),
             .to = corner(node.next, node.part, end),
             .centre = {node.centre[0], node.centre[1], height(node.part, end, node.centre)},
             .cosine = in_cut(x, y),
             .sine = in_cut(-turn * y, turn * x),
             .angle = std::abs(node.turn)});
    }

    void write_rounding(std::uint32_t index) {
        const auto& node = section_.nodes[index];
        builder_.begin(
            {.kind = FaceKind::cylinder,
             .is_hollow = node.turn < 0.0,
             .origin = {node.centre[0], node.centre[1], 0.0},
             .axis = {0.0, 0.0, 1.0},
             .radius = std::hypot(node.at[0] - node.centre[0], node.at[1] - node.centre[1])});
        builder_.use(work_.arcs[index][0]);
        write_climb(node.next, node.part, {0, 1});
        builder_.use(reversed(work_.arcs[index][1]));
        write_climb(index, node.part, {1, 0});
        builder_.end_loop();
    }

    void write_climb(std::uint32_t node, std::uint32_t part, std::array<std::size_t, 2> ends) {
        Corners chain{corner(node, part, ends[0])};
        climb(chain, node, {part, part}, ends);
        for (std::size_t i = 0; i + 1 < chain.size(); ++i)
            builder_.use(builder_.line(chain[i], chain[i + 1]));
    }

    // ---- notches and ends -----------------------------------------------------------------------

    // Of the metal that stays, looking into the notch.
    void write_notch_walls(const PartBorder& border) {
        for (std::size_t end = 0; end < 2; ++end) {
            if (!(back(border.part, end) > 0.0)) continue;
            const auto low = end == 0 ? 0U : border.part;
            const auto high = end == 0 ? border.part : 0U;
            const auto& from = section_.nodes[border.from].at;
            const auto& to = section_.nodes[border.to].at;
            Corners loop{corner(border.from, low, end), corner(border.to, low, end)};
            climb(loop, border.to, {low, high}, {end, end});
            loop.push_back(corner(border.from, high, end));
            climb(loop, border.from, {high, low}, {end, end});
            loop.pop_back();
            builder_.begin({.origin = {from[0], from[1], 0.0},
                            .axis = unit({to[1] - from[1], from[0] - to[0], 0.0})});
            write(loop);
        }
    }

    std::uint32_t level(std::uint32_t node, std::size_t end) const {
        const auto part = section_.nodes[node].part;
        return back(part, end) > 0.0 ? part : 0;
    }

    void write_end(std::size_t end) {
        work_.is_seen.assign(section_.nodes.size(), false);
        for (std::uint32_t i = 0; i < section_.nodes.size(); ++i) {
            if (work_.is_seen[i]) continue;
            const auto part = level(i, end);
            const bool is_outline = walk_end(i, part, end);
            if (is_outline) {
                const auto& slope = shape_.cuts[end].slope;
                const double z = height(part, end, {0.0, 0.0});
                builder_.begin({.origin = {0.0, 0.0, z},
                                .axis = unit({slope[0], slope[1], end == 0 ? -1.0 : 1.0})});
            }
            if (end == 0) {
                for (auto use = work_.loop.rbegin(); use != work_.loop.rend(); ++use)
                    builder_.use(reversed(*use));
            } else {
                for (const auto& use : work_.loop) builder_.use(use);
            }
            builder_.end_loop();
        }
    }

    // Round one loop of an end's face, the metal on the left; whether it is an outline.
    bool walk_end(std::uint32_t first, std::uint32_t part, std::size_t end) {
        const auto& nodes = section_.nodes;
        work_.loop.clear();
        work_.polygon.clear();
        std::uint32_t node = first;
        do {
            work_.polygon.push_back(nodes[node].at);
            if (level(node, end) == part) {
                work_.is_seen[node] = true;
                const auto next = nodes[node].next;
                work_.loop.push_back(nodes[node].is_arc ? work_.arcs[node][end]
                                                        : builder_.line(corner(node, part, end),
                                                                        corner(next, part, end)));
                node = next;
            } else {
                const auto across = section_.across_border(node, part, level(node, end));
                work_.loop.push_back(
                    builder_.line(corner(node, part, end), corner(across, part, end)));
                node = across;
            }
        } while (node != first && work_.loop.size() <= 2 * nodes.size());
        return twice_area(work_.polygon) > 0.0;
    }

    Work& work_;
    const PartedSection& section_;
    Solid& solid_;
    SolidBuilder builder_;
    const BarShape& shape_;
};

}  // namespace

BarSolids::BarSolids() : work_{std::make_unique<BarSolidWork>()} {}
BarSolids::~BarSolids() = default;

bool BarSolids::make(Solid& solid, const BarSection& section, const BarShape& shape) {
    bool is_made = part_section(work_->section, section, shape.notches);
    if (is_made) is_made = Maker{*work_, solid, shape}.make();
    if (!is_made) SolidBuilder{solid};
    return is_made;
}

}  // namespace engine
