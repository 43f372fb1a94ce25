#include "model/project/copy_planes.h"

#include "model/project/free_name.h"
#include "model/project/named_list.h"

#include <algorithm>

namespace model {

std::optional<std::string> plane_there(const Frame& frame,
                                       const Repeated& repeated,
                                       const Formula& position,
                                       Nm place,
                                       const PlanePlaces& places) {
    const auto is_of_another_bay = [&](const Plane& plane) {
        return std::ranges::any_of(frame.bays, [&](const Bay& bay) {
            const auto& planes = planes_of(bay, plane.axis);
            return bay.name != repeated.bay.name &&
                   (planes[0] == plane.name || planes[1] == plane.name);
        });
    };
    std::optional<std::string> found;
    for (const Plane& plane : frame.planes) {
        if (plane.axis != repeated.axis) continue;
        if (plane.position == position) return plane.name;
        if (found || places.known(plane.name, plane.axis) != place) continue;
        if (is_of_another_bay(plane)) found = plane.name;
    }
    return found;
}

engine::Result<std::string> CopyPlanes::image(const std::string& plane, int copy) {
    const auto at = places_.known(plane, repeated_.axis);
    if (!at) return plane;
    const Reach& along = repeated_.box[index_of(repeated_.axis)];
    const auto& ends = repeated_.ends;
    if (*at == along[0]) return ends[static_cast<std::size_t>(copy - 1)];
    if (*at == along[1]) return ends[static_cast<std::size_t>(copy)];
    if (*at + repeated_.pitch <= along[1]) {
        return engine::Error{
            engine::ErrorCode::invalid_value, inside(described(frame_), "plane " + plane),
            "the pitch is less than from there to where the bay ends; give a larger one"};
    }
    return image_within(plane, *at + copy * repeated_.pitch, copy);
}

std::string CopyPlanes::image_within(const std::string& plane, Nm at, int copy) {
    const auto known = images_.find({plane, copy});
    if (known != images_.end()) return known->second;
    const Formula position = position_of_(*find_named(frame_.planes, plane), copy);
    auto image = plane_there(frame_, repeated_, position, at, places_);
    if (!image) {
        image = free_name_in(frame_.planes, plane);
        frame_.planes.push_back({*image, repeated_.axis, position});
    }
    images_[{plane, copy}] = *image;
    return *image;
}

}  // namespace model
