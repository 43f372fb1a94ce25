#include "model/project/fit_copies.h"

#include "model/project/copy_row.h"
#include "model/project/free_name.h"
#include "model/project/join_members.h"
#include "model/project/lie_behind.h"
#include "model/project/named_list.h"
#include "model/project/opposite.h"

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

Sense& leg_along(Member& member, Axis axis) {
    return member.legs[across(member.run)[0] == axis ? 0 : 1];
}

// What ended at a face and goes on behind it in one line is one bar, as it is where the bay is. It
// is called and ranked as what was there: its name, or none where nothing was.
std::string joined_with(Frame& frame,
                        const std::string& name,
                        Axis row,
                        const PlanePlaces& places) {
    const auto one = find_named(frame.members, name);
    if (one->run == row) return {};
    const auto rank = one->rank;
    for (const Member& other : frame.members) {
        const bool do_meet = other.from == one->to || other.to == one->from;
        if (!do_meet || other.run != one->run || other.on != one->on) continue;
        const std::string there = other.name;
        one->rank = other.rank;
        if (join_members(frame, {one->name, there}, places, there)) return there;
    }
    one->rank = rank;
    return {};
}

class Fitting {
public:
    Fitting(Frame& frame, const Repeated& repeated, const PlanePlaces& places)
        : frame_{frame},
          it_{repeated},
          row_{frame, repeated, places},
          depths_{depths_of_members(frame, places)} {}

    // Who lies behind whom must stay as it was but at the ends of the copies, which are seen to.
    Changed check_parted(const std::vector<NewlyParted>& parted) const {
        for (const auto& [bar, by, at] : parted) {
            if (row_.is_at_corner(at)) continue;
            return refused(
                "\"" + bar + "\" would come to lie behind \"" + by +
                "\" and be parted by it, with nothing to hold its ends; lay that out by hand");
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
                   const std::vector<std::string>& added) {
    for (std::string name : added) {
        if (!has_bar(frame, name)) continue;  // joined to another one already
        while (!name.empty()) name = joined_with(frame, name, repeated.axis, places);
    }
    let_lie_behind(frame, before, places);
    Fitting fitting(frame, repeated, places);
    const auto parted = newly_parted(frame, before, places);
    if (auto sound = fitting.check_parted(parted); !sound) return sound;
    return fitting.fit();
}

}  // namespace model
