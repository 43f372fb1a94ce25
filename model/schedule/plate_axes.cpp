#include "model/schedule/plate_axes.h"

#include <algorithm>

namespace model {

PlateAxes plate_axes(const Piece& piece, const Plate& plate) {
    const auto run = index_of(piece.run);
    const std::size_t normal = plate.normal_axis;
    const auto gauge = 3 - run - normal;
    const int gauge_sense = gauge == index_of(piece.a_axis) ? piece.a_sense : piece.b_sense;

    PlateAxes axes;
    axes.origin = piece.datum;
    axes.origin[normal] = plate.inward > 0 ? plate.box.lo[normal] : plate.box.hi[normal];
    axes.u[run] = piece.run_sense;
    axes.v[gauge] = gauge_sense;
    axes.n[normal] = plate.inward;
    const auto set_range = [&](std::size_t along, std::size_t axis, int sense) {
        const Nm one = (plate.box.lo[axis] - axes.origin[axis]) * sense;
        const Nm other = (plate.box.hi[axis] - axes.origin[axis]) * sense;
        axes.lo[along] = std::min(one, other);
        axes.hi[along] = std::max(one, other);
    };
    set_range(0, run, piece.run_sense);
    set_range(1, gauge, gauge_sense);
    axes.thickness = plate.box.hi[normal] - plate.box.lo[normal];
    return axes;
}

}  // namespace model
