#include "model/resolve/symmetry.h"

#include "model/resolve/sheet_size.h"

#include <algorithm>
#include <array>
#include <cmath>
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

// A square part of sheet: the turns, then those that swap its faces for one another. What its two
// faces have in common needs only the turns.
constexpr std::array<Symmetry, 16> of_square_sheet{Symmetry{},
                                                   Symmetry{true, false, true, false},
                                                   Symmetry{true, false, false, true},
                                                   Symmetry{false, false, true, true},
                                                   Symmetry{false, false, false, true, true},
                                                   Symmetry{true, false, false, false, true},
                                                   Symmetry{false, false, true, false, true},
                                                   Symmetry{true, false, true, true, true},
                                                   Symmetry{true, false, false, false},
                                                   Symmetry{false, false, true, false},
                                                   Symmetry{false, false, false, true},
                                                   Symmetry{true, false, true, true},
                                                   Symmetry{false, false, false, false, true},
                                                   Symmetry{true, false, true, false, true},
                                                   Symmetry{true, false, false, true, true},
                                                   Symmetry{false, false, true, true, true}};

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

bool has_bevelled_end(const Piece& piece) {
    return piece.ends[0].slope[1] != 0.0 || piece.ends[1].slope[1] != 0.0;
}

using Vector = std::array<double, 3>;

double triple(const Vector& a, const Vector& b, const Vector& c) {
    return a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) +
           a[2] * (b[0] * c[1] - b[1] * c[0]);
}

void negate(Vector& direction) {
    for (auto& coordinate : direction) coordinate = -coordinate;
}

// A piece's axes, turned one by one without moving the piece.
class Axes {
public:
    Axes(Piece& piece, Lean* lean) : piece_{piece}, lean_{lean} {}

    void flip_a(Nm width) {
        step(index_of(piece_.a_axis), piece_.a_sense, lean_ == nullptr ? nullptr : &lean_->a,
             width);
    }

    void flip_b(Nm width) {
        step(other_across(piece_), piece_.b_sense, lean_ == nullptr ? nullptr : &lean_->b, width);
    }

    void reverse(Nm length) {
        step(index_of(piece_.run), piece_.run_sense, lean_ == nullptr ? nullptr : &lean_->run,
             length);
    }

    void swap() {
        piece_.a_axis = static_cast<Axis>(other_across(piece_));
        std::swap(piece_.a_sense, piece_.b_sense);
        if (lean_ != nullptr) std::swap(lean_->a, lean_->b);
    }

    void transpose() {
        std::swap(piece_.run, piece_.a_axis);
        std::swap(piece_.run_sense, piece_.a_sense);
        if (lean_ != nullptr) std::swap(lean_->run, lean_->a);
    }

private:
    // The datum to the other end of the axis, which then points back.
    void step(std::size_t axis, int& sense, Vector* direction, Nm width) {
        if (direction == nullptr) {
            piece_.datum[axis] += sense * width;
        } else {
            for (std::size_t i = 0; i < 3; ++i) {
                piece_.datum[i] +=
                    static_cast<Nm>(std::llround((*direction)[i] * static_cast<double>(width)));
            }
            negate(*direction);
        }
        sense = -sense;
    }

    Piece& piece_;
    Lean* lean_;
};

void renumber_walls(const SymmetricShape& shape, const Symmetry& symmetry, Piece& piece) {
    const auto before = piece.plates;
    for (std::size_t k = 0; k < piece.plate_count; ++k) {
        if (before[k].is_root_fillet) continue;
        const std::uint8_t wall = wall_after(shape, symmetry, before[k].wall);
        piece.plates[wall] = before[k];
        piece.plates[wall].wall = wall;
    }
}

std::span<const Symmetry> symmetries_of_flat(const SymmetricShape& shape) {
    if (shape.is_sheet && shape.a == shape.run) {
        const std::span<const Symmetry> all = of_square_sheet;
        return shape.is_bevelled ? all : all.first(all.size() / 2);
    }
    if (shape.is_bevelled) return of_oblong_tube;
    return of_flat;
}

PieceEnd end_after(const SymmetricShape& shape, const Symmetry& symmetry, const PieceEnd& end) {
    PieceEnd after{.slope = end.slope};
    if (symmetry.flip_a) after.slope[0] = -after.slope[0];
    if (symmetry.flip_b) after.slope[1] = -after.slope[1];
    if (symmetry.swap) std::swap(after.slope[0], after.slope[1]);
    for (std::uint8_t wall = 0; wall < end.wall_back.size(); ++wall) {
        if (end.wall_back[wall] == 0) continue;
        after.wall_back[wall_after(shape, symmetry, wall)] = end.wall_back[wall];
    }
    return after;
}

}  // namespace

SymmetricShape symmetric_shape(const Catalogue& catalogue,
                               const Resolved& resolved,
                               const Piece& piece) {
    const bool has_two_faces = piece.plates[0].outline_far != no_index;
    if (is_of_sheet(piece.kind)) {
        return {.form = SectionForm::flat,
                .a = sheet_width(resolved, piece),
                .b = sheet_thickness(piece),
                .run = piece.length,
                .is_sheet = true,
                .is_bevelled = has_two_faces};
    }
    const Section& section = catalogue.sections[piece.section];
    const bool is_flat = section.form == SectionForm::flat;
    return {.form = section.form,
            .a = section.a.nm(),
            .b = is_flat ? section.thickness.nm() : section.b.nm(),
            .run = piece.length,
            .is_bevelled = is_flat && (has_two_faces || has_bevelled_end(piece))};
}

void set_facing_along_b(Piece& piece, Lean* lean) {
    if (piece.plates[0].normal_axis == index_of(piece.a_axis)) Axes(piece, lean).swap();
}

int handedness(const Piece& piece, const Lean* lean) {
    const bool is_sheet = is_of_sheet(piece.kind);
    // Of a part of sheet, whether its inward way runs along its axis b or against it.
    const int inward = is_sheet ? piece.plates[0].inward * piece.b_sense : 1;
    if (lean != nullptr) return triple(lean->run, lean->a, lean->b) < 0.0 ? -inward : inward;
    const bool in_order = (index_of(piece.run) + 1) % 3 == index_of(piece.a_axis);
    return (in_order ? 1 : -1) * piece.run_sense * piece.a_sense * piece.b_sense * inward;
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
            return symmetries_of_flat(shape);
    }
    return {};
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
    if (symmetry.transpose) std::swap(hole.from_datum, hole.gauge);
    hole.wall = wall_after(shape, symmetry, hole.wall);
    return hole;
}

std::array<PieceEnd, 2> ends_after(const SymmetricShape& shape,
                                   const Symmetry& symmetry,
                                   const std::array<PieceEnd, 2>& ends) {
    std::array<PieceEnd, 2> after{end_after(shape, symmetry, ends[0]),
                                  end_after(shape, symmetry, ends[1])};
    if (symmetry.reverse) std::swap(after[0], after[1]);
    return after;
}

FaceOutlines outlines_after(const SymmetricShape& shape,
                            const Symmetry& symmetry,
                            std::uint8_t wall,
                            FaceOutlines outlines) {
    const bool along_a = gauge_runs_along_a(shape.form, wall);
    const bool is_flipped = along_a ? symmetry.flip_a : symmetry.flip_b;
    const bool turns_round = (static_cast<int>(symmetry.reverse) + static_cast<int>(is_flipped) +
                              static_cast<int>(symmetry.transpose)) %
                                 2 !=
                             0;
    const auto read = [&](Corners& corners) {
        for (auto& corner : corners) {
            if (symmetry.reverse) corner[0] = shape.run - corner[0];
            if (is_flipped) corner[1] = (along_a ? shape.a : shape.b) - corner[1];
            if (symmetry.transpose) std::swap(corner[0], corner[1]);
        }
        if (turns_round) std::reverse(corners.begin(), corners.end());
    };
    for (auto* outline : {&outlines.near, &outlines.far}) {
        read(outline->corners);
        for (auto& cut_out : outline->cut_outs) read(cut_out);
    }
    const bool is_turned_over = shape.form == SectionForm::flat && symmetry.flip_b;
    if (is_turned_over && !outlines.far.corners.empty()) std::swap(outlines.near, outlines.far);
    return outlines;
}

void read_after(const SymmetricShape& shape, const Symmetry& symmetry, Piece& piece, Lean* lean) {
    piece.ends = ends_after(shape, symmetry, piece.ends);
    Axes axes(piece, lean);
    if (symmetry.flip_a) axes.flip_a(shape.a);
    if (symmetry.flip_b) {
        axes.flip_b(shape.b);
        // The outer face of a flat is the one at its section's origin.
        if (shape.form == SectionForm::flat) {
            piece.plates[0].inward = static_cast<std::int8_t>(-piece.plates[0].inward);
        }
    }
    if (symmetry.swap) axes.swap();
    if (symmetry.reverse) axes.reverse(piece.length);
    if (symmetry.transpose) {
        axes.transpose();
        piece.length = shape.a;
    }
    renumber_walls(shape, symmetry, piece);
}

}  // namespace model
