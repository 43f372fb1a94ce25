// The edit that copies a frame, as it is or of the opposite hand.
#include "model/project/change.h"
#include "model/project/in_frame.h"
#include "model/project/mirror.h"
#include "model/project/opposite.h"
#include "model/project/own_dimensions.h"
#include "model/project/position_sum.h"

#include <utility>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;
using engine::Result;

constexpr Axis across_sides = Axis::x;

std::string renamed(const std::string& name) { return opposite_name(name, across_sides); }

// The planes between which all others across the axis lie.
struct Sides {
    Formula least;
    Formula most;
};

Result<Sides> sides_of(const Frame& frame, const PlanePlaces& places) {
    Sides sides{"0", "0"};
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
        Mirror mirror{.axis = across_sides, .opposite = {}};
        for (Plane& plane : frame.planes) {
            mirror.opposite.emplace(plane.name, renamed(plane.name));
            plane.name = renamed(plane.name);
            if (plane.axis == across_sides) plane.position = opposite(plane.position, *sides);
        }
        put_bars(frame, mirror);
        put_bays(frame, mirror, *sides);
        for (MeasuredOpening& opening : frame.openings) turn_over(opening);
        return frame;
    }

private:
    Formula opposite(const Formula& position, const Sides& sides) const {
        return PositionSum(project_.shown)
            .add(sides.least)
            .add(sides.most)
            .add(position, -1)
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

    void put_bays(Frame& frame, const Mirror& mirror, const Sides& sides) const {
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

Changed change(Project& project, const CopyFrame& edit) {
    const auto original = find_named(project.frames, edit.frame);
    if (original == project.frames.end()) return no_such<Frame>("", edit.frame);
    if (find_named(project.frames, edit.copy) != project.frames.end()) {
        return already_there("frame " + edit.copy);
    }
    Frame copy = *original;
    if (edit.is_mirrored) {
        auto mirrored = OppositeHand(project, *original).frame();
        if (!mirrored) return mirrored.error();
        copy = *std::move(mirrored);
    }
    copy.name = edit.copy;
    copy.origin = edit.origin;
    if (auto sound = check_thing(copy, described(copy)); !sound) return sound;
    if (edit.has_own_dimensions) give_own_dimensions(project, copy, edit.frame);
    project.frames.push_back(std::move(copy));
    return Done{};
}

}  // namespace model
