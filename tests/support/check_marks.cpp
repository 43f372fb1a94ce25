#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <tuple>

namespace tests {
namespace {

// An edge of a plate or a hole's axis through its plate, in axes of the piece's own.
struct Item {
    std::array<Nm, 6> place{};
    Nm diameter = 0;        // 0: an edge
    std::string operation;  // and what is tapped

    auto key() const { return std::tie(place, diameter, operation); }
    bool operator<(const Item& other) const { return key() < other.key(); }
    bool operator==(const Item& other) const { return key() == other.key(); }
};

using Shape = std::vector<Item>;
using Line = std::array<Point, 2>;

// A turn or a mirroring that takes the world's axes onto a piece's own: own axis i is `sign[i]`
// times world axis `from[i]`.
struct Orientation {
    std::array<std::size_t, 3> from{};
    std::array<int, 3> sign{};
};

bool is_even(const std::array<std::size_t, 3>& order) { return (order[0] + 1) % 3 == order[1]; }

// The eight ways to lay the run along own axis 0 by turning, or the eight by mirroring.
std::vector<Orientation> orientations(std::size_t run, bool mirrored) {
    std::vector<Orientation> all;
    const std::size_t p = (run + 1) % 3;
    const std::size_t q = (run + 2) % 3;
    for (const auto& order : {std::array{run, p, q}, std::array{run, q, p}}) {
        for (int signs = 0; signs < 8; ++signs) {
            Orientation orientation{order, {}};
            int product = is_even(order) ? 1 : -1;
            for (std::size_t i = 0; i < 3; ++i) {
                orientation.sign[i] = (signs >> i) & 1 ? -1 : 1;
                product *= orientation.sign[i];
            }
            if ((product < 0) == mirrored) all.push_back(orientation);
        }
    }
    return all;
}

Point oriented(const Point& p, const Orientation& orientation) {
    Point place{};
    for (std::size_t i = 0; i < 3; ++i) place[i] = orientation.sign[i] * p[orientation.from[i]];
    return place;
}

// The same whichever of its ends comes first.
std::array<Nm, 6> oriented(const Line& line, const Orientation& orientation) {
    const auto [a, b] =
        std::minmax({oriented(line[0], orientation), oriented(line[1], orientation)});
    return {a[0], a[1], a[2], b[0], b[1], b[2]};
}

Point placed(const SkeletonPlate& plate, std::array<Nm, 2> at, Nm depth) {
    Point p = plate.origin;
    for (std::size_t i = 0; i < 3; ++i) {
        p[i] += static_cast<Nm>(plate.u[i]) * at[0] + static_cast<Nm>(plate.v[i]) * at[1] +
                static_cast<Nm>(plate.n[i]) * depth;
    }
    return p;
}

// All edges of its two faces.
std::vector<Line> lines_of(const SkeletonPlate& plate) {
    std::vector<Line> lines;
    const auto add = [&](const std::vector<std::array<Nm, 2>>& loop, Nm depth) {
        for (std::size_t k = 0; k < loop.size(); ++k) {
            lines.push_back(
                {placed(plate, loop[k], depth), placed(plate, loop[(k + 1) % loop.size()], depth)});
        }
    };
    add(plate.outline, 0);
    add(plate.outline_far.empty() ? plate.outline : plate.outline_far, plate.thickness);
    for (const auto& loop : plate.cut_outs) {
        add(loop, 0);
        add(loop, plate.thickness);
    }
    return lines;
}

Line axis_of(const SkeletonHole& hole, const SkeletonPlate& plate) {
    return {hole.at, placed(plate, hole.in_plate, plate.thickness)};
}

Shape shape_in(const SkeletonPiece& piece, const Orientation& orientation) {
    Shape shape;
    Point corner{};
    for (const auto& plate : piece.plates) {
        for (const auto& line : lines_of(plate)) {
            const auto place = oriented(line, orientation);
            for (std::size_t i = 0; i < 3; ++i) {
                corner[i] =
                    std::min({shape.empty() ? place[i] : corner[i], place[i], place[i + 3]});
            }
            shape.push_back({place, 0, ""});
        }
    }
    for (const auto& plate : piece.plates) {
        for (const auto& hole : plate.holes) {
            shape.push_back({oriented(axis_of(hole, plate), orientation), hole.diameter,
                             hole.operation + hole.tap});
        }
    }
    for (auto& item : shape) {
        for (std::size_t i = 0; i < 6; ++i) item.place[i] -= corner[i % 3];
    }
    std::sort(shape.begin(), shape.end());
    return shape;
}

// The same for all pieces that are turned copies of one another; none for a piece that does not lie
// along the world's axes.
Shape canonical_shape(const SkeletonPiece& piece, bool mirrored) {
    const auto run = world_axis(piece.run);
    const bool squared = run && std::all_of(piece.plates.begin(), piece.plates.end(),
                                            [](const auto& plate) { return is_squared(plate); });
    if (!squared) return {};
    Shape least;
    for (const auto& orientation : orientations(*run, mirrored)) {
        auto shape = shape_in(piece, orientation);
        if (least.empty() || shape < least) least = std::move(shape);
    }
    return least;
}

struct Marked {
    const SkeletonPiece* piece = nullptr;
    Shape turned;
    Shape mirrored;
};

bool is_opposite(const Marked& marked) { return marked.piece->hand == "opposite"; }

// The shape that the pattern of the mark must have, seen from this piece.
const Shape& pattern_shape(const Marked& marked) {
    return is_opposite(marked) ? marked.mirrored : marked.turned;
}

void check_mark(const std::vector<Marked>& pieces, Complaints& complaints) {
    const auto& pattern = pieces.front();
    for (const auto& marked : pieces) {
        const std::string name = marked.piece->id + " of mark " + marked.piece->mark;
        if (marked.piece->section != pattern.piece->section ||
            pattern_shape(marked) != pattern_shape(pattern)) {
            complaints.push_back(name + " is not congruent with " + pattern.piece->id);
        }
        if (is_opposite(marked) && marked.turned == marked.mirrored) {
            complaints.push_back(
                name + " is called the opposite hand and is the same as its mirror image");
        }
    }
}

// Parts of different kinds have different marks, even where one could lie in the other's place.
std::string kind_of(const SkeletonPiece& piece) {
    return piece.joins.empty() ? std::string() : piece.member.substr(0, piece.member.find(' '));
}

// Panels of one shape may be of different sheet; of bars the section says enough.
std::string sheet_of(const Skeleton& skeleton, const SkeletonPiece& piece) {
    if (piece.section.rfind("panel", 0) != 0) return {};
    const auto& table = skeleton.cut;
    for (const auto& row : table.rows) {
        if (field(table, row, "mark") == piece.mark) return std::string(field(table, row, "alloy"));
    }
    return {};
}

// ---- pieces that lie along no axis of the world ----------------------------------------------

// A place on the plate of a flat, or a hole in it.
struct FlatItem {
    std::array<Nm, 2> at{};
    Nm diameter = 0;  // 0: a corner
    std::string operation;
};

// Directions of such a piece are rounded, and so are its length and the places of its holes.
constexpr Nm oblique_rounding = 8;

bool is_oblique_flat(const SkeletonPiece& piece) {
    return piece.plates.size() == 1 && !is_squared(piece.plates[0]) &&
           piece.plates[0].outline_far.empty() && piece.plates[0].cut_outs.empty();
}

std::vector<FlatItem> flat_items(const SkeletonPlate& plate) {
    std::vector<FlatItem> items;
    for (const auto& corner : plate.outline) items.push_back({corner, 0, ""});
    for (const auto& hole : plate.holes) {
        items.push_back({hole.in_plate, hole.diameter, hole.operation + hole.tap});
    }
    return items;
}

// Turned end for end, or over, or both.
std::vector<FlatItem> laid(std::vector<FlatItem> items, bool end_for_end, bool over) {
    std::array<Nm, 2> size{};
    for (const auto& item : items) {
        for (std::size_t k = 0; k < 2; ++k) size[k] = std::max(size[k], item.at[k]);
    }
    for (auto& item : items) {
        if (end_for_end) item.at[0] = size[0] - item.at[0];
        if (over) item.at[1] = size[1] - item.at[1];
    }
    return items;
}

bool is_near(const FlatItem& a, const FlatItem& b) {
    return a.diameter == b.diameter && a.operation == b.operation &&
           std::abs(a.at[0] - b.at[0]) <= oblique_rounding &&
           std::abs(a.at[1] - b.at[1]) <= oblique_rounding;
}

// A flat turned over is its own mirror image, so that hands do not matter.
bool is_congruent(const SkeletonPiece& one, const SkeletonPiece& other) {
    if (one.plates[0].thickness != other.plates[0].thickness) return false;
    const auto items = flat_items(one.plates[0]);
    const auto its = flat_items(other.plates[0]);
    if (items.size() != its.size()) return false;
    for (const bool end_for_end : {false, true}) {
        for (const bool over : {false, true}) {
            const auto turned = laid(its, end_for_end, over);
            if (std::ranges::is_permutation(items, turned, is_near)) return true;
        }
    }
    return false;
}

// ---- angle that leans ---------------------------------------------------------------------------

bool is_oblique_angle(const SkeletonPiece& piece) {
    return piece.plates.size() == 2 && !world_axis(piece.run);
}

// A corner of either face of a leg, or a hole in it.
struct LegItem {
    std::size_t leg = 0;
    std::size_t face = 0;
    FlatItem item;
};

std::vector<LegItem> leg_items(const SkeletonPiece& piece, bool end_for_end, bool legs_swapped) {
    std::vector<LegItem> items;
    for (std::size_t k = 0; k < 2; ++k) {
        const auto& plate = piece.plates[k];
        const std::size_t leg = legs_swapped ? 1 - k : k;
        const auto add = [&](std::size_t face, FlatItem item) {
            if (end_for_end) item.at[0] = piece.length - item.at[0];
            items.push_back({leg, face, std::move(item)});
        };
        for (const auto& corner : plate.outline) add(0, {corner, 0, ""});
        const auto& far = plate.outline_far.empty() ? plate.outline : plate.outline_far;
        for (const auto& corner : far) add(1, {corner, 0, ""});
        for (const auto& hole : plate.holes) {
            add(0, {hole.in_plate, hole.diameter, hole.operation + hole.tap});
        }
    }
    return items;
}

// 1 where run, leg a and leg b lie as the thumb and the first two fingers of the right hand.
int hand_of(const SkeletonPiece& piece) {
    const double triple = dot(cross(piece.run, piece.plates[0].v), piece.plates[1].v);
    return triple > 0.0 ? 1 : -1;
}

// Whether one is the other turned, or its mirror image.
bool is_congruent_angle(const SkeletonPiece& one, const SkeletonPiece& other, bool mirrored) {
    const auto items = leg_items(one, false, false);
    for (const bool end_for_end : {false, true}) {
        for (const bool legs_swapped : {false, true}) {
            const int turns = end_for_end == legs_swapped ? 1 : -1;
            if ((hand_of(one) == turns * hand_of(other)) == mirrored) continue;
            const auto its = leg_items(other, end_for_end, legs_swapped);
            if (std::ranges::is_permutation(items, its, [](const LegItem& a, const LegItem& b) {
                    return a.leg == b.leg && a.face == b.face && is_near(a.item, b.item);
                })) {
                return true;
            }
        }
    }
    return false;
}

void check_oblique_angles(const Skeleton& skeleton, Complaints& complaints) {
    std::vector<const SkeletonPiece*> patterns;  // one of each mark
    for (const auto& piece : skeleton.pieces) {
        if (!is_oblique_angle(piece)) continue;
        bool is_known = false;
        for (const auto* pattern : patterns) {
            if (pattern->section != piece.section) continue;
            const bool is_same_mark = pattern->mark == piece.mark;
            is_known |= is_same_mark;
            const bool are_opposite = pattern->hand != piece.hand;
            if (is_same_mark && !is_congruent_angle(*pattern, piece, are_opposite)) {
                complaints.push_back(piece.id + " of mark " + piece.mark +
                                     " is not congruent with " + pattern->id);
            }
            if (!is_same_mark && (is_congruent_angle(*pattern, piece, false) ||
                                  is_congruent_angle(*pattern, piece, true))) {
                complaints.push_back("marks " + pattern->mark + " and " + piece.mark +
                                     " are for the same piece");
            }
        }
        if (!is_known) patterns.push_back(&piece);
    }
}

void check_oblique(const Skeleton& skeleton, Complaints& complaints) {
    std::vector<const SkeletonPiece*> patterns;  // one of each mark
    for (const auto& piece : skeleton.pieces) {
        if (!is_oblique_flat(piece)) continue;
        bool is_known = false;
        for (const auto* pattern : patterns) {
            const bool is_same_mark = pattern->mark == piece.mark;
            is_known |= is_same_mark;
            const bool are_alike = pattern->section == piece.section &&
                                   kind_of(*pattern) == kind_of(piece) &&
                                   is_congruent(*pattern, piece);
            if (is_same_mark && !are_alike) {
                complaints.push_back(piece.id + " of mark " + piece.mark +
                                     " is not congruent with " + pattern->id);
            }
            if (!is_same_mark && are_alike) {
                complaints.push_back("marks " + pattern->mark + " and " + piece.mark +
                                     " are for the same piece");
            }
        }
        if (!is_known) patterns.push_back(&piece);
    }
}

}  // namespace

Complaints mark_complaints(const Skeleton& skeleton) {
    Complaints complaints;
    std::map<std::string, std::vector<Marked>> marks;
    for (const auto& piece : skeleton.pieces) {
        auto turned = canonical_shape(piece, false);
        if (turned.empty()) continue;
        marks[piece.mark].push_back({&piece, std::move(turned), canonical_shape(piece, true)});
    }
    std::map<std::tuple<std::string, std::string, Shape>, std::string>
        known;  // by kind, section and sheet
    for (const auto& [name, pieces] : marks) {
        check_mark(pieces, complaints);
        const auto& pattern = pieces.front();
        const Shape& shape = std::min(pattern.turned, pattern.mirrored);
        const auto section = pattern.piece->section + ", " + sheet_of(skeleton, *pattern.piece);
        const auto [found, is_new] =
            known.emplace(std::tuple{kind_of(*pattern.piece), section, shape}, name);
        if (!is_new) {
            complaints.push_back("marks " + found->second + " and " + name +
                                 " are for the same piece");
        }
    }
    check_oblique(skeleton, complaints);
    check_oblique_angles(skeleton, complaints);
    return complaints;
}

}  // namespace tests
