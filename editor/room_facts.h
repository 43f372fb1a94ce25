// How near the pieces come to each obstacle of the room, as the window tells it.
#pragma once

#include "editor/derived.h"
#include "model/room/clearance.h"
#include "model/room/scans.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace editor {

struct ObstacleFacts {
    bool has_shape = false;
    std::optional<model::NearPlace> nearest;  // the worst of all; none within the reach
    std::vector<model::NearPlace> of_frames;  // the worst of each frame that is within the reach
    model::Nm wanted = 0;                     // clearance
    double reach_mm = 0.0;                    // how far beyond what is wanted it was looked for
    std::vector<model::Finding> findings;     // its own faults, and what comes too near to it
};

// A scan that has been read, where it stands.
struct PlacedScan {
    model::Index obstacle = 0;  // in Project::room
    engine::Placement place;
    std::shared_ptr<const model::Scan> scan;
};

struct RoomFacts {
    Revision revision = 0;
    std::shared_ptr<const model::ScanLibrary> scans;
    double reach_mm = 0.0;
    std::vector<ObstacleFacts> obstacles;  // as in Project::room
    std::vector<PlacedScan> scans_placed;
};

// Beyond what is wanted nothing is looked for that is further away.
inline constexpr double near_reach_mm = 304.8;

RoomFacts room_facts(const Derived& derived,
                     const model::Catalogue& catalogue,
                     std::shared_ptr<const model::ScanLibrary> scans,
                     double reach_mm = near_reach_mm);

std::vector<PlacedScan> placed_scans(const Derived& derived, const model::ScanLibrary& scans);

// The same of one obstacle that is not in the room as it is.
ObstacleFacts facts_of(const model::Obstacle& obstacle,
                       const Derived& derived,
                       const model::Catalogue& catalogue);

// The facts of an obstacle as a form states it, kept for the next frame.
struct TriedObstacle {
    WorkedOutOf of;
    model::Obstacle obstacle;
    ObstacleFacts facts;
};

// Those in `tried`, worked out again where the project, a scan or the obstacle is another one.
const ObstacleFacts& facts_of(std::optional<TriedObstacle>& tried,
                              const model::Obstacle& obstacle,
                              const Derived& derived,
                              const model::Catalogue& catalogue);

// "3/8 from post left", "1/2 inside rail top", "nothing near", "keeps clear" where it was not
// looked for further; empty where it has no shape.
std::string near_words(const ObstacleFacts& facts, const Derived& derived);

}  // namespace editor
