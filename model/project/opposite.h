// What lies opposite: the other sense along an axis, the other side in a name.
#pragma once

#include "model/project/project.h"

#include <string>

namespace model {

constexpr Sense opposite(Sense sense) { return sense == Sense::plus ? Sense::minus : Sense::plus; }

// A name in which the words for the two sides of an axis have changed places: across x "post left"
// becomes "post right". No two names become one.
std::string opposite_name(const std::string& name, Axis across);

}  // namespace model
