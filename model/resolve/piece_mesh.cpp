#include "model/resolve/piece_mesh.h"

#include "engine/geometry/extrusion.h"
#include "engine/geometry/placement.h"
#include "model/resolve/fastener_solid.h"
#include "model/resolve/section_profile.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace model {
namespace {

double mm(Nm length) { return static_cast<double>(length) / 1e6; }

// The section's axes a and b and the run, as axes of the frame with their senses.
struct PieceAxes {
    std::array<std::size_t, 3> axis{};
    std::array<int, 3> sense{};
};

PieceAxes axes_of(const Piece& piece) {
    const auto run = index_of(piece.run);
    const auto a = index_of(piece.a_axis);
    return {.axis = {a, 3 - run - a, run},
            .sense = {piece.a_sense, piece.b_sense, piece.run_sense}};
}

engine::Placement placement_of(const Piece& piece,
                               const PieceAxes& axes,
                               const ResolvedFrame& frame) {
    const auto direction = [&](std::size_t own) {
        std::array<int, 3> in_frame{};
        in_frame[axes.axis[own]] = axes.sense[own];
        const auto in_room = direction_to_room(frame, in_frame);
        return engine::Vector{static_cast<double>(in_room[0]), static_cast<double>(in_room[1]),
                              static_cast<double>(in_room[2])};
    };
    const auto origin = to_room(frame, piece.datum);
    return {.origin = {mm(origin[0]), mm(origin[1]), mm(origin[2])},
            .x = direction(0),
            .y = direction(1),
            .z = direction(2)};
}

// A length along a section axis, of a place in the frame.
double in_section(const Piece& piece, const PieceAxes& axes, std::size_t own, Nm in_frame) {
    return mm((in_frame - piece.datum[axes.axis[own]]) * axes.sense[own]);
}

const Plate* wall_of(const Piece& piece, std::uint8_t wall) {
    for (const auto& plate : piece.walls()) {
        if (plate.wall == wall && !plate.is_root_fillet) return &plate;
    }
    return nullptr;
}

engine::CrossHole cross_hole(const Piece& piece,
                             const PieceAxes& axes,
                             const Plate& wall,
                             const Hole& hole) {
    const std::size_t drilled = wall.normal_axis == axes.axis[0] ? 0 : 1;
    return {.axis = static_cast<std::uint8_t>(drilled),
            .from = in_section(piece, axes, drilled, wall.box.lo[wall.normal_axis]),
            .to = in_section(piece, axes, drilled, wall.box.hi[wall.normal_axis]),
            .across = mm(hole.gauge),
            .along = mm(hole.from_datum),
            .radius = mm(hole.diameter) / 2.0};
}

}  // namespace

struct PieceMesher::Work {
    const Resolved& resolved;
    const Catalogue& catalogue;
    engine::ExtrusionMesher mesher;
    std::vector<engine::Profile> profiles;  // as in Catalogue::sections; empty until needed
    std::vector<engine::CrossHole> holes;

    const engine::Profile& profile_of(Index section) {
        auto& profile = profiles[section];
        if (profile.points.empty()) profile = section_profile(catalogue.sections[section]);
        return profile;
    }
};

PieceMesher::PieceMesher(const Resolved& resolved, const Catalogue& catalogue)
    : work_{new Work{resolved, catalogue, {}, {}, {}}} {
    work_->profiles.resize(catalogue.sections.size());
}

PieceMesher::~PieceMesher() = default;

void PieceMesher::reserve_for_all(engine::Mesh& mesh) {
    const auto& resolved = work_->resolved;
    const auto shim = rectangle_profile(1.0, 1.0);
    engine::MeshCounts all;
    for (const auto& piece : resolved.pieces) {
        const bool has_section = piece.section < work_->profiles.size();
        const auto& profile = has_section ? work_->profile_of(piece.section) : shim;
        all = all + engine::extrusion_counts(profile, piece.hole_count);
    }
    const auto fastener = fastener_counts();
    for (std::size_t i = 0; i < resolved.fasteners.size(); ++i) all = all + fastener;
    engine::reserve_more(mesh, all);
}

void PieceMesher::append(engine::Mesh& mesh, Index piece_index) {
    const auto& piece = work_->resolved.pieces[piece_index];
    const auto axes = axes_of(piece);
    work_->holes.clear();
    for (const auto& hole : work_->resolved.holes_of(piece)) {
        if (const auto* wall = wall_of(piece, hole.wall))
            work_->holes.push_back(cross_hole(piece, axes, *wall, hole));
    }
    const auto place = placement_of(piece, axes, work_->resolved.frames[piece.frame]);
    if (piece.section < work_->profiles.size()) {
        work_->mesher.append(mesh, work_->profile_of(piece.section), mm(piece.length), work_->holes,
                             place);
        return;
    }
    // A shim is as large as its one plate.
    const auto& lo = piece.extents.lo;
    const auto& hi = piece.extents.hi;
    const auto shim = rectangle_profile(mm(hi[axes.axis[0]] - lo[axes.axis[0]]),
                                        mm(hi[axes.axis[1]] - lo[axes.axis[1]]));
    work_->mesher.append(mesh, shim, mm(piece.length), work_->holes, place);
}

void PieceMesher::append_fastener(engine::Mesh& mesh, Index fastener) const {
    append_fastener_solid(mesh, work_->resolved, work_->catalogue, fastener);
}

engine::Mesh piece_mesh(const Resolved& resolved, const Catalogue& catalogue, Index piece) {
    engine::Mesh mesh;
    PieceMesher{resolved, catalogue}.append(mesh, piece);
    return mesh;
}

engine::Mesh fastener_mesh(const Resolved& resolved, const Catalogue& catalogue, Index fastener) {
    engine::Mesh mesh;
    append_fastener_solid(mesh, resolved, catalogue, fastener);
    return mesh;
}

}  // namespace model
