// What is cut out of a panel, as rows of fields.
#pragma once

#include "model/project/project.h"

namespace editor {

void draw_cut_out_rows(model::Panel& panel);

}  // namespace editor
