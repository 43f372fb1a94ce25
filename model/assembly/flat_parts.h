// Which pieces make up flat sub-assemblies: all that lie in one plane and are joined there. Only
// files of this folder use it.
#pragma once

#include "model/assembly/frame_parts.h"

#include <string>
#include <vector>

namespace model {

struct FlatPart {
    std::string face;  // the layout plane
    std::vector<Index> pieces;
};

// Those across one axis of the frame, of at least three pieces, of what lies within `of`; no piece
// is in two. Flat parts such as the two ends of a cabinet go together first: common practice.
std::vector<FlatPart> flat_parts(const FrameParts& parts, Axis across, const PieceSet& of);

// The axes in the order in which they are worth trying: those whose two outermost faces hold the
// most joints first, of as many the one with the smaller parts.
std::vector<Axis> axes_by_worth(const FrameParts& parts, const PieceSet& of);

}  // namespace model
