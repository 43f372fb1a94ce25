// What was bought as a table: a row for each thing, rows of one number are one purchase.
#include "engine/files/csv.h"
#include "engine/files/whole_file.h"
#include "engine/measure/text_scan.h"
#include "model/buying/list_rows.h"
#include "model/buying/money.h"
#include "model/buying/purchases.h"
#include "model/project/project_fields.h"

#include <charconv>
#include <map>
#include <system_error>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;

// Rows that are nothing to buy.
constexpr std::string_view tax_kind = "tax";
constexpr std::string_view bars_kind = "bars then";  // of older tables; it tells nothing any more

std::optional<int> whole_number(std::string_view text) {
    int number = 0;
    const auto* const end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, number);
    if (read.ec != std::errc{} || read.ptr != end || number < 0) return std::nullopt;
    return number;
}

class PurchaseReader {
public:
    explicit PurchaseReader(std::string_view file) : file_{file} {}

    engine::Result<Purchases> purchases(const ListRows& rows) {
        for (const auto& row : rows.rows) {
            row_ = &row;
            headings_ = &rows.headings;
            take_row();
            if (error_) return *error_;
        }
        return std::move(purchases_);
    }

private:
    std::string_view field(std::string_view heading) const {
        for (std::size_t i = 0; i < headings_->fields.size(); ++i) {
            if (headings_->fields[i] == heading) return row_->fields[i];
        }
        return {};
    }

    void fail(std::string_view column, std::string message) {
        if (error_) return;
        error_ = Error{
            ErrorCode::bad_file,
            file_ + ", line " + std::to_string(row_->line) + ", column " + std::string(column),
            std::move(message)};
    }

    int number(std::string_view column) {
        const auto read = whole_number(field(column));
        if (!read)
            fail(column, engine::quoted(field(column)) + " is no whole number; write it as in 3");
        return read.value_or(0);
    }

    std::optional<Cents> sum() {
        if (field("sum").empty()) return std::nullopt;
        const auto read = read_money(field("sum"));
        if (!read) fail("sum", read.error().message);
        return read ? std::optional{read->cents} : std::nullopt;
    }

    void take_row() {
        // A spreadsheet may have sorted them.
        const auto [at, is_new] = places_.try_emplace(number("purchase"), purchases_.all.size());
        if (is_new) purchases_.all.emplace_back();
        auto& purchase = purchases_.all[at->second];
        take_first(purchase.date, "date");
        take_first(purchase.supplier, "supplier");
        take_first(purchase.currency, "currency");
        take_first(purchase.note, "note");
        if (!field("noted_as").empty()) take_noted(purchase, at->first);
        take_thing(purchase);
    }

    // Of all rows of a purchase, the first that says it.
    void take_first(std::string& value, std::string_view column) const {
        if (value.empty()) value = field(column);
    }

    void take_noted(Purchase& purchase, int called) {
        const int noted = number("noted_as");
        if (noted >= most_count) {  // the next one has a number too
            fail("noted_as",
                 "purchases are noted as 1 to 999999; leave it empty in rows of your own");
        } else if (purchase.number != 0 && purchase.number != noted) {
            fail("noted_as", "another row of purchase " + std::to_string(called) + " is noted as " +
                                 std::to_string(purchase.number) +
                                 "; give what you add yourself a number of its own in the column "
                                 "purchase, and leave this empty");
        } else if (const auto other = noted_.try_emplace(noted, called).first->second;
                   noted != 0 && other != called) {
            fail("noted_as", "purchase " + std::to_string(other) + " is noted as " +
                                 std::to_string(noted) +
                                 " already; leave it empty in a purchase that you add yourself");
        }
        purchase.number = noted;
    }

    void take_thing(Purchase& purchase) {
        const auto kind = field("kind");
        if (kind == tax_kind) {
            purchase.tax += sum().value_or(0);
        } else if (kind == bars_kind) {
            return;
        } else if (const auto known = buy_kind_of(kind)) {
            purchase.lines.push_back({.kind = *known,
                                      .what = std::string(field("what")),
                                      .size = std::string(field("size")),
                                      .count = number("count"),
                                      .sum = sum()});
        } else {
            fail("kind", engine::quoted(kind) +
                             " is no kind of thing; write bar, cutting, sheet, fastener, delivery "
                             "or tax");
        }
    }

    std::string file_;
    const ListRow* row_ = nullptr;
    const ListRow* headings_ = nullptr;
    std::map<int, std::size_t> places_;  // in Purchases::all, by what the table calls them
    std::map<int, int> noted_;           // what it calls them, by what they are noted as
    Purchases purchases_;
    std::optional<Error> error_;
};

}  // namespace

std::filesystem::path path_of_purchases(const std::filesystem::path& project_file) {
    auto path = project_file;
    path.replace_extension(".bought.csv");
    return path;
}

std::string purchases_text(const Purchases& purchases) {
    engine::CsvText text{"purchase", "date", "supplier", "kind", "what",    "size",
                         "count",    "sum",  "currency", "note", "noted_as"};
    for (std::size_t i = 0; i < purchases.all.size(); ++i) {
        const auto& purchase = purchases.all[i];
        const auto noted_as =
            purchase.number == 0 ? std::string() : std::to_string(purchase.number);
        const auto row = [&](std::string_view kind, std::string_view what, std::string_view size,
                             const std::string& count, const std::string& sum) {
            text.row({std::to_string(i + 1), purchase.date, purchase.supplier, kind, what, size,
                      count, sum, purchase.currency, purchase.note, noted_as});
        };
        for (const auto& line : purchase.lines) {
            row(name_of(line.kind), line.what, line.size, std::to_string(line.count),
                line.sum ? money_text(*line.sum) : std::string());
        }
        if (purchase.tax != 0) row(tax_kind, {}, {}, "1", money_text(purchase.tax));
    }
    return std::move(text).take();
}

engine::Result<Purchases> purchases_in(std::string_view text, std::string_view file) {
    const auto rows = read_list_rows(text, {"purchase", "kind", "what", "count", "sum"});
    if (!rows) {
        return Error{rows.error().code, std::string(file) + ", " + rows.error().where,
                     rows.error().message};
    }
    return PurchaseReader{file}.purchases(*rows);
}

engine::Result<Purchases> read_purchases(const std::filesystem::path& file) {
    constexpr std::uintmax_t most_bytes = 2U << 20U;  // far more than anybody buys
    std::error_code unseen;
    if (!std::filesystem::exists(file, unseen)) return Purchases{};
    const auto text = engine::read_whole_file(file, most_bytes);
    if (!text) return text.error();
    return purchases_in(*text, file.filename().string());
}

}  // namespace model
