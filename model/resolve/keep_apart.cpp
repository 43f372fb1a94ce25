#include "model/resolve/keep_apart.h"

#include "engine/geometry/box_tree.h"
#include "model/resolve/fastener_body.h"
#include "model/resolve/lap_room.h"
#include "model/resolve/piece_subject.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <utility>

namespace model {
namespace {

using Bodies = std::vector<FastenerBody>;

Bodies bodies_of(const Catalogue& catalogue,
                 const LapPlan& plan,
                 std::span<const Piece> pieces,
                 const Centres& centres) {
    const Lap& lap = plan.lap;
    const Piece& upper = pieces[lap.upper];
    const Piece& lower = pieces[lap.lower];
    const std::size_t normal = lap.normal_axis;
    const auto wall = [&](bool of_upper) -> const Box& {
        return of_upper ? upper.plates[lap.upper_wall].box : lower.plates[lap.lower_wall].box;
    };
    const auto thickness = [&](const Box& box) { return box.hi[normal] - box.lo[normal]; };
    const int drive = plan.head_on_upper ? lap.towards_lower : -lap.towards_lower;
    const bool is_covered = lap.cover != no_index;
    const bool head_on_cover = is_covered && lap.covers_upper == plan.head_on_upper;
    const bool cover_is_far = is_covered && !head_on_cover;
    const auto cover = [&]() -> const Box& { return pieces[lap.cover].plates[0].box; };
    const Box& head = head_on_cover ? cover() : wall(plan.head_on_upper);
    const Box& far = cover_is_far ? cover() : wall(!plan.head_on_upper);
    const LapAxes axes = lap_axes(upper, lower, normal);

    const Nm stack = thickness(wall(true)) + thickness(wall(false)) + lap.gap +
                     (is_covered ? thickness(cover()) : 0);
    FastenerBody body{.shape = body_shape(catalogue, plan.fastener.spec, stack, thickness(far)),
                      .axis = lap.normal_axis,
                      .drive = static_cast<std::int8_t>(drive),
                      .grip = stack};
    body.at[normal] = drive > 0 ? head.lo[normal] : head.hi[normal];
    Bodies bodies;
    bodies.reserve(centres.size());
    for (const auto& centre : centres) {
        for (std::size_t k = 0; k < 2; ++k) {
            body.at[axes.axis[k]] = axes.heel[axes.axis[k]] + axes.sense[k] * centre[k];
        }
        bodies.push_back(body);
    }
    return bodies;
}

bool any_meet(const Bodies& a, const Bodies& b) {
    return std::ranges::any_of(a, [&](const FastenerBody& of_a) {
        return std::ranges::any_of(
            b, [&](const FastenerBody& of_b) { return bodies_meet(of_a, of_b); });
    });
}

// Of head and tail.
Nm widest_radius(const Catalogue& catalogue, const LapPlan& plan) {
    const auto shape = body_shape(catalogue, plan.fastener.spec, 0, 0);
    return std::max(shape.head_radius, shape.tail_radius);
}

// All that the fasteners of a lap can fill, wherever in it they go.
Box reach_of(const Catalogue& catalogue, const LapPlan& plan, std::span<const Piece> pieces) {
    const Lap& lap = plan.lap;
    const std::size_t normal = lap.normal_axis;
    Box reach = engine::hull(pieces[lap.upper].plates[lap.upper_wall].box,
                             pieces[lap.lower].plates[lap.lower_wall].box);
    if (lap.cover != no_index) {
        const Box& cover = pieces[lap.cover].plates[0].box;
        reach.lo[normal] = std::min(reach.lo[normal], cover.lo[normal]);
        reach.hi[normal] = std::max(reach.hi[normal], cover.hi[normal]);
    }
    const Nm stack = reach.hi[normal] - reach.lo[normal];
    // As if the far plate were of no thickness: no tail reaches further.
    const auto shape = body_shape(catalogue, plan.fastener.spec, stack, 0);
    const Nm aside = widest_radius(catalogue, plan);
    const Nm beyond = std::max(shape.head_height, shape.tail_length);
    for (std::size_t k = 0; k < 3; ++k) {
        const bool is_along = k == normal;
        reach.lo[k] = is_along ? reach.lo[k] - beyond : lap.rect.lo[k] - aside;
        reach.hi[k] = is_along ? reach.hi[k] + beyond : lap.rect.hi[k] + aside;
    }
    return reach;
}

// The laps of all frames by where their fasteners reach.
class LapsInSpace {
public:
    LapsInSpace(const Catalogue& catalogue,
                std::span<const LapPlan> plans,
                std::span<const Piece> pieces)
        : plans_{plans} {
        reach_.reserve(plans.size());
        for (const auto& plan : plans) {
            // Without a fastener nothing of it is in the way.
            const bool is_any = plan.layout.count > 0;
            reach_.push_back(is_any ? reach_of(catalogue, plan, pieces) : plan.lap.rect);
        }
        // Frames have axes of their own, and their plans follow one another.
        for (Index first = 0; first < plans.size();) {
            Index end = first;
            while (end < plans.size() && plans[end].frame == plans[first].frame) ++end;
            const auto reach = std::span<const Box>(reach_).subspan(first, end - first);
            trees_.emplace(plans[first].frame, Tree{first, engine::BoxTree(reach)});
            first = end;
        }
    }

    // The laps whose fasteners might meet those of this one, in order.
    void collect_near(Index number, std::vector<Index>& near) const {
        near.clear();
        const auto at = trees_.find(plans_[number].frame);
        if (at == trees_.end()) return;
        at->second.tree.for_each_touching(reach_[number], [&](Index i) {
            const Index other = at->second.first + i;
            if (other != number && plans_[other].layout.count > 0) near.push_back(other);
        });
        std::ranges::sort(near);
    }

private:
    std::span<const LapPlan> plans_;
    std::vector<Box> reach_;

    struct Tree {
        Index first = 0;
        engine::BoxTree tree;
    };
    std::map<Index, Tree> trees_;  // by frame
};

// One way to move all centres of a lap, in steps of some marks.
struct Move {
    std::array<Nm, 2> by{};
    int new_lines = 0;

    auto preference() const {
        return std::tuple(new_lines, std::abs(by[0]) + std::abs(by[1]), by[0], by[1]);
    }
};

class Mover {
public:
    Mover(const Catalogue& catalogue,
          std::span<const LapPlan> plans,
          std::span<const Piece> pieces,
          std::span<const Index> stocks_alike,
          std::vector<Centres>& centres)
        : catalogue_{catalogue},
          plans_{plans},
          pieces_{pieces},
          stocks_alike_{stocks_alike},
          centres_{centres},
          laps_{catalogue, plans, pieces} {
        bodies_.reserve(plans.size());
        for (Index i = 0; i < plans.size(); ++i) bodies_.push_back(bodies_at(i, centres[i]));
    }

    std::vector<LapPair> keep_apart() {
        std::vector<Index> stuck;
        for (Index i = 0; i < plans_.size(); ++i) {
            if (meets_any(i, bodies_[i]) && !move_clear(i)) stuck.push_back(i);
        }
        return pairs_of(stuck);
    }

private:
    Bodies bodies_at(Index plan, const Centres& centres) const {
        if (centres.empty()) return {};
        return bodies_of(catalogue_, plans_[plan], pieces_, centres);
    }

    bool meets_any(Index plan, const Bodies& bodies) {
        if (bodies.empty()) return false;
        laps_.collect_near(plan, near_);
        return meets_one_of(near_, bodies);
    }

    bool meets_one_of(const std::vector<Index>& near, const Bodies& bodies) const {
        return std::ranges::any_of(near,
                                   [&](Index other) { return any_meet(bodies, bodies_[other]); });
    }

    // `near_` holds the laps about it.
    bool move_clear(Index plan) {
        for (const auto& move : moves_of(plan)) {
            const Centres moved = after(move, plan);
            Bodies bodies = bodies_at(plan, moved);
            if (meets_one_of(near_, bodies)) continue;
            centres_[plan] = moved;
            bodies_[plan] = std::move(bodies);
            note_lines(plan);
            return true;
        }
        return false;
    }

    Centres after(const Move& move, Index plan) const {
        Centres moved = centres_[plan];
        const Nm step_length = plans_[plan].layout.marks.step * stride(plan);
        for (auto& centre : moved) {
            for (std::size_t k = 0; k < 2; ++k) centre[k] += move.by[k] * step_length;
        }
        return moved;
    }

    // More steps than this to one side are no better: on a finer tape each spans several marks.
    static constexpr Nm most_steps = 16;

    Nm width(Index plan) const { return 2 * widest_radius(catalogue_, plans_[plan]); }

    // How many marks one step of a move spans: a head's width is within reach.
    Nm stride(Index plan) const {
        const Nm step = plans_[plan].layout.marks.step;
        return std::max<Nm>(1, (width(plan) + step * most_steps - 1) / (step * most_steps));
    }

    // How far all centres may move in one direction, in steps: by a head's width at most, beyond
    // which nothing of the other can be in the way.
    std::array<Nm, 2> freedom(Index plan, std::size_t direction) const {
        const Layout& layout = plans_[plan].layout;
        if (layout.pattern == Pattern::points) return {0, 0};  // they have their own room
        const auto& centres = centres_[plan];
        const auto [least, most] = std::ranges::minmax_element(
            centres, {}, [&](const std::array<Nm, 2>& centre) { return centre[direction]; });
        const Nm step = layout.marks.step;
        const Nm phase = layout.marks.phase[direction];
        const Nm back = (*least)[direction] - phase - layout.least[direction] * step;
        const Nm on = layout.most[direction] * step + phase - (*most)[direction];
        const Nm step_length = step * stride(plan);
        return {-std::clamp<Nm>(back / step_length, 0, most_steps),
                std::clamp<Nm>(on / step_length, 0, most_steps)};
    }

    std::vector<Move> moves_of(Index plan) {
        if (lines_.empty()) {
            for (Index i = 0; i < plans_.size(); ++i) note_lines(i);
        }
        const auto u = freedom(plan, 0);
        const auto v = freedom(plan, 1);
        std::vector<Move> moves;
        for (Nm i = u[0]; i <= u[1]; ++i) {
            for (Nm j = v[0]; j <= v[1]; ++j) {
                if (i == 0 && j == 0) continue;
                Move move{.by = {i, j}};
                move.new_lines = new_lines(plan, after(move, plan));
                moves.push_back(move);
            }
        }
        std::ranges::sort(moves, {}, &Move::preference);
        return moves;
    }

    using Line = std::pair<Index, Nm>;  // a stock, and a gauge on it

    Line line_of(Index plan, std::size_t direction, const std::array<Nm, 2>& centre) const {
        const Lap& lap = plans_[plan].lap;
        const LapAxes axes = lap_axes(pieces_[lap.upper], pieces_[lap.lower], lap.normal_axis);
        const Index stock = axes.stock[direction];
        return {stock == no_index ? no_index : stocks_alike_[stock], centre[direction]};
    }

    void note_lines(Index plan) {
        for (const auto& centre : centres_[plan]) {
            for (std::size_t k = 0; k < 2; ++k) lines_.insert(line_of(plan, k, centre));
        }
    }

    int new_lines(Index plan, const Centres& centres) const {
        int count = 0;
        for (const auto& centre : centres) {
            for (std::size_t k = 0; k < 2; ++k) {
                count += lines_.contains(line_of(plan, k, centre)) ? 0 : 1;
            }
        }
        return count;
    }

    // One of a pair may have moved out of the way after the other found no place.
    std::vector<LapPair> pairs_of(const std::vector<Index>& stuck) {
        std::vector<LapPair> pairs;
        for (const Index plan : stuck) {
            laps_.collect_near(plan, near_);
            for (const Index other : near_) {
                if (!any_meet(bodies_[plan], bodies_[other])) continue;
                pairs.push_back({std::min(plan, other), std::max(plan, other)});
            }
        }
        std::ranges::sort(pairs);
        pairs.erase(std::unique(pairs.begin(), pairs.end()), pairs.end());
        return pairs;
    }

    const Catalogue& catalogue_;
    std::span<const LapPlan> plans_;
    std::span<const Piece> pieces_;
    std::span<const Index> stocks_alike_;
    std::vector<Centres>& centres_;
    LapsInSpace laps_;
    std::vector<Bodies> bodies_;
    std::set<Line> lines_;
    std::vector<Index> near_;
};

}  // namespace

std::vector<LapPair> keep_apart(const Catalogue& catalogue,
                                std::span<const LapPlan> plans,
                                std::span<const Piece> pieces,
                                std::span<const Index> stocks_alike,
                                std::vector<Centres>& centres) {
    return Mover(catalogue, plans, pieces, stocks_alike, centres).keep_apart();
}

void report_fasteners_that_meet(const Project& project,
                                std::span<const LapPair> joints,
                                Resolved& resolved) {
    for (const auto& [a, b] : joints) {
        const Frame& frame = project.frames[resolved.joints[a].frame];
        Finding finding{
            .code = "fasteners_meet",
            .severity = Severity::warning,
            .what = "a fastener of one of these joints would run into a fastener of the other",
            .mend =
                "ask for fewer fasteners in one of them, choose a smaller rivet, or give a "
                "wider leg"};
        for (const Index joint : {a, b}) {
            for (auto& subject : joint_subjects(frame, resolved, joint)) {
                finding.concerns.push_back(std::move(subject));
            }
        }
        resolved.findings.push_back(std::move(finding));
    }
}

}  // namespace model
