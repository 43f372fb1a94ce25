// The desk at the saw.
#pragma once

#include "editor/commands.h"
#include "editor/nest_run.h"

#include "tests/editor/headless_ui.h"

#include <algorithm>

namespace tests {

inline int cuts_in(const editor::Derived& now, model::CutState state) {
    int count = 0;
    for (const auto& bar : now.saw) {
        count += static_cast<int>(std::ranges::count(bar.cuts, state, &model::SawCut::state));
    }
    return count;
}

// A box with one bar length that has a price, at Make, at the saw.
inline void start_at_saw(HeadlessUi& ui) {
    start_box(ui.desk);
    editor::nest_now(ui.desk);
    editor::run_command(ui.desk, "make.saw");
    ui.settle();
}

}  // namespace tests
