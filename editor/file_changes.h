// Whether the project's file was written by something else since it was opened or saved here.
#pragma once

#include "editor/desk.h"

#include <optional>
#include <string>

namespace editor {

// What the project's file holds now, where that is not what was opened or saved here.
struct OnDisk {
    std::optional<model::Project> other;
    std::string fault;  // why it cannot be read as a project; empty: it can, or is not there

    bool is_changed() const { return other || !fault.empty(); }
};

OnDisk on_disk(const Desk& desk);

// To be called when the window comes back to the front: asks where the file holds another project.
void look_at_file(Desk& desk);

// Saves, but asks first where that would write over what something else wrote.
void save_or_ask(Desk& desk, std::optional<Intent> then);

void settle_changed(Desk& desk, const ChangedQuestion& question, ChangedAnswer answer);

}  // namespace editor
