// What the steps of an assembly are called, so that each can be told from all others.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/assembly/joint_names.h"
#include "model/schedule/piece_words.h"

#include <string>
#include <vector>

namespace model {

// By step, what it is about; with its kind of work each once in its frame: "face left" on the
// bench, "post left and rail front top", "rail front top and 3 more pieces", "face right",
// "joints 14 to 18". Empty for what is fixed to the van.
std::vector<std::string> step_names(const PieceWords& words,
                                    const JointNames& joints,
                                    const AssemblyOrder& order);

// "rail front top", "face left" of what was put together before; that one with the step it was made
// in where two faces may be alike in name.
std::string moved_words(const PieceWords& words,
                        const AssemblyOrder& order,
                        const AssemblyMove& move,
                        bool tells_origin);

// Its number within its frame, from 1.
int step_number(const AssemblyOrder& order, Index step);

}  // namespace model
