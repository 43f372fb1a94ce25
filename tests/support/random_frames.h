// Random frames of one shape each, for random_project.
#pragma once

#include "model/project/project.h"

#include "tests/support/dice.h"
#include "tests/support/frame_builder.h"

#include <string>
#include <vector>

namespace tests {

// What the members of one role in a frame are made of.
struct Role {
    std::string stock;
    bool turned = false;
};

struct Roles {
    Role posts;
    Role x_rails;
    Role y_rails;
    Role dividers;
    Role mid_rails;
};

// The lengths a project is laid out in: multiples of a step.
struct Ruler {
    Nm step = inches_64(1);

    Nm draw(Dice& dice, Nm least, Nm most) const {
        return dice.between(least / step, most / step) * step;
    }
    // `count` rising positions inside (least, most), at least `apart` from one another and the
    // ends; fewer where there is no room.
    std::vector<Nm> positions(Dice& dice, std::uint32_t count, Nm least, Nm most, Nm apart) const;
};

model::Frame random_box(Dice& dice, std::string name, const Roles& roles, const Ruler& ruler);

// A profile with one or two re-entrant corners, swept along the other level axis. Re-entrant edges
// are seated root on the line.
model::Frame random_step(Dice& dice, std::string name, const Roles& roles, const Ruler& ruler);

// Members on random planes, from anywhere to anywhere.
model::Frame random_tangle(Dice& dice,
                           std::string name,
                           const std::vector<std::string>& stocks,
                           const Ruler& ruler);

}  // namespace tests
