#include "model/assembly/frame_parts.h"

#include "model/assembly/joint_pieces.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <string>
#include <tuple>
#include <utility>

namespace model {
namespace {

auto place_of(const Piece& piece) {
    return std::tuple(piece.extents.lo, piece.extents.hi, piece.kind, piece.plates[0].box.lo,
                      piece.plates[0].box.hi);
}

// What the user calls it in JointOverride::members; empty for a part that a recipe made.
std::string stated_name(const Frame& frame, const Piece& piece) {
    if (piece.member < frame.members.size()) return frame.members[piece.member].name;
    if (piece.kind == PieceKind::brace && piece.stated < frame.diagonals.size()) {
        return frame.diagonals[piece.stated].name;
    }
    if (piece.kind == PieceKind::leaning && piece.stated < frame.leaning.size()) {
        return frame.leaning[piece.stated].name;
    }
    return {};
}

std::array<std::string, 2> names_joined(const Frame& frame, const Piece& a, const Piece& b) {
    for (const auto* part : {&a, &b}) {
        if (part->serves[0] < frame.members.size() && part->serves[1] < frame.members.size()) {
            return {frame.members[part->serves[0]].name, frame.members[part->serves[1]].name};
        }
    }
    return {stated_name(frame, a), stated_name(frame, b)};
}

}  // namespace

FrameParts::FrameParts(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved,
                       Index frame)
    : project_{project}, catalogue_{catalogue}, resolved_{resolved}, frame_{frame} {
    const auto& placed = resolved.frames[frame];
    pieces_.resize(placed.piece_count);
    std::iota(pieces_.begin(), pieces_.end(), placed.first_piece);
    std::ranges::stable_sort(pieces_, [&](Index a, Index b) {
        return place_of(resolved.pieces[a]) < place_of(resolved.pieces[b]);
    });
    std::vector<Index> local(placed.piece_count);
    for (Index i = 0; i < pieces_.size(); ++i) local[pieces_[i] - placed.first_piece] = i;
    for (Index j = 0; j < resolved.joints.size(); ++j) {
        if (resolved.joints[j].frame == frame) joints_.push_back(joint_of(j, local));
    }
    std::ranges::stable_sort(joints_, [&](const JointOfFrame& a, const JointOfFrame& b) {
        const Joint& p = resolved.joints[a.joint];
        const Joint& q = resolved.joints[b.joint];
        return std::tie(p.lap.lo, p.lap.hi, p.normal_axis, a.together) <
               std::tie(q.lap.lo, q.lap.hi, q.normal_axis, b.together);
    });
    joints_of_.resize(pieces_.size());
    for (Index j = 0; j < joints_.size(); ++j) {
        for (const Index piece : joints_[j].together) joints_of_[piece].push_back(j);
    }
}

std::vector<Index> FrameParts::joints_touching(std::span<const Index> locals) const {
    std::vector<Index> touching;
    for (const Index i : locals) {
        touching.insert(touching.end(), joints_of_[i].begin(), joints_of_[i].end());
    }
    std::ranges::sort(touching);
    touching.erase(std::unique(touching.begin(), touching.end()), touching.end());
    return touching;
}

PieceSet FrameParts::all() const {
    PieceSet set(pieces_.size());
    for (Index i = 0; i < pieces_.size(); ++i) set.insert(i);
    return set;
}

std::vector<Index> FrameParts::fixing_holes() const {
    std::vector<Index> fixing;
    for (Index i = 0; i < size(); ++i) {
        const Index end = piece(i).first_hole + piece(i).hole_count;
        for (Index h = piece(i).first_hole; h < end; ++h) {
            if (resolved_.holes[h].mate == no_index) fixing.push_back(h);
        }
    }
    return fixing;
}

JointOfFrame FrameParts::joint_of(Index index, std::span<const Index> local) const {
    const Joint& joint = resolved_.joints[index];
    JointOfFrame made{.joint = index, .set = PieceSet(local.size())};
    for (const Index piece : pieces_together(resolved_, joint)) {
        made.together.push_back(local[piece - placed().first_piece]);
        made.set.insert(made.together.back());
    }
    std::ranges::sort(made.together);
    const auto fasteners = resolved_.fasteners_of(joint);
    made.is_fastened = !fasteners.empty();
    made.is_riveted = made.is_fastened && fasteners[0].spec.kind == FastenerSpec::Kind::blind_rivet;
    made.comes_apart = made.is_fastened && !made.is_riveted && comes_apart(joint);
    return made;
}

// A panel that is screwed on is meant to come off.
bool FrameParts::comes_apart(const Joint& joint) const {
    const Piece& a = resolved_.pieces[joint.pieces[0]];
    const Piece& b = resolved_.pieces[joint.pieces[1]];
    if (a.kind == PieceKind::panel || b.kind == PieceKind::panel) return true;
    const auto names = names_joined(stated(), a, b);
    return std::ranges::any_of(stated().joints, [&](const JointOverride& own) {
        const bool is_this =
            own.members == names || (own.members[0] == names[1] && own.members[1] == names[0]);
        return is_this && own.removable;
    });
}

}  // namespace model
