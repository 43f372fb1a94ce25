#include "model/book/mark_ordinates.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace model {
namespace {

constexpr double same_place = 0.02;  // mm; no tape tells these apart

// Finds the one at that place, or puts it there.
Ordinate& ordinate_at(std::vector<Ordinate>& all, double at, double other) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Ordinate& ordinate) {
        return std::abs(ordinate.at - at) < same_place;
    });
    if (found != all.end()) {
        found->nearest = std::min(found->nearest, other);
        found->farthest = std::max(found->farthest, other);
        return *found;
    }
    all.push_back({.at = at, .nearest = other, .farthest = other});
    return all.back();
}

// "3, 4", "1-7".
std::string numbers_text(std::vector<int> numbers) {
    std::sort(numbers.begin(), numbers.end());
    std::string text;
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t last = i;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        if (!text.empty()) text += ", ";
        text += "h" + std::to_string(numbers[i]);
        if (last == i + 1) text += ", h" + std::to_string(numbers[last]);
        if (last > i + 1) text += "-" + std::to_string(numbers[last]);
        i = last + 1;
    }
    return text;
}

class Gathering {
public:
    Gathering(const Project& project, const Resolved& resolved, const MarkFacts& facts)
        : project_{project}, resolved_{resolved}, facts_{facts} {}

    MarkOrdinates all() && {
        for (std::size_t i = 0; i < flat().holes.size(); ++i) add_hole(i);
        add_corners();
        auto& end = ordinate_at(made_.left, flat().length, 0.0);
        end.text = length_text(project_, facts_.cut.length);
        end.is_end = true;
        const auto by_place = [](const Ordinate& a, const Ordinate& b) { return a.at < b.at; };
        for (auto* list : {&made_.left, &made_.right, &made_.below}) {
            std::sort(list->begin(), list->end(), by_place);
            for (auto& ordinate : *list) ordinate.numbers = numbers_text(ordinate.holes);
        }
        return std::move(made_);
    }

private:
    const UnrolledPiece& flat() const { return facts_.flat; }

    bool is_left(const UnrolledWall& wall) const {
        return flat().walls.size() == 1 || wall.left() + wall.right() < flat().width;
    }

    void add_hole(std::size_t i) {
        const auto& hole = flat().holes[i];
        const auto& wall = flat().walls[hole.wall];
        const auto& it = resolved_.holes[hole.hole];
        auto& along = ordinate_at(is_left(wall) ? made_.left : made_.right, hole.down, hole.across);
        along.text = length_text(project_, Length::from_nm(it.from_datum));
        along.holes.push_back(facts_.numbers[i]);
        auto& across = ordinate_at(made_.below, hole.across, hole.down);
        across.text = length_text(project_, Length::from_nm(it.gauge));
        add_heel(wall.heel);
    }

    void add_heel(double heel) {
        for (const double known : made_.heels)
            if (std::abs(known - heel) < same_place) return;
        made_.heels.push_back(heel);
    }

    bool is_end(double at, double whole) const {
        return at < same_place || at > whole - same_place;
    }

    // Of notches, slopes and what is cut out: along the piece, and across what is cut from sheet or
    // flat bar. Across a leg the words of its end tell it.
    void add_corners() {
        const bool is_one_wall = flat().walls.size() == 1;
        for (const auto& loop : flat().loops) {
            const double middle = (loop[0][0] + loop[loop.size() / 2][0]) / 2;
            const bool on_left = is_one_wall || middle < flat().width / 2;
            for (const auto& [across, down] : loop) {
                if (!is_end(down, flat().length)) {
                    add_corner(on_left ? made_.left : made_.right, down, across, down);
                }
                if (!is_one_wall || is_end(across, flat().width)) continue;
                const auto& wall = flat().walls.front();
                add_corner(made_.below, across, down, std::abs(across - wall.heel));
                add_heel(wall.heel);
            }
        }
        if (!facts_.is_sheet()) return;
        const auto& wall = flat().walls.front();
        auto& width = ordinate_at(made_.below, wall.toe, flat().length);
        width.text = length_text(project_, facts_.cut.width);
        add_heel(wall.heel);
    }

    void add_corner(std::vector<Ordinate>& list, double at, double other, double told) {
        auto& ordinate = ordinate_at(list, at, other);
        if (ordinate.text.empty())
            ordinate.text =
                length_text(project_, Length::from_nm(static_cast<Nm>(std::llround(told * 1.0e6))));
    }

    const Project& project_;
    const Resolved& resolved_;
    const MarkFacts& facts_;
    MarkOrdinates made_;
};

}  // namespace

MarkOrdinates mark_ordinates(const Project& project,
                             const Resolved& resolved,
                             const MarkFacts& facts) {
    if (facts.flat.walls.empty()) return {};
    return Gathering(project, resolved, facts).all();
}

}  // namespace model
