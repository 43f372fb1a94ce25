// What the bench and the saw say of each other's ticks: see model/bench/saw_cuts.h.
#pragma once

#include "editor/derived.h"
#include "model/bench/saw_cuts.h"

#include <string>
#include <vector>

namespace editor {

struct BenchDesk;

// Cuts planned at the saw whose pieces are ticked as cut at the bench. Works the bench out where
// anything is ticked there; without a bench there are none.
std::vector<model::SawTick> cuts_to_tick(BenchDesk* bench,
                                         const Derived& derived,
                                         const model::Catalogue& catalogue);

// Where the saw has the cut of a piece that is cut: "Ticked at the saw, bar 2"; what to do there
// where it is not ticked yet. Empty for one that is still to be cut, or is cut from no bar.
std::string saw_words(const BenchDesk& bench,
                      const model::BenchPiece& piece,
                      const Derived& derived);

}  // namespace editor
