#include "model/project/edit.h"

#include "model/project/change.h"

namespace model {

engine::Result<Project> apply(Project before, const Edit& edit) {
    const Changed changed = std::visit([&](const auto& e) { return change(before, e); }, edit);
    if (!changed) return changed.error();
    return before;
}

}  // namespace model
