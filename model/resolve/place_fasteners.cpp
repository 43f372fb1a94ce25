// The second half of fastening: plans become joints, fasteners, holes and shims.
#include "model/resolve/fasten.h"
#include "model/resolve/gauge_lines.h"
#include "model/resolve/keep_apart.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/lap_room.h"
#include "model/resolve/piece_holes.h"
#include "model/resolve/shim_room.h"
#include "model/resolve/slanted_end.h"

#include <algorithm>
#include <numeric>
#include <tuple>
#include <utility>

namespace model {
namespace {

bool has_shim(const LapPlan& plan) { return plan.lap.gap > 0 && plan.layout.count > 0; }

// Shims go behind the pieces of their frame; every plan's numbers follow.
std::vector<Index> put_in_shims(std::vector<LapPlan>& plans, Resolved& out) {
    std::vector<Index> shim_of(plans.size(), no_index);
    std::vector<Index> shims(out.frames.size(), 0);
    for (const auto& plan : plans) shims[plan.frame] += has_shim(plan) ? 1U : 0U;
    const Index total = std::accumulate(shims.begin(), shims.end(), Index{0});
    if (total == 0) return shim_of;

    std::vector<Piece> pieces;
    pieces.reserve(out.pieces.size() + total);
    std::vector<Index> moved_by(out.frames.size(), 0);
    std::vector<Index> next_shim(out.frames.size(), 0);
    for (Index f = 0; f < out.frames.size(); ++f) {
        ResolvedFrame& frame = out.frames[f];
        const auto begin = out.pieces.begin() + frame.first_piece;
        moved_by[f] = static_cast<Index>(pieces.size()) - frame.first_piece;
        frame.first_piece = static_cast<Index>(pieces.size());
        pieces.insert(pieces.end(), begin, begin + frame.piece_count);
        next_shim[f] = static_cast<Index>(pieces.size());
        pieces.resize(pieces.size() + shims[f]);
        frame.piece_count += shims[f];
    }
    for (std::size_t i = 0; i < plans.size(); ++i) {
        LapPlan& plan = plans[i];
        plan.lap.upper += moved_by[plan.frame];
        plan.lap.lower += moved_by[plan.frame];
        if (plan.lap.cover != no_index) plan.lap.cover += moved_by[plan.frame];
        if (!has_shim(plan)) continue;
        shim_of[i] = next_shim[plan.frame]++;
        pieces[shim_of[i]] = shim_piece(plan.lap, plan.frame);
    }
    out.pieces = std::move(pieces);
    return shim_of;
}

LineChoice line_choice(const LapPlan& plan,
                       const Resolved& out,
                       std::span<const Index> stocks_alike) {
    LineChoice choice{.layout = plan.layout};
    const LapAxes axes =
        lap_axes(out.pieces[plan.lap.upper], out.pieces[plan.lap.lower], plan.lap.normal_axis);
    for (std::size_t k = 0; k < 2; ++k) {
        if (axes.stock[k] != no_index) choice.stock[k] = stocks_alike[axes.stock[k]];
        choice.on_marks[k] = plan.layout.marks.phase[k] == 0;
    }
    return choice;
}

class Placer {
public:
    explicit Placer(Resolved& out) : out_{out} {}

    void place(const LapPlan& plan, Index shim, const Centres& centres) {
        Joint joint{.frame = plan.frame,
                    .pieces = {plan.lap.upper, plan.lap.lower},
                    .walls = {plan.lap.upper_wall, plan.lap.lower_wall},
                    .shim = shim,
                    .lap = plan.lap.rect,
                    .normal_axis = plan.lap.normal_axis,
                    .first_fastener = static_cast<Index>(out_.fasteners.size()),
                    .fastener_count = static_cast<Index>(centres.size()),
                    .wanted = plan.wanted,
                    .recipe = plan.lap.recipe,
                    .brace = plan.lap.cover,
                    .polygon = polygon_of(plan.lap)};
        const LapAxes axes = lap_axes(out_.pieces[plan.lap.upper], out_.pieces[plan.lap.lower],
                                      plan.lap.normal_axis);
        for (const auto& centre : centres) {
            Point at = plan.lap.rect.lo;
            for (std::size_t k = 0; k < 2; ++k) {
                at[axes.axis[k]] = axes.heel[axes.axis[k]] + axes.sense[k] * centre[k];
            }
            add_fastener(plan, shim, at);
        }
        out_.joints.push_back(joint);
    }

private:
    // The area in which a brace touches a member; none where a shim lies between.
    Index polygon_of(const Lap& lap) {
        if (!lap.is_of_brace || lap.gap > 0) return no_index;
        const auto axes = axes_across(lap.normal_axis);
        const Slants slants{out_.outlines, out_.leans};
        const Piece& upper = out_.pieces[lap.upper];
        const Piece& lower = out_.pieces[lap.lower];
        const bool upper_leans = slants.lean(upper);
        const auto wall = upper_leans ? wall_polygon(lower, lower.plates[lap.lower_wall])
                                      : wall_polygon(upper, upper.plates[lap.upper_wall]);
        out_.lap_polygons.push_back(
            common_polygon(leaning_wall(slants, upper_leans ? upper : lower, axes), wall));
        return static_cast<Index>(out_.lap_polygons.size() - 1);
    }

    // From the head on: the two walls, with a shim between them, and a brace on one of them.
    void add_stack(const LapPlan& plan, Index shim, Fastener& fastener) const {
        const Lap& lap = plan.lap;
        const auto add = [&](Index piece, std::uint8_t wall) {
            const Box& box = out_.pieces[piece].plates[wall].box;
            const Nm thickness = box.hi[lap.normal_axis] - box.lo[lap.normal_axis];
            fastener.stack[fastener.stack_count++] = {piece, wall, thickness};
            fastener.grip += thickness;
        };
        const bool upper_first = plan.head_on_upper;
        const bool is_covered = lap.cover != no_index;
        if (is_covered && lap.covers_upper == upper_first) add(lap.cover, 0);
        add(upper_first ? lap.upper : lap.lower, upper_first ? lap.upper_wall : lap.lower_wall);
        if (shim != no_index) add(shim, 0);
        add(upper_first ? lap.lower : lap.upper, upper_first ? lap.lower_wall : lap.upper_wall);
        if (is_covered && lap.covers_upper != upper_first) add(lap.cover, 0);
    }

    void add_fastener(const LapPlan& plan, Index shim, const Point& at) {
        const Lap& lap = plan.lap;
        Fastener fastener{.joint = static_cast<Index>(out_.joints.size()),
                          .spec = plan.fastener.spec,
                          .at = at,
                          .axis = lap.normal_axis,
                          .stack_count = 0};
        fastener.drive =
            static_cast<std::int8_t>(plan.head_on_upper ? lap.towards_lower : -lap.towards_lower);
        add_stack(plan, shim, fastener);
        const Box& head = out_.pieces[fastener.stack[0].piece].plates[fastener.stack[0].wall].box;
        fastener.at[lap.normal_axis] =
            fastener.drive > 0 ? head.lo[lap.normal_axis] : head.hi[lap.normal_axis];
        fastener.grip_least = plan.fastener.grip_least;
        fastener.grip_most = plan.fastener.grip_most;
        add_holes(plan, fastener);
        out_.fasteners.push_back(fastener);
    }

    // Whether its hole is drilled through another's.
    bool follows(const LapPlan& plan, Index piece) const {
        const Piece& of = out_.pieces[piece];
        const Index pattern = plan.head_on_upper ? plan.lap.upper : plan.lap.lower;
        return of.kind == PieceKind::shim || of.lean != no_index ||
               (plan.match_drilled && piece != pattern);
    }

    // The nearest of the stack that is drilled by itself. Such a one lines up with the nearest bar
    // that does not lean, or else with one that does; never with a shim, which follows both.
    Index mate_of(const LapPlan& plan, const Fastener& fastener, std::size_t of) const {
        const auto rank = [&](std::size_t i) {
            const Piece& piece = out_.pieces[fastener.stack[i].piece];
            const bool is_shim = piece.kind == PieceKind::shim;
            const bool is_led = follows(plan, fastener.stack[of].piece);
            const bool is_second_best =
                is_led ? follows(plan, fastener.stack[i].piece) : piece.lean != no_index;
            return std::tuple(is_shim, is_second_best, i > of ? i - of : of - i);
        };
        std::size_t best = of == 0 ? 1 : 0;
        for (std::size_t i = 0; i < fastener.stack_count; ++i) {
            if (i != of && rank(i) < rank(best)) best = i;
        }
        return fastener.stack[best].piece;
    }

    void add_holes(const LapPlan& plan, const Fastener& fastener) {
        for (std::size_t i = 0; i < fastener.stack_count; ++i) {
            const StackPlate& plate = fastener.stack[i];
            const Piece& piece = out_.pieces[plate.piece];
            const bool leans = piece.lean != no_index;
            Hole hole =
                leans ? hole_in(piece, out_.leans[piece.lean], plate.piece, plate.wall, fastener.at)
                      : hole_in(piece, plate.piece, plate.wall, fastener.at);
            const bool is_last = i + 1U == fastener.stack_count;
            const HoleMaking& made = is_last ? plan.fastener.far_hole : plan.fastener.head_hole;
            hole.operation =
                follows(plan, plate.piece) ? HoleOperation::match_drill : made.operation;
            hole.drill = made.drill;
            hole.diameter = made.diameter;
            hole.tap = made.tap;
            hole.fastener = static_cast<Index>(out_.fasteners.size());
            hole.mate = mate_of(plan, fastener, i);
            out_.holes.push_back(hole);
        }
    }

    Resolved& out_;
};

}  // namespace

std::vector<LapPair> place_fasteners(const Catalogue& catalogue,
                                     std::span<const Index> stocks_alike,
                                     std::vector<LapPlan> plans,
                                     Resolved& out) {
    const auto shim_of = put_in_shims(plans, out);
    std::vector<LineChoice> choices;
    choices.reserve(plans.size());
    std::size_t centre_count = 0;
    for (const auto& plan : plans) {
        choices.push_back(line_choice(plan, out, stocks_alike));
        centre_count += static_cast<std::size_t>(plan.layout.count);
    }
    auto centres = place_on_lines(choices, stocks_alike.size());
    const auto meeting = keep_apart(catalogue, plans, out.pieces, stocks_alike, centres);
    out.joints.reserve(plans.size());
    out.fasteners.reserve(centre_count);
    out.holes.reserve(2 * centre_count);
    Placer placer(out);
    for (std::size_t i = 0; i < plans.size(); ++i) placer.place(plans[i], shim_of[i], centres[i]);
    sort_holes(out);
    return meeting;
}

}  // namespace model
