#include "model/buying/estimate.h"

#include "engine/files/csv.h"
#include "model/buying/buy_csv.h"
#include "model/buying/comparison.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace engine::literals;
using namespace model;

namespace {

// The small job: two posts of 12 in and a rail of 19 11/16 in from an angle, flats of 6 and 9 in
// from a strap; four rivets and one spare, two screws and one, a nut and one, pins.
struct SmallShop {
    tests::SmallJob job = tests::small_job();
    PriceList prices;
    Supplier supplier{.name = "the yard", .prices = "yard.csv"};

    SmallShop() {
        job.project.stock[0].offcuts.clear();
        prices.terms.currency = "USD";
        prices.terms.delivery = 4'500;
        prices.terms.tax_percent = 8.25;
        prices.bars = {
            {.section = "angle 1 x 1 x 1/8", .alloy = "6063-T52", .length = 96_in, .price = 1'351},
            {.section = "flat 1 x 1/8", .alloy = "6063-T52", .length = 48_in, .price = 600}};
        prices.boxes = {{.fastener = "blind rivet 1/8, grip 4-4", .count = 100, .price = 840},
                        {.fastener = "machine screw 8-32 x 1/2 in", .count = 2, .price = 90},
                        {.fastener = "nut for machine screw 8-32", .count = 100, .price = 300},
                        {.fastener = "sheet pin 1/8", .count = 1, .price = 45}};
    }

    // As the nest would give them: pieces do not matter for the price.
    BarPlan plan(Index stock, std::vector<PlannedBar> bars) const {
        return {.stock = stock, .bars = std::move(bars)};
    }
    std::vector<BarPlan> whole_bars() const {
        return {plan(0, {{.length = (96_in).nm(), .price = 1'351}}),
                plan(1, {{.length = (48_in).nm(), .price = 600}})};
    }
    Estimate estimate(const std::vector<BarPlan>& plans) const {
        return estimate_of(job.project, job.catalogue, job.resolved, plans, {&supplier, &prices});
    }
};

const EstimateLine& line_of(const Estimate& estimate, const std::string& what) {
    const auto at = std::ranges::find(estimate.lines, what, &EstimateLine::what);
    if (at == estimate.lines.end()) FAIL("no line for " + what);
    return *at;
}

}  // namespace

TEST_CASE("an estimate adds up bars, boxes and delivery, and tax once on the sum",
          "[model][buying][estimate]") {
    const SmallShop purchase;
    const auto estimate = purchase.estimate(purchase.whole_bars());
    CHECK(estimate.without.empty());
    CHECK(line_of(estimate, "angle 1 x 1 x 1/8 6063-T52").sum == 1'351);
    // Two screws and one spare come in boxes of two.
    const auto& screws = line_of(estimate, "machine screw 8-32 x 1/2 in");
    CHECK(screws.count == 2);
    CHECK(screws.sum == 180);
    CHECK(screws.note == "1 over");
    // Two pins for each of the two riveted joints of the one frame.
    CHECK(line_of(estimate, "sheet pin 1/8").sum == 180);
    // 13.51 + 6.00 + 8.40 + 1.80 + 3.00 + 1.80 + 45.00 = 79.51; 8.25 % of it is 6.559575.
    CHECK(estimate.sum == 7'951);
    CHECK(estimate.tax == 656);
    CHECK(estimate.total == 8'607);
    CHECK(total_in_words(estimate) == "86.07 USD");
}

TEST_CASE("what is fetched costs no delivery", "[model][buying][estimate]") {
    SmallShop purchase;
    purchase.supplier.way = WayHome::fetched;
    CHECK(purchase.estimate(purchase.whole_bars()).sum == 3'451);
}

TEST_CASE("of bars cut in half whole ones are bought, and each is cut once",
          "[model][buying][estimate]") {
    SmallShop purchase;
    purchase.prices.terms.cutting_in_half = 300;
    const PlannedBar half{.length = (48_in).nm(), .price = 826, .halved_from = (96_in).nm()};
    const auto estimate = purchase.estimate({purchase.plan(0, {half, half, half})});
    const auto& bars = line_of(estimate, "angle 1 x 1 x 1/8 6063-T52");
    CHECK(bars.count == 2);
    CHECK(bars.each == 1'351);
    CHECK(bars.sum == 2'702);
    CHECK(bars.note == "each cut in half by the seller, one half is left over");
    CHECK(line_of(estimate, "cutting in half").sum == 600);
}

TEST_CASE("bars at home and offcuts are not bought", "[model][buying][estimate]") {
    const SmallShop purchase;
    const auto estimate =
        purchase.estimate({purchase.plan(0, {{.length = (96_in).nm(), .from = BarFrom::home},
                                             {.length = (30_in).nm(), .from = BarFrom::offcut}})});
    for (const auto& line : estimate.lines) CHECK(line.kind != BuyKind::bar);
    CHECK(estimate.bought_kg == 0.0);
}

TEST_CASE("what has no price is named beside the total", "[model][buying][estimate]") {
    SmallShop purchase;
    purchase.prices.terms.delivery.reset();
    purchase.prices.boxes.pop_back();
    auto plans = purchase.whole_bars();
    plans[1].bars[0].price.reset();
    plans[0].left_out = {0};
    const auto estimate = purchase.estimate(plans);
    CHECK(estimate.without == std::vector<std::string>{"flat 1 x 1/8 6063-T52",
                                                       "1 piece that no bar holds", "sheet pin 1/8",
                                                       "delivery"});
    // 13.51 + 8.40 + 1.80 + 3.00 = 26.71; 8.25 % of it is 2.203575.
    CHECK(total_in_words(estimate) == "28.91 USD without 4 things that have no price");
    const auto& pins = line_of(estimate, "sheet pin 1/8");
    CHECK(pins.count == 4);
    CHECK_FALSE(pins.sum);
}

TEST_CASE("what nobody knows the price of is no 0.00, what costs nothing is",
          "[model][buying][estimate]") {
    SmallShop purchase;
    purchase.prices = {.terms = {.currency = "USD"}};
    purchase.supplier.way = WayHome::fetched;
    const auto unknown = purchase.estimate({purchase.plan(0, {{.length = (96_in).nm()}})});
    REQUIRE_FALSE(unknown.lines.empty());
    CHECK_FALSE(has_total(unknown));
    CHECK(total_in_words(unknown) ==
          "no price is known yet of all " + std::to_string(unknown.without.size()) + " things");
    const auto table = buy_csv(unknown, purchase.job.project.shown);
    CHECK(table.find("0.00") == std::string::npos);
    const Estimate nothing{.currency = "USD"};
    CHECK(has_total(nothing));
    CHECK(total_in_words(nothing) == "0.00 USD");
    const Estimate one{.currency = "USD", .lines = {{.what = "nut"}}, .without = {"nut"}};
    CHECK(total_in_words(one) == "no price is known yet of nut");
}

TEST_CASE("that cuts or the delivery are free gives goods no price", "[model][buying][estimate]") {
    SmallShop purchase;
    purchase.prices = {.terms = {.currency = "USD", .delivery = 0}};
    const auto halves =
        purchase.plan(0, {{.length = (95_in).nm() / 2, .halved_from = (96_in).nm(), .cuts = {{}}}});
    const auto delivered = purchase.estimate({halves});
    REQUIRE(line_of(delivered, "delivery").sum == 0);
    CHECK_FALSE(has_total(delivered));
    purchase.supplier.way = WayHome::fetched;
    purchase.prices.terms.cutting_in_half = 200;
    purchase.prices.terms.free_cuts = 9;
    const auto cut = purchase.estimate({halves});
    REQUIRE(line_of(cut, "cutting in half").sum == 0);
    CHECK_FALSE(has_total(cut));
    CHECK(buy_csv(cut, purchase.job.project.shown).find("total,the yard,,,,,USD") !=
          std::string::npos);
    const PaidLine bar{.kind = BuyKind::bar, .what = "angle", .count = 1};
    Purchase paid{.lines = {bar, {.kind = BuyKind::delivery, .count = 1, .sum = 0}}};
    CHECK_FALSE(has_sum(paid));
    paid.lines[0].sum = 0;  // given away
    CHECK(has_sum(paid));
    paid = {.lines = {bar, {.kind = BuyKind::delivery, .count = 1, .sum = 3'500}}};
    CHECK(has_sum(paid));
}

TEST_CASE("without a supplier the stock's own prices and the shop's delivery count",
          "[model][buying][estimate]") {
    SmallShop purchase;
    auto& shop = purchase.job.project.shop;
    shop.delivery_fee = 12.5;
    shop.tax_percent = 10.0;
    shop.currency = "CAD";
    const auto& job = purchase.job;
    const auto estimate =
        estimate_of(job.project, job.catalogue, job.resolved, purchase.whole_bars(), {});
    // 13.51 + 6.00 + 12.50 = 32.01; a tenth is 3.201.
    CHECK(estimate.sum == 3'201);
    CHECK(estimate.tax == 320);
    CHECK(estimate.currency == "CAD");
    CHECK(estimate.without.size() == 4);  // rivets, screws, nuts and pins
}

TEST_CASE("what is bought weighs as much as its bars, what is built as its pieces",
          "[model][buying][estimate]") {
    const SmallShop purchase;
    const auto estimate = purchase.estimate(purchase.whole_bars());
    // 1 x 1 x 1/8 has 15/64 in2, 1 x 1/8 has 1/8 in2; at 2700 kg/m3 and 16387.064 mm3 to the
    // cubic inch: (96 x 15/64 + 48 x 1/8) x 16387.064 mm3 x 2.7e-6 kg/mm3 = 1.26098 kg.
    CHECK(estimate.bought_kg == Approx(1.26098).epsilon(1e-4));
    CHECK(estimate.built_kg > 0.3);
    CHECK(estimate.built_kg < estimate.bought_kg);
}

TEST_CASE("the list to buy from reads back, with plain decimal prices",
          "[model][buying][estimate]") {
    const SmallShop purchase;
    const auto text = buy_csv(purchase.estimate(purchase.whole_bars()), {});
    const auto table = engine::read_csv(text);
    REQUIRE(table);
    CHECK(table->header ==
          engine::CsvRow{"kind", "what", "size", "count", "each", "sum", "currency", "note"});
    CHECK(table->rows[0] == engine::CsvRow{"bar", "angle 1 x 1 x 1/8 6063-T52", "8 ft", "1",
                                           "13.51", "13.51", "USD", ""});
    std::vector<std::string> kinds;
    for (const auto& row : table->rows) kinds.push_back(row[0]);
    CHECK(kinds == std::vector<std::string>{"bar", "bar", "fastener", "fastener", "fastener",
                                            "fastener", "delivery", "sum", "tax", "total", "weight",
                                            "weight"});
    CHECK(table->rows[9][5] == "86.07");
}
