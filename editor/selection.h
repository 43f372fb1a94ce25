// What is chosen in the window. Kept by name, so that it survives every new resolve.
#pragma once

#include "model/project/project.h"
#include "model/resolve/finding.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

// A piece as the user knows it: the part of a member. What belongs to no member is known by what it
// is: "cleat at post left and rail top"; those of one name are counted within their frame.
struct PieceName {
    std::string frame;
    std::string member;
    model::Index part = 0;
    std::string what{};  // empty for a member's

    bool operator==(const PieceName&) const = default;
};

struct Selection {
    std::vector<PieceName> pieces;         // the first is the one that is unrolled
    std::vector<model::Subject> subjects;  // what a finding concerns besides pieces

    bool operator==(const Selection&) const = default;
};

PieceName name_of_piece(const model::Project& project,
                        const model::Resolved& resolved,
                        model::Index piece);

// The piece of that name; none when it is gone.
std::optional<model::Index> find_piece(const model::Project& project,
                                       const model::Resolved& resolved,
                                       const PieceName& name);

// Those of the selection's pieces that are there, in its order.
std::vector<model::Index> selected_pieces(const model::Project& project,
                                          const model::Resolved& resolved,
                                          const Selection& selection);

// Selects pieces by their index.
Selection selection_of(const model::Project& project,
                       const model::Resolved& resolved,
                       const std::vector<model::Index>& pieces);

// Selects all pieces of the members of that name.
Selection selection_of_member(const model::Project& project,
                              const model::Resolved& resolved,
                              std::string_view member);

// Selects what findings concern: the pieces of the members, those that join two of them, braces,
// leaning members and panels, and the subjects themselves.
Selection selection_of_subjects(const model::Project& project,
                                const model::Resolved& resolved,
                                const std::vector<model::Subject>& concerns);

// Whether what is chosen is what these concern: all of them where things are chosen by what they
// are, else a piece of them.
bool is_concerned(const model::Project& project,
                  const model::Resolved& resolved,
                  const Selection& selection,
                  const std::vector<model::Index>& chosen,
                  const std::vector<model::Subject>& concerns);

bool has_subject(const Selection& selection, model::SubjectKind kind, std::string_view name);

// Where the same name may be one of several frames'.
bool has_subject(const Selection& selection, const model::Subject& subject);

}  // namespace editor
