#include "model/project/mirror_planes.h"

#include "model/project/free_name.h"
#include "model/project/named_list.h"
#include "model/project/opposite.h"
#include "model/project/position_sum.h"

#include <optional>

namespace model {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

Error MirrorPlanes::refused(const std::string& why) const {
    return {ErrorCode::invalid_value, described(frame_), why};
}

Changed MirrorPlanes::find_sides() {
    sides_ = edit_.between;
    if (sides_[0].empty() || sides_[1].empty()) take_outermost();
    if (sides_[0].empty() || (edit_.between != sides_ && sides_[0] == sides_[1])) {
        return refused(std::string("it has no two planes across ") + "xyz"[index_of(edit_.axis)] +
                       " between which it could be mirrored; add one first");
    }
    std::array<Nm, 2> at{};
    for (std::size_t k = 0; k < 2; ++k) {
        const auto place = places_.at(sides_[k], edit_.axis, described(frame_));
        if (!place) return place.error();
        at[k] = *place;
    }
    if (at[0] == at[1]) {
        return refused("both planes lie at one place; choose two that lie apart");
    }
    sum_ = at[0] + at[1];
    return Done{};
}

void MirrorPlanes::take_outermost() {
    std::optional<Nm> least;
    std::optional<Nm> most;
    for (const Plane& plane : frame_.planes) {
        const auto at = places_.known(plane.name, edit_.axis);
        if (!at) continue;
        if (!least || *at < *least) {
            least = at;
            sides_[0] = plane.name;
        }
        if (!most || *at > *most) {
            most = at;
            sides_[1] = plane.name;
        }
    }
}

Changed MirrorPlanes::find_opposite(const std::string& name, const std::string& bar) {
    const auto found = find_named(frame_.planes, name);
    const std::string where = inside(described(frame_), bar);
    if (found == frame_.planes.end()) return no_such<Plane>(where, name);
    if (found->axis != edit_.axis || mirror_.opposite.contains(name)) return Done{};
    const auto at = places_.at(name, edit_.axis, where);
    if (!at) return at.error();
    if (const auto there = places_.plane_at(edit_.axis, sum_ - *at)) {
        mirror_.opposite.emplace(name, sum_ - *at == *at ? name : *there);
    } else {
        mirror_.opposite.emplace(name, add_plane(*found));
    }
    return Done{};
}

std::string MirrorPlanes::add_plane(const Plane& plane) {
    const auto is_taken = [&](const std::string& name) {
        return find_named(frame_.planes, name) != frame_.planes.end();
    };
    PositionSum position(project_.shown);
    for (const std::string& side : sides_) {
        position.add(find_named(frame_.planes, side)->position);
    }
    position.add(plane.position, -1);
    Plane image{free_name(opposite_name(plane.name, edit_.axis), is_taken), edit_.axis,
                position.formula()};
    frame_.planes.push_back(image);
    return image.name;
}

}  // namespace model
