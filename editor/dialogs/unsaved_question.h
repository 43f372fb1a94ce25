// Asks before changes that are not saved are put away.
#pragma once

#include "editor/intent.h"

#include <string>

namespace editor {

struct UnsavedQuestion {
    Intent then;
};

enum class UnsavedAnswer { none, save, discard, stay };

UnsavedAnswer draw_unsaved_question(const UnsavedQuestion& question, const std::string& title);

}  // namespace editor
