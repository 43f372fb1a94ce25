#include "model/resolve/mark.h"

#include "model/resolve/stocks_alike.h"
#include "model/resolve/symmetry.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <unordered_set>

namespace model {
namespace {

// I and O read as digits and S is for shims: left out of drawings' letters, common practice.
constexpr std::string_view letters = "ABCDEFGHJKLMNPQRTUVWXYZ";

std::string letters_for(Index stock) {
    std::string text;
    for (Index n = stock + 1; n > 0; n = (n - 1) / static_cast<Index>(letters.size())) {
        text.insert(text.begin(), letters[(n - 1) % letters.size()]);
    }
    return text;
}

std::uint64_t mixed(std::uint64_t h, std::uint64_t value) {
    h = (h ^ value) * 0x9E3779B97F4A7C15ULL;
    return h ^ (h >> 29U);
}

std::uint64_t as_bits(Nm value) { return static_cast<std::uint64_t>(value); }

std::uint64_t hash_of(const Hole& hole) {
    std::uint64_t h = mixed(0x51ED270B, hole.wall);
    h = mixed(h, as_bits(hole.gauge));
    h = mixed(h, as_bits(hole.from_datum));
    h = mixed(h, as_bits(hole.diameter));
    return mixed(h, static_cast<std::uint64_t>(hole.operation));
}

auto reading_order(const Hole& hole) {
    return std::tuple(hole.wall, hole.gauge, hole.from_datum, hole.diameter, hole.operation);
}

bool read_alike(const Hole& a, const Hole& b) { return reading_order(a) == reading_order(b); }

void sort_for_reading(std::span<Hole> holes) {
    std::sort(holes.begin(), holes.end(),
              [](const Hole& a, const Hole& b) { return reading_order(a) < reading_order(b); });
}

// +1 when run, a and b of the section lie like the axes of the frame, -1 when like their mirror
// image.
int handedness(const Piece& piece) {
    const bool in_order = (index_of(piece.run) + 1) % 3 == index_of(piece.a_axis);
    return (in_order ? 1 : -1) * piece.run_sense * piece.a_sense * piece.b_sense;
}

// The number that each member has among the members of stock alike, over all frames, from 1.
std::vector<std::vector<Index>> member_numbers(const Project& project,
                                               const std::vector<Index>& stocks_alike) {
    std::unordered_map<std::string_view, Index> stock_of_name;
    for (Index i = 0; i < project.stock.size(); ++i) {
        stock_of_name.try_emplace(project.stock[i].name, stocks_alike[i]);
    }
    std::unordered_map<Index, Index> count;
    std::vector<std::vector<Index>> numbers(project.frames.size());
    for (std::size_t f = 0; f < project.frames.size(); ++f) {
        numbers[f].reserve(project.frames[f].members.size());
        for (const auto& member : project.frames[f].members) {
            const auto stock = stock_of_name.find(member.stock);
            const bool is_known = stock != stock_of_name.end();
            numbers[f].push_back(++count[is_known ? stock->second : no_index]);
        }
    }
    return numbers;
}

class Marker {
public:
    Marker(const Project& project, const Catalogue& catalogue, Resolved& out)
        : catalogue_{catalogue},
          out_{out},
          stocks_alike_{first_stocks_alike(project)},
          numbers_{member_numbers(project, stocks_alike_)} {}

    void mark_all() {
        read_as_.assign(out_.pieces.size(), Symmetry{});
        by_hash_.reserve(out_.pieces.size());
        for (const auto kind : {PieceKind::bar, PieceKind::shim}) {
            for (Index i = 0; i < out_.pieces.size(); ++i) {
                if (out_.pieces[i].kind == kind) mark(i);
            }
        }
        for (auto& piece : out_.pieces) {
            if (out_.marks[piece.mark].opposite == 0) piece.hand = Hand::none;
        }
        rename_walls();
    }

private:
    std::span<Hole> holes_of(const Piece& piece) {
        return std::span(out_.holes).subspan(piece.first_hole, piece.hole_count);
    }

    Index stock_of(const Piece& piece) const {
        return piece.stock == no_index ? no_index : stocks_alike_[piece.stock];
    }

    void mark(Index index) {
        Piece& piece = out_.pieces[index];
        const SymmetricShape shape = symmetric_shape(catalogue_, piece);
        auto& alike = by_hash_[invariant_hash(piece, shape)];
        for (const Index mark : alike) {
            if (join(index, shape, mark)) return;
        }
        alike.push_back(static_cast<Index>(out_.marks.size()));
        piece.mark = static_cast<Index>(out_.marks.size());
        piece.hand = Hand::as_drawn;
        sort_for_reading(holes_of(piece));
        out_.marks.push_back({name_for(piece), index, 1, 0});
    }

    // The same for a piece and its mirror images, however they are read.
    std::uint64_t invariant_hash(const Piece& piece, const SymmetricShape& shape) {
        std::uint64_t h = mixed(stock_of(piece), as_bits(piece.length));
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
        return mixed(h, sum);
    }

    bool join(Index index, const SymmetricShape& shape, Index mark_index) {
        Mark& mark = out_.marks[mark_index];
        Piece& piece = out_.pieces[index];
        const Piece& pattern = out_.pieces[mark.pattern];
        const SymmetricShape other = symmetric_shape(catalogue_, pattern);
        if (stock_of(pattern) != stock_of(piece) || pattern.kind != piece.kind ||
            pattern.length != piece.length || other.a != shape.a || other.b != shape.b ||
            pattern.hole_count != piece.hole_count) {
            return false;
        }
        const bool axes_are_mirrored = handedness(piece) != handedness(pattern);
        for (const bool opposite : {false, true}) {
            for (const auto& symmetry : symmetries(shape)) {
                if (is_opposite(shape, symmetry, axes_are_mirrored) != opposite) continue;
                if (!reads_like(piece, shape, symmetry, pattern)) continue;
                std::copy(turned_.begin(), turned_.end(), holes_of(piece).begin());
                read_after(shape, symmetry, piece);
                read_as_[index] = symmetry;
                piece.mark = mark_index;
                piece.hand = opposite ? Hand::opposite : Hand::as_drawn;
                ++(opposite ? mark.opposite : mark.as_drawn);
                return true;
            }
        }
        return false;
    }

    // Whether a piece that reads like the pattern after the symmetry is its mirror image: the
    // symmetry may mirror, and so may the way in which the piece's own axes lie.
    static bool is_opposite(const SymmetricShape& shape,
                            const Symmetry& symmetry,
                            bool axes_are_mirrored) {
        if (shape.form == SectionForm::flat) return false;  // turned over, it is the same
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
        sort_for_reading(turned_);
        return std::equal(turned_.begin(), turned_.end(), holes_of(pattern).begin(), read_alike);
    }

    std::string name_for(const Piece& piece) {
        if (piece.kind == PieceKind::shim) return "S" + std::to_string(++shim_marks_);
        std::string name =
            letters_for(stock_of(piece)) + std::to_string(numbers_[piece.frame][piece.member]);
        for (Index part = piece.part; part > 0; part /= 26) {
            name += static_cast<char>('a' + part % 26);
        }
        // Two members of one name cannot both be the first of their kind; their parts can.
        while (!names_.insert(name).second) name += '\'';
        return name;
    }

    // Joints and stacks name walls too.
    void rename_walls() {
        std::vector<SymmetricShape> shapes;
        shapes.reserve(out_.pieces.size());
        for (const auto& piece : out_.pieces) {
            shapes.push_back(symmetric_shape(catalogue_, piece));
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
    std::vector<std::vector<Index>> numbers_;
    std::unordered_map<std::uint64_t, std::vector<Index>> by_hash_;
    std::unordered_set<std::string> names_;
    std::vector<Symmetry> read_as_;
    std::vector<Hole> turned_;
    Index shim_marks_ = 0;
};

}  // namespace

void mark_pieces(const Project& project, const Catalogue& catalogue, Resolved& resolved) {
    Marker(project, catalogue, resolved).mark_all();
}

}  // namespace model
