// Labels along a line that must not lie on one another.
#pragma once

#include <vector>

namespace engine {

// Places in rising order, each moved to be at least a gap from the next one and within the two
// ends, as near as can be to where it belongs. The gap is less where there is no room for it.
void push_apart(std::vector<double>& places, double gap, double least, double most);

}  // namespace engine
