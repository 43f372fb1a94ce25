#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace tests {
namespace {

const SkeletonPlate* plate_named(const SkeletonPiece& piece, const std::string& leg) {
    const auto found = std::find_if(piece.plates.begin(), piece.plates.end(),
                                    [&](const auto& plate) { return plate.leg == leg; });
    return found == piece.plates.end() ? nullptr : &*found;
}

// Holes of what lies along no axis of the world are given to the nanometre along the piece and
// across it, and its corners are rounded as well.
constexpr Nm oblique_rounding = 4;

// Whether two points lie on one line along the axis; the first is of a piece that runs that way.
bool on_axis(const Point& p, const Point& q, const Direction& axis, const Direction& run) {
    const auto world = world_axis(axis);
    if (!world) return false;
    const Nm off = world_axis(run) ? 0 : oblique_rounding;
    for (std::size_t i = 0; i < 3; ++i) {
        if (i != *world && std::abs(p[i] - q[i]) > off) return false;
    }
    return true;
}

std::vector<const SkeletonHole*> holes_for(const SkeletonPlate& plate, const std::string& id) {
    std::vector<const SkeletonHole*> holes;
    for (const auto& hole : plate.holes) {
        if (hole.fastener == id) holes.push_back(&hole);
    }
    return holes;
}

// The depths along the fastener's axis at which a plate begins and ends.
std::array<Nm, 2> depths_of(const SkeletonPlate& plate, const SkeletonFastener& fastener) {
    const Nm face = along(plate.origin, fastener.at, fastener.axis);
    const Nm inner = dot(plate.n, fastener.axis) > 0 ? plate.thickness : -plate.thickness;
    return {std::min(face, face + inner), std::max(face, face + inner)};
}

// What is wrong with one plate of a stack; where it begins and ends goes to `depths`.
std::string fault_of_plate(const Skeleton& skeleton,
                           const SkeletonFastener& fastener,
                           const SkeletonStackPlate& entry,
                           std::array<Nm, 2>& depths) {
    const auto* piece = skeleton.piece(entry.piece);
    if (piece == nullptr) return "names the piece " + entry.piece + ", which is not there";
    const auto* plate = plate_named(*piece, entry.leg);
    if (plate == nullptr) return "names " + entry.piece + " " + entry.leg + ", which is not there";
    if (std::abs(std::abs(dot(plate->n, fastener.axis)) - 1.0) > 1e-9) {
        return "does not pass square through " + entry.piece + " " + entry.leg;
    }
    depths = depths_of(*plate, fastener);
    if (entry.thickness != plate->thickness) {
        return "has the wrong thickness for " + entry.piece + " " + entry.leg;
    }
    const auto holes = holes_for(*plate, fastener.id);
    if (holes.empty()) return "has no hole in " + entry.piece + " " + entry.leg;
    if (holes.size() > 1) return "has two holes in " + entry.piece + " " + entry.leg;
    if (!on_axis(holes[0]->at, fastener.at, fastener.axis, piece->run)) {
        return "misses its hole in " + entry.piece + " " + entry.leg;
    }
    return {};
}

// How a hole must be made for the screw that goes through it: wide enough for it under its head and
// in all plates but the last; there threaded, or as wide, or wide enough for a rivet nut. A hole
// that is drilled through its mate says so instead.
std::string fault_of_screw_hole(const SkeletonFastener& fastener,
                                const SkeletonHole& hole,
                                bool is_last) {
    const auto diameter = diameter_of_spec(fastener.spec);
    if (!diameter) return "is of no known size";
    const bool is_matched = hole.operation == "match-drill";
    if (is_last && fastener.hold == "tapped") {
        if (hole.tap.empty() || fastener.spec.rfind(hole.tap + " x ", 0) != 0) {
            return "is not tapped for it";
        }
        if (!is_matched && hole.operation != "tap drill") return "is no tap drill's hole";
        const bool leaves_thread = hole.diameter < *diameter && hole.diameter > *diameter * 7 / 10;
        return leaves_thread ? "" : "leaves no thread to cut";
    }
    if (!hole.tap.empty()) return "is tapped for nothing";
    const bool is_for_rivet_nut = is_last && fastener.hold == "rivet nut";
    if (is_for_rivet_nut && hole.diameter * 5 < *diameter * 6) return "has no room for a rivet nut";
    if (hole.diameter <= *diameter) return "does not let the screw through";
    if (is_matched) return "";
    return hole.operation == (is_for_rivet_nut ? "drill" : "clearance") ? "" : "is made wrongly";
}

void check_screw_holes(const Skeleton& skeleton,
                       const SkeletonFastener& fastener,
                       Complaints& complaints) {
    for (std::size_t i = 0; i < fastener.stack.size(); ++i) {
        const auto& entry = fastener.stack[i];
        const auto* piece = skeleton.piece(entry.piece);
        const auto* plate = piece == nullptr ? nullptr : plate_named(*piece, entry.leg);
        if (plate == nullptr) continue;
        for (const auto* hole : holes_for(*plate, fastener.id)) {
            const auto fault = fault_of_screw_hole(fastener, *hole, i + 1 == fastener.stack.size());
            if (!fault.empty()) {
                complaints.push_back("hole " + hole->id + " of screw " + fastener.id + " " + fault);
            }
        }
    }
}

void check_stack(const Skeleton& skeleton,
                 const SkeletonFastener& fastener,
                 Complaints& complaints) {
    const std::string name = "fastener " + fastener.id + " ";
    Nm depth = 0;
    for (const auto& entry : fastener.stack) {
        std::array<Nm, 2> depths{};
        const auto fault = fault_of_plate(skeleton, fastener, entry, depths);
        if (!fault.empty()) {
            complaints.push_back(name + fault);
            return;
        }
        if (depths[0] != depth) {
            complaints.push_back(name + "has a gap of " + std::to_string(depths[0] - depth) +
                                 " nm before " + entry.piece + " " + entry.leg);
        }
        depth = depths[1];
    }
    const bool is_screw = fastener.spec.rfind("machine screw", 0) == 0;
    if (is_screw) check_screw_holes(skeleton, fastener, complaints);
    if (is_screw == fastener.hold.empty()) {
        complaints.push_back(name + "does not say what holds it");
    }
    if (fastener.stack.size() < 2) complaints.push_back(name + "joins fewer than two plates");
    if (depth < fastener.grip_least || depth > fastener.grip_most) {
        complaints.push_back(name + "has a stack of " + std::to_string(depth) +
                             " nm outside its grip");
    }
}

bool is_room_for(const SkeletonPiece& piece,
                 const SkeletonHole& hole,
                 const SkeletonFastener& fastener) {
    return hole.operation == "clearance" && hole.joint == fastener.joint &&
           on_axis(hole.at, fastener.at, fastener.axis, piece.run);
}

// The hole by which a foot is fixed to the van; foot_complaints looks at it.
bool is_for_fixing(const SkeletonPiece& piece, const SkeletonHole& hole) {
    return is_foot(piece) && hole.fastener.empty() && hole.joint.empty();
}

}  // namespace

Complaints stack_complaints(const Skeleton& skeleton) {
    Complaints complaints;
    std::map<std::string, std::size_t> by_id;
    for (std::size_t i = 0; i < skeleton.fasteners.size(); ++i) {
        const auto& fastener = skeleton.fasteners[i];
        if (!by_id.emplace(fastener.id, i).second) {
            complaints.push_back("two fasteners have the id " + fastener.id);
        }
        check_stack(skeleton, fastener, complaints);
    }
    for (const auto& piece : skeleton.pieces) {
        for (const auto& plate : piece.plates) {
            for (const auto& hole : plate.holes) {
                const std::string name =
                    "hole " + hole.id + " in " + piece.id + " " + plate.leg + " ";
                if (is_for_fixing(piece, hole)) continue;
                const auto found = by_id.find(hole.fastener);
                if (found == by_id.end()) {
                    complaints.push_back(name + "is for no fastener");
                    continue;
                }
                const auto& fastener = skeleton.fasteners[found->second];
                const bool in_stack = std::any_of(
                    fastener.stack.begin(), fastener.stack.end(),
                    [&](const auto& e) { return e.piece == piece.id && e.leg == plate.leg; });
                // Room for the head or the tail of what does not go through this plate.
                if (!in_stack && is_room_for(piece, hole, fastener)) continue;
                if (!in_stack) complaints.push_back(name + "is not in its fastener's stack");
                if (hole.joint != fastener.joint) {
                    complaints.push_back(name + "names another joint than its fastener");
                }
            }
        }
    }
    return complaints;
}

}  // namespace tests
