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

// Highest first, in rows, each where it first fits (first fit, decreasing height). What is larger
// than a sheet lies alone in its row.
std::vector<PackedPlace> packed_in_rows(const std::vector<PackedSize>& sizes,
                                        const PackedSize& sheet,
                                        double gap);

}  // namespace model
