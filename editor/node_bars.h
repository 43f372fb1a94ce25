// Bars that run from node to node of a face, as the window speaks of them: braces of flat bar and
// leaning members of angle. What they have in common is written once, for either type.
#pragma once

#include "editor/derived.h"
#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/project/project.h"
#include "model/resolve/finding.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

// What differs between the two.
template <class Bar>
struct NodeBarKind;

template <>
struct NodeBarKind<model::Diagonal> {
    static constexpr const char* word = "brace";
    static constexpr const char* usual_name = "brace";
    static constexpr const char* dialog = "Brace";  // by which its form is known
    static constexpr model::SectionForm form = model::SectionForm::flat;
    static constexpr model::SubjectKind subject = model::SubjectKind::diagonal;
    static constexpr model::PieceKind piece = model::PieceKind::brace;

    static const std::vector<model::Diagonal>& all(const model::Frame& frame) {
        return frame.diagonals;
    }
    static model::Edit put(std::string frame, model::Diagonal bar, std::string instead_of) {
        return model::PutDiagonal{std::move(frame), std::move(bar), std::move(instead_of)};
    }
    static model::Edit remove(std::string frame, std::string name) {
        return model::RemoveDiagonal{std::move(frame), std::move(name)};
    }
};

template <>
struct NodeBarKind<model::Leaning> {
    static constexpr const char* word = "leaning member";
    static constexpr const char* usual_name = "leaning post";
    static constexpr const char* dialog = "Leaning";
    static constexpr model::SectionForm form = model::SectionForm::angle;
    static constexpr model::SubjectKind subject = model::SubjectKind::leaning;
    static constexpr model::PieceKind piece = model::PieceKind::leaning;

    static const std::vector<model::Leaning>& all(const model::Frame& frame) {
        return frame.leaning;
    }
    static model::Edit put(std::string frame, model::Leaning bar, std::string instead_of) {
        return model::PutLeaning{std::move(frame), std::move(bar), std::move(instead_of)};
    }
    static model::Edit remove(std::string frame, std::string name) {
        return model::RemoveLeaning{std::move(frame), std::move(name)};
    }
};

template <class Bar>
model::Subject subject_of(std::string_view frame, const Bar& bar) {
    return {NodeBarKind<Bar>::subject, std::string(frame), bar.name};
}

// "brace", "leaning member": the word for the thing of that name; empty where it is neither.
std::string_view node_bar_word(const model::Frame& frame, std::string_view name);

// Joints know members, braces and leaning members by name.
bool is_taken(const model::Frame& frame, std::string_view name);

// The piece of what is stated; none where it could not be made.
std::optional<model::Index> piece_of(const model::Project& project,
                                     const model::Resolved& resolved,
                                     const model::Subject& stated);

// All that go through it, those of the joints under it too.
int fasteners_through(const model::Resolved& resolved, model::Index piece);

// "42 5/8 long"; of a leaning member with what the saw is set to, off square, at its datum end and
// at its far end: "47 17/32 long, cut 5.1\u00b0 and 5.1\u00b0".
std::string size_words(const model::Piece& piece, const engine::TapeStyle& shown);

}  // namespace editor
