#include "model/schedule/face_sides.h"

#include "model/resolve/bay_box.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace model {
namespace {

bool overlap(const SideOfBay& a, const SideOfBay& b) {
    for (std::size_t k = 0; k < 2; ++k) {
        if (a.span[k][0] >= b.span[k][1] || b.span[k][0] >= a.span[k][1]) return false;
    }
    return true;
}

// What is left of a side beside another one, as rectangles.
std::vector<SideOfBay> left_of(const SideOfBay& side, const SideOfBay& other) {
    if (!overlap(side, other)) return {side};
    std::vector<SideOfBay> left;
    SideOfBay rest = side;
    for (std::size_t k = 0; k < 2; ++k) {
        if (rest.span[k][0] < other.span[k][0]) {
            SideOfBay part = rest;
            part.span[k][1] = rest.span[k][0] = other.span[k][0];
            part.planes[k][1] = rest.planes[k][0] = other.planes[k][0];
            left.push_back(std::move(part));
        }
        if (other.span[k][1] < rest.span[k][1]) {
            SideOfBay part = rest;
            part.span[k][0] = rest.span[k][1] = other.span[k][1];
            part.planes[k][0] = rest.planes[k][1] = other.planes[k][1];
            left.push_back(std::move(part));
        }
    }
    return left;
}

std::vector<SideOfBay> left_of(const SideOfBay& side, const std::vector<SideOfBay>& others) {
    std::vector<SideOfBay> left{side};
    for (const auto& other : others) {
        std::vector<SideOfBay> next;
        for (const auto& part : left) {
            auto rest = left_of(part, other);
            next.insert(next.end(), rest.begin(), rest.end());
        }
        left = std::move(next);
    }
    return left;
}

SideOfBay hull_of(const SideOfBay& a, const SideOfBay& b) {
    SideOfBay hull = a;
    for (std::size_t k = 0; k < 2; ++k) {
        for (std::size_t end = 0; end < 2; ++end) {
            const bool further =
                end == 0 ? b.span[k][0] < a.span[k][0] : b.span[k][1] > a.span[k][1];
            if (!further) continue;
            hull.span[k][end] = b.span[k][end];
            hull.planes[k][end] = b.planes[k][end];
        }
    }
    return hull;
}

// Two that make up a rectangle together become that, until none do. Areas of doubles tell: whole
// nanometres squared differ by far more than they are rounded.
std::vector<SideOfBay> merged(std::vector<SideOfBay> sides) {
    for (std::size_t i = 0; i < sides.size();) {
        bool found = false;
        for (std::size_t k = i + 1; k < sides.size() && !found; ++k) {
            const SideOfBay hull = hull_of(sides[i], sides[k]);
            const double both = area_of(sides[i]) + area_of(sides[k]);
            if (std::abs(area_of(hull) - both) > 1e-9 * both) continue;
            sides[i] = hull;
            sides.erase(sides.begin() + static_cast<std::ptrdiff_t>(k));
            found = true;
        }
        i = found ? 0 : i + 1;
    }
    return sides;
}

class FrameSides {
public:
    FrameSides(const Frame& frame, const ResolvedFrame& placed) : frame_{frame}, placed_{placed} {
        for (const auto& bay : frame.bays) add(bay);
        if (frame.bays.empty()) add(bay_of_all());
    }

    // The sides that no other bay lies against.
    std::map<SideKey, Sides> outside() const {
        std::map<SideKey, Sides> out;
        for (const auto& [key, here] : sides_) {
            const auto& [axis, position, sense] = key;
            const auto beyond = sides_.find({axis, position, -sense});
            for (const auto& side : here.sides) {
                const auto left = beyond == sides_.end() ? std::vector<SideOfBay>{side}
                                                         : left_of(side, beyond->second.sides);
                if (left.empty()) continue;
                auto& kept = out[key];
                kept.plane = here.plane;
                kept.sides.insert(kept.sides.end(), left.begin(), left.end());
            }
        }
        return out;
    }

private:
    // Of a frame without bays: from its first to its last plane along each axis.
    Bay bay_of_all() const {
        Bay bay;
        const std::array<std::array<std::string, 2>*, 3> planes{&bay.x, &bay.y, &bay.z};
        for (const auto& plane : frame_.planes) {
            auto& [first, last] = *planes[index_of(plane.axis)];
            const auto at = position_of(plane.name, plane.axis);
            if (!at) continue;
            if (first.empty() || *at < *position_of(first, plane.axis)) first = plane.name;
            if (last.empty() || *at > *position_of(last, plane.axis)) last = plane.name;
        }
        return bay;
    }

    std::optional<Nm> position_of(const std::string& plane, Axis axis) const {
        return plane_position(frame_, placed_, plane, axis);
    }

    void add(const Bay& bay) {
        const auto box = bay_box(frame_, placed_, bay);
        if (!box) return;
        const std::array<const std::array<std::string, 2>*, 3> planes{&bay.x, &bay.y, &bay.z};
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const auto others = across(static_cast<Axis>(axis));
            SideOfBay side;
            for (std::size_t k = 0; k < 2; ++k) {
                const std::size_t other = index_of(others[k]);
                side.span[k] = {box->lo[other], box->hi[other]};
                side.planes[k] = *planes[index_of(others[k])];
            }
            for (std::size_t end = 0; end < 2; ++end) {
                const Nm at = end == 0 ? box->lo[axis] : box->hi[axis];
                auto& here = sides_[{axis, at, end == 0 ? 1 : -1}];
                here.plane = (*planes[axis])[end];
                here.sides.push_back(side);
            }
        }
    }

    const Frame& frame_;
    const ResolvedFrame& placed_;
    std::map<SideKey, Sides> sides_;
};

}  // namespace

double area_of(const SideOfBay& side) {
    return static_cast<double>(side.span[0][1] - side.span[0][0]) *
           static_cast<double>(side.span[1][1] - side.span[1][0]);
}

double shared_area(const SideOfBay& a, const SideOfBay& b) {
    double area = 1.0;
    for (std::size_t k = 0; k < 2; ++k) {
        const Nm from = std::max(a.span[k][0], b.span[k][0]);
        const Nm to = std::min(a.span[k][1], b.span[k][1]);
        area *= static_cast<double>(std::max<Nm>(to - from, 0));
    }
    return area;
}

std::map<SideKey, Sides> outside_of(const Frame& frame, const ResolvedFrame& placed) {
    auto all = FrameSides(frame, placed).outside();
    for (auto& [key, here] : all) here.sides = merged(std::move(here.sides));
    return all;
}

}  // namespace model
