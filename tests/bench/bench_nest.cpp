// Bars nested for a whole project, as the window and the lists do it: first fit, which follows a
// drag, the nest proven as far as the usual work goes, and with it what each length of bar is
// worth. Three lengths have prices. Usage: bench_nest [MEMBERS]   (default: 100, 500 and 2000)
// Figures are processor time, medians, and compare within one run.
#include "model/buying/what_if.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolve.h"

#include "tests/bench/bench_projects.h"
#include "tests/bench/must.h"
#include "tests/bench/processor_time.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

namespace {

// Prices of the own instances: common lengths of the trade, invented money.
void offer_three_lengths(model::Project& project) {
    for (auto& stock : project.stock) {
        stock.bars = {{.length = "16 ft", .price = 32.90},
                      {.length = "20 ft", .price = 39.80},
                      {.length = "25 ft", .price = 48.70}};
    }
}

struct Counts {
    std::size_t pieces = 0;
    std::size_t bars = 0;
    std::size_t proven = 0;
};

Counts counts_of(const std::vector<model::BarPlan>& plans) {
    Counts counts;
    for (const auto& plan : plans) {
        counts.bars += plan.bars.size();
        counts.proven += plan.is_cheapest ? 1U : 0U;
        for (const auto& bar : plan.bars) counts.pieces += bar.cuts.size();
        tests::must(plan.left_out.empty() && plan.too_long.empty(), "every piece has a bar");
    }
    return counts;
}

void print_row(tests::BenchShape shape, int members, const model::Catalogue& catalogue) {
    auto project = tests::bench_project(shape, members);
    offer_three_lengths(project);
    const auto resolved = model::resolve(project, catalogue);
    std::vector<model::BarPlan> plans;
    const auto planned = [&](model::PlanEffort effort) {
        return tests::median_ms(
            5, [&] { plans = model::bar_plans(project, catalogue, resolved, {.effort = effort}); });
    };
    const double fitted = planned(model::PlanEffort::first_fit);
    const double nested = planned(model::PlanEffort::nested);
    const auto counts = counts_of(plans);
    std::size_t lengths = 0;
    const double compared = tests::median_ms(3, [&] {
        lengths = model::what_if_without(project, catalogue, resolved, plans, {}).size();
    });
    const auto per_piece = [&](double ms) {
        return 1'000.0 * ms / static_cast<double>(std::max<std::size_t>(counts.pieces, 1));
    };
    std::printf(
        "%s: %zu pieces on %zu bars, %zu of %zu stocks proven: first fit %.1f us a piece, nested "
        "%.1f us a piece (%.1f ms), what if without each of %zu lengths %.1f us a piece (%.1f "
        "ms)\n",
        std::string(tests::name_of(shape)).c_str(), counts.pieces, counts.bars, counts.proven,
        plans.size(), per_piece(fitted), per_piece(nested), nested, lengths, per_piece(compared),
        compared);
}

}  // namespace

int main(int argc, char** argv) {
    const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    tests::must(catalogue.has_value(), "the catalogue is read");
    const std::vector<int> sizes =
        argc > 1 ? std::vector{std::max(1, std::atoi(argv[1]))} : std::vector{100, 500, 2'000};
    for (const auto shape : {tests::BenchShape::cabinets, tests::BenchShape::lattice}) {
        for (const int members : sizes) print_row(shape, members, *catalogue);
    }
    return 0;
}
