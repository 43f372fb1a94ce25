// Nesting: the own instances and the published sets, each with what was proven, the work and the
// time. Usage: bench_cutting [SET [SECONDS [EVERY]]]   (default: all sets, 2 s each and 10 s for
// Hard28, each file). SET is the beginning of a set's name, "own" the first two; of its files each
// EVERYth is taken. Times are processor time. tests/bench/cutting_solvers.py solves the same files
// by other programs.
#include "engine/cutting/nest.h"

#include "tests/bench/processor_time.h"
#include "tests/engine/cutting/nest_files.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

namespace {

struct Asked {
    std::string set;
    double seconds = 0;  // 0: as the set's aim is
    std::size_t every = 1;
};

struct Row {
    std::string name;
    bool is_proven = false;
    bool is_wrong = false;  // contradicts what is known
    std::int64_t cost = 0;
    std::int64_t gap = 0;
    std::int64_t work = 0;
    double ms = 0;
};

Row solved(const tests::NestFile& file, double seconds) {
    const double begun = tests::processor_ms();
    engine::NestLimits limits;
    limits.work = 1'000'000'000'000;
    limits.go_on = [&](const engine::NestProgress&) {
        return tests::processor_ms() - begun < seconds * 1000.0;
    };
    const auto nest = engine::nest(file.problem, limits);
    Row row{.name = file.name};
    row.ms = tests::processor_ms() - begun;
    if (!nest) {
        std::printf("  %s: %s\n", file.name.c_str(), engine::to_text(nest.error()).c_str());
        return row;
    }
    row.is_proven = nest->is_cheapest;
    row.gap = nest->plan.cost - nest->least_cost;
    row.work = nest->work;
    row.cost = nest->plan.cost;
    row.is_wrong = (file.most && nest->least_cost > *file.most) ||
                   (file.least && nest->plan.cost < *file.least) ||
                   engine::fault(file.problem, nest->plan).has_value();
    return row;
}

void print(const char* set, std::vector<Row> rows, bool is_each) {
    if (rows.empty()) return;
    for (const Row& row : rows) {
        if (row.is_wrong) std::printf("  WRONG: %s\n", row.name.c_str());
        if (!is_each && row.is_proven) continue;
        std::printf("    %-24s %-8s %9lld gap %6lld  %9.1f Msteps %9.1f ms\n", row.name.c_str(),
                    row.is_proven ? "proven" : "open", static_cast<long long>(row.cost),
                    static_cast<long long>(row.gap), static_cast<double>(row.work) / 1e6, row.ms);
    }
    const auto proven =
        std::count_if(rows.begin(), rows.end(), [](const Row& row) { return row.is_proven; });
    double sum = 0;
    for (const Row& row : rows) sum += row.ms;
    std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.ms < b.ms; });
    std::printf("%-18s %4zu of %4zu proven; mean %8.1f ms, median %8.1f ms, longest %9.1f ms\n",
                set, static_cast<std::size_t>(proven), rows.size(),
                sum / static_cast<double>(rows.size()), rows[rows.size() / 2].ms, rows.back().ms);
    std::fflush(stdout);
}

void run(const tests::NestSet& set, const Asked& asked) {
    if (set.name.rfind(asked.set, 0) != 0) return;
    const double aim = set.name == "Hard28" ? 10.0 : 2.0;
    std::vector<Row> rows;
    for (std::size_t i = 0; i < set.files.size(); i += asked.every)
        rows.push_back(solved(set.files[i], asked.seconds > 0 ? asked.seconds : aim));
    print(set.name.c_str(), rows, set.name.rfind("own", 0) == 0 || set.name == "Hard28");
}

}  // namespace

int main(int count, char** words) {
    Asked asked;
    if (count > 1) asked.set = words[1];
    if (count > 2) asked.seconds = std::atof(words[2]);
    if (count > 3)
        asked.every = std::max<std::size_t>(1, static_cast<std::size_t>(std::atoi(words[3])));
    std::vector<tests::NestSet> sets = tests::published_nest_sets(BARWRIGHT_REFERENCE);
    sets.insert(
        sets.begin(),
        {"own in 0.01 mm", tests::own_nest_files(BARWRIGHT_REFERENCE, tests::OwnGrid::hundredths)});
    sets.insert(sets.begin(),
                {"own", tests::own_nest_files(BARWRIGHT_REFERENCE, tests::OwnGrid::tenths)});
    for (const tests::NestSet& set : sets) run(set, asked);
    return 0;
}
