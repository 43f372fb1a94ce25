#include "model/project/plane_places.h"

#include "model/project/named_list.h"

#include <algorithm>

namespace model {

namespace {

using engine::Error;
using engine::ErrorCode;

std::optional<Reach> between(const PlanePlaces& places,
                             Axis axis,
                             const std::string& from,
                             const std::string& to) {
    const auto begin = places.known(from, axis);
    const auto end = places.known(to, axis);
    if (!begin || !end) return std::nullopt;
    return Reach{std::min(*begin, *end), std::max(*begin, *end)};
}

// Of what is stated between two nodes of a face.
template <class Bar>
std::optional<Reach> reach_between_nodes(const Bar& bar, const PlanePlaces& places, Axis axis) {
    const auto face = places.axis_of(bar.face);
    if (!face) return std::nullopt;
    if (*face == axis) return between(places, axis, bar.face, bar.face);
    const std::size_t i = across(*face)[0] == axis ? 0 : 1;
    return between(places, axis, bar.from[i], bar.to[i]);
}

template <class Bars>
std::optional<Reach> reach_in(const Bars& bars,
                              const std::string& name,
                              const PlanePlaces& places,
                              Axis axis) {
    for (const auto& bar : bars) {
        if (bar.name == name) return reach(bar, places, axis);
    }
    return std::nullopt;
}

}  // namespace

PlanePlaces::PlanePlaces(const Project& project, const Frame& frame)
    : frame_{frame}, values_{project} {}

const Plane* PlanePlaces::find_plane(const std::string& name) const {
    const auto found = std::ranges::find(frame_.planes, name, &Plane::name);
    return found == frame_.planes.end() ? nullptr : &*found;
}

engine::Result<Nm> PlanePlaces::at(const std::string& name,
                                   Axis axis,
                                   const std::string& where) const {
    const Plane* plane = find_plane(name);
    if (plane == nullptr) return no_such<Plane>(where, name);
    if (plane->axis != axis) {
        const std::string letter(1, "xyz"[index_of(axis)]);
        return Error{
            ErrorCode::invalid_value, where,
            "the plane \"" + name + "\" does not lie across " + letter + "; choose one that does"};
    }
    const auto known = known_.find(name);
    if (known != known_.end()) return known->second;
    auto length = values_.length(plane->position, inside(described(frame_), described(*plane)));
    return known_.emplace(name, std::move(length)).first->second;
}

std::optional<Nm> PlanePlaces::known(const std::string& plane, Axis axis) const {
    const auto place = at(plane, axis, {});
    return place ? std::optional(*place) : std::nullopt;
}

std::optional<Axis> PlanePlaces::axis_of(const std::string& name) const {
    const Plane* plane = find_plane(name);
    return plane == nullptr ? std::nullopt : std::optional(plane->axis);
}

std::optional<std::string> PlanePlaces::plane_at(Axis axis, Nm place) const {
    for (const Plane& plane : frame_.planes) {
        if (plane.axis == axis && known(plane.name, axis) == place) return plane.name;
    }
    return std::nullopt;
}

std::optional<Reach> reach(const Member& member, const PlanePlaces& places, Axis axis) {
    if (member.run == axis) return between(places, axis, member.from, member.to);
    const std::string& on = member.on[across(member.run)[0] == axis ? 0 : 1];
    return between(places, axis, on, on);
}

std::optional<Reach> reach(const Diagonal& diagonal, const PlanePlaces& places, Axis axis) {
    return reach_between_nodes(diagonal, places, axis);
}

std::optional<Reach> reach(const Leaning& leaning, const PlanePlaces& places, Axis axis) {
    return reach_between_nodes(leaning, places, axis);
}

std::optional<Reach> reach_of_bar(const Frame& frame,
                                  const std::string& bar,
                                  const PlanePlaces& places,
                                  Axis axis) {
    if (const auto found = reach_in(frame.members, bar, places, axis)) return found;
    if (const auto found = reach_in(frame.diagonals, bar, places, axis)) return found;
    return reach_in(frame.leaning, bar, places, axis);
}

}  // namespace model
