#include "model/buying/spoiled.h"

#include "engine/measure/formula.h"
#include "model/buying/money.h"
#include "model/resolve/finding.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/rack.h"
#include "model/schedule/saw_seen.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;
using engine::Length;

struct CutAgain {
    const SawBar* bar = nullptr;
    const SawCut* cut = nullptr;
};

bool is_like(const SawCut& cut, CutState state, const SpoiledPiece& piece) {
    return cut.state == state && cut.mark == piece.mark &&
           std::abs((cut.length - piece.length).nm()) <= same_cut;
}

// What stands in no project yet was planned since; where all does, any of that mark is as good.
CutAgain cut_again(const Project& project,
                   const std::vector<SawBar>& bars,
                   const SpoiledPiece& piece) {
    CutAgain found;
    for (const auto& bar : bars) {
        if (project.stock[bar.stock].name != piece.place.stock) continue;
        for (const auto& cut : bar.cuts) {
            if (!is_like(cut, CutState::planned, piece)) continue;
            const bool is_better = found.cut == nullptr || (found.cut->place && !cut.place);
            if (is_better) found = {&bar, &cut};
        }
    }
    return found;
}

// The longest that it can be: its bar, less what was cut from that well.
Nm most_held(const Project& project,
             const Resolved& resolved,
             const Stock& stock,
             const CutPlace& place) {
    if (place.bar >= stock.at_saw.size()) return 0;
    const auto length_of = [&](const Formula& text) {
        const auto length = stated_length(project, resolved, text);
        return length ? *length : Nm{0};
    };
    const auto& bar = stock.at_saw[place.bar];
    Nm left = length_of(bar.length);
    for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
        const auto& cut = bar.cuts[i];
        const bool is_known = cut.state == CutState::cut || !cut.measured.empty();
        if (i != place.cut && is_known) left -= length_of(formula_of_taken(cut));
    }
    return left;
}

std::string shown(const Project& project, Nm length) {
    return length_in_words(Length::from_nm(length), project.shown);
}

// A bad piece with its length.
struct Measured {
    KeepBars bars;
    Nm length = 0;
};

engine::Result<Measured> measured(const Project& project,
                                  const Resolved& resolved,
                                  const SpoiledPiece& piece,
                                  const std::string& length) {
    const auto& [stock_name, bar, cut] = piece.place;
    const auto stock = std::ranges::find(project.stock, stock_name, &Stock::name);
    if (stock == project.stock.end())
        return Error{ErrorCode::unknown_name, stock_name, "there is no such stock"};
    if (bar >= stock->at_saw.size() || cut >= stock->at_saw[bar].cuts.size())
        return Error{ErrorCode::unknown_name, stock_name, "there is no such cut"};
    const auto read = stated_length(project, resolved, length);
    if (!read) return read.error();
    if (const auto held = most_held(project, resolved, *stock, piece.place); *read > held) {
        return Error{ErrorCode::out_of_range, "",
                     "the bar held no more than " + shown(project, held) + " of it"};
    }
    Measured bad{bars_kept(*stock, {}), *read};
    auto& it = bad.bars.at_saw[bar].cuts[cut];
    // Measured once more it is no second piece.
    const auto back = take_from_rack(project, resolved, bad.bars, it);
    if (!back) return back.error();
    // What lies there does not change its length with a dimension.
    const bool is_plain = engine::names_in(length).empty();
    it.measured = is_plain ? length : shown(project, *read);
    return bad;
}

std::string bar_words(const Project& project, const SawBar& bar) {
    const auto whole = bar.halved_from.nm() > 0 ? bar.halved_from : bar.length;
    return bar_length_text(whole, project.shown) + " of " + bar.section;
}

}  // namespace

std::string words_of_cutting_again(const Project& project,
                                   const std::vector<SawBar>& bars,
                                   const SpoiledPiece& piece,
                                   const std::string& currency) {
    const auto again = cut_again(project, bars, piece);
    if (again.cut == nullptr) {
        return piece.mark +
               " is in no bar now: none that can be had holds it. State a length that can be "
               "bought, under Buy.";
    }
    const auto& bar = *again.bar;
    const std::string number = "bar " + std::to_string(bar.number);
    const std::string place = ", from " + length_text(project, again.cut->start) + " on.";
    switch (bar.from) {
        case BarFrom::saw:
            return "Cut " + piece.mark + " again from " + number + " at the saw" + place;
        case BarFrom::offcut:
            return "Cut " + piece.mark + " again from the offcut of " +
                   length_text(project, bar.length) + " on the rack (" + number + ")" + place;
        case BarFrom::home:
            return "Cut " + piece.mark + " again from the bar of " + bar_words(project, bar) +
                   " at home (" + number + ")" + place;
        case BarFrom::shop:
            break;
    }
    // Half a bar is never sold alone.
    const bool is_halved = bar.halved_from.nm() > 0;
    std::string price = is_halved   ? ", cut in half"
                        : bar.price ? ", " + money_text(*bar.price)
                                    : std::string();
    if (!is_halved && bar.price && !currency.empty()) price += " " + currency;
    return "It is planned from " + number + ", which is still to buy: " + bar_words(project, bar) +
           price + ".";
}

std::optional<SawTick> tick_of_cutting_again(const Project& project,
                                             const std::vector<SawBar>& bars,
                                             const SpoiledPiece& piece) {
    const auto again = cut_again(project, bars, piece);
    if (again.cut == nullptr) return std::nullopt;
    return SawTick{again.bar->number, static_cast<std::size_t>(again.cut - again.bar->cuts.data())};
}

bool is_spoiled(const std::vector<SawBar>& bars, const SpoiledPiece& piece) {
    return std::ranges::any_of(bars, [&](const SawBar& bar) {
        return std::ranges::any_of(bar.cuts, [&](const SawCut& cut) {
            return cut.place == piece.place && cut.state == CutState::spoiled;
        });
    });
}

engine::Result<Edit> bad_piece_kept(const Project& project,
                                    const Resolved& resolved,
                                    const SpoiledPiece& piece,
                                    const std::string& length) {
    auto found = measured(project, resolved, piece, length);
    if (!found) return found.error();
    auto bad = std::move(found).value();
    if (bad.length < resolved.shop.least_offcut) {
        return Error{ErrorCode::out_of_range, "",
                     "it is scrap: offcuts shorter than " +
                         shown(project, resolved.shop.least_offcut) + " are not kept"};
    }
    auto& cut = bad.bars.at_saw[piece.place.bar].cuts[piece.place.cut];
    cut.is_on_rack = true;
    lay_one(bad.bars.offcuts, cut.measured);
    bad.bars.what_was_done = "Lay the bad " + piece.mark + " on the rack";
    return Edit{std::move(bad.bars)};
}

engine::Result<Edit> bad_piece_measured(const Project& project,
                                        const Resolved& resolved,
                                        const SpoiledPiece& piece,
                                        const std::string& length) {
    auto bad = measured(project, resolved, piece, length);
    if (!bad) return bad.error();
    auto bars = std::move(bad).value().bars;
    bars.what_was_done = "Put the bad " + piece.mark + " to the scrap";
    return Edit{std::move(bars)};
}

}  // namespace model
