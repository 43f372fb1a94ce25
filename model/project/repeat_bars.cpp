#include "model/project/repeat_bars.h"

#include "model/project/bar_places.h"
#include "model/project/copy_planes.h"
#include "model/project/fit_copies.h"
#include "model/project/free_name.h"
#include "model/project/named_list.h"

#include <algorithm>
#include <map>

namespace model {

namespace {

using engine::Done;

class Repeating {
public:
    Repeating(Frame& frame,
              const Repeated& repeated,
              const PlanePlaces& places,
              const std::function<Formula(const Plane&, int)>& position_of)
        : frame_{frame},
          before_{frame},
          repeated_{repeated},
          places_{places},
          planes_{frame, repeated, places, position_of},
          run_{index_of(repeated.axis)} {}

    Changed repeat() {
        for (int copy = 1; copy <= repeated_.times(); ++copy) {
            std::map<std::string, std::string> names;  // of the bars that come again
            if (auto done = repeat_list(before_.members, frame_.members, copy, names); !done)
                return done;
            if (auto done = repeat_list(before_.diagonals, frame_.diagonals, copy, names); !done)
                return done;
            if (auto done = repeat_list(before_.leaning, frame_.leaning, copy, names); !done)
                return done;
            repeat_joints(copy, names);
        }
        for (std::size_t i = 0; i < before_.members.size(); ++i) run_on(frame_.members[i]);
        return fit_copies(frame_, before_, repeated_, places_, added_);
    }

private:
    const Reach& along() const { return repeated_.box[run_]; }

    // What ends the bay, and what stands within it: not what stands where it begins, nor what runs
    // on from there to its end.
    bool comes_again(const ReachBox& at, bool runs_along) const {
        const Reach& its = at[run_];
        if (its[0] < along()[0] || its[1] > along()[1] || its[1] == along()[0]) return false;
        if (runs_along && its == along()) return false;
        ReachBox across = at;
        across[run_] = along();
        ReachBox box = repeated_.box;
        return lies_beside(across, box) || (runs_along && lies_within(at, box));
    }

    // Of a member that reaches beyond the bay's face only the part beside it comes again.
    void clip(Member& bar, const ReachBox& at) const {
        const std::size_t k = index_of(bar.run);
        if (k == run_) return;
        const auto& planes = planes_of(repeated_.bay, bar.run);
        if (at[k][0] < repeated_.box[k][0]) {
            bar.from = planes[0];
            bar.allowance_from = "0";
            bar.foot_from = false;
        }
        if (at[k][1] > repeated_.box[k][1]) {
            bar.to = planes[1];
            bar.allowance_to = "0";
            bar.foot_to = false;
        }
    }
    template <class Bar>
    void clip(Bar&, const ReachBox&) const {}

    static bool runs_along(const Member& bar, Axis axis) { return bar.run == axis; }
    template <class Bar>
    static bool runs_along(const Bar&, Axis) {
        return false;
    }

    // What reaches beyond the face cannot be clipped between nodes.
    bool can_come(const Member&, const ReachBox&) const { return true; }
    template <class Bar>
    bool can_come(const Bar&, const ReachBox& at) const {
        return lies_within(at, repeated_.box);
    }

    template <class Bar>
    Changed repeat_list(const std::vector<Bar>& before,
                        std::vector<Bar>& bars,
                        int copy,
                        std::map<std::string, std::string>& names) {
        const TakenPlaces<Bar> taken(before, places_, Alike::on_line);
        for (const Bar& bar : before) {
            const auto at = box_of(bar, places_);
            if (!at || !comes_again(*at, runs_along(bar, repeated_.axis))) continue;
            if (!can_come(bar, *at)) continue;
            Bar again = bar;
            clip(again, *at);
            if (auto put = put_planes(again, copy); !put) return put;
            const auto there = bar_there(taken, again);
            if (!there) return there.error();
            if (*there != nullptr) {
                names.emplace(bar.name, (*there)->name);
                continue;
            }
            again.name = free_bar_name(frame_, bar.name);
            names.emplace(bar.name, again.name);
            note_added(again, bar);
            bars.push_back(std::move(again));
        }
        return Done{};
    }

    void note_added(const Member& again, const Member& bar) {
        added_.push_back({again.name, bar.name});
    }
    template <class Bar>
    void note_added(const Bar&, const Bar&) {}

    // The bar that does the work of the one that comes again; null where its place is free.
    template <class Bar>
    engine::Result<const Bar*> bar_there(const TakenPlaces<Bar>& taken, const Bar& again) const {
        const auto is_whole = [&](const Bar& there) { return holds_all_of(there, again, places_); };
        if (const Bar* there = taken.holder(again, is_whole)) return there;
        const Bar* part = taken.holder(again);
        if (part == nullptr) return part;
        return engine::Error{
            engine::ErrorCode::invalid_value, inside(described(before_), described(repeated_.bay)),
            "\"" + part->name + "\" lies only in part where \"" + again.name +
                "\" would come again; let it reach over all of that, or take it out first"};
    }

    Changed put_planes(Member& bar, int copy) {
        return put_images({&bar.on[0], &bar.on[1], &bar.from, &bar.to}, copy);
    }
    template <class Bar>
    Changed put_planes(Bar& bar, int copy) {
        return put_images({&bar.face, &bar.from[0], &bar.from[1], &bar.to[0], &bar.to[1]}, copy);
    }

    Changed put_images(const std::vector<std::string*>& planes, int copy) {
        for (std::string* plane : planes) {
            auto image = planes_.image(*plane, copy);
            if (!image) return image.error();
            *plane = *std::move(image);
        }
        return Done{};
    }

    // With another bar that comes again, or with one that runs along all.
    void repeat_joints(int copy, const std::map<std::string, std::string>& names) {
        for (const JointOverride& joint : before_.joints) {
            JointOverride again = joint;
            int come_again = 0;
            bool is_there = true;
            for (std::string& bar : again.members) {
                if (const auto found = names.find(bar); found != names.end()) {
                    bar = found->second;
                    ++come_again;
                } else {
                    is_there = is_there && passes(bar, copy);
                }
            }
            if (come_again > 0 && is_there && do_meet_again(joint, again) &&
                !has_joint(frame_, again.members)) {
                frame_.joints.push_back(std::move(again));
            }
        }
    }

    // Not where only part of a bar came again, and the rest met the other one.
    bool do_meet_again(const JointOverride& joint, const JointOverride& again) const {
        const auto do_meet = [&](const Frame& frame, const JointOverride& one) {
            const auto first = reach_at_last(frame, one.members[0]);
            const auto second = reach_at_last(frame, one.members[1]);
            return !first || !second || do_touch(*first, *second);
        };
        return !do_meet(before_, joint) || do_meet(frame_, again);
    }

    // With as much as it is going to run on.
    std::optional<ReachBox> reach_at_last(const Frame& frame, const std::string& bar) const {
        auto at = box_of_bar(frame, bar, places_);
        const auto member = std::ranges::find(before_.members, bar, &Member::name);
        if (at && member != before_.members.end() && does_run_on(*member, *at)) {
            (*at)[run_][1] = repeated_.end(repeated_.times());
        }
        return at;
    }

    bool passes(const std::string& bar, int copy) const {
        const auto found = std::ranges::find(before_.members, bar, &Member::name);
        if (found == before_.members.end() || found->run != repeated_.axis) return false;
        const auto at = box_of(*found, places_);
        if (!at) return false;
        return (*at)[run_][1] >= repeated_.end(copy) || does_run_on(*found, *at);
    }

    bool does_run_on(const Member& member, const ReachBox& at) const {
        if (member.run != repeated_.axis || at[run_][1] != along()[1]) return false;
        if (at[run_][0] > along()[0] || !lies_beside(at, repeated_.box)) return false;
        return std::ranges::none_of(before_.members, [&](const Member& other) {
            if (other.run != member.run || other.on != member.on) return false;
            const auto its = reach(other, places_, member.run);
            return its && (*its)[0] < repeated_.end(repeated_.times()) && (*its)[1] > along()[1];
        });
    }

    void run_on(Member& member) const {
        const auto at = box_of(member, places_);
        if (at && does_run_on(member, *at)) member.to = repeated_.ends.back();
    }

    Frame& frame_;
    const Frame before_;
    const Repeated& repeated_;
    const PlanePlaces& places_;
    CopyPlanes planes_;
    std::vector<AddedMember> added_;
    std::size_t run_;
};

}  // namespace

Changed repeat_bars(Frame& frame,
                    const Repeated& repeated,
                    const PlanePlaces& places,
                    const std::function<Formula(const Plane&, int)>& position_of) {
    return Repeating(frame, repeated, places, position_of).repeat();
}

}  // namespace model
