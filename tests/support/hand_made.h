// One piece of every shape that a piece can have, put together by hand.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

namespace tests {

struct HandMade {
    model::Catalogue catalogue;  // with some sections rounded beyond what is shipped
    model::Project project;
    model::Resolved resolved;
};

// Bars square, sloping at either end and both, notched, leaning; plates with outlines, cut-outs and
// bevelled edges; holes in all of them. In a frame that is moved and turned by a quarter.
HandMade hand_made(const model::Catalogue& shipped);

}  // namespace tests
