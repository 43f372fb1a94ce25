// Where the planes of one frame are at present, and how far its bars reach between them.
#pragma once

#include "model/project/step_over_layout.h"

#include <array>
#include <map>
#include <optional>
#include <string>

namespace model {

class PlanePlaces {
public:
    PlanePlaces(const Project& project, const Frame& frame);

    // Error: there is no such plane, it lies across another axis, its formula has no value. `where`
    // names what wants to know.
    engine::Result<Nm> at(const std::string& plane, Axis axis, const std::string& where) const;

    std::optional<Nm> known(const std::string& plane, Axis axis) const;
    std::optional<Axis> axis_of(const std::string& plane) const;

    // The first plane across the axis at that place.
    std::optional<std::string> plane_at(Axis axis, Nm place) const;

    engine::Result<Nm> length(const Formula& formula, const std::string& where) const {
        return values_.length(formula, where);
    }

private:
    const Plane* find_plane(const std::string& name) const;

    const Frame& frame_;  // whose planes may grow in number meanwhile, but not move
    DimensionValues values_;
    mutable std::map<std::string, engine::Result<Nm>, std::less<>> known_;
};

// From where to where along an axis; one place for what lies across it.
using Reach = std::array<Nm, 2>;

// By the planes that the bar is stated by; none where one of them has no place.
std::optional<Reach> reach(const Member& member, const PlanePlaces& places, Axis axis);
std::optional<Reach> reach(const Diagonal& diagonal, const PlanePlaces& places, Axis axis);
std::optional<Reach> reach(const Leaning& leaning, const PlanePlaces& places, Axis axis);

// Of the member, diagonal or leaning member of that name.
std::optional<Reach> reach_of_bar(const Frame& frame,
                                  const std::string& bar,
                                  const PlanePlaces& places,
                                  Axis axis);

}  // namespace model
