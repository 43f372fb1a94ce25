// The edit that removes a plane with what stands on it.
#include "model/project/change.h"
#include "model/project/frame_bars.h"
#include "model/project/in_frame.h"
#include "model/project/join_members.h"

#include <set>

namespace model {

namespace {

using engine::Done;

class TakingOut {
public:
    TakingOut(Frame& frame, Plane plane, const PlanePlaces& places)
        : frame_{frame}, plane_{std::move(plane)}, places_{places} {}

    void take_out() {
        join_what_meets();
        std::vector<std::string> gone = names_of_users(frame_.members);
        for (auto& name : names_of_users(frame_.diagonals)) gone.push_back(std::move(name));
        for (auto& name : names_of_users(frame_.leaning)) gone.push_back(std::move(name));
        for (const std::string& bar : gone) remove_bar(frame_, bar);
        while (has_merged_two_bays()) {
        }
        remove_bays();
        std::erase_if(frame_.planes, [&](const Plane& one) { return one.name == plane_.name; });
    }

private:
    // Members in one line, so that what passes the plane is not cut by its going.
    void join_what_meets() {
        std::vector<std::string> ending;
        std::vector<std::string> beginning;
        for (const Member& member : frame_.members) {
            if (member.run != plane_.axis) continue;
            if (member.to == plane_.name) ending.push_back(member.name);
            if (member.from == plane_.name) beginning.push_back(member.name);
        }
        for (const std::string& first : ending) {
            for (auto& second : beginning) {
                if (second.empty() || !join_members(frame_, {first, second}, places_)) continue;
                second.clear();
                break;
            }
        }
    }

    template <class Thing>
    std::vector<std::string> names_of_users(const std::vector<Thing>& things) const {
        std::vector<std::string> names;
        for (const Thing& thing : things) {
            walk_texts(thing, [&](const Meaning& meaning, const std::string& name, const Trail&) {
                const bool is_plane =
                    meaning.role == Role::reference && meaning.target == Target::plane;
                const bool is_noted = !names.empty() && names.back() == thing.name;
                if (is_plane && name == plane_.name && !is_noted) names.push_back(thing.name);
            });
        }
        return names;
    }

    bool do_meet(const Bay& first, const Bay& second) const {
        for (const Axis axis : across(plane_.axis)) {
            if (planes_of(first, axis) != planes_of(second, axis)) return false;
        }
        return planes_of(first, plane_.axis)[1] == plane_.name &&
               planes_of(second, plane_.axis)[0] == plane_.name;
    }

    bool has_merged_two_bays() {
        for (Bay& first : frame_.bays) {
            for (const Bay& second : frame_.bays) {
                if (&first == &second || !do_meet(first, second)) continue;
                merge(first, second.name);
                return true;
            }
        }
        return false;
    }

    void merge(Bay& first, const std::string& name_of_second) {
        const auto second = find_named(frame_.bays, name_of_second);
        planes_of(first, plane_.axis)[1] = planes_of(*second, plane_.axis)[1];
        merge_panels(first.name, name_of_second);
        for (Load& load : frame_.loads) {
            auto* bay = std::get_if<std::string>(&load.where);
            if (bay != nullptr && *bay == name_of_second) *bay = first.name;
        }
        frame_.bays.erase(second);
    }

    struct Face {
        Axis axis;
        Sense side;

        auto operator<=>(const Face&) const = default;
    };

    std::set<Face> panelled(const std::string& bay) const {
        std::set<Face> faces;
        for (const Panel& panel : frame_.panels) {
            if (panel.bay == bay) faces.insert({panel.face_axis, panel.face_side});
        }
        return faces;
    }

    void merge_panels(const std::string& first, const std::string& second) {
        const auto of_first = panelled(first);
        const auto of_second = panelled(second);
        std::erase_if(frame_.panels, [&](const Panel& panel) {
            const bool is_firsts = panel.bay == first;
            if (!is_firsts && panel.bay != second) return false;
            if (panel.face_axis == plane_.axis) {
                return panel.face_side == (is_firsts ? Sense::plus : Sense::minus);
            }
            const Face face{panel.face_axis, panel.face_side};
            return !is_firsts || !of_first.contains(face) || !of_second.contains(face);
        });
        for (Panel& panel : frame_.panels) {
            if (panel.bay == second) panel.bay = first;
        }
    }

    void remove_bays() {
        const auto names = names_of_users(frame_.bays);
        const std::set<std::string> gone(names.begin(), names.end());
        std::erase_if(frame_.bays, [&](const Bay& bay) { return gone.contains(bay.name); });
        std::erase_if(frame_.panels, [&](const Panel& panel) { return gone.contains(panel.bay); });
        std::erase_if(frame_.loads, [&](const Load& load) {
            const auto* bay = std::get_if<std::string>(&load.where);
            return bay != nullptr && gone.contains(*bay);
        });
    }

    Frame& frame_;
    const Plane plane_;
    const PlanePlaces& places_;
};

}  // namespace

Changed change(Project& project, const TakeOutPlane& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const auto plane = find_named(frame.planes, edit.plane);
        if (plane == frame.planes.end()) return no_such<Plane>(described(frame), edit.plane);
        const PlanePlaces places(project, frame);
        TakingOut(frame, *plane, places).take_out();
        return Done{};
    });
}

}  // namespace model
