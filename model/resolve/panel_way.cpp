#include "model/resolve/panel_way.h"

#include "model/resolve/sheet_region.h"
#include "model/resolve/surroundings.h"

#include <algorithm>

namespace model {
namespace {

Region hull(const Region& a, const Region& b) {
    Region both;
    for (std::size_t k = 0; k < 2; ++k) {
        both.lo[k] = std::min(a.lo[k], b.lo[k]);
        both.hi[k] = std::max(a.hi[k], b.hi[k]);
    }
    return both;
}

// A round part of a fastener along its axis, from under the head.
struct Part {
    Nm from = 0;
    Nm to = 0;
    Nm radius = 0;
};

// A formed tail is one diameter long and 1.5 across; a nut about as high as its thread is thick and
// twice as wide: common practice.
std::array<Part, 2> ends_of(const Catalogue& catalogue, const Fastener& fastener) {
    const FastenerSpec& spec = fastener.spec;
    if (spec.kind == FastenerSpec::Kind::blind_rivet) {
        const BlindRivet& rivet = catalogue.rivets[spec.index];
        const Nm d = rivet.diameter.nm();
        return {Part{-rivet.head_height_most.nm(), 0, rivet.head_diameter_most.nm() / 2},
                Part{fastener.grip, fastener.grip + d, d * 3 / 4}};
    }
    const MachineScrew& screw = catalogue.screws[spec.index];
    const Nm d = screw.diameter.nm();
    const Nm length = spec.grip < screw.lengths.size() ? screw.lengths[spec.grip].nm() : 0;
    const Nm nut = spec.kind == FastenerSpec::Kind::screw_tapped ? 0 : d;
    return {Part{-screw.head_height_most.nm(), 0, screw.head_diameter_most.nm() / 2},
            Part{fastener.grip, std::max(fastener.grip + nut, length), nut > 0 ? d : d / 2}};
}

// A formed tail is kept 1/32 in clear of what it passes: the layout rule of laps, see choose_rivet.
// A hole about it leaves that much of itself, an edge beside it does not.
constexpr Nm tail_spare = Length::nm_per_inch / 32;

Box box_of(const Fastener& fastener, const Part& part) {
    Box box{fastener.at, fastener.at};
    for (std::size_t k = 0; k < 3; ++k) {
        if (k == fastener.axis) {
            const Nm a = fastener.at[k] + fastener.drive * part.from;
            const Nm b = fastener.at[k] + fastener.drive * part.to;
            box.lo[k] = std::min(a, b);
            box.hi[k] = std::max(a, b);
        } else {
            box.lo[k] -= part.radius;
            box.hi[k] += part.radius;
        }
    }
    return box;
}

bool enters(const PanelFace& face, const SheetDepth& depth, const Box& box) {
    return inner_side(face, box) < depth.to && outer_side(face, box) > depth.from;
}

// From the foot's outer face inwards, as long as a driver and wide enough for the screw's head,
// which is about twice as wide as its hole (common practice).
Box driver_over(const Piece& piece, const Plate& plate, const Hole& hole) {
    const std::size_t run = index_of(piece.run);
    const std::size_t across = 3 - run - plate.normal_axis;
    const bool is_a = across == index_of(piece.a_axis);
    Point middle = plate.inward > 0 ? plate.box.lo : plate.box.hi;
    middle[run] = piece.datum[run] + piece.run_sense * hole.from_datum;
    middle[across] = piece.datum[across] + (is_a ? piece.a_sense : piece.b_sense) * hole.gauge;
    const Nm radius = hole.diameter + tail_spare;
    Box box{middle, middle};
    for (const std::size_t k : {run, across}) {
        box.lo[k] -= radius;
        box.hi[k] += radius;
    }
    const std::size_t normal = plate.normal_axis;
    const Nm thickness = plate.box.hi[normal] - plate.box.lo[normal];
    (plate.inward > 0 ? box.hi : box.lo)[normal] += plate.inward * (thickness + tool_length);
    return box;
}

}  // namespace

std::vector<Region> pieces_in_way(std::span<const Piece> pieces,
                                  const PanelFace& face,
                                  const SheetDepth& depth,
                                  const Region& over,
                                  Nm gap) {
    const Region near = grown(over, gap);
    std::vector<Region> found;
    for (const auto& piece : pieces) {
        if (!enters(face, depth, piece.extents)) continue;
        bool is_first = true;
        for (const auto& plate : piece.walls()) {
            const Region seen = seen_on(face, plate.box);
            if (!enters(face, depth, plate.box) || !share_area(seen, near)) continue;
            if (is_first) found.push_back(seen);
            found.back() = hull(found.back(), seen);
            is_first = false;
        }
        if (!is_first) found.back() = grown(found.back(), gap);
    }
    return found;
}

std::vector<FastenerInWay> fasteners_in_way(const Catalogue& catalogue,
                                            const Resolved& resolved,
                                            Index frame,
                                            const PanelFace& face,
                                            const SheetDepth& depth,
                                            const Region& over) {
    std::vector<FastenerInWay> found;
    for (Index i = 0; i < resolved.fasteners.size(); ++i) {
        const Fastener& fastener = resolved.fasteners[i];
        if (resolved.joints[fastener.joint].frame != frame) continue;
        const bool is_square = fastener.axis == face.normal;
        for (auto part : ends_of(catalogue, fastener)) {
            const bool is_formed =
                part.from > 0 && fastener.spec.kind == FastenerSpec::Kind::blind_rivet;
            const Nm radius = is_square || !is_formed ? part.radius : part.radius + tail_spare;
            if (is_formed) part.radius += tail_spare;
            const Box box = box_of(fastener, part);
            const Region seen = seen_on(face, box);
            if (!enters(face, depth, box) || !share_area(seen, over)) continue;
            found.push_back({.fastener = i,
                             .is_square_to_sheet = is_square,
                             .at = {fastener.at[face.axis[0]], fastener.at[face.axis[1]]},
                             .radius = radius,
                             .seen = seen});
        }
    }
    return found;
}

std::vector<Box> ways_to_feet(const Resolved& resolved, Index frame) {
    std::vector<Box> ways;
    for (const auto& hole : resolved.holes) {
        if (hole.fastener != no_index) continue;
        const Piece& piece = resolved.pieces[hole.piece];
        if (piece.kind != PieceKind::foot || piece.frame != frame) continue;
        for (const auto& plate : piece.walls()) {
            if (plate.wall == hole.wall && !plate.is_root_fillet) {
                ways.push_back(driver_over(piece, plate, hole));
            }
        }
    }
    return ways;
}

std::vector<Region> feet_in_way(const Resolved& resolved,
                                Index frame,
                                const PanelFace& face,
                                const SheetDepth& depth,
                                const Region& over) {
    std::vector<Region> found;
    for (const auto& way : ways_to_feet(resolved, frame)) {
        const Region seen = seen_on(face, way);
        if (enters(face, depth, way) && share_area(seen, over)) found.push_back(seen);
    }
    return found;
}

}  // namespace model
