#include "model/buying/buying_files.h"

#include "engine/drawing/pdf.h"
#include "engine/drawing/svg.h"
#include "engine/files/csv.h"
#include "model/buying/buy_csv.h"
#include "model/buying/comparison.h"
#include "model/buying/money.h"
#include "model/buying/price_list_template.h"
#include "model/buying/sheet_pages.h"
#include "model/buying/shopping_page.h"
#include "model/buying/what_if.h"
#include "model/schedule/bar_pages.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/page_flow.h"
#include "model/schedule/saw_bars.h"
#include "model/schedule/stops.h"

#include <algorithm>
#include <system_error>

namespace model {
namespace {

std::string compare_csv(const std::vector<Offering>& offerings, const engine::TapeStyle& shown) {
    std::vector<std::string> head{"what"};
    for (const auto& it : offerings) head.push_back(it.name);
    engine::CsvTable table{head, {}};
    for (const auto& row : comparison_rows(offerings, shown)) {
        engine::CsvRow cells{row.what};
        cells.insert(cells.end(), row.cells.begin(), row.cells.end());
        table.rows.push_back(std::move(cells));
    }
    return engine::to_csv(table);
}

std::string what_if_csv(const Project& project,
                        const std::vector<WithoutLength>& all,
                        const engine::TapeStyle& shown) {
    engine::CsvText text{"stock", "without", "bars_in_use", "bars_cost", "bars_cost_without_it",
                         "proven"};
    for (const auto& it : all) {
        const bool is_halved = it.halved_from > 0;
        const auto bar =
            bar_length_text(engine::Length::from_nm(is_halved ? it.halved_from : it.length), shown);
        text.row({project.stock[it.stock].name, is_halved ? halves_offered(bar) : bar,
                  std::to_string(it.used), money_text(it.with),
                  it.cost ? money_text(*it.cost) : std::string("not all can be cut"),
                  it.is_proven ? "yes" : "no"});
    }
    return std::move(text).take();
}

// What a list says that is not used, and lists that cannot be read.
void add_words_of_lists(std::vector<std::string>& words, const std::vector<Offering>& offerings) {
    constexpr std::size_t most_told = 8;
    for (const auto& it : offerings) {
        if (!it.estimate)
            words.push_back(it.name + " is not compared: " + engine::to_text(it.estimate.error()));
        for (std::size_t i = 0; i < it.not_used.size() && i < most_told; ++i)
            words.push_back(it.name + ", not used: " + engine::to_text(it.not_used[i]));
        if (it.not_used.size() > most_told)
            words.push_back(it.name + ": " + std::to_string(it.not_used.size() - most_told) +
                            " more rows are not used");
    }
}

void append(engine::Document& document, engine::Document more) {
    for (auto& bookmark : more.bookmarks) {
        bookmark.page += document.pages.size();
        document.bookmarks.push_back(std::move(bookmark));
    }
    for (auto& page : more.pages) document.pages.push_back(std::move(page));
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const auto& line : lines) text += (text.empty() ? "" : "; ") + line;
    return text;
}

}  // namespace

bool keeps_old(std::string_view name) { return name == buying_names.back(); }

engine::Result<BuyFrom> supplier_wished(const Project& project,
                                        const PriceLibrary& library,
                                        const std::string& name) {
    if (name.empty() && project.shop.supplier.empty())
        return BuyFrom{.bought = library.purchases()};
    const auto& wanted = name.empty() ? project.shop.supplier : name;
    const auto supplier = std::ranges::find(project.suppliers, wanted, &Supplier::name);
    if (supplier == project.suppliers.end()) {
        std::string known;
        for (const auto& it : project.suppliers) known += (known.empty() ? "" : ", ") + it.name;
        return engine::Error{
            engine::ErrorCode::unknown_name, "supplier " + wanted,
            known.empty() ? "the project states no supplier" : "the project knows " + known};
    }
    const auto list = library.lists.find(supplier->prices);
    if (list == library.lists.end()) {
        return engine::Error{engine::ErrorCode::unknown_name, supplier->prices,
                             "the price list is not read"};
    }
    if (!list->second) return list->second.error();
    return BuyFrom{&*supplier, &*list->second, library.purchases()};
}

std::string plan_verdict(const Project& project, const BarPlan& plan, const std::string& currency) {
    const auto& name = project.stock[plan.stock].name;
    int bought = 0;
    int priced = 0;
    for (const auto& bar : plan.bars) {
        if (bar.from != BarFrom::shop) continue;
        ++bought;
        if (bar.price) ++priced;
    }
    if (!plan.left_out.empty() || !plan.too_long.empty()) {
        return name + ": " + std::to_string(plan.left_out.size() + plan.too_long.size()) +
               " pieces are in no bar";
    }
    if (bought == 0) return name + ": nothing to buy";
    const auto money = [&](Cents cents) {
        return money_text(cents) + (currency.empty() ? "" : " " + currency);
    };
    if (priced == 0) {
        return name + ": no price stated; " +
               (plan.is_cheapest ? "proven least length of bar" : "not proven the least length");
    }
    std::string text = name + ": " + money(plan.cost);
    if (priced < bought) text += " if bars without a price cost like the others";
    if (plan.is_cheapest) return text + ", proven cheapest";
    if (plan.least_cost <= 0) return text;
    const double part = 100.0 * static_cast<double>(plan.cost - plan.least_cost) /
                        static_cast<double>(plan.least_cost);
    // Up to the next tenth: what is said must hold.
    const auto tenths = static_cast<long>(part * 10.0) + 1;
    return text + ", within " + std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) +
           " % of the least that is possible";
}

engine::Result<BuyingFiles> buying_files(const Project& project,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved,
                                         const PriceLibrary& library,
                                         const BuyingWish& wish) {
    const auto from = supplier_wished(project, library, wish.supplier);
    if (!from) return from.error();
    const PlanWish by{.supply = supply_of(project, resolved, *from), .go_on = wish.go_on};
    const auto plans = bar_plans(project, catalogue, resolved, by);
    const auto fasteners = needed_fasteners(project, catalogue, resolved);
    const auto estimate = estimate_of(project, catalogue, resolved, plans, *from, &fasteners);
    const auto bars = saw_bars(project, catalogue, resolved, plans);
    const auto rows = bar_rows(project, catalogue, resolved, plans);
    const auto stops = stop_rows(project, catalogue, resolved, rows);
    BuyingFiles made;
    for (const auto& plan : plans) {
        made.words.push_back(plan_verdict(project, plan, estimate.currency));
        if (!plan.left_out.empty() || !plan.too_long.empty()) made.lacks_something = true;
    }
    const BarPageWords words{"Bars: " + project.name, joined(made.words)};
    if (!library.bought) return library.bought.error();
    for (const auto& purchase : estimate.paid)
        made.words.push_back("paid: " + purchase_words(purchase));
    if (auto lacking = words_without_rows(*library.bought, project); !lacking.empty())
        made.words.push_back(std::move(lacking));
    made.words.push_back((estimate.paid.empty() ? "all of it: " : "still to buy: ") +
                         total_in_words(estimate));
    made.lacks_something = made.lacks_something || !estimate.without.empty();
    const auto offerings =
        comparison(project, catalogue, resolved, library, wish.go_on, &fasteners);
    add_words_of_lists(made.words, offerings);
    const auto svg = engine::svg_text(bar_picture(project, resolved, bars, words), words.title);
    if (!svg) return svg.error();
    engine::Document pages{.title = words.title};
    add_shopping_pages(pages, "What to buy: " + project.name, estimate, wish.paper);
    append(pages, bar_pages(project, resolved, bars, stops, words, wish.paper));
    add_sheet_pages(
        pages, project, resolved,
        sheet_plans(project, catalogue, resolved, from->prices, paid_sheets(estimate.paid)),
        sheet_rows(project, catalogue, resolved), wish.paper);
    number_pages(pages.pages, words.title);
    const auto pdf = engine::pdf_bytes(pages);
    if (!pdf) return pdf.error();
    made.files = {{"buy.csv", buy_csv(estimate, project.shown)},
                  {"compare.csv", compare_csv(offerings, project.shown)},
                  {"what_if.csv",
                   what_if_csv(project, what_if_without(project, catalogue, resolved, plans, by),
                               project.shown)},
                  {"nest.csv", nest_csv(project, catalogue, resolved, rows)},
                  {"stops.csv", stop_csv(project, resolved, stops)},
                  {"bars.svg", *svg},
                  {"bars.pdf", *pdf},
                  {"prices_to_fill_in.csv", price_list_template(project, catalogue, resolved)}};
    return made;
}

engine::Result<std::vector<std::string>> write_buying(const std::vector<ScheduleFile>& files,
                                                      const std::filesystem::path& folder) {
    auto to_write = files;
    std::erase_if(to_write, [&](const ScheduleFile& file) {
        std::error_code unseen;
        return keeps_old(file.name) && std::filesystem::exists(folder / file.name, unseen);
    });
    if (const auto written = write_all(to_write, folder); !written) return written.error();
    std::vector<std::string> names;
    for (const auto& file : to_write) names.push_back(file.name);
    return names;
}

}  // namespace model
