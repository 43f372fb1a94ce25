#include "editor/places/unrolled_piece.h"

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

// A shim is one small plate without a section.
void append_shim(UnrolledPiece& flat, const model::Piece& piece) {
    const auto& box = piece.extents;
    for (const auto axis : model::across(piece.run)) {
        const auto i = model::index_of(axis);
        if (piece.plate_count == 0 || piece.plates[0].normal_axis == i) continue;
        append_wall(flat, "shim", 0, box.hi[i] - box.lo[i], false);
    }
}

int sign_of_handedness(const model::Piece& piece) {
    const auto run = model::index_of(piece.run);
    const auto a = model::index_of(piece.a_axis);
    const auto b = 3 - run - a;
    const bool is_cyclic = (a + 1) % 3 == b;  // a x b is +run
    return (is_cyclic ? 1 : -1) * piece.a_sense * piece.b_sense * piece.run_sense;
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
        append_shim(flat, it);
    }
    // Turned by half a turn in its plane, the other hand has its walls in the same order.
    flat.datum_is_below = sign_of_handedness(it) < 0;
    append_holes(flat, derived.resolved, it);
    return flat;
}

}  // namespace editor
