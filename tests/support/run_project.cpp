#include "tests/support/run_project.h"

#include "model/resolve/resolve.h"
#include "model/schedule/write_all.h"

#include <algorithm>
#include <utility>

namespace tests {

SkeletonFiles written_files(const model::Project& project, const model::Catalogue& catalogue) {
    const auto resolved = model::resolve(project, catalogue);
    SkeletonFiles files;
    for (auto& file : model::schedule_files(project, catalogue, resolved)) {
        files[file.name] = std::move(file.text);
    }
    return files;
}

LayoutRules rules_of(const model::Project& project) {
    LayoutRules rules;
    rules.edge_distance = project.shop.edge_distance;
    rules.pitch = project.shop.pitch;
    const bool differs = std::any_of(project.frames.begin(), project.frames.end(),
                                     [](const auto& frame) { return !frame.joints.empty(); });
    rules.per_lap = differs ? 0 : project.shop.per_lap;
    const auto shop =
        model::resolve(project, model::Catalogue{}).shop;  // only the formulas' values
    rules.nose_radius = shop.nose_radius;
    rules.nose_reach = shop.nose_reach;
    rules.panel_pitch = shop.panel_pitch;
    return rules;
}

}  // namespace tests
