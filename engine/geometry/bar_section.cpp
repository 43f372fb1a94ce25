#include "engine/geometry/bar_section.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double same_place = 1e-6;  // mm

bool is_within(const BarNotch& notch, const FacePoint& at) {
    return at[0] >= notch.lo[0] - same_place && at[0] <= notch.hi[0] + same_place &&
           at[1] >= notch.lo[1] - same_place && at[1] <= notch.hi[1] + same_place;
}

FacePoint halfway(const FacePoint& a, const FacePoint& b) {
    return {(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0};
}

// Where along a straight side, as a share of it, the borders of the notches part it.
void collect_crossings(std::vector<double>& shares,
                       const FacePoint& from,
                       const FacePoint& to,
                       std::span<const BarNotch> notches) {
    shares.clear();
    const double length = std::hypot(to[0] - from[0], to[1] - from[1]);
    for (const auto& notch : notches) {
        for (std::size_t axis = 0; axis < 2; ++axis) {
            const double step = to[axis] - from[axis];
            for (const double border : {notch.lo[axis], notch.hi[axis]}) {
                const double share = (border - from[axis]) / step;
                if (!(share * length > same_place) || !((1.0 - share) * length > same_place))
                    continue;
                const FacePoint at{from[0] + share * (to[0] - from[0]),
                                   from[1] + share * (to[1] - from[1])};
                if (is_within(notch, at)) shares.push_back(share);
            }
        }
    }
    std::ranges::sort(shares);
    const auto is_same = [&](double a, double b) { return (b - a) * length <= same_place; };
    shares.erase(std::unique(shares.begin(), shares.end(), is_same), shares.end());
}

std::uint32_t part_at(const FacePoint& at, std::span<const BarNotch> notches) {
    for (std::uint32_t i = 0; i < notches.size(); ++i)
        if (is_within(notches[i], at)) return i + 1;
    return 0;
}

double turn_of(const FacePoint& from, const FacePoint& to, const FacePoint& centre) {
    const double ax = from[0] - centre[0];
    const double ay = from[1] - centre[1];
    const double bx = to[0] - centre[0];
    const double by = to[1] - centre[1];
    return std::atan2(ax * by - ay * bx, ax * bx + ay * by);
}

void add_side(PartedSection& parted,
              const SectionSide& side,
              const FacePoint& to,
              std::span<const BarNotch> notches,
              std::vector<double>& shares) {
    SectionNode node{.at = side.from, .is_arc = side.is_arc, .centre = side.centre};
    if (side.is_arc) {
        node.turn = turn_of(side.from, to, side.centre);
        node.part = part_at(halfway(side.from, to), notches);
        parted.nodes.push_back(node);
        return;
    }
    collect_crossings(shares, side.from, to, notches);
    for (std::size_t i = 0; i <= shares.size(); ++i) {
        const auto along = [&](double share) {
            return FacePoint{side.from[0] + share * (to[0] - side.from[0]),
                             side.from[1] + share * (to[1] - side.from[1])};
        };
        const FacePoint end = i < shares.size() ? along(shares[i]) : to;
        if (i > 0) node.at = along(shares[i - 1]);
        node.starts_side = i == 0;
        node.part = part_at(halfway(node.at, end), notches);
        parted.nodes.push_back(node);
    }
}

void link_loop(PartedSection& parted, std::uint32_t first) {
    const auto end = static_cast<std::uint32_t>(parted.nodes.size());
    for (auto i = first; i < end; ++i) {
        parted.nodes[i].next = i + 1 == end ? first : i + 1;
        parted.nodes[i].previous = i == first ? end - 1 : i - 1;
    }
}

// Where the outline leaves a part, the part's border leads back to where the outline enters it: the
// nearest such node on the same side of the notch.
bool add_borders(PartedSection& parted, std::span<const BarNotch> notches) {
    const auto count = static_cast<std::uint32_t>(parted.nodes.size());
    const auto part_before = [&](std::uint32_t i) {
        return parted.nodes[parted.nodes[i].previous].part;
    };
    for (std::uint32_t left = 0; left < count; ++left) {
        const auto part = part_before(left);
        if (part == 0 || part == parted.nodes[left].part) continue;
        const auto& notch = notches[part - 1];
        double least = 0.0;
        std::uint32_t found = count;
        for (std::uint32_t entered = 0; entered < count; ++entered) {
            if (parted.nodes[entered].part != part || part_before(entered) == part) continue;
            const auto& a = parted.nodes[left].at;
            const auto& b = parted.nodes[entered].at;
            for (std::size_t axis = 0; axis < 2; ++axis) {
                const double apart = std::abs(a[1 - axis] - b[1 - axis]);
                const bool is_level = std::abs(a[axis] - b[axis]) <= same_place;
                const bool is_border = std::abs(a[axis] - notch.lo[axis]) <= same_place ||
                                       std::abs(a[axis] - notch.hi[axis]) <= same_place;
                if (!is_level || !is_border || !(apart > same_place)) continue;
                if (found != count && apart >= least) continue;
                found = entered;
                least = apart;
            }
        }
        if (found == count) return false;
        parted.borders.push_back({.from = found, .to = left, .part = part});
        parted.nodes[found].is_on_border = parted.nodes[left].is_on_border = true;
    }
    return true;
}

}  // namespace

std::uint32_t PartedSection::across_border(std::uint32_t node,
                                           std::uint32_t part,
                                           std::uint32_t met) const {
    for (const auto& border : borders) {
        if (part != 0 && border.part == part && border.to == node) return border.from;
        if (part == 0 && border.part == met && border.from == node) return border.to;
    }
    return node;
}

bool part_section(PartedSection& parted,
                  const BarSection& section,
                  std::span<const BarNotch> notches) {
    parted.nodes.clear();
    parted.borders.clear();
    if (section.sides.size() < 3 || section.loop_ends.empty()) return false;
    std::vector<double> shares;
    std::uint32_t first = 0;
    for (const auto end : section.loop_ends) {
        const auto first_node = static_cast<std::uint32_t>(parted.nodes.size());
        for (auto i = first; i < end; ++i) {
            const auto& to = section.sides[i + 1 == end ? first : i + 1].from;
            add_side(parted, section.sides[i], to, notches, shares);
        }
        link_loop(parted, first_node);
        first = end;
    }
    return add_borders(parted, notches);
}

}  // namespace engine
