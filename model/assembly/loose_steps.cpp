#include "model/assembly/loose_steps.h"

#include "model/assembly/joint_pieces.h"
#include "model/resolve/piece_groups.h"

#include <algorithm>
#include <map>
#include <utility>

namespace model {
namespace {

// Follows the steps, and what hangs together after each.
class Holding {
public:
    Holding(const Resolved& resolved, std::vector<AssemblyStep>& steps)
        : resolved_{resolved}, steps_{steps}, groups_{resolved.pieces.size()} {}

    void note() {
        for (Index s = 0; s < steps_.size(); ++s) {
            auto& step = steps_[s];
            for (std::size_t m = 0; m < step.moves.size(); ++m) open_.push_back({s, m});
            if (!step.moves.empty())
                laid_down_.try_emplace({step.frame, step.assembly}, step.moves.front().pieces);
            for (const auto& pins : step.pins) hold(pins.joint);
            for (const auto& setting : step.sets) hold(setting.joint);
            std::erase_if(open_, [&](const OpenMove& open) {
                if (!is_held(open)) return false;
                steps_[open.step].moves[open.move].held_in = s;
                return true;
            });
        }
    }

private:
    struct OpenMove {
        Index step = 0;
        std::size_t move = 0;
    };

    void hold(Index joint) {
        const auto pieces = pieces_together(resolved_, resolved_.joints[joint]);
        for (const Index piece : pieces) groups_.join(piece, pieces.front());
    }

    bool is_held(const OpenMove& open) {
        const auto& step = steps_[open.step];
        const auto& first = laid_down_.at({step.frame, step.assembly});
        return std::ranges::any_of(step.moves[open.move].pieces, [&](Index piece) {
            return std::ranges::any_of(
                first, [&](Index laid) { return groups_.of(laid) == groups_.of(piece); });
        });
    }

    const Resolved& resolved_;
    std::vector<AssemblyStep>& steps_;
    PieceGroups groups_;
    std::map<std::pair<Index, Index>, std::vector<Index>> laid_down_;  // by frame and assembly
    std::vector<OpenMove> open_;                                       // not held yet
};

}  // namespace

void name_loose(const Resolved& resolved, std::vector<AssemblyStep>& steps) {
    Holding(resolved, steps).note();
    for (Index s = 0; s < steps.size(); ++s) {
        auto& step = steps[s];
        if (step.work != AssemblyWork::screwed_on || step.moves.empty()) continue;
        const bool is_loose = std::ranges::all_of(
            step.moves, [&](const AssemblyMove& move) { return is_put_on_loose(steps, s, move); });
        if (is_loose) step.work = AssemblyWork::put_on_loose;
    }
}

bool is_put_on_loose(const std::vector<AssemblyStep>& steps, Index step, const AssemblyMove& move) {
    const auto work = steps[step].work;
    const bool comes_apart = work == AssemblyWork::screwed_on || work == AssemblyWork::put_on_loose;
    return comes_apart && move.held_in != step;
}

}  // namespace model
