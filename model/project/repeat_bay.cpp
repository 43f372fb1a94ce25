// The edit that repeats a bay along an axis: its planes, its bars (repeat_bars), bays, panels,
// loads.
#include "model/project/check_thing.h"
#include "model/project/copy_bay.h"
#include "model/project/copy_planes.h"
#include "model/project/follow_room.h"
#include "model/project/free_name.h"
#include "model/project/in_frame.h"
#include "model/project/position_sum.h"
#include "model/project/repeat_bars.h"

#include <algorithm>
#include <utility>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

constexpr int most_times = 100;

class RepeatingBay {
public:
    RepeatingBay(Project& project, Frame& frame, const RepeatBay& edit, Bay bay)
        : project_{project},
          frame_{frame},
          edit_{edit},
          places_{project, frame},
          where_{inside(described(frame), described(bay))} {
        it_.axis = edit.axis;
        it_.bay = std::move(bay);
    }

    Changed repeat() {
        if (auto found = find_box(); !found) return found;
        if (auto found = find_pitch(); !found) return found;
        it_.ends = {planes_of(it_.bay, it_.axis)[1]};
        if (auto ready = make_room(); !ready) return ready;
        if (auto sound = check_edges(); !sound) return sound;
        for (int copy = 1; copy <= edit_.times; ++copy) add_end(copy);
        let_next_begin_behind();
        const PlanePlaces places(project_, frame_);
        auto repeated = repeat_bars(frame_, it_, places, [&](const Plane& plane, int copy) {
            return shifted(plane.position, copy);
        });
        if (!repeated) return repeated;
        copy_bay(frame_, it_, edit_);
        remove_unused_pitch();
        return Done{};
    }

private:
    Error refused(const std::string& why) const { return {ErrorCode::invalid_value, where_, why}; }

    Changed find_box() {
        if (edit_.times < 1 || edit_.times > most_times) {
            return Error{ErrorCode::out_of_range, where_,
                         "it can come again once to " + std::to_string(most_times) + " times"};
        }
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
            Reach& reach = it_.box[index_of(axis)];
            for (std::size_t side = 0; side < 2; ++side) {
                const auto at = places_.at(planes_of(it_.bay, axis)[side], axis, where_);
                if (!at) return at.error();
                reach[side] = *at;
            }
            if (reach[0] >= reach[1]) {
                return refused("nothing is left of it between its planes; move them apart first");
            }
        }
        return Done{};
    }

    Changed find_pitch() {
        const Reach& along = it_.box[index_of(it_.axis)];
        it_.pitch = along[1] - along[0];
        if (edit_.pitch.empty()) return Done{};
        const std::string at = inside(where_, "pitch");
        auto sound = check_formula(edit_.pitch, engine::QuantityKind::length, at);
        if (!sound) return sound;
        const auto length = places_.length(edit_.pitch, at);
        if (!length) return length.error();
        if (*length <= 0) return Error{ErrorCode::out_of_range, at, "it must be more than 0"};
        it_.pitch = *length;
        pitch_ = edit_.pitch;
        if (is_plain(pitch_)) name_pitch();
        return Done{};
    }

    // That of a bay beside, repeated before: what stands on it becomes one with what is to come.
    void name_pitch() {
        for (const Dimension& dimension : project_.dimensions) {
            if (!is_plain(dimension.formula)) continue;
            const auto length = places_.length(dimension.formula, {});
            pitch_ = dimension.name;
            const Formula end = shifted(position_of(1), 1);
            if (!length || *length != it_.pitch) continue;
            if (std::ranges::count(frame_.planes, end, &Plane::position) > 0) return;
        }
        has_own_pitch_ = true;
        pitch_ = add_pitch_dimension();
    }

    std::string add_pitch_dimension() {
        const std::string wanted = it_.bay.name + " pitch";
        const std::string name =
            free_name_in(project_.dimensions, engine::is_name(wanted) ? wanted : "pitch");
        project_.dimensions.push_back(
            {.name = name, .formula = edit_.pitch, .note = "from one bay to the next"});
        return name;
    }

    // Where all planes were there already.
    void remove_unused_pitch() {
        const auto stands_on_it = [&](const Plane& plane) {
            const auto names = engine::names_in(plane.position);
            return std::ranges::count(names, pitch_) > 0;
        };
        if (!has_own_pitch_ || std::ranges::any_of(frame_.planes, stands_on_it)) return;
        std::erase_if(project_.dimensions, [&](const Dimension& it) { return it.name == pitch_; });
    }

    // A bay that begins where this one ends, as wide and as high, gives way; another one does not.
    Changed make_room() {
        const std::size_t run = index_of(it_.axis);
        ReachBox room = it_.box;
        room[run] = {it_.box[run][1], it_.end(edit_.times)};
        for (const Bay& other : frame_.bays) {
            const auto box = box_of(other, places_);
            if (!box || other.name == it_.bay.name || !lies_beside(*box, room)) continue;
            ReachBox beside = *box;
            beside[run] = it_.box[run];
            const bool is_next = (*box)[run][0] == room[run][0] && beside == it_.box;
            if (is_next && (*box)[run][1] > room[run][1]) {
                next_ = other.name;
                continue;
            }
            return refused("the bay \"" + other.name +
                           "\" is in the way; repeat it less often or at a smaller pitch, or take "
                           "that bay out first");
        }
        return Done{};
    }

    // A re-entrant edge of the bay that ends it, or ends with it, belongs to the bay over it, too,
    // which does not come again.
    Changed check_edges() const {
        const std::size_t run = index_of(it_.axis);
        for (const Member& bar : frame_.members) {
            const auto at = box_of(bar, places_);
            if (bar.seat != Seat::root || !at || !lies_along_edge(bar, *at)) continue;
            const Nm end = it_.box[run][1];
            if ((*at)[run][1] != end) continue;
            return refused("\"" + bar.name +
                           "\" is a re-entrant edge of it, which the copies would not have; lay "
                           "them out by hand");
        }
        return Done{};
    }

    bool lies_along_edge(const Member& bar, const ReachBox& at) const {
        if (!lies_beside(at, it_.box)) return false;
        const auto sides = across(bar.run);
        return std::ranges::all_of(sides, [&](Axis axis) {
            const Reach& its = it_.box[index_of(axis)];
            const Nm line = at[index_of(axis)][0];
            return line == its[0] || line == its[1];
        });
    }

    Formula shifted(const Formula& position, int copy) const {
        PositionSum sum(project_.shown);
        sum.add(position);
        if (!pitch_.empty()) return sum.add(pitch_, copy).formula();
        return sum.add(position_of(1), copy).add(position_of(0), -copy).formula();
    }

    const Formula& position_of(std::size_t side) const {
        return find_named(frame_.planes, planes_of(it_.bay, it_.axis)[side])->position;
    }

    void add_end(int copy) {
        const Formula position = shifted(position_of(1), copy);
        if (const auto there = plane_there(frame_, it_, position, it_.end(copy), places_)) {
            it_.ends.push_back(*there);
            return;
        }
        Plane plane{free_name_in(frame_.planes, it_.ends.front()), it_.axis, position};
        it_.ends.push_back(plane.name);
        frame_.planes.push_back(std::move(plane));
    }

    void let_next_begin_behind() {
        if (next_.empty()) return;
        planes_of(*find_named(frame_.bays, next_), it_.axis)[0] = it_.ends.back();
        it_.gives_way = true;
    }

    Project& project_;
    Frame& frame_;
    const RepeatBay& edit_;
    PlanePlaces places_;
    std::string where_;
    Repeated it_;
    Formula pitch_;  // empty: as wide as the bay
    bool has_own_pitch_ = false;
    std::string next_;  // the bay that gives way
};

}  // namespace

Changed change(Project& project, const RepeatBay& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const auto bay = find_named(frame.bays, edit.bay);
        if (bay == frame.bays.end()) return no_such<Bay>(described(frame), edit.bay);
        return RepeatingBay(project, frame, edit, *bay).repeat();
    });
}

}  // namespace model
