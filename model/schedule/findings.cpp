#include "model/schedule/findings.h"

#include "engine/files/csv.h"
#include "engine/measure/formula.h"
#include "model/resolve/piece_subject.h"
#include "model/schedule/bar_plan.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/saw_seen.h"

#include <algorithm>
#include <string_view>

namespace model {
namespace {

std::string counted_pieces(std::size_t count) {
    return std::to_string(count) + (count == 1 ? " piece" : " pieces");
}

Subject stock_subject(const Stock& stock) {
    return {.kind = SubjectKind::stock, .name = stock.name};
}

// The stock, then what the pieces are part of, each once.
std::vector<Subject> subjects(const Project& project,
                              const Resolved& resolved,
                              const Stock& stock,
                              const std::vector<Index>& pieces) {
    std::vector<Subject> all{stock_subject(stock)};
    for (const auto piece : pieces) {
        auto subject =
            piece_subject(project.frames[resolved.pieces[piece].frame], resolved.pieces[piece]);
        if (all.back() != subject) all.push_back(std::move(subject));
    }
    return all;
}

Finding no_bars_offered(const Stock& stock, std::size_t pieces) {
    return {.code = "no_bars_offered",
            .severity = Severity::warning,
            .concerns = {stock_subject(stock)},
            .what = "no bar is stated that stock \"" + stock.name + "\" can be cut from, so " +
                    counted_pieces(pieces) + " of it are in no bar",
            .mend = "state the lengths in which it can be bought, or the offcuts at hand"};
}

// Splices are placed by the bars that the stock states: where the one who sells has shorter ones,
// none is placed.
bool states_longer(const Project& project,
                   const Resolved& resolved,
                   const Stock& stock,
                   engine::Length room) {
    const auto stated = bar_supply(project, resolved, stock);
    return std::ranges::any_of(stated.offers, [&](const OfferedBar& offer) {
        return offer.length - 2 * resolved.shop.end_trim > room.nm();
    });
}

Finding no_bar_long_enough(const Project& project, const Resolved& resolved, const BarPlan& plan) {
    const auto& stock = project.stock[plan.stock];
    const auto longest = engine::Length::from_nm(resolved.pieces[plan.too_long.front()].length);
    const auto room = engine::Length::from_nm(std::max<Nm>(plan.longest_piece_room, 0));
    return {.code = "no_bar_long_enough",
            .severity = Severity::error,
            .concerns = subjects(project, resolved, stock, plan.too_long),
            .numbers = {{"length", longest}, {"most", room}},
            .what = counted_pieces(plan.too_long.size()) + " of stock \"" + stock.name +
                    "\" fit no bar: the longest is " + shown_text(longest, project.shown) +
                    ", and the longest bar gives " + shown_text(room, project.shown) +
                    " between its end trims",
            .mend = states_longer(project, resolved, stock, room)
                        ? "state the lengths that are sold in the stock itself: what is longer is "
                          "then spliced; or buy longer bars elsewhere"
                        : "offer a longer bar, or set a shorter member"};
}

Finding not_enough_bars(const Project& project, const Resolved& resolved, const BarPlan& plan) {
    const auto& stock = project.stock[plan.stock];
    return {.code = "not_enough_bars",
            .severity = Severity::error,
            .concerns = subjects(project, resolved, stock, plan.left_out),
            .numbers = {{"pieces", static_cast<double>(plan.left_out.size())}},
            .what = "the bars of stock \"" + stock.name + "\" that can be had run out with " +
                    counted_pieces(plan.left_out.size()) + " still to cut",
            .mend = "raise the limit, or offer another length"};
}

Finding bar_length_refused(const Stock& stock, const engine::Error& error) {
    return {.code = "bar_length_refused",
            .severity = Severity::error,
            .concerns = {stock_subject(stock)},
            .what = "a bar of stock \"" + stock.name + "\" is left out: " + engine::to_text(error),
            .mend = "state its length as in \"16 ft\""};
}

// Good pieces that nothing is made of any more: the design has changed since.
void append_unused_cuts(const Project& project,
                        const Catalogue& catalogue,
                        const Resolved& resolved,
                        Index stock_index,
                        std::vector<Finding>& findings) {
    const auto& stock = project.stock[stock_index];
    if (stock.at_saw.empty()) return;
    const auto seen = saw_seen(project, catalogue, resolved, stock_index);
    for (std::size_t bar = 0; bar < stock.at_saw.size(); ++bar) {
        for (std::size_t i = 0; i < stock.at_saw[bar].cuts.size(); ++i) {
            const auto& cut = stock.at_saw[bar].cuts[i];
            const auto& as = seen.bars[bar].cuts[i];
            if (cut.state != CutState::cut || as.piece != no_index || as.length == 0) continue;
            const std::string made_for = cut.mark.empty() ? "" : " for " + cut.mark;
            findings.push_back({.code = "cut_piece_unused",
                                .severity = Severity::warning,
                                .concerns = {stock_subject(stock)},
                                .numbers = {{"bar", static_cast<double>(bar + 1)},
                                            {"cut", static_cast<double>(i + 1)}},
                                .what = "a piece of stock \"" + stock.name + "\" that was cut" +
                                        made_for + ", " + cut.length +
                                        " long, fits nothing that is still to be made",
                                .mend = "lay it on the rack as an offcut"});
        }
    }
}

Finding price_list_not_read(const Stock& stock, const ListNotRead& list) {
    return {.code = "price_list_not_read",
            .severity = Severity::error,
            .concerns = {stock_subject(stock)},
            .what = engine::to_text(list.error),
            .mend = list.is_within
                        ? "mend that place in the list, or choose another supplier"
                        : "put the list back where the project looks for it, or choose another "
                          "supplier"};
}

Finding bar_without_price(const Stock& stock, const engine::Error& error) {
    return {.code = "bar_without_price",
            .severity = Severity::note,
            .concerns = {stock_subject(stock)},
            .what = engine::to_text(error),
            .mend = "write its price into the list, or take its row out"};
}

Finding bar_not_brought_home(const Stock& stock, const engine::Error& error) {
    return {.code = "bar_not_brought_home",
            .severity = Severity::note,
            .concerns = {stock_subject(stock)},
            .what = engine::to_text(error) + "; it is planned without",
            .mend = "have it delivered, or cut where it is sold, if another bar costs more"};
}

void append_names(std::vector<std::string>& names, const Frame& frame, const std::string& plane) {
    for (const auto& it : frame.planes) {
        if (it.name != plane) continue;
        for (auto& name : engine::names_in(it.position)) {
            if (std::ranges::find(names, name) == names.end()) names.push_back(std::move(name));
        }
    }
}

// A maker changes dimensions, not planes: says which ones a member without length comes from.
void name_dimensions(Finding& finding, const Project& project) {
    if (finding.concerns.empty()) return;
    const auto& subject = finding.concerns.front();
    std::vector<std::string> names;
    for (const auto& frame : project.frames) {
        if (frame.name != subject.frame) continue;
        for (const auto& member : frame.members) {
            if (member.name != subject.name) continue;
            append_names(names, frame, member.from);
            append_names(names, frame, member.to);
        }
    }
    for (std::size_t i = 0; i < names.size(); ++i) {
        finding.what += (i == 0 ? "; that follows from " : " and ") + names[i];
    }
}

}  // namespace

std::vector<Finding> bar_findings(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const std::function<BarSupply(const Stock&)>& supply) {
    std::vector<Finding> findings;
    const auto plans = bar_plans(project, catalogue, resolved,
                                 {.effort = PlanEffort::first_fit, .supply = supply});
    for (const auto& plan : plans) {
        const auto& stock = project.stock[plan.stock];
        for (const auto& error : plan.supply.refused)
            findings.push_back(bar_length_refused(stock, error));
        if (plan.supply.list_not_read)
            findings.push_back(price_list_not_read(stock, *plan.supply.list_not_read));
        for (const auto& error : plan.supply.not_home) {
            const bool lacks_price = error.code == engine::ErrorCode::invalid_text;
            findings.push_back(lacks_price ? bar_without_price(stock, error)
                                           : bar_not_brought_home(stock, error));
        }
        append_unused_cuts(project, catalogue, resolved, plan.stock, findings);
        if (plan.supply.offers.empty() && plan.supply.offcuts.empty() &&
            plan.supply.at_home.empty()) {
            const auto left = plan.too_long.size() + plan.left_out.size();
            if (left == 0) continue;
            findings.push_back(no_bars_offered(stock, left));
        } else {
            if (!plan.too_long.empty()) {
                findings.push_back(no_bar_long_enough(project, resolved, plan));
            }
            if (!plan.left_out.empty()) {
                findings.push_back(not_enough_bars(project, resolved, plan));
            }
        }
    }
    return findings;
}

std::vector<Finding> all_findings(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const std::function<BarSupply(const Stock&)>& supply) {
    auto findings = resolved.findings;
    for (auto& finding : findings) {
        if (finding.code == "no_length") name_dimensions(finding, project);
    }
    for (auto& finding : bar_findings(project, catalogue, resolved, supply)) {
        findings.push_back(std::move(finding));
    }
    std::ranges::stable_sort(findings, std::ranges::greater{}, &Finding::severity);
    return findings;
}

std::string finding_csv(const std::vector<Finding>& findings) {
    engine::CsvText text{"code", "severity", "where", "what", "mend"};
    for (const auto& finding : findings) {
        text.row({finding.code, name_of(finding.severity), where_text(finding), finding.what,
                  finding.mend});
    }
    return std::move(text).take();
}

}  // namespace model
