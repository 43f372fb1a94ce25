#include "model/resolve/piece_solid.h"

#include "engine/geometry/bar_solid.h"
#include "engine/geometry/plate_solid.h"
#include "engine/geometry/solid_measure.h"
#include "model/resolve/bar_cuts.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/section_profile.h"

#include <vector>

namespace model {
namespace {

std::vector<engine::FacePoint> loop_of(const Corners& corners) {
    std::vector<engine::FacePoint> loop;
    loop.reserve(corners.size());
    for (const auto& corner : corners) loop.push_back({in_mm(corner[0]), in_mm(corner[1])});
    return loop;
}

engine::PlateLoops loops_of(const Outline& outline) {
    engine::PlateLoops loops{loop_of(outline.corners)};
    for (const auto& cut_out : outline.cut_outs) loops.push_back(loop_of(cut_out));
    return loops;
}

engine::PlateLoops rectangle(const WallPlacement& wall) {
    return loops_of({.corners = {{wall.lo[0], wall.lo[1]},
                                 {wall.hi[0], wall.lo[1]},
                                 {wall.hi[0], wall.hi[1]},
                                 {wall.lo[0], wall.hi[1]}},
                     .cut_outs = {}});
}

}  // namespace

struct PieceSolids::Work {
    const Resolved& resolved;
    const Catalogue& catalogue;
    std::vector<engine::BarSection> sections;  // as in Catalogue::sections; empty until needed
    std::vector<std::vector<SectionPlate>> walls;
    engine::BarSolids bars;
    std::vector<engine::CrossHole> cross_holes;
    std::vector<engine::RoundHole> round_holes;

    bool make(PieceSolid& made, const Piece& piece) {
        if (piece.plate_count == 0 && piece.section >= sections.size()) return false;
        const bool is_bar = piece.section < sections.size();
        if (is_bar && sections[piece.section].sides.empty()) {
            sections[piece.section] = bar_section(catalogue.sections[piece.section]);
            walls[piece.section] = section_plates(catalogue.sections[piece.section]);
        }
        const bool is_outlined = piece.plate_count == 1 && has_outline(piece.plates[0]);
        return is_bar && !is_outlined ? make_bar(made, piece) : make_plate(made, piece);
    }

    bool has_outline(const Plate& plate) const { return plate.outline < resolved.outlines.size(); }

    bool make_bar(PieceSolid& made, const Piece& piece) {
        const auto& own_walls = walls[piece.section];
        const auto notches = end_notches(piece, catalogue.sections[piece.section], own_walls);
        collect_cross_holes(cross_holes, resolved, piece, own_walls);
        made.place = piece_placement(resolved, piece);
        return bars.make(
            made.solid, sections[piece.section],
            {.length = in_mm(piece.length),
             .cuts = {end_cut(piece.ends[0], own_walls), end_cut(piece.ends[1], own_walls)},
             .notches = notches,
             .holes = cross_holes});
    }

    bool make_plate(PieceSolid& made, const Piece& piece) {
        const auto& plate = piece.plates[0];
        const bool is_bar = piece.section < walls.size();
        const auto wall =
            wall_placement(resolved, piece, plate,
                           is_bar ? std::span<const SectionPlate>(walls[piece.section])
                                  : std::span<const SectionPlate>());
        const bool is_outlined = has_outline(plate);
        const auto near =
            is_outlined ? loops_of(resolved.outlines[plate.outline]) : rectangle(wall);
        const bool is_bevelled = is_outlined && plate.outline_far < resolved.outlines.size();
        const auto far =
            is_bevelled ? loops_of(resolved.outlines[plate.outline_far]) : engine::PlateLoops{};
        round_holes.clear();
        for (const auto& hole : resolved.holes_of(piece))
            round_holes.push_back(
                {{in_mm(hole.from_datum), in_mm(hole.gauge)}, in_mm(hole.diameter) / 2.0});
        made.place = wall.place;
        if (is_outlined && !engine::is_simple(near)) return false;
        if (is_bevelled && !engine::is_simple(far)) return false;
        return engine::make_plate(made.solid, {.near = near,
                                               .far = is_bevelled ? &far : nullptr,
                                               .thickness = in_mm(wall.thickness),
                                               .holes = round_holes});
    }
};

PieceSolids::PieceSolids(const Resolved& resolved, const Catalogue& catalogue)
    : work_{new Work{resolved, catalogue, {}, {}, {}, {}, {}}} {
    work_->sections.resize(catalogue.sections.size());
    work_->walls.resize(catalogue.sections.size());
}

PieceSolids::~PieceSolids() = default;

bool PieceSolids::make(PieceSolid& made, Index piece) {
    const bool is_made = work_->make(made, work_->resolved.pieces[piece]);
    if (!is_made) engine::SolidBuilder{made.solid};
    return is_made;
}

double piece_volume(const Resolved& resolved, const Catalogue& catalogue, Index piece) {
    PieceSolid made;
    PieceSolids solids{resolved, catalogue};
    return solids.make(made, piece) ? engine::measure_of(made.solid).volume : 0.0;
}

}  // namespace model
