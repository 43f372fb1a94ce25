#include "model/buying/price_list.h"

#include "engine/measure/text_scan.h"
#include "model/buying/counts.h"
#include "model/buying/known_goods.h"
#include "model/buying/list_fields.h"
#include "model/buying/list_lengths.h"
#include "model/buying/list_rows.h"
#include "model/buying/money.h"
#include "model/buying/price_terms.h"
#include "model/catalogue/near_name.h"

#include <utility>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;

bool is_one(std::string_view per, std::string_view word) {
    const auto words = compact_name(per);
    return words.empty() || words == "each" || words == "1" || words == word;
}

class ListReader {
public:
    ListReader(std::string_view file, const Catalogue& catalogue, engine::LengthUnit bare)
        : goods_{catalogue}, row_{file, list_, bare} {}

    engine::Result<PriceList> list(const ListRows& rows) {
        row_.begin(rows);
        for (const auto& row : rows.rows) {
            row_.go_to(row);
            take_row();
            if (row_.error()) return *row_.error();
        }
        warn_free_cuts();
        return std::move(list_);
    }

private:
    void warn_free_cuts() {
        if (list_.terms.free_cuts == 0 || halving_fee(list_.terms)) return;
        row_.warn(
            row_.line_of("free cuts"),
            "free cuts are not used, since it is not said what a further one costs; add a row "
            "\"cutting in half\" or \"each cut\" with its price, 0 where every cut is free");
    }

    void take_row() {
        const auto what = row_.text("what");
        if (what.empty()) {
            row_.fail("what",
                      "it is not said what this row is about; name it, or begin the row with #");
        } else if (const auto* term = find_term(what)) {
            take_term(*term);
        } else if (const auto* goods = goods_.find(what)) {
            take_goods(*goods);
        } else {
            warn_unknown(what);
        }
    }

    // To look for what is meant takes longer than all else here, and nobody reads thousands.
    void warn_unknown(std::string_view what) {
        constexpr int most_searches = 40;
        const auto nearest = ++unknown_ > most_searches ? std::string{} : goods_.nearest(what);
        row_.warn(row_.line(),
                  "the catalogue has no " + engine::quoted(what) + ", so the row is not used" +
                      (nearest.empty() ? "" : "; the nearest is " + engine::quoted(nearest)));
    }

    // What stands in another column than a term's own would say nothing, without a word.
    void stands_in(std::string_view column, const std::string& why) {
        for (const std::string_view other : {"size", "price", "per", "limit"}) {
            const bool is_own = other == column || (other == "per" && column == "price");
            if (is_own || row_.text(other).empty()) continue;
            row_.fail(other, why + " the column " + std::string(column));
            return;
        }
    }

    void take_term(const TermRow& term) {
        row_.is_only_one(std::string(term.name), "what");
        const auto price = row_.text("price");
        if (term.length != nullptr) {
            stands_in("size", "this is a length; it stands in");
            if (!row_.text("size").empty()) list_.terms.*term.length = row_.length();
        } else if (term.count != nullptr) {
            stands_in("limit", "this is a number; it stands in");
            if (const auto count = row_.limit()) list_.terms.*term.count = *count;
        } else {
            stands_in("price", "this has no size and no limit; what it comes to stands in");
            take_price_of(term, price);
        }
    }

    void take_price_of(const TermRow& term, std::string_view price) {
        if (term.name == "currency") {
            list_.terms.currency = price;
        } else if (price.empty()) {
            return;
        } else if (term.money != nullptr) {
            list_.terms.*term.money = row_.money();
        } else {
            const auto percent = read_percent(price);
            if (!percent) row_.fail("price", percent.error().message);
            if (percent) list_.terms.tax_percent = *percent;
        }
    }

    void take_goods(const Goods& goods) {
        if (goods.kind == GoodsKind::bar) {
            take_bar(goods);
        } else if (goods.kind == GoodsKind::sheet) {
            take_sheet(goods);
        } else {
            take_box(goods);
        }
    }

    void take_bar(const Goods& goods) {
        if (!is_one(row_.text("per"), "bar")) fail_per("bar");
        BarPrice bar{.section = goods.what,
                     .alloy = goods.alloy,
                     .length = row_.length(),
                     .price = row_.price(),
                     .limit = row_.limit(),
                     .note = std::string(row_.text("note")),
                     .line = {row_.line()}};
        row_.is_only_one(goods.name + "|" + std::to_string(bar.length.nm()), "size");
        list_.bars.push_back(std::move(bar));
    }

    void take_sheet(const Goods& goods) {
        if (!is_one(row_.text("per"), "sheet")) fail_per("sheet");
        const auto size = read_sheet_size(row_.text("size"), row_.bare(), row_.separator());
        if (!size) return row_.fail("size", size.error().message);
        std::string key = goods.name;
        for (const auto side : *size) key += "|" + std::to_string(side.nm());
        row_.is_only_one(key, "size");
        list_.sheets.push_back({.material = goods.what,
                                .thickness = (*size)[0],
                                .size = {(*size)[1], (*size)[2]},
                                .has_grain = goods.has_grain,
                                .price = row_.price(),
                                .limit = row_.limit(),
                                .note = std::string(row_.text("note"))});
    }

    void take_box(const Goods& goods) {
        const auto count = box_count(row_.text("per"));
        if (!count) return fail_per("box of 100");
        if (!row_.text("size").empty())
            row_.fail("size",
                      "a box has no size; how many are in it stands in the column per, as in "
                      "box of 100");
        row_.is_only_one(goods.name + "|" + std::to_string(*count), "per");
        list_.boxes.push_back({.fastener = goods.what,
                               .count = *count,
                               .price = row_.price(),
                               .limit = row_.limit(),
                               .note = std::string(row_.text("note"))});
    }

    void fail_per(std::string_view usual) {
        row_.fail("per",
                  "the price is for " + engine::quoted(row_.text("per")) + "; write \"" +
                      std::string(usual) +
                      "\" or \"each\" here, and a price with a comma in quotes or with a point");
    }

    KnownGoods goods_;
    int unknown_ = 0;
    PriceList list_;
    ListFields row_;
};

}  // namespace

engine::Result<PriceList> read_price_list(std::string_view text,
                                          std::string_view file,
                                          const Catalogue& catalogue,
                                          engine::LengthUnit bare) {
    const auto rows = read_list_rows(text, {"what", "size", "price"});
    if (!rows) {
        return Error{rows.error().code, std::string(file) + ", " + rows.error().where,
                     rows.error().message};
    }
    auto list = ListReader{file, catalogue, bare}.list(*rows);
    if (!list) return list;
    auto read = std::move(list).value();
    read.file = std::string(file);
    return read;
}

std::optional<Cents> halving_fee(const PriceTerms& terms) {
    return terms.cutting_in_half ? terms.cutting_in_half : terms.each_cut;
}

}  // namespace model
