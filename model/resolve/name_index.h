// Names of a list of things, looked up at once, and what is wrong with them.
#pragma once

#include "model/resolve/finding.h"
#include "model/resolve/resolved.h"

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace model {

using NameIndex = std::unordered_map<std::string_view, Index>;

// Name -> index of the first thing with that name; a finding for each later one and for each that
// has none. The things must outlive the index.
template <class Things>
NameIndex index_names(const Things& things,
                      SubjectKind kind,
                      const std::string& frame,
                      std::vector<Finding>& findings) {
    NameIndex index;
    index.reserve(things.size());
    for (Index i = 0; i < things.size(); ++i) {
        const bool is_new = index.emplace(things[i].name, i).second;
        if (things[i].name.empty()) {
            findings.push_back({.code = "no_name",
                                .severity = Severity::error,
                                .concerns = {{kind, frame, {}}},
                                .what = "it has no name, and nothing can refer to it",
                                .mend = "give it a name"});
        }
        if (is_new) continue;
        findings.push_back(
            {.code = "duplicate_name",
             .severity = Severity::error,
             .concerns = {{kind, frame, things[i].name}},
             .what = "another " + std::string(name_of(kind)) + " has the same name",
             .mend = "rename one of them; where the name is used, the first one counts"});
    }
    return index;
}

}  // namespace model
