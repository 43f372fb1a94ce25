// What a panel asks for: edits that are made together, as one step of the history.
#pragma once

#include "model/project/edit.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace editor {

struct Change {
    std::vector<model::Edit> edits;
    std::string merge_key;  // steps of one key in a row are one step
    std::string label;      // empty: that of the last edit
    // Bars that come to the saw with it were not said to be bought: see submit_with_bars.
    bool takes_bars = false;
    std::string told;  // along the bottom, once it is made; empty: nothing
};

inline Change change_of(model::Edit edit, std::string merge_key = {}) {
    Change change;
    change.edits.push_back(std::move(edit));
    change.merge_key = std::move(merge_key);
    return change;
}

// What the project would be with it; the first error where an edit is refused.
engine::Result<model::Project> project_after(const model::Project& project, const Change& change);

// A frame makes one change at most: that of the panel which comes first.
inline void keep_first(std::optional<Change>& change, std::optional<Change> other) {
    if (!change) change = std::move(other);
}

}  // namespace editor
