// The edit that copies a frame, as it is or of the opposite hand.
#include "engine/measure/formula.h"
#include "model/project/change.h"
#include "model/project/in_frame.h"
#include "model/project/opposite_hand.h"
#include "model/project/own_dimensions.h"
#include "model/project/plane_places.h"
#include "model/project/step_over_sides.h"

#include <algorithm>
#include <cstdlib>
#include <set>
#include <utility>

namespace model {

namespace {

// As it can stand in a sum.
Formula value_text(Nm value, engine::TapeStyle shown) {
    shown.with_unit = true;
    const Formula text = engine::exact_text(engine::Length::from_nm(std::abs(value)), shown);
    return value < 0 ? "(0 in - " + text + ")" : text;
}

// Puts the copy where it is to stand. The planes of a step are measured from the room by the
// dimension that says where the frame stands. Where the copy stands elsewhere along that axis, or
// is of the other hand, they would leave it: the dimension's present value takes its place. Along
// the others they go on to follow the room, from what says where the copy stands.
class Placing {
public:
    Placing(Project& project, Frame& copy, const CopyFrame& edit)
        : project_{project}, copy_{copy}, edit_{edit}, places_{project, copy} {}

    // The names that planes are measured from.
    std::set<std::string> put() {
        std::set<std::string> names;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto was = places_.length(copy_.origin[k], {});
            const auto is = places_.length(edit_.origin[k], {});
            Formula place = edit_.origin[k];
            if (was && is_measured_along(k)) {
                if (is && *was == *is && !is_turned_over(k)) {
                    place = named(k);
                    names.insert(place);
                    measure_from(k, place);
                } else {
                    measure_from(k, value_text(*was, project_.shown));
                }
            }
            copy_.origin[k] = place;
        }
        return names;
    }

private:
    // Of the frame, that lies along one of the room's.
    std::size_t axis(std::size_t room_axis) const {
        return room_axis < 2 && copy_.quarter_turns % 2 != 0 ? 1 - room_axis : room_axis;
    }

    bool is_turned_over(std::size_t room_axis) const {
        return edit_.is_mirrored && axis(room_axis) == index_of(axis_of_hand);
    }

    bool stands_on(const Plane& plane, std::size_t room_axis) const {
        if (index_of(plane.axis) != axis(room_axis)) return false;
        const auto names = engine::names_in(plane.position);
        return std::ranges::count(names, copy_.origin[room_axis]) > 0;
    }

    bool is_measured_along(std::size_t room_axis) const {
        return std::ranges::any_of(copy_.planes,
                                   [&](const Plane& plane) { return stands_on(plane, room_axis); });
    }

    void measure_from(std::size_t room_axis, const Formula& place) {
        for (Plane& plane : copy_.planes) {
            if (!stands_on(plane, room_axis)) continue;
            plane.position =
                engine::with_name_replaced(plane.position, copy_.origin[room_axis], place);
        }
    }

    // A dimension that says where the copy stands, where the edit names none.
    std::string named(std::size_t room_axis) {
        const Formula& place = edit_.origin[room_axis];
        if (engine::is_name(place)) return place;
        const std::string wanted = name_in_formulas(edit_.copy) + " origin " + "xyz"[room_axis];
        const std::string name = free_name_among(wanted, project_.dimensions);
        project_.dimensions.push_back(
            {.name = name, .formula = place, .note = "where the frame stands in the room"});
        return name;
    }

    Project& project_;
    Frame& copy_;
    const CopyFrame& edit_;
    const PlanePlaces places_;
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
        auto mirrored = frame_of_opposite_hand(project, *original);
        if (!mirrored) return mirrored.error();
        copy = *std::move(mirrored);
    }
    copy.name = edit.copy;
    if (auto sound = check_thing(copy, described(copy)); !sound) return sound;
    const auto places = Placing(project, copy, edit).put();
    if (edit.has_own_dimensions) give_own_dimensions(project, copy, edit.frame, places);
    const PlaceFrame place{edit.copy, copy.origin, copy.quarter_turns};
    project.frames.push_back(std::move(copy));
    return change(project, place);
}

}  // namespace model
