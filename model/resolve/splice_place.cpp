#include "model/resolve/splice_place.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

// Between the fifth and the quarter of a span.
constexpr double best_share = 0.225;

struct Found {
    Nm at = 0;
    double share = 0.0;  // of the span, from the nearer support

    double cost() const { return std::abs(share - best_share); }
};

Nm round_up(Nm value, Nm mark) { return (value + mark - 1) / mark * mark; }

class Search {
public:
    Search(std::span<const Range> taken, std::span<const Nm> supports, const ButtRules& rules)
        : supports_{supports}, rules_{rules} {
        for (const auto& range : taken) {
            taken_.push_back({range[0] - rules.after, range[1] + rules.before});
        }
        std::sort(taken_.begin(), taken_.end());
    }

    std::optional<Butts> in_lengths(Range member, int count) {
        Butts butts;
        for (int left = count - 1; left > 0; --left) {
            const Range window{
                std::max(member[0] + rules_.least, member[1] - left * (rules_.most + rules_.gap)),
                std::min(member[0] + rules_.most, member[1] - left * (rules_.least + rules_.gap))};
            const auto found = best_in(window, member[0]);
            if (!found) return std::nullopt;
            butts.ends.push_back(found->at);
            butts.worst = std::max(butts.worst, found->share);
            member[0] = found->at + rules_.gap;
        }
        return butts;
    }

private:
    std::optional<Found> best_in(Range window, Nm start) {
        best_.reset();
        for (std::size_t i = 0; i + 1 < supports_.size(); ++i) {
            const Nm from = supports_[i];
            const Nm to = supports_[i + 1];
            const Nm third = (to - from) / 3;
            const auto aside = static_cast<Nm>(best_share * static_cast<double>(to - from));
            if (from >= window[1] || to <= window[0] || third <= 0) continue;
            in_zone({from, from + third}, from + aside, window, start, {from, to});
            in_zone({to - third, to}, to - aside, window, start, {from, to});
        }
        return best_;
    }

    // Goes from one free part of the zone to the next.
    void in_zone(Range zone, Nm ideal, Range window, Nm start, Range span) {
        Nm at = std::max(zone[0], window[0]);
        const Nm end = std::min(zone[1], window[1]);
        for (const auto& range : taken_) {
            if (range[1] <= at) continue;
            if (range[0] >= end) break;
            try_part({at, std::min(range[0], end)}, ideal, start, span);
            at = std::max(at, range[1]);
        }
        try_part({at, end}, ideal, start, span);
    }

    void try_part(Range part, Nm ideal, Nm start, Range span) {
        const Nm first = start + round_up(std::max<Nm>(part[0] - start, 0), rules_.mark);
        const Nm last = start + (part[1] - start) / rules_.mark * rules_.mark;
        if (first > last || part[1] < start) return;
        const Nm wanted = start + (ideal - start + rules_.mark / 2) / rules_.mark * rules_.mark;
        Found found{.at = std::clamp(wanted, first, last)};
        const Nm aside = std::min(found.at - span[0], span[1] - found.at);
        found.share = static_cast<double>(aside) / static_cast<double>(span[1] - span[0]);
        if (!best_ || found.cost() < best_->cost()) best_ = found;
    }

    std::vector<Range> taken_;
    std::span<const Nm> supports_;
    const ButtRules& rules_;
    std::optional<Found> best_;
};

}  // namespace

Nm fewest_lengths(Nm length, const ButtRules& rules) {
    const Nm each = rules.most + rules.gap;
    return (length + rules.gap + each - 1) / each;
}

std::optional<Butts> butts_along(Range member,
                                 std::span<const Range> taken,
                                 std::span<const Nm> supports,
                                 const ButtRules& rules) {
    const Nm fewest = fewest_lengths(member[1] - member[0], rules);
    if (fewest > most_lengths) return std::nullopt;
    Search search(taken, supports, rules);
    // Two more lengths move the butts from mid-span where one too few would not.
    for (int count = std::max(2, static_cast<int>(fewest)); count <= fewest + 2; ++count) {
        if (auto butts = search.in_lengths(member, count)) return butts;
    }
    return std::nullopt;
}

}  // namespace model
