// The pieces and joints of one frame as the assembly order numbers them: by where they lie, so that
// the order in which members were stated makes no difference. Only files of this folder use it.
#pragma once

#include "model/assembly/piece_set.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <algorithm>
#include <span>
#include <vector>

namespace model {

struct JointOfFrame {
    Index joint = 0;              // in Resolved::joints
    std::vector<Index> together;  // pieces that its fasteners hold, rising
    PieceSet set;                 // the same
    bool is_fastened = false;
    bool is_riveted = false;
    bool comes_apart = false;  // held by screws that are meant to be taken out again

    bool stands_in(const PieceSet& standing) const {
        return std::ranges::all_of(together, [&](Index i) { return standing.contains(i); });
    }
};

class FrameParts {
public:
    // All must outlive it.
    FrameParts(const Project& project,
               const Catalogue& catalogue,
               const Resolved& resolved,
               Index frame);

    const Frame& stated() const { return project_.frames[frame_]; }
    const ResolvedFrame& placed() const { return resolved_.frames[frame_]; }
    const Resolved& resolved() const { return resolved_; }
    const Catalogue& catalogue() const { return catalogue_; }
    Index frame() const { return frame_; }

    Index size() const { return static_cast<Index>(pieces_.size()); }
    const Piece& piece(Index local) const { return resolved_.pieces[pieces_[local]]; }
    Index number(Index local) const { return pieces_[local]; }  // in Resolved::pieces

    std::span<const JointOfFrame> joints() const { return joints_; }
    std::span<const Index> joints_of(Index local) const { return joints_of_[local]; }

    // Each once, rising.
    std::vector<Index> joints_touching(std::span<const Index> locals) const;

    PieceSet all() const;

    // Through which it is fixed to the van, in Resolved::holes.
    std::vector<Index> fixing_holes() const;

private:
    JointOfFrame joint_of(Index joint, std::span<const Index> local) const;
    bool comes_apart(const Joint& joint) const;

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    Index frame_ = 0;
    std::vector<Index> pieces_;
    std::vector<JointOfFrame> joints_;
    std::vector<std::vector<Index>> joints_of_;
};

}  // namespace model
