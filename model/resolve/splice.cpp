#include "model/resolve/splice.h"

#include "model/resolve/layout_rules.h"
#include "model/resolve/recipe_row.h"
#include "model/resolve/splice_backing.h"
#include "model/resolve/splice_findings.h"
#include "model/resolve/splice_place.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace model {
namespace {

// ---- a backing in the frame ---------------------------------------------------------------------

// From a member's section axes into the frame.
struct SectionAxes {
    explicit SectionAxes(const Piece& piece)
        : run{index_of(piece.run)},
          axis{index_of(piece.a_axis), 3 - index_of(piece.run) - index_of(piece.a_axis)},
          sense{piece.a_sense, piece.b_sense},
          origin{piece.datum} {}

    Nm at(std::size_t s, Nm along) const { return origin[axis[s]] + sense[s] * along; }

    Box box(const std::array<Nm, 2>& lo, const std::array<Nm, 2>& hi, Range along_run) const {
        Box box;
        box.lo[run] = along_run[0];
        box.hi[run] = along_run[1];
        for (std::size_t s = 0; s < 2; ++s) {
            box.lo[axis[s]] = std::min(at(s, lo[s]), at(s, hi[s]));
            box.hi[axis[s]] = std::max(at(s, lo[s]), at(s, hi[s]));
        }
        return box;
    }

    std::size_t run;
    std::array<std::size_t, 2> axis;
    std::array<int, 2> sense;
    Point origin;
};

Piece laid(const Piece& member, const Backing& backing, Range along_run) {
    const SectionAxes axes(member);
    const std::size_t a = backing.a_along;
    const std::size_t b = 1 - a;
    Piece piece{.kind = PieceKind::backing};
    piece.serves = {member.member, member.member};
    piece.stock = backing.shape->stock;
    piece.section = backing.shape->section;
    piece.run = member.run;
    piece.a_axis = static_cast<Axis>(axes.axis[a]);
    piece.a_sense = axes.sense[a] * backing.sense[a];
    piece.b_sense = axes.sense[b] * backing.sense[b];
    piece.datum[axes.run] = along_run[0];
    for (std::size_t s = 0; s < 2; ++s) piece.datum[axes.axis[s]] = axes.at(s, backing.datum[s]);
    piece.length = along_run[1] - along_run[0];
    lay_walls(piece, backing.shape->walls);
    return piece;
}

Range run_of(const Piece& piece) {
    const std::size_t run = index_of(piece.run);
    return {piece.extents.lo[run], piece.extents.hi[run]};
}

Nm round_up(Nm value, Nm mark) { return (value + mark - 1) / mark * mark; }

// ---- where and how ------------------------------------------------------------------------------

struct Plan {
    Index piece = 0;
    Backings backings;
    std::vector<Nm> ends;  // of each length but the last
    Nm before = 0;         // of the backing, from a butt
    Nm length = 0;         // of the backing
};

// What laps each of the long pieces, as ranges along it.
using LapRanges = std::vector<std::vector<Range>>;

class Planner {
public:
    Planner(const PartRoom& room,
            BarRoom& bars,
            const FrameSkeleton& s,
            const PartMaker& maker,
            const Frame& frame,
            std::vector<Finding>& findings)
        : room_{room},
          bars_{bars},
          s_{s},
          maker_{maker},
          frame_{frame},
          findings_{findings},
          tree_{tree_of_pieces(s)},
          aside_{std::max(room.shop.end_gap, room.shop.housing_radius)} {}

    std::optional<Plan> plan(Index index, std::span<const Range> laps) {
        const Piece& piece = s_.pieces[index];
        const StockShape& shape = *s_.bars[s_.bar_of[index]].shape;
        const LongPiece told{member_subject(frame_, piece.member), piece.length,
                             bars_.longest(piece.stock)};
        const auto shown = room_.project.shown;
        const BackingRoom room{room_.catalogue, room_.shapes, room_.shop.end_gap,
                               row_width(index, thickest_of(shape))};
        const auto ways = backings_for(shape, room);
        if (ways.empty()) {
            findings_.push_back(splice_lacks_backing(told,
                                                     room_.catalogue.sections[shape.section].id,
                                                     flat_that_backs(shape, room), shown));
            return std::nullopt;
        }
        ButtRules rules{
            .most = told.most, .gap = room_.shop.end_gap, .mark = room_.shop.graduation};
        if (fewest_lengths(piece.length, rules) > most_lengths) {
            findings_.push_back(splice_of_too_many(told, shown));
            return std::nullopt;
        }
        const auto supports = supports_of(piece, laps);
        Nm shortest = 0;
        for (const auto& way : ways) {
            Plan plan{.piece = index, .backings = way};
            size_backing(plan, shape);
            shortest = shortest == 0 ? plan.length : std::min(shortest, plan.length);
            rules.before = plan.before;
            rules.after = plan.length - plan.before;
            rules.least = plan.length;
            const auto taken = taken_along(piece, way, laps);
            auto butts = butts_along(run_of(piece), taken, supports, rules);
            if (!butts) continue;
            plan.ends = std::move(butts->ends);
            keep(plan, told, butts->worst);
            return plan;
        }
        findings_.push_back(splice_has_no_room(told, shortest, shown));
        return std::nullopt;
    }

private:
    static Nm thickest_of(const StockShape& shape) {
        Nm thickest = 0;
        for (const auto& wall : shape.walls) {
            const auto normal = static_cast<std::size_t>(wall.normal_axis);
            if (!wall.is_root_fillet) {
                thickest = std::max(thickest, wall.hi[normal] - wall.lo[normal]);
            }
        }
        return thickest;
    }

    Nm diameter(Index piece, Nm thickest) const {
        const auto& id = room_.project.shop.fastener;
        if (const auto* rivet = find_rivet(room_.catalogue, id)) return rivet->diameter.nm();
        if (const auto* screw = find_screw(room_.catalogue, id)) return screw->diameter.nm();
        return maker_.fastener_diameter(piece, thickest);
    }

    // Of a wall that holds a row of fasteners: the edge distance on both sides, and a mark to lie
    // on between.
    Nm row_width(Index piece, Nm thickest) const {
        const double edges = 2 * edge_ratio(room_.project.shop);
        return std::llround(edges * static_cast<double>(diameter(piece, thickest))) +
               room_.shop.graduation;
    }

    // On each side of the butt it holds the row of fasteners that a lap is to have, and is one and
    // a half times as long as the member is wide, so that the row can be spread (from memory).
    void size_backing(Plan& plan, const StockShape& member) const {
        Nm thickest = thickest_of(member);
        for (const auto& backing : plan.backings) {
            thickest = std::max(thickest, thickest_of(*backing.shape));
        }
        const Section& section = room_.catalogue.sections[member.section];
        const Nm width = std::max(section.a.nm(), section.b.nm());
        const Nm mark = room_.shop.graduation;
        plan.before = round_up(std::max(maker_.length_for_fasteners(diameter(plan.piece, thickest)),
                                        width + width / 2),
                               mark);
        plan.length = round_up(2 * plan.before + room_.shop.end_gap, mark);
    }

    // Where the member is held along its run: in the middle of each lap, else at its ends.
    static std::vector<Nm> supports_of(const Piece& piece, std::span<const Range> laps) {
        std::vector<Nm> supports;
        for (const auto& lap : laps) supports.push_back(lap[0] + (lap[1] - lap[0]) / 2);
        std::sort(supports.begin(), supports.end());
        supports.erase(std::unique(supports.begin(), supports.end()), supports.end());
        if (supports.size() < 2) supports = {run_of(piece)[0], run_of(piece)[1]};
        return supports;
    }

    // What a backing would run into, with the room that the setting tool wants beside it.
    std::vector<Range> taken_along(const Piece& piece,
                                   const Backings& backings,
                                   std::span<const Range> laps) {
        std::vector<Range> taken;
        for (const auto& lap : laps) taken.push_back({lap[0] - aside_, lap[1] + aside_});
        const std::size_t run = index_of(piece.run);
        const auto add = [&](const Box& box) {
            taken.push_back({box.lo[run] - aside_, box.hi[run] + aside_});
        };
        for (const auto& box : room_about(piece, backings)) {
            tree_.for_each_touching(box, [&](Index other) {
                if (&s_.pieces[other] == &piece) return;
                for (const auto& plate : s_.pieces[other].walls()) {
                    if (engine::overlaps(plate.box, box)) add(plate.box);
                }
            });
            for (const auto& other : planned_) {
                if (engine::overlaps(other, box)) add(other);
            }
        }
        return taken;
    }

    // The backings over the whole member, with what stands out of them, and what a head and the
    // nose of the tool want on the side from which they are set.
    std::vector<Box> room_about(const Piece& piece, const Backings& backings) const {
        const Section& section = room_.catalogue.sections[piece.section];
        const std::array<Nm, 2> size{section.a.nm(), section.form == SectionForm::flat
                                                         ? section.thickness.nm()
                                                         : section.b.nm()};
        const SectionAxes axes(piece);
        const Nm nose = room_.shop.nose_reach;
        std::vector<Box> boxes;
        for (const auto& backing : backings) {
            for (std::size_t s = 0; s < 2; ++s) {
                if (backing.away[s] == 0) continue;
                auto lo = backing.lo;
                auto hi = backing.hi;
                (backing.away[s] > 0 ? hi : lo)[s] += backing.away[s] * nose;
                boxes.push_back(axes.box(lo, hi, run_of(piece)));
                if (backing.is_outside) continue;
                const Nm outer = backing.away[s] > 0 ? 0 : size[s];
                lo[s] = std::min(outer, outer - backing.away[s] * nose);
                hi[s] = std::max(outer, outer - backing.away[s] * nose);
                boxes.push_back(axes.box(lo, hi, run_of(piece)));
            }
        }
        return boxes;
    }

    void keep(const Plan& plan, const LongPiece& told, double worst_share) {
        const Piece& piece = s_.pieces[plan.piece];
        const Range all = run_of(piece);
        SpliceTold how{.worst_share = worst_share, .backings = words_of(plan)};
        Nm from = all[0];
        for (const Nm end : plan.ends) {
            how.lengths.push_back(end - from);
            from = end + room_.shop.end_gap;
            for (const auto& backing : plan.backings) {
                const Nm begin = end - plan.before;
                planned_.push_back(
                    SectionAxes(piece).box(backing.lo, backing.hi, {begin, begin + plan.length}));
            }
        }
        how.lengths.push_back(all[1] - from);
        findings_.push_back(spliced(told, how, room_.project.shown));
    }

    std::string words_of(const Plan& plan) const {
        std::string text = std::to_string(plan.backings.size()) +
                           (plan.backings.size() == 1 ? " piece of " : " pieces of ");
        std::string last;
        bool is_first = true;
        for (const auto& backing : plan.backings) {
            const auto& id = room_.catalogue.sections[backing.shape->section].id;
            if (id == last) continue;
            text += (is_first ? "" : " and ") + id;
            is_first = false;
            last = id;
        }
        return text + ", " + length_in_words(Length::from_nm(plan.length), room_.project.shown) +
               " long,";
    }

    const PartRoom& room_;
    BarRoom& bars_;
    const FrameSkeleton& s_;
    const PartMaker& maker_;
    const Frame& frame_;
    std::vector<Finding>& findings_;
    engine::BoxTree tree_;
    Nm aside_;
    std::vector<Box> planned_;
};

// ---- parting ------------------------------------------------------------------------------------

// What is left of a piece between two places along its run, which lie within it.
Piece length_of(Piece piece, Range along_run) {
    const std::size_t run = index_of(piece.run);
    const Range all = run_of(piece);
    piece.datum[run] = along_run[0];
    piece.length = along_run[1] - along_run[0];
    if (along_run[0] != all[0]) piece.ends[0] = {};
    if (along_run[1] != all[1]) piece.ends[1] = {};
    for (auto& plate : std::span(piece.plates.data(), piece.plate_count)) {
        plate.box.lo[run] = std::max(plate.box.lo[run], along_run[0]);
        plate.box.hi[run] = std::min(plate.box.hi[run], along_run[1]);
    }
    piece.extents.lo[run] = along_run[0];
    piece.extents.hi[run] = along_run[1];
    return piece;
}

// The lengths come in the place of their piece; pieces of bars and laps follow.
void part_pieces(std::span<const Plan> plans, Nm gap, FrameSkeleton& s, std::vector<Lap>& laps) {
    std::vector<Piece> pieces;
    std::vector<Index> bar_of;
    std::vector<Index> moved_to(s.pieces.size());
    auto plan = plans.begin();
    for (Index i = 0; i < s.pieces.size(); ++i) {
        moved_to[i] = static_cast<Index>(pieces.size());
        if (plan == plans.end() || plan->piece != i) {
            pieces.push_back(s.pieces[i]);
            bar_of.push_back(s.bar_of[i]);
            continue;
        }
        Nm from = run_of(s.pieces[i])[0];
        for (const Nm end : plan->ends) {
            pieces.push_back(length_of(s.pieces[i], {from, end}));
            from = end + gap;
        }
        pieces.push_back(length_of(s.pieces[i], {from, run_of(s.pieces[i])[1]}));
        bar_of.insert(bar_of.end(), plan->ends.size() + 1, s.bar_of[i]);
        ++plan;
    }
    for (auto& lap : laps) {
        for (Index* piece : {&lap.upper, &lap.lower}) {
            const std::size_t run = index_of(s.pieces[*piece].run);
            Index now = moved_to[*piece];
            const Index next = *piece + 1 < moved_to.size() ? moved_to[*piece + 1]
                                                            : static_cast<Index>(pieces.size());
            while (now + 1 < next && pieces[now].extents.hi[run] < lap.rect.hi[run]) ++now;
            *piece = now;
        }
    }
    s.pieces = std::move(pieces);
    s.bar_of = std::move(bar_of);
    for (auto& bar : s.bars) bar.piece_count = 0;
    for (Index i = 0; i < s.pieces.size(); ++i) {
        if (s.bar_of[i] == no_index) continue;
        Bar& bar = s.bars[s.bar_of[i]];
        if (bar.piece_count == 0) bar.first_piece = i;
        s.pieces[i].part = bar.piece_count++;
    }
}

void fasten_to(PartMaker& maker, Index length, Index backing, bool is_outside) {
    const Piece of_member = maker.piece(length);
    const Piece of_backing = maker.piece(backing);
    for (const auto& wall : of_member.walls()) {
        for (const auto& plate : of_backing.walls()) {
            if (wall.is_root_fillet || plate.is_root_fillet) continue;
            if (wall.normal_axis != plate.normal_axis) continue;
            const Box both = engine::hull(wall.box, plate.box);
            if (is_outside) {
                maker.add_lap(backing, plate, length, wall, both);
            } else {
                maker.add_lap(length, wall, backing, plate, both);
            }
        }
    }
}

void put_in_backings(const Plan& plan, Index first_length, PartMaker& maker) {
    for (Index i = 0; i < plan.ends.size(); ++i) {
        const Nm from = plan.ends[i] - plan.before;
        for (const auto& backing : plan.backings) {
            const Piece& member = maker.piece(first_length + i);
            const Index added = maker.add(laid(member, backing, {from, from + plan.length}));
            fasten_to(maker, first_length + i, added, backing.is_outside);
            fasten_to(maker, first_length + i + 1, added, backing.is_outside);
        }
    }
}

std::vector<Index> long_pieces(BarRoom& bars, const FrameSkeleton& s) {
    std::vector<Index> found;
    for (Index i = 0; i < s.pieces.size(); ++i) {
        if (s.bar_of[i] == no_index) continue;
        if (!bars.take(s.pieces[i].stock, s.pieces[i].length)) found.push_back(i);
    }
    return found;
}

LapRanges laps_along(std::span<const Index> pieces,
                     const FrameSkeleton& s,
                     const std::vector<Lap>& laps) {
    std::vector<Index> place(s.pieces.size(), no_index);
    for (Index k = 0; k < pieces.size(); ++k) place[pieces[k]] = k;
    LapRanges ranges(pieces.size());
    for (const auto& lap : laps) {
        for (const Index piece : {lap.upper, lap.lower}) {
            if (place[piece] == no_index) continue;
            const std::size_t run = index_of(s.pieces[piece].run);
            ranges[place[piece]].push_back({lap.rect.lo[run], lap.rect.hi[run]});
        }
    }
    return ranges;
}

}  // namespace

void splice_long_pieces(const PartRoom& room,
                        BarRoom& bars,
                        FrameSkeleton& s,
                        const Frame& frame,
                        std::vector<Outline>& outlines,
                        std::vector<Lap>& laps,
                        std::vector<Finding>& findings) {
    const auto too_long = long_pieces(bars, s);
    if (too_long.empty()) return;
    const auto ranges = laps_along(too_long, s, laps);
    std::vector<Plan> plans;
    {
        const PartMaker maker(room, s, outlines, laps);
        Planner planner(room, bars, s, maker, frame, findings);
        for (std::size_t k = 0; k < too_long.size(); ++k) {
            if (auto plan = planner.plan(too_long[k], ranges[k])) plans.push_back(std::move(*plan));
        }
    }
    part_pieces(plans, room.shop.end_gap, s, laps);
    PartMaker maker(room, s, outlines, laps);
    maker.begin({.recipe = recipe_made_by_itself("splice")});
    Index added = 0;
    for (const auto& plan : plans) {
        put_in_backings(plan, plan.piece + added, maker);
        added += static_cast<Index>(plan.ends.size());
    }
}

RecipeRow splice() {
    return {.told = {"splice",
                     "a member longer than any bar is made of lengths in line with a backing",
                     false}};
}

}  // namespace model
