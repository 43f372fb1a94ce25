// The frames: what each is made of, to be changed section by section.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/selection.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>

namespace editor {

std::optional<Change> draw_frame_list(const Derived& derived,
                                      const model::Catalogue& catalogue,
                                      Selection& selection,
                                      std::string& filter);

// "41 ft 2" or "12.5 m": how much bar that is.
std::string bar_text(engine::Length length, const engine::TapeStyle& shown);

}  // namespace editor
