// Asks before schedules are written that nobody should cut from yet.
#pragma once

#include "editor/derived.h"

#include <string>

namespace editor {

struct ExportQuestion {};

enum class ExportAnswer { none, write, look, stay };

ExportAnswer draw_export_question(const Derived& derived);

// What is wrong, a line for each kind of error: "4 joints of counter: no rivet fits".
std::string errors_text(const Derived& derived);

}  // namespace editor
