// The findings that concern one thing that the user stated.
#pragma once

#include "model/resolve/finding.h"

#include <vector>

namespace editor {

// In their order; they point into `findings`.
std::vector<const model::Finding*> findings_about(const std::vector<model::Finding>& findings,
                                                  const model::Subject& subject);

// Errors and warnings only.
std::vector<const model::Finding*> to_mend_about(const std::vector<model::Finding>& findings,
                                                 const model::Subject& subject);

}  // namespace editor
