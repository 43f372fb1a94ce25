// Rectangles side by side on as few sheets as a simple rule finds.
#pragma once

#include <cstddef>
#include <vector>

namespace model {

struct PackedPlace {
    std::size_t sheet = 0;
    double left = 0.0;  // mm
    double top = 0.0;
};

struct PackedSize {
    double width = 0.0;  // mm
    double height = 0.0;
};

// In rows, in their order, or the highest groups first where that saves a sheet. Those of one
// group, which follow each other, lie on the first sheet that has room for all of them; else in
// their order on the last one and on those that follow it. What is larger than a sheet lies alone
// in its row. `group_of`: as sizes.
std::vector<PackedPlace> packed_in_groups(const std::vector<PackedSize>& sizes,
                                          const std::vector<std::size_t>& group_of,
                                          const PackedSize& sheet,
                                          double gap);

}  // namespace model
