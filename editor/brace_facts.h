// What the window says of a brace: its piece, how long it is cut, and what holds it.
#pragma once

#include "editor/derived.h"
#include "engine/measure/tape.h"
#include "model/project/project.h"
#include "model/resolve/finding.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <string_view>

namespace editor {

model::Subject subject_of_brace(std::string_view frame, std::string_view brace);

// Its piece; none where it could not be made.
std::optional<model::Index> brace_piece(const model::Project& project,
                                        const model::Resolved& resolved,
                                        std::string_view frame,
                                        std::string_view brace);

// All that go through it, those of the joints under it too.
int fasteners_through(const model::Resolved& resolved, model::Index brace);

// "42 5/8".
std::string length_text(const model::Piece& piece, const engine::TapeStyle& shown);

}  // namespace editor
