#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tests {
namespace {

// Depths less than this, in mm, are rounding of oblique corners.
constexpr double oblique_slack = 2e-6;

struct PlateRef {
    std::size_t piece = 0;
    const SkeletonPlate* plate = nullptr;
};

// Whether the corners of both lie apart along `axis`.
bool parted_by(const Direction& axis, const SkeletonPlate& a, const SkeletonPlate& b) {
    const double size = std::sqrt(dot(axis, axis));
    if (size < 1e-9) return false;
    const auto range = [&](const SkeletonPlate& plate) {
        double least = dot(axis, plate.corners[0]);
        double most = least;
        for (const auto& corner : plate.corners) {
            least = std::min(least, dot(axis, corner));
            most = std::max(most, dot(axis, corner));
        }
        return std::array{least / size, most / size};
    };
    const auto ra = range(a);
    const auto rb = range(b);
    return ra[1] <= rb[0] + oblique_slack || rb[1] <= ra[0] + oblique_slack;
}

std::vector<Direction> edge_directions(const SkeletonPlate& plate) {
    std::vector<Direction> edges{plate.n};
    const std::size_t count = plate.edges();
    for (std::size_t i = 0; i < count; ++i) {
        const auto& p = plate.corners[i];
        const auto& q = plate.corners[(i + 1) % count];
        edges.push_back({q[0] - p[0], q[1] - p[1], q[2] - p[2]});
    }
    return edges;
}

// Separating axes of two convex plates: their faces' normals and what is square to an edge of each.
bool enter_each_other_obliquely(const SkeletonPlate& a, const SkeletonPlate& b) {
    const auto edges_a = edge_directions(a);
    const auto edges_b = edge_directions(b);
    if (parted_by(a.n, a, b) || parted_by(b.n, a, b)) return false;
    for (const auto& e : edges_a) {
        if (parted_by(cross(e, a.n), a, b)) return false;
        for (const auto& f : edges_b) {
            if (parted_by(cross(e, f), a, b)) return false;
        }
    }
    return std::none_of(edges_b.begin(), edges_b.end(),
                        [&](const auto& f) { return parted_by(cross(f, b.n), a, b); });
}

bool enter_each_other(const SkeletonPlate& a, const SkeletonPlate& b) {
    if (a.box && b.box) return overlaps(*a.box, *b.box);
    return overlaps(a.bounds, b.bounds) && enter_each_other_obliquely(a, b);
}

// All pairs of plates of different pieces that share volume: a sweep along x.
std::vector<std::array<std::size_t, 2>> clashing_pieces(const Skeleton& skeleton) {
    std::vector<PlateRef> plates;
    for (std::size_t i = 0; i < skeleton.pieces.size(); ++i) {
        for (const auto& plate : skeleton.pieces[i].plates) plates.push_back({i, &plate});
    }
    std::sort(plates.begin(), plates.end(), [](const PlateRef& a, const PlateRef& b) {
        return a.plate->bounds.lo[0] < b.plate->bounds.lo[0];
    });
    std::vector<std::array<std::size_t, 2>> clashes;
    for (std::size_t i = 0; i < plates.size(); ++i) {
        const auto& a = plates[i];
        for (std::size_t j = i + 1; j < plates.size(); ++j) {
            const auto& b = plates[j];
            if (b.plate->bounds.lo[0] >= a.plate->bounds.hi[0]) break;
            if (a.piece == b.piece || !overlaps(a.plate->bounds, b.plate->bounds)) continue;
            if (!enter_each_other(*a.plate, *b.plate)) continue;
            clashes.push_back({std::min(a.piece, b.piece), std::max(a.piece, b.piece)});
        }
    }
    std::sort(clashes.begin(), clashes.end());
    clashes.erase(std::unique(clashes.begin(), clashes.end()), clashes.end());
    return clashes;
}

std::string name_of(const SkeletonPiece& piece) {
    return piece.id + " (" + piece.frame + ": " + piece.member + ")";
}

}  // namespace

bool is_found_clash(const Skeleton& skeleton, const SkeletonPiece& a, const SkeletonPiece& b) {
    const auto& table = skeleton.findings;
    return std::any_of(table.rows.begin(), table.rows.end(), [&](const auto& row) {
        return field(table, row, "code") == "interference" &&
               names_member(field(table, row, "where"), a.frame, stated_member(a)) &&
               names_member(field(table, row, "where"), b.frame, stated_member(b));
    });
}

Complaints interference_complaints(const Skeleton& skeleton) {
    Complaints complaints;
    for (const auto& [i, j] : clashing_pieces(skeleton)) {
        const auto& a = skeleton.pieces[i];
        const auto& b = skeleton.pieces[j];
        if (is_found_clash(skeleton, a, b)) continue;
        complaints.push_back("pieces " + name_of(a) + " and " + name_of(b) +
                             " enter each other and no finding says so");
    }
    return complaints;
}

}  // namespace tests
