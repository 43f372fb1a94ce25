#include "tests/support/skeleton_checks.h"

#include <algorithm>

namespace tests {
namespace {

constexpr Nm driver_length = 6 * 25'400'000;

struct Fixing {
    const SkeletonPlate* plate = nullptr;
    const SkeletonHole* hole = nullptr;
};

std::vector<Fixing> fixings_of(const SkeletonPiece& foot) {
    std::vector<Fixing> found;
    for (const auto& plate : foot.plates) {
        for (const auto& hole : plate.holes) {
            if (hole.fastener.empty()) found.push_back({&plate, &hole});
        }
    }
    return found;
}

// Whether the plate's outer face lies in the plane in which that piece begins or ends, and looks
// out of it.
bool lies_at_an_end(const SkeletonPlate& plate, const SkeletonPiece& member) {
    const double turned = dot(plate.n, member.run);
    const Nm at = along(plate.origin, member.datum, member.run);
    return (at == 0 && turned > 0.999) || (at == member.length && turned < -0.999);
}

// Above the hole, on the plate's inner side: as wide as the hole.
Box driver_box(const Fixing& fixing) {
    const std::size_t axis = *world_axis(fixing.plate->n);
    const Nm half = fixing.hole->diameter / 2;
    Box box{fixing.hole->at, fixing.hole->at};
    for (std::size_t i = 0; i < 3; ++i) {
        if (i == axis) {
            const bool up = fixing.plate->n[axis] > 0;
            const Nm least = fixing.plate->thickness;
            const Nm most = least + driver_length;
            box.lo[i] += up ? least : -most;
            box.hi[i] += up ? most : -least;
        } else {
            box.lo[i] -= half;
            box.hi[i] += half;
        }
    }
    return box;
}

bool has_metal_above(const Skeleton& skeleton, const Fixing& fixing) {
    const Box driver = driver_box(fixing);
    return std::any_of(skeleton.pieces.begin(), skeleton.pieces.end(), [&](const auto& piece) {
        return std::any_of(piece.plates.begin(), piece.plates.end(), [&](const auto& plate) {
            return std::any_of(plate.bodies.begin(), plate.bodies.end(), [&](const auto& body) {
                return body.box && overlaps(*body.box, driver);
            });
        });
    });
}

bool has_fastener_above(const Skeleton& skeleton, const Fixing& fixing) {
    const Box driver = driver_box(fixing);
    return std::any_of(
        skeleton.fasteners.begin(), skeleton.fasteners.end(), [&](const auto& fastener) {
            const auto axis = world_axis(fastener.axis);
            const auto diameter = diameter_of_spec(fastener.spec);
            if (!axis || !diameter) return false;
            Nm stack = 0;
            for (const auto& plate : fastener.stack) stack += plate.thickness;
            Box body{fastener.at, fastener.at};
            for (std::size_t i = 0; i < 3; ++i) {
                const bool forward = fastener.axis[*axis] > 0;
                body.lo[i] -=
                    i == *axis ? (forward ? *diameter / 4 : stack + *diameter) : *diameter / 2;
                body.hi[i] +=
                    i == *axis ? (forward ? stack + *diameter : *diameter / 4) : *diameter / 2;
            }
            return overlaps(body, driver);
        });
}

void check_foot(const Skeleton& skeleton, const SkeletonPiece& foot, Complaints& complaints) {
    const std::string name = foot.id + " (" + foot.frame + ": " + foot.member + ") ";
    const auto fixings = fixings_of(foot);
    if (fixings.size() != 1) {
        complaints.push_back(name + "has " + std::to_string(fixings.size()) +
                             " holes for fixing it");
        return;
    }
    const auto& fixing = fixings.front();
    if (fixing.hole->operation != "clearance" || !fixing.hole->tap.empty()) {
        complaints.push_back(name + "does not let its screw through");
    }
    const bool is_at_end =
        std::any_of(skeleton.pieces.begin(), skeleton.pieces.end(), [&](const auto& piece) {
            return piece.frame == foot.frame && piece.joins.empty() &&
                   stated_members(piece) == std::vector{foot.joins.front()} &&
                   lies_at_an_end(*fixing.plate, piece);
        });
    if (!is_at_end) complaints.push_back(name + "does not lie in the plane of its member's end");
    if (has_metal_above(skeleton, fixing)) complaints.push_back(name + "has metal above its hole");
    if (has_fastener_above(skeleton, fixing)) {
        complaints.push_back(name + "has a fastener above its hole");
    }
}

}  // namespace

Complaints foot_complaints(const Skeleton& skeleton) {
    Complaints complaints;
    for (const auto& piece : skeleton.pieces) {
        if (is_foot(piece)) check_foot(skeleton, piece, complaints);
    }
    return complaints;
}

}  // namespace tests
