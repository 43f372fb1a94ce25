// The shop book: all that is needed at the bench, without a computer beside it.
#pragma once

#include "engine/drawing/document.h"
#include "model/buying/estimate.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"
#include "model/schedule/bar_plan.h"

#include <string>
#include <vector>

namespace model {

// What is bought and cut, worked out before: it can take its time.
struct BookSupply {
    std::vector<BarPlan> plans;
    Estimate estimate;
    std::string verdict;                // on the plans, a line of words
    const PriceList* prices = nullptr;  // of the supplier, where one is bought from
    std::vector<Finding> findings;      // all_findings
};

// Cover, what to buy, what to cut from which bar, frames, typical corners, fasteners and pins,
// checks to sign, index of marks; each chapter with a bookmark. What a project lacks is said where
// it would stand. There is always a cover.
engine::Document shop_book(const Project& project,
                           const Catalogue& catalogue,
                           const Resolved& resolved,
                           const BookSupply& supply,
                           engine::Paper paper);

}  // namespace model
