// A project's file and all that follows from it, for commands that write from it.
#pragma once

#include "engine/result.h"
#include "model/buying/price_library.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <filesystem>

namespace editor {

struct WorkedOutFile {
    model::Project project;
    model::Catalogue catalogue;
    model::Resolved resolved;
    model::PriceLibrary prices;
    bool has_errors = false;  // a finding is one, with bars of the supplier that the project names
};

engine::Result<WorkedOutFile> worked_out_file(const std::filesystem::path& file);

}  // namespace editor
