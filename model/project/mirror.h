// The mirror images, across one axis of a frame, of what stands on its planes.
#pragma once

#include "model/project/plane_places.h"
#include "model/project/project.h"

#include <map>
#include <string>

namespace model {

struct Mirror {
    Axis axis = Axis::x;
    // The planes that stand for others in the image: across the axis the one that lies opposite,
    // across another one the same by another name. One that is not named is its own image.
    std::map<std::string, std::string, std::less<>> opposite;

    const std::string& plane(const std::string& name) const {
        const auto found = opposite.find(name);
        return found == opposite.end() ? name : found->second;
    }
};

// Names and notes stay.
Member mirrored(const Member& member, const Mirror& mirror);
Diagonal mirrored(const Diagonal& diagonal, const Mirror& mirror);
// `places`: of the planes that it stands on, before.
Leaning mirrored(const Leaning& leaning, const Mirror& mirror, const PlanePlaces& places);
Bay mirrored(const Bay& bay, const Mirror& mirror);

}  // namespace model
