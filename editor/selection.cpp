#include "editor/selection.h"

#include "model/schedule/piece_words.h"

#include <algorithm>
#include <unordered_map>
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

// How many pieces of the frame before this one have the same name.
Index number_among_alike(const model::Project& project,
                         const model::Resolved& resolved,
                         Index piece) {
    const auto& it = resolved.pieces[piece];
    const auto what = model::part_words(project, it);
    Index number = 0;
    for (Index i = resolved.frames[it.frame].first_piece; i < piece; ++i) {
        const auto& other = resolved.pieces[i];
        if (other.member == model::no_index && other.kind == it.kind &&
            model::part_words(project, other) == what) {
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

// What the user states that is no member: a brace, a leaning member or a panel; nameless where the
// piece is none of these.
model::Subject stated_part(const model::Frame& frame, const model::Piece& piece) {
    const auto subject_in = [&](const auto& list, model::SubjectKind kind) {
        if (piece.stated >= list.size()) return model::Subject{};
        return model::Subject{kind, frame.name, list[piece.stated].name};
    };
    if (piece.kind == model::PieceKind::brace)
        return subject_in(frame.diagonals, model::SubjectKind::diagonal);
    if (piece.kind == model::PieceKind::leaning)
        return subject_in(frame.leaning, model::SubjectKind::leaning);
    if (piece.kind == model::PieceKind::panel)
        return subject_in(frame.panels, model::SubjectKind::panel);
    return {};
}

// Whether a finding concerns what belongs to no member: the joint that made it, the brace or the
// leaning member (also as one of a joint's two) or the panel.
bool concerns_part(const std::vector<model::Subject>& concerns,
                   const model::Project& project,
                   const model::Piece& piece) {
    const model::Frame* frame = frame_of(project, piece.frame);
    if (frame == nullptr || piece.member != model::no_index) return false;
    const std::string first = member_name(*frame, piece.serves[0]);
    const std::string second = member_name(*frame, piece.serves[1]);
    const bool is_between_nodes = model::is_between_nodes(piece.kind);
    const auto own = stated_part(*frame, piece);
    const auto is_meant = [&](const model::Subject& subject) {
        if (subject.frame != frame->name) return false;
        if (is_between_nodes) {
            const bool is_joint = subject.kind == model::SubjectKind::joint;
            return subject == own || (is_joint && is_named_in(subject, own.name));
        }
        if (subject.kind == model::SubjectKind::panel) return subject == own;
        return subject.kind == model::SubjectKind::joint && !first.empty() &&
               is_named_in(subject, first) && is_named_in(subject, second);
    };
    return std::any_of(concerns.begin(), concerns.end(), is_meant);
}

std::string key_of(const PieceName& name) {
    return name.frame + '\n' + name.member + '\n' + name.what + '\n' + std::to_string(name.part);
}

// Of all pieces, in one go.
std::vector<PieceName> names_of_all(const model::Project& project,
                                    const model::Resolved& resolved) {
    std::vector<PieceName> names(resolved.pieces.size());
    std::unordered_map<std::string, Index> counts;  // those alike in the frame so far
    Index last_frame = model::no_index;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        const model::Frame* frame = frame_of(project, piece.frame);
        if (frame == nullptr) continue;
        if (piece.frame != last_frame) counts.clear();
        last_frame = piece.frame;
        if (piece.member != model::no_index) {
            names[i] = {frame->name, member_name(*frame, piece.member), piece.part};
            continue;
        }
        auto what = model::part_words(project, piece);
        const Index number = counts[what]++;
        names[i] = {frame->name, {}, number, std::move(what)};
    }
    return names;
}

std::vector<Index> many_pieces(const model::Project& project,
                               const model::Resolved& resolved,
                               const Selection& selection) {
    const auto names = names_of_all(project, resolved);
    std::unordered_map<std::string, Index> piece_of;
    piece_of.reserve(names.size());
    for (Index i = 0; i < names.size(); ++i) piece_of.try_emplace(key_of(names[i]), i);
    std::vector<Index> pieces;
    for (const auto& name : selection.pieces) {
        const auto found = piece_of.find(key_of(name));
        if (found != piece_of.end()) pieces.push_back(found->second);
    }
    return pieces;
}

}  // namespace

PieceName name_of_piece(const model::Project& project,
                        const model::Resolved& resolved,
                        Index piece) {
    const auto& it = resolved.pieces[piece];
    const model::Frame* frame = frame_of(project, it.frame);
    if (frame == nullptr) return {};
    if (it.member == model::no_index) {
        return {frame->name,
                {},
                number_among_alike(project, resolved, piece),
                model::part_words(project, it)};
    }
    return {frame->name, member_name(*frame, it.member), it.part};
}

std::optional<Index> find_piece(const model::Project& project,
                                const model::Resolved& resolved,
                                const PieceName& name) {
    Index alike = 0;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        const model::Frame* frame = frame_of(project, piece.frame);
        if (frame == nullptr || frame->name != name.frame) continue;
        if ((piece.member == model::no_index) == name.what.empty()) continue;
        if (piece.member != model::no_index) {
            if (piece.part == name.part && member_name(*frame, piece.member) == name.member)
                return i;
        } else if (model::part_words(project, piece) == name.what && alike++ == name.part) {
            return i;
        }
    }
    return std::nullopt;
}

std::vector<Index> selected_pieces(const model::Project& project,
                                   const model::Resolved& resolved,
                                   const Selection& selection) {
    std::vector<Index> pieces;
    constexpr std::size_t few = 4;  // beyond that one look at all pieces is quicker
    if (selection.pieces.size() > few) return many_pieces(project, resolved, selection);
    for (const auto& name : selection.pieces) {
        if (const auto piece = find_piece(project, resolved, name)) pieces.push_back(*piece);
    }
    return pieces;
}

Selection selection_of(const model::Project& project,
                       const model::Resolved& resolved,
                       const std::vector<Index>& pieces) {
    Selection selection;
    const bool are_few = pieces.size() < 5;
    const auto names = are_few ? std::vector<PieceName>{} : names_of_all(project, resolved);
    for (const Index piece : pieces) {
        if (piece >= resolved.pieces.size()) continue;
        selection.pieces.push_back(are_few ? name_of_piece(project, resolved, piece)
                                           : names[piece]);
    }
    return selection;
}

Selection selection_of_member(const model::Project& project,
                              const model::Resolved& resolved,
                              std::string_view member) {
    Selection selection;
    for (auto& name : names_of_all(project, resolved)) {
        if (!member.empty() && name.member == member) selection.pieces.push_back(std::move(name));
    }
    return selection;
}

Selection selection_of_subjects(const model::Project& project,
                                const model::Resolved& resolved,
                                const std::vector<model::Subject>& concerns) {
    Selection selection{.subjects = concerns};
    auto names = names_of_all(project, resolved);
    for (Index i = 0; i < names.size(); ++i) {
        auto& name = names[i];
        const bool is_concerned = name.member.empty()
                                      ? concerns_part(concerns, project, resolved.pieces[i])
                                      : concerns_member(concerns, name.frame, name.member);
        if (is_concerned) selection.pieces.push_back(std::move(name));
    }
    return selection;
}

bool is_concerned(const model::Project& project,
                  const model::Resolved& resolved,
                  const Selection& selection,
                  const std::vector<Index>& chosen,
                  const std::vector<model::Subject>& concerns) {
    if (concerns.empty()) return false;
    const auto& subjects = selection.subjects;
    if (!subjects.empty()) {
        return std::all_of(concerns.begin(), concerns.end(), [&](const model::Subject& subject) {
            return std::find(subjects.begin(), subjects.end(), subject) != subjects.end();
        });
    }
    return std::any_of(chosen.begin(), chosen.end(), [&](Index i) {
        const auto& piece = resolved.pieces[i];
        const model::Frame* frame = frame_of(project, piece.frame);
        if (frame == nullptr) return false;
        if (piece.member == model::no_index) return concerns_part(concerns, project, piece);
        return concerns_member(concerns, frame->name, member_name(*frame, piece.member));
    });
}

bool has_subject(const Selection& selection, model::SubjectKind kind, std::string_view name) {
    return std::any_of(selection.subjects.begin(), selection.subjects.end(),
                       [&](const model::Subject& s) { return s.kind == kind && s.name == name; });
}

bool has_subject(const Selection& selection, const model::Subject& subject) {
    return std::find(selection.subjects.begin(), selection.subjects.end(), subject) !=
           selection.subjects.end();
}

}  // namespace editor
