#include "model/project/copy_planes.h"

#include "model/project/free_name.h"
#include "model/project/named_list.h"

#include <algorithm>

namespace model {

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
    auto image = places_.plane_at(repeated_.axis, at);
    if (!image) {
        image = free_name(plane, [&](const std::string& name) {
            return find_named(frame_.planes, name) != frame_.planes.end();
        });
        const Formula position = position_of_(*find_named(frame_.planes, plane), copy);
        frame_.planes.push_back({*image, repeated_.axis, position});
    }
    images_[{plane, copy}] = *image;
    return *image;
}

}  // namespace model
