#include "model/buying/purchases.h"

#include "engine/files/whole_file.h"
#include "model/buying/buy_csv.h"

#include "tests/model/buying/order.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace model;
using tests::has_line;
using tests::Order;

TEST_CASE("what was paid stands beside what is still to buy", "[model][buying][purchases]") {
    Order order;
    const auto before = order.estimate();
    // 20.00 + 6.00 + 8.40 + 35.00 = 69.40; a tenth of it is 6.94.
    REQUIRE(before.total == 7'634);
    order.buy(BoughtPart::all);
    const auto after = order.estimate();
    REQUIRE(after.paid.size() == 1);
    CHECK(total_of(after.paid[0]) == 7'634);
    CHECK(delivery_of(after.paid[0]) == 3'500);
    CHECK(after.paid[0].supplier == "yard");
    CHECK(after.paid[0].date == "2026-11-27");
    CHECK(purchase_words(after.paid[0]) == "76.34 USD to yard on 2026-11-27, delivery 35.00 in it");
    CHECK_FALSE(has_line(after, BuyKind::bar));
}

TEST_CASE("nothing is delivered again where nothing more can be bought there",
          "[model][buying][purchases]") {
    Order order;
    order.buy(BoughtPart::all);
    const auto after = order.estimate();
    // Screws, nuts and pins are still to buy, but not here.
    CHECK(after.lines.size() == 3);
    CHECK_FALSE(has_line(after, BuyKind::delivery));
    CHECK(after.total == 0);
    CHECK(after.without.size() == 3);
}

TEST_CASE("where the bars alone were bought the rest is another order",
          "[model][buying][purchases]") {
    Order order;
    order.buy(BoughtPart::bars);
    const auto after = order.estimate();
    // 20.00 + 6.00 + 35.00, and a tenth.
    CHECK(total_of(after.paid.at(0)) == 6'710);
    // 8.40 + 35.00, and a tenth.
    CHECK(after.total == 4'774);
}

TEST_CASE("boxes that were bought are taken off, and only what is lacking is bought then",
          "[model][buying][purchases]") {
    Order order;
    order.list.boxes[0].count = 3;
    order.buy(BoughtPart::all);  // two boxes of three for four rivets and a spare
    const auto rivets_in = [](const Estimate& estimate) {
        const auto at =
            std::ranges::find(estimate.lines, "blind rivet 1/8, grip 4-4", &EstimateLine::what);
        return at == estimate.lines.end() ? 0 : at->count;
    };
    CHECK(rivets_in(order.estimate()) == 0);
    auto& line = *std::ranges::find(order.bought.all[0].lines, BuyKind::fastener, &PaidLine::kind);
    REQUIRE(line.count == 2);
    line.count = 1;
    CHECK(rivets_in(order.estimate()) == 1);
}

TEST_CASE("bars that are planned anew were bought all the same", "[model][buying][purchases]") {
    Order order;
    order.buy(BoughtPart::all);
    for (const auto& edit : cuts_planned_anew(order.job.project)) {
        auto changed = apply(order.job.project, edit);
        REQUIRE(changed);
        order.job.project = std::move(changed).value();
    }
    CHECK(order.estimate().paid.size() == 1);
}

TEST_CASE("once something is bought the weight is told as that of what is still to buy",
          "[model][buying][purchases]") {
    Order order;
    for (auto& stock : order.job.project.stock) stock.at_home.clear();
    PriceLibrary library;
    library.lists.emplace("yard.csv", order.list);
    const auto told = [&](const std::string& word) {
        library.bought = order.bought;
        const auto& project = order.job.project;
        const auto rows = comparison_rows(
            comparison(project, order.job.catalogue, order.job.resolved, library), project.shown);
        CHECK(std::ranges::count(rows, "weight " + word, &ComparisonRow::what) == 1);
        CHECK(buy_csv(order.estimate(), project.shown).find("weight," + word + ",") !=
              std::string::npos);
    };
    told("bought");
    order.buy(BoughtPart::bars);
    told("still to buy");
    // By whom the bars that are there were paid for makes no difference.
    order.bought = {};
    told("still to buy");
}

TEST_CASE("other sellers are compared by what is still to buy", "[model][buying][purchases]") {
    Order order;
    order.buy(BoughtPart::bars);
    order.job.project.suppliers.push_back({.name = "hill", .prices = "hill.csv"});
    PriceLibrary library;
    library.lists.emplace("yard.csv", order.list);
    order.list.boxes[0].price = 500;
    order.list.terms.delivery = 0;
    library.lists.emplace("hill.csv", order.list);
    library.bought = order.bought;
    const auto offerings =
        comparison(order.job.project, order.job.catalogue, order.job.resolved, library);
    REQUIRE(offerings.size() == 3);
    CHECK(offerings[1].estimate->total == 4'774);
    CHECK(offerings[2].estimate->total == 550);
}

TEST_CASE("what was bought is written and read back", "[model][buying][purchases]") {
    Order order;
    order.buy(BoughtPart::all);
    order.bought.all.push_back(
        {.date = "2026-12-01",
         .supplier = "corner shop, \"the last\"",
         .currency = "USD",
         .lines = {{BuyKind::sheet, "sheet 5052-H32", "1/8 in x 4 ft x 8 ft", 2, std::nullopt}},
         .note = "paid in cash, see the receipt"});
    const auto read = purchases_in(purchases_text(order.bought), "counter.bought.csv");
    REQUIRE(read);
    CHECK(*read == order.bought);
    CHECK(path_of_purchases("van/counter.json") == std::filesystem::path("van/counter.bought.csv"));
}

TEST_CASE("what was paid is added up, each currency by itself", "[model][buying][purchases]") {
    const Purchase one{
        .currency = "GBP", .lines = {{BuyKind::bar, "angle", "20 ft", 1, 1'050}}, .tax = 50};
    const Purchase two{.currency = "EUR", .lines = {{BuyKind::bar, "flat", "3 m", 1, 900}}};
    const Purchase unknown{.lines = {{BuyKind::sheet, "ply", "", 1, std::nullopt}}};
    CHECK(sum_in_words({one, one}) == "22.00 GBP");
    CHECK(sum_in_words({one, one, unknown}) == "22.00 GBP and an unknown sum");
    CHECK(sum_in_words({one, two}) == "9.00 EUR and 11.00 GBP");
    CHECK(sum_in_words({unknown}) == "an unknown sum");
}

TEST_CASE("a table of purchases that a spreadsheet has sorted is read as it was",
          "[model][buying][purchases]") {
    const auto read = purchases_in(
        "purchase,date,supplier,kind,what,size,count,sum,currency,note,noted_as\n"
        "1,,,bar,flat,8 ft,1,5.00,,,\n"
        "1,2026-11-27,yard,bar,angle,20 ft,3,9.00,USD,,4\n"
        "2,2026-11-28,shop,bar,flat,8 ft,1,5.00,USD,by hand,\n"
        "1,2026-11-27,yard,delivery,delivery,,1,3.00,USD,,4\n",
        "counter.bought.csv");
    REQUIRE(read);
    REQUIRE(read->all.size() == 2);
    CHECK(read->all[0].number == 4);
    CHECK(total_of(read->all[0]) == 1'700);
    // The first row is somebody's own: what it does not say stands in the others.
    CHECK(read->all[0].supplier == "yard");
    CHECK(read->all[0].currency == "USD");
    CHECK(read->all[1].number == 0);
    // Nobody noted what stands there by hand alone: it counts.
    CHECK(paid_for(*read, Project{}) == std::vector{read->all[1]});
}

TEST_CASE("two taxes of one purchase are both paid", "[model][buying][purchases]") {
    const auto read = purchases_in(
        "purchase,kind,what,count,sum\n1,bar,angle,1,100.00\n"
        "1,tax,,1,10.00\n1,tax,,1,4.00\n1,tax,,1,\n",
        "counter.bought.csv");
    REQUIRE(read);
    CHECK(total_of(read->all.at(0)) == 11'400);
    const auto again = purchases_in(purchases_text(*read), "counter.bought.csv");
    REQUIRE(again);
    CHECK(*again == *read);
}

TEST_CASE("an older table of purchases, which tells of bars, is read, and all in it counts",
          "[model][buying][purchases]") {
    const auto read = purchases_in(
        "purchase,date,supplier,kind,what,size,count,sum,currency,note\n"
        "1,2026-11-27,yard,bar,angle,20 ft,3,9.00,USD,\n"
        "1,2026-11-27,yard,bars then,angle,,3,,USD,\n",
        "counter.bought.csv");
    REQUIRE(read);
    REQUIRE(read->all.size() == 1);
    CHECK(read->all[0].lines.size() == 1);
    CHECK(paid_for(*read, Project{}).size() == 1);
}

TEST_CASE("an error in what was bought has its file, line and column",
          "[model][buying][purchases]") {
    const std::string head = "purchase,date,supplier,kind,what,size,count,sum,currency\n";
    const auto where = [&](const std::string& row) {
        const auto read = purchases_in(head + row + "\n", "counter.bought.csv");
        return read ? std::string("read") : read.error().where;
    };
    CHECK(where("1,2026-11-27,yard,bar,angle,20 ft,3,much,USD") ==
          "counter.bought.csv, line 2, column sum");
    CHECK(where("1,2026-11-27,yard,beam,angle,20 ft,3,9.00,USD") ==
          "counter.bought.csv, line 2, column kind");
    CHECK(where("1,2026-11-27,yard,bar,angle,20 ft,three,9.00,USD") ==
          "counter.bought.csv, line 2, column count");
    CHECK(where("one,2026-11-27,yard,bar,angle,20 ft,3,9.00,USD") ==
          "counter.bought.csv, line 2, column purchase");
    CHECK(where("1,2026-11-27,yard,bar,angle,20 ft,3,9.00,USD") == "read");
    const auto noted = purchases_in("purchase,kind,what,count,sum,noted_as\n1,bar,angle,3,9.00,x\n",
                                    "counter.bought.csv");
    REQUIRE_FALSE(noted);
    CHECK(noted.error().where == "counter.bought.csv, line 2, column noted_as");
    const auto noted_where = [](const std::string& rows) {
        const auto read =
            purchases_in("purchase,kind,what,count,sum,noted_as\n" + rows, "counter.bought.csv");
        return read ? std::string("read") : read.error().where;
    };
    CHECK(noted_where("1,bar,angle,3,9.00,1000000\n") ==
          "counter.bought.csv, line 2, column noted_as");
    // Two purchases of one number, and one of two.
    CHECK(noted_where("1,bar,angle,3,9.00,4\n2,bar,angle,3,9.00,4\n") ==
          "counter.bought.csv, line 3, column noted_as");
    CHECK(noted_where("1,bar,angle,3,9.00,4\n1,bar,flat,3,9.00,5\n") ==
          "counter.bought.csv, line 3, column noted_as");
    CHECK(noted_where("1,bar,angle,3,9.00,4\n1,bar,flat,3,9.00,\n2,bar,flat,1,2.00,\n") == "read");
    CHECK_FALSE(purchases_in("a photograph", "counter.bought.csv"));
    const tests::ScratchFolder scratch{"purchases"};
    CHECK(read_purchases(scratch.path / "none.bought.csv")->all.empty());
}
