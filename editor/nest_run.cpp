#include "editor/nest_run.h"

#include "editor/desk.h"
#include "editor/project_copy.h"

#include <utility>

namespace editor {
namespace {

std::unique_ptr<NestRun> begun(const Desk& desk, const Derived& now) {
    const auto job = project_copy(desk, now);
    auto work =
        [job](const NestRun::Work::GoOn& go_on) -> engine::Result<std::vector<model::BarPlan>> {
        return model::bar_plans(
            *job->project, *job->catalogue, job->resolved,
            {.supply = supply_of(*job->project, job->resolved, job->prices.get()),
             .go_on = [&go_on] { return go_on(0.0); }});
    };
    return std::make_unique<NestRun>(now, std::move(work), desk.wake);
}

bool is_of(const NestRun& run, const Derived& now) {
    return run.revision == now.revision && run.scans == now.scans && run.prices == now.prices;
}

}  // namespace

void take_nest(Desk& desk, std::vector<model::BarPlan> plans) {
    derived(desk);
    auto& now = *desk.derived_memo;
    take_plans(now, std::move(plans), *desk.catalogue);
    now.summary.is_nested = true;
    desk.change_memo.reset();
    desk.figures[now.revision] = {nullptr, now.summary, now.tally};
}

void keep_nested(Desk& desk) {
    if (!desk.bands) return;
    const Derived& now = derived(desk);
    auto& run = desk.nest_run;
    if (run && !is_of(*run, now)) {
        run->is_cancelled = true;
        run->work.cancel();
    }
    if (run && !run->work.is_finished()) return;
    if (run && run->is_cancelled) run.reset();
    if (run && is_of(*run, now) && !now.summary.is_nested && run->work.result()) {
        auto plans = *run->work.result();
        run.reset();
        take_nest(desk, std::move(plans));
        return;
    }
    if (run && is_of(*run, now)) return;  // it could not be worked out: first fit stays
    run.reset();
    if (!now.summary.is_nested) run = begun(desk, now);
}

void nest_now(Desk& desk) {
    const Derived& now = derived(desk);
    if (now.summary.is_nested) return;
    desk.nest_run.reset();
    take_nest(desk, model::bar_plans(
                        *now.project, *desk.catalogue, now.resolved,
                        {.supply = supply_of(*now.project, now.resolved, now.prices.get())}));
}

}  // namespace editor
