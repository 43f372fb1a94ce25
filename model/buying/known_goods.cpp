#include "model/buying/known_goods.h"

#include "model/catalogue/near_name.h"
#include "model/schedule/fastener_words.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace model {
namespace {

// "×" is what careful people write between sizes.
std::string comparable(std::string_view name) {
    constexpr std::string_view times = "\xC3\x97";
    std::string text{name};
    for (auto at = text.find(times); at != std::string::npos; at = text.find(times))
        text.replace(at, times.size(), "x");
    return compact_name(text);
}

std::string sheet_name(const std::string& material, bool has_grain) {
    return "sheet " + material + (has_grain ? " with grain" : "");
}

}  // namespace

Goods bar_goods(const std::string& section, const std::string& alloy) {
    return {.kind = GoodsKind::bar,
            .name = section + " " + alloy,
            .what = section,
            .alloy = alloy,
            .has_grain = false};
}

Goods sheet_goods(const std::string& material, bool has_grain) {
    return {.kind = GoodsKind::sheet,
            .name = sheet_name(material, has_grain),
            .what = material,
            .alloy = "",
            .has_grain = has_grain};
}

KnownGoods::KnownGoods(const Catalogue& catalogue) {
    for (const auto& section : catalogue.sections) {
        for (const auto& alloy : catalogue.alloys) add(bar_goods(section.id, alloy.id));
        if (!section.usual_alloy.empty())
            usual_bars_[comparable(section.id)] = bar_goods(section.id, section.usual_alloy).name;
    }
    for (const bool has_grain : {false, true}) {
        for (const auto& alloy : catalogue.alloys) add(sheet_goods(alloy.id, has_grain));
        for (const auto& sheet : catalogue.sheet_materials) add(sheet_goods(sheet.id, has_grain));
    }
    add_fasteners(catalogue);
}

void KnownGoods::add(Goods goods) {
    auto key = comparable(goods.name);
    goods_.emplace(std::move(key), std::move(goods));
}

void KnownGoods::add_fasteners(const Catalogue& catalogue) {
    const auto add_label = [&](const std::string& label) {
        add({.kind = GoodsKind::fastener, .name = label, .what = label, .alloy = ""});
    };
    const auto add_all = [&](FastenerSpec::Kind kind, std::size_t index, std::size_t grips) {
        for (std::size_t grip = 0; grip < grips; ++grip) {
            const FastenerSpec spec{
                .kind = kind, .index = static_cast<Index>(index), .grip = static_cast<Index>(grip)};
            add_label(fastener_words(catalogue, spec).label);
        }
    };
    for (std::size_t i = 0; i < catalogue.rivets.size(); ++i)
        add_all(FastenerSpec::Kind::blind_rivet, i, catalogue.rivets[i].grips.size());
    for (std::size_t i = 0; i < catalogue.screws.size(); ++i) {
        add_all(FastenerSpec::Kind::screw_through, i, catalogue.screws[i].lengths.size());
        add_label("nut for " + catalogue.screws[i].id);
    }
    for (const auto& nut : catalogue.rivet_nuts) add_label(nut.id);
    for (const auto& pin : catalogue.pins) {
        add_label(pin.id);
        add_label(pin.id + ", long");
    }
}

const Goods* KnownGoods::find(std::string_view name) const {
    const auto at = goods_.find(comparable(name));
    return at == goods_.end() ? nullptr : &at->second;
}

std::string KnownGoods::nearest(std::string_view name) const {
    // A longer text than any name is no misspelt one, and would only cost time.
    constexpr std::size_t longest = 100;
    const auto wanted = comparable(name.substr(0, longest));
    const auto usual = usual_bars_.find(wanted);
    if (usual != usual_bars_.end()) return usual->second;
    auto least = std::max<std::size_t>(3, wanted.size() / 2) + 1;
    std::string best;
    for (const auto& [key, goods] : goods_) {
        const auto apart =
            key.size() > wanted.size() ? key.size() - wanted.size() : wanted.size() - key.size();
        if (apart >= least) continue;
        const auto changes = changes_between(wanted, key);
        if (changes >= least) continue;
        least = changes;
        best = goods.name;
    }
    return best;
}

}  // namespace model
