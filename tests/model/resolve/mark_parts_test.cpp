#include "model/resolve/mark.h"
#include "model/resolve/piece_reading.h"
#include "model/resolve/piece_solid.h"
#include "model/resolve/symmetry.h"

#include "tests/model/resolve/resolve_support.h"
#include "tests/support/hand_made.h"

#include <cmath>
#include <utility>

using model::Axis;
using model::Hand;
using model::Index;
using model::Lean;
using model::Nm;
using model::Piece;
using model::PieceKind;
using model::Symmetry;

namespace {

constexpr Nm mm = 1'000'000;

const tests::HandMade& all_shapes() {
    static const auto made = tests::hand_made(tests::shipped_catalogue());
    return made;
}

// A turn or a mirroring of the frame: its axis k comes to lie along axis `to[k]` with `sign[k]`.
struct Motion {
    std::array<std::size_t, 3> to{0, 1, 2};
    std::array<int, 3> sign{1, 1, 1};

    bool mirrors() const {
        const bool in_order = (to[0] + 1) % 3 == to[1];
        return (in_order ? 1 : -1) * sign[0] * sign[1] * sign[2] < 0;
    }

    template <class T>
    std::array<T, 3> operator()(const std::array<T, 3>& from) const {
        std::array<T, 3> moved{};
        for (std::size_t k = 0; k < 3; ++k) moved[to[k]] = static_cast<T>(sign[k]) * from[k];
        return moved;
    }
};

std::vector<Motion> all_motions() {
    std::vector<Motion> all;
    for (const auto& to : {std::array<std::size_t, 3>{0, 1, 2},
                           {1, 2, 0},
                           {2, 0, 1},
                           {0, 2, 1},
                           {1, 0, 2},
                           {2, 1, 0}}) {
        for (int signs = 0; signs < 8; ++signs) {
            Motion motion{.to = to, .sign = {}};
            for (std::size_t k = 0; k < 3; ++k) motion.sign[k] = ((signs >> k) & 1) != 0 ? -1 : 1;
            all.push_back(motion);
        }
    }
    return all;
}

model::Box moved(const model::Box& box, const Motion& motion) {
    const auto one = motion(box.lo);
    const auto other = motion(box.hi);
    model::Box hull{one, one};
    for (std::size_t k = 0; k < 3; ++k) {
        hull.lo[k] = std::min(one[k], other[k]);
        hull.hi[k] = std::max(one[k], other[k]);
    }
    return hull;
}

Piece moved(Piece piece, const Motion& motion) {
    const auto run = model::index_of(piece.run);
    const auto a = model::index_of(piece.a_axis);
    piece.run = static_cast<Axis>(motion.to[run]);
    piece.a_axis = static_cast<Axis>(motion.to[a]);
    piece.run_sense *= motion.sign[run];
    piece.a_sense *= motion.sign[a];
    piece.b_sense *= motion.sign[3 - run - a];
    piece.datum = motion(piece.datum);
    for (auto& plate : piece.plates) {
        plate.box = moved(plate.box, motion);
        plate.inward = static_cast<std::int8_t>(plate.inward * motion.sign[plate.normal_axis]);
        plate.normal_axis = static_cast<std::uint8_t>(motion.to[plate.normal_axis]);
    }
    piece.extents = moved(piece.extents, motion);
    return piece;
}

// One of the hand-made pieces, and more like it put in by hand.
class Pieces {
public:
    explicit Pieces(const tests::HandMade& from)
        : catalogue_{from.catalogue}, project_{from.project} {
        all_ = from.resolved;
        all_.pieces.clear();
        from_ = &from.resolved;
    }

    // The piece with its holes and its lean, as it is after the motion.
    Piece& add(const Piece& piece, const Motion& motion = {}) {
        all_.pieces.push_back(moved(piece, motion));
        auto& copy = all_.pieces.back();
        if (copy.lean != model::no_index) {
            auto lean = from_->leans[copy.lean];
            lean = {motion(lean.run), motion(lean.a), motion(lean.b)};
            copy.lean = static_cast<Index>(all_.leans.size());
            all_.leans.push_back(lean);
        }
        copy.first_hole = static_cast<Index>(all_.holes.size());
        for (auto hole : from_->holes_of(piece)) {
            hole.piece = static_cast<Index>(all_.pieces.size() - 1);
            hole.mate = hole.piece;
            all_.holes.push_back(hole);
        }
        return copy;
    }

    // Reads the last piece from elsewhere.
    void read(const Symmetry& symmetry) {
        auto& piece = all_.pieces.back();
        const auto shape = model::symmetric_shape(catalogue_, all_, piece);
        auto* lean = piece.lean == model::no_index ? nullptr : &all_.leans[piece.lean];
        for (auto& hole : std::span(all_.holes).subspan(piece.first_hole, piece.hole_count)) {
            hole = model::hole_after(shape, symmetry, hole);
        }
        auto& plate = piece.plates[0];
        if (plate.outline != model::no_index) {
            const bool is_bevelled = plate.outline_far != model::no_index;
            const auto read = model::outlines_after(shape, symmetry, plate.wall,
                                                    model::face_outlines(all_, plate));
            plate.outline = outline(read.near);
            if (is_bevelled) plate.outline_far = outline(read.far);
        }
        model::read_after(shape, symmetry, piece, lean);
    }

    std::span<const Symmetry> symmetries() const {
        return model::symmetries(model::symmetric_shape(catalogue_, all_, all_.pieces.back()));
    }

    Index outline(model::Outline outline) {
        all_.outlines.push_back(std::move(outline));
        return static_cast<Index>(all_.outlines.size() - 1);
    }

    const model::Resolved& marked() {
        model::mark_pieces(project_, catalogue_, all_);
        return all_;
    }

    // Its corners in the room; of a hole's circle the middle and not where it begins.
    std::vector<engine::Vector> corners(Index piece) const {
        model::PieceSolid made;
        REQUIRE(model::PieceSolids(all_, catalogue_).make(made, piece));
        std::vector<engine::Vector> all;
        std::vector<bool> is_on_line(made.solid.corners.size());
        for (const auto& edge : made.solid.edges) {
            if (!edge.is_arc) is_on_line[edge.from] = is_on_line[edge.to] = true;
            if (edge.from == edge.to) all.push_back(engine::point_in(made.place, edge.centre));
        }
        for (std::size_t i = 0; i < is_on_line.size(); ++i) {
            if (is_on_line[i]) all.push_back(engine::point_in(made.place, made.solid.corners[i]));
        }
        return all;
    }

    model::Resolved& resolved() { return all_; }
    model::Project& project() { return project_; }

private:
    const model::Catalogue& catalogue_;
    model::Project project_;
    model::Resolved all_;
    const model::Resolved* from_ = nullptr;
};

// How far the corner that is worst off is from any of the others; a datum that leans is rounded to
// nanometres.
double worst_distance(const std::vector<engine::Vector>& a, const std::vector<engine::Vector>& b) {
    if (a.size() != b.size()) return 1.0e9;
    double worst = 0.0;
    for (const auto& corner : a) {
        double least = 1.0e9;
        for (const auto& other : b) {
            least = std::min(least, std::hypot(corner[0] - other[0], corner[1] - other[1],
                                               corner[2] - other[2]));
        }
        worst = std::max(worst, least);
    }
    return worst;
}

const Piece& piece_named(const std::string& name) {
    const auto& all = all_shapes();
    for (const auto& piece : all.resolved.pieces) {
        if (all.project.frames[0].members[piece.member].name == name) return piece;
    }
    FAIL("there is no " + name);
    return all.resolved.pieces[0];
}

const Piece& first_of_kind(PieceKind kind) {
    const auto& pieces = all_shapes().resolved.pieces;
    return *std::find_if(pieces.begin(), pieces.end(),
                         [&](const Piece& piece) { return piece.kind == kind; });
}

std::string mark_of(const model::Resolved& resolved, Index piece) {
    return resolved.marks[resolved.pieces[piece].mark].name;
}

// The number of marks of a piece and the same piece changed.
template <class Change>
std::size_t marks_with(const Piece& piece, Change change) {
    Pieces pieces(all_shapes());
    pieces.add(piece);
    pieces.add(piece);
    change(pieces, pieces.resolved().pieces.back());
    return pieces.marked().marks.size();
}

}  // namespace

TEST_CASE("reading a piece of any shape in any way leaves its metal where it is", "[model][mark]") {
    for (const auto& piece : all_shapes().resolved.pieces) {
        Pieces pieces(all_shapes());
        pieces.add(piece);
        for (const auto& symmetry : pieces.symmetries()) {
            pieces.add(piece);
            pieces.read(symmetry);
            const auto last = static_cast<Index>(pieces.resolved().pieces.size() - 1);
            CAPTURE(all_shapes().project.frames[0].members[piece.member].name, last);
            CHECK(worst_distance(pieces.corners(0), pieces.corners(last)) < 1e-5);
        }
    }
}

TEST_CASE("a piece turned, mirrored and read in any way keeps its mark", "[model][mark]") {
    const auto motions = all_motions();
    for (const auto& piece : all_shapes().resolved.pieces) {
        Pieces pieces(all_shapes());
        pieces.add(piece);
        const auto group = pieces.symmetries();
        for (std::size_t i = 0; i < motions.size(); ++i) {
            pieces.add(piece, motions[i]);
            pieces.read(group[i % group.size()]);
        }
        std::vector<std::vector<engine::Vector>> before;
        for (Index i = 0; i <= motions.size(); ++i) before.push_back(pieces.corners(i));

        const auto& marked = pieces.marked();

        CAPTURE(all_shapes().project.frames[0].members[piece.member].name);
        CHECK(marked.marks.size() == 1);
        const bool has_hands = marked.marks[0].opposite > 0;
        for (Index i = 0; i <= motions.size(); ++i) {
            const bool is_mirrored = i > 0 && motions[i - 1].mirrors();
            const Hand hand = !has_hands    ? Hand::none
                              : is_mirrored ? Hand::opposite
                                            : Hand::as_drawn;
            CHECK(marked.pieces[i].hand == hand);
            CHECK(worst_distance(before[i], pieces.corners(i)) < 1e-5);
        }
    }
}

TEST_CASE("pieces of one mark read alike in ends, outlines and holes", "[model][mark]") {
    const auto motions = all_motions();
    for (const auto& piece : all_shapes().resolved.pieces) {
        Pieces pieces(all_shapes());
        pieces.add(piece);
        const auto group = pieces.symmetries();
        for (std::size_t i = 0; i < motions.size(); ++i) {
            pieces.add(piece, motions[i]);
            pieces.read(group[(i * 5 + 1) % group.size()]);
        }
        const auto& marked = pieces.marked();
        const auto& pattern = marked.pieces[0];
        for (const auto& other : marked.pieces) {
            CHECK(other.ends == pattern.ends);
            CHECK(other.length == pattern.length);
            CHECK(other.plates[0].outline == pattern.plates[0].outline);
            CHECK(other.plates[0].outline_far == pattern.plates[0].outline_far);
            for (Index i = 0; i < pattern.hole_count; ++i) {
                CHECK(marked.holes_of(other)[i].wall == marked.holes_of(pattern)[i].wall);
                CHECK(marked.holes_of(other)[i].gauge == marked.holes_of(pattern)[i].gauge);
                CHECK(marked.holes_of(other)[i].from_datum ==
                      marked.holes_of(pattern)[i].from_datum);
            }
        }
    }
}

TEST_CASE("a bar mitred the other way round is the opposite hand", "[model][mark]") {
    Pieces pieces(all_shapes());
    const auto& mitred = piece_named("angle 1 x 1 x 1/8 9");
    pieces.add(mitred);
    pieces.add(mitred, {.sign = {1, -1, 1}});
    const auto& marked = pieces.marked();
    CHECK(marked.pieces[0].mark == marked.pieces[1].mark);
    CHECK(marked.pieces[0].hand == Hand::as_drawn);
    CHECK(marked.pieces[1].hand == Hand::opposite);
}

TEST_CASE("bars alike but for a slope or a notch are of two marks", "[model][mark]") {
    const auto& mitred = piece_named("angle 1 x 1 x 1/8 9");
    CHECK(marks_with(mitred, [](Pieces&, Piece&) {}) == 1);
    CHECK(marks_with(mitred, [](Pieces&, Piece& piece) { piece.ends[1].slope[0] = -1.0; }) == 2);
    CHECK(marks_with(mitred, [](Pieces&, Piece& piece) { piece.ends[1].wall_back[0] = mm; }) == 2);
    CHECK(marks_with(mitred, [](Pieces&, Piece& piece) { piece.ends = {}; }) == 2);
}

TEST_CASE("a gusset turned over is the same part, and with a bevel it is the opposite hand",
          "[model][mark]") {
    const auto& gusset = first_of_kind(PieceKind::gusset);
    const Motion turned_over{.sign = {1, -1, 1}};
    Pieces plain(all_shapes());
    plain.add(gusset);
    plain.add(gusset, turned_over);
    CHECK(plain.marked().marks.size() == 1);
    CHECK(plain.marked().pieces[1].hand == Hand::none);

    Pieces bevelled(all_shapes());
    for (const auto& motion : {Motion{}, turned_over}) {
        auto& piece = bevelled.add(gusset, motion);
        auto far = all_shapes().resolved.outlines[gusset.plates[0].outline];
        far.corners[1][0] -= mm;
        piece.plates[0].outline_far = bevelled.outline(far);
    }
    CHECK(bevelled.marked().marks.size() == 1);
    CHECK(bevelled.marked().pieces[1].hand == Hand::opposite);
}

TEST_CASE("a panel's outline may begin at any corner and list its openings in any order",
          "[model][mark]") {
    const auto& panel = first_of_kind(PieceKind::panel);
    CHECK(marks_with(panel, [](Pieces& pieces, Piece& piece) {
              auto outline = pieces.resolved().outlines[piece.plates[0].outline];
              std::rotate(outline.corners.begin(), outline.corners.begin() + 2,
                          outline.corners.end());
              std::swap(outline.cut_outs[0], outline.cut_outs[1]);
              piece.plates[0].outline = pieces.outline(outline);
          }) == 1);
    CHECK(marks_with(panel, [](Pieces& pieces, Piece& piece) {
              auto outline = pieces.resolved().outlines[piece.plates[0].outline];
              for (auto& corner : outline.cut_outs[0]) corner[0] += mm;
              piece.plates[0].outline = pieces.outline(outline);
          }) == 2);
}

TEST_CASE("panels of two materials are of two marks", "[model][mark]") {
    const auto& panel = first_of_kind(PieceKind::panel);
    const auto marks_of = [&](const char* material) {
        return marks_with(panel, [&](Pieces& pieces, Piece& piece) {
            pieces.project().frames[0].panels = {{.name = "back", .material = "plywood"},
                                                 {.name = "door", .material = material}};
            pieces.resolved().pieces[0].stated = 0;
            piece.stated = 1;
        });
    };
    CHECK(marks_of("plywood") == 1);
    CHECK(marks_of("5052 sheet") == 2);
}

TEST_CASE("a part of sheet is read along its longer side", "[model][mark]") {
    const auto& shim = first_of_kind(PieceKind::shim);
    Pieces pieces(all_shapes());
    pieces.add(shim);
    pieces.read({.transpose = true});
    REQUIRE(pieces.resolved().pieces[0].length == 25 * mm);
    pieces.add(shim);
    const auto& marked = pieces.marked();
    CHECK(marked.marks.size() == 1);
    CHECK(marked.pieces[0].length == 60 * mm);
}

TEST_CASE("parts are named by two letters for their kind and the number of their first piece",
          "[model][mark]") {
    Pieces pieces(all_shapes());
    const auto& bar = piece_named("angle 1 x 1 x 1/8 1");
    for (const auto kind : {PieceKind::cleat, PieceKind::strap, PieceKind::cleat, PieceKind::cleat,
                            PieceKind::backing, PieceKind::foot, PieceKind::brace}) {
        pieces.add(bar).kind = kind;
    }
    pieces.resolved().pieces[3].length += mm;
    pieces.add(first_of_kind(PieceKind::gusset));
    pieces.add(first_of_kind(PieceKind::panel));
    pieces.add(first_of_kind(PieceKind::shim));
    const auto& marked = pieces.marked();
    CHECK(mark_of(marked, 0) == "CL1");
    CHECK(mark_of(marked, 1) == "ST1");
    CHECK(mark_of(marked, 2) == "CL1");
    CHECK(mark_of(marked, 3) == "CL3");
    CHECK(mark_of(marked, 4) == "BK1");
    CHECK(mark_of(marked, 5) == "FT1");
    CHECK(mark_of(marked, 6) == "BR1");
    CHECK(mark_of(marked, 7) == "GU1");
    CHECK(mark_of(marked, 8) == "PN1");
    CHECK(mark_of(marked, 9) == "S1");
}
