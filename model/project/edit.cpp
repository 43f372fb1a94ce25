#include "model/project/edit.h"

#include "model/project/change.h"
#include "model/project/edit_kinds.h"

namespace model {

engine::Result<Project> apply(Project before, const Edit& edit) {
    const Changed changed =
        std::visit([&](const auto& e) { return change(before, e); }, edit.one().kind);
    if (!changed) return changed.error();
    return before;
}

}  // namespace model
