// The offsets of a wall or a ceiling: a table at its beginning, and one for each station.
#pragma once

#include "editor/dialogs/checked_field.h"
#include "model/project/project.h"

namespace editor {

void draw_wall_rows(CheckedFields& fields, model::WallProfile& wall);
void draw_ceiling_rows(CheckedFields& fields, model::CeilingProfile& ceiling);

}  // namespace editor
