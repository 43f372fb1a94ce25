#include "editor/saw_commands.h"

#include "editor/desk.h"
#include "editor/nest_run.h"
#include "editor/places/saw_changes.h"
#include "editor/places/saw_list.h"
#include "editor/places/spoil_talk.h"
#include "editor/purchase_desk.h"
#include "model/buying/spoiled.h"

#include <algorithm>

namespace editor {
namespace {

// What is done at the saw shows there.
void submit_at_saw(Desk& desk, const std::optional<Change>& change) {
    if (!change || !submit_with_bars(desk, *change)) return;
    desk.ui.place = Place::make;
    desk.ui.make.table = ShopTable::saw;
}

bool has_cut(const Desk& desk, bool (*is_so)(const model::SawCut&)) {
    if (!desk.derived_memo) return false;
    return std::ranges::any_of(desk.derived_memo->saw, [is_so](const model::SawBar& bar) {
        return std::ranges::any_of(bar.cuts, is_so);
    });
}

void give_bad_piece_a_place(Desk& desk,
                            std::optional<Change> (*place)(const Derived&, SawListState&)) {
    auto& state = desk.ui.make.saw;
    if (!state.spoiled) return;
    const auto change = place(derived(desk), state);
    desk.ui.place = Place::make;
    desk.ui.make.table = ShopTable::saw;
    if (change) static_cast<void>(submit(desk, *change));
}

}  // namespace

bool has_bars_to_buy(const Desk& desk) {
    return has_cut(desk, [](const model::SawCut& cut) { return !cut.place; });
}

void buy_bars(Desk& desk) {
    buy(desk, model::BoughtPart::bars);
    desk.ui.place = Place::make;
    desk.ui.make.table = ShopTable::saw;
}

bool has_next_cut(const Desk& desk) {
    return has_cut(desk,
                   [](const model::SawCut& cut) { return cut.state == model::CutState::planned; });
}

void tick_next_cut(Desk& desk) {
    nest_now(desk);
    submit_at_saw(desk, next_cut_ticked(derived(desk), *desk.catalogue, desk.ui.make.saw));
}

void spoil_next_cut(Desk& desk) {
    nest_now(desk);
    submit_at_saw(desk, next_cut_spoiled(derived(desk), *desk.catalogue, desk.ui.make.saw));
}

bool has_planned_cuts(const Desk& desk) { return model::has_planned_cuts(project_of(desk)); }

void plan_cuts_anew(Desk& desk) {
    submit_at_saw(desk, planned_anew(derived(desk), desk.ui.make.saw));
}

bool has_offcuts_to_rack(const Desk& desk) {
    return desk.derived_memo && has_bars_cut_up(*desk.derived_memo);
}

void rack_offcuts(Desk& desk) {
    submit_at_saw(desk, offcuts_racked(derived(desk), *desk.catalogue));
}

bool has_spoil_talk(const Desk& desk) {
    const auto& talk = desk.ui.make.saw.spoiled;
    return talk && !talk->has_place && desk.derived_memo &&
           model::is_spoiled(desk.derived_memo->saw, talk->piece);
}

void keep_bad_piece(Desk& desk) { give_bad_piece_a_place(desk, bad_piece_kept); }

void scrap_bad_piece(Desk& desk) { give_bad_piece_a_place(desk, bad_piece_scrapped); }

}  // namespace editor
