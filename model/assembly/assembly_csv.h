// The assembly order as the text of a CSV file.
#pragma once

#include "model/assembly/assembly_order.h"

#include <string>

namespace model {

// A line for each thing to do, in the order of the work.
std::string assembly_csv(const Project& project,
                         const Catalogue& catalogue,
                         const Resolved& resolved,
                         const AssemblyOrder& order);

}  // namespace model
