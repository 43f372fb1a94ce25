#include "model/assembly/frame_steps.h"

#include "model/assembly/frame_bench.h"
#include "model/assembly/setting_turns.h"
#include "model/assembly/step_pins.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace model {
namespace {

// As many as the picture of a step shows at a glance.
constexpr std::size_t most_moves = 12;

class FrameSteps {
public:
    FrameSteps(const FrameParts& parts,
               const PartWays& ways,
               const ToolAccess& access,
               const TakenApart& taken,
               std::span<const SquareAt> squares,
               std::vector<SquareRow>& rows,
               std::vector<AssemblyStep>& steps)
        : parts_{parts},
          ways_{ways},
          access_{access},
          taken_{taken},
          squares_{parts, squares, rows},
          shutting_in_{parts, ways, access, taken},
          steps_{steps} {}

    std::vector<ShutIn> add() {
        if (parts_.size() == 0) return {};
        Bench bench = new_bench(taken_.kind, taken_.face);
        put_together(taken_.puts, bench);
        set_screws(bench);
        fix_to_van();
        return std::move(shut_in_);
    }

private:
    Bench new_bench(PartKind kind, const std::string& face) {
        const bool is_flat = kind == PartKind::flat;
        return {.assembly = next_assembly_++,
                .work = is_flat ? AssemblyWork::flat_on_bench : AssemblyWork::joined_on,
                .face = is_flat ? face : std::string{},
                .present = PieceSet(parts_.size())};
    }

    void put_together(const std::vector<Put>& puts, Bench& bench) {
        std::vector<Made> made(puts.size());
        for (const auto& put : puts) {
            if (work_of(put, bench) == bench.work) bench.last_of_bars = &put;
        }
        for (std::size_t k = 0; k < puts.size(); ++k) {
            if (puts[k].part.kind != PartKind::comes_apart) made[k] = make(puts[k]);
        }
        for (std::size_t k = 0; k < puts.size(); ++k) {
            const Put& put = puts[k];
            if (is_open_ && ends_step(put, bench)) close(bench, &put);
            if (put.part.kind == PartKind::comes_apart) {
                if (!put.inside.empty() && is_open_) close(bench, &put);
                made[k] = make(put);
                note(shutting_in_.part(put.part, bench.present));
            }
            if (!is_open_) open(work_of(put, bench), bench);
            put_on(put, made[k], bench);
        }
        close(bench, nullptr);
    }

    // Of more than one piece: its own steps.
    Made make(const Put& put) {
        if (put.inside.empty()) return {};
        Bench own = new_bench(put.part.kind, put.part.face);
        put_together(put.inside, own);
        return {static_cast<Index>(steps_.size() - 1), std::move(own.waiting)};
    }

    static AssemblyWork work_of(const Put& put, const Bench& bench) {
        if (put.part.kind == PartKind::comes_apart) return AssemblyWork::screwed_on;
        const bool is_panel = put.part.kind == PartKind::panel || put.part.kind == PartKind::hung;
        return is_panel ? AssemblyWork::panels : bench.work;
    }

    bool ends_step(const Put& put, const Bench& bench) const {
        if (step_.work != work_of(put, bench)) return true;
        const auto is_carried_on = [](const AssemblyMove& move) {
            return move.made_in != no_index && move.along != Travel{};
        };
        if (std::ranges::any_of(step_.moves, is_carried_on)) return true;
        if (!put.inside.empty() && !step_.moves.empty()) return true;
        if (step_.moves.size() >= most_moves) return true;
        return std::ranges::any_of(bench.waiting,
                                   [&](Index j) { return is_shut_by(j, put, bench); });
    }

    // Whether the tool that reaches the joint now will not do so any more.
    bool is_shut_by(Index j, const Put& put, const Bench& bench) const {
        const auto& of = access_.joints[j];
        if (taken_.set_with[j] == SetWith::nothing || of.in_way_of_nose.size() == 0) return false;
        const bool tool_reaches = !of.in_way.meets(bench.present);
        return (tool_reaches ? of.in_way : of.in_way_of_nose).meets(put.part.set);
    }

    void open(AssemblyWork work, const Bench& bench) {
        step_ = {.work = work,
                 .frame = parts_.frame(),
                 .assembly = bench.assembly,
                 .face = work == AssemblyWork::flat_on_bench ? bench.face : std::string{}};
        is_open_ = true;
    }

    void put_on(const Put& put, const Made& made, Bench& bench) {
        take_over(made, bench);
        AssemblyMove move{.made_in = made.last_step};
        for (const Index i : put.part.pieces) move.pieces.push_back(parts_.number(i));
        if (put.way >= 0) {
            const auto& out = ways_.direction(static_cast<std::size_t>(put.way));
            for (std::size_t k = 0; k < 3; ++k) move.along[k] = 0.0 - out[k];
        }
        step_.moves.push_back(std::move(move));
        PieceSet together = bench.present;
        together |= put.part.set;
        for (const Index j : parts_.joints_touching(put.part.pieces)) {
            const JointOfFrame& joint = parts_.joints()[j];
            if (joint.stands_in(together) && !joint.stands_in(put.part.set)) join(j, bench);
        }
        bench.present = std::move(together);
    }

    // Its screws wait on, but for those that the tool does not reach once it is on.
    void take_over(const Made& made, Bench& bench) {
        std::vector<Index> early;
        for (const Index j : made.waiting) {
            const bool is_shut = access_.joints[j].in_way_of_nose.meets(bench.present);
            (is_shut ? early : bench.waiting).push_back(j);
        }
        for (const Index j : early) {
            auto& last = steps_[made.last_step];
            last.sets.push_back({parts_.joints()[j].joint, false});
            if (squares_.is_unproven(j)) last.by_try_square.push_back(parts_.joints()[j].joint);
            note(shutting_in_.joint(j));
        }
    }

    void join(Index j, Bench& bench) {
        const JointOfFrame& joint = parts_.joints()[j];
        step_.joins.push_back(joint.joint);
        if (joint.is_fastened) bench.waiting.push_back(j);
        if (joint.is_riveted) {
            step_.pins.push_back(pins_of(parts_.catalogue(), parts_.resolved(), joint.joint));
        }
    }

    // Before `next` is put on; null: nothing is.
    void close(Bench& bench, const Put* next) {
        step_.squares = squares_.taken(bench.present);
        std::vector<Index> due;
        std::vector<Index> waiting;
        for (const Index j : bench.waiting) {
            (is_due(j, bench, next) ? due : waiting).push_back(j);
        }
        squares_.prove(due, bench.present, step_.squares);
        for (const Index j : std::exchange(due, {})) {
            const bool waits = can_wait(j, bench, next) && squares_.is_proven_later(j);
            (waits ? waiting : due).push_back(j);
        }
        bench.waiting = std::move(waiting);
        set(due, bench);
        steps_.push_back(std::move(step_));
        is_open_ = false;
    }

    bool is_due(Index j, const Bench& bench, const Put* next) {
        const bool comes_apart = parts_.joints()[j].comes_apart;
        if (next != nullptr && is_shut_by(j, *next, bench)) {
            if (comes_apart) note(shutting_in_.joint(j));
            return true;
        }
        if (comes_apart) return false;
        return !can_wait(j, bench, next) || !squares_.wait_for(parts_.joints()[j].set);
    }

    // For diagonals that more bars make a rectangle of.
    bool can_wait(Index j, const Bench& bench, const Put* next) const {
        if (next == nullptr || taken_.set_with[j] == SetWith::nothing) return false;
        return next <= bench.last_of_bars && !is_shut_by(j, *next, bench);
    }

    void set(const std::vector<Index>& joints, const Bench& bench) {
        for (const Index j : in_turns(parts_, joints)) {
            const auto& of = access_.joints[j];
            const bool is_reached = taken_.set_with[j] != SetWith::nothing;
            const bool long_nose = is_reached && parts_.joints()[j].is_riveted &&
                                   (of.needs_nose || of.in_way.meets(bench.present));
            step_.sets.push_back({parts_.joints()[j].joint, long_nose});
            if (squares_.is_unproven(j)) step_.by_try_square.push_back(parts_.joints()[j].joint);
        }
    }

    void note(std::optional<ShutIn> shut_in) {
        if (shut_in) shut_in_.push_back(std::move(*shut_in));
    }

    // Screws that come out again, last of all.
    void set_screws(Bench& bench) {
        if (bench.waiting.empty()) return;
        if (steps_.back().work == AssemblyWork::screwed_on) {
            step_ = std::move(steps_.back());
            steps_.pop_back();
        } else {
            open(AssemblyWork::screwed_on, bench);
        }
        squares_.prove(bench.waiting, bench.present, step_.squares);
        set(std::exchange(bench.waiting, {}), bench);
        steps_.push_back(std::move(step_));
        is_open_ = false;
    }

    void fix_to_van() {
        const AssemblyStep step{.work = AssemblyWork::fixed_to_van,
                                .frame = parts_.frame(),
                                .fixing_holes = parts_.fixing_holes()};
        if (!step.fixing_holes.empty()) steps_.push_back(step);
    }

    const FrameParts& parts_;
    const PartWays& ways_;
    const ToolAccess& access_;
    const TakenApart& taken_;
    SquaresLeft squares_;
    ShuttingIn shutting_in_;
    std::vector<AssemblyStep>& steps_;
    AssemblyStep step_;
    bool is_open_ = false;
    Index next_assembly_ = 0;
    std::vector<ShutIn> shut_in_;
};

}  // namespace

std::vector<ShutIn> add_frame_steps(const FrameParts& parts,
                                    const PartWays& ways,
                                    const ToolAccess& access,
                                    const TakenApart& taken,
                                    std::span<const SquareAt> squares,
                                    std::vector<SquareRow>& rows,
                                    std::vector<AssemblyStep>& steps) {
    return FrameSteps(parts, ways, access, taken, squares, rows, steps).add();
}

}  // namespace model
