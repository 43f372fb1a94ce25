// The project's name and note.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"

#include <optional>
#include <string>

namespace editor {

struct TitleForm {
    std::string name;
    std::string note;
    bool is_fresh = true;
};

struct TitleOutcome {
    std::optional<Change> change;
    bool is_cancelled = false;
};

TitleOutcome draw_title_form(TitleForm& form);

}  // namespace editor
