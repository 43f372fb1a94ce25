#include "tests/model/assembly/replay.h"

#include "model/schedule/sheet_pins.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>

namespace tests {
namespace {

using model::Index;
using model::no_index;
using Pieces = std::set<Index>;

class Replay {
public:
    Replay(const NaiveWorld& world,
           const model::Resolved& resolved,
           const model::AssemblyOrder& order)
        : world_{world}, resolved_{resolved}, order_{order} {}

    Complaints complaints() && {
        for (Index s = 0; s < order_.steps.size(); ++s) carry_out(s);
        check_whole();
        return std::move(complaints_);
    }

private:
    using Key = std::pair<Index, Index>;  // frame, assembly

    void complain(const std::string& what) {
        complaints_.push_back("step " + std::to_string(at_ + 1) + ": " + what);
    }
    static std::string p(Index piece) { return "P" + std::to_string(piece); }
    static std::string j(Index joint) { return "J" + std::to_string(joint); }

    void carry_out(Index s) {
        at_ = s;
        const auto& step = order_.steps[s];
        if (s > 0 && order_.steps[s - 1].frame > step.frame) complain("frames out of order");
        Pieces& present = on_bench_[{step.frame, step.assembly}];
        const Pieces before = present;
        for (const auto& move : step.moves) put_on(step, move, present);
        for (const Index joint : step.joins) join(joint, before, present);
        for (const auto& pins : step.pins) check_pins(step, pins);
        for (const Index row : step.squares) measure(row, present);
        for (const auto& setting : step.sets) set(setting, present);
        last_step_[{step.frame, step.assembly}] = s;
        if (step.moves.empty() && step.sets.empty() && step.fixing_holes.empty()) {
            complain("nothing to do");
        }
    }

    void put_on(const model::AssemblyStep& step, const model::AssemblyMove& move, Pieces& present) {
        const Pieces moved(move.pieces.begin(), move.pieces.end());
        if (move.made_in == no_index) {
            if (move.pieces.size() != 1) complain("several pieces by hand");
            for (const Index piece : moved) ++placed_[piece];
        } else {
            take_made(step, move, moved);
        }
        const double length = std::hypot(move.along[0], move.along[1], move.along[2]);
        if (length == 0.0) {
            if (!present.empty()) complain("laid down where something stands");
        } else {
            if (std::abs(length - 1.0) > 1e-9) complain("a way that is no unit vector");
            check_way(step.frame, move, present);
        }
        for (const Index piece : moved) {
            if (!present.insert(piece).second) complain(p(piece) + " is there already");
        }
    }

    void take_made(const model::AssemblyStep& step,
                   const model::AssemblyMove& move,
                   const Pieces& moved) {
        if (move.made_in >= at_) return complain("a sub-assembly that is not made yet");
        const auto& made = order_.steps[move.made_in];
        const Key key{made.frame, made.assembly};
        if (made.frame != step.frame || made.assembly == step.assembly)
            complain("not its own part");
        if (last_step_[key] != move.made_in) complain("a sub-assembly that is not done");
        if (on_bench_[key] != moved) complain("not all of the sub-assembly");
        on_bench_.erase(key);
    }

    void check_way(Index frame, const model::AssemblyMove& move, const Pieces& present) {
        const auto& lost = order_.pieces_without_way;
        if (move.pieces.size() == 1 && std::ranges::binary_search(lost, move.pieces[0])) return;
        const auto travel = world_.in_world(frame, move.along);
        for (const Index piece : move.pieces) {
            for (const Index other : present) {
                if (!world_.is_stopped_by(piece, travel, other)) continue;
                complain(p(piece) + " passes through " + p(other));
            }
        }
    }

    void join(Index joint, const Pieces& before, const Pieces& present) {
        ++joined_[joint];
        const auto pieces = world_.pieces_of(joint);
        if (!std::ranges::includes(present, pieces))
            complain(j(joint) + " joins what is not there");
        if (std::ranges::includes(before, pieces)) complain(j(joint) + " joins too late");
    }

    void check_pins(const model::AssemblyStep& step, const model::StepPins& pins) {
        if (std::ranges::count(step.joins, pins.joint) != 1) complain("pins elsewhere");
        const auto& joint = resolved_.joints[pins.joint];
        const std::set<Index> holes(pins.fasteners.begin(), pins.fasteners.end());
        if (holes.size() != pins.fasteners.size()) complain("two pins in one hole");
        const auto wanted = model::pins_in_joint(static_cast<int>(joint.fastener_count));
        if (holes.size() != static_cast<std::size_t>(wanted)) complain("not so many pins");
        for (const Index hole : holes) {
            if (resolved_.fasteners[hole].joint != pins.joint) complain("a pin in another joint");
        }
        ++pinned_[pins.joint];
    }

    // Two at least of what meets at each corner are there, or all of it.
    void measure(Index row, const Pieces& present) {
        ++measured_[row];
        const auto& square = order_.squares[row];
        if (square.is_heel_to_heel) return measure_heels(square, present);
        for (const auto& corner : world_.corners_of(square)) {
            const auto meet = world_.bars_at(square.frame, corner);
            std::size_t there = 0;
            for (const Index bar : meet) there += present.count(bar);
            if (there >= std::min<std::size_t>(2, meet.size())) continue;
            std::string lacks;
            for (const Index bar : meet)
                if (present.count(bar) == 0) lacks += " " + p(bar);
            complain("a corner of face " + square.face + " is measured without" + lacks);
        }
    }

    // Bars of what is there cross at each corner, no further from it than bars are wide: they end
    // there before one another.
    void measure_heels(const model::SquareRow& square, const Pieces& present) {
        model::Nm reach = 0;
        for (const auto& piece : resolved_.pieces)
            if (piece.frame == square.frame) reach = std::max(reach, width(piece));
        reach += 2 * resolved_.shop.end_gap;
        for (const auto& corner : world_.corners_of(square)) {
            std::set<model::Axis> runs;
            for (const Index piece : present) {
                const auto& bar = resolved_.pieces[piece];
                if (is_bar(bar) && is_near(bar, corner, reach)) runs.insert(bar.run);
            }
            if (runs.size() < 2)
                complain("no bars cross at a corner of face " + square.face + ", heel to heel");
        }
    }

    static bool is_bar(const model::Piece& piece) { return piece.kind == model::PieceKind::bar; }

    static model::Nm width(const model::Piece& bar) {
        model::Nm widest = 0;
        for (std::size_t k = 0; k < 3; ++k) {
            if (is_bar(bar) && k != static_cast<std::size_t>(bar.run))
                widest = std::max(widest, bar.extents.hi[k] - bar.extents.lo[k]);
        }
        return widest;
    }

    static bool is_near(const model::Piece& bar, const model::Point& corner, model::Nm reach) {
        for (std::size_t k = 0; k < 3; ++k) {
            if (corner[k] < bar.extents.lo[k] - reach || corner[k] > bar.extents.hi[k] + reach)
                return false;
        }
        return true;
    }

    void set(const model::StepSetting& setting, const Pieces& present) {
        if (++set_[setting.joint] > 1 || joined_[setting.joint] != 1) {
            complain(j(setting.joint) + " is set twice or before it joins");
        }
        if (std::ranges::binary_search(order_.joints_not_reached, setting.joint)) return;
        const auto own = world_.pieces_of(setting.joint);
        if (!std::ranges::includes(present, own)) complain("sets what is not there");
        for (const Index other : present) {
            const bool is_kept_off =
                own.count(other) == 0 && world_.keeps_nose_off(setting.joint, other);
            const bool is_rivet = is_riveted(setting.joint);
            const bool counts = own.count(other) == 0 || (is_rivet && !setting.long_nose);
            if (is_kept_off ||
                (counts && world_.keeps_housing_off(setting.joint, setting.long_nose, other))) {
                complain(p(other) + " keeps the tool off " + j(setting.joint));
            }
        }
    }

    bool is_riveted(Index joint) const {
        const auto fasteners = resolved_.fasteners_of(resolved_.joints[joint]);
        return !fasteners.empty() &&
               fasteners[0].spec.kind == model::FastenerSpec::Kind::blind_rivet;
    }

    void check_whole() {
        for (Index i = 0; i < resolved_.pieces.size(); ++i) {
            if (placed_[i] != 1) complain(p(i) + " is not put on once");
        }
        for (Index n = 0; n < resolved_.joints.size(); ++n) {
            const int fastened = resolved_.joints[n].fastener_count > 0 ? 1 : 0;
            if (joined_[n] != 1) complain(j(n) + " is not joined once");
            if (set_[n] != fastened) complain(j(n) + " is not set once");
            if (pinned_[n] != (is_riveted(n) ? 1 : 0)) complain(j(n) + " is not pinned once");
        }
        for (const auto& [row, count] : measured_) {
            if (count != 1) complain("a diagonal is measured twice");
        }
        if (measured_.size() != order_.squares.size()) complain("a diagonal is not measured");
        for (const auto& [key, pieces] : on_bench_) {
            if (key.second != 0 && !pieces.empty()) complain("a part is left on the bench");
        }
    }

    const NaiveWorld& world_;
    const model::Resolved& resolved_;
    const model::AssemblyOrder& order_;
    Complaints complaints_;
    Index at_ = 0;
    std::map<Key, Pieces> on_bench_;
    std::map<Key, Index> last_step_;
    std::map<Index, int> placed_;
    std::map<Index, int> joined_;
    std::map<Index, int> pinned_;
    std::map<Index, int> set_;
    std::map<Index, int> measured_;
};

// ---- brute force --------------------------------------------------------------------------------

using Mask = std::uint32_t;

struct KeptJoint {
    Mask pieces = 0;
    Mask in_way = 0;
};

std::vector<Direction> all_ways(const NaiveWorld& world, const model::Resolved& r, Index frame) {
    std::vector<Direction> ways;
    const auto add = [&](Direction way) {
        for (const double sense : {1.0, -1.0}) {
            for (auto& part : way) part *= sense;
            ways.push_back(world.in_world(frame, way));
        }
    };
    add({1, 0, 0});
    add({0, 1, 0});
    add({0, 0, 1});
    for (const auto& piece : r.pieces) {
        if (piece.frame != frame || piece.lean == no_index) continue;
        add(r.leans[piece.lean].run);
        add(r.leans[piece.lean].a);
    }
    return ways;
}

}  // namespace

Complaints replay_complaints(const NaiveWorld& world,
                             const model::Resolved& resolved,
                             const model::AssemblyOrder& order) {
    return Replay(world, resolved, order).complaints();
}

bool can_be_put_together(const NaiveWorld& world, const model::Resolved& resolved, Index frame) {
    const Index first = resolved.frames[frame].first_piece;
    const Index count = resolved.frames[frame].piece_count;
    const Mask all = (Mask{1} << count) - 1;
    // By way and set of pieces: what stops one of them.
    std::vector<std::vector<Mask>> stopped;
    for (const auto& way : all_ways(world, resolved, frame)) {
        std::vector<Mask> by(all + std::size_t{1});
        for (Index a = 0; a < count; ++a) {
            for (Index b = 0; b < count; ++b) {
                if (a == b || !world.is_stopped_by(first + a, way, first + b)) continue;
                by[Mask{1} << a] |= Mask{1} << b;
            }
        }
        for (Mask set = 1; set <= all; ++set) by[set] = by[set & (set - 1)] | by[set & (~set + 1)];
        stopped.push_back(std::move(by));
    }
    std::vector<KeptJoint> kept;
    for (Index n = 0; n < resolved.joints.size(); ++n) {
        if (resolved.joints[n].frame != frame || resolved.joints[n].fastener_count == 0) continue;
        KeptJoint joint;
        const auto own = world.pieces_of(n);
        for (Index i = 0; i < count; ++i) {
            if (own.count(first + i) > 0) {
                joint.pieces |= Mask{1} << i;
            } else if (world.keeps_nose_off(n, first + i) ||
                       world.keeps_housing_off(n, true, first + i)) {
                joint.in_way |= Mask{1} << i;
            }
        }
        if (joint.in_way != 0) kept.push_back(joint);
    }
    std::vector<bool> can(all + std::size_t{1});
    for (Mask set = 1; set <= all; ++set) {
        can[set] = (set & (set - 1)) == 0;
        for (Mask part = (set - 1) & set; part > 0 && !can[set]; part = (part - 1) & set) {
            const Mask rest = set & ~part;
            if (!can[part] || !can[rest]) continue;
            const bool is_reached = std::ranges::none_of(kept, [&](const KeptJoint& joint) {
                return (joint.pieces & ~set) == 0 && (joint.in_way & set) != 0 &&
                       (joint.pieces & part) != 0 && (joint.pieces & rest) != 0;
            });
            if (!is_reached) continue;
            can[set] = std::ranges::any_of(stopped,
                                           [&](const auto& by) { return (by[part] & rest) == 0; });
        }
    }
    return can[all];
}

}  // namespace tests
