// Buy, below the bars: from whom, and what that comes to.
#pragma once

#include "editor/buy_run.h"
#include "editor/change.h"
#include "editor/dialogs/dialog.h"

#include <optional>

namespace editor {

// `facts` is null while they are being worked out.
std::optional<Change> draw_suppliers(const Derived& derived, const BuyFacts* facts, Dialog& dialog);

}  // namespace editor
