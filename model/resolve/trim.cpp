#include "model/resolve/trim.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

struct Stretch {
    Nm from = 0;
    Nm to = 0;
};

// The stretch of `bar`'s run in which a wall of it would enter `metal`; empty when none does.
Stretch entered(const Bar& bar, const std::vector<Box>& walls, const Box& metal) {
    for (const auto& wall : walls) {
        const bool enters = wall.lo[bar.axis[0]] < metal.hi[bar.axis[0]] &&
                            metal.lo[bar.axis[0]] < wall.hi[bar.axis[0]] &&
                            wall.lo[bar.axis[1]] < metal.hi[bar.axis[1]] &&
                            metal.lo[bar.axis[1]] < wall.hi[bar.axis[1]];
        const std::size_t run = index_of(bar.run);
        if (enters) return {metal.lo[run], metal.hi[run]};
    }
    return {};
}

// What is left of one bar while it is cut back.
struct Cutting {
    Stretch kept;
    std::vector<Stretch> gaps;  // crossings in mid-span, with the end gap on both sides
};

void cut(Cutting& at, Meets meets, Stretch blocked, Nm gap) {
    if (blocked.to <= at.kept.from || blocked.from >= at.kept.to) return;
    if (meets == Meets::at_from) {
        at.kept.from = std::max(at.kept.from, blocked.to + gap);
    } else if (meets == Meets::at_to) {
        at.kept.to = std::min(at.kept.to, blocked.from - gap);
    } else {
        at.gaps.push_back({blocked.from - gap, blocked.to + gap});
    }
}

std::vector<Stretch> what_is_left(Cutting& at) {
    std::sort(at.gaps.begin(), at.gaps.end(),
              [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
    std::vector<Stretch> left;
    Nm begin = at.kept.from;
    for (const auto& gap : at.gaps) {
        if (std::min(gap.from, at.kept.to) > begin) left.push_back({begin, gap.from});
        begin = std::max(begin, gap.to);
    }
    if (begin < at.kept.to) left.push_back({begin, at.kept.to});
    return left;
}

Piece piece_of(const Bar& bar, Index frame, Index part, Stretch stretch) {
    Piece piece;
    piece.frame = frame;
    piece.member = bar.member;
    piece.part = part;
    piece.stock = bar.stock;
    piece.section = bar.shape->section;
    piece.run = bar.run;
    piece.run_sense = 1;
    piece.a_axis = static_cast<Axis>(bar.axis[bar.a_on]);
    piece.a_sense = bar.leg[bar.a_on];
    piece.b_sense = bar.leg[1 - bar.a_on];
    piece.datum[index_of(bar.run)] = stretch.from;
    for (std::size_t i = 0; i < 2; ++i) piece.datum[bar.axis[i]] = heel(bar, i);
    piece.length = stretch.to - stretch.from;

    for (std::size_t k = 0; k < bar.shape->walls.size(); ++k) {
        const SectionPlate& wall = bar.shape->walls[k];
        const std::size_t i =
            section_axis(bar, 0) == static_cast<std::size_t>(wall.normal_axis) ? 0U : 1U;
        Plate& plate = piece.plates[piece.plate_count++];
        plate.box = wall_box(bar, wall, stretch.from, stretch.to);
        plate.wall = static_cast<std::uint8_t>(k);
        plate.normal_axis = static_cast<std::uint8_t>(bar.axis[i]);
        plate.inward = static_cast<std::int8_t>(-wall.outward * bar.leg[i]);
        plate.is_root_fillet = wall.is_root_fillet;
        piece.extents = k == 0 ? plate.box : engine::hull(piece.extents, plate.box);
    }
    return piece;
}

// Pieces come out in order of rank; everything after wants them in the members' order.
void put_in_order_of_bars(FrameSkeleton& s) {
    std::vector<Piece> sorted;
    sorted.reserve(s.pieces.size());
    s.bar_of.clear();
    for (Index i = 0; i < s.bars.size(); ++i) {
        Bar& bar = s.bars[i];
        const auto begin = s.pieces.begin() + bar.first_piece;
        bar.first_piece = static_cast<Index>(sorted.size());
        sorted.insert(sorted.end(), begin, begin + bar.piece_count);
        s.bar_of.insert(s.bar_of.end(), bar.piece_count, i);
    }
    s.pieces = std::move(sorted);
}

class Trim {
public:
    Trim(FrameSkeleton& s, Nm end_gap) : s_{s}, gap_{end_gap} {}

    // The stretches of the bar that remain, given the pieces of all bars above it.
    std::vector<Stretch> left_of(Index lower) {
        const Bar& bar = s_.bars[lower];
        walls_.clear();
        for (const auto& wall : bar.shape->walls) {
            walls_.push_back(wall_box(bar, wall, bar.from, bar.to));
        }
        Cutting at{{bar.from, bar.to}, {}};
        const auto [first, count] = s_.above[lower];
        for (Index k = first; k < first + count; ++k) {
            const Meeting& meeting = s_.meetings[k];
            const Bar& upper = s_.bars[meeting.upper];
            for (Index p = 0; p < upper.piece_count; ++p) {
                const Piece& piece = s_.pieces[upper.first_piece + p];
                if (upper.shape->is_closed) {
                    cut_at(at, meeting.lower_meets, piece.extents, bar);
                    continue;
                }
                for (const auto& plate : piece.walls()) {
                    cut_at(at, meeting.lower_meets, plate.box, bar);
                }
            }
        }
        return what_is_left(at);
    }

private:
    void cut_at(Cutting& at, Meets meets, const Box& metal, const Bar& bar) const {
        const Stretch blocked = entered(bar, walls_, metal);
        if (blocked.from < blocked.to) cut(at, meets, blocked, gap_);
    }

    FrameSkeleton& s_;
    Nm gap_;
    std::vector<Box> walls_;
};

}  // namespace

void trim_bars(FrameSkeleton& s, const Frame& frame, Nm end_gap, std::vector<Finding>& findings) {
    Trim trim(s, end_gap);
    s.pieces.reserve(s.bars.size() + s.bars.size() / 4);
    for (const Index i : s.order) {
        Bar& bar = s.bars[i];
        bar.first_piece = static_cast<Index>(s.pieces.size());
        for (const auto& stretch : trim.left_of(i)) {
            s.pieces.push_back(piece_of(bar, s.frame, bar.piece_count++, stretch));
        }
        if (bar.piece_count > 0) continue;
        findings.push_back({.code = "nothing_left",
                            .severity = Severity::error,
                            .concerns = {member_subject(frame, bar.member)},
                            .what = "nothing is left of it between the members that it meets",
                            .mend = "move its planes apart, or take it out"});
    }
    put_in_order_of_bars(s);
}

}  // namespace model
