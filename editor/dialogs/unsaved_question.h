// Asks before something that is not saved or not finished is put away.
#pragma once

#include "editor/intent.h"

#include <string>

namespace editor {

struct UnsavedQuestion {
    Intent then;
    std::string reasons;    // sentences
    bool can_save = false;  // saving would keep something that is in no file yet
};

enum class UnsavedAnswer { none, save, discard, stay };

UnsavedAnswer draw_unsaved_question(const UnsavedQuestion& question);

}  // namespace editor
