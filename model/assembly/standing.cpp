#include "model/assembly/standing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

namespace model {
namespace {

// What suits the part, then from above, from the front, the sides, the back and below; a slanting
// way after all.
std::vector<std::size_t> ways_by_ease(const PartWays& ways, const Part* part = nullptr) {
    constexpr std::array<std::size_t, 6> of_axes{4, 3, 0, 1, 2, 5};
    std::vector<std::size_t> order(of_axes.begin(), of_axes.end());
    for (std::size_t way = of_axes.size(); way < ways.count(); ++way) order.push_back(way);
    if (part != nullptr && part->best_along) {
        std::stable_partition(order.begin(), order.end(), [&](std::size_t way) {
            return way / 2 == index_of(*part->best_along);
        });
    }
    if (part != nullptr && part->off_bench) {
        std::stable_partition(order.begin(), order.end(),
                              [&](std::size_t way) { return way == *part->off_bench; });
    }
    return order;
}

}  // namespace

Standing::Standing(const Apart& apart, const std::vector<Part>& parts, std::vector<bool> kept)
    : apart_{apart}, parts_{parts}, all_{apart.parts.size()}, is_kept_{std::move(kept)} {
    part_of_.resize(apart.parts.size());
    for (std::size_t p = 0; p < parts.size(); ++p) {
        all_ |= parts[p].set;
        for (const Index i : parts[p].pieces) part_of_[i] = p;
    }
    is_kept_.resize(apart.parts.joints().size(), is_kept_.empty());
    for (Index j = 0; j < is_kept_.size(); ++j) {
        if (is_kept_[j]) is_kept_[j] = apart.keeps_together(j, all_);
    }
}

bool Standing::is_held_back(std::size_t part) const {
    const PieceSet& set = parts_[part].set;
    return std::ranges::any_of(parts_[part].pieces, [&](Index i) {
        return std::ranges::any_of(apart_.parts.joints_of(i), [&](Index j) {
            return is_kept_[j] && !apart_.parts.joints()[j].set.is_within(set);
        });
    });
}

std::optional<std::size_t> Standing::way_of(std::size_t part) const {
    if (parts_.size() < 2 || is_held_back(part)) return std::nullopt;
    for (const std::size_t way : ways_by_ease(apart_.ways, &parts_[part])) {
        const bool is_free = std::ranges::none_of(parts_[part].pieces, [&](Index i) {
            return apart_.ways.stops(way, i).meets_beside(all_, parts_[part].set);
        });
        if (is_free) return way;
    }
    return std::nullopt;
}

const std::vector<Index>& Standing::moved_with(Index piece, const Opened& opened) const {
    const Part& part = parts_[part_of_[piece]];
    if (part_of_[piece] != opened.part) return part.pieces;
    return part.inside[opened.inside_of[piece]].pieces;
}

// What need not come along with the piece; once that which must is as much as `give_up_at`, or all
// of the opened part, it may be more. Nothing, where one of `give_up_with` must.
PieceSet Standing::staying(Index piece,
                           std::size_t way,
                           std::size_t give_up_at,
                           const PieceSet& give_up_with,
                           const Opened& opened) const {
    PieceSet rest = all_;
    bool gives_up = false;
    std::vector<Index> coming;
    const bool has_opened = opened.part < parts_.size();
    std::size_t left = has_opened ? parts_[opened.part].pieces.size() : 1;
    const auto take = [&](Index other) {
        if (!rest.contains(other)) return;
        gives_up = gives_up || give_up_with.contains(other);
        for (const Index with : moved_with(other, opened)) {
            rest.erase(with);
            coming.push_back(with);
            if (part_of_[with] == opened.part) --left;
        }
    };
    take(piece);
    for (std::size_t k = 0; k < std::min(coming.size(), give_up_at) && left > 0; ++k) {
        if (gives_up) return PieceSet(apart_.parts.size());
        const Index at = coming[k];
        apart_.ways.stops(way, at).for_each_shared(rest, take);
        for (const Index j : apart_.parts.joints_of(at)) {
            if (is_kept_[j]) std::ranges::for_each(apart_.parts.joints()[j].together, take);
        }
    }
    return gives_up ? PieceSet(apart_.parts.size()) : rest;
}

std::vector<std::size_t> Standing::parts_in(const PieceSet& set) const {
    std::vector<std::size_t> found;
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        if (parts_[p].set.is_within(set)) found.push_back(p);
    }
    return found;
}

std::optional<Coming> Standing::fewest(PartKind last) const {
    std::optional<Coming> best;
    if (is_stuck()) return best;
    std::size_t least = all_.size();
    for (const std::size_t way : ways_by_ease(apart_.ways)) {
        // With whatever one of these must come along with at least as much comes as with it.
        PieceSet looked_at(apart_.parts.size());
        for (std::size_t p = 0; p < parts_.size(); ++p) {
            if (parts_[p].kind > last) continue;
            PieceSet coming = all_;
            coming -= staying(parts_[p].pieces.front(), way, least, looked_at, {});
            looked_at |= parts_[p].set;
            const std::size_t count = coming.size();
            if (count >= least) continue;
            auto with = parts_in(coming);
            const bool is_asked = std::ranges::all_of(
                with, [&](std::size_t other) { return parts_[other].kind <= last; });
            if (!is_asked) continue;
            least = count;
            best = Coming{std::move(with), way};
        }
    }
    return best;
}

// What comes along with one part one way is what stays for it the other way: if all comes along
// with it every way, nothing comes off.
bool Standing::is_stuck() const {
    if (parts_.size() < 2) return true;
    const PieceSet none(apart_.parts.size());
    const Index first = parts_.front().pieces.front();
    for (std::size_t way = 0; way < apart_.ways.count(); ++way) {
        if (staying(first, way, all_.size(), none, {}).size() > 0) return false;
    }
    return true;
}

// All other parts come along with it one way, and it with them the other way, as it is: they still
// do where its own pieces all come along with each other.
bool Standing::is_stuck_without(std::size_t whole) const {
    Opened opened{whole, std::vector<std::size_t>(part_of_.size())};
    const auto& inside = parts_[whole].inside;
    for (std::size_t k = 0; k < inside.size(); ++k) {
        for (const Index i : inside[k].pieces) opened.inside_of[i] = k;
    }
    const PieceSet& own = parts_[whole].set;
    const PieceSet none(apart_.parts.size());
    for (std::size_t way = 0; way < apart_.ways.count(); ++way) {
        const auto rest = staying(parts_[whole].pieces.front(), way, all_.size(), none, opened);
        if (rest.meets(own)) return false;
    }
    return true;
}

Standing::Reach Standing::reach_from(std::size_t from) const {
    constexpr std::size_t far = static_cast<std::size_t>(-1);
    Reach reach{std::vector<std::size_t>(parts_.size(), far),
                std::vector<bool>(parts_.size(), true)};
    std::vector<std::size_t> open{from};
    reach.distance[from] = 0;
    for (std::size_t next = 0; next < open.size(); ++next) {
        const std::size_t at = open[next];
        for (const Index i : parts_[at].pieces) {
            for (const Index j : apart_.parts.joints_of(i)) {
                const JointOfFrame& joint = apart_.parts.joints()[j];
                if (!joint.is_fastened || !joint.stands_in(all_)) continue;
                for (const Index other : joint.together) {
                    const std::size_t to = part_of_[other];
                    if (reach.distance[to] != far) continue;
                    reach.distance[to] = reach.distance[at] + 1;
                    reach.is_leaf[at] = false;
                    open.push_back(to);
                }
            }
        }
    }
    return reach;
}

}  // namespace model
