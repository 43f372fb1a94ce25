#include "model/assembly/loose_steps.h"

#include <algorithm>

namespace model {

void name_loose(std::vector<AssemblyStep>& steps) {
    for (auto& step : steps) {
        if (step.work != AssemblyWork::screwed_on || step.moves.empty()) continue;
        const bool is_held = std::ranges::any_of(step.sets, [&](const StepSetting& setting) {
            return std::ranges::find(step.joins, setting.joint) != step.joins.end();
        });
        if (!is_held) step.work = AssemblyWork::put_on_loose;
    }
}

}  // namespace model
