#include "model/assembly/next_off.h"

#include <algorithm>
#include <compare>
#include <cstddef>
#include <limits>
#include <tuple>

namespace model {
namespace {

class NextOff {
public:
    explicit NextOff(const Apart& apart) : apart_{apart} {}

    // Parts by themselves before several together, but for what comes apart.
    std::optional<Coming> next(const Standing& now, const std::vector<Part>& standing) const {
        const bool has_loose = std::ranges::any_of(
            standing, [](const Part& part) { return part.kind <= PartKind::hung; });
        if (has_loose) {
            if (const auto alone = best_alone(now, standing, PartKind::hung)) return alone;
            if (const auto together = now.fewest(PartKind::hung)) return together;
        }
        if (const auto alone = best_alone(now, standing, PartKind::several)) return alone;
        return now.fewest(PartKind::several);
    }

private:
    // The part that the others are put on: the largest flat one, or else the largest.
    std::size_t base_of(const std::vector<Part>& standing) const {
        const auto worth = [&](const Part& part) {
            const bool is_base = part.kind == PartKind::flat;
            return std::tuple(is_base, part.pieces.size(), longest_in(part));
        };
        return static_cast<std::size_t>(std::ranges::max_element(standing, {}, worth) -
                                        standing.begin());
    }

    Nm longest_in(const Part& part) const {
        Nm longest = 0;
        for (const Index i : part.pieces) {
            const Box& box = apart_.parts.piece(i).extents;
            for (std::size_t k = 0; k < 3; ++k) longest = std::max(longest, box.hi[k] - box.lo[k]);
        }
        return longest;
    }

    // What comes off first has the lowest.
    struct Rank {
        PartKind sort = PartKind::small;  // of panels and what comes apart: their kind
        bool is_base = false;
        bool is_hung_on = false;   // others are joined to the base by it
        bool is_off_side = false;  // of what lies on the bench: it would come from below
        PartKind kind = PartKind::small;
        std::size_t nearness = 0;  // to the base
        std::size_t turn = 0;

        auto operator<=>(const Rank&) const = default;
    };

    std::optional<Coming> best_alone(const Standing& now,
                                     const std::vector<Part>& standing,
                                     PartKind last) const {
        const std::size_t base = base_of(standing);
        const auto reach = now.reach_from(base);
        constexpr auto far = std::numeric_limits<std::size_t>::max();
        std::optional<Coming> best;
        Rank least;
        for (std::size_t p = 0; p < standing.size(); ++p) {
            if (standing[p].kind > last) continue;
            const bool is_laid = standing[p].off_bench.has_value();
            Rank rank{.sort = std::min(standing[p].kind, PartKind::small),
                      .is_base = !is_laid && p == base,
                      .is_hung_on = !is_laid && !reach.is_leaf[p],
                      .kind = standing[p].kind,
                      .nearness = is_laid ? 0 : far - reach.distance[p],
                      .turn = standing.size() - p};
            if (best && !(rank < least)) continue;
            const auto way = now.way_of(p);
            if (!way) continue;
            rank.is_off_side = is_laid && *way != *standing[p].off_bench;
            if (best && !(rank < least)) continue;
            least = rank;
            best = Coming{{p}, *way};
        }
        return best;
    }

    const Apart& apart_;
};

}  // namespace

std::optional<Coming> next_off(const Apart& apart,
                               const Standing& now,
                               const std::vector<Part>& standing) {
    return NextOff(apart).next(now, standing);
}

}  // namespace model
