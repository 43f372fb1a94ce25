// How far a wall leans in over a height.
#pragma once

#include "engine/geometry/convex.h"
#include "model/project/project.h"

#include <array>
#include <span>

namespace model {

// Along Y and upward in the room, mm.
struct Stretch {
    std::array<double, 2> along{};
    std::array<double, 2> up{};
};

// By how much the upper end of a straight line must stand further in than its lower end, so that it
// comes no nearer to the wall further up than at its foot, wherever it stands along the stretch:
// mm; 0 where the wall does not lean in, or nothing of it is there. The bodies are those of a wall
// profile: their near side is the wall's surface.
double wall_lean(std::span<const engine::Prism> bodies, Sense inside, const Stretch& stretch);

}  // namespace model
