// Diameters in inches, as drill charts and callipers give them.
#pragma once

#include "engine/measure/length.h"

#include <string>

namespace model {

// To a ten-thousandth: "0.0960".
std::string decimal_inches(engine::Length length);

}  // namespace model
