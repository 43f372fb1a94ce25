#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace tests {
namespace {

// A plate's box or a hole's axis through its plate, in axes of the piece's own.
struct Item {
    std::array<Nm, 6> place{};
    Nm diameter = 0;        // 0: a plate
    std::string operation;  // and what is tapped

    auto key() const { return std::tie(place, diameter, operation); }
    bool operator<(const Item& other) const { return key() < other.key(); }
    bool operator==(const Item& other) const { return key() == other.key(); }
};

using Shape = std::vector<Item>;

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

std::array<Nm, 6> oriented(const Box& box, const Orientation& orientation) {
    std::array<Nm, 6> place{};
    for (std::size_t i = 0; i < 3; ++i) {
        const Nm lo = box.lo[orientation.from[i]];
        const Nm hi = box.hi[orientation.from[i]];
        const bool turned = orientation.sign[i] < 0;
        place[i] = turned ? -hi : lo;
        place[i + 3] = turned ? -lo : hi;
    }
    return place;
}

Box axis_of(const SkeletonHole& hole, const SkeletonPlate& plate) {
    Box box{hole.at, hole.at};
    const std::size_t axis = *world_axis(plate.n);
    (plate.n[axis] > 0 ? box.hi : box.lo)[axis] +=
        plate.n[axis] > 0 ? plate.thickness : -plate.thickness;
    return box;
}

Shape shape_in(const SkeletonPiece& piece, const Orientation& orientation) {
    Shape shape;
    Box whole;
    for (const auto& plate : piece.plates) {
        whole = shape.empty() ? plate.bounds : hull(whole, plate.bounds);
        shape.push_back({oriented(plate.bounds, orientation), 0, ""});
    }
    for (const auto& plate : piece.plates) {
        for (const auto& hole : plate.holes) {
            shape.push_back({oriented(axis_of(hole, plate), orientation), hole.diameter,
                             hole.operation + hole.tap});
        }
    }
    const auto corner = oriented(whole, orientation);
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
    const bool squared =
        run && std::all_of(piece.plates.begin(), piece.plates.end(),
                           [](const auto& plate) { return plate.box.has_value(); });
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

}  // namespace

Complaints mark_complaints(const Skeleton& skeleton) {
    Complaints complaints;
    std::map<std::string, std::vector<Marked>> marks;
    for (const auto& piece : skeleton.pieces) {
        auto turned = canonical_shape(piece, false);
        if (turned.empty()) continue;
        marks[piece.mark].push_back({&piece, std::move(turned), canonical_shape(piece, true)});
    }
    std::map<std::pair<std::string, Shape>, std::string> known;
    for (const auto& [name, pieces] : marks) {
        check_mark(pieces, complaints);
        const auto& pattern = pieces.front();
        const Shape& shape = std::min(pattern.turned, pattern.mirrored);
        const auto [found, is_new] = known.emplace(std::pair{pattern.piece->section, shape}, name);
        if (!is_new) {
            complaints.push_back("marks " + found->second + " and " + name +
                                 " are for the same piece");
        }
    }
    return complaints;
}

}  // namespace tests
