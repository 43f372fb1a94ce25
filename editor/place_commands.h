// What the commands do that go to a place, to its tables or to its findings.
#pragma once

#include "editor/desk.h"

namespace editor {

void go_to_place(Desk& desk, Place place);
void open_in_measure(Desk& desk, Dialog dialog);

template <ProveSheet sheet>
void show_sheet(Desk& desk) {
    if (desk.ui.place != Place::prove) go_to_place(desk, Place::prove);
    desk.ui.prove.sheet = sheet;
    desk.ui.prove.shown_row.reset();
}

template <ShopTable which>
void show_table(Desk& desk) {
    if (desk.ui.place != Place::make) go_to_place(desk, Place::make);
    desk.ui.make.table = which;
}

bool has_table(const Desk& desk);  // the place shows one
void find_in_table(Desk& desk);
void sort_table(Desk& desk);
void turn_table(Desk& desk);
bool has_lines(const Desk& desk);  // a table, the steps of the assembly, the pieces at the bench
void choose_next_line(Desk& desk);
void choose_line_before(Desk& desk);
bool has_lines_within(const Desk& desk);  // joints of a step; kinds of work at the bench
void choose_next_within(Desk& desk);
void choose_within_before(Desk& desk);

bool has_findings(const Desk& desk);
void open_next_finding(Desk& desk);

// At the Join place: one joint is chosen, and there are others like it.
bool has_alike_joints(const Desk& desk);
void choose_alike_joints(Desk& desk);

bool is_laying_out(const Desk& desk);
template <LayOutSection section>
void fold_or_unfold(Desk& desk) {
    auto& folded = desk.ui.sections.folded[static_cast<std::size_t>(section)];
    folded = !folded;
}
bool has_mend(const Desk& desk);  // the open card has a button
void mend_open_finding(Desk& desk);

}  // namespace editor
