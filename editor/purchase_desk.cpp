#include "editor/purchase_desk.h"

#include "editor/buy_run.h"
#include "editor/desk.h"
#include "model/buying/bars_in_hand.h"
#include "model/schedule/bar_work.h"

#include <algorithm>
#include <array>
#include <ctime>
#include <utility>

namespace editor {
namespace {

std::string today() {
    const std::time_t now = std::time(nullptr);
    std::tm day{};
    localtime_r(&now, &day);
    std::array<char, 16> text{};
    std::strftime(text.data(), text.size(), "%Y-%m-%d", &day);
    return text.data();
}

model::Estimate estimate_of(const Desk& desk,
                            const Derived& now,
                            const std::vector<model::BarPlan>& plans) {
    const auto from = model::chosen_supplier(*now.project, *desk.prices.library);
    const auto* facts = buy_facts(desk);
    auto estimate = model::estimate_of(*now.project, *desk.catalogue, now.resolved, plans, from,
                                       facts == nullptr ? nullptr : &facts->fasteners);
    // Of a supplier whose list cannot be read the name at least is known.
    if (estimate.from.empty()) estimate.from = now.project->shop.supplier;
    return estimate;
}

model::Estimate estimate_of(const Desk& desk, const Derived& now) {
    return estimate_of(desk, now, now.plans);
}

// "A bar counts", "3 bars still count".
std::string count_words(const model::Purchase& purchase, const std::string& still) {
    int bars = 0;
    for (const auto& line : purchase.lines) {
        if (line.kind == model::BuyKind::bar) bars += line.count;
    }
    return bars == 1 ? "A bar " + still + "counts"
                     : std::to_string(bars) + " bars " + still + "count";
}

// The notice has one line: what else there is to say stands under Buy.
std::string paid_words(const model::Purchase& purchase) {
    return model::sum_in_words({purchase}) +
           (purchase.supplier.empty() ? "" : " to " + purchase.supplier);
}

std::string words_of_noting(const model::Purchase& purchase, bool is_in_hand) {
    const auto paid = "Noted as paid: " + paid_words(purchase);
    if (!is_in_hand) return paid;
    return count_words(purchase, "") + " as bought, since a piece is cut. " + paid +
           ". Undo takes the bars back; Buy takes back the sum alone";
}

const model::Purchases& purchases_of(const Desk& desk) {
    static const model::Purchases none;
    const auto* bought = desk.prices.library->purchases();
    return bought == nullptr ? none : *bought;
}

// A table that cannot be read or written has no number to tell it by: then nothing is noted.
engine::Result<engine::Done> submit_unnoted(Desk& desk,
                                            const Change& change,
                                            const engine::Error& why) {
    auto done = submit(desk, change);
    if (done) desk.ui.notice = Notice{"What was paid is not noted: " + engine::to_text(why), true};
    return done;
}

// The edits bring the bars of the plans. The table has it first: what is in no project does not
// count there.
engine::Result<engine::Done> submit_noted(Desk& desk,
                                          const Change& change,
                                          const std::vector<model::BarPlan>& plans,
                                          model::Purchase purchase) {
    if (purchase.lines.empty()) return submit(desk, change);
    const auto& bought = desk.prices.library->bought;
    if (!bought) return submit_unnoted(desk, change, bought.error());
    const auto before = desk.history.now();
    const int number = model::number_for(*bought, purchase, *before, desk.prices.last_purchase);
    purchase.number = number;
    Change with_it = change;
    with_it.edits = model::noted(change.edits, *before, plans, number);
    if (!project_after(*before, with_it)) return submit(desk, with_it);  // which says why
    const auto put = put_purchases(desk, model::with_purchase(*bought, std::move(purchase)));
    if (!put) return submit_unnoted(desk, change, put.error());
    auto done = submit(desk, with_it);
    if (!done) return done;
    const auto own = std::ranges::find(purchases_of(desk).all, number, &model::Purchase::number);
    desk.ui.notice = Notice{words_of_noting(*own, model::is_of_bars_in_hand(*own))};
    return done;
}

// Of who takes back the only cut of bars that came with it.
void tell_bars_left(Desk& desk, const model::Project& before) {
    const auto* bought = desk.prices.library->purchases();
    if (bought == nullptr) return;
    const auto* left = model::purchase_left_uncut(*bought, before, project_of(desk));
    if (left == nullptr) return;
    desk.ui.notice = Notice{
        count_words(*left, "still ") +
        " as bought, though no piece is cut any more. Undo takes the bars back, once the cut "
        "itself is undone; Buy takes back the sum alone"};
}

bool finds_goods_to_buy(const Desk& desk, const Derived& now) {
    const auto all = model::purchase_of(estimate_of(desk, now), model::BoughtPart::all, {});
    return std::ranges::any_of(all.lines, [](const model::PaidLine& line) {
        return line.kind != model::BuyKind::delivery;
    });
}

}  // namespace

void buy(Desk& desk, model::BoughtPart part) {
    nest_now(desk);
    const auto& now = derived(desk);
    auto purchase = model::purchase_of(estimate_of(desk, now), part, today());
    Change change;
    change.edits = model::bars_bought(*now.project, *desk.catalogue, now.resolved, now.plans);
    if (change.edits.empty() && purchase.lines.empty()) return;
    change.label = part == model::BoughtPart::all ? "Buy what was left to buy" : "Buy the bars";
    static_cast<void>(submit_noted(desk, change, now.plans, std::move(purchase)));
}

engine::Result<engine::Done> submit_with_bars(Desk& desk, const Change& change) {
    if (!change.takes_bars) return submit(desk, change);
    const auto before = desk.history.now();
    const auto after = project_after(*before, change);
    if (!after) return submit(desk, change);  // which says why
    const auto& now = derived(desk);
    const auto plans = model::plans_of_new_bars(now.plans, *before, *after);
    if (plans.empty()) {
        auto done = submit(desk, change);
        if (done) tell_bars_left(desk, *before);
        return done;
    }
    auto told = change;
    if (told.label.empty())
        told.label = model::label_of(change.edits.back()) + "; its bars count as bought";
    return submit_noted(desk, told, plans,
                        model::purchase_of(estimate_of(desk, now, plans),
                                           model::BoughtPart::bars_in_hand, today()));
}

bool has_goods_to_buy(const Desk& desk) {
    if (!desk.derived_memo) return false;
    const Derived& now = *desk.derived_memo;
    auto& memo = desk.goods_memo;
    const bool is_known = memo && memo->of == worked_out_of(now) &&
                          memo->prices == desk.prices.library &&
                          memo->is_nested == now.summary.is_nested;
    if (!is_known) {
        memo = GoodsMemo{worked_out_of(now), desk.prices.library, now.summary.is_nested,
                         finds_goods_to_buy(desk, now)};
    }
    return memo->has_any;
}

void take_purchase_back(Desk& desk, std::size_t which) {
    const auto& all = purchases_of(desk).all;
    if (which < all.size())
        static_cast<void>(submit(desk, change_of(model::TakePurchaseBack{all[which].number})));
}

void count_purchase_again(Desk& desk, std::size_t which) {
    const auto& all = purchases_of(desk).all;
    if (which < all.size())
        static_cast<void>(submit(desk, change_of(model::NotePurchase{all[which].number})));
}

void forget_purchase(Desk& desk, std::size_t which) {
    auto rest = purchases_of(desk);
    if (which >= rest.all.size()) return;
    rest.all.erase(rest.all.begin() + static_cast<std::ptrdiff_t>(which));
    const auto put = put_purchases(desk, std::move(rest));
    if (!put) desk.ui.notice = Notice{engine::to_text(put.error()), true};
}

void tend_purchases(Desk& desk) {
    const auto wish = std::exchange(desk.ui.purchase, {});
    const bool at_saw = std::exchange(desk.ui.make.saw.wants_bought, false);
    if (at_saw || wish.kind == PurchaseWish::Kind::bars) buy(desk, model::BoughtPart::bars);
    if (wish.kind == PurchaseWish::Kind::all) buy(desk, model::BoughtPart::all);
    if (wish.kind == PurchaseWish::Kind::take_back) take_purchase_back(desk, wish.which);
    if (wish.kind == PurchaseWish::Kind::count_again) count_purchase_again(desk, wish.which);
    if (wish.kind == PurchaseWish::Kind::forget) forget_purchase(desk, wish.which);
}

}  // namespace editor
