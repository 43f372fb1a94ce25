#include "model/resolve/piece_subject.h"

#include <string>

namespace model {
namespace {

bool joins_members(const Piece& piece) { return piece.serves[0] != no_index; }

Subject joint_of_members(const Frame& frame, const std::array<Index, 2>& members) {
    const auto& first = frame.members[members[0]].name;
    const auto& second = frame.members[members[1]].name;
    if (members[0] == members[1]) return {SubjectKind::member, frame.name, first};
    return {SubjectKind::joint, frame.name, first + " + " + second};
}

}  // namespace

std::array<Index, 2> members_joined(const Piece& upper, const Piece& lower) {
    if (joins_members(upper)) return upper.serves;
    if (joins_members(lower)) return lower.serves;
    return {upper.member, lower.member};
}

Subject piece_subject(const Frame& frame, const Piece& piece) {
    if (piece.member != no_index) {
        return {SubjectKind::member, frame.name, frame.members[piece.member].name};
    }
    if (joins_members(piece)) return joint_of_members(frame, piece.serves);
    if (piece.kind == PieceKind::brace && piece.stated < frame.diagonals.size()) {
        return {SubjectKind::diagonal, frame.name, frame.diagonals[piece.stated].name};
    }
    if (piece.kind == PieceKind::leaning && piece.stated < frame.leaning.size()) {
        return {SubjectKind::leaning, frame.name, frame.leaning[piece.stated].name};
    }
    if (piece.kind == PieceKind::panel && piece.stated < frame.panels.size()) {
        return {SubjectKind::panel, frame.name, frame.panels[piece.stated].name};
    }
    return {SubjectKind::frame, {}, frame.name};
}

Subject joint_subject(const Frame& frame, const Piece& upper, const Piece& lower) {
    const auto members = members_joined(upper, lower);
    if (members[0] != no_index && members[1] != no_index) return joint_of_members(frame, members);
    // A brace or a panel on a member: called by itself.
    return piece_subject(frame, upper.member == no_index ? upper : lower);
}

std::vector<Subject> joint_subjects(const Frame& frame, const Resolved& resolved, Index index) {
    const Joint& joint = resolved.joints[index];
    const Piece& upper = resolved.pieces[joint.pieces[0]];
    const Piece& lower = resolved.pieces[joint.pieces[1]];
    std::vector<Subject> subjects{joint_subject(frame, upper, lower)};
    if (joint.brace != no_index) {
        subjects.push_back(piece_subject(frame, resolved.pieces[joint.brace]));
    }
    if (is_between_nodes(upper.kind)) subjects.push_back(piece_subject(frame, lower));
    if (is_between_nodes(lower.kind)) subjects.push_back(piece_subject(frame, upper));
    return subjects;
}

}  // namespace model
