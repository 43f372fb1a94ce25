#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace tests {
namespace {

using Place2 = std::array<Nm, 2>;
using Loop = std::vector<Place2>;

bool is_panel(const SkeletonPiece& piece) { return piece.section.rfind("panel", 0) == 0; }

// What a finding may be called that says why a fixed panel is held less than it was asked for.
constexpr std::array<std::string_view, 5> held_less{"panel_unfastened", "panel_no_fasteners",
                                                    "panel_stands_off", "no_grip", "no_drill"};

template <class Codes>
bool is_told(const Skeleton& skeleton, const SkeletonPiece& panel, const Codes& codes) {
    return std::any_of(codes.begin(), codes.end(), [&](std::string_view code) {
        return findings_naming(skeleton, code, panel.frame, {panel.member}) > 0;
    });
}

const engine::CsvRow* sheet_row(const Skeleton& skeleton, const SkeletonPiece& panel) {
    const auto& table = skeleton.sheets;
    const auto row = std::find_if(table.rows.begin(), table.rows.end(), [&](const auto& it) {
        return field(table, it, "mark") == panel.mark && field(table, it, "hand") == panel.hand;
    });
    return row == table.rows.end() ? nullptr : &*row;
}

Place2 extent_of(const Loop& loop) {
    Place2 lo = loop.front();
    Place2 hi = loop.front();
    for (const auto& corner : loop) {
        for (std::size_t k = 0; k < 2; ++k) {
            lo[k] = std::min(lo[k], corner[k]);
            hi[k] = std::max(hi[k], corner[k]);
        }
    }
    return {hi[0] - lo[0], hi[1] - lo[1]};
}

// Crossings of the loop by a line from the place along the first axis; edges lie along the axes.
bool is_inside(const Place2& place, const Loop& loop) {
    bool inside = false;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& a = loop[i];
        const auto& b = loop[(i + 1) % loop.size()];
        if (a[0] != b[0] || a[0] < place[0]) continue;
        if ((a[1] > place[1]) != (b[1] > place[1])) inside = !inside;
    }
    return inside;
}

void check_sheet_row(const Skeleton& skeleton, const SkeletonPiece& panel, Complaints& complaints) {
    const auto* row = sheet_row(skeleton, panel);
    if (row == nullptr) {
        complaints.push_back("sheet.csv does not list panel " + panel.id);
        return;
    }
    const auto& table = skeleton.sheets;
    const auto& plate = panel.plates.front();
    const auto extent = extent_of(plate.outline);
    if (nm_of_mm_text(field(table, *row, "length_mm")) != extent[0] ||
        nm_of_mm_text(field(table, *row, "width_mm")) != extent[1]) {
        complaints.push_back("sheet.csv has another size for panel " + panel.id);
    }
    if (field(table, *row, "cut_outs") != std::to_string(plate.cut_outs.size())) {
        complaints.push_back("sheet.csv counts the cut-outs of panel " + panel.id + " wrongly");
    }
}

bool is_hung(const Skeleton& skeleton, const SkeletonPiece& panel) {
    const auto* row = sheet_row(skeleton, panel);
    return row != nullptr && !field(skeleton.sheets, *row, "opening_1").empty();
}

void check_holes(const SkeletonPiece& panel, Complaints& complaints) {
    const auto& plate = panel.plates.front();
    for (const auto& hole : plate.holes) {
        const bool in_cut_out =
            std::any_of(plate.cut_outs.begin(), plate.cut_outs.end(),
                        [&](const Loop& loop) { return is_inside(hole.in_plate, loop); });
        if (in_cut_out || !is_inside(hole.in_plate, plate.outline)) {
            complaints.push_back("hole " + hole.id + " lies where panel " + panel.id +
                                 " has no sheet");
        }
    }
}

bool is_joined(const Skeleton& skeleton, const SkeletonPiece& panel) {
    return std::any_of(skeleton.joints.begin(), skeleton.joints.end(), [&](const auto& joint) {
        return !joint.fasteners.empty() &&
               std::find(joint.pieces.begin(), joint.pieces.end(), panel.id) != joint.pieces.end();
    });
}

void check_held(const Skeleton& skeleton, const SkeletonPiece& panel, Complaints& complaints) {
    const bool has_fasteners = is_joined(skeleton, panel);
    if (is_hung(skeleton, panel)) {
        if (has_fasteners) complaints.push_back("panel " + panel.id + " is hung, and riveted shut");
        return;
    }
    if (has_fasteners || is_told(skeleton, panel, held_less)) return;
    complaints.push_back("nothing holds panel " + panel.id + " (" + panel.frame + ": " +
                         panel.member + ") and no finding says so");
}

// From where to where the sheet and the wall lie on each other along the member, as far as the
// least rectangle of the sheet says.
std::array<Nm, 2> contact_along(const SkeletonPiece& panel,
                                const SkeletonPiece& member,
                                std::string_view leg) {
    const auto axis = world_axis(member.run);
    if (!axis) return {};
    Box shared = panel.plates.front().bounds;
    for (const auto& plate : member.plates) {
        if (plate.leg != leg) continue;
        shared.lo[*axis] = std::max(shared.lo[*axis], plate.bounds.lo[*axis]);
        shared.hi[*axis] = std::min(shared.hi[*axis], plate.bounds.hi[*axis]);
    }
    const Nm one = along(shared.lo, member.datum, member.run);
    const Nm two = along(shared.hi, member.datum, member.run);
    return {std::min(one, two), std::max(one, two)};
}

// Fasteners of one joint stand along the member: no two neighbours further apart than the pitch,
// and none of the ends further from the nearest.
void check_pitch(const Skeleton& skeleton,
                 const SkeletonJoint& joint,
                 const SkeletonPiece& panel,
                 Nm pitch,
                 Complaints& complaints) {
    if (joint.fasteners.empty()) return;
    const auto& stack = skeleton.fasteners[joint.fasteners.front()].stack;
    const auto entry = std::find_if(stack.begin(), stack.end(),
                                    [&](const auto& it) { return it.piece != panel.id; });
    const auto* member = entry == stack.end() ? nullptr : skeleton.piece(entry->piece);
    if (member == nullptr) return;
    const auto ends = contact_along(panel, *member, entry->leg);
    std::vector<Nm> places{ends[0], ends[1]};
    for (const auto fastener : joint.fasteners) {
        places.push_back(along(skeleton.fasteners[fastener].at, member->datum, member->run));
    }
    std::sort(places.begin(), places.end());
    for (std::size_t i = 1; i < places.size(); ++i) {
        if (places[i] - places[i - 1] <= pitch) continue;
        if (findings_naming(skeleton, "panel_pitch", panel.frame, {panel.member}) > 0) return;
        complaints.push_back("fasteners of joint " + joint.id + " of panel " + panel.id +
                             " are further apart than the pitch, or from an end, and no finding "
                             "says so");
        return;
    }
}

// Not one of two others whose fasteners go through a brace as well.
bool is_joint_of_brace(const Skeleton& skeleton, const SkeletonJoint& joint) {
    std::size_t bars = 0;
    bool has_brace = false;
    for (const auto& id : joint.pieces) {
        const auto* piece = skeleton.piece(id);
        if (piece == nullptr || piece->section.starts_with("shim")) continue;
        ++bars;
        has_brace |= piece->member.starts_with("brace ");
    }
    return has_brace && bars == 2;
}

void check_joints(const Skeleton& skeleton, const LayoutRules& rules, Complaints& complaints) {
    for (const auto& joint : skeleton.joints) {
        const SkeletonPiece* panel = nullptr;
        for (const auto& id : joint.pieces) {
            const auto* piece = skeleton.piece(id);
            if (piece != nullptr && is_panel(*piece)) panel = piece;
        }
        if ((panel != nullptr) != (joint.recipe == "panel")) {
            complaints.push_back(
                "joint " + joint.id + " is called \"" + joint.recipe +
                (panel != nullptr ? "\" and is one of a panel" : "\" and is none of a panel"));
        }
        const bool is_of_brace = is_joint_of_brace(skeleton, joint);
        if (is_of_brace != (joint.recipe == "brace")) {
            complaints.push_back(
                "joint " + joint.id + " is called \"" + joint.recipe +
                (is_of_brace ? "\" and is one of a brace" : "\" and is none of a brace"));
        }
        if (panel == nullptr || rules.panel_pitch <= 0) continue;
        check_pitch(skeleton, joint, *panel, rules.panel_pitch, complaints);
    }
}

}  // namespace

Complaints panel_complaints(const Skeleton& skeleton, const LayoutRules& rules) {
    Complaints complaints;
    for (const auto& piece : skeleton.pieces) {
        if (!is_panel(piece)) continue;
        check_sheet_row(skeleton, piece, complaints);
        check_holes(piece, complaints);
        check_held(skeleton, piece, complaints);
    }
    check_joints(skeleton, rules, complaints);
    return complaints;
}

}  // namespace tests
