#include "editor/buy_run.h"

#include "editor/desk.h"

#include <algorithm>

namespace editor {
namespace {

// All that the work reads, owned by it.
struct Job {
    WorkedOutOf of;
    Snapshot project;
    std::shared_ptr<const model::Catalogue> catalogue;
    std::shared_ptr<const model::PriceLibrary> prices;
    model::Resolved resolved;
};

Job job_of(Desk& desk) {
    const Derived& now = derived(desk);
    return {worked_out_of(now), now.project, desk.catalogue, desk.prices.library, now.resolved};
}

BuyFacts facts_of(const Job& job, const std::function<bool()>& go_on) {
    BuyFacts facts{.of = job.of, .prices = job.prices};
    facts.fasteners = model::needed_fasteners(*job.project, *job.catalogue, job.resolved);
    facts.offerings = model::comparison(*job.project, *job.catalogue, job.resolved, *job.prices,
                                        go_on, &facts.fasteners);
    const auto* chosen = facts.chosen();
    if (chosen == nullptr || (go_on && !go_on())) return facts;
    const auto from = model::chosen_supplier(*job.project, *job.prices);
    facts.what_if = model::what_if_without(
        *job.project, *job.catalogue, job.resolved, chosen->plans,
        {.supply = model::supply_of(*job.project, job.resolved, from), .go_on = go_on});
    return facts;
}

bool is_of(const BuyRun& run, const Desk& desk, const Derived& now) {
    return run.of == worked_out_of(now) && run.prices == desk.prices.library;
}

}  // namespace

const model::Offering* BuyFacts::chosen() const {
    const auto found = std::ranges::find(offerings, true, &model::Offering::is_chosen);
    if (found != offerings.end()) return &*found;
    return offerings.empty() ? nullptr : &offerings.front();
}

const BuyFacts* buy_facts(const Desk& desk) {
    const auto& facts = desk.buy_facts;
    if (!facts || !desk.derived_memo || facts->prices != desk.prices.library) return nullptr;
    return facts->of == worked_out_of(*desk.derived_memo) ? &*facts : nullptr;
}

void keep_buy_facts(Desk& desk) {
    if (!desk.bands) return;
    const Derived& now = derived(desk);
    if (buy_facts(desk) != nullptr) return;
    auto& run = desk.buy_run;
    if (run && !is_of(*run, desk, now)) {
        run->is_cancelled = true;
        run->work.cancel();
    }
    if (run && !run->work.is_finished()) return;
    if (run && run->is_cancelled) run.reset();
    if (run && is_of(*run, desk, now)) {
        if (run->work.result()) desk.buy_facts = *run->work.result();
        return;  // what could not be worked out is not tried again
    }
    run.reset();
    auto job = std::make_shared<const Job>(job_of(desk));
    run = std::make_unique<BuyRun>(
        job->of, job->prices,
        [job](const BuyRun::Work::GoOn& go_on) -> engine::Result<BuyFacts> {
            return facts_of(*job, [&go_on] { return go_on(0.0); });
        },
        desk.wake);
}

void buy_facts_now(Desk& desk) {
    if (buy_facts(desk) != nullptr) return;
    desk.buy_run.reset();
    desk.buy_facts = facts_of(job_of(desk), {});
}

}  // namespace editor
