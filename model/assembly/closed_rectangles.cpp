#include "model/assembly/closed_rectangles.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace model {
namespace {

std::array<std::size_t, 2> axes_across(std::size_t axis) {
    const auto others = across(static_cast<Axis>(axis));
    return {index_of(others[0]), index_of(others[1])};
}

// The edge of a bar that lies on its plane, or next to it where a lap sets it in.
Nm heel_of(const Piece& bar, std::size_t axis, Nm plane) {
    const Nm lo = bar.extents.lo[axis];
    const Nm hi = bar.extents.hi[axis];
    return std::abs(lo - plane) <= std::abs(hi - plane) ? lo : hi;
}

double length_between(const Point& a, const Point& b) {
    double sum = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto apart = static_cast<double>(a[k] - b[k]);
        sum += apart * apart;
    }
    return std::sqrt(sum);
}

}  // namespace

bool JointCorner::is_in(const RectangleAt& rectangle) const {
    if (axis != rectangle.axis || at != rectangle.at) return false;
    for (std::size_t k = 0; k < 2; ++k) {
        if (along[k] < rectangle.along[k][0] || along[k] > rectangle.along[k][1]) return false;
    }
    return true;
}

ClosedRectangles::ClosedRectangles(const FrameParts& parts) : parts_{parts} {
    add_lines();
    for (Index j = 0; j < parts_.joints().size(); ++j) {
        corners_.push_back(found_corner(parts_.joints()[j]));
        const auto& corner = corners_.back();
        if (corner) joints_at_[{corner->axis, corner->at}][corner->along].push_back(j);
    }
}

std::vector<ClosedRectangle> ClosedRectangles::at(Index joint, const PieceSet& present) const {
    std::vector<ClosedRectangle> closed;
    const auto& corner = corners_[joint];
    if (!corner) return closed;
    for (const auto& [opposite, joints] : joints_at_.at({corner->axis, corner->at})) {
        RectangleAt place{.axis = corner->axis, .at = corner->at};
        for (std::size_t k = 0; k < 2; ++k)
            place.along[k] = {std::min(corner->along[k], opposite[k]),
                              std::max(corner->along[k], opposite[k])};
        if (!is_closed(place, present)) continue;
        auto row = measured(place, present);
        if (row) closed.push_back({place, std::move(*row)});
    }
    return closed;
}

// The members of which the two pieces are, or which what is put over their corner joins.
std::optional<std::array<Index, 2>> ClosedRectangles::bars_of(const JointOfFrame& joint) const {
    const auto& members = parts_.stated().members;
    const auto& pieces = parts_.resolved().joints[joint.joint].pieces;
    std::array<Index, 2> bars{no_index, no_index};
    for (std::size_t k = 0; k < 2; ++k) {
        const Piece& piece = parts_.resolved().pieces[pieces[k]];
        if (piece.lean != no_index) return std::nullopt;
        bars[k] = piece.member;
        if (piece.serves[0] < members.size() && piece.serves[1] < members.size() &&
            piece.serves[0] != piece.serves[1])
            return piece.serves;
    }
    const bool are_members = bars[0] < members.size() && bars[1] < members.size();
    return are_members ? std::optional(bars) : std::nullopt;
}

std::optional<Nm> ClosedRectangles::position(Index member, std::size_t axis) const {
    const Member& bar = parts_.stated().members[member];
    if (index_of(bar.run) == axis) return std::nullopt;
    const auto& name = bar.on[index_of(across(bar.run)[0]) == axis ? 0 : 1];
    const auto& planes = parts_.stated().planes;
    const auto found = std::ranges::find(planes, name, &Plane::name);
    const auto number = static_cast<std::size_t>(found - planes.begin());
    const auto& placed = parts_.placed().planes;
    return number < placed.size() ? placed[number].position : std::nullopt;
}

std::optional<JointCorner> ClosedRectangles::found_corner(const JointOfFrame& joint) const {
    const auto bars = bars_of(joint);
    if (!joint.is_fastened || !bars) return std::nullopt;
    const auto& members = parts_.stated().members;
    const std::size_t first = index_of(members[(*bars)[0]].run);
    const std::size_t second = index_of(members[(*bars)[1]].run);
    if (first == second) return std::nullopt;
    JointCorner corner{.axis = 3 - first - second};
    const auto at = position((*bars)[0], corner.axis);
    const auto others = axes_across(corner.axis);
    if (!at || position((*bars)[1], corner.axis) != at) return std::nullopt;
    corner.at = *at;
    for (std::size_t k = 0; k < 2; ++k) {
        const auto along = position((*bars)[others[k] == first ? 1 : 0], others[k]);
        if (!along) return std::nullopt;
        corner.along[k] = *along;
    }
    return corner;
}

void ClosedRectangles::add_lines() {
    for (Index i = 0; i < parts_.size(); ++i) {
        const Piece& piece = parts_.piece(i);
        const bool is_member = piece.member < parts_.stated().members.size();
        if (!is_member || piece.kind != PieceKind::bar || piece.lean != no_index) continue;
        const std::size_t run = index_of(piece.run);
        const auto others = axes_across(run);
        const std::array<std::optional<Nm>, 2> at{position(piece.member, others[0]),
                                                  position(piece.member, others[1])};
        if (!at[0] || !at[1]) continue;
        lines_[{others[0], *at[0], run, *at[1]}].push_back(i);
        lines_[{others[1], *at[1], run, *at[0]}].push_back(i);
        for (const std::size_t k : others)
            widest_ = std::max(widest_, piece.extents.hi[k] - piece.extents.lo[k]);
    }
    widest_ += 2 * parts_.resolved().shop.end_gap;
    for (auto& [key, pieces] : lines_) {
        const std::size_t run = std::get<2>(key);
        std::ranges::stable_sort(pieces, {},
                                 [&, run](Index i) { return parts_.piece(i).extents.lo[run]; });
    }
}

bool ClosedRectangles::is_joined(const PlaneKey& plane,
                                 const Place& place,
                                 const PieceSet& present) const {
    const auto& here = joints_at_.at(plane);
    const auto found = here.find(place);
    return found != here.end() && std::ranges::any_of(found->second, [&](Index j) {
               return parts_.joints()[j].stands_in(present);
           });
}

bool ClosedRectangles::is_covered(const LineKey& line,
                                  Nm from,
                                  Nm to,
                                  const PieceSet& present) const {
    const auto found = lines_.find(line);
    if (found == lines_.end()) return false;
    const std::size_t run = std::get<2>(line);
    Nm reached = from;
    for (const Index i : found->second) {
        const auto& extents = parts_.piece(i).extents;
        if (present.contains(i) && extents.lo[run] <= reached + widest_)
            reached = std::max(reached, extents.hi[run]);
    }
    return reached + widest_ >= to;
}

bool ClosedRectangles::is_closed(const RectangleAt& rectangle, const PieceSet& present) const {
    const auto& [axis, at, along] = rectangle;
    if (!do_diagonals_tell({along[0][1] - along[0][0], along[1][1] - along[1][0]})) return false;
    for (const Nm u : along[0]) {
        for (const Nm v : along[1]) {
            if (!is_joined({axis, at}, {u, v}, present)) return false;
        }
    }
    const auto others = axes_across(axis);
    for (std::size_t k = 0; k < 2; ++k) {
        for (const Nm line : along[1 - k]) {
            if (!is_covered({axis, at, others[k], line}, along[k][0], along[k][1], present))
                return false;
        }
    }
    return true;
}

// Where the heels of the two bars cross; where both end before that, on the one that comes nearer.
std::optional<Point> ClosedRectangles::corner_for_tape(const RectangleAt& rectangle,
                                                       const Place& place,
                                                       const PieceSet& present) const {
    const auto others = axes_across(rectangle.axis);
    std::array<const Piece*, 2> bars{};  // by the axis along which they run
    Point heels{};
    for (std::size_t k = 0; k < 2; ++k) {
        const std::size_t run = others[k];
        const auto past = [&](const Piece& bar) {
            return std::max<Nm>(
                {bar.extents.lo[run] - place[k], place[k] - bar.extents.hi[run], 0});
        };
        const auto line = lines_.find({rectangle.axis, rectangle.at, run, place[1 - k]});
        if (line == lines_.end()) return std::nullopt;
        for (const Index i : line->second) {
            const Piece& bar = parts_.piece(i);
            if (!present.contains(i)) continue;
            if (bars[k] == nullptr || past(bar) < past(*bars[k])) bars[k] = &bar;
        }
        if (bars[k] == nullptr) return std::nullopt;
        heels[others[1 - k]] = heel_of(*bars[k], others[1 - k], place[1 - k]);
    }
    std::array<Point, 2> on{heels, heels};
    for (std::size_t k = 0; k < 2; ++k) {
        const auto& extents = bars[k]->extents;
        on[k][others[k]] =
            std::clamp(heels[others[k]], extents.lo[others[k]], extents.hi[others[k]]);
    }
    return length_between(on[0], heels) < length_between(on[1], heels) ? on[0] : on[1];
}

std::optional<SquareRow> ClosedRectangles::measured(const RectangleAt& rectangle,
                                                    const PieceSet& present) const {
    std::array<std::array<Point, 2>, 2> corners{};
    SquareRow row;
    row.frame = parts_.frame();
    row.face = plane_name(rectangle.axis, rectangle.at);
    row.is_heel_to_heel = true;
    const auto others = axes_across(rectangle.axis);
    for (std::size_t i = 0; i < 2; ++i) {
        for (std::size_t k = 0; k < 2; ++k) {
            row.between[k][i] = plane_name(others[k], rectangle.along[k][i]);
            const auto corner =
                corner_for_tape(rectangle, {rectangle.along[0][i], rectangle.along[1][k]}, present);
            if (!corner) return std::nullopt;
            corners[i][k] = *corner;
        }
    }
    const double one = length_between(corners[0][0], corners[1][1]);
    const double other = length_between(corners[0][1], corners[1][0]);
    constexpr double hair = 100'000.0;  // nm: less than a tape tells
    if (std::abs(one - other) > hair) return std::nullopt;
    row.diagonal = Length::from_nm(std::llround((one + other) / 2));
    for (std::size_t k = 0; k < 2; ++k)
        row.size[k] = Length::from_nm(corners[1][1][others[k]] - corners[0][0][others[k]]);
    return row;
}

std::string ClosedRectangles::plane_name(std::size_t axis, Nm at) const {
    const auto& planes = parts_.stated().planes;
    const auto& placed = parts_.placed().planes;
    for (std::size_t i = 0; i < planes.size() && i < placed.size(); ++i) {
        if (index_of(planes[i].axis) == axis && placed[i].position == at) return planes[i].name;
    }
    return {};
}

}  // namespace model
