// A small job resolved by hand, so that the schedules are tested alone: a rail between two posts
// (mirror images) with blind rivets, and in a second frame two flats with a shim between them, held
// by a screw with a nut and a screw in a tapped hole.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <string>

namespace tests {

struct SmallJob {
    model::Project project;
    model::Catalogue catalogue;
    model::Resolved resolved;
};

SmallJob small_job();

}  // namespace tests
