#include "model/resolve/mark.h"

#include "model/resolve/hash.h"
#include "model/resolve/mark_names.h"
#include "model/resolve/piece_reading.h"
#include "model/resolve/stocks_alike.h"
#include "model/resolve/symmetry.h"

#include <algorithm>
#include <cstdlib>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <utility>
#include <vector>

namespace model {
namespace {

std::uint64_t hash_of(const Hole& hole) {
    std::uint64_t h = mixed(0x51ED270B, hole.wall);
    h = mixed(h, as_bits(hole.gauge));
    h = mixed(h, as_bits(hole.from_datum));
    h = mixed(h, as_bits(hole.diameter));
    h = mixed(h, hole.tap);
    return mixed(h, static_cast<std::uint64_t>(hole.operation));
}

auto reading_order(const Hole& hole) {
    return std::tuple(hole.wall, hole.gauge, hole.from_datum, hole.diameter, hole.operation,
                      hole.tap);
}

bool holes_read_alike(const Hole& a, const Hole& b) { return reading_order(a) == reading_order(b); }

bool are_alike(Nm a, Nm b, Nm rounding) { return std::abs(a - b) <= rounding; }

bool is_hole_near(const Hole& a, const Hole& b, Nm rounding) {
    return a.wall == b.wall && a.diameter == b.diameter && a.operation == b.operation &&
           a.tap == b.tap && are_alike(a.gauge, b.gauge, rounding) &&
           are_alike(a.from_datum, b.from_datum, rounding);
}

// Of a piece that leans, its datum, its length and the places of its holes are each rounded to a
// nanometre: two that are the same may differ by the sum, twice over.
Nm rounding_of(const Piece& piece) { return piece.lean == no_index ? 0 : 4; }

void sort_for_reading(std::span<Hole> holes) {
    std::sort(holes.begin(), holes.end(),
              [](const Hole& a, const Hole& b) { return reading_order(a) < reading_order(b); });
}

// The panels' materials by number: the same material, the same number.
std::vector<std::vector<Index>> material_numbers(const Project& project) {
    std::unordered_map<std::string_view, Index> number_of;
    std::vector<std::vector<Index>> numbers(project.frames.size());
    for (std::size_t f = 0; f < project.frames.size(); ++f) {
        for (const auto& panel : project.frames[f].panels) {
            const auto next = static_cast<Index>(number_of.size());
            numbers[f].push_back(number_of.try_emplace(panel.material, next).first->second);
        }
    }
    return numbers;
}

class Marker {
public:
    Marker(const Project& project, const Catalogue& catalogue, Resolved& resolved)
        : catalogue_{catalogue},
          out_{resolved},
          stocks_alike_{first_stocks_alike(project)},
          materials_{material_numbers(project)},
          names_{project, resolved, stocks_alike_} {}

    void mark_all() {
        read_as_.assign(out_.pieces.size(), Symmetry{});
        by_hash_.reserve(out_.pieces.size());
        std::vector<Index> parts;
        for (Index i = 0; i < out_.pieces.size(); ++i) {
            if (out_.pieces[i].kind == PieceKind::bar) {
                mark(i);
            } else {
                parts.push_back(i);
            }
        }
        std::stable_sort(parts.begin(), parts.end(), [&](Index a, Index b) {
            return out_.pieces[a].kind < out_.pieces[b].kind;
        });
        for (const Index i : parts) mark(i);
        for (auto& piece : out_.pieces) {
            if (out_.marks[piece.mark].opposite == 0) piece.hand = Hand::none;
        }
        rename_walls();
    }

private:
    std::span<Hole> holes_of(const Piece& piece) {
        return std::span(out_.holes).subspan(piece.first_hole, piece.hole_count);
    }

    Lean* lean_of(const Piece& piece) {
        return piece.lean == no_index ? nullptr : &out_.leans[piece.lean];
    }

    // What it is made of, as far as its kind leaves that open.
    Index stuff_of(const Piece& piece) const {
        if (piece.stock != no_index) return stocks_alike_[piece.stock];
        const bool is_stated = piece.kind == PieceKind::panel && piece.stated != no_index;
        return is_stated ? materials_[piece.frame][piece.stated] : no_index;
    }

    // A part of sheet is read along its longer side, across its faces.
    void lay_along_longer_side(Piece& piece) {
        set_facing_along_b(piece, lean_of(piece));
        const auto shape = symmetric_shape(catalogue_, out_, piece);
        if (shape.a <= piece.length) return;
        constexpr Symmetry across{.transpose = true};
        for (Hole& hole : holes_of(piece)) hole = hole_after(shape, across, hole);
        auto& plate = piece.plates[0];
        if (plate.outline != no_index) {
            auto read = outlines_after(shape, across, plate.wall, face_outlines(out_, plate));
            plate.outline = added(std::move(read.near));
            if (plate.outline_far != no_index) plate.outline_far = added(std::move(read.far));
        }
        read_after(shape, across, piece, own_lean(piece));
    }

    Index added(Outline outline) {
        out_.outlines.push_back(std::move(outline));
        return static_cast<Index>(out_.outlines.size() - 1);
    }

    // Pieces may share a lean, but each is read in its own way.
    Lean* own_lean(Piece& piece) {
        if (piece.lean == no_index) return nullptr;
        const Lean copy = out_.leans[piece.lean];
        piece.lean = static_cast<Index>(out_.leans.size());
        out_.leans.push_back(copy);
        return &out_.leans.back();
    }

    void mark(Index index) {
        Piece& piece = out_.pieces[index];
        if (is_of_sheet(piece.kind)) lay_along_longer_side(piece);
        const SymmetricShape shape = symmetric_shape(catalogue_, out_, piece);
        auto& alike = by_hash_[invariant_hash(piece, shape)];
        for (const Index mark : alike) {
            if (join(index, shape, mark)) return;
        }
        alike.push_back(static_cast<Index>(out_.marks.size()));
        piece.mark = static_cast<Index>(out_.marks.size());
        piece.hand = Hand::as_drawn;
        sort_for_reading(holes_of(piece));
        out_.marks.push_back({names_.next(index, stuff_of(piece)), index, 1, 0});
    }

    // The same for a piece and its mirror images, however they are read.
    std::uint64_t invariant_hash(const Piece& piece, const SymmetricShape& shape) {
        // Of what leans, lengths and places are rounded, so that they hash to nothing.
        if (piece.lean != no_index) return mixed(stuff_of(piece), piece.hole_count);
        std::uint64_t h = mixed(stuff_of(piece), as_bits(piece.length));
        h = mixed(mixed(h, as_bits(shape.a)), as_bits(shape.b));
        std::uint64_t sum = 0;
        const auto group = symmetries(shape);
        for (const Hole& hole : holes_of(piece)) {
            std::uint64_t orbit = 0;
            for (const auto& symmetry : group) {
                orbit += hash_of(hole_after(shape, symmetry, hole));
            }
            sum += mixed(orbit, 1);
        }
        if (!is_plain(piece)) {
            for (const auto& symmetry : group) {
                sum += hash_of(ends_after(shape, symmetry, piece.ends));
            }
            sum += model::invariant_hash(face_outlines(out_, piece.plates[0]));
        }
        return mixed(h, sum);
    }

    bool join(Index index, const SymmetricShape& shape, Index mark_index) {
        Mark& mark = out_.marks[mark_index];
        Piece& piece = out_.pieces[index];
        const Piece& pattern = out_.pieces[mark.pattern];
        const SymmetricShape other = symmetric_shape(catalogue_, out_, pattern);
        if (stuff_of(pattern) != stuff_of(piece) || pattern.kind != piece.kind ||
            !are_alike(piece.length, pattern.length, rounding_of(piece)) || other.a != shape.a ||
            other.b != shape.b || other.is_bevelled != shape.is_bevelled ||
            pattern.hole_count != piece.hole_count) {
            return false;
        }
        const bool axes_are_mirrored =
            handedness(piece, lean_of(piece)) != handedness(pattern, lean_of(pattern));
        for (const bool opposite : {false, true}) {
            for (const auto& symmetry : symmetries(shape)) {
                if (is_opposite(shape, symmetry, axes_are_mirrored) != opposite) continue;
                if (!reads_like(piece, shape, symmetry, pattern)) continue;
                read_as_pattern(index, shape, symmetry, pattern);
                piece.mark = mark_index;
                piece.hand = opposite ? Hand::opposite : Hand::as_drawn;
                ++(opposite ? mark.opposite : mark.as_drawn);
                return true;
            }
        }
        return false;
    }

    void read_as_pattern(Index index,
                         const SymmetricShape& shape,
                         const Symmetry& symmetry,
                         const Piece& pattern) {
        Piece& piece = out_.pieces[index];
        std::copy(turned_.begin(), turned_.end(), holes_of(piece).begin());
        read_after(shape, symmetry, piece, own_lean(piece));
        piece.length = pattern.length;
        piece.plates[0].outline = pattern.plates[0].outline;
        piece.plates[0].outline_far = pattern.plates[0].outline_far;
        read_as_[index] = symmetry;
    }

    // Whether a piece that reads like the pattern after the symmetry is its mirror image: the
    // symmetry may mirror, and so may the way in which the piece's own axes lie.
    static bool is_opposite(const SymmetricShape& shape,
                            const Symmetry& symmetry,
                            bool axes_are_mirrored) {
        // Turned over, it is the same.
        if (shape.form == SectionForm::flat && !shape.is_bevelled) return false;
        return is_mirror(symmetry) != axes_are_mirrored;
    }

    bool reads_like(const Piece& piece,
                    const SymmetricShape& shape,
                    const Symmetry& symmetry,
                    const Piece& pattern) {
        turned_.clear();
        for (const Hole& hole : holes_of(piece)) {
            turned_.push_back(hole_after(shape, symmetry, hole));
        }
        return holes_match(holes_of(pattern), rounding_of(piece)) &&
               (is_plain(piece) ? is_plain(pattern)
                                : is_shaped_like(piece, shape, symmetry, pattern));
    }

    // Whether the turned holes are those of the pattern, which are in order. Then they are put in
    // that order and have its distances and gauges.
    bool holes_match(std::span<const Hole> pattern, Nm rounding) {
        if (rounding == 0) {
            sort_for_reading(turned_);
            return std::ranges::equal(turned_, pattern, holes_read_alike);
        }
        for (std::size_t i = 0; i < pattern.size(); ++i) {
            const auto rest = turned_.begin() + static_cast<std::ptrdiff_t>(i);
            const auto found = std::find_if(rest, turned_.end(), [&](const Hole& hole) {
                return is_hole_near(hole, pattern[i], rounding);
            });
            if (found == turned_.end()) return false;
            std::iter_swap(rest, found);
            rest->from_datum = pattern[i].from_datum;
            rest->gauge = pattern[i].gauge;
        }
        return true;
    }

    // Whether ends and outlines are alike too.
    bool is_shaped_like(const Piece& piece,
                        const SymmetricShape& shape,
                        const Symmetry& symmetry,
                        const Piece& pattern) const {
        if (!read_alike(ends_after(shape, symmetry, piece.ends), pattern.ends)) return false;
        const Plate& plate = piece.plates[0];
        const Plate& drawn = pattern.plates[0];
        if ((plate.outline == no_index) != (drawn.outline == no_index)) return false;
        if (plate.outline == no_index) return true;
        const auto own = outlines_after(shape, symmetry, plate.wall, face_outlines(out_, plate));
        return read_alike(reading_of(own), reading_of(face_outlines(out_, drawn)),
                          rounding_of(piece));
    }

    // Joints and stacks name walls too.
    void rename_walls() {
        std::vector<SymmetricShape> shapes;
        shapes.reserve(out_.pieces.size());
        for (const auto& piece : out_.pieces) {
            shapes.push_back(symmetric_shape(catalogue_, out_, piece));
        }
        for (auto& joint : out_.joints) {
            for (std::size_t k = 0; k < 2; ++k) {
                const Index piece = joint.pieces[k];
                joint.walls[k] = wall_after(shapes[piece], read_as_[piece], joint.walls[k]);
            }
        }
        for (auto& fastener : out_.fasteners) {
            for (std::size_t k = 0; k < fastener.stack_count; ++k) {
                StackPlate& plate = fastener.stack[k];
                plate.wall = wall_after(shapes[plate.piece], read_as_[plate.piece], plate.wall);
            }
        }
    }

    const Catalogue& catalogue_;
    Resolved& out_;
    std::vector<Index> stocks_alike_;
    std::vector<std::vector<Index>> materials_;  // by frame, panel
    MarkNames names_;
    std::unordered_map<std::uint64_t, std::vector<Index>> by_hash_;
    std::vector<Symmetry> read_as_;
    std::vector<Hole> turned_;
};

}  // namespace

void mark_pieces(const Project& project, const Catalogue& catalogue, Resolved& resolved) {
    Marker(project, catalogue, resolved).mark_all();
}

}  // namespace model
