#include "editor/bench_commands.h"

#include "editor/bench_desk.h"

#include <algorithm>

namespace editor {
namespace {

// Worked out, so that a key does what the screen shows next.
BenchDesk& bench_now(Desk& desk) {
    tend_bench(desk);
    auto& bench = *desk.ui.make.bench;
    work_out(bench, derived(desk), *desk.catalogue);
    return bench;
}

// The view shows the piece in hand.
void select_in_hand(Desk& desk) {
    const auto& bench = bench_now(desk);
    if (!bench.at) return;
    desk.ui.selection =
        selection_of(project_of(desk), derived(desk).resolved, {bench.pieces[*bench.at].piece});
}

}  // namespace

bool shows_bench(const Desk& desk) {
    return desk.ui.place == Place::make && desk.ui.make.table == ShopTable::bench;
}

void go_on_at_bench(Desk& desk, int by) {
    turn_to_next(bench_now(desk), by);
    select_in_hand(desk);
}

void tick_at_bench(Desk& desk) {
    tick(bench_now(desk), derived(desk), *desk.catalogue);
    select_in_hand(desk);
}

void take_back_at_bench(Desk& desk) { take_back(bench_now(desk), derived(desk)); }

void change_work_at_bench(Desk& desk, int by) {
    auto& bench = bench_now(desk);
    const auto last = static_cast<int>(model::bench_work_count) - 1;
    const int work = std::clamp(static_cast<int>(bench.work) + by, 0, last);
    take_up(bench, model::bench_works[static_cast<std::size_t>(work)]);
    select_in_hand(desk);
}

}  // namespace editor
