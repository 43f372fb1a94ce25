#include "model/project/fit_copies.h"

#include "model/project/copy_row.h"
#include "model/project/free_name.h"
#include "model/project/join_members.h"
#include "model/project/lie_behind.h"
#include "model/project/named_list.h"
#include "model/project/opposite.h"
#include "model/project/ranks_behind.h"

#include <algorithm>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

Sense& leg_along(Member& member, Axis axis) {
    return member.legs[across(member.run)[0] == axis ? 0 : 1];
}

// Whether one bar on the line of that member passes the plane.
bool is_passed(const Frame& before,
               const std::string& member,
               const std::string& plane,
               const PlanePlaces& places) {
    const auto line = std::ranges::find(before.members, member, &Member::name);
    const auto seam = places.known(plane, line->run);
    const auto on_line = box_of(*line, places);
    if (!seam || !on_line) return false;
    const std::size_t run = index_of(line->run);
    return std::ranges::any_of(before.members, [&](const Member& other) {
        auto at = box_of(other, places);
        if (other.run != line->run || !at) return false;
        if (*seam <= (*at)[run][0] || (*at)[run][1] <= *seam) return false;
        (*at)[run] = (*on_line)[run];
        return *at == *on_line;
    });
}

class Joining {
public:
    Joining(Frame& frame, const Frame& before, const PlanePlaces& places)
        : frame_{frame}, before_{before}, places_{places} {}

    // What ended at a face and goes on behind it in one line is one bar where it is so at the
    // original. It is called and ranked as what was there: its name, or none where nothing was.
    std::string join_with_next(const std::string& name, const std::string& original) {
        const auto one = find_named(frame_.members, name);
        const auto rank = one->rank;
        for (const Member& other : frame_.members) {
            if (other.run != one->run || other.on != one->on) continue;
            if (!does_go_on(one->to, other.from, original) &&
                !does_go_on(one->from, other.to, original)) {
                continue;
            }
            const std::string there = other.name;
            one->rank = other.rank;
            if (join_members(frame_, {one->name, there}, places_, there)) return there;
        }
        one->rank = rank;
        return {};
    }

private:
    bool does_go_on(const std::string& end,
                    const std::string& begin,
                    const std::string& original) const {
        return end == begin && is_passed(before_, original, end, places_);
    }

    Frame& frame_;
    const Frame& before_;
    const PlanePlaces& places_;
};

class Fitting {
public:
    Fitting(Frame& frame, const Repeated& repeated, const PlanePlaces& places)
        : frame_{frame},
          it_{repeated},
          row_{frame, repeated, places},
          depths_{depths_of_members(frame, places)} {}

    // Who lies behind whom must stay as it was but at the ends of the copies, which are seen to.
    Changed check_parted(const std::vector<NewlyParted>& parted) const {
        for (const NewlyParted& one : parted) {
            if (!row_.is_at_corner(one.at)) return refused_to_part(one);
        }
        return Done{};
    }

    // Where bars run on between the bay's corners. What was seen to at those, and what is parted as
    // its original is, may stay.
    Changed check_loose(const std::vector<NewlyParted>& loose) const {
        const std::size_t run = index_of(it_.axis);
        for (const NewlyParted& one : loose) {
            if (one.at[run] != it_.box[run][1]) continue;
            const bool is_corner = std::ranges::all_of(across(it_.axis), [&](Axis axis) {
                const Reach& its = it_.box[index_of(axis)];
                const Nm place = one.at[index_of(axis)];
                return place == its[0] || place == its[1];
            });
            if (!is_corner) return refused_to_part(one);
        }
        return Done{};
    }

    Changed fit() {
        for (const RowFace& face : row_.faces()) {
            for (int copy = 0; copy <= it_.times(); ++copy) {
                if (auto fits = fit_at(face, copy); !fits) return fits;
            }
        }
        return Done{};
    }

private:
    Error refused_to_part(const NewlyParted& one) const {
        return refused("\"" + one.bar + "\" would come to lie behind \"" + one.by +
                       "\" and be parted by it, with nothing to hold its ends; lay that out by "
                       "hand");
    }

    Changed fit_at(const RowFace& face, int copy) {
        const bool is_beside = row_.has_beside(face, copy);
        if (copy < it_.times() && is_beside && !row_.has_beside(face, copy + 1)) {
            if (auto turned = turn_to_copies(face); !turned) return turned;
        } else if (copy > 0 && is_beside) {
            turn_from_ends(face, copy);
        }
        if (copy == 0 && it_.gives_way) return Done{};
        for (const std::size_t edge : row_.edges(face, copy)) {
            if (auto turned = turn_edge(frame_.members[edge], face, copy); !turned) return turned;
        }
        return Done{};
    }

    // The copies stand out, and their face looks outward: legs on it must point to them, and with
    // them turns all on its plane, since that is laid out for one another.
    Changed turn_to_copies(const RowFace& face) {
        bool has_inward = false;
        bool has_outward = false;
        for (const std::size_t bar : row_.bars_to_copies(face)) {
            const bool is_inward = leg_along(frame_.members[bar], face.axis) == face.inward();
            (is_inward ? has_inward : has_outward) = true;
        }
        if (!has_outward) return Done{};
        const std::string bars = "it would stand out from the bays beside it, and bars along \"" +
                                 planes_of(it_.bay, face.axis)[face.side] + "\" ";
        if (has_inward) {
            return refused(bars +
                           "have their legs on both sides; turn those to its own side first");
        }
        if (row_.has_ends(face.from_behind()) || row_.looks_outward(face.from_behind())) {
            return refused(
                bars +
                "would have to hold others on both sides; repeat the bay behind that plane first");
        }
        turn_plane(face);
        return Done{};
    }

    void turn_plane(const RowFace& face) {
        for (std::size_t i = 0; i < frame_.members.size(); ++i) {
            Member& member = frame_.members[i];
            if (member.run == face.axis || !row_.lies_on(i, face)) continue;
            Sense& leg = leg_along(member, face.axis);
            leg = opposite(leg);
        }
    }

    // What ends at bars that run on past it is held by the edge there; with their legs out of the
    // way it need not lie behind them.
    void turn_from_ends(const RowFace& face, int copy) {
        const auto cross = row_.bar_across(face, copy);
        const auto along = row_.bar_along(face, copy);
        if (!cross || cross->passes || !along) return;
        if (leg_along(frame_.members[*along], face.axis) != face.inward()) return;
        if (row_.has_ends(face.from_behind()) || row_.looks_outward(face)) return;
        turn_plane(face);
    }

    // Where a bar across passes the face and one along it passes the end, the inner one is parted
    // by the flat leg of the outer one, which holds one part; the edge holds the other. Where bars
    // across end at the face, the edge holds them.
    Changed turn_edge(Member& edge, const RowFace& face, int copy) {
        const auto found = row_.bar_across(face, copy);
        if (!found) return Done{};
        Member& cross = frame_.members[found->bar];
        const auto along = found->passes ? row_.bar_along(face, copy) : std::nullopt;
        if (along && depths_[*along] > depths_[found->bar]) {
            return hold_along(edge, frame_.members[*along], cross);
        }
        if (along) {
            const Sense leg = leg_along(frame_.members[*along], face.axis);
            leg_along(edge, face.axis) = opposite(leg);
        } else if (copy > 0) {
            leg_along(edge, it_.axis) = leg_along(cross, it_.axis);
            if (!found->passes) leg_along(edge, face.axis) = face.inward();
        }
        return Done{};
    }

    // Posts lie outside rails, so that one could not lie against a rail across from behind.
    Changed hold_along(Member& edge, const Member& along, Member& cross) {
        if (edge.run == Axis::z) {
            return refused("\"" + cross.name + "\" would part \"" + along.name +
                           "\" where it runs on, and \"" + edge.name +
                           "\" could not hold both parts; lay that out by hand");
        }
        leg_along(edge, it_.axis) = opposite(leg_along(cross, it_.axis));
        return Done{};
    }

    Error refused(const std::string& why) const {
        return {ErrorCode::invalid_value, inside(described(frame_), described(it_.bay)), why};
    }

    Frame& frame_;
    const Repeated& it_;
    const CopyRow row_;
    const std::vector<int> depths_;
};

}  // namespace

Changed fit_copies(Frame& frame,
                   const Frame& before,
                   const Repeated& repeated,
                   const PlanePlaces& places,
                   const std::vector<AddedMember>& added) {
    Joining joining(frame, before, places);
    for (const AddedMember& it : added) {
        if (!has_bar(frame, it.name)) continue;  // joined to another one already
        if (find_named(frame.members, it.name)->run == repeated.axis) continue;
        std::string name = it.name;
        while (!name.empty()) name = joining.join_with_next(name, it.original);
    }
    let_lie_behind(frame, before, places);
    if (const auto far = newly_pushed_far(frame, before, places, repeated.axis)) {
        return Error{ErrorCode::invalid_value, inside(described(before), described(repeated.bay)),
                     "\"" + far->by + "\" would push \"" + far->bar +
                         "\" two layers in, where little is left to fasten; lay that out by hand"};
    }
    Fitting fitting(frame, repeated, places);
    const auto parted = newly_parted(frame, before, places);
    if (auto sound = fitting.check_parted(parted); !sound) return sound;
    if (auto fits = fitting.fit(); !fits) return fits;
    return fitting.check_loose(newly_parted_loose(frame, before, places));
}

}  // namespace model
