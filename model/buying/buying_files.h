// All that is bought by, and the order of work at the saw, as files.
#pragma once

#include "engine/drawing/paper.h"
#include "engine/result.h"
#include "model/buying/estimate.h"
#include "model/buying/price_library.h"
#include "model/schedule/bar_plan.h"
#include "model/schedule/write_all.h"

#include <array>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace model {

struct BuyingWish {
    std::string supplier;  // whose list; empty: the one that the shop has chosen, or none
    engine::Paper paper = engine::Paper::a4;
    std::function<bool()> go_on;  // of PlanWish; may be empty
};

struct BuyingFiles {
    std::vector<ScheduleFile> files;
    std::vector<std::string> words;  // what there is to say of them, a line each
    bool lacks_something = false;    // a price, or a bar for a piece
};

// What the files are called, in their order.
inline constexpr std::array<std::string_view, 8> buying_names{
    "buy.csv",   "compare.csv", "what_if.csv", "nest.csv",
    "stops.csv", "bars.svg",    "bars.pdf",    "prices_to_fill_in.csv"};

// Whether a file of that name stays where it is there already: somebody may have filled it in.
bool keeps_old(std::string_view name);

// Whom the project buys from: the supplier of that name, where it is empty the one that the shop
// has chosen, or none. Errors: unknown_name for a supplier that the project does not have; those of
// its list. Both arguments must outlive it.
engine::Result<BuyFrom> supplier_wished(const Project& project,
                                        const PriceLibrary& library,
                                        const std::string& name);

// Errors: those of supplier_wished.
engine::Result<BuyingFiles> buying_files(const Project& project,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved,
                                         const PriceLibrary& library,
                                         const BuyingWish& wish);

// Writes them into a folder that is made when it is missing, but for what is there and kept. Says
// which were written. Error: cannot_write.
engine::Result<std::vector<std::string>> write_buying(const std::vector<ScheduleFile>& files,
                                                      const std::filesystem::path& folder);

// "angle: 109.50 crowns, proven cheapest".
std::string plan_verdict(const Project& project, const BarPlan& plan, const std::string& currency);

}  // namespace model
