// Whether the project's file was written by something else since it was opened or saved here.
#pragma once

#include "editor/desk.h"

#include <optional>

namespace editor {

// What the file holds now, where that is another project than the one that was opened or saved
// here. None where it is the same, is not there or cannot be read.
std::optional<model::Project> other_on_disk(const Desk& desk);

// To be called when the window comes back to the front: asks where the file has changed.
void look_at_file(Desk& desk);

// Saves, but asks first where that would write over what something else wrote.
void save_or_ask(Desk& desk, std::optional<Intent> then);

void settle_changed(Desk& desk, const ChangedQuestion& question, ChangedAnswer answer);

}  // namespace editor
