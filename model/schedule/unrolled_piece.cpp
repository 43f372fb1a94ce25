#include "model/schedule/unrolled_piece.h"

#include "model/resolve/piece_reading.h"
#include "model/resolve/sheet_size.h"
#include "model/resolve/symmetry.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/wall_outline.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

namespace model {
namespace {

double mm(Nm nm) { return engine::Length::from_nm(nm).mm(); }

// The walls side by side as seen from within a section whose a, b and run are right-handed, so that
// a runs to the right. Those that turn up at the left run backwards.
struct WallPlace {
    std::string_view name;
    bool backwards = false;
};

std::vector<WallPlace> places_of(SectionForm form) {
    switch (form) {
        case SectionForm::angle:
            return {{"leg b", true}, {"leg a"}};
        case SectionForm::flat:
            return {{"face"}};
        case SectionForm::channel:
            return {{"near flange", true}, {"web"}, {"far flange"}};
        case SectionForm::tube:
            return {{"side b", true}, {"side a"}, {"far side b"}, {"far side a", true}};
    }
    return {};
}

// From the heel's corner to the wall's far edge; the wall itself may begin behind another one.
Nm width_of(const SectionPlate& wall) { return wall.normal_axis == 0 ? wall.hi[1] : wall.hi[0]; }

std::size_t find_wall(const std::vector<SectionPlate>& walls, std::string_view name) {
    const auto at = std::find_if(walls.begin(), walls.end(), [&](const SectionPlate& wall) {
        return wall.name == name && !wall.is_root_fillet;
    });
    return static_cast<std::size_t>(at - walls.begin());
}

void append_wall(
    UnrolledPiece& flat, std::string name, std::size_t wall, Nm width, bool backwards) {
    const double left = flat.width;
    flat.width += mm(width);
    flat.walls.push_back({std::move(name), static_cast<std::uint8_t>(wall),
                          backwards ? flat.width : left, backwards ? left : flat.width});
}

void append_section(UnrolledPiece& flat, const Section& section) {
    const auto walls = section_plates(section);
    for (const auto& [name, backwards] : places_of(section.form)) {
        const std::size_t wall = find_wall(walls, name);
        if (wall == walls.size()) continue;
        append_wall(flat, std::string(name), wall, width_of(walls[wall]), backwards);
    }
}

void append_sheet(UnrolledPiece& flat, const Resolved& resolved, const Piece& piece) {
    if (piece.plate_count == 0) return;
    append_wall(flat, std::string(name_of(piece.kind)), 0, sheet_width(resolved, piece), false);
}

void append_holes(UnrolledPiece& flat, const Resolved& resolved, const Piece& piece) {
    for (Index h = piece.first_hole; h < piece.first_hole + piece.hole_count; ++h) {
        const auto& hole = resolved.holes[h];
        for (std::size_t w = 0; w < flat.walls.size(); ++w) {
            const auto& wall = flat.walls[w];
            if (wall.wall != hole.wall) continue;
            const double inwards = wall.toe < wall.heel ? -1.0 : 1.0;
            const double from_datum = mm(hole.from_datum);
            flat.holes.push_back({h, w, wall.heel + inwards * mm(hole.gauge),
                                  flat.datum_is_below ? flat.length - from_datum : from_datum,
                                  mm(hole.diameter)});
        }
    }
}

// A wall that begins behind another one covers its edge in the drawing: its ends run on to the
// heel.
Corners as_far_as_heel(const Corners& corners, Nm length) {
    Nm least = corners.empty() ? 0 : corners.front()[1];
    for (const auto& corner : corners) least = std::min(least, corner[1]);
    if (least == 0) return corners;
    Corners all = corners;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const auto& [along, across] = corners[i];
        if (across != least) continue;
        const auto& before = corners[(i + corners.size() - 1) % corners.size()];
        const auto& after = corners[(i + 1) % corners.size()];
        const auto& other = before[1] != least ? before : after;
        all[i] = {along, 0};
        if (other[1] == least) continue;
        const double slope =
            static_cast<double>(along - other[0]) / static_cast<double>(other[1] - least);
        const Nm on = static_cast<Nm>(std::llround(slope * static_cast<double>(least)));
        all[i][0] = std::clamp<Nm>(along + on, 0, length);
    }
    return all;
}

UnrolledLoop loop_of(const UnrolledPiece& flat, const UnrolledWall& wall, const Corners& corners) {
    const double inwards = wall.toe < wall.heel ? -1.0 : 1.0;
    UnrolledLoop loop;
    for (const auto& [along, across] : corners) {
        const double from_datum = mm(along);
        loop.push_back({wall.heel + inwards * mm(across),
                        flat.datum_is_below ? flat.length - from_datum : from_datum});
    }
    return loop;
}

void append_loops(UnrolledPiece& flat,
                  const Resolved& resolved,
                  const Catalogue& catalogue,
                  const Piece& piece) {
    if (is_plain(piece)) return;
    const bool is_bar = piece.section < catalogue.sections.size();
    const auto walls =
        is_bar ? section_plates(catalogue.sections[piece.section]) : std::vector<SectionPlate>{};
    for (const auto& wall : flat.walls) {
        const auto outline =
            wall_outline(resolved, piece, piece.plates[wall.wall], catalogue, walls).near;
        flat.loops.push_back(loop_of(
            flat, wall, is_bar ? as_far_as_heel(outline.corners, piece.length) : outline.corners));
        for (const auto& cut_out : outline.cut_outs)
            flat.loops.push_back(loop_of(flat, wall, cut_out));
    }
}

// Seen in a mirror that stands along the drawing (across) or below it.
void mirror(UnrolledPiece& flat, bool is_across, bool is_down) {
    const auto across = [&](double place) { return is_across ? flat.width - place : place; };
    const auto down = [&](double place) { return is_down ? flat.length - place : place; };
    for (auto& wall : flat.walls) {
        wall.heel = across(wall.heel);
        wall.toe = across(wall.toe);
    }
    for (auto& hole : flat.holes) {
        if (is_across) hole.wall = flat.walls.size() - 1 - hole.wall;
        hole.across = across(hole.across);
        hole.down = down(hole.down);
    }
    if (is_across) std::reverse(flat.walls.begin(), flat.walls.end());
    for (auto& loop : flat.loops)
        for (auto& corner : loop) corner = {across(corner[0]), down(corner[1])};
    if (is_down) flat.datum_is_below = !flat.datum_is_below;
}

}  // namespace

UnrolledPiece unrolled_piece(const Resolved& resolved, const Catalogue& catalogue, Index piece) {
    const auto& it = resolved.pieces[piece];
    UnrolledPiece flat;
    flat.length = mm(it.length);
    if (it.section < catalogue.sections.size()) {
        append_section(flat, catalogue.sections[it.section]);
    } else {
        append_sheet(flat, resolved, it);
    }
    const auto* lean = it.lean < resolved.leans.size() ? &resolved.leans[it.lean] : nullptr;
    // Turned by half a turn in its plane, the other hand has its walls in the same order.
    flat.datum_is_below = handedness(it, lean) < 0;
    append_holes(flat, resolved, it);
    append_loops(flat, resolved, catalogue, it);
    return flat;
}

std::vector<UnrolledEdge> cut_edges(const UnrolledPiece& flat) {
    auto loops = flat.loops;
    if (loops.empty()) {
        loops = {{{0.0, 0.0}, {flat.width, 0.0}, {flat.width, flat.length}, {0.0, flat.length}}};
    }
    const auto is_fold = [&](double across) {
        return std::any_of(flat.walls.begin(), flat.walls.end(), [&](const UnrolledWall& wall) {
            return wall.right() < flat.width - 1e-3 && std::abs(wall.right() - across) < 1e-3;
        });
    };
    std::vector<UnrolledEdge> edges;
    for (const auto& loop : loops) {
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const auto& from = loop[i];
            const auto& to = loop[(i + 1) % loop.size()];
            if (!is_fold(from[0]) || !is_fold(to[0])) edges.push_back({from, to});
        }
    }
    return edges;
}

UnrolledPiece with_datum_above(UnrolledPiece flat) {
    if (flat.datum_is_below) mirror(flat, true, true);
    return flat;
}

UnrolledPiece seen_from_outside(UnrolledPiece flat) {
    mirror(flat, true, false);
    return flat;
}

}  // namespace model
