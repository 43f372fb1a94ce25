#include "engine/cutting/nest.h"

#include "engine/cutting/effort.h"
#include "engine/cutting/nest_input.h"
#include "engine/cutting/nest_plan.h"
#include "engine/cutting/polish.h"
#include "engine/cutting/search.h"

#include <algorithm>

namespace engine {

namespace {

Error without_plan(const cutting::Search& search, const cutting::Effort& effort) {
    if (effort.is_stopped())
        return {ErrorCode::cancelled, "nest", "stopped before there was any plan"};
    if (!search.is_settled())
        return {ErrorCode::out_of_range, "nest",
                "no plan was found within the bars on offer; offer more of them"};
    return {ErrorCode::out_of_range, "stock",
            "the bars on offer do not hold all pieces; offer more of them"};
}

// What is told while the search goes on.
class Telling {
public:
    Telling(const NestProblem& problem, const cutting::Task& task, const NestLimits& limits)
        : problem_{problem}, task_{task}, limits_{limits} {}

    void listen_to(const cutting::Search& search) { search_ = &search; }

    bool go_on(std::int64_t work) {
        if (!limits_.go_on) return true;
        NestProgress progress{.cost = std::nullopt, .least_cost = 0, .work = work, .plan = nullptr};
        if (search_) progress.least_cost = search_->least_cost();
        if (search_ && search_->found().packing) {
            take(search_->found());
            progress.cost = plan_.cost;
            progress.plan = &plan_;
            progress.least_cost = std::min(progress.least_cost, plan_.cost);
        }
        return limits_.go_on(progress);
    }

private:
    void take(const cutting::Found& found) {
        if (price_ == found.vector.price) return;
        price_ = found.vector.price;
        plan_ = cutting::plan_of(problem_, task_, *found.packing);
    }

    const NestProblem& problem_;
    const cutting::Task& task_;
    const NestLimits& limits_;
    const cutting::Search* search_ = nullptr;
    std::optional<cutting::Price> price_;
    NestPlan plan_;
};

// Beyond the search's own, so that the rest of a plan is as good where the search used up its work.
constexpr std::int64_t polish_steps = 80'000'000;

Nest outcome(const NestProblem& problem,
             const cutting::Task& task,
             const cutting::Search& search,
             Telling& telling,
             const cutting::Effort& effort) {
    const cutting::Found& found = search.found();
    cutting::Effort polishing(effort.is_stopped() ? 0 : polish_steps, [&](std::int64_t work) {
        return telling.go_on(effort.done() + work);
    });
    Nest nest;
    nest.plan = cutting::plan_of(problem, task, cutting::polished(task, found, polishing));
    nest.least_cost = std::min(nest.plan.cost, search.least_cost());
    nest.is_cheapest = nest.plan.cost == nest.least_cost;
    nest.is_shortest = cutting::Price{nest.plan.cost, nest.plan.bought_length} <= found.least;
    nest.work = effort.done() + polishing.done();
    return nest;
}

}  // namespace

Result<Nest> nest(const NestProblem& problem, const NestLimits& limits) {
    if (auto error = cutting::mistake(problem)) return *error;
    const cutting::Task task = cutting::task_of(problem);
    if (task.items.empty())
        return Nest{
            .plan = {}, .least_cost = 0, .is_cheapest = true, .is_shortest = true, .work = 0};
    Telling telling(problem, task, limits);
    cutting::Effort effort(limits.work,
                           [&telling](std::int64_t work) { return telling.go_on(work); });
    cutting::Search search(task, effort);
    telling.listen_to(search);
    search.run();
    if (!search.found().packing) return without_plan(search, effort);
    return outcome(problem, task, search, telling, effort);
}

}  // namespace engine
