// What the project costs at each supplier, worked out beside the window.
#pragma once

#include "editor/background_work.h"
#include "editor/derived.h"
#include "model/buying/comparison.h"
#include "model/buying/what_if.h"

#include <functional>
#include <memory>
#include <utility>
#include <vector>

namespace editor {

struct Desk;

struct BuyFacts {
    WorkedOutOf of;
    std::shared_ptr<const model::PriceLibrary> prices;
    std::vector<model::Offering> offerings;     // as stated, then each supplier
    std::vector<model::WithoutLength> what_if;  // at the one that is chosen
    std::vector<model::FastenerRow> fasteners;  // as the assembly order needs them

    const model::Offering* chosen() const;
};

// Whether anything is still to buy, by the plans of one state of the project.
struct GoodsMemo {
    WorkedOutOf of;
    std::shared_ptr<const model::PriceLibrary> prices;
    bool is_nested = false;
    bool has_any = false;
};

// Facts of one state of the project, being worked out.
struct BuyRun {
    using Work = BackgroundWork<BuyFacts>;

    BuyRun(WorkedOutOf is_of,
           std::shared_ptr<const model::PriceLibrary> by,
           Work::Work does,
           std::function<void()> wake)
        : of{std::move(is_of)}, prices{std::move(by)}, work{std::move(does), std::move(wake)} {}

    WorkedOutOf of;
    std::shared_ptr<const model::PriceLibrary> prices;
    Work work;
    bool is_cancelled = false;  // what it gives is half done
};

// Once in each frame in which they are asked for; where the desk has nobody to work beside it
// (Desk::bands), nothing.
void keep_buy_facts(Desk& desk);

// Waits for them; for pictures and tests.
void buy_facts_now(Desk& desk);

// Those of the project as it is now; null until they are there.
const BuyFacts* buy_facts(const Desk& desk);

}  // namespace editor
