#include "model/buying/list_fields.h"

#include "engine/measure/text_scan.h"
#include "model/buying/counts.h"
#include "model/buying/list_lengths.h"
#include "model/buying/money.h"

#include <algorithm>
#include <array>
#include <utility>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;

constexpr std::array<std::string_view, 6> list_headings{"what", "size",  "price",
                                                        "per",  "limit", "note"};

}  // namespace

void ListFields::begin(const ListRows& rows) {
    separator_ = rows.separator;
    for (std::size_t i = 0; i < rows.headings.fields.size(); ++i) {
        const auto& heading = rows.headings.fields[i];
        if (heading.empty()) continue;
        if (std::ranges::find(list_headings, heading) == list_headings.end() ||
            !columns_.emplace(heading, i).second) {
            warn(rows.headings.line, "the column " + engine::quoted(heading) +
                                         " is not read; the columns are what, size, price, per, "
                                         "limit and note");
        }
    }
}

std::string_view ListFields::text(std::string_view column) const {
    const auto at = columns_.find(column);
    return at == columns_.end() ? std::string_view{} : row_->fields[at->second];
}

engine::Length ListFields::length() {
    const auto read = read_list_length(text("size"), bare_, separator_);
    if (!read) fail("size", read.error().message);
    return read ? *read : engine::Length{};
}

Cents ListFields::money() {
    const auto read = read_money(text("price"));
    if (!read) {
        fail("price", read.error().message);
        return 0;
    }
    check_sign(read->sign);
    return read->cents;
}

// Two codes of currencies that differ cannot both be meant; "$" may be any dollar.
void ListFields::check_sign(const std::string& sign) {
    const auto& currency = list_.terms.currency;
    if (sign.size() != 3 || currency.size() != 3 || sign == currency) return;
    if (static_cast<unsigned char>(sign[0]) >= 0x80) return;
    if (static_cast<unsigned char>(currency[0]) >= 0x80) return;
    fail("price", "this price is in " + sign + ", the list in " + currency +
                      "; keep one list for each currency");
}

std::optional<Cents> ListFields::price() {
    if (text("price").empty()) return std::nullopt;
    const auto cents = money();
    if (cents == 0) fail("price", "a price of nothing; leave it empty where it is not known");
    return cents;
}

std::optional<int> ListFields::limit() {
    const auto typed = text("limit");
    if (typed.empty()) return std::nullopt;
    const auto count = count_in(typed);
    if (!count) {
        fail("limit", engine::quoted(typed) +
                          " is no number of things; write how many can be had, or leave it empty");
    }
    return count;
}

std::string ListFields::place(std::size_t line) const {
    return file_ + ", line " + std::to_string(line);
}

void ListFields::warn(std::size_t line, std::string message) {
    list_.warnings.push_back({ErrorCode::unknown_name, place(line), std::move(message)});
}

void ListFields::fail(std::string_view column, std::string message) {
    if (error_) return;
    error_ = Error{ErrorCode::bad_file, place(row_->line) + ", column " + std::string(column),
                   std::move(message)};
}

void ListFields::is_only_one(const std::string& key, std::string_view column) {
    const auto [at, is_new] = lines_.emplace(key, row_->line);
    if (is_new) return;
    fail(column, "the same stands on line " + std::to_string(at->second) +
                     " already; keep one of the two rows");
}

std::size_t ListFields::line_of(const std::string& key) const {
    const auto at = lines_.find(key);
    return at == lines_.end() ? 0 : at->second;
}

}  // namespace model
