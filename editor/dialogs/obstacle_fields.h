// The measures of an obstacle's shape, as lines of its form.
#pragma once

#include "editor/dialogs/checked_field.h"
#include "model/project/project.h"

namespace editor {

void draw_obstacle_fields(CheckedFields& fields, model::Obstacle& obstacle);

// Of a scan all but its file.
void draw_scan_fields(CheckedFields& fields, model::ScannedObstacle& scan);

}  // namespace editor
