#include "model/project/step_over_edges.h"

#include <algorithm>
#include <utility>

namespace model {

namespace {

// What is left round a line: [side of the first plane][side of the second].
using Quadrants = std::array<std::array<bool, 2>, 2>;

// A root's leg reaches past its line by less than a heel's, so it must not be set in behind a rail
// that ends at the same corner: too little would be left of its laps with the posts there.
constexpr int rank_of_y_roots = 15;

Sense sense_of(std::size_t side) { return side == 1 ? Sense::plus : Sense::minus; }

// How a stretch of a line is framed.
struct Edge {
    Seat seat = Seat::heel;
    std::array<Sense, 2> legs{};

    bool operator==(const Edge&) const = default;
};

// A line along the notch.
struct Line {
    Axis run;
    std::array<std::size_t, 2> axis;
    std::array<std::size_t, 2> index;  // of its planes, in FrameCells::at
    std::array<Nm, 2> on;
};

class Edges {
public:
    explicit Edges(const Stepping& it) : it_{it} {}

    std::vector<Member> find() {
        for (const Axis run : {Axis::x, Axis::y, Axis::z}) along(run);
        std::stable_partition(found_.begin(), found_.end(),
                              [](const Member& m) { return m.seat == Seat::root; });
        return std::move(found_);
    }

private:
    void along(Axis run) {
        const auto [b, c] = across(run);
        const auto& at_b = it_.left.at(index_of(b));
        const auto& at_c = it_.left.at(index_of(c));
        for (std::size_t i = 0; i < at_b.size(); ++i) {
            for (std::size_t k = 0; k < at_c.size(); ++k) {
                const Line line{run, {index_of(b), index_of(c)}, {i, k}, {at_b[i], at_c[k]}};
                if (is_on_notch(line)) walk(line);
            }
        }
    }

    bool is_on_notch(const Line& line) const {
        bool is_on_side = false;
        for (std::size_t i = 0; i < 2; ++i) {
            const Nm least = it_.notch.box.lo[line.axis[i]];
            const Nm most = it_.notch.box.hi[line.axis[i]];
            if (line.on[i] < least || line.on[i] > most) return false;
            is_on_side = is_on_side || line.on[i] == least || line.on[i] == most;
        }
        return is_on_side;
    }

    // One member for each run of stretches that are framed alike.
    void walk(const Line& line) {
        const std::size_t run = index_of(line.run);
        const auto& at = it_.left.at(run);
        std::optional<Edge> now;
        Nm begun = 0;
        for (std::size_t k = 0; k < at.size(); ++k) {  // from position k to k + 1
            const bool is_last = k + 1 == at.size();
            const bool is_beside =
                !is_last && it_.notch.box.lo[run] <= at[k] && at[k + 1] <= it_.notch.box.hi[run];
            const auto next = is_beside ? edge(line, k + 1) : std::nullopt;
            if (next == now) continue;
            if (now) add(line, *now, begun, at[k]);
            now = next;
            begun = at[k];
        }
    }

    std::optional<Edge> edge(const Line& line, std::size_t cell) const {
        Quadrants filled{};
        std::size_t count = 0;
        for (std::size_t s = 0; s < 2; ++s) {
            for (std::size_t t = 0; t < 2; ++t) {
                std::array<std::size_t, 3> at{};
                at[index_of(line.run)] = cell;
                at[line.axis[0]] = line.index[0] + s;
                at[line.axis[1]] = line.index[1] + t;
                filled[s][t] = it_.left.is_filled(at);
                count += filled[s][t] ? 1U : 0U;
            }
        }
        if (count == 1) return corner(filled, true, Seat::heel);
        if (count == 3) return corner(filled, false, Seat::root);
        if (count == 2) return end_of_wall(line, filled, cell);
        return std::nullopt;
    }

    // Legs go to the one quadrant that is, or is not, filled.
    static Edge corner(const Quadrants& filled, bool sought, Seat seat) {
        for (std::size_t s = 0; s < 2; ++s) {
            for (std::size_t t = 0; t < 2; ++t) {
                if (filled[s][t] == sought) return {seat, {sense_of(s), sense_of(t)}};
            }
        }
        return {};
    }

    // A wall inside of the frame ends on the notch here.
    std::optional<Edge> end_of_wall(const Line& line,
                                    const Quadrants& filled,
                                    std::size_t cell) const {
        for (std::size_t i = 0; i < 2; ++i) {  // i: across the notch's side, k: across the wall
            const std::size_t k = 1 - i;
            for (std::size_t s = 0; s < 2; ++s) {
                const bool both =
                    i == 0 ? filled[s][0] && filled[s][1] : filled[0][s] && filled[1][s];
                if (!both) continue;
                const Wall* wall = wall_at(it_, line.axis[k], line.on[k]);
                if (wall == nullptr || !reaches(*wall, line, i, s, cell)) return std::nullopt;
                Edge edge;
                edge.legs[i] = sense_of(s);
                edge.legs[k] = side_of(it_, *wall, line.run);
                return edge;
            }
        }
        return std::nullopt;
    }

    // Whether the wall stands beside the line on the side that is left.
    bool reaches(const Wall& wall,
                 const Line& line,
                 std::size_t i,
                 std::size_t side,
                 std::size_t cell) const {
        const std::size_t run = index_of(line.run);
        const auto& at = it_.left.at(run);
        const std::size_t axis = line.axis[i];
        return wall.extents.lo[run] <= at[cell - 1] && at[cell] <= wall.extents.hi[run] &&
               (side == 0
                    ? wall.extents.lo[axis] < line.on[i] && line.on[i] <= wall.extents.hi[axis]
                    : wall.extents.lo[axis] <= line.on[i] && line.on[i] < wall.extents.hi[axis]);
    }

    void add(const Line& line, const Edge& edge, Nm from, Nm to) {
        const std::size_t run = index_of(line.run);
        Member member{.run = line.run,
                      .on = {plane_at(it_, line.axis[0], line.on[0]),
                             plane_at(it_, line.axis[1], line.on[1])},
                      .from = plane_at(it_, run, from),
                      .to = plane_at(it_, run, to),
                      .legs = edge.legs,
                      .seat = edge.seat};
        if (edge.seat == Seat::root && line.run == Axis::y) member.rank = rank_of_y_roots;
        found_.push_back(std::move(member));
    }

    const Stepping& it_;
    std::vector<Member> found_;
};

}  // namespace

bool Wall::is_wall() const {
    int wide = 0;
    for (std::size_t k = 0; k < 3; ++k) wide += extents.lo[k] < extents.hi[k] ? 1 : 0;
    return wide == 2;
}

std::vector<Wall> walls_of(const Frame& frame, const FrameLayout& layout) {
    std::vector<Wall> walls;
    for (std::size_t m = 0; m < layout.lines.size(); ++m) {
        const MemberLine& line = layout.lines[m];
        for (std::size_t i = 0; i < 2; ++i) {
            const std::size_t axis = index_of(across(line.run)[i]);
            const auto found = std::ranges::find_if(walls, [&](const Wall& wall) {
                return wall.axis == axis && wall.at == line.on[i];
            });
            if (found == walls.end()) {
                walls.push_back({axis, line.on[i], frame.members[m].on[i], box_of(line), {m}});
                continue;
            }
            found->extents = engine::hull(found->extents, box_of(line));
            found->members.push_back(m);
        }
    }
    return walls;
}

const Wall* wall_at(const Stepping& it, std::size_t axis, Nm at) {
    const auto found = std::ranges::find_if(
        it.walls, [&](const Wall& wall) { return wall.axis == axis && wall.at == at; });
    return found == it.walls.end() || !found->is_wall() ? nullptr : &*found;
}

Sense side_of(const Stepping& it, const Wall& wall, Axis run) {
    std::array<int, 4> votes{};  // by how near to the rim the member lies: far, rim, run, both
    for (const std::size_t m : wall.members) {
        const MemberLine& line = it.layout.lines[m];
        const auto axes = across(line.run);
        const std::size_t own = index_of(axes[0]) == wall.axis ? 0 : 1;
        const std::size_t other = index_of(axes[1 - own]);
        const bool is_at_rim = line.on[1 - own] == wall.extents.lo[other] ||
                               line.on[1 - own] == wall.extents.hi[other];
        const std::size_t rank = (is_at_rim ? 2U : 0U) + (line.run == run ? 1U : 0U);
        votes[rank] += sign_of(line.inward[own]);
    }
    for (const std::size_t rank : {3U, 2U, 1U, 0U}) {
        if (votes[rank] != 0) return votes[rank] > 0 ? Sense::plus : Sense::minus;
    }
    return Sense::plus;
}

std::string plane_at(const Stepping& it, std::size_t axis, Nm at) {
    for (std::size_t side = 0; side < 2; ++side) {
        if (it.notch.is_closed(axis, side) && it.notch.at(axis, side) == at) {
            return it.notch.plane[axis][side];
        }
    }
    for (const Wall& wall : it.walls) {
        if (wall.axis == axis && wall.at == at) return wall.plane;
    }
    for (const Plane& plane : it.frame.planes) {
        if (index_of(plane.axis) == axis && it.layout.at(plane.name) == at) return plane.name;
    }
    return {};
}

std::vector<Member> edges_of_notch(const Stepping& it) { return Edges(it).find(); }

}  // namespace model
