// What has been bought for a project and paid for: a small table beside the project's file, which a
// spreadsheet opens too.
#pragma once

#include "engine/result.h"
#include "model/buying/buy_kind.h"
#include "model/project/project.h"
#include "model/resolve/bar_supply.h"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace model {

struct PaidLine {
    BuyKind kind = BuyKind::bar;
    std::string what;  // as EstimateLine
    std::string size;
    int count = 0;
    std::optional<Cents> sum;  // none where nobody knew the price

    bool operator==(const PaidLine&) const = default;
};

struct Purchase {
    int number = 0;        // in Project::purchases; 0: somebody wrote it into the table himself
    std::string date;      // "2026-11-27"
    std::string supplier;  // empty: by the prices that the stock states
    std::string currency;
    std::vector<PaidLine> lines;  // delivery among them
    Cents tax = 0;
    std::string note;  // "taken as bought": what is to be known of its sums; may be empty

    bool operator==(const Purchase&) const = default;
};

struct Purchases {
    std::vector<Purchase> all;  // the first first

    bool operator==(const Purchases&) const = default;
};

// Whether the price of any goods in it was known, or it cost more than nothing: that cuts or the
// delivery are free says nothing of the goods.
bool has_sum(const Purchase& purchase);

// With delivery and tax.
Cents total_of(const Purchase& purchase);
std::optional<Cents> delivery_of(const Purchase& purchase);

// Bars of the stock that are at home or were cut at the saw, offcuts not counted.
int bars_owned(const Stock& stock);

// Whether it is paid: the step that noted it is in the project. Where that was undone, or the
// project was not saved, nothing was bought; the table keeps it, since redo brings it back. What
// somebody wrote into the table himself always counts.
bool counts_as_paid(const Purchase& purchase, const Project& project);

// Those that are.
std::vector<Purchase> paid_for(const Purchases& purchases, const Project& project);

// "2 purchases that the project knows are not in its table: what they cost is not known here";
// empty where there is none such. Somebody moved the project without its table, or changed that.
std::string words_without_rows(const Purchases& purchases, const Project& project);

// "108.00 GBP", of all of them together; "108.00 GBP and 20.00 EUR" where they are of two
// currencies; "108.00 GBP and an unknown sum" where one has none.
std::string sum_in_words(const std::vector<Purchase>& purchases);

// "61.20 crowns to yard on 2026-11-27, delivery 35.00 in it", and its note behind that.
std::string purchase_words(const Purchase& purchase);

// "counter.bought.csv" beside "counter.json".
std::filesystem::path path_of_purchases(const std::filesystem::path& project_file);

std::string purchases_text(const Purchases& purchases);

// Error: bad_file, with file and line in `where`.
engine::Result<Purchases> purchases_in(std::string_view text, std::string_view file);

// None where there is no such file. Errors: those of purchases_in; what the system says.
engine::Result<Purchases> read_purchases(const std::filesystem::path& file);

}  // namespace model
