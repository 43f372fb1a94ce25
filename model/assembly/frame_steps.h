// The steps of one frame, from the order in which its parts are put on. Only files of this folder
// use it.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/assembly/shut_in.h"
#include "model/assembly/square_at.h"
#include "model/assembly/take_apart.h"

#include <span>
#include <vector>

namespace model {

// Appends them, and to `rows`, AssemblyOrder::squares, what proves them square besides whole faces;
// gives what is screwed on early.
std::vector<ShutIn> add_frame_steps(const FrameParts& parts,
                                    const PartWays& ways,
                                    const ToolAccess& access,
                                    const TakenApart& taken,
                                    std::span<const SquareAt> squares,
                                    std::vector<SquareRow>& rows,
                                    std::vector<AssemblyStep>& steps);

}  // namespace model
