// What is said of splices.
#pragma once

#include "model/project/project.h"
#include "model/resolve/finding.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <vector>

namespace model {

struct LongPiece {
    Subject member;
    Nm length = 0;
    Nm most = 0;  // that a bar gives
};

// How it is made instead: lengths in order, and the share of the span at which a butt lies nearest
// to the middle.
struct SpliceTold {
    std::vector<Nm> lengths;
    double worst_share = 0.0;
    std::string backings;  // "two pieces of flat 1 x 1/8, 4 1/16 in long"
};

Finding spliced(const LongPiece& piece, const SpliceTold& told, engine::TapeStyle shown);

// No stock lies on its walls; `flat` is one that would.
Finding splice_lacks_backing(const LongPiece& piece,
                             const std::string& section,
                             const std::optional<std::string>& flat,
                             engine::TapeStyle shown);

// There is no place for so few butts.
Finding splice_has_no_room(const LongPiece& piece, Nm backing_length, engine::TapeStyle shown);

Finding splice_of_too_many(const LongPiece& piece, engine::TapeStyle shown);

}  // namespace model
