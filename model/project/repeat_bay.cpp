// The edit that repeats a bay along an axis: its planes, its bars (repeat_bars), bays, panels,
// loads.
#include "model/project/check_thing.h"
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

template <class Things>
std::string free_in(const Things& things, const std::string& wanted) {
    return free_name(wanted, [&](const std::string& name) {
        return std::any_of(things.begin(), things.end(),
                           [&](const auto& thing) { return thing.name == name; });
    });
}

// Starters call bays "column 2 level 1": along x the column counts, along z the level.
std::string name_of_copy(const std::vector<Bay>& bays, const std::string& name, Axis axis) {
    const std::string word = axis == Axis::x ? "column " : axis == Axis::z ? "level " : "";
    const std::size_t at = word.empty() ? name.npos : name.find(word);
    if (at == name.npos || (at > 0 && name[at - 1] != ' ')) return free_in(bays, name);
    const std::size_t begin = at + word.size();
    const std::size_t end = std::min(name.find(' ', begin), name.size());
    const auto counted = numbered(name.substr(0, end));
    if (!counted) return free_in(bays, name);
    for (int n = counted->number + 1;; ++n) {
        const std::string next = with_number(counted->stem, n) + name.substr(end);
        if (std::ranges::count(bays, next, &Bay::name) == 0) return next;
    }
}

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
        for (int copy = 1; copy <= edit_.times; ++copy) add_end(copy);
        let_next_begin_behind();
        const PlanePlaces places(project_, frame_);
        auto repeated = repeat_bars(frame_, it_, places, [&](const Plane& plane, int copy) {
            return shifted(plane.position, copy);
        });
        if (!repeated) return repeated;
        for (int copy = 1; copy <= edit_.times; ++copy) add_bay(copy);
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
        has_own_pitch_ = engine::names_in(pitch_).empty();
        if (has_own_pitch_) pitch_ = add_pitch_dimension();
        return Done{};
    }

    std::string add_pitch_dimension() {
        const std::string wanted = it_.bay.name + " pitch";
        const std::string name =
            free_in(project_.dimensions, engine::is_name(wanted) ? wanted : "pitch");
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
        if (const auto there = plane_there(position, it_.end(copy))) {
            it_.ends.push_back(*there);
            return;
        }
        Plane plane{free_in(frame_.planes, it_.ends.front()), it_.axis, position};
        it_.ends.push_back(plane.name);
        frame_.planes.push_back(std::move(plane));
    }

    // One that another bay beside this one has brought already, rather than two in one place.
    std::optional<std::string> plane_there(const Formula& position, Nm place) const {
        for (const Plane& plane : frame_.planes) {
            if (plane.axis == it_.axis && plane.position == position) return plane.name;
        }
        return places_.plane_at(it_.axis, place);
    }

    void let_next_begin_behind() {
        if (next_.empty()) return;
        planes_of(*find_named(frame_.bays, next_), it_.axis)[0] = it_.ends.back();
        it_.gives_way = true;
    }

    void add_bay(int copy) {
        Bay bay = it_.bay;
        const auto end = static_cast<std::size_t>(copy);
        bay.name = name_of_copy(frame_.bays, bay.name, it_.axis);
        planes_of(bay, it_.axis) = {it_.ends[end - 1], it_.ends[end]};
        if (edit_.with_panels) add_panels(bay.name);
        if (edit_.with_loads) add_loads(bay.name);
        frame_.bays.push_back(std::move(bay));
    }

    void add_panels(const std::string& bay) {
        std::vector<Panel> added;
        for (const Panel& panel : frame_.panels) {
            const bool is_where_it_begins =
                panel.face_axis == it_.axis && panel.face_side == Sense::minus;
            if (panel.bay == it_.bay.name && !is_where_it_begins) added.push_back(panel);
        }
        for (Panel& panel : added) {
            panel.bay = bay;
            panel.name = free_in(frame_.panels, panel.name);
            frame_.panels.push_back(std::move(panel));
        }
    }

    void add_loads(const std::string& bay) {
        std::vector<Load> added;
        for (const Load& load : frame_.loads) {
            const auto* in = std::get_if<std::string>(&load.where);
            if (in != nullptr && *in == it_.bay.name) added.push_back(load);
        }
        for (Load& load : added) {
            load.where = bay;
            load.name = free_in(frame_.loads, load.name);
            frame_.loads.push_back(std::move(load));
        }
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
