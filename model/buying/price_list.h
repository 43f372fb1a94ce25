// What a supplier asks for bars, sheets and boxes, as the user keeps it in a spreadsheet.
#pragma once

#include "engine/measure/tape.h"
#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/bar_supply.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace model {

// On which line of its file something stands; 0: on none. What is said there is the same wherever
// it stands.
struct ListLine {
    std::size_t number = 0;

    bool operator==(const ListLine&) const { return true; }
};

struct BarPrice {
    std::string section;
    std::string alloy;
    engine::Length length;
    std::optional<Cents> price;  // of one bar
    std::optional<int> limit;    // how many can be had
    std::string note;
    ListLine line{};

    bool operator==(const BarPrice&) const = default;
};

struct SheetPrice {
    std::string material;
    engine::Length thickness;
    std::array<engine::Length, 2> size;  // usable: across, then along the grain where there is one
    bool has_grain = false;              // parts are not turned on it
    std::optional<Cents> price;          // of one sheet
    std::optional<int> limit;
    std::string note;

    bool operator==(const SheetPrice&) const = default;
};

struct BoxPrice {
    std::string fastener;  // as FastenerRow::fastener
    int count = 1;         // in one box
    std::optional<Cents> price;
    std::optional<int> limit;
    std::string note;

    bool operator==(const BoxPrice&) const = default;
};

struct PriceTerms {
    std::string currency;
    std::optional<Cents> delivery;  // of one order
    std::optional<double> tax_percent;
    std::optional<engine::Length> longest_brought_home;  // that the buyer can carry
    std::optional<engine::Length> longest_delivered;
    // What the supplier asks for cutting a bar in half, and for any cut; none: it does not cut.
    std::optional<Cents> cutting_in_half;
    std::optional<Cents> each_cut;
    int free_cuts = 0;  // of an order, before they cost anything; none without a fee

    bool operator==(const PriceTerms&) const = default;
};

struct PriceList {
    std::string file;  // as the project names it; empty where it is not read from one
    PriceTerms terms;
    std::vector<BarPrice> bars;
    std::vector<SheetPrice> sheets;
    std::vector<BoxPrice> boxes;
    std::vector<engine::Error> warnings;  // rows and columns that are not used, and why

    // What it says, wherever it was read.
    bool operator==(const PriceList& other) const {
        return terms == other.terms && bars == other.bars && sheets == other.sheets &&
               boxes == other.boxes && warnings == other.warnings;
    }
};

// A table with the headings what, size, price, per, limit, note, in any order; the last three may
// be missing. One row for each bar, sheet or box:
//   angle 1 x 1 x 1/8 6063-T52      20 ft                 33.50
//   sheet 5052-H32                  1/8 x 48 x 96 in      92
//   sheet birch plywood with grain  6 mm x 1250 x 2500 mm 41,90
//   blind rivet 1/8, grip 4-4                             8.40     box of 100
// and for each term: currency (EUR, as a price), delivery, tax (per cent, as a price), longest
// brought home and longest delivered (as sizes), cutting in half, each cut. An empty price is one
// that is not known. A bare length is in `bare`, one of a sheet's in the unit that stands behind
// it. What the catalogue does not know becomes a warning with the nearest name. Error: bad_file
// with file, line and column in `where`, for what cannot be read in one way only.
engine::Result<PriceList> read_price_list(std::string_view text,
                                          std::string_view file,
                                          const Catalogue& catalogue,
                                          engine::LengthUnit bare);

// The list as such a table, with a line at its head that says how it is kept; read_price_list gives
// it back, but for warnings.
std::string price_list_text(const PriceList& list, const engine::TapeStyle& shown);

// What halves of a bar cost; none where the supplier does not cut.
std::optional<Cents> halving_fee(const PriceTerms& terms);

}  // namespace model
