#include "model/buying/purchase_made.h"

#include "model/buying/bars_in_hand.h"

#include "tests/model/buying/order.h"
#include "tests/model/schedule/saw_job.h"

#include <catch2/catch.hpp>

using namespace model;
using tests::has_line;
using tests::mm;
using tests::Order;

TEST_CASE("bars of which a piece is cut are noted at the prices of the plan, delivered once",
          "[model][buying][purchases]") {
    Order order;
    const auto before = order.job.project;
    REQUIRE(order.plans().size() == 2);
    // A piece of the first stock is cut, then one of the other.
    for (const Index stock : {0U, 1U}) order.tick(stock);
    const auto after = order.estimate();
    REQUIRE(after.paid.size() == 2);
    // 20.00 + 35.00, and a tenth; 6.00 and a tenth.
    CHECK(total_of(after.paid[0]) == 6'050);
    CHECK(total_of(after.paid[1]) == 660);
    CHECK_FALSE(delivery_of(after.paid[1]));
    CHECK_FALSE(has_line(after, BuyKind::bar));
    CHECK(purchase_words(after.paid[1]) ==
          "6.60 USD to yard on 2026-11-28; " + std::string(note_of_bars_in_hand));
    order.job.project = before;
    CHECK(order.estimate().paid.empty());
}

TEST_CASE("where no bar is to buy nothing is paid for bars, nor a delivery",
          "[model][buying][purchases]") {
    Order order;
    order.buy(BoughtPart::bars);
    const auto after = order.estimate();
    REQUIRE(has_line(after, BuyKind::delivery));  // of the boxes
    const auto none = purchase_of(after, BoughtPart::bars, "2026-11-28");
    CHECK(none.lines.empty());
    CHECK(total_of(none) == 0);
}

TEST_CASE("a purchase whose step was undone counts for nothing until it is done again",
          "[model][buying][purchases]") {
    Order order;
    const auto before = order.job.project;
    order.buy(BoughtPart::all);
    const auto after = order.job.project;
    order.job.project = before;
    CHECK(order.estimate().paid.empty());
    CHECK(order.estimate().total == 7'634);
    order.job.project = after;
    CHECK(order.estimate().paid.size() == 1);
    order.job.project = before;
    order.buy(BoughtPart::bars);
    REQUIRE(order.bought.all.size() == 2);
    CHECK(order.estimate().paid == std::vector{order.bought.all[1]});
    CHECK(total_of(order.bought.all[1]) == 6'710);
    // Where the first one was saved and the second was not.
    order.job.project = after;
    CHECK(order.estimate().paid == std::vector{order.bought.all[0]});
}

TEST_CASE("the very same purchase is made again, and stands in the table once",
          "[model][buying][purchases]") {
    Order order;
    const auto before = order.job.project;
    order.buy(BoughtPart::all);
    const auto once = order.bought;
    const auto after = order.job.project;
    order.job.project = before;
    order.buy(BoughtPart::all);
    CHECK(order.bought == once);
    CHECK(order.job.project == after);
}

TEST_CASE("what was bought and undone is not lost where a piece is cut then, nor paid twice",
          "[model][buying][purchases]") {
    Order order;
    const auto before = order.job.project;
    order.buy(BoughtPart::all);
    const auto whole = order.bought.all.at(0);
    REQUIRE(std::ranges::count(whole.lines, BuyKind::fastener, &PaidLine::kind) > 0);
    order.job.project = before;
    for (const Index stock : {0U, 1U}) {
        order.tick(stock);
        REQUIRE(order.bought.all.size() == stock + 2U);
        CHECK(order.bought.all[0] == whole);
        CHECK_FALSE(counts_as_paid(whole, order.job.project));
    }
    // All bars are there again, and were noted anew: 60.50 and 6.60, not 76.34 besides.
    const auto after = order.estimate();
    REQUIRE(after.paid.size() == 2);
    CHECK(total_of(after.paid[0]) + total_of(after.paid[1]) == 6'710);
    CHECK(has_line(after, BuyKind::fastener));
    CHECK(after.total == 4'774);
}

TEST_CASE("an order that was undone is not paid by more bars of its stock",
          "[model][buying][purchases]") {
    Order order;
    const auto before = order.job.project;
    order.buy(BoughtPart::all);
    order.job.project = before;
    // Two bars of the first stock came from elsewhere: more than the order had brought.
    order.job.project.stock[0].at_home = {{"96", 2}};
    CHECK(order.estimate().paid.empty());
    CHECK(has_line(order.estimate(), BuyKind::fastener));
    order.tick(1);
    REQUIRE(order.estimate().paid.size() == 1);
    CHECK(order.estimate().paid[0] == order.bought.all.at(1));
    // Of one order the sum is taken back, which brings no other one back.
    auto taken = apply(order.job.project, TakePurchaseBack{order.bought.all[1].number});
    REQUIRE(taken);
    order.job.project = std::move(taken).value();
    CHECK(order.estimate().paid.empty());
}

TEST_CASE("a sum that was put right stays in the table, and counts again where its step does",
          "[model][buying][purchases]") {
    Order order;
    const auto before = order.job.project;
    order.tick(0);
    REQUIRE(order.bought.all.size() == 1);
    REQUIRE(total_of(order.bought.all[0]) == 6'050);
    order.bought.all[0].lines[0].sum = 1'900;
    order.bought.all[0].note += "; see the receipt";
    const auto corrected = order.bought.all[0];
    const auto after = order.job.project;
    order.job.project = before;
    CHECK(order.estimate().paid.empty());
    order.job.project = after;
    CHECK(order.estimate().paid == std::vector{corrected});
    // A tick anew is noted by the plan, whatever it cost before.
    order.job.project = before;
    order.tick(0);
    REQUIRE(order.bought.all.size() == 2);
    CHECK(order.bought.all[0] == corrected);
    REQUIRE(order.estimate().paid.size() == 1);
    CHECK(total_of(order.estimate().paid[0]) == 6'050);
    const auto again = apply(order.job.project, NotePurchase{corrected.number});
    REQUIRE(again);
    CHECK(paid_for(order.bought, *again).size() == 2);
    CHECK_FALSE(apply(*again, NotePurchase{corrected.number}));
}

TEST_CASE("the number of a purchase is given once, whatever becomes of its row and its step",
          "[model][buying][purchases]") {
    Order order;
    const auto before = order.job.project;
    order.tick(0);
    const auto ticked = order.job.project;
    const auto row = order.bought.all.at(0);
    REQUIRE(row.number == 1);
    // Struck out and undone, but in a file that was saved: its number is the last that was seen.
    CHECK(number_for({}, row, before, 1) == 2);
    // Taken back, its bars are there yet: the very same one is another purchase.
    const auto taken = apply(ticked, TakePurchaseBack{1});
    REQUIRE(taken);
    CHECK(number_for(order.bought, row, *taken) == 2);
    CHECK(number_for(order.bought, row, before) == 1);
    CHECK(words_without_rows(order.bought, ticked).empty());
    CHECK(words_without_rows({}, ticked).find("a purchase that the project knows") == 0);
    CHECK(words_without_rows({}, before).empty());
}

TEST_CASE("bars from the shop say with which purchase they came, and no others do",
          "[model][buying][purchases]") {
    Order order;
    order.tick(0);
    const auto& stock = order.job.project.stock[0];
    REQUIRE(stock.at_saw.size() == 1);
    CHECK(stock.at_saw[0].purchase == order.bought.all.at(0).number);
    CHECK(order.job.project.purchases == std::vector{order.bought.all[0].number});
    // One that lay at home is used first.
    Order other;
    other.job.project.stock[1].at_home = {{"48"}};
    other.buy(BoughtPart::all);
    CHECK(other.job.project.stock[0].at_saw.at(0).purchase == 1);
    CHECK(other.job.project.stock[1].at_saw.at(0).purchase == 0);
}

TEST_CASE("a purchase is known whose only cut is taken back", "[model][buying][purchases]") {
    Order order;
    order.tick(0);
    const auto cut = order.job.project;
    auto taken_back = cut;
    taken_back.stock[0].at_saw.at(0).cuts.at(0).state = CutState::planned;
    CHECK(purchase_left_uncut(order.bought, cut, taken_back) == &order.bought.all[0]);
    CHECK(purchase_left_uncut(order.bought, taken_back, cut) == nullptr);
    // Where another piece is cut or spoiled its bars are begun all the same.
    auto two = cut;
    two.stock[0].at_saw[0].cuts.at(1).state = CutState::spoiled;
    auto one = two;
    one.stock[0].at_saw[0].cuts[0].state = CutState::planned;
    CHECK(purchase_left_uncut(order.bought, two, one) == nullptr);
    // Who said himself that he bought them knows it.
    order.bought.all[0].note.clear();
    CHECK(purchase_left_uncut(order.bought, cut, taken_back) == nullptr);
}

namespace {

// Two stocks of one section whose pieces fill half a bar each: one of the first, three of the
// other.
struct SharedBar {
    Order order;

    SharedBar() {
        order.job = tests::saw_job({2900, 2900, 2900, 2900});
        auto& job = order.job;
        // Those are of the pieces that the saw's job has put away.
        job.resolved.joints.clear();
        job.resolved.fasteners.clear();
        job.resolved.holes.clear();
        for (auto& piece : job.resolved.pieces) piece.hole_count = 0;
        job.project.stock.assign(2, Stock(job.project.stock[0]));
        job.project.stock[1].name = "the other";
        for (auto& stock : job.project.stock) stock.at_home.clear();
        for (const Index i : {1U, 2U, 3U}) job.resolved.pieces[i].stock = 1;
        job.project.suppliers = {{.name = "yard", .prices = "yard.csv", .way = WayHome::fetched}};
        order.list = {};
        order.list.terms.cutting_in_half = 200;
        order.list.terms.longest_brought_home = engine::Length::from_nm(mm(4000));
        order.list.bars = {{.section = job.project.stock[0].section,
                            .alloy = job.project.stock[0].alloy,
                            .length = engine::Length::from_nm(mm(6000)),
                            .price = 3'000}};
    }
};

}  // namespace

TEST_CASE("stocks that share a bar cut in half are bought together, by a cut of either of them",
          "[model][buying][purchases]") {
    const Index first = GENERATE(0U, 1U);
    CAPTURE(first);
    SharedBar shared;
    auto& order = shared.order;
    const auto whole = order.estimate();
    REQUIRE(whole.total == 6'400);
    order.tick(first);
    order.tick(1 - first);
    Cents paid = 0;
    for (const auto& it : order.estimate().paid) paid += total_of(it);
    CHECK(paid == whole.total);
    CHECK_FALSE(has_line(order.estimate(), BuyKind::bar));
    for (const auto& stock : order.job.project.stock) {
        CHECK(stock.at_home.empty());
        CHECK(stock.at_saw.size() == (stock.name == "the other" ? 3U : 1U));
        CHECK(stock.at_saw.at(0).cuts.at(0).state == CutState::cut);
    }
}

TEST_CASE("cuts that a seller makes for nothing are free once, however many ticks bring their bars",
          "[model][buying][purchases]") {
    const int free = GENERATE(0, 1, 2, 3, 9);
    CAPTURE(free);
    SharedBar shared;
    auto& order = shared.order;
    // Sections apart, so that each stock halves bars of its own: one of the first, two of the
    // other.
    order.job.project.stock[1].section = "flat 1 x 1/8";
    order.list.bars.push_back(order.list.bars[0]);
    order.list.bars[1].section = "flat 1 x 1/8";
    order.list.terms.free_cuts = free;
    const auto whole = order.estimate();
    // Three bars at 30.00, and 2.00 for each cut that is not free.
    REQUIRE(whole.total == 9'000 + 200 * std::max(3 - free, 0));
    order.tick(0);
    CHECK(total_of(order.bought.all.at(0)) == 3'000 + 200 * std::max(1 - free, 0));
    order.tick(1);
    Cents paid = 0;
    for (const auto& it : order.estimate().paid) paid += total_of(it);
    CHECK(paid == whole.total);
    const auto read = purchases_in(purchases_text(order.bought), "counter.bought.csv");
    REQUIRE(read);
    CHECK(*read == order.bought);
}
