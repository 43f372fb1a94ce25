#include "model/resolve/brace_hold.h"

#include "model/resolve/brace_findings.h"
#include "model/resolve/lap_room.h"
#include "model/resolve/leaning_findings.h"
#include "model/resolve/piece_subject.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace model {
namespace {

// The narrower side of a wall that does not lean, seen in the face.
Nm width_of(const Box& wall, std::size_t normal) {
    const auto axes = axes_across(normal);
    return std::min(wall.hi[axes[0]] - wall.lo[axes[0]], wall.hi[axes[1]] - wall.lo[axes[1]]);
}

// Along the brace's run from its datum end.
double along(const Slants& slants, const Piece& brace, const Point& at) {
    double sum = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
        sum += static_cast<double>(at[i] - brace.datum[i]) * slants.leans[brace.lean].run[i];
    }
    return sum;
}

// Where fasteners of the plan lie: those of a brace are laid out as points, which move no more.
std::vector<Point> places_of(const LapPlan& plan, const Piece& upper, const Piece& lower) {
    assert(plan.layout.pattern == Pattern::points);
    const Box& rect = plan.lap.rect;
    const LapAxes axes = lap_axes(upper, lower, plan.lap.normal_axis);
    std::vector<Point> places;
    for (const auto& centre : plan.layout.points) {
        Point at = rect.lo;
        for (std::size_t k = 0; k < 2; ++k) {
            at[axes.axis[k]] = axes.heel[axes.axis[k]] + axes.sense[k] * centre[k];
        }
        places.push_back(at);
    }
    return places;
}

class BraceHolds {
public:
    BraceHolds(const Slants& slants,
               const FrameSkeleton& skeleton,
               std::span<const LapPlan> plans,
               Index first_piece)
        : slants_{slants}, s_{skeleton}, plans_{plans}, first_{first_piece} {}

    std::array<bool, 2> ends_held(Index brace) const {
        std::array<bool, 2> held{};
        const Piece& piece = s_.pieces[brace];
        for (const auto& plan : plans_) {
            const Lap& lap = plan.lap;
            const Index number = brace + first_;
            if (lap.upper != number && lap.lower != number && lap.cover != number) continue;
            if (plan.layout.count == 0) continue;
            const Piece& upper = s_.pieces[lap.upper - first_];
            const Piece& lower = s_.pieces[lap.lower - first_];
            const Nm reach = brace_reach(slants_, piece) + width_beside(lap, piece, upper, lower);
            for (const auto& at : places_of(plan, upper, lower)) {
                const double from = along(slants_, piece, at);
                const double to = static_cast<double>(piece.length) - from;
                held[0] |= from <= static_cast<double>(reach);
                held[1] |= to <= static_cast<double>(reach);
            }
        }
        return held;
    }

private:
    static Nm width_beside(const Lap& lap,
                           const Piece& brace,
                           const Piece& upper,
                           const Piece& lower) {
        if (&brace == &upper) return width_of(lower.plates[lap.lower_wall].box, lap.normal_axis);
        if (&brace == &lower) return width_of(upper.plates[lap.upper_wall].box, lap.normal_axis);
        return std::min(width_of(upper.plates[lap.upper_wall].box, lap.normal_axis),
                        width_of(lower.plates[lap.lower_wall].box, lap.normal_axis));
    }

    const Slants& slants_;
    const FrameSkeleton& s_;
    std::span<const LapPlan> plans_;
    Index first_;
};

}  // namespace

Nm brace_reach(const Slants& slants, const Piece& brace) {
    const Nm width = leaning_width(slants, brace);
    return width + width / 2;
}

std::vector<Lap> holding_laps(const FrameSkeleton& skeleton,
                              std::span<const Lap> laps,
                              std::span<const LapPlan> plans,
                              Index first_piece) {
    std::vector<Lap> holding;
    for (const auto& lap : laps) {
        if (!lap.is_of_brace) holding.push_back(lap);
    }
    for (const auto& plan : plans) {
        if (!plan.lap.is_of_brace || plan.layout.count == 0) continue;
        Lap lap = plan.lap;
        lap.upper -= first_piece;
        lap.lower -= first_piece;
        const bool is_of_leaning = skeleton.pieces[lap.upper].kind == PieceKind::leaning ||
                                   skeleton.pieces[lap.lower].kind == PieceKind::leaning;
        if (is_of_leaning) holding.push_back(lap);
    }
    return holding;
}

void report_loose_braces(const Slants& slants,
                         const FrameSkeleton& skeleton,
                         const Frame& frame,
                         std::span<const LapPlan> plans,
                         Index first_piece,
                         std::vector<Finding>& findings) {
    const BraceHolds holds(slants, skeleton, plans, first_piece);
    for (Index i = 0; i < skeleton.pieces.size(); ++i) {
        const Piece& piece = skeleton.pieces[i];
        if (!is_between_nodes(piece.kind)) continue;
        const auto held = holds.ends_held(i);
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
            if (held[end]) continue;
            const auto reach = Length::from_nm(brace_reach(slants, piece));
            const auto subject = piece_subject(frame, piece);
            findings.push_back(piece.kind == PieceKind::brace
                                   ? brace_end_loose(subject, end, reach)
                                   : leaning_end_loose(subject, end, reach));
        }
    }
}

}  // namespace model
