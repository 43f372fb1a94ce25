#include "model/resolve/symmetry.h"

#include <algorithm>
#include <array>
#include <utility>

namespace model {
namespace {

constexpr Symmetry leave{};
constexpr Symmetry end_for_end{.reverse = true};
constexpr Symmetry legs_swapped{.swap = true};
constexpr Symmetry turned_over{.reverse = true, .swap = true};

// reverse, swap, flip a, flip b.
constexpr std::array<Symmetry, 4> of_equal_angle{leave, turned_over, end_for_end, legs_swapped};
constexpr std::array<Symmetry, 2> of_unequal_angle{leave, end_for_end};
constexpr std::array<Symmetry, 4> of_channel{Symmetry{}, Symmetry{true, false, true, false},
                                             Symmetry{true, false, false, false},
                                             Symmetry{false, false, true, false}};
// A flat's holes go through: four turns reach every way its holes can read, so no hand is left.
constexpr std::array<Symmetry, 4> of_flat{Symmetry{}, Symmetry{true, false, true, false},
                                          Symmetry{true, false, false, true},
                                          Symmetry{false, false, true, true}};
constexpr std::array<Symmetry, 8> of_oblong_tube{Symmetry{},
                                                 Symmetry{true, false, true, false},
                                                 Symmetry{true, false, false, true},
                                                 Symmetry{false, false, true, true},
                                                 Symmetry{true, false, false, false},
                                                 Symmetry{false, false, true, false},
                                                 Symmetry{false, false, false, true},
                                                 Symmetry{true, false, true, true}};
constexpr std::array<Symmetry, 16> of_square_tube{Symmetry{},
                                                  Symmetry{true, false, true, false},
                                                  Symmetry{true, false, false, true},
                                                  Symmetry{false, false, true, true},
                                                  Symmetry{true, true, false, false},
                                                  Symmetry{true, true, true, true},
                                                  Symmetry{false, true, true, false},
                                                  Symmetry{false, true, false, true},
                                                  Symmetry{true, false, false, false},
                                                  Symmetry{false, false, true, false},
                                                  Symmetry{false, false, false, true},
                                                  Symmetry{true, false, true, true},
                                                  Symmetry{false, true, false, false},
                                                  Symmetry{false, true, true, true},
                                                  Symmetry{true, true, true, false},
                                                  Symmetry{true, true, false, true}};

// Whether gauges on the wall run along section axis a (walls facing along b) or b.
bool gauge_runs_along_a(SectionForm form, std::uint8_t wall) {
    switch (form) {
        case SectionForm::angle:
            return wall == 0;
        case SectionForm::flat:
            return true;
        case SectionForm::channel:
            return wall == 0;
        case SectionForm::tube:
            return wall % 2 == 0;
    }
    return true;
}

std::size_t other_across(const Piece& piece) {
    return 3 - index_of(piece.run) - index_of(piece.a_axis);
}

void flip(Point& datum, std::size_t axis, int& sense, Nm width) {
    datum[axis] += sense * width;
    sense = -sense;
}

}  // namespace

SymmetricShape symmetric_shape(const Catalogue& catalogue, const Piece& piece) {
    if (piece.kind == PieceKind::shim) {
        const std::size_t a = index_of(piece.a_axis);
        const std::size_t b = other_across(piece);
        return {SectionForm::flat, piece.extents.hi[a] - piece.extents.lo[a],
                piece.extents.hi[b] - piece.extents.lo[b], piece.length};
    }
    const Section& section = catalogue.sections[piece.section];
    const Nm b = section.form == SectionForm::flat ? section.thickness.nm() : section.b.nm();
    return {section.form, section.a.nm(), b, piece.length};
}

std::span<const Symmetry> symmetries(const SymmetricShape& shape) {
    switch (shape.form) {
        case SectionForm::angle:
            if (shape.a == shape.b) return of_equal_angle;
            return of_unequal_angle;
        case SectionForm::channel:
            return of_channel;
        case SectionForm::tube:
            if (shape.a == shape.b) return of_square_tube;
            return of_oblong_tube;
        case SectionForm::flat:
            break;
    }
    return of_flat;
}

std::uint8_t wall_after(const SymmetricShape& shape, const Symmetry& symmetry, std::uint8_t wall) {
    if (shape.form == SectionForm::channel && symmetry.flip_a && (wall == 1 || wall == 2)) {
        wall = wall == 1 ? 2 : 1;
    }
    if (shape.form == SectionForm::tube) {
        const bool opposite = wall % 2 == 0 ? symmetry.flip_b : symmetry.flip_a;
        if (opposite) wall = static_cast<std::uint8_t>((wall + 2) % 4);
    }
    if (symmetry.swap && wall < 4) wall = static_cast<std::uint8_t>(wall ^ 1U);
    return wall;
}

Hole hole_after(const SymmetricShape& shape, const Symmetry& symmetry, Hole hole) {
    const bool along_a = gauge_runs_along_a(shape.form, hole.wall);
    if (along_a && symmetry.flip_a) hole.gauge = shape.a - hole.gauge;
    if (!along_a && symmetry.flip_b) hole.gauge = shape.b - hole.gauge;
    if (symmetry.reverse) hole.from_datum = shape.run - hole.from_datum;
    hole.wall = wall_after(shape, symmetry, hole.wall);
    return hole;
}

void read_after(const SymmetricShape& shape, const Symmetry& symmetry, Piece& piece) {
    const std::size_t b_axis = other_across(piece);
    if (symmetry.flip_a) flip(piece.datum, index_of(piece.a_axis), piece.a_sense, shape.a);
    if (symmetry.flip_b) {
        flip(piece.datum, b_axis, piece.b_sense, shape.b);
        // The outer face of a flat is the one at its section's origin.
        if (shape.form == SectionForm::flat) {
            piece.plates[0].inward = static_cast<std::int8_t>(-piece.plates[0].inward);
        }
    }
    if (symmetry.swap) {
        piece.a_axis = static_cast<Axis>(b_axis);
        std::swap(piece.a_sense, piece.b_sense);
    }
    if (symmetry.reverse) {
        piece.datum[index_of(piece.run)] += piece.run_sense * piece.length;
        piece.run_sense = -piece.run_sense;
    }
    const auto before = piece.plates;
    for (std::size_t k = 0; k < piece.plate_count; ++k) {
        if (before[k].is_root_fillet) continue;
        const std::uint8_t wall = wall_after(shape, symmetry, before[k].wall);
        piece.plates[wall] = before[k];
        piece.plates[wall].wall = wall;
    }
}

}  // namespace model
