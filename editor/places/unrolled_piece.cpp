#include "editor/places/unrolled_piece.h"

#include "model/resolve/piece_reading.h"
#include "model/resolve/sheet_size.h"
#include "model/resolve/symmetry.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/wall_outline.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace editor {
namespace {

using model::Index;
using model::Nm;

double mm(Nm nm) { return engine::Length::from_nm(nm).mm(); }

// The walls side by side as seen from within a section whose a, b and run are right-handed, so that
// a runs to the right. Those that turn up at the left run backwards.
struct WallPlace {
    std::string_view name;
    bool backwards = false;
};

std::vector<WallPlace> places_of(model::SectionForm form) {
    switch (form) {
        case model::SectionForm::angle:
            return {{"leg b", true}, {"leg a"}};
        case model::SectionForm::flat:
            return {{"face"}};
        case model::SectionForm::channel:
            return {{"near flange", true}, {"web"}, {"far flange"}};
        case model::SectionForm::tube:
            return {{"side b", true}, {"side a"}, {"far side b"}, {"far side a", true}};
    }
    return {};
}

// From the heel's corner to the wall's far edge; the wall itself may begin behind another one.
Nm width_of(const model::SectionPlate& wall) {
    return wall.normal_axis == 0 ? wall.hi[1] : wall.hi[0];
}

std::size_t find_wall(const std::vector<model::SectionPlate>& walls, std::string_view name) {
    const auto at = std::find_if(walls.begin(), walls.end(), [&](const model::SectionPlate& wall) {
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

void append_section(UnrolledPiece& flat, const model::Section& section) {
    const auto walls = model::section_plates(section);
    for (const auto& [name, backwards] : places_of(section.form)) {
        const std::size_t wall = find_wall(walls, name);
        if (wall == walls.size()) continue;
        append_wall(flat, std::string(name), wall, width_of(walls[wall]), backwards);
    }
}

void append_sheet(UnrolledPiece& flat, const model::Resolved& resolved, const model::Piece& piece) {
    if (piece.plate_count == 0) return;
    append_wall(flat, std::string(model::name_of(piece.kind)), 0,
                model::sheet_width(resolved, piece), false);
}

void append_holes(UnrolledPiece& flat, const model::Resolved& resolved, const model::Piece& piece) {
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

UnrolledLoop loop_of(const UnrolledPiece& flat,
                     const UnrolledWall& wall,
                     const model::Corners& corners) {
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
                  const model::Resolved& resolved,
                  const model::Catalogue& catalogue,
                  const model::Piece& piece) {
    if (model::is_plain(piece)) return;
    const bool is_bar = piece.section < catalogue.sections.size();
    const auto walls = is_bar ? model::section_plates(catalogue.sections[piece.section])
                              : std::vector<model::SectionPlate>{};
    for (const auto& wall : flat.walls) {
        const auto outline =
            model::wall_outline(resolved, piece, piece.plates[wall.wall], catalogue, walls).near;
        flat.loops.push_back(loop_of(flat, wall, outline.corners));
        for (const auto& cut_out : outline.cut_outs)
            flat.loops.push_back(loop_of(flat, wall, cut_out));
    }
}

}  // namespace

UnrolledPiece unrolled_piece(const Derived& derived,
                             const model::Catalogue& catalogue,
                             Index piece) {
    const auto& it = derived.resolved.pieces[piece];
    UnrolledPiece flat;
    flat.length = mm(it.length);
    if (it.section < catalogue.sections.size()) {
        append_section(flat, catalogue.sections[it.section]);
    } else {
        append_sheet(flat, derived.resolved, it);
    }
    const auto* lean =
        it.lean < derived.resolved.leans.size() ? &derived.resolved.leans[it.lean] : nullptr;
    // Turned by half a turn in its plane, the other hand has its walls in the same order.
    flat.datum_is_below = model::handedness(it, lean) < 0;
    append_holes(flat, derived.resolved, it);
    append_loops(flat, derived.resolved, catalogue, it);
    return flat;
}

}  // namespace editor
