#include "model/resolve/gauge_lines.h"

#include <algorithm>
#include <cstddef>

namespace model {
namespace {

// How many centres share the direction's lines: 1 across a row, n along it.
std::size_t lines_needed(const Layout& layout, std::size_t direction) {
    const auto n = static_cast<std::size_t>(layout.count);
    switch (layout.pattern) {
        case Pattern::row:
            return layout.along == direction ? n : 1;
        case Pattern::two_rows:
            return layout.along == direction ? n / 2 : 2;
        case Pattern::diagonal:
            return 2;
        case Pattern::points:
        case Pattern::none:
            break;
    }
    return 0;
}

Nm freedom(const Layout& layout, std::size_t direction) {
    const auto n = static_cast<Nm>(lines_needed(layout, direction));
    if (layout.pattern == Pattern::diagonal) return 2 * layout.margin;
    return layout.most[direction] - layout.least[direction] - (n - 1) * layout.apart;
}

// The gauge lines in use on one stock, in nm from the heel.
class Lines {
public:
    // The line between least and most that keeps furthest from both; none: no_line.
    static constexpr Nm no_line = -1;

    Nm nearest_to_middle(Nm least, Nm most) const {
        Nm best = no_line;
        Nm best_margin = -1;
        for (const Nm line : lines_) {
            const Nm margin = std::min(line - least, most - line);
            if (margin > best_margin) {
                best = line;
                best_margin = margin;
            }
        }
        return best;
    }

    // Two lines that keep the pitch with the greatest margin; false when there are none.
    bool pair_within(Nm least, Nm most, Nm apart, std::array<Nm, 2>& pair) const {
        Nm best_margin = -1;
        for (const Nm a : lines_) {
            for (const Nm b : lines_) {
                const Nm margin = std::min({a - least, most - b, b - a - apart});
                if (margin <= best_margin) continue;
                best_margin = margin;
                pair = {a, b};
            }
        }
        return best_margin >= 0;
    }

    void add(Nm line) {
        if (std::find(lines_.begin(), lines_.end(), line) == lines_.end()) lines_.push_back(line);
    }

private:
    std::vector<Nm> lines_;
};

// The lines of one direction of one layout.
struct Chosen {
    std::array<Nm, most_per_lap> at{};
    std::size_t count = 0;
};

void choose_freely(const Layout& layout, std::size_t direction, Chosen& chosen) {
    const std::span<Nm> marks(chosen.at.data(), chosen.count);
    if (layout.pattern == Pattern::diagonal) {
        marks[0] = layout.least[direction] + layout.margin;
        marks[1] = layout.most[direction] - layout.margin;
    } else {
        spread(layout.least[direction], layout.most[direction], layout.apart, marks);
    }
    for (Nm& mark : marks) mark = layout.marks.phase[direction] + mark * layout.marks.step;
}

bool choose_shared(const Layout& layout,
                   std::size_t direction,
                   const Lines& lines,
                   Chosen& chosen) {
    const auto in_nm = [&](Nm mark) {
        return layout.marks.phase[direction] + mark * layout.marks.step;
    };
    const Nm least = in_nm(layout.least[direction]);
    const Nm most = in_nm(layout.most[direction]);
    if (layout.pattern == Pattern::diagonal) return false;
    if (chosen.count == 1) {
        chosen.at[0] = lines.nearest_to_middle(least, most);
        return chosen.at[0] != Lines::no_line;
    }
    std::array<Nm, 2> pair{};
    if (chosen.count != 2 ||
        !lines.pair_within(least, most, layout.apart * layout.marks.step, pair)) {
        return false;
    }
    chosen.at[0] = pair[0];
    chosen.at[1] = pair[1];
    return true;
}

Centres centres_of(const Layout& layout, const std::array<Chosen, 2>& chosen) {
    if (layout.pattern == Pattern::points) return layout.points;
    Centres centres;
    centres.reserve(static_cast<std::size_t>(layout.count));
    if (layout.pattern == Pattern::diagonal) {
        for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
            centres.push_back({chosen[0].at[i], chosen[1].at[i]});
        }
        return centres;
    }
    for (std::size_t i = 0; i < chosen[0].count; ++i) {
        for (std::size_t j = 0; j < chosen[1].count; ++j) {
            centres.push_back({chosen[0].at[i], chosen[1].at[j]});
        }
    }
    return centres;
}

struct Turn {
    Nm freedom = 0;
    Index choice = 0;
    std::size_t direction = 0;
};

std::vector<Turn> least_free_first(std::span<const LineChoice> choices) {
    std::vector<Turn> turns;
    turns.reserve(choices.size() * 2);
    for (Index i = 0; i < choices.size(); ++i) {
        const Pattern pattern = choices[i].layout.pattern;
        if (pattern == Pattern::none || pattern == Pattern::points) continue;
        for (const std::size_t d : {std::size_t{0}, std::size_t{1}}) {
            turns.push_back({freedom(choices[i].layout, d), i, d});
        }
    }
    std::stable_sort(turns.begin(), turns.end(),
                     [](const Turn& a, const Turn& b) { return a.freedom < b.freedom; });
    return turns;
}

}  // namespace

std::vector<Centres> place_on_lines(std::span<const LineChoice> choices, std::size_t stock_count) {
    std::vector<Lines> lines(stock_count);
    std::vector<std::array<Chosen, 2>> chosen(choices.size());
    for (const Turn& turn : least_free_first(choices)) {
        const LineChoice& choice = choices[turn.choice];
        Chosen& here = chosen[turn.choice][turn.direction];
        here.count = lines_needed(choice.layout, turn.direction);
        const Index stock = choice.stock[turn.direction];
        const bool may_share = stock < stock_count && choice.on_marks[turn.direction];
        if (may_share && choose_shared(choice.layout, turn.direction, lines[stock], here)) continue;
        choose_freely(choice.layout, turn.direction, here);
        if (!may_share) continue;
        for (std::size_t i = 0; i < here.count; ++i) lines[stock].add(here.at[i]);
    }
    std::vector<Centres> centres(choices.size());
    for (std::size_t i = 0; i < choices.size(); ++i) {
        centres[i] = centres_of(choices[i].layout, chosen[i]);
    }
    return centres;
}

}  // namespace model
