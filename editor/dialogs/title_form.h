// The project's name and note.
#pragma once

#include "editor/dialogs/form_answers.h"

#include <string>

namespace editor {

struct TitleForm {
    std::string name;
    std::string note;
    bool is_fresh = true;
};

FormOutcome draw_title_form(TitleForm& form);

}  // namespace editor
