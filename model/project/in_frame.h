// What the edits inside a frame share.
#pragma once

#include "model/project/named_list.h"
#include "model/project/references.h"

namespace model {

// Calls edit_it(frame) for the frame of that name.
template <class EditIt>
Changed in_frame(Project& project, const std::string& name, EditIt edit_it) {
    const auto frame = find_named(project.frames, name);
    if (frame == project.frames.end()) return no_such<Frame>("", name);
    return edit_it(*frame);
}

// Refuses a reference to nothing, unless the thing that is replaced has it too: a project from a
// file may be broken in one place and must still be editable in another.
inline Changed check_missing(const std::vector<Reference>& missing,
                             const std::vector<Reference>& known,
                             const std::string& where) {
    for (const Reference& reference : missing) {
        if (std::find(known.begin(), known.end(), reference) != known.end()) continue;
        return engine::Error{engine::ErrorCode::unknown_name, where,
                             "there is no " + std::string(name_of(reference.target)) + " \"" +
                                 reference.name + "\"; add it first or choose another"};
    }
    return engine::Done{};
}

template <class T>
Changed check_references(const Project& project,
                         const Frame& frame,
                         const T& thing,
                         const T* replaced,
                         const std::string& where) {
    const auto missing = missing_references(project, &frame, thing);
    if (missing.empty() || replaced == nullptr) return check_missing(missing, {}, where);
    return check_missing(missing, missing_references(project, &frame, *replaced), where);
}

// Puts a thing into one of the frame's lists after its references are checked.
template <class T>
Changed put_in_frame(const Project& project,
                     Frame& frame,
                     std::vector<T>& things,
                     const T& thing,
                     const std::string& instead_of) {
    const std::string where = described(frame);
    const auto replaced = find_named(things, instead_of.empty() ? thing.name : instead_of);
    const T* old = replaced == things.end() ? nullptr : &*replaced;
    if (auto sound = check_references(project, frame, thing, old, inside(where, described(thing)));
        !sound) {
        return sound;
    }
    return put_named(things, thing, instead_of, where);
}

// Refuses while anything in the frame refers to the name.
inline Changed check_unused(const Frame& frame, const Reference& reference) {
    const auto users = users_of(frame, reference);
    if (users.empty()) return engine::Done{};
    return engine::Error{
        engine::ErrorCode::invalid_value,
        described(frame) + ", " + std::string(name_of(reference.target)) + " " + reference.name,
        some_of(users) + " needs it; move or remove that first"};
}

inline bool is_rename(const std::string& instead_of, const std::string& name) {
    return !instead_of.empty() && instead_of != name;
}

}  // namespace model
