#include "editor/place_commands.h"

#include "editor/bench_commands.h"
#include "editor/joint_group.h"
#include "editor/places/assembly_list.h"

namespace editor {
namespace {

// The first button of the card that is open; null where there is none yet.
const model::Mend* first_mend(const Desk& desk) {
    if (!desk.derived_memo) return nullptr;
    const auto open = open_group(*desk.derived_memo, desk.ui.cards);
    const auto& board = desk.ui.help.mends;
    if (!open || board.of != worked_out_of(*desk.derived_memo)) return nullptr;
    const auto card = board.cards.find(*open);
    if (card == board.cards.end() || card->second.kept.empty()) return nullptr;
    return &card->second.kept.front();
}

// Those like the one that is chosen; empty where another number is.
std::vector<JointName> alike_joints(const Desk& desk) {
    if (desk.ui.place != Place::join || !desk.derived_memo) return {};
    const auto& now = *desk.derived_memo;
    const auto& joints = desk.ui.join.joints;
    if (desk.ui.join.revision != now.revision) return {};
    const auto chosen = chosen_joints(*now.project, now.resolved, joints, desk.ui.selection);
    if (chosen.size() != 1) return {};
    return joints_like(*now.project, joints, chosen.front());
}

bool shows_steps(const Desk& desk) {
    return desk.ui.place == Place::make && desk.ui.make.table == ShopTable::assembly;
}

void choose_line(Desk& desk, int by) {
    if (auto* table = table_shown(desk.ui)) {
        table->step = by;
    } else if (shows_steps(desk)) {
        choose_step(derived(desk), *desk.catalogue, desk.ui.make, desk.ui.selection, by);
    } else {
        go_on_at_bench(desk, by);
    }
}

void choose_within(Desk& desk, int by) {
    if (shows_steps(desk)) {
        choose_joint(derived(desk), *desk.catalogue, desk.ui.make, desk.ui.selection, by);
    } else {
        change_work_at_bench(desk, by);
    }
}

}  // namespace

void go_to_place(Desk& desk, Place place) {
    desk.ui.place = place;
    desk.ui.left_width = 0.0F;
}

void open_in_measure(Desk& desk, Dialog dialog) {
    if (desk.ui.place != Place::measure) go_to_place(desk, Place::measure);
    desk.ui.dialog = std::move(dialog);
}

bool has_table(const Desk& desk) { return table_shown(desk.ui) != nullptr; }

void find_in_table(Desk& desk) { table_shown(desk.ui)->wants_search = true; }
void sort_table(Desk& desk) { sort_by_next(*table_shown(desk.ui)); }
void turn_table(Desk& desk) { turn_round(*table_shown(desk.ui)); }
bool has_lines(const Desk& desk) {
    return has_table(desk) || shows_steps(desk) || shows_bench(desk);
}
void choose_next_line(Desk& desk) { choose_line(desk, 1); }
void choose_line_before(Desk& desk) { choose_line(desk, -1); }
bool has_lines_within(const Desk& desk) { return shows_steps(desk) || shows_bench(desk); }
void choose_next_within(Desk& desk) { choose_within(desk, 1); }
void choose_within_before(Desk& desk) { choose_within(desk, -1); }

bool has_findings(const Desk& desk) {
    return desk.derived_memo && !desk.derived_memo->finding_groups.empty();
}

void open_next_finding(Desk& desk) {
    const auto& now = derived(desk);
    if (!open_next(now, desk.ui.cards)) return;
    if (desk.ui.place != Place::lay_out) go_to_place(desk, Place::lay_out);
    const auto& concerns = now.finding_groups[*open_group(now, desk.ui.cards)].concerns;
    desk.ui.selection = selection_of_subjects(*now.project, now.resolved, concerns);
}

bool has_alike_joints(const Desk& desk) { return alike_joints(desk).size() > 1; }

void choose_alike_joints(Desk& desk) {
    const auto& now = *desk.derived_memo;
    desk.ui.selection = selection_of_joints(*now.project, now.resolved, alike_joints(desk));
}

bool is_laying_out(const Desk& desk) { return desk.ui.place == Place::lay_out; }

bool has_mend(const Desk& desk) { return first_mend(desk) != nullptr; }

void mend_open_finding(Desk& desk) {
    if (const auto* mend = first_mend(desk)) static_cast<void>(submit(desk, change_of_mend(*mend)));
}

}  // namespace editor
