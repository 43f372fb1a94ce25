#include "model/buying/price_list.h"

#include "engine/measure/text_scan.h"
#include "model/buying/known_goods.h"
#include "model/buying/list_lengths.h"
#include "model/buying/list_rows.h"
#include "model/buying/money.h"
#include "model/buying/price_terms.h"
#include "model/catalogue/near_name.h"

#include <algorithm>
#include <map>
#include <utility>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;

constexpr std::array<std::string_view, 6> list_headings{"what", "size",  "price",
                                                        "per",  "limit", "note"};
constexpr int most_of_anything = 1'000'000;

// A whole number without a sign; none for anything else, and for more than anybody counts.
std::optional<int> count_in(std::string_view text) {
    if (text.empty() || text.size() > 7) return std::nullopt;
    int count = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') return std::nullopt;
        count = count * 10 + (c - '0');
    }
    return count <= most_of_anything ? std::optional{count} : std::nullopt;
}

// How many are in a "box of 100"; 1 for "each", none where it says something else.
std::optional<int> box_count(std::string_view per) {
    const auto words = compact_name(per);
    if (words.empty() || words == "each" || words == "1") return 1;
    for (const std::string_view box : {"boxof", "bagof", "packof"}) {
        if (words.substr(0, box.size()) != box) continue;
        const auto count = count_in(std::string_view{words}.substr(box.size()));
        return count && *count > 0 ? count : std::nullopt;
    }
    return std::nullopt;
}

bool is_one(std::string_view per, std::string_view word) {
    const auto words = compact_name(per);
    return words.empty() || words == "each" || words == "1" || words == word;
}

class ListReader {
public:
    ListReader(std::string_view file, const Catalogue& catalogue, engine::LengthUnit bare)
        : file_{file}, goods_{catalogue}, bare_{bare} {}

    engine::Result<PriceList> list(const ListRows& rows) {
        separator_ = rows.separator;
        note_columns(rows.headings);
        for (const auto& row : rows.rows) {
            row_ = &row;
            take_row();
            if (error_) return *error_;
        }
        return std::move(list_);
    }

private:
    void note_columns(const ListRow& headings) {
        for (std::size_t i = 0; i < headings.fields.size(); ++i) {
            const auto& heading = headings.fields[i];
            if (heading.empty()) continue;
            if (std::ranges::find(list_headings, heading) == list_headings.end() ||
                !columns_.emplace(heading, i).second) {
                warn(headings.line, "the column " + engine::quoted(heading) +
                                        " is not read; the columns are what, size, price, per, "
                                        "limit and note");
            }
        }
    }

    std::string_view field(std::string_view column) const {
        const auto at = columns_.find(column);
        return at == columns_.end() ? std::string_view{} : row_->fields[at->second];
    }

    std::string place(std::size_t line) const { return file_ + ", line " + std::to_string(line); }

    void warn(std::size_t line, std::string message) {
        list_.warnings.push_back({ErrorCode::unknown_name, place(line), std::move(message)});
    }

    // The first fault is kept.
    void fail(std::string_view column, std::string message) {
        if (error_) return;
        error_ = Error{ErrorCode::bad_file, place(row_->line) + ", column " + std::string(column),
                       std::move(message)};
    }

    void take_row() {
        const auto what = field("what");
        if (what.empty()) {
            fail("what", "it is not said what this row is about; name it, or begin the row with #");
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
        warn(row_->line,
             "the catalogue has no " + engine::quoted(what) + ", so the row is not used" +
                 (nearest.empty() ? "" : "; the nearest is " + engine::quoted(nearest)));
    }

    void take_term(const TermRow& term) {
        is_only_one(std::string(term.name), "what");
        const auto price = field("price");
        if (term.length != nullptr) {
            if (!price.empty()) fail("price", "this is a length; it stands in the column size");
            if (!field("size").empty()) list_.terms.*term.length = length();
        } else if (term.count != nullptr) {
            if (!price.empty()) fail("price", "this is a number; it stands in the column limit");
            if (!field("size").empty())
                fail("size", "this is a number; it stands in the column limit");
            if (const auto count = limit()) list_.terms.*term.count = *count;
        } else if (!field("size").empty()) {
            fail("size", "this has no size; what it comes to stands in the column price");
        } else if (term.name == "currency") {
            list_.terms.currency = price;
        } else if (term.money != nullptr) {
            if (!price.empty()) list_.terms.*term.money = money();
        } else if (!price.empty()) {
            const auto percent = read_percent(price);
            if (!percent) fail("price", percent.error().message);
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
        if (!is_one(field("per"), "bar")) fail_per("bar");
        BarPrice bar{.section = goods.what,
                     .alloy = goods.alloy,
                     .length = length(),
                     .price = price(),
                     .limit = limit(),
                     .note = std::string(field("note"))};
        is_only_one(goods.name + "|" + std::to_string(bar.length.nm()), "size");
        list_.bars.push_back(std::move(bar));
    }

    void take_sheet(const Goods& goods) {
        if (!is_one(field("per"), "sheet")) fail_per("sheet");
        const auto size = read_sheet_size(field("size"), bare_, separator_);
        if (!size) return fail("size", size.error().message);
        std::string key = goods.name;
        for (const auto side : *size) key += "|" + std::to_string(side.nm());
        is_only_one(key, "size");
        list_.sheets.push_back({.material = goods.what,
                                .thickness = (*size)[0],
                                .size = {(*size)[1], (*size)[2]},
                                .has_grain = goods.has_grain,
                                .price = price(),
                                .limit = limit(),
                                .note = std::string(field("note"))});
    }

    void take_box(const Goods& goods) {
        const auto count = box_count(field("per"));
        if (!count) return fail_per("box of 100");
        if (!field("size").empty())
            fail("size",
                 "a box has no size; how many are in it stands in the column per, as in "
                 "box of 100");
        is_only_one(goods.name + "|" + std::to_string(*count), "per");
        list_.boxes.push_back({.fastener = goods.what,
                               .count = *count,
                               .price = price(),
                               .limit = limit(),
                               .note = std::string(field("note"))});
    }

    void fail_per(std::string_view usual) {
        fail("per", "the price is for " + engine::quoted(field("per")) + "; write \"" +
                        std::string(usual) +
                        "\" or \"each\" here, and a price with a comma in quotes or with a point");
    }

    engine::Length length() {
        const auto read = read_list_length(field("size"), bare_, separator_);
        if (!read) fail("size", read.error().message);
        return read ? *read : engine::Length{};
    }

    Cents money() {
        const auto read = read_money(field("price"));
        if (!read) {
            fail("price", read.error().message);
            return 0;
        }
        check_sign(read->sign);
        return read->cents;
    }

    // Two codes of currencies that differ cannot both be meant; "$" may be any dollar.
    void check_sign(const std::string& sign) {
        const auto& currency = list_.terms.currency;
        if (sign.size() != 3 || currency.size() != 3 || sign == currency) return;
        if (static_cast<unsigned char>(sign[0]) >= 0x80) return;
        if (static_cast<unsigned char>(currency[0]) >= 0x80) return;
        fail("price", "this price is in " + sign + ", the list in " + currency +
                          "; keep one list for each currency");
    }

    std::optional<Cents> price() {
        if (field("price").empty()) return std::nullopt;
        const auto cents = money();
        if (cents == 0) fail("price", "a price of nothing; leave it empty where it is not known");
        return cents;
    }

    std::optional<int> limit() {
        const auto text = field("limit");
        if (text.empty()) return std::nullopt;
        const auto count = count_in(text);
        if (!count) {
            fail("limit", engine::quoted(text) +
                              " is no number of things; write how many can be had, or leave it "
                              "empty");
        }
        return count;
    }

    void is_only_one(const std::string& key, std::string_view column) {
        const auto [at, is_new] = lines_.emplace(key, row_->line);
        if (is_new) return;
        fail(column, "the same stands on line " + std::to_string(at->second) +
                         " already; keep one of the two rows");
    }

    std::string file_;
    KnownGoods goods_;
    engine::LengthUnit bare_;
    char separator_ = ',';
    std::map<std::string, std::size_t, std::less<>> columns_;
    std::map<std::string, std::size_t> lines_;  // on which each thing stands
    const ListRow* row_ = nullptr;
    int unknown_ = 0;
    PriceList list_;
    std::optional<Error> error_;
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
    return ListReader{file, catalogue, bare}.list(*rows);
}

std::optional<Cents> halving_fee(const PriceTerms& terms) {
    return terms.cutting_in_half ? terms.cutting_in_half : terms.each_cut;
}

}  // namespace model
