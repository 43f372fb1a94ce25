// The order of assembly of the project as it is: worked out when something asks for it, not in each
// frame.
#pragma once

#include "editor/derived.h"
#include "model/assembly/assembly_order.h"

#include <memory>
#include <vector>

namespace editor {

struct AssemblyMemo {
    Snapshot of;  // the project whose order it is
    model::AssemblyOrder order;
    std::vector<model::Approach> approaches;  // of each piece
    std::vector<std::size_t> numbers;         // of each step within its frame, from 1
};

const AssemblyMemo& assembly_of(std::shared_ptr<AssemblyMemo>& memo,
                                const Derived& derived,
                                const model::Catalogue& catalogue);

}  // namespace editor
