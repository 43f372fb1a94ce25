#include "model/schedule/square.h"

#include "engine/files/csv.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/length_texts.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

namespace model {
namespace {

using Span = std::array<Nm, 2>;

// A side of a bay, along the two axes of its plane.
struct Side {
    std::array<Span, 2> span{};
    std::array<std::array<std::string, 2>, 2> planes;
};

// In one plane: its position, and whether the bay lies behind it (-1) or before it (+1).
using SideKey = std::tuple<std::size_t, Nm, int>;

struct Sides {
    std::string plane;
    std::vector<Side> sides;
};

bool overlap(const Side& a, const Side& b) {
    for (std::size_t k = 0; k < 2; ++k) {
        if (a.span[k][0] >= b.span[k][1] || b.span[k][0] >= a.span[k][1]) return false;
    }
    return true;
}

// What is left of a side beside another one, as rectangles.
std::vector<Side> left_of(const Side& side, const Side& other) {
    if (!overlap(side, other)) return {side};
    std::vector<Side> left;
    Side rest = side;
    for (std::size_t k = 0; k < 2; ++k) {
        if (rest.span[k][0] < other.span[k][0]) {
            Side part = rest;
            part.span[k][1] = rest.span[k][0] = other.span[k][0];
            part.planes[k][1] = rest.planes[k][0] = other.planes[k][0];
            left.push_back(std::move(part));
        }
        if (other.span[k][1] < rest.span[k][1]) {
            Side part = rest;
            part.span[k][0] = rest.span[k][1] = other.span[k][1];
            part.planes[k][0] = rest.planes[k][1] = other.planes[k][1];
            left.push_back(std::move(part));
        }
    }
    return left;
}

std::vector<Side> left_of(const Side& side, const std::vector<Side>& others) {
    std::vector<Side> left{side};
    for (const auto& other : others) {
        std::vector<Side> next;
        for (const auto& part : left) {
            auto rest = left_of(part, other);
            next.insert(next.end(), rest.begin(), rest.end());
        }
        left = std::move(next);
    }
    return left;
}

double area_of(const Side& side) {
    return static_cast<double>(side.span[0][1] - side.span[0][0]) *
           static_cast<double>(side.span[1][1] - side.span[1][0]);
}

Side hull_of(const Side& a, const Side& b) {
    Side hull = a;
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
std::vector<Side> merged(std::vector<Side> sides) {
    for (std::size_t i = 0; i < sides.size();) {
        bool found = false;
        for (std::size_t k = i + 1; k < sides.size() && !found; ++k) {
            const Side hull = hull_of(sides[i], sides[k]);
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
                const auto left = beyond == sides_.end() ? std::vector<Side>{side}
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
            const auto at = position_of(plane.name);
            if (!at) continue;
            if (first.empty() || *at < *position_of(first)) first = plane.name;
            if (last.empty() || *at > *position_of(last)) last = plane.name;
        }
        return bay;
    }

    std::optional<Nm> position_of(const std::string& plane) const {
        const auto found = std::ranges::find(frame_.planes, plane, &Plane::name);
        const auto i = static_cast<std::size_t>(found - frame_.planes.begin());
        if (i >= placed_.planes.size()) return std::nullopt;
        return placed_.planes[i].position;
    }

    void add(const Bay& bay) {
        const std::array<const std::array<std::string, 2>*, 3> planes{&bay.x, &bay.y, &bay.z};
        std::array<Span, 3> spans{};
        for (std::size_t k = 0; k < 3; ++k) {
            const auto lo = position_of((*planes[k])[0]);
            const auto hi = position_of((*planes[k])[1]);
            if (!lo || !hi || *lo >= *hi) return;
            spans[k] = {*lo, *hi};
        }
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const auto others = across(static_cast<Axis>(axis));
            Side side;
            for (std::size_t k = 0; k < 2; ++k) {
                side.span[k] = spans[index_of(others[k])];
                side.planes[k] = *planes[index_of(others[k])];
            }
            for (std::size_t end = 0; end < 2; ++end) {
                auto& here = sides_[{axis, spans[axis][end], end == 0 ? 1 : -1}];
                here.plane = (*planes[axis])[end];
                here.sides.push_back(side);
            }
        }
    }

    const Frame& frame_;
    const ResolvedFrame& placed_;
    std::map<SideKey, Sides> sides_;
};

SquareRow row_of(Index frame, const std::string& plane, const Side& side) {
    SquareRow row{.frame = frame, .face = plane, .between = side.planes};
    std::array<double, 2> size{};
    for (std::size_t k = 0; k < 2; ++k) {
        row.size[k] = Length::from_nm(side.span[k][1] - side.span[k][0]);
        size[k] = static_cast<double>(row.size[k].nm());
    }
    row.diagonal = Length::from_nm(std::llround(std::hypot(size[0], size[1])));
    return row;
}

}  // namespace

std::vector<SquareRow> square_rows(const Project& project, const Resolved& resolved) {
    std::vector<SquareRow> rows;
    for (Index f = 0; f < project.frames.size() && f < resolved.frames.size(); ++f) {
        const FrameSides sides{project.frames[f], resolved.frames[f]};
        for (const auto& [key, here] : sides.outside()) {
            for (const auto& side : merged(here.sides)) rows.push_back(row_of(f, here.plane, side));
        }
    }
    return rows;
}

std::string square_csv(const Project& project, const std::vector<SquareRow>& rows) {
    engine::CsvText text{"frame",  "face",     "across",   "up",        "width",
                         "height", "diagonal", "width_mm", "height_mm", "diagonal_mm"};
    LengthTexts shown{project.shown};
    const auto pair = [](const std::array<std::string, 2>& planes) {
        return planes[0] + " to " + planes[1];
    };
    for (const auto& row : rows) {
        text.row({project.frames[row.frame].name, row.face, pair(row.between[0]),
                  pair(row.between[1]), shown(row.size[0]), shown(row.size[1]), shown(row.diagonal),
                  decimal_mm(row.size[0]), decimal_mm(row.size[1]), decimal_mm(row.diagonal)});
    }
    return std::move(text).take();
}

}  // namespace model
