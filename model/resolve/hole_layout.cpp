#include "model/resolve/hole_layout.h"

#include <algorithm>

namespace model {
namespace {

constexpr Nm ceil_div(Nm a, Nm b) { return a >= 0 ? (a + b - 1) / b : -(-a / b); }
constexpr Nm floor_div(Nm a, Nm b) { return -ceil_div(-a, b); }

bool is_better(const Layout& a, const Layout& b) {
    if (a.count != b.count) return a.count > b.count;
    if (a.pattern != b.pattern) return a.pattern < b.pattern;  // a row before the others
    return a.margin > b.margin;
}

// A row of n along one direction, in the middle of the other.
void consider_row(Layout& best, const Layout& empty, std::size_t along, int n) {
    const std::size_t other = 1 - along;
    const Nm spare = empty.most[along] - empty.least[along] - (n - 1) * empty.apart;
    if (spare < 0) return;
    Layout row = empty;
    row.pattern = Pattern::row;
    row.along = along;
    row.count = n;
    row.margin = std::min(spare / (n + 1), (empty.most[other] - empty.least[other]) / 2);
    if (is_better(row, best)) best = row;
}

void consider_two_rows(Layout& best, const Layout& empty, std::size_t along, int n) {
    const std::size_t other = 1 - along;
    const Nm in_a_row = n / 2;
    const Nm spare_along = empty.most[along] - empty.least[along] - (in_a_row - 1) * empty.apart;
    const Nm spare_across = empty.most[other] - empty.least[other] - empty.apart;
    if (n % 2 != 0 || spare_along < 0 || spare_across < 0) return;
    Layout rows = empty;
    rows.pattern = Pattern::two_rows;
    rows.along = along;
    rows.count = n;
    rows.margin = std::min(spare_along / (in_a_row + 1), spare_across / 3);
    if (is_better(rows, best)) best = rows;
}

// Two corners of the region, drawn in towards each other as far as the pitch allows.
void consider_diagonal(Layout& best, const Layout& empty) {
    const Nm du = empty.most[0] - empty.least[0];
    const Nm dv = empty.most[1] - empty.least[1];
    const auto far_enough = [&](Nm margin) {
        const double a = static_cast<double>(du - 2 * margin);
        const double b = static_cast<double>(dv - 2 * margin);
        const double pitch = static_cast<double>(empty.apart);
        return a >= 0 && b >= 0 && a * a + b * b >= pitch * pitch;
    };
    if (!far_enough(0)) return;
    Layout pair = empty;
    pair.pattern = Pattern::diagonal;
    pair.count = 2;
    pair.margin = 0;
    while (pair.margin < 64 && far_enough(pair.margin + 1)) ++pair.margin;
    if (is_better(pair, best)) best = pair;
}

// Walks through all rectangles that are left when the obstacles are taken away one by one, each by
// one of its four sides.
class Around {
public:
    Around(std::span<const Region> obstacles, const Marks& marks, int wanted, Nm pitch)
        : obstacles_{obstacles}, marks_{marks}, wanted_{wanted}, pitch_{pitch} {}

    Layout search(const Region& region) {
        walk(region, 0);
        return best_;
    }

private:
    // Laps have a handful of obstacles, most of them along an edge; more walks than this only
    // repeat rectangles.
    static constexpr int most_walks = 512;

    void walk(const Region& region, std::size_t at) {
        if (++walks_ > most_walks) return;
        while (at < obstacles_.size() && !covers_some(obstacles_[at], region)) ++at;
        if (at == obstacles_.size()) {
            const Layout layout = best_layout(region, marks_, wanted_, pitch_);
            if (is_better(layout, best_)) best_ = layout;
            return;
        }
        const Region& taken = obstacles_[at];
        for (std::size_t k = 0; k < 2; ++k) {
            Region below = region;
            below.hi[k] = taken.lo[k];
            Region above = region;
            above.lo[k] = taken.hi[k];
            if (below.lo[k] <= below.hi[k]) walk(below, at + 1);
            if (above.lo[k] <= above.hi[k]) walk(above, at + 1);
        }
    }

    static bool covers_some(const Region& taken, const Region& region) {
        return taken.lo[0] < region.hi[0] && region.lo[0] < taken.hi[0] &&
               taken.lo[1] < region.hi[1] && region.lo[1] < taken.hi[1];
    }

    std::span<const Region> obstacles_;
    const Marks& marks_;
    int wanted_;
    Nm pitch_;
    Layout best_;
    int walks_ = 0;
};

}  // namespace

Layout best_layout(const Region& region, const Marks& marks, int wanted, Nm pitch) {
    Layout empty;
    empty.marks = marks;
    empty.apart = std::max<Nm>(ceil_div(pitch, marks.step), 1);
    for (std::size_t k = 0; k < 2; ++k) {
        empty.least[k] = ceil_div(region.lo[k] - marks.phase[k], marks.step);
        empty.most[k] = floor_div(region.hi[k] - marks.phase[k], marks.step);
        if (empty.least[k] > empty.most[k]) return empty;
    }
    Layout best = empty;
    for (int n = wanted; n > 0 && best.count == 0; --n) {
        for (const std::size_t along : {std::size_t{0}, std::size_t{1}}) {
            consider_row(best, empty, along, n);
            if (n >= 4) consider_two_rows(best, empty, along, n);
        }
        if (n == 2) consider_diagonal(best, empty);
    }
    return best;
}

Layout best_layout_around(const Region& region,
                          std::span<const Region> obstacles,
                          const Marks& marks,
                          int wanted,
                          Nm pitch) {
    if (region.lo[0] > region.hi[0] || region.lo[1] > region.hi[1]) return {};
    return Around(obstacles, marks, wanted, pitch).search(region);
}

void spread(Nm least, Nm most, Nm apart, std::span<Nm> marks) {
    const auto n = static_cast<Nm>(marks.size());
    const Nm spare = most - least - (n - 1) * apart;
    const Nm each = spare / (n + 1);
    const Nm first = least + (spare - (n - 1) * each) / 2;
    for (Nm i = 0; i < n; ++i) marks[static_cast<std::size_t>(i)] = first + i * (apart + each);
}

}  // namespace model
