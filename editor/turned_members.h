// Which way bars lie: turning them over, and finding the way in which they meet best.
#pragma once

#include "editor/change.h"
#include "editor/selection.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/room/scans.h"

#include <string>
#include <vector>

namespace editor {

// Turns the members of those pieces over: the side that lay on the first plane comes onto the
// second. No edit when no piece is part of a member.
Change turn_change(const model::Project& project, const std::vector<PieceName>& pieces);

// The edits that turn those members of the frame (all when none is named) so that the project
// resolves in its room with the fewest findings, the worst first; legs and planes stay. A member is
// left as it is unless turning it is better.
std::vector<model::Edit> best_turns(const model::Project& project,
                                    const model::Catalogue& catalogue,
                                    const model::ScanLibrary& scans,
                                    const std::string& frame,
                                    const std::vector<std::string>& members);

}  // namespace editor
