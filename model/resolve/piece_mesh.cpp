#include "model/resolve/piece_mesh.h"

#include "engine/geometry/extrusion.h"
#include "engine/geometry/plate_solid.h"
#include "engine/geometry/solid_mesh.h"
#include "model/resolve/bar_cuts.h"
#include "model/resolve/fastener_solid.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/piece_solid.h"
#include "model/resolve/section_profile.h"

#include <cstddef>
#include <vector>

namespace model {

// A bar with square ends, by far the most pieces, is drawn without making its solid first.
struct PieceMesher::Work {
    const Resolved& resolved;
    const Catalogue& catalogue;
    engine::ExtrusionMesher mesher;
    std::vector<engine::Profile> profiles;  // as in Catalogue::sections; empty until needed
    std::vector<std::vector<SectionPlate>> walls;
    std::vector<engine::CrossHole> holes;
    PieceSolids solids;
    PieceSolid solid;
    engine::SolidMesher solid_mesher;

    Work(const Resolved& all, const Catalogue& shapes)
        : resolved{all}, catalogue{shapes}, solids{all, shapes} {
        profiles.resize(catalogue.sections.size());
        walls.resize(catalogue.sections.size());
    }

    const engine::Profile& profile_of(Index section) {
        auto& profile = profiles[section];
        if (profile.points.empty()) {
            profile = section_profile(catalogue.sections[section]);
            walls[section] = section_plates(catalogue.sections[section]);
        }
        return profile;
    }

    bool is_plain_bar(const Piece& piece) const {
        const bool is_outlined = piece.plate_count == 1 && piece.plates[0].outline != no_index;
        return piece.section < profiles.size() && !is_outlined && has_square_ends(piece);
    }

    void append_bar(engine::Mesh& mesh, const Piece& piece) {
        const auto& profile = profile_of(piece.section);
        collect_cross_holes(holes, resolved, piece, walls[piece.section]);
        mesher.append(mesh, profile, in_mm(piece.length), holes, piece_placement(resolved, piece));
    }

    // What cannot be made is shown as the boxes that hold its walls.
    void append_boxes(engine::Mesh& mesh, const Piece& piece) {
        if (piece.section < profiles.size()) profile_of(piece.section);
        for (const auto& plate : piece.walls()) {
            if (plate.is_root_fillet) continue;
            const auto own_walls = piece.section < walls.size()
                                       ? std::span<const SectionPlate>(walls[piece.section])
                                       : std::span<const SectionPlate>();
            auto wall = wall_placement(resolved, piece, plate, own_walls);
            const double from_heel = in_mm(wall.lo[1]);
            for (std::size_t i = 0; i < 3; ++i) wall.place.origin[i] += wall.place.y[i] * from_heel;
            if (engine::make_box(solid.solid,
                                 {in_mm(wall.hi[0] - wall.lo[0]), in_mm(wall.hi[1] - wall.lo[1]),
                                  in_mm(wall.thickness)}))
                solid_mesher.append(mesh, solid.solid, wall.place);
        }
    }
};

PieceMesher::PieceMesher(const Resolved& resolved, const Catalogue& catalogue)
    : work_{new Work{resolved, catalogue}} {}

PieceMesher::~PieceMesher() = default;

void PieceMesher::reserve_for_all(engine::Mesh& mesh) {
    const auto& resolved = work_->resolved;
    const auto sheet = rectangle_profile(1.0, 1.0);
    engine::MeshCounts all;
    for (const auto& piece : resolved.pieces) {
        const bool has_section = piece.section < work_->profiles.size();
        const auto& profile = has_section ? work_->profile_of(piece.section) : sheet;
        all = all + engine::extrusion_counts(profile, piece.hole_count);
    }
    const auto fastener = fastener_counts();
    for (std::size_t i = 0; i < resolved.fasteners.size(); ++i) all = all + fastener;
    engine::reserve_more(mesh, all);
}

void PieceMesher::append(engine::Mesh& mesh, Index piece_index) {
    const auto& piece = work_->resolved.pieces[piece_index];
    if (work_->is_plain_bar(piece)) return work_->append_bar(mesh, piece);
    const bool is_made = work_->solids.make(work_->solid, piece_index) &&
                         work_->solid_mesher.append(mesh, work_->solid.solid, work_->solid.place);
    if (!is_made) work_->append_boxes(mesh, piece);
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
