// What the keys do at the bench.
#pragma once

#include "editor/desk.h"

namespace editor {

bool shows_bench(const Desk& desk);

// So many pieces on or back.
void go_on_at_bench(Desk& desk, int by);

void tick_at_bench(Desk& desk);
void take_back_at_bench(Desk& desk);
void change_work_at_bench(Desk& desk, int by);

}  // namespace editor
