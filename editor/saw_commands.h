// Commands of the place Make at the saw, and of Buy.
#pragma once

namespace editor {

struct Desk;

bool has_bars_to_buy(const Desk& desk);
void buy_bars(Desk& desk);

bool has_next_cut(const Desk& desk);
void tick_next_cut(Desk& desk);
void spoil_next_cut(Desk& desk);

bool has_planned_cuts(const Desk& desk);
void plan_cuts_anew(Desk& desk);

bool has_offcuts_to_rack(const Desk& desk);
void rack_offcuts(Desk& desk);

// What becomes of the piece that was cut wrong, while that is asked.
bool has_spoil_talk(const Desk& desk);
void keep_bad_piece(Desk& desk);
void scrap_bad_piece(Desk& desk);

}  // namespace editor
