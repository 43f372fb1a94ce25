// An order at a yard, by the small job: what is bought of it, and what is cut.
#pragma once

#include "model/buying/comparison.h"
#include "model/buying/purchase_made.h"
#include "model/schedule/bar_work.h"
#include "model/schedule/saw_bars.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <vector>

namespace tests {

// A yard that sells bars and rivets and delivers for 35.00; screws, nuts and pins it does not have.
struct Order {
    SmallJob job = small_job();
    model::PriceList list;
    model::Purchases bought;

    Order() {
        job.project.stock[0].offcuts.clear();
        job.project.suppliers = {{.name = "yard", .prices = "yard.csv"}};
        job.project.shop.supplier = "yard";
        list.terms.currency = "USD";
        list.terms.delivery = 3'500;
        list.terms.tax_percent = 10.0;
        list.bars = {{.section = "angle 1 x 1 x 1/8",
                      .alloy = "6063-T52",
                      .length = engine::Length::from_nm(96 * engine::Length::nm_per_inch),
                      .price = 2'000},
                     {.section = "flat 1 x 1/8",
                      .alloy = "6063-T52",
                      .length = engine::Length::from_nm(48 * engine::Length::nm_per_inch),
                      .price = 600}};
        list.boxes = {{.fastener = "blind rivet 1/8, grip 4-4", .count = 100, .price = 840}};
    }

    model::BuyFrom from() const { return {&job.project.suppliers[0], &list, &bought}; }
    std::vector<model::BarPlan> plans() const {
        return model::bar_plans(job.project, job.catalogue, job.resolved,
                                {.supply = model::supply_of(job.project, job.resolved, from())});
    }
    model::Estimate estimate() const {
        return model::estimate_of(job.project, job.catalogue, job.resolved, plans(), from());
    }
    void buy(model::BoughtPart part) {
        note(model::bars_bought(job.project, job.catalogue, job.resolved, plans()), plans(),
             model::purchase_of(estimate(), part, "2026-11-27"));
    }
    // The first piece of the stock is cut, whose bars are noted where they had not been bought.
    void tick(model::Index stock) {
        const auto before = job.project;
        const auto all = plans();
        const auto bars = model::saw_bars(before, job.catalogue, job.resolved, all);
        const auto bar = std::ranges::find(bars, stock, &model::SawBar::stock);
        REQUIRE(bar != bars.end());
        const auto edits = model::cuts_ticked(before, job.catalogue, job.resolved, all,
                                              {{bar->number, 0}}, model::CutState::cut);
        REQUIRE(edits);
        make(*edits);
        const auto fresh = model::plans_of_new_bars(all, before, job.project);
        if (fresh.empty()) return;
        job.project = before;
        const auto now = model::estimate_of(before, job.catalogue, job.resolved, fresh, from());
        note(*edits, fresh, model::purchase_of(now, model::BoughtPart::bars_in_hand, "2026-11-28"));
    }

private:
    void make(const std::vector<model::Edit>& edits) {
        for (const auto& edit : edits) {
            auto changed = model::apply(job.project, edit);
            if (!changed) FAIL(engine::to_text(changed.error()));
            job.project = std::move(changed).value();
        }
    }
    // What a step of the window does.
    void note(const std::vector<model::Edit>& edits,
              const std::vector<model::BarPlan>& of_plans,
              model::Purchase purchase) {
        purchase.number = model::number_for(bought, purchase, job.project);
        make(model::noted(edits, job.project, of_plans, purchase.number));
        bought = model::with_purchase(bought, std::move(purchase));
    }
};

inline bool has_line(const model::Estimate& estimate, model::BuyKind kind) {
    return std::ranges::count(estimate.lines, kind, &model::EstimateLine::kind) > 0;
}

}  // namespace tests
