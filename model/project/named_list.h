// Finding, putting and removing things by name in a list of the project.
#pragma once

#include "model/project/change.h"
#include "model/project/check_thing.h"
#include "model/project/walk_texts.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace model {

template <class T>
auto find_named(std::vector<T>& things, const std::string& name) {
    return std::find_if(things.begin(), things.end(),
                        [&](const T& thing) { return thing.name == name; });
}

inline std::string inside(const std::string& where, const std::string& what) {
    return where.empty() ? what : where + ", " + what;
}

template <class T>
engine::Error no_such(const std::string& where, const std::string& name) {
    return {engine::ErrorCode::unknown_name, where,
            "there is no " + std::string(thing_name<T>) + " \"" + name + "\""};
}

inline engine::Error already_there(const std::string& where) {
    return {engine::ErrorCode::duplicate_name, where,
            "there is one of this name already; choose another name"};
}

// Replaces the thing called `instead_of`, or where that is empty the one of the same name, or adds
// the thing at the end.
template <class T>
Changed put_named(std::vector<T>& things,
                  const T& thing,
                  const std::string& instead_of,
                  const std::string& where) {
    const std::string at = inside(where, described(thing));
    if (auto sound = check_thing(thing, at); !sound) return sound;
    const auto same_name = find_named(things, thing.name);
    const auto replaced = instead_of.empty() ? same_name : find_named(things, instead_of);
    if (!instead_of.empty() && replaced == things.end()) return no_such<T>(where, instead_of);
    if (same_name != things.end() && thing.name != replaced->name) return already_there(at);
    if (replaced == things.end()) {
        things.push_back(thing);
    } else {
        *replaced = thing;
    }
    return engine::Done{};
}

template <class T>
Changed remove_named(std::vector<T>& things, const std::string& name, const std::string& where) {
    const auto found = find_named(things, name);
    if (found == things.end()) return no_such<T>(where, name);
    things.erase(found);
    return engine::Done{};
}

}  // namespace model
