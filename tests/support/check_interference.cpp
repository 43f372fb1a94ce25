#include "tests/support/skeleton_bodies.h"
#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <numeric>

namespace tests {
namespace {

struct PlateRef {
    std::size_t piece = 0;
    const SkeletonPlate* plate = nullptr;
};

bool enter_each_other(const SkeletonPlate& a, const SkeletonPlate& b) {
    for (const auto& part : a.bodies) {
        for (const auto& other : b.bodies) {
            if (share_volume(part, other)) return true;
        }
    }
    return false;
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
        if (field(table, row, "code") != "interference") return false;
        const auto where = field(table, row, "where");
        const auto names_all = [&](const SkeletonPiece& piece) {
            const auto names = stated_members(piece);
            return std::all_of(names.begin(), names.end(), [&](const auto& name) {
                return names_member(where, piece.frame, name);
            });
        };
        return names_all(a) && names_all(b);
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
