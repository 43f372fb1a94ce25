// The schedules, what is bought, the shop book and the drill strips, into one folder.
#pragma once

#include "editor/paper_work.h"
#include "engine/result.h"

#include <filesystem>
#include <string>
#include <vector>

namespace editor {

// Of the findings, told once it is written.
struct ExportState {
    int errors = 0;
    int open = 0;
};

// Worked out beside the window. Error: cancelled; what else cannot be made is left out and said.
engine::Result<ToWrite> export_to_write(const PaperWork& work,
                                        const std::filesystem::path& folder,
                                        ExportState state,
                                        const PaperGoOn& go_on);

// What an export would write anew: the files in the folder that bear such a name.
std::vector<std::string> exported_in(const std::filesystem::path& folder);

}  // namespace editor
