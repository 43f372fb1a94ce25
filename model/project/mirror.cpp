#include "model/project/mirror.h"

#include "model/project/frame_bars.h"
#include "model/project/opposite.h"

#include <utility>

namespace model {

namespace {

template <class Bar>
Bar with_nodes_mirrored(Bar bar, const Mirror& mirror) {
    bar.face = mirror.plane(bar.face);
    for (std::size_t i = 0; i < 2; ++i) {
        bar.from[i] = mirror.plane(bar.from[i]);
        bar.to[i] = mirror.plane(bar.to[i]);
    }
    return bar;
}

Nm length_of(const std::optional<Reach>& reach) { return reach ? (*reach)[1] - (*reach)[0] : 0; }

// Along which of the face's axes a leaning member's leg points: the one that it runs less along;
// of two alike the second, as resolve has it.
Axis axis_of_leg(const Leaning& leaning, const PlanePlaces& places, Axis face) {
    const auto [u, v] = across(face);
    const Nm along_u = length_of(reach(leaning, places, u));
    const Nm along_v = length_of(reach(leaning, places, v));
    return along_v <= along_u ? v : u;
}

}  // namespace

Member mirrored(const Member& member, const Mirror& mirror) {
    Member image = member;
    for (std::string* plane : {&image.on[0], &image.on[1], &image.from, &image.to}) {
        *plane = mirror.plane(*plane);
    }
    if (member.run == mirror.axis) {
        std::swap(image.from, image.to);
        std::swap(image.allowance_from, image.allowance_to);
        std::swap(image.foot_from, image.foot_to);
        return image;
    }
    Sense& leg = image.legs[across(member.run)[0] == mirror.axis ? 0 : 1];
    leg = opposite(leg);
    return image;
}

Diagonal mirrored(const Diagonal& diagonal, const Mirror& mirror) {
    return with_nodes_mirrored(diagonal, mirror);
}

Leaning mirrored(const Leaning& leaning, const Mirror& mirror, const PlanePlaces& places) {
    Leaning image = with_nodes_mirrored(leaning, mirror);
    const auto face = places.axis_of(leaning.face);
    if (face && *face != mirror.axis && axis_of_leg(leaning, places, *face) == mirror.axis) {
        image.leg = opposite(leaning.leg);
    }
    return image;
}

Bay mirrored(const Bay& bay, const Mirror& mirror) {
    Bay image = bay;
    for (auto* pair : {&image.x, &image.y, &image.z}) {
        for (std::string& plane : *pair) plane = mirror.plane(plane);
    }
    auto& sides = planes_of(image, mirror.axis);
    std::swap(sides[0], sides[1]);
    return image;
}

}  // namespace model
