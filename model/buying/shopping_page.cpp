#include "model/buying/shopping_page.h"

#include "model/buying/money.h"
#include "model/schedule/page_table.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>

namespace model {
namespace {

using engine::LetterWeight;
using engine::TextAnchor;

constexpr TextAnchor to_end = TextAnchor::end;
constexpr LetterWeight bold = LetterWeight::bold;
constexpr LetterWeight regular = LetterWeight::regular;
constexpr double line_of = 1.35;  // lines apart, in sizes

void draw_lines(PageFlow& flow, const std::string& words, double size, LetterWeight weight) {
    for (const auto& line : wrapped_lines(words, size, flow.width(), weight)) {
        flow.make_room(size * line_of);
        flow.text(line, {.size = size, .weight = weight}, size * line_of);
    }
}

std::string money_or_none(const std::optional<Cents>& cents) {
    return cents ? money_text(*cents) : std::string("no price");
}

void draw_sum(PageFlow& flow,
              const std::string& what,
              const std::string& sum,
              LetterWeight weight) {
    flow.make_room(5.4);
    flow.text(what, {.size = 3.8, .weight = weight}, 0.0);
    flow.page().draw_text({flow.left() + flow.width(), flow.y() + 3.8}, sum,
                          {.size = 3.8, .weight = weight, .anchor = to_end});
    flow.skip(5.4);
}

std::string money_of(Cents cents, const std::string& currency) {
    return money_text(cents) + (currency.empty() ? "" : " " + currency);
}

void draw_sums(PageFlow& flow, const Estimate& estimate) {
    const auto line = [&](const std::string& what, Cents cents, LetterWeight weight) {
        draw_sum(flow, what, money_of(cents, estimate.currency), weight);
    };
    flow.skip(3.0);
    if (estimate.tax != 0) {
        line("Sum", estimate.sum, regular);
        line("Tax", estimate.tax, regular);
    }
    const std::string head = estimate.paid.empty() ? "Total" : "Still to buy";
    if (has_total(estimate)) {
        line(head, estimate.total, bold);
    } else {
        draw_sum(flow, head, "no price is known yet", bold);
    }
    if (estimate.without.empty()) return;
    std::string lacks;
    for (const auto& it : estimate.without) lacks += (lacks.empty() ? "" : ", ") + it;
    flow.skip(1.5);
    draw_lines(flow, "The total lacks, since no price is known or it is not sold: " + lacks + ".",
               3.6, bold);
}

void draw_paid(PageFlow& flow, const Estimate& estimate) {
    if (estimate.paid.empty()) return;
    flow.skip(5.0);
    flow.make_room(16.0);
    draw_lines(flow, "Paid", 4.4, bold);
    flow.skip(1.0);
    for (const auto& purchase : estimate.paid)
        draw_lines(flow, purchase_words(purchase), 3.6, regular);
}

TableCells cells_of(const EstimateLine& line) {
    return {"",        line.count > 0 ? std::to_string(line.count) : "", line.what,
            line.size, line.each ? money_text(*line.each) : "",          money_or_none(line.sum),
            line.note};
}

}  // namespace

std::string shopping_words(const Estimate& estimate) {
    return estimate.from.empty() ? "At the prices that the stock states."
                                 : "From " + estimate.from + ".";
}

void draw_shopping(PageFlow& flow, const Estimate& estimate) {
    if (estimate.lines.empty()) {
        draw_lines(
            flow,
            estimate.paid.empty() ? "There is nothing to buy." : "There is nothing more to buy.",
            3.6, regular);
        draw_paid(flow, estimate);
        return;
    }
    std::vector<TableCells> cells;
    for (const auto& line : estimate.lines) cells.push_back(cells_of(line));
    draw_table(flow,
               {{.head = "", .is_box = true},
                {.head = "How many", .anchor = to_end, .weight = bold},
                {.head = "What", .weight = bold},
                {.head = "Size"},
                {.head = "Each", .anchor = to_end},
                {.head = "Sum", .anchor = to_end},
                {.head = "Note"}},
               cells);
    draw_sums(flow, estimate);
    draw_paid(flow, estimate);
}

void add_shopping_pages(engine::Document& document,
                        const std::string& title,
                        const Estimate& estimate,
                        engine::Paper paper) {
    PageFlow flow(engine::paper_size(paper, engine::PaperTurn::portrait));
    draw_lines(flow, title, 5.5, bold);
    flow.skip(0.5);
    draw_lines(flow, shopping_words(estimate), 3.6, regular);
    flow.skip(3.0);
    draw_shopping(flow, estimate);
    document.bookmarks.push_back({.title = "What to buy", .page = document.pages.size()});
    document.pages.insert(document.pages.end(), flow.pages().begin(), flow.pages().end());
}

}  // namespace model
