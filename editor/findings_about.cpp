#include "editor/findings_about.h"

#include <algorithm>

namespace editor {

std::vector<const model::Finding*> findings_about(const std::vector<model::Finding>& findings,
                                                  const model::Subject& subject) {
    std::vector<const model::Finding*> found;
    for (const auto& finding : findings) {
        const auto& concerns = finding.concerns;
        if (std::find(concerns.begin(), concerns.end(), subject) != concerns.end()) {
            found.push_back(&finding);
        }
    }
    return found;
}

std::vector<const model::Finding*> to_mend_about(const std::vector<model::Finding>& findings,
                                                 const model::Subject& subject) {
    auto found = findings_about(findings, subject);
    std::erase_if(found, [](const model::Finding* finding) {
        return finding->severity == model::Severity::note;
    });
    return found;
}

}  // namespace editor
