#include "model/resolve/spaced_row.h"

#include <algorithm>
#include <cstdlib>
#include <optional>

namespace model {
namespace {

constexpr Nm ceil_div(Nm a, Nm b) { return a >= 0 ? (a + b - 1) / b : -(-a / b); }
constexpr Nm floor_div(Nm a, Nm b) { return -ceil_div(-a, b); }

// The marks that are free, as stretches from one mark to another.
class FreeMarks {
public:
    explicit FreeMarks(RowRoom& room) : step_{room.step}, phase_{room.phase} {
        std::ranges::sort(room.blocked);
        Nm from = room.least;
        for (const auto& [lo, hi] : room.blocked) {
            if (hi <= from) continue;
            add(from, std::min(lo, room.most));
            from = hi;
        }
        add(from, room.most);
    }

    bool empty() const { return stretches_.empty(); }
    Nm first() const { return stretches_.front()[0]; }
    Nm last() const { return stretches_.back()[1]; }

    std::optional<Nm> at_or_before(Nm mark) const {
        std::optional<Nm> found;
        for (const auto& [from, to] : stretches_) {
            if (from <= mark) found = std::min(to, mark);
        }
        return found;
    }

    std::optional<Nm> at_or_after(Nm mark) const {
        for (const auto& [from, to] : stretches_) {
            if (to >= mark) return std::max(from, mark);
        }
        return std::nullopt;
    }

    Nm nearest(Nm mark) const {
        const auto before = at_or_before(mark);
        const auto after = at_or_after(mark);
        if (!before) return *after;
        if (!after) return *before;
        return mark - *before <= *after - mark ? *before : *after;
    }

private:
    void add(Nm from, Nm to) {
        const Nm first = ceil_div(from - phase_, step_);
        const Nm last = floor_div(to - phase_, step_);
        if (first <= last) stretches_.push_back({first, last});
    }

    Nm step_;
    Nm phase_;
    std::vector<std::array<Nm, 2>> stretches_;
};

// Rows of more are nonsense, and would take long.
constexpr Nm most_in_row = 500;

struct InMarks {
    Nm apart = 1;
    Nm pitch = 1;
};

bool keeps(const std::vector<Nm>& marks, const InMarks& rule) {
    for (std::size_t i = 1; i < marks.size(); ++i) {
        const Nm gap = marks[i] - marks[i - 1];
        if (gap < rule.apart || gap > rule.pitch) return false;
    }
    return true;
}

// Evenly spread, each on the nearest free mark.
std::vector<Nm> evenly(const FreeMarks& free, Nm gaps) {
    std::vector<Nm> marks;
    const Nm length = free.last() - free.first();
    for (Nm i = 0; i <= gaps; ++i) {
        marks.push_back(free.nearest(free.first() + (2 * i * length + gaps) / (2 * gaps)));
    }
    return marks;
}

// From the first, each as far on as the pitch allows, or as soon after as there is room.
std::vector<Nm> step_by_step(const FreeMarks& free, const InMarks& rule) {
    std::vector<Nm> marks{free.first()};
    while (marks.back() < free.last() && marks.size() < std::size_t{most_in_row}) {
        auto next = free.at_or_before(marks.back() + rule.pitch);
        if (*next < marks.back() + rule.apart) next = free.at_or_after(marks.back() + rule.apart);
        if (!next) break;
        marks.push_back(*next);
    }
    return marks;
}

std::vector<Nm> marks_of(const FreeMarks& free, const InMarks& rule) {
    const Nm length = free.last() - free.first();
    if (length < rule.apart) return {free.nearest((free.first() + free.last()) / 2)};
    const Nm least = std::clamp<Nm>(ceil_div(length, rule.pitch), 1, most_in_row);
    for (Nm gaps = least; gaps <= least + 2; ++gaps) {
        auto marks = evenly(free, gaps);
        if (keeps(marks, rule)) return marks;
    }
    return step_by_step(free, rule);
}

}  // namespace

std::vector<Nm> spaced_row(RowRoom room) {
    const FreeMarks free(room);
    if (free.empty()) return {};
    const Nm apart = std::max<Nm>(1, ceil_div(room.apart, room.step));
    const InMarks rule{apart, std::max(apart, floor_div(room.pitch, room.step))};
    std::vector<Nm> centres = marks_of(free, rule);
    for (Nm& centre : centres) centre = room.phase + centre * room.step;
    return centres;
}

Nm greatest_gap(const std::vector<Nm>& centres) {
    Nm gap = 0;
    for (std::size_t i = 1; i < centres.size(); ++i) {
        gap = std::max(gap, centres[i] - centres[i - 1]);
    }
    return gap;
}

}  // namespace model
