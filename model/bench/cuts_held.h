// Which cut at the saw each piece of the bench was, and what the saw is to know when such a piece
// is reworked or put away.
#pragma once

#include "model/bench/bench.h"
#include "model/schedule/bar_work.h"

#include <optional>
#include <vector>

namespace model {

struct CutHeld {
    CutPlace place;
    bool is_used = false;  // by the saw it is a piece of the project as that is now
    bool is_as_before =
        false;  // as it was before the bench cut it anew: the saw does not know that
};

// As BenchTicks::pieces; none where the saw has no such cut. A piece was a cut of its section,
// alloy, length and ends that is ticked as made. Where the saw has fewer of them than the bench,
// those that are cut as the project wants them come first, as in cut_at_saw.
std::vector<std::optional<CutHeld>> cuts_held(const Project& project,
                                              const Catalogue& catalogue,
                                              const Resolved& resolved,
                                              const BenchTicks& ticks);

// Whether the bench has cut it anew and made it well, and the saw still has it as it was.
bool is_told_at_saw(const BenchPiece& piece);

// The cut becomes that of the piece as the project has it now; what it took off its bar stays. None
// where it is that already, or is there no more.
std::optional<Edit> cut_made_anew(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const CutPlace& place,
                                  Index piece);

// The same of all that the bench has cut anew and that the saw still has as they were: as the step
// was undone there.
std::vector<Edit> cuts_made_anew(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved,
                                 const std::vector<BenchPiece>& pieces);

// Its piece was put away: the cut counts as spoiled, so that another one is planned. None where it
// is there no more.
std::optional<Edit> cut_put_away(const Project& project, const CutPlace& place);

}  // namespace model
