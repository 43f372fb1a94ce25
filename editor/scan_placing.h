// A scan that is being placed by three points which are picked on it.
#pragma once

#include "engine/geometry/placement.h"
#include "model/project/project.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

struct ScanPlacing {
    std::string obstacle;
    std::vector<engine::Vector>
        points{};           // in the scan's own axes, mm: corner, along X, on the floor
    std::string trouble{};  // why the last click is not taken; empty: it is
};

// The scan turned and shifted so that the first point lies at 0, the second along X, and the third
// on the floor at larger Y. None where they lie in a line.
std::optional<model::ScannedObstacle> placed_by(model::ScannedObstacle scan,
                                                const std::vector<engine::Vector>& points);

// Takes a point; what will not do with those before is not taken, and `trouble` says why.
void pick(ScanPlacing& placing, const engine::Vector& point);

// What is to be clicked next.
std::string placing_words(const ScanPlacing& placing);

}  // namespace editor
