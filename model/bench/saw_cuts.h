// What is ticked as cut at the saw and what is at the bench, brought together: the saw tells a
// piece by its stock, mark, length and ends, the bench by what it is called.
#pragma once

#include "model/bench/bench.h"
#include "model/schedule/saw_bars.h"

#include <vector>

namespace model {

// By piece: those that the saw cannot tell apart have the same number; no_index: not cut from a
// bar.
std::vector<Index> alike_at_saw(const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved);

// Whether the bench has ticked its cut and it is as the project wants it, as far as the saw goes.
bool is_cut_well(const BenchPiece& piece);

// By piece: whether it is cut by what is ticked at the saw. Of pieces alike it is first those that
// the bench has cut well too: one that is ticked at both places is one piece. None is one that the
// bench has cut and must cut again. `pieces` in the order of the project's.
std::vector<bool> cut_at_saw(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved,
                             const std::vector<BenchPiece>& pieces);

// The work is ticked, and as cut here too what counts as cut by the saw's ticks alone and would
// else give its cut away: the piece itself, and with the cut of one all that the saw cannot tell
// from it. `pieces` and `alike` as they are before. Errors: as ticked.
engine::Result<BenchTicks> ticked_beside_saw(const Project& project,
                                             const Catalogue& catalogue,
                                             const Resolved& resolved,
                                             BenchTicks ticks,
                                             const std::vector<BenchPiece>& pieces,
                                             const std::vector<Index>& alike,
                                             const BenchPiece& piece,
                                             BenchWork work);

// Cuts that are planned at the saw of which as many pieces alike are cut by the bench's ticks
// alone: what to tick at the saw, so that both say the same. What the bench has cut anew of a cut
// that the saw still has as it was is not among them. `alike` as by alike_at_saw.
std::vector<SawTick> cuts_to_tick(const std::vector<SawBar>& saw,
                                  const std::vector<Index>& alike,
                                  const std::vector<BenchPiece>& pieces);

}  // namespace model
