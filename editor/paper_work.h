// What is printed, worked out beside the window as files to be written.
#pragma once

#include "editor/project_copy.h"
#include "editor/write_run.h"
#include "engine/drawing/paper.h"
#include "engine/result.h"
#include "model/book/stamp.h"

#include <filesystem>
#include <memory>
#include <string>

namespace editor {

struct PaperWork {
    std::shared_ptr<const ProjectCopy> of;
    engine::Paper paper = engine::Paper::a4;
    std::string across;  // what the ruler measures on a printed sheet, as typed; empty: as it says
    std::string down;
    bool has_errors = false;  // findings say that it is not fit to work from
};

using PaperGoOn = BackgroundWork<ToWrite>::GoOn;

// The book and its stamps; the strips; the drawings of marks that are others than printed. Without
// files where there is nothing to print, which the words say.
engine::Result<ToWrite> book_to_write(const PaperWork& work,
                                      const std::filesystem::path& file,
                                      const PaperGoOn& go_on);
engine::Result<ToWrite> strips_to_write(const PaperWork& work,
                                        const std::filesystem::path& file,
                                        const PaperGoOn& go_on);
engine::Result<ToWrite> changed_to_write(const model::BookStamps& printed,
                                         const PaperWork& work,
                                         const std::filesystem::path& file,
                                         const PaperGoOn& go_on);

}  // namespace editor
