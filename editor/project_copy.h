// What work beside the window stands on: it owns all of it.
#pragma once

#include "editor/derived.h"
#include "editor/history.h"
#include "model/buying/price_library.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <memory>

namespace editor {

struct Desk;

struct ProjectCopy {
    Snapshot project;
    std::shared_ptr<const model::Catalogue> catalogue;
    std::shared_ptr<const model::PriceLibrary> prices;
    model::Resolved resolved;
};

std::shared_ptr<const ProjectCopy> project_copy(const Desk& desk, const Derived& now);

}  // namespace editor
