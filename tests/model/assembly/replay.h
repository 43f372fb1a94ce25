// An assembly order carried out step by step, believing nothing.
#pragma once

#include "model/assembly/assembly_order.h"

#include "tests/model/assembly/naive_world.h"
#include "tests/support/skeleton_checks.h"

namespace tests {

// Every piece is put on once and gets to its place, by itself or with its sub-assembly; every joint
// joins once and is set once, where its tool reaches it; pins and diagonals are those of what is
// there.
Complaints replay_complaints(const NaiveWorld& world,
                             const model::Resolved& resolved,
                             const model::AssemblyOrder& order);

// Whether the frame can be put together at all: parts of it by twos, in every way that there is.
// Of frames with at most 16 pieces.
bool can_be_put_together(const NaiveWorld& world,
                         const model::Resolved& resolved,
                         model::Index frame);

}  // namespace tests
