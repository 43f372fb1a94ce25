#include "engine/cutting/nest.h"

#include "engine/cutting/effort.h"
#include "engine/cutting/nest_input.h"
#include "engine/cutting/nest_plan.h"
#include "engine/cutting/polish.h"
#include "engine/cutting/search.h"

#include <algorithm>

namespace engine {

namespace {

Error without_plan(const cutting::Effort& effort) {
    if (effort.is_stopped())
        return {ErrorCode::cancelled, "nest", "stopped before there was any plan"};
    if (effort.is_over())
        return {ErrorCode::out_of_range, "nest",
                "no plan was found within the bars on offer; offer more of them"};
    return {ErrorCode::out_of_range, "stock",
            "the bars on offer do not hold all pieces; offer more of them"};
}

Nest outcome(const NestProblem& problem,
             const cutting::Task& task,
             const cutting::Search& search,
             cutting::Effort& effort) {
    const cutting::Found& found = search.found();
    Nest nest;
    nest.plan = cutting::plan_of(problem, task, cutting::polished(task, found, effort));
    nest.least_cost = std::min(nest.plan.cost, search.least_cost());
    nest.is_cheapest = nest.plan.cost == nest.least_cost;
    nest.is_shortest = cutting::Price{nest.plan.cost, nest.plan.bought_length} <= found.least;
    return nest;
}

}  // namespace

Result<Nest> nest(const NestProblem& problem, const NestLimits& limits) {
    if (auto error = cutting::mistake(problem)) return *error;
    const cutting::Task task = cutting::task_of(problem);
    if (task.items.empty())
        return Nest{
            .plan = {}, .least_cost = 0, .is_cheapest = true, .is_shortest = true, .work = 0};
    const cutting::Search* asked = nullptr;
    cutting::Effort effort(limits.work, [&](std::int64_t work) {
        if (!limits.go_on) return true;
        NestProgress progress{.cost = std::nullopt, .least_cost = 0, .work = work};
        if (asked) progress.least_cost = asked->least_cost();
        if (asked && asked->found().packing) progress.cost = asked->found().vector.price.cost;
        return limits.go_on(progress);
    });
    cutting::Search search(task, effort);
    asked = &search;
    search.run();
    if (!search.found().packing) return without_plan(effort);
    Nest nest = outcome(problem, task, search, effort);
    nest.work = effort.done();
    return nest;
}

}  // namespace engine
