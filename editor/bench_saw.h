// What the bench and the saw say of each other's ticks: see model/bench/saw_cuts.h.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "model/bench/saw_cuts.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

struct BenchDesk;
struct Desk;

// The findings of the project as it is now tell what the bench knows of them.
void tell_of_bench(Desk& desk);

// Cuts planned at the saw whose pieces are ticked as cut at the bench. Works the bench out where
// anything is ticked there; without a bench there are none.
std::vector<model::SawTick> cuts_to_tick(BenchDesk* bench,
                                         const Derived& derived,
                                         const model::Catalogue& catalogue);

// What the bench has cut anew and the saw still has as it was becomes there what it is; none where
// there is nothing to tell.
std::optional<Change> cuts_told(const BenchDesk& bench,
                                const Derived& derived,
                                const model::Catalogue& catalogue);

// "A1 from bar 2 into 39 in", of all such pieces; empty where there are none.
std::string words_of_untold(const BenchDesk& bench, const Derived& derived);

// The same of what was cut at the saw and can be reworked at the bench.
std::string words_of_reworkable(const BenchDesk& bench, const Derived& derived);

// What became of its cut at the saw, when it was reworked or put away at the bench.
std::string words_of_reworked(const model::BenchPiece& piece, const Derived& derived);
std::string words_of_put_away(const model::BenchPiece& piece, const Derived& derived);

std::string in_capital(std::string_view text);

// Where the saw has the cut of a piece that is cut: "Ticked at the saw, bar 2"; what to do there
// where it is not ticked yet, or stands as before the bench cut it anew. Empty for one that is
// still to be cut, or is cut from no bar.
std::string saw_words(const BenchDesk& bench,
                      const model::BenchPiece& piece,
                      const Derived& derived);

}  // namespace editor
