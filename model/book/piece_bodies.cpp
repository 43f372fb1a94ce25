#include "model/book/piece_bodies.h"

#include "model/book/convex_hull.h"
#include "model/resolve/flat_prism.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/piece_prisms.h"
#include "model/resolve/sheet_outline.h"

namespace model {
namespace {

// Takes from a wall what an earlier wall of the same piece fills of it.
void keep_out_of(Plate& wall, const Plate& earlier) {
    if (earlier.is_root_fillet || !overlaps(wall.box, earlier.box)) return;
    const std::size_t axis = earlier.normal_axis;
    auto& lo = wall.box.lo[axis];
    auto& hi = wall.box.hi[axis];
    if (earlier.box.lo[axis] - lo >= hi - earlier.box.hi[axis]) {
        hi = earlier.box.lo[axis];
    } else {
        lo = earlier.box.hi[axis];
    }
}

Piece parted(Piece piece) {
    for (std::size_t k = 1; k < piece.plate_count; ++k) {
        for (std::size_t j = 0; j < k; ++j) {
            if (!piece.plates[k].is_root_fillet) keep_out_of(piece.plates[k], piece.plates[j]);
        }
    }
    return piece;
}

engine::Prism sheet_prism(const Resolved& resolved, const Piece& piece) {
    const Plate& plate = piece.plates[0];
    auto polygon = rectangle(plate.box, axes_across(plate.normal_axis));
    if (plate.outline < resolved.outlines.size())
        polygon = convex_hull(sheet_loop(piece, resolved.outlines[plate.outline].corners));
    return flat_prism(polygon, plate, plate.normal_axis);
}

}  // namespace

void append_piece_bodies(std::vector<BodyOfPiece>& bodies, const Resolved& resolved, Index index) {
    const Piece& piece = resolved.pieces[index];
    std::vector<engine::Prism> prisms;
    if (is_of_sheet(piece.kind)) {
        if (piece.plate_count > 0) prisms.push_back(sheet_prism(resolved, piece));
    } else {
        prisms = prisms_of(parted(piece), Slants{resolved.outlines, resolved.leans});
    }
    for (const auto& prism : prisms) {
        if (auto body = engine::solid_body(prism)) bodies.push_back({index, std::move(*body)});
    }
}

std::vector<BodyOfPiece> frame_bodies(const Resolved& resolved, Index frame) {
    std::vector<BodyOfPiece> bodies;
    const auto& own = resolved.frames[frame];
    for (Index i = own.first_piece; i < own.first_piece + own.piece_count; ++i) {
        if (resolved.pieces[i].kind != PieceKind::panel) append_piece_bodies(bodies, resolved, i);
    }
    return bodies;
}

engine::Placement frame_placement(const ResolvedFrame& frame) {
    engine::Placement place;
    const auto in_room = [&](const std::array<int, 3>& axis) {
        const auto d = direction_to_room(frame, axis);
        return engine::Vector{static_cast<double>(d[0]), static_cast<double>(d[1]),
                              static_cast<double>(d[2])};
    };
    place.x = in_room({1, 0, 0});
    place.y = in_room({0, 1, 0});
    place.z = in_room({0, 0, 1});
    for (std::size_t i = 0; i < 3; ++i) place.origin[i] = in_mm(frame.origin[i]);
    return place;
}

}  // namespace model
