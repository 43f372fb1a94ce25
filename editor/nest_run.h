// Nests the bars beside the window: the plan of first fit is shown until the cheapest is there.
#pragma once

#include "editor/background_work.h"
#include "editor/derived.h"
#include "editor/history.h"
#include "model/schedule/bar_plan.h"

#include <functional>
#include <memory>
#include <utility>
#include <vector>

namespace editor {

struct Desk;

// Plans for the project of one revision, being worked out.
struct NestRun {
    using Work = BackgroundWork<std::vector<model::BarPlan>>;

    NestRun(const Derived& of, Work::Work does, std::function<void()> wake)
        : revision{of.revision},
          scans{of.scans},
          prices{of.prices},
          work{std::move(does), std::move(wake)} {}

    Revision revision = 0;
    std::shared_ptr<const model::ScanLibrary> scans;
    std::shared_ptr<const model::PriceLibrary> prices;
    Work work;
    bool is_cancelled = false;  // what it gives is half done
};

// Once in each frame: begins what is wanted, and takes what is finished into what follows from the
// project. What is no longer wanted is cancelled and left to notice that; the window never waits.
// Nothing where the desk has nobody to work beside it (Desk::bands).
void keep_nested(Desk& desk);

// Waits for it; for pictures and tests.
void nest_now(Desk& desk);

// Puts the plans in the place of those of first fit.
void take_nest(Desk& desk, std::vector<model::BarPlan> plans);

}  // namespace editor
