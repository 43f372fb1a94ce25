// Edits of frames, their planes and their bays.
#include "engine/files/json_text.h"
#include "model/project/change.h"
#include "model/project/check_thing.h"
#include "model/project/follow_room.h"
#include "model/project/in_frame.h"

#include <set>

namespace model {

namespace {

using engine::Done;

// A joint is known by the names of two members, so a diagonal may not be called as a member is, nor
// a leaning member as either. The thing in words that shares its name; empty: none does.
std::string sharer_of_name(const Frame& frame) {
    std::set<std::string_view> taken;
    for (const Member& member : frame.members) taken.insert(member.name);
    for (const Diagonal& diagonal : frame.diagonals) {
        if (taken.contains(diagonal.name)) return described(diagonal);
    }
    for (const Diagonal& diagonal : frame.diagonals) taken.insert(diagonal.name);
    for (const Leaning& leaning : frame.leaning) {
        if (taken.contains(leaning.name)) return described(leaning);
    }
    return {};
}

bool refers_to_name(const Formula& formula, const std::string& name) {
    const auto names = engine::names_in(formula);
    return std::find(names.begin(), names.end(), name) != names.end();
}

// Whether a formula outside of the frame's planes refers to the dimension, once the frame is at
// that place; what the place says along `room_axis` apart.
bool is_needed_elsewhere(const Project& project,
                         const Frame& frame,
                         const std::string& dimension,
                         std::size_t room_axis,
                         const Place& place) {
    Project rest = project;
    Frame& same = *find_named(rest.frames, frame.name);
    same.planes.clear();
    same.origin = place;
    same.origin[room_axis] = "0";
    bool is_needed = false;
    walk_texts(rest, [&](const Meaning& meaning, const std::string& text, const Trail&) {
        if (meaning.role != Role::formula) return;
        is_needed = is_needed || refers_to_name(text, dimension);
    });
    return is_needed;
}

bool is_in_planes(const Frame& frame, const std::string& dimension) {
    return std::any_of(frame.planes.begin(), frame.planes.end(), [&](const Plane& plane) {
        return refers_to_name(plane.position, dimension);
    });
}

// A dimension that says where the frame stands, and nothing else, says where it is put. Planes that
// are measured from the room, as those of a step over an obstacle, stand on it too: they must go on
// doing so when the frame is put elsewhere.
Formula placed_by_name(Project& project, Frame& frame, std::size_t room_axis, const Place& place) {
    const Formula& now = place[room_axis];
    const Formula old = frame.origin[room_axis];
    const std::size_t axis =
        room_axis < 2 && frame.quarter_turns % 2 != 0 ? 1 - room_axis : room_axis;
    const auto stands_on_it = [&](const Plane& plane) {
        return index_of(plane.axis) == axis && refers_to_name(plane.position, old);
    };
    const bool is_measured_from_room =
        std::any_of(frame.planes.begin(), frame.planes.end(), stands_on_it);
    const auto dimension = find_named(project.dimensions, old);
    if (now == old || dimension == project.dimensions.end() || refers_to_name(now, old)) return now;
    if (!is_measured_from_room) {
        const bool is_value = is_plain(now) && is_plain(dimension->formula);
        if (!is_value || is_in_planes(frame, old)) return now;
        if (is_needed_elsewhere(project, frame, old, room_axis, place)) return now;
        dimension->formula = now;
        return old;
    }
    std::string name = old;
    if (engine::is_name(now)) {
        name = now;
    } else if (is_plain(dimension->formula) &&
               !is_needed_elsewhere(project, frame, old, room_axis, place)) {
        dimension->formula = now;
    } else {
        Dimension own = *dimension;
        own.formula = now;
        for (int n = 2; find_named(project.dimensions, own.name) != project.dimensions.end(); ++n) {
            own.name = old + " " + std::to_string(n);
        }
        name = own.name;
        project.dimensions.push_back(std::move(own));
    }
    for (Plane& plane : frame.planes) {
        if (!stands_on_it(plane)) continue;
        plane.position = engine::with_name_replaced(plane.position, old, name);
    }
    return name;
}

// A plane that is measured along the room's X would be measured along its Y, or the other way.
Changed check_turn(const Project& project, const Frame& frame, int turns) {
    if (turns == frame.quarter_turns) return Done{};
    const auto planes = planes_measured_from_room(project, frame);
    if (planes.empty()) return Done{};
    return engine::Error{engine::ErrorCode::invalid_value,
                         inside(described(frame), "plane " + planes.front()),
                         "it stands at an obstacle as the frame is turned now, and another side of "
                         "the frame would come to be there; take the step back and turn the frame "
                         "before it is stepped over, or give the plane a place that does not "
                         "refer to the obstacle"};
}

std::string in_words(const std::string& frame) { return "frame " + frame; }

}  // namespace

Changed change(Project& project, const PutFrame& edit) {
    const std::string& old_name = edit.instead_of.empty() ? edit.frame.name : edit.instead_of;
    const auto replaced = find_named(project.frames, old_name);
    const std::string where = described(edit.frame);
    const auto known = replaced == project.frames.end()
                           ? std::vector<Reference>{}
                           : missing_references(project, &*replaced, *replaced);
    if (auto sound =
            check_missing(missing_references(project, &edit.frame, edit.frame), known, where);
        !sound) {
        return sound;
    }
    if (const auto shared = sharer_of_name(edit.frame); !shared.empty()) {
        return already_there(inside(where, shared));
    }
    return put_named(project.frames, edit.frame, edit.instead_of, "");
}

Changed change(Project& project, const PlaceFrame& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        for (const Formula& formula : edit.origin) {
            auto readable = check_formula(formula, engine::QuantityKind::length,
                                          inside(described(frame), "origin"));
            if (!readable) return readable;
        }
        const int turns = (edit.quarter_turns % 4 + 4) % 4;
        if (auto can_turn = check_turn(project, frame, turns); !can_turn) return can_turn;
        Place next = edit.origin;  // one dimension may have said more than one coordinate
        for (std::size_t k = 0; k < 3; ++k) next[k] = placed_by_name(project, frame, k, next);
        frame.origin = next;
        frame.quarter_turns = turns;
        return Done{};
    });
}

Changed change(Project& project, const SetFrameRecipe& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        if (!engine::is_utf8(edit.recipe)) {
            return engine::Error{engine::ErrorCode::invalid_text, "recipe",
                                 "not readable as UTF-8 text"};
        }
        frame.recipe = edit.recipe;
        return Done{};
    });
}

Changed change(Project& project, const RemoveFrame& edit) {
    return remove_named(project.frames, edit.frame, "");
}

Changed change(Project& project, const PutPlane& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        auto put = put_named(frame.planes, edit.plane, edit.instead_of, in_words(edit.frame));
        if (put && is_rename(edit.instead_of, edit.plane.name)) {
            rename_references(frame, {Target::plane, edit.instead_of}, edit.plane.name);
        }
        return put;
    });
}

Changed change(Project& project, const SetPlanePosition& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const std::string where = in_words(edit.frame);
        const auto plane = find_named(frame.planes, edit.plane);
        if (plane == frame.planes.end()) return no_such<Plane>(where, edit.plane);
        auto readable = check_formula(edit.position, engine::QuantityKind::length,
                                      inside(where, described(*plane)));
        if (readable) plane->position = edit.position;
        return readable;
    });
}

Changed change(Project& project, const RemovePlane& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        if (auto unused = check_unused(frame, {Target::plane, edit.plane}); !unused) return unused;
        return remove_named(frame.planes, edit.plane, in_words(edit.frame));
    });
}

Changed change(Project& project, const PutBay& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        auto put = put_in_frame(project, frame, frame.bays, edit.bay, edit.instead_of);
        if (put && is_rename(edit.instead_of, edit.bay.name)) {
            rename_references(frame, {Target::bay, edit.instead_of}, edit.bay.name);
        }
        return put;
    });
}

Changed change(Project& project, const RemoveBay& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        if (auto unused = check_unused(frame, {Target::bay, edit.bay}); !unused) return unused;
        return remove_named(frame.bays, edit.bay, in_words(edit.frame));
    });
}

}  // namespace model
