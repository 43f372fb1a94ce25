// Shows how far files are worked out that are to be written; cancels it.
#pragma once

#include "editor/write_run.h"

namespace editor {

void draw_writing(WriteRun& run);

}  // namespace editor
