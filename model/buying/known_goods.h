// What a price list may name: what the catalogue knows, as our schedules name it.
#pragma once

#include "model/catalogue/catalogue.h"

#include <map>
#include <string>
#include <string_view>

namespace model {

enum class GoodsKind { bar, sheet, fastener };

struct Goods {
    GoodsKind kind = GoodsKind::bar;
    std::string name;        // as it is written into a list: "angle 1 x 1 x 1/8 6063-T52"
    std::string what;        // section, material or fastener
    std::string alloy;       // of a bar
    bool has_grain = false;  // of a sheet

    bool operator==(const Goods&) const = default;
};

Goods bar_goods(const std::string& section, const std::string& alloy);
Goods sheet_goods(const std::string& material, bool has_grain);  // "sheet birch plywood with grain"

class KnownGoods {
public:
    explicit KnownGoods(const Catalogue& catalogue);

    // Spaces and capitals do not matter; null where nothing is called so.
    const Goods* find(std::string_view name) const;

    // What a misspelt name most likely means; empty where nothing comes near it.
    std::string nearest(std::string_view name) const;

private:
    void add(Goods goods);
    void add_fasteners(const Catalogue& catalogue);

    std::map<std::string, Goods, std::less<>> goods_;             // by compact name
    std::map<std::string, std::string, std::less<>> usual_bars_;  // by compact section
};

}  // namespace model
