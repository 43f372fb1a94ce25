// What lies on the bench while the steps of a frame are told. Only files of this folder use it.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/assembly/piece_set.h"
#include "model/assembly/take_apart.h"

#include <string>
#include <vector>

namespace model {

// A sub-assembly, or the frame itself, while it is being put together.
struct Bench {
    Index assembly = 0;
    AssemblyWork work = AssemblyWork::joined_on;  // of bars
    std::string face;
    PieceSet present;
    std::vector<Index> waiting;         // joints that are together and not set yet
    const Put* last_of_bars = nullptr;  // of what is put on: no rectangle is closed after it
};

// A sub-assembly that lies ready.
struct Made {
    Index last_step = no_index;
    std::vector<Index> waiting;  // of its screws
};

}  // namespace model
