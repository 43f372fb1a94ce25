// What may be tried so that pieces find a bar, and stock its section and alloy.
#include "engine/measure/tape.h"
#include "model/mend/ways.h"
#include "model/schedule/rack.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace model {
namespace {

std::vector<const Stock*> stocks_of(const Case& of) {
    std::vector<const Stock*> found;
    const auto add = [&](const std::string& name) {
        const auto* stock = named(of.project().stock, name);
        if (stock != nullptr && std::ranges::find(found, stock) == found.end())
            found.push_back(stock);
    };
    for (const auto& subject : of.finding.concerns) {
        if (subject.kind == SubjectKind::stock) add(subject.name);
        const auto* frame = frame_named(of, subject.frame);
        if (subject.kind != SubjectKind::member || frame == nullptr) continue;
        if (const auto* member = named(frame->members, subject.name)) add(member->stock);
    }
    return found;
}

// Lengths in which mills sell bar: common practice; of metric bar from memory.
std::vector<std::string> mill_lengths(const Case& of, const Stock& stock) {
    const auto* section = find_section(of.catalogue(), stock.section);
    if (section != nullptr && section->system == MeasureSystem::metric) return {"6 m"};
    return {"16 ft", "20 ft", "25 ft"};
}

void change(Ways& ways, std::string name, std::string words, Stock stock) {
    ways.push_back({std::move(name), std::move(words), {PutStock{std::move(stock), {}}}});
}

void offer(const Case& of, const Stock& stock, Ways& ways) {
    for (const auto& length : mill_lengths(of, stock)) {
        Stock more = stock;
        more.bars.push_back({.length = length});
        change(ways, "bar " + length, "Offer bars of " + length + " of " + stock.name, more);
    }
}

// What a supplier sells stands in its price list, which no edit changes.
Ways buy_as_stated(const Case& of) {
    auto shop = of.project().shop;
    shop.supplier.clear();
    return {{"as stated",
             "Buy the bars that the stock states, not those of " + of.project().shop.supplier,
             {SetShop{std::move(shop)}}}};
}

// A cut that fits nothing any more counts as spoiled, and its length as an offcut; of one that is
// drilled only what is beyond its holes (common practice).
Mend rack_or_scrap(const Case& of, const Stock& stock, std::size_t bar, std::size_t cut) {
    auto kept = bars_kept(stock, "Lay a cut piece of " + stock.name + " on the rack");
    BarCut& piece = kept.at_saw[bar].cuts[cut];
    piece.state = CutState::spoiled;
    Formula length = piece.length;
    std::string of_it;
    if (const auto undrilled = length_of(of.finding, "undrilled")) {
        if (undrilled->nm() < of.ailing.resolved.shop.least_offcut) {
            kept.what_was_done = "Put a cut piece of " + stock.name + " to the scrap";
            return {"scrap",
                    "It is scrap: it has holes, and no part without them is long enough to keep",
                    {std::move(kept)}};
        }
        if (piece.took.empty()) piece.took = piece.length;
        length = length_in_words(*undrilled, of.project().shown);
        of_it = ": it has holes, and only what is beyond them counts";
    }
    piece.measured = length;
    piece.is_on_rack = true;
    lay_one(kept.offcuts, length);
    return {"offcut of " + length,
            "Lay it on the rack as an offcut of " + length + of_it,
            {std::move(kept)}};
}

}  // namespace

Ways bars_as_stated(const Case& of) { return buy_as_stated(of); }

Ways longer_bars(const Case& of) {
    if (!of.project().shop.supplier.empty()) return buy_as_stated(of);
    Ways ways;
    for (const auto* stock : stocks_of(of)) offer(of, *stock, ways);
    // A splice wants flat bar to back it: the one that the finding names.
    for (const auto& section : of.catalogue().sections) {
        if (of.finding.mend.find("add " + section.id + " to the stock") == std::string::npos)
            continue;
        Stock flat{.name = section.id, .section = section.id, .alloy = section.usual_alloy};
        for (const char* length : {"6 m", "16 ft"}) {
            const bool is_metric = section.system == MeasureSystem::metric;
            if (is_metric == (std::string_view(length) == "6 m")) flat.bars = {{.length = length}};
        }
        ways.insert(ways.begin(), {"stock " + section.id,
                                   "Add " + section.id + " to the stock",
                                   {PutStock{std::move(flat), {}}}});
    }
    return ways;
}

Ways more_bars(const Case& of) {
    if (!of.project().shop.supplier.empty()) return buy_as_stated(of);
    Ways ways;
    for (const auto* stock : stocks_of(of)) {
        for (std::size_t i = 0; i < stock->bars.size(); ++i) {
            if (!stock->bars[i].limit) continue;
            Stock more = *stock;
            more.bars[i].limit.reset();
            change(ways, "no limit " + std::to_string(i + 1),
                   "Take as many bars of " + stock->bars[i].length + " as are needed", more);
        }
        offer(of, *stock, ways);
    }
    return ways;
}

Ways lay_on_rack(const Case& of) {
    Ways ways;
    for (const auto* stock : stocks_of(of)) {
        const auto place = [&](const char* number) {
            return static_cast<std::size_t>(number_of(of.finding, number).value_or(0.0)) - 1;
        };
        const auto bar = place("bar");
        const auto cut = place("cut");
        if (bar >= stock->at_saw.size() || cut >= stock->at_saw[bar].cuts.size()) continue;
        ways.push_back(rack_or_scrap(of, *stock, bar, cut));
    }
    return ways;
}

Ways fewer_bars(const Case& of) {
    Ways ways;
    for (const auto* stock : stocks_of(of)) {
        for (std::size_t i = 0; i < stock->bars.size(); ++i) {
            Stock without = *stock;
            const auto length = without.bars[i].length;
            without.bars.erase(without.bars.begin() + static_cast<std::ptrdiff_t>(i));
            change(ways, "no bar " + std::to_string(i + 1),
                   "Leave out the bar of \"" + length + "\"", without);
        }
        for (std::size_t i = 0; i < stock->offcuts.size(); ++i) {
            Stock without = *stock;
            const auto length = without.offcuts[i].length;
            without.offcuts.erase(without.offcuts.begin() + static_cast<std::ptrdiff_t>(i));
            change(ways, "no offcut " + std::to_string(i + 1),
                   "Leave out the offcut of \"" + length + "\"", without);
        }
    }
    return ways;
}

Ways known_section(const Case& of) {
    Ways ways;
    for (const auto* stock : stocks_of(of)) {
        for (const auto& id : nearest_section_ids(of.catalogue(), stock->section)) {
            Stock known = *stock;
            known.section = id;
            change(ways, "section " + id, "Take " + id, known);
        }
    }
    return ways;
}

Ways known_alloy(const Case& of) {
    Ways ways;
    for (const auto* stock : stocks_of(of)) {
        const auto* section = find_section(of.catalogue(), stock->section);
        if (section == nullptr) continue;
        Stock known = *stock;
        known.alloy = section->usual_alloy;
        change(ways, "alloy " + known.alloy, "Take " + known.alloy + ", usual for " + section->id,
               known);
    }
    if (!stocks_of(of).empty()) return ways;
    auto shop = of.project().shop;
    shop.gusset_alloy = Shop{}.gusset_alloy;
    ways.push_back({"alloy " + shop.gusset_alloy,
                    "Cut gussets from " + shop.gusset_alloy,
                    {SetShop{std::move(shop)}}});
    return ways;
}

}  // namespace model
