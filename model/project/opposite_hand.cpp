#include "model/project/opposite_hand.h"

#include "model/project/follow_room.h"
#include "model/project/free_name.h"
#include "model/project/mirror.h"
#include "model/project/named_list.h"
#include "model/project/opposite.h"
#include "model/project/plane_places.h"
#include "model/project/position_sum.h"

#include <map>
#include <optional>
#include <set>
#include <utility>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;
using engine::Result;

constexpr Axis across_sides = axis_of_hand;

std::string renamed(const std::string& name) { return opposite_name(name, across_sides); }

// The planes between which all others across the axis lie.
struct OuterSides {
    Formula least;
    Formula most;
};

Result<OuterSides> sides_of(const Frame& frame, const PlanePlaces& places) {
    OuterSides sides{"0", "0"};
    std::optional<Nm> least;
    std::optional<Nm> most;
    for (const Plane& plane : frame.planes) {
        if (plane.axis != across_sides) continue;
        const auto at = places.at(plane.name, across_sides, described(frame));
        if (!at) return at.error();
        if (!least || *at < *least) {
            least = *at;
            sides.least = plane.position;
        }
        if (!most || *at > *most) {
            most = *at;
            sides.most = plane.position;
        }
    }
    return sides;
}

class OppositeHand {
public:
    OppositeHand(const Project& project, const Frame& before)
        : project_{project}, before_{before}, places_{project, before} {}

    Result<Frame> frame() const {
        const auto sides = sides_of(before_, places_);
        if (!sides) return sides.error();
        if (auto can_be = check_cut_outs(); !can_be) return can_be.error();
        Frame frame = before_;
        const Mirror mirror{.axis = across_sides, .opposite = plane_names()};
        for (Plane& plane : frame.planes) {
            plane.name = mirror.plane(plane.name);
            if (plane.axis == across_sides) plane.position = opposite(plane.position, *sides);
        }
        put_bars(frame, mirror);
        put_bays(frame, mirror, *sides);
        for (MeasuredOpening& opening : frame.openings) turn_over(opening);
        return frame;
    }

private:
    // That of which the plane is one of a step; empty: of none.
    std::string obstacle_of(const Plane& plane) const {
        std::string found;
        for (const Obstacle& it : project_.room) {
            const bool is_longer = it.name.size() > found.size();
            if (is_longer && is_of_step_over(plane.name, it.name)) found = it.name;
        }
        return found;
    }

    // Planes of a step go on to be measured from their obstacle and are known by its name: only the
    // side on which they lie is another one.
    std::map<std::string, std::string, std::less<>> plane_names() const {
        std::map<std::string, std::string, std::less<>> names;
        std::set<std::string> taken;
        for (const bool of_steps : {true, false}) {
            for (const Plane& plane : before_.planes) {
                const std::string obstacle = obstacle_of(plane);
                if (obstacle.empty() == of_steps) continue;
                const std::string wanted = obstacle + renamed(plane.name.substr(obstacle.size()));
                const auto name = free_name(
                    wanted, [&](const std::string& other) { return taken.contains(other); });
                taken.insert(name);
                names.emplace(plane.name, name);
            }
        }
        return names;
    }

    // Term by term, so that each goes on to be found by what it is measured from.
    Formula opposite(const Formula& position, const OuterSides& sides) const {
        return PositionSum(project_.shown)
            .add_terms_of(sides.least)
            .add_terms_of(sides.most)
            .add_terms_of(position, -1)
            .formula();
    }

    // They are measured from a corner of the sheet, whose size follows from what lies round it.
    Changed check_cut_outs() const {
        for (const Panel& panel : before_.panels) {
            if (panel.cut_outs.empty() || panel.face_axis == across_sides) continue;
            return Error{ErrorCode::invalid_value, inside(described(before_), described(panel)),
                         "its cut-outs are measured from its left edge, which would be its right "
                         "one; take them out first and put them in again afterwards"};
        }
        return Done{};
    }

    void put_bars(Frame& frame, const Mirror& mirror) const {
        for (Member& member : frame.members) member = mirrored(member, mirror);
        for (Diagonal& diagonal : frame.diagonals) diagonal = mirrored(diagonal, mirror);
        for (Leaning& leaning : frame.leaning) leaning = mirrored(leaning, mirror, places_);
        for (Member& member : frame.members) member.name = renamed(member.name);
        for (Diagonal& diagonal : frame.diagonals) diagonal.name = renamed(diagonal.name);
        for (Leaning& leaning : frame.leaning) leaning.name = renamed(leaning.name);
        for (JointOverride& joint : frame.joints) {
            for (std::string& member : joint.members) member = renamed(member);
        }
    }

    void put_bays(Frame& frame, const Mirror& mirror, const OuterSides& sides) const {
        for (Bay& bay : frame.bays) {
            bay = mirrored(bay, mirror);
            bay.name = renamed(bay.name);
        }
        for (Panel& panel : frame.panels) {
            panel.name = renamed(panel.name);
            panel.bay = renamed(panel.bay);
            if (panel.face_axis == across_sides) panel.face_side = model::opposite(panel.face_side);
        }
        for (Load& load : frame.loads) {
            load.name = renamed(load.name);
            if (auto* bay = std::get_if<std::string>(&load.where)) *bay = renamed(*bay);
            if (auto* at = std::get_if<Place>(&load.where)) (*at)[0] = opposite((*at)[0], sides);
        }
    }

    // What was measured on the left is then on the right.
    static void turn_over(MeasuredOpening& opening) {
        opening.name = renamed(opening.name);
        if (opening.through == across_sides) return;
        std::swap(opening.diagonals[0], opening.diagonals[1]);
        std::swap(opening.plumb[0], opening.plumb[1]);
    }

    const Project& project_;
    const Frame& before_;
    PlanePlaces places_;
};

}  // namespace

engine::Result<Frame> frame_of_opposite_hand(const Project& project, const Frame& frame) {
    return OppositeHand(project, frame).frame();
}

}  // namespace model
