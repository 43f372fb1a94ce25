#include "editor/change.h"

namespace editor {

engine::Result<model::Project> project_after(const model::Project& project, const Change& change) {
    model::Project next = project;
    for (const auto& edit : change.edits) {
        auto applied = model::apply(std::move(next), edit);
        if (!applied) return applied.error();
        next = std::move(applied).value();
    }
    return next;
}

}  // namespace editor
