// What was bought is noted as paid, and its bars come to the saw.
#pragma once

#include "editor/change.h"
#include "model/buying/purchase_made.h"

#include <cstddef>

namespace editor {

struct Desk;

// Once in each frame: does what Buy and Make wish.
void tend_purchases(Desk& desk);

// The bars by the cheapest plan and that they were paid, in one step of the history, and beside the
// project what all of it cost. Where that cannot be noted the bars come all the same, and it is
// said.
void buy(Desk& desk, model::BoughtPart part);

// Submits it. Who cuts a piece has its bar in hand: bars that come to the saw with a cut count as
// bought, which is said and noted as paid, at the prices of the plan. Undone with the cut they do
// not count; where the only cut of them is taken back they do, which is said.
engine::Result<engine::Done> submit_with_bars(Desk& desk, const Change& change);

// Whether anything is still to buy that a purchase of all would note. What was derived last counts,
// and is asked once: the finder of commands asks in each frame.
bool has_goods_to_buy(const Desk& desk);

// All these count in Purchases::all. It was not paid after all: the sum goes, the bars stay, and
// the table keeps it, since that is a step which can be undone. Not of what somebody wrote into the
// table himself, which is in no step: that can be struck out.
void take_purchase_back(Desk& desk, std::size_t which);

// One that does not count does again, without its bars: a step.
void count_purchase_again(Desk& desk, std::size_t which);

// It leaves the table, for good.
void forget_purchase(Desk& desk, std::size_t which);

}  // namespace editor
