// The edit that removes a bay with what is in it.
#include "model/project/change.h"
#include "model/project/frame_bars.h"
#include "model/project/in_frame.h"
#include "model/project/opposite.h"
#include "model/project/ranks_behind.h"

#include <algorithm>
#include <set>
#include <utility>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

std::set<std::string> used_planes(const Frame& frame) {
    std::set<std::string> used;
    walk_texts(frame, [&](const Meaning& meaning, const std::string& name, const Trail&) {
        const bool is_plane = meaning.role == Role::reference && meaning.target == Target::plane;
        if (is_plane) used.insert(name);
    });
    return used;
}

class TakingOut {
public:
    TakingOut(const Project& project, Frame& frame, const Bay& bay, const ReachBox& box)
        : frame_{frame}, bay_{bay}, box_{box}, places_{project, frame} {
        for (const Bay& other : frame.bays) {
            if (other.name == bay.name) continue;
            if (const auto around = box_of(other, places_)) others_.push_back(*around);
        }
    }

    Changed take_out_bars() {
        const Frame before = frame_;
        std::vector<std::string> gone;
        const auto note_gone = [&](const auto& bars) {
            for (const auto& bar : bars) {
                const auto at = box_of(bar, places_);
                if (at && lies_within(*at, box_) && !is_beside_another(*at)) {
                    gone.push_back(bar.name);
                }
            }
        };
        note_gone(frame_.members);
        note_gone(frame_.diagonals);
        note_gone(frame_.leaning);
        for (const std::string& bar : gone) remove_bar(frame_, bar);
        for (Member& member : frame_.members) cut_back(member);
        if (auto held = check_leaning(before); !held) return held;
        for (const auto& [axis, side] : cut_) {
            for (Member& member : frame_.members) {
                if (auto turned = turn_inward(member, axis, side); !turned) return turned;
            }
        }
        remove_parted_joints(frame_, before, places_);
        drop_spent_ranks(frame_, before, places_);
        let_lie_behind(frame_, before, places_);
        return Done{};
    }

private:
    bool is_beside_another(const ReachBox& bar) const {
        return std::any_of(others_.begin(), others_.end(),
                           [&](const ReachBox& other) { return lies_beside(bar, other); });
    }

    // A member that runs on into the bay, and ends within it, ends where the bay begins.
    void cut_back(Member& member) {
        const auto at = box_of(member, places_);
        const std::size_t run = index_of(member.run);
        if (!at || !lies_beside(*at, box_)) return;
        ReachBox inside = *at;
        inside[run] = {std::max((*at)[run][0], box_[run][0]),
                       std::min((*at)[run][1], box_[run][1])};
        if (is_beside_another(inside)) return;
        const auto& planes = planes_of(bay_, member.run);
        const bool begins_before = (*at)[run][0] < box_[run][0];
        const bool ends_behind = (*at)[run][1] > box_[run][1];
        if (begins_before && !ends_behind) {
            member.to = planes[0];
            member.allowance_to = "0";
            member.foot_to = false;
            cut_.insert({member.run, 0});
        }
        if (ends_behind && !begins_before) {
            member.from = planes[1];
            member.allowance_from = "0";
            member.foot_from = false;
            cut_.insert({member.run, 1});
        }
    }

    // Where others were cut back the frame ends now: a leg that points into what is gone would hold
    // none of their ends. Where another bay lies on that side it still has its work there.
    Changed turn_inward(Member& member, Axis axis, std::size_t side) const {
        const auto at = box_of(member, places_);
        const std::size_t k = index_of(axis);
        if (!at || member.run == axis || (*at)[k][0] != box_[k][side]) return Done{};
        if (!lies_beside(*at, box_)) return Done{};
        Sense& leg = member.legs[across(member.run)[0] == axis ? 0 : 1];
        const Sense into_gap = side == 0 ? Sense::plus : Sense::minus;
        if (leg != into_gap || has_bay_towards(*at, axis, into_gap)) return Done{};
        if (const Member* edge = edge_met(member, axis)) {
            return refused("\"" + edge->name +
                           "\" would be no re-entrant edge any more; take out the bay over it "
                           "first, or leave the bars");
        }
        leg = opposite(leg);
        return Done{};
    }

    // The bar at a re-entrant edge that the member is, or ends on: its metal lies on the far side
    // of its planes, and what is turned across it would hold neither. Null where there is none.
    const Member* edge_met(const Member& member, Axis axis) const {
        for (const Member& edge : frame_.members) {
            const auto at = box_of(edge, places_);
            if (edge.seat != Seat::root || edge.run == axis || !at) continue;
            if (edge.name == member.name || do_touch(*at, end_of(member, member.from)) ||
                do_touch(*at, end_of(member, member.to))) {
                return &edge;
            }
        }
        return nullptr;
    }

    ReachBox end_of(const Member& member, const std::string& plane) const {
        ReachBox end = box_of(member, places_).value_or(ReachBox{});
        const Nm at = places_.known(plane, member.run).value_or(0);
        end[index_of(member.run)] = {at, at};
        return end;
    }

    // What leans cannot be cut back to a plane, since its nodes lie where planes meet: what held
    // its ends must stay as it is.
    Changed check_leaning(const Frame& before) const {
        for (const Leaning& bar : frame_.leaning) {
            for (const auto* node : {&bar.from, &bar.to}) {
                Leaning end = bar;
                end.from = end.to = *node;
                const auto point = box_of(end, places_);
                if (!point || is_beside_another(*point)) continue;
                if (!loses_what_touches(*point, before)) continue;
                return refused("\"" + bar.name +
                               "\" leans out of it and would lose what holds its end there; let it "
                               "end beside another bay first, or leave the bars");
            }
        }
        return Done{};
    }

    bool loses_what_touches(const ReachBox& point, const Frame& before) const {
        return std::ranges::any_of(before.members, [&](const Member& was) {
            const auto at = box_of(was, places_);
            return at && do_touch(*at, point) &&
                   std::ranges::find(frame_.members, was) == frame_.members.end();
        });
    }

    Error refused(const std::string& why) const {
        return {ErrorCode::invalid_value, inside(described(frame_), described(bay_)), why};
    }

    bool has_bay_towards(const ReachBox& bar, Axis axis, Sense sense) const {
        const std::size_t k = index_of(axis);
        const Nm plane = bar[k][0];
        return std::any_of(others_.begin(), others_.end(), [&](const ReachBox& other) {
            const bool is_there = sense == Sense::plus ? other[k][1] > plane : other[k][0] < plane;
            return is_there && lies_beside(bar, other);
        });
    }

    Frame& frame_;
    const Bay& bay_;
    const ReachBox& box_;
    PlanePlaces places_;
    std::vector<ReachBox> others_;
    std::set<std::pair<Axis, std::size_t>> cut_;  // along which axis, at which side of the bay
};

}  // namespace

Changed change(Project& project, const TakeOutBay& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const auto found = find_named(frame.bays, edit.bay);
        if (found == frame.bays.end()) return no_such<Bay>(described(frame), edit.bay);
        const auto used_before = used_planes(frame);
        if (edit.with_bars) {
            const Bay bay = *found;
            const auto box = box_of(bay, PlanePlaces(project, frame));
            if (!box) {
                return Error{ErrorCode::invalid_value, inside(described(frame), described(bay)),
                             "where it lies is not known, so neither which bars are its own; mend "
                             "its planes first, or leave the bars"};
            }
            TakingOut taking_out(project, frame, bay, *box);
            if (auto done = taking_out.take_out_bars(); !done) return done;
        }
        std::erase_if(frame.panels, [&](const Panel& panel) { return panel.bay == edit.bay; });
        std::erase_if(frame.loads, [&](const Load& load) {
            const auto* bay = std::get_if<std::string>(&load.where);
            return bay != nullptr && *bay == edit.bay;
        });
        std::erase_if(frame.bays, [&](const Bay& bay) { return bay.name == edit.bay; });
        if (!edit.with_bars) return Done{};
        const auto used_now = used_planes(frame);
        std::erase_if(frame.planes, [&](const Plane& plane) {
            return used_before.contains(plane.name) && !used_now.contains(plane.name);
        });
        return Done{};
    });
}

}  // namespace model
