// Where a finding is mended by hand: the forms that hold what it is about.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/place.h"

#include <functional>
#include <string>
#include <vector>

namespace editor {

struct MendDoor {
    std::string words;  // "Open wheel well left"; says that it leads elsewhere
    std::function<void(Dialog&, Place&)> open;
};

// At most three, each once.
std::vector<MendDoor> doors_of(const Derived& now, const model::Finding& finding);

}  // namespace editor
