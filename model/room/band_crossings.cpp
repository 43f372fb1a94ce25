#include "model/room/band_crossings.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

// The share of the way at which one of two overtakes the other; 0 where none does.
double crossing(double apart, double then) {
    const bool do_cross = (apart < 0.0 && then > 0.0) || (apart > 0.0 && then < 0.0);
    return do_cross ? apart / (apart - then) : 0.0;
}

void add_marks_at(double share, std::array<TapeMark, 2> gap, std::set<TapeMark>& marks) {
    const auto [from, to] = gap;
    const auto at =
        from + static_cast<TapeMark>(std::llround(share * static_cast<double>(to - from)));
    for (const TapeMark mark : {at - 1, at, at + 1}) {
        if (mark > from && mark < to) marks.insert(mark);
    }
}

void add_crossings(std::array<TapeMark, 2> gap,
                   const std::vector<double>& before,
                   const std::vector<double>& after,
                   std::set<TapeMark>& marks) {
    const auto count = std::min(before.size(), after.size());
    for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t k = i + 1; k < count; ++k) {
            const double share = crossing(before[i] - before[k], after[i] - after[k]);
            if (share > 0.0) add_marks_at(share, gap, marks);
        }
    }
}

}  // namespace

std::set<TapeMark> crossings(std::array<TapeMark, 2> gap,
                             const BandLook& before,
                             const BandLook& after) {
    std::set<TapeMark> marks;
    for (std::size_t f = 0; f < std::min(before.planes.size(), after.planes.size()); ++f) {
        for (std::size_t axis = 0; axis < 3; ++axis)
            add_crossings(gap, before.planes[f][axis], after.planes[f][axis], marks);
    }
    return marks;
}

}  // namespace model
