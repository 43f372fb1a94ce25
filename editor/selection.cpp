#include "editor/selection.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

using model::Index;

const model::Frame* frame_of(const model::Project& project, Index frame) {
    return frame < project.frames.size() ? &project.frames[frame] : nullptr;
}

std::string member_name(const model::Frame& frame, Index member) {
    return member < frame.members.size() ? frame.members[member].name : std::string();
}

// How many shims of the frame come before this one.
Index shim_number(const model::Resolved& resolved, Index piece) {
    Index number = 0;
    for (Index i = 0; i < piece; ++i) {
        const auto& other = resolved.pieces[i];
        if (other.frame == resolved.pieces[piece].frame && other.member == model::no_index) {
            ++number;
        }
    }
    return number;
}

// A joint is named by its two members: "post left + rail top".
bool is_named_in(const model::Subject& subject, std::string_view member) {
    if (subject.kind == model::SubjectKind::member) return subject.name == member;
    if (subject.kind != model::SubjectKind::joint) return false;
    const auto plus = subject.name.find(" + ");
    if (plus == std::string::npos) return false;
    const std::string_view both = subject.name;
    return both.substr(0, plus) == member || both.substr(plus + 3) == member;
}

bool concerns_member(const std::vector<model::Subject>& concerns,
                     std::string_view frame,
                     std::string_view member) {
    return std::any_of(concerns.begin(), concerns.end(), [&](const model::Subject& subject) {
        return subject.frame == frame && is_named_in(subject, member);
    });
}

}  // namespace

PieceName name_of_piece(const model::Project& project,
                        const model::Resolved& resolved,
                        Index piece) {
    const auto& it = resolved.pieces[piece];
    const model::Frame* frame = frame_of(project, it.frame);
    if (frame == nullptr) return {};
    if (it.member == model::no_index) return {frame->name, {}, shim_number(resolved, piece)};
    return {frame->name, member_name(*frame, it.member), it.part};
}

std::optional<Index> find_piece(const model::Project& project,
                                const model::Resolved& resolved,
                                const PieceName& name) {
    Index shims = 0;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        const model::Frame* frame = frame_of(project, piece.frame);
        if (frame == nullptr || frame->name != name.frame) continue;
        if (piece.member == model::no_index) {
            if (name.member.empty() && shims == name.part) return i;
            ++shims;
        } else if (piece.part == name.part && !name.member.empty() &&
                   member_name(*frame, piece.member) == name.member) {
            return i;
        }
    }
    return std::nullopt;
}

std::vector<Index> selected_pieces(const model::Project& project,
                                   const model::Resolved& resolved,
                                   const Selection& selection) {
    std::vector<Index> pieces;
    for (const auto& name : selection.pieces) {
        if (const auto piece = find_piece(project, resolved, name)) pieces.push_back(*piece);
    }
    return pieces;
}

Selection selection_of(const model::Project& project,
                       const model::Resolved& resolved,
                       const std::vector<Index>& pieces) {
    Selection selection;
    for (const Index piece : pieces) {
        if (piece < resolved.pieces.size()) {
            selection.pieces.push_back(name_of_piece(project, resolved, piece));
        }
    }
    return selection;
}

Selection selection_of_member(const model::Project& project,
                              const model::Resolved& resolved,
                              std::string_view member) {
    Selection selection;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        auto name = name_of_piece(project, resolved, i);
        if (!member.empty() && name.member == member) selection.pieces.push_back(std::move(name));
    }
    return selection;
}

Selection selection_of_subjects(const model::Project& project,
                                const model::Resolved& resolved,
                                const std::vector<model::Subject>& concerns) {
    Selection selection{.subjects = concerns};
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const PieceName name = name_of_piece(project, resolved, i);
        if (!name.member.empty() && concerns_member(concerns, name.frame, name.member)) {
            selection.pieces.push_back(name);
        }
    }
    return selection;
}

bool has_subject(const Selection& selection, model::SubjectKind kind, std::string_view name) {
    return std::any_of(selection.subjects.begin(), selection.subjects.end(),
                       [&](const model::Subject& s) { return s.kind == kind && s.name == name; });
}

}  // namespace editor
