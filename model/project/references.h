// Names that things refer to one another by: who refers to what, what is missing, renaming.
#pragma once

#include "model/project/project.h"
#include "model/project/project_fields.h"
#include "model/project/walk_texts.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace model {

struct Reference {
    Target target = Target::none;
    std::string name;

    bool operator==(const Reference&) const = default;
};

bool has_target(const Project& project, const Frame* frame, const Reference& reference);

std::string_view name_of(Target target);  // "plane"

// The references of a thing to what is not there. `frame` holds the planes, bays and members that
// the thing may refer to; null for a thing outside frames.
template <class T>
std::vector<Reference> missing_references(const Project& project,
                                          const Frame* frame,
                                          const T& thing) {
    std::vector<Reference> missing;
    walk_texts(thing, [&](const Meaning& meaning, const std::string& name, const Trail&) {
        if (meaning.role != Role::reference) return;
        Reference reference{meaning.target, name};
        if (!has_target(project, frame, reference)) missing.push_back(std::move(reference));
    });
    return missing;
}

// "member post left", "frame counter, member rail": all within `thing` that refer to the target.
template <class T>
std::vector<std::string> users_of(const T& thing, const Reference& reference) {
    std::vector<std::string> users;
    walk_texts(thing, [&](const Meaning& meaning, const std::string& name, const Trail& trail) {
        if (meaning.role != Role::reference || meaning.target != reference.target) return;
        if (name == reference.name) users.push_back(where_text(trail));
    });
    users.erase(std::unique(users.begin(), users.end()), users.end());
    return users;
}

// "member a and 3 more".
std::string some_of(const std::vector<std::string>& users);

template <class T>
void rename_references(T& thing, const Reference& before, const std::string& after) {
    walk_texts(thing, [&](const Meaning& meaning, std::string& name, const Trail&) {
        if (meaning.role != Role::reference || meaning.target != before.target) return;
        if (name == before.name) name = after;
    });
}

}  // namespace model
