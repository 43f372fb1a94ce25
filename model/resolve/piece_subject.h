// What pieces and joints are called in findings.
#pragma once

#include "model/project/project.h"
#include "model/resolve/finding.h"
#include "model/resolve/resolved.h"

#include <array>
#include <vector>

namespace model {

// The two members that a joint of these two pieces joins: the pieces' own, or those that one of
// them was made for.
std::array<Index, 2> members_joined(const Piece& upper, const Piece& lower);

// "member rail", "joint post + rail" for a part of a joint, "diagonal brace", "leaning member
// post", "panel back".
Subject piece_subject(const Frame& frame, const Piece& piece);

// "joint post + rail", whichever of the two is a part of the joint.
Subject joint_subject(const Frame& frame, const Piece& upper, const Piece& lower);

// What a joint concerns: the joint, a brace on it, and the member under a brace of its own.
std::vector<Subject> joint_subjects(const Frame& frame, const Resolved& resolved, Index joint);

}  // namespace model
