#include "model/assembly/take_apart.h"

#include "model/assembly/next_off.h"

#include <algorithm>
#include <iterator>
#include <limits>
#include <optional>
#include <tuple>
#include <utility>

namespace model {
namespace {

class TakeApart {
public:
    TakeApart(const FrameParts& parts, const PartWays& ways, const ToolAccess& access)
        : apart_{parts, ways, access, std::vector<SetWith>(parts.joints().size(), SetWith::tool)} {
        // Laid out for a long nose, it may be set with one at any time.
        for (Index j = 0; j < access.joints.size(); ++j) {
            const PieceSet none(parts.size());
            if (access.joints[j].in_way_of_nose == none) apart_.set_with[j] = SetWith::long_nose;
        }
    }

    TakenApart whole(std::vector<Part> parts) {
        TakenApart all;
        while (parts.size() == 1 && !parts[0].inside.empty()) {
            all.kind = parts[0].kind;
            all.face = parts[0].face;
            auto inside = std::move(parts[0].inside);
            parts = std::move(inside);
        }
        all.puts = put_together(std::move(parts));
        all.not_reached = std::move(not_reached_);
        all.without_way = std::move(without_way_);
        all.set_with = std::move(apart_.set_with);
        all.parts_given_up = given_up_;
        return all;
    }

private:
    std::vector<Put> put_together(std::vector<Part> standing) {
        std::vector<Put> off;    // the first that comes off first
        std::vector<bool> kept;  // see Standing
        while (standing.size() > 1) {
            const Standing now(apart_, standing, std::move(kept));
            kept = now.kept();
            if (const auto coming = next_off(apart_, now, standing)) {
                no_one_opens_ = false;
                off.push_back(put_of(taken_from(standing, *coming), coming->way));
            } else if (!give_up_a_part(now, standing)) {
                kept.clear();
                if (!reach_further(now) && !give_up_joints(standing))
                    off.push_back(forced_off(standing));
            }
        }
        if (!standing.empty()) off.push_back(put_of(std::move(standing.front()), -1));
        std::ranges::reverse(off);
        return off;
    }

    template <class Way>
    Put put_of(Part part, Way way) {
        Put put{.way = static_cast<int>(way)};
        if (!part.inside.empty()) put.inside = put_together(std::exchange(part.inside, {}));
        put.part = std::move(part);
        return put;
    }

    static Part taken_from(std::vector<Part>& standing, const Coming& coming) {
        std::vector<Part> taken;
        for (auto at = coming.parts.rbegin(); at != coming.parts.rend(); ++at) {
            const auto from = standing.begin() + static_cast<std::ptrdiff_t>(*at);
            taken.push_back(std::move(*from));
            standing.erase(from);
        }
        if (taken.size() == 1) return std::move(taken.front());
        std::ranges::reverse(taken);
        Part together{.kind = PartKind::several, .set = taken.front().set};
        bool is_loose = true;
        for (const auto& part : taken) {
            together.set |= part.set;
            is_loose = is_loose && part.kind <= PartKind::hung;
        }
        if (is_loose) together.kind = PartKind::comes_apart;
        together.pieces = together.set.list();
        together.inside = std::move(taken);
        return together;
    }

    // One whole less: if it can be, one that opens a way.
    bool give_up_a_part(const Standing& now, std::vector<Part>& standing) {
        auto chosen = standing.end();
        bool found_one = false;
        for (auto at = standing.begin(); at != standing.end() && !found_one; ++at) {
            if (at->inside.empty()) continue;
            if (chosen == standing.end() || at->pieces.size() < chosen->pieces.size()) chosen = at;
            if (no_one_opens_) continue;
            found_one = !now.is_stuck_without(static_cast<std::size_t>(at - standing.begin()));
            if (found_one) chosen = at;
        }
        // Then it takes several; which of them is not worth a search.
        no_one_opens_ = !found_one;
        if (chosen == standing.end()) return false;
        if (chosen->kind == PartKind::flat) ++given_up_;
        open_up(standing, chosen - standing.begin());
        return true;
    }

    static void open_up(std::vector<Part>& standing, std::ptrdiff_t part) {
        auto inside = std::move(standing[static_cast<std::size_t>(part)].inside);
        standing.erase(standing.begin() + part);
        standing.insert(standing.end(), std::make_move_iterator(inside.begin()),
                        std::make_move_iterator(inside.end()));
        std::ranges::sort(standing, {}, [](const Part& one) { return one.pieces.front(); });
    }

    // Long noses where the tool as it is has no room.
    bool reach_further(const Standing& now) {
        bool is_more = false;
        for (Index j = 0; j < apart_.set_with.size(); ++j) {
            if (apart_.set_with[j] != SetWith::tool || !apart_.keeps_together(j, now.all())) {
                continue;
            }
            apart_.set_with[j] = SetWith::long_nose;
            is_more = true;
        }
        return is_more;
    }

    // As few as will do. False: it is not for them that nothing comes off.
    bool give_up_joints(const std::vector<Part>& standing) {
        const PieceSet all = Standing(apart_, standing).all();
        std::vector<Index> kept;
        for (Index j = 0; j < apart_.set_with.size(); ++j) {
            if (apart_.keeps_together(j, all)) kept.push_back(j);
        }
        for (const Index j : kept) apart_.set_with[j] = SetWith::nothing;
        const bool is_for_them = !Standing(apart_, standing).is_stuck();
        std::vector<Index> given_up;
        for (const Index j : kept) {
            apart_.set_with[j] = SetWith::long_nose;
            if (!is_for_them || !Standing(apart_, standing).is_stuck()) continue;
            apart_.set_with[j] = SetWith::nothing;
            given_up.push_back(j);
        }
        for (const Index j : given_up) give_up(j, all);
        return is_for_them;
    }

    void give_up(Index joint, const PieceSet& standing) {
        PieceSet in_way = apart_.access.joints[joint].in_way_of_nose;
        in_way &= standing;
        not_reached_.push_back({joint, in_way.list()});
        apart_.set_with[joint] = SetWith::nothing;
    }

    // Nothing has a way: the piece that has least in it, if it can be one that opens a way for the
    // others.
    Put forced_off(std::vector<Part>& standing) {
        struct Choice {
            bool leaves_stuck = true;
            std::size_t in_way = std::numeric_limits<std::size_t>::max();
            std::size_t part = 0;
            std::size_t way = 0;
        };
        const PieceSet all = Standing(apart_, standing).all();
        Choice best;
        for (std::size_t p = 0; p < standing.size(); ++p) {
            auto without = standing;
            without.erase(without.begin() + static_cast<std::ptrdiff_t>(p));
            const bool leaves_stuck = without.size() > 1 && Standing(apart_, without).is_stuck();
            for (std::size_t way = 0; way < apart_.ways.count(); ++way) {
                const std::size_t count = stopped_by(standing[p], way, all).size();
                if (std::tie(leaves_stuck, count) < std::tie(best.leaves_stuck, best.in_way)) {
                    best = {leaves_stuck, count, p, way};
                }
            }
        }
        const Index piece = standing[best.part].pieces.front();
        for (Index j = 0; j < apart_.set_with.size(); ++j) {
            const PieceSet& joined = apart_.parts.joints()[j].set;
            if (joined.contains(piece) && apart_.keeps_together(j, all)) give_up(j, all);
        }
        without_way_.push_back({piece, stopped_by(standing[best.part], best.way, all).list()});
        Put put = put_of(taken_from(standing, {{best.part}, best.way}), best.way);
        put.is_forced = true;
        return put;
    }

    PieceSet stopped_by(const Part& part, std::size_t way, const PieceSet& all) const {
        PieceSet by(apart_.parts.size());
        for (const Index i : part.pieces) by |= apart_.ways.stops(way, i);
        by &= all;
        by -= part.set;
        return by;
    }

    Apart apart_;
    std::vector<JointNotReached> not_reached_;
    std::vector<PieceWithoutWay> without_way_;
    std::size_t given_up_ = 0;
    bool no_one_opens_ = false;  // giving up one whole: since the last part came off
};

}  // namespace

TakenApart taken_apart(const FrameParts& parts,
                       const PartWays& ways,
                       const ToolAccess& access,
                       std::vector<Part> whole) {
    return TakeApart(parts, ways, access).whole(std::move(whole));
}

}  // namespace model
