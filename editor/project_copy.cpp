#include "editor/project_copy.h"

#include "editor/desk.h"

namespace editor {

std::shared_ptr<const ProjectCopy> project_copy(const Desk& desk, const Derived& now) {
    return std::make_shared<const ProjectCopy>(
        ProjectCopy{now.project, desk.catalogue, now.prices, now.resolved});
}

}  // namespace editor
