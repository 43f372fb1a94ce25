// Asks which of two states counts when a project's file was written by something else.
#pragma once

#include "editor/intent.h"

#include <filesystem>
#include <optional>
#include <string>

namespace editor {

struct ChangedQuestion {
    enum class When { saving, coming_back };
    When when = When::saving;
    std::filesystem::path file;
    std::string fault;           // when saving: why it cannot be read as a project
    std::string drops;           // when coming back: what reading it again would lose, sentences
    std::optional<Intent> then;  // what saving was asked for
};

enum class ChangedAnswer {
    none,
    save_over,   // the file becomes what is here
    save_apart,  // what is here gets a file of its own
    read_again,  // what is here becomes the file
    stay
};

ChangedAnswer draw_changed_question(const ChangedQuestion& question);

}  // namespace editor
