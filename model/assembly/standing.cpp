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

Standing::Standing(const Apart& apart, const std::vector<Part>& parts)
    : apart_{apart}, parts_{parts}, all_{apart.parts.size()} {
    part_of_.resize(apart.parts.size());
    for (std::size_t p = 0; p < parts.size(); ++p) {
        all_ |= parts[p].set;
        for (const Index i : parts[p].pieces) part_of_[i] = p;
    }
    for (Index j = 0; j < apart.parts.joints().size(); ++j) {
        is_kept_.push_back(apart.keeps_together(j, all_));
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

// All that has to come along; once that is as much as `give_up_at` it may be less than all of it.
PieceSet Standing::coming_with(std::size_t part, std::size_t way, std::size_t give_up_at) const {
    PieceSet coming(apart_.parts.size());
    std::vector<Index> open;
    const auto take = [&](Index piece) {
        if (coming.contains(piece)) return;
        const Part& with = parts_[part_of_[piece]];
        coming |= with.set;
        open.insert(open.end(), with.pieces.begin(), with.pieces.end());
    };
    std::size_t count = 0;
    take(parts_[part].pieces.front());
    while (!open.empty() && count < give_up_at) {
        const Index at = open.back();
        open.pop_back();
        ++count;
        PieceSet more = apart_.ways.stops(way, at);
        more &= all_;
        for (const Index j : apart_.parts.joints_of(at)) {
            if (is_kept_[j]) more |= apart_.parts.joints()[j].set;
        }
        more -= coming;
        more.for_each(take);
    }
    return coming;
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
        for (std::size_t p = 0; p < parts_.size(); ++p) {
            if (parts_[p].kind > last) continue;
            const PieceSet coming = coming_with(p, way, least);
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
    for (std::size_t way = 0; way < apart_.ways.count(); ++way) {
        if (coming_with(0, way, all_.size()) != all_) return false;
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
                if (!joint.is_fastened || !joint.set.is_within(all_)) continue;
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
