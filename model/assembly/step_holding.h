// How what a step puts together lies on the bench, and what one person alone cannot hold there.
#pragma once

#include "model/assembly/assembly_order.h"

#include <string>
#include <string_view>

namespace model {

// "on its left side", "on its back": how what is laid down first lies, where most of what comes
// next comes down on it from the other side. Empty where the step leaves it open.
std::string_view lies_on(const Project& project, const AssemblyOrder& order, Index step);

// "8 pieces are held at one end, the other one is free: prop ...", where more than four are, or
// more than four joints must meet at once; else empty. Common practice.
std::string holding_words(const Resolved& resolved, const AssemblyOrder& order, Index step);

}  // namespace model
