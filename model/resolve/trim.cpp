#include "model/resolve/trim.h"

#include "model/resolve/recipe_row.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <span>
#include <utility>
#include <vector>

namespace model {
namespace {

struct Stretch {
    Nm from = 0;
    Nm to = 0;
};

bool enters(const Bar& bar, const Box& wall, const Box& metal) {
    return wall.lo[bar.axis[0]] < metal.hi[bar.axis[0]] &&
           metal.lo[bar.axis[0]] < wall.hi[bar.axis[0]] &&
           wall.lo[bar.axis[1]] < metal.hi[bar.axis[1]] &&
           metal.lo[bar.axis[1]] < wall.hi[bar.axis[1]];
}

// What is left of one bar while it is cut back.
struct Cutting {
    std::vector<Stretch> kept;  // of each wall; a root fillet is kept as far as both its walls are
    std::vector<Stretch> gaps;  // crossings in mid-span, with the end gap on both sides
};

void cut(Stretch& kept, Meets meets, Stretch blocked, Nm gap) {
    if (blocked.to <= kept.from || blocked.from >= kept.to) return;
    if (meets == Meets::at_from) {
        kept.from = std::max(kept.from, blocked.to + gap);
    } else if (meets == Meets::at_to) {
        kept.to = std::min(kept.to, blocked.from - gap);
    }
}

// From where the longest wall begins to where the longest one ends.
Stretch longest(const Cutting& at, std::span<const SectionPlate> walls) {
    Stretch all{std::numeric_limits<Nm>::max(), std::numeric_limits<Nm>::min()};
    for (std::size_t k = 0; k < walls.size(); ++k) {
        if (walls[k].is_root_fillet) continue;
        all.from = std::min(all.from, at.kept[k].from);
        all.to = std::max(all.to, at.kept[k].to);
    }
    return all;
}

std::vector<Stretch> what_is_left(Cutting& at, std::span<const SectionPlate> walls) {
    std::sort(at.gaps.begin(), at.gaps.end(),
              [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
    const Stretch kept = longest(at, walls);
    std::vector<Stretch> left;
    Nm begin = kept.from;
    for (const auto& gap : at.gaps) {
        const Nm end = std::min(gap.from, kept.to);
        if (end > begin) left.push_back({begin, end});
        begin = std::max(begin, gap.to);
    }
    if (begin < kept.to) left.push_back({begin, kept.to});
    return left;
}

// Whether what is left of each wall reaches over some of every piece.
bool can_be_notched(const Cutting& at, std::span<const SectionPlate> walls) {
    Nm first = std::numeric_limits<Nm>::max();
    Nm last = std::numeric_limits<Nm>::min();
    for (const auto& gap : at.gaps) {
        first = std::min(first, gap.from);
        last = std::max(last, gap.to);
    }
    for (std::size_t k = 0; k < walls.size(); ++k) {
        if (walls[k].is_root_fillet) continue;
        const Stretch kept = at.kept[k];
        if (kept.from >= kept.to || kept.from >= first || kept.to <= last) return false;
    }
    return true;
}

// One square cut for all walls.
void cut_all_alike(Cutting& at) {
    Stretch common = at.kept.front();
    for (const auto& kept : at.kept) {
        common = {std::max(common.from, kept.from), std::min(common.to, kept.to)};
    }
    for (auto& kept : at.kept) kept = common;
}

// A wall that is cut back further than the piece's end is notched there.
void notch(Piece& piece, const Cutting& at, std::span<const SectionPlate> walls) {
    const std::size_t run = index_of(piece.run);
    const Nm from = piece.datum[run];
    const Nm to = from + piece.length;
    for (std::size_t k = 0; k < walls.size(); ++k) {
        if (walls[k].is_root_fillet) continue;
        const Stretch kept = at.kept[k];
        Box& box = piece.plates[k].box;
        if (kept.from > from && kept.from < to) {
            piece.ends[0].wall_back[k] = kept.from - from;
            box.lo[run] = kept.from;
        }
        if (kept.to < to && kept.to > from) {
            piece.ends[1].wall_back[k] = to - kept.to;
            box.hi[run] = kept.to;
        }
    }
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

    lay_walls(piece, bar.shape->walls);
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

    // The pieces of the bar that remain, given those of all bars above it.
    void trim(Index lower) {
        Bar& bar = s_.bars[lower];
        const std::span<const SectionPlate> walls = bar.shape->walls;
        walls_.clear();
        for (const auto& wall : walls) walls_.push_back(wall_box(bar, wall, bar.from, bar.to));
        Cutting at{.kept = std::vector<Stretch>(walls.size(), {bar.from, bar.to}), .gaps = {}};
        const auto [first, count] = s_.above[lower];
        for (Index k = first; k < first + count; ++k) cut_at(at, s_.meetings[k], bar);
        bar.first_piece = static_cast<Index>(s_.pieces.size());
        if (!can_be_notched(at, walls)) cut_all_alike(at);
        const Stretch kept = longest(at, walls);
        if (is_cut_back(bar, kept)) cut_back_.push_back(lower);
        for (const auto& stretch : what_is_left(at, walls)) {
            if (stretch.to - stretch.from <= slants(bar, stretch, kept)) {
                too_short_.push_back(lower);
                continue;
            }
            s_.pieces.push_back(piece_of(bar, s_.frame, bar.piece_count++, stretch));
            Piece& piece = s_.pieces.back();
            if (stretch.from == kept.from) piece.ends[0].slope = bar.ends[0].slope;
            if (stretch.to == kept.to) piece.ends[1].slope = bar.ends[1].slope;
            notch(piece, at, walls);
        }
    }

    // Bars whose mitred end is cut back by more than the gap, so that the mitre gapes.
    const std::vector<Index>& cut_back() const { return cut_back_; }

    // Bars of which a stretch was left out, since its slanting ends would meet.
    const std::vector<Index>& too_short() const { return too_short_; }

private:
    bool is_cut_back(const Bar& bar, Stretch kept) const {
        const PieceEnd square;
        return (bar.ends[0] != square && kept.from - bar.from > gap_) ||
               (bar.ends[1] != square && bar.to - kept.to > gap_);
    }

    // How long the slanting cuts at both ends of the stretch are together.
    Nm slants(const Bar& bar, Stretch stretch, Stretch kept) const {
        const Box whole = body(bar);
        double length = 0.0;
        for (std::size_t end = 0; end < 2; ++end) {
            const bool is_cut = end == 0 ? stretch.from == kept.from : stretch.to == kept.to;
            if (!is_cut) continue;
            for (std::size_t i = 0; i < 2; ++i) {
                const auto width =
                    static_cast<double>(whole.hi[bar.axis[i]] - whole.lo[bar.axis[i]]);
                length += std::abs(bar.ends[end].slope[section_axis(bar, i)]) * width;
            }
        }
        return static_cast<Nm>(std::ceil(length));
    }

    void cut_at(Cutting& at, const Meeting& meeting, const Bar& bar) const {
        const RecipeRow& row = recipe_row(meeting.recipe);
        if (!row.trims_at_upper) return;
        const Bar& upper = s_.bars[meeting.upper];
        for (Index p = 0; p < upper.piece_count; ++p) {
            const Piece& piece = s_.pieces[upper.first_piece + p];
            if (upper.shape->is_closed) {
                cut_at(at, meeting, piece.extents, bar, row.notches);
                continue;
            }
            for (const auto& plate : piece.walls()) {
                cut_at(at, meeting, plate.box, bar, row.notches);
            }
        }
    }

    void cut_at(
        Cutting& at, const Meeting& meeting, const Box& metal, const Bar& bar, bool singly) const {
        const std::size_t run = index_of(bar.run);
        const Stretch blocked{metal.lo[run], metal.hi[run]};
        // What enters one wall alone can be notched out of it; what takes the heel, a root fillet
        // or two walls takes all of the end.
        std::size_t walls_entered = 0;
        std::size_t entered = 0;
        bool takes_fillet = false;
        for (std::size_t k = 0; k < walls_.size(); ++k) {
            if (!enters(bar, walls_[k], metal)) continue;
            takes_fillet |= bar.shape->walls[k].is_root_fillet;
            ++walls_entered;
            entered = k;
        }
        if (walls_entered == 0) return;
        singly = singly && walls_entered == 1 && !takes_fillet;
        const bool in_passing =
            meeting.lower_meets == Meets::in_passing || meeting.lower_meets == Meets::not_at_all;
        if (in_passing) {
            const Stretch kept = longest(at, bar.shape->walls);
            if (blocked.to <= kept.from || blocked.from >= kept.to) return;
            at.gaps.push_back({blocked.from - gap_, blocked.to + gap_});
        } else if (singly) {
            cut(at.kept[entered], meeting.lower_meets, blocked, gap_);
        } else {
            for (auto& kept : at.kept) cut(kept, meeting.lower_meets, blocked, gap_);
        }
    }

    FrameSkeleton& s_;
    Nm gap_;
    std::vector<Box> walls_;
    std::vector<Index> too_short_;
    std::vector<Index> cut_back_;
};

}  // namespace

void trim_bars(FrameSkeleton& s, const Frame& frame, Nm end_gap, std::vector<Finding>& findings) {
    Trim trim(s, end_gap);
    s.pieces.reserve(s.bars.size() + s.bars.size() / 4);
    for (const Index i : s.order) {
        trim.trim(i);
        const Bar& bar = s.bars[i];
        if (bar.piece_count > 0) continue;
        findings.push_back({.code = "nothing_left",
                            .severity = Severity::error,
                            .concerns = {member_subject(frame, bar.member)},
                            .what = "nothing is left of it between the members that it meets",
                            .mend = "move its planes apart, or take it out"});
    }
    for (const Index i : trim.too_short()) {
        findings.push_back({.code = "too_short_to_mitre",
                            .severity = Severity::error,
                            .concerns = {member_subject(frame, s.bars[i].member)},
                            .what = "a stretch of it is shorter than its mitred ends and is left "
                                    "out",
                            .mend = "choose another recipe for its joint, or move its planes "
                                    "apart"});
    }
    for (const Index i : trim.cut_back()) {
        findings.push_back({.code = "mitre_gapes",
                            .severity = Severity::warning,
                            .concerns = {member_subject(frame, s.bars[i].member)},
                            .what = "another member cuts its mitred end back, so the mitre gapes",
                            .mend = "choose another recipe for the mitred joint, or turn the "
                                    "other member's legs"});
    }
    put_in_order_of_bars(s);
}

}  // namespace model
