#include "model/resolve/leaning_place.h"

#include "model/resolve/face_laps.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace model {
namespace {

// What shares less than this with it, seen in the face, is the rounding of its corners: nm2.
constexpr double least_shared = 1e6;

// Which way it runs and its leg points, along the face's axes: `most` is the one that it runs
// along more, `less` the other one; both are places in BraceLine::axes.
struct Directions {
    std::size_t most = 0;
    std::size_t less = 1;
    std::array<double, 2> run{};
    std::array<double, 2> across{};

    int sense() const { return run[most] > 0.0 ? 1 : -1; }
    // For each length across, how much further along its run the plane of an end lies.
    double slope() const { return -across[most] / run[most]; }
};

Directions directions_of(const BraceLine& line, Sense leg) {
    Directions d;
    const auto slope = slope_of(line);
    if (slope[1] > slope[0]) std::swap(d.most, d.less);
    for (std::size_t k = 0; k < 2; ++k) {
        d.run[k] = line.nodes[1][k] > line.nodes[0][k] ? slope[k] : -slope[k];
    }
    d.across[d.less] = sign_of(leg) * std::abs(d.run[d.most]);
    d.across[d.most] = -sign_of(leg) * d.sense() * d.run[d.less];
    return d;
}

class LeaningPlacing {
public:
    LeaningPlacing(const PartRoom& room,
                   const FrameSkeleton& skeleton,
                   const engine::BoxTree& tree,
                   const BraceLine& line,
                   const BraceFace& face,
                   Sense leg)
        : room_{room},
          s_{skeleton},
          tree_{tree},
          line_{line},
          face_{face},
          leg_{sign_of(leg)},
          d_{directions_of(line, leg)},
          ends_{line.nodes[0][d_.most], line.nodes[1][d_.most]} {}

    // False where nothing is left of it.
    bool place() {
        // Each round clears something that stands in the way.
        constexpr int most_rounds = 16;
        for (int i = 0; i < most_rounds; ++i) {
            if (!lay()) return false;
            if (!stop_ends() && !move_in()) break;
        }
        return true;
    }

    PlacedLeaning take() { return std::move(placed_); }

private:
    std::size_t most_axis() const { return line_.axes[d_.most]; }
    std::size_t less_axis() const { return line_.axes[d_.less]; }

    bool lay() {
        if ((ends_[1] - ends_[0]) * d_.sense() <= 0) return false;
        placed_.moved_in = moved_in_;
        const bool is_left = shape();
        stand_at(line_.face);
        if (const auto nearest = nearest_surface()) stand_at(*nearest);
        return is_left;
    }

    // Everything but where it lies across the face.
    bool shape() {
        const double slope = d_.slope();
        const auto width = static_cast<double>(line_.width);
        const auto along = [&](Nm end, double across) {
            const double heel = static_cast<double>(end - line_.nodes[0][d_.most]) -
                                d_.across[d_.most] * static_cast<double>(moved_in_);
            return heel / d_.run[d_.most] + slope * across;
        };
        // The long point of either end is at the heel or at the edge of the leg along the face.
        const double from = std::min(along(ends_[0], 0.0), along(ends_[0], width));
        const double to = std::max(along(ends_[1], 0.0), along(ends_[1], width));
        Piece piece{.kind = PieceKind::leaning, .frame = s_.frame, .stated = line_.stated};
        piece.stock = line_.stock;
        piece.section = room_.shapes[line_.stock].section;
        piece.run = static_cast<Axis>(most_axis());
        piece.run_sense = d_.sense();
        piece.a_axis = static_cast<Axis>(less_axis());
        piece.a_sense = leg_;
        piece.b_sense = face_.inward;
        piece.length = std::llround(to - from);
        piece.ends[0].slope[0] = slope;
        piece.ends[1].slope[0] = -slope;
        piece.lean = 0;
        Lean lean;
        for (std::size_t k = 0; k < 2; ++k) {
            lean.run[line_.axes[k]] = d_.run[k];
            lean.a[line_.axes[k]] = d_.across[k];
            const double off = d_.run[k] * from + d_.across[k] * static_cast<double>(moved_in_);
            piece.datum[line_.axes[k]] = line_.nodes[0][k] + std::llround(off);
        }
        lean.b[line_.normal] = face_.inward;
        placed_.piece = piece;
        placed_.lean = lean;
        return to - from > 2.0 * std::abs(slope) * width;
    }

    void stand_at(Nm surface) {
        Piece& piece = placed_.piece;
        placed_.surface = surface;
        piece.datum[line_.normal] = surface;
        piece.plate_count = 0;
        for (const auto& wall : room_.shapes[line_.stock].walls) add_wall(wall);
        // Where a wall ends follows from all of them.
        for (std::size_t k = 0; k < piece.plate_count; ++k) {
            Box& box = piece.plates[k].box;
            const Box seen = box_round(polygon_of(k), line_.axes, 0);
            for (const std::size_t axis : line_.axes) {
                box.lo[axis] = seen.lo[axis];
                box.hi[axis] = seen.hi[axis];
            }
            piece.extents = k == 0 ? box : engine::hull(piece.extents, box);
        }
        placed_.polygon = polygon_of(0);
    }

    void add_wall(const SectionPlate& wall) {
        Piece& piece = placed_.piece;
        const std::size_t number = piece.plate_count++;
        const bool faces_a = wall.normal_axis == 0;
        Plate& plate = piece.plates[number];
        plate = {
            .wall = static_cast<std::uint8_t>(number),
            .normal_axis = static_cast<std::uint8_t>(faces_a ? less_axis() : line_.normal),
            .inward = static_cast<std::int8_t>(-wall.outward * (faces_a ? leg_ : face_.inward)),
            .is_root_fillet = wall.is_root_fillet};
        placed_.lean.along_a[number] = {wall.lo[0], wall.hi[0]};
        const Nm near = placed_.surface + face_.inward * wall.lo[1];
        const Nm far = placed_.surface + face_.inward * wall.hi[1];
        plate.box.lo[line_.normal] = std::min(near, far);
        plate.box.hi[line_.normal] = std::max(near, far);
    }

    FlatPolygon polygon_of(std::size_t wall) const {
        return leaning_wall({{}, {&placed_.lean, 1}}, placed_.piece, line_.axes, wall);
    }

    // The surface that lies nearest to it of all that it lies over; none: it lies over nothing.
    std::optional<Nm> nearest_surface() const {
        std::optional<Nm> nearest;
        for (const auto& wall : face_.walls) {
            if (area_of(lapped_part(placed_.polygon, s_, wall)) < least_area) continue;
            if (!nearest || (wall.surface - *nearest) * face_.inward > 0) nearest = wall.surface;
        }
        return nearest;
    }

    // ---- what stands in the way -----------------------------------------------------------------

    template <class Visit>
    void visit_in_the_way(const Visit& visit) const {
        std::vector<Index> found;
        tree_.for_each_touching(placed_.piece.extents, [&](Index p) { found.push_back(p); });
        std::sort(found.begin(), found.end());
        for (const Index p : found) {
            if (s_.pieces[p].lean != no_index) continue;
            for (const auto& plate : s_.pieces[p].walls()) {
                if (enters(placed_, line_, plate.box)) visit(plate);
            }
        }
    }

    // False: there is nothing to stop at.
    bool stop_ends() {
        const auto before = ends_;
        visit_in_the_way([&](const Plate& plate) {
            if (plate.normal_axis != most_axis() && !plate.is_root_fillet) return;
            for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) stop_at(plate.box, end);
        });
        return ends_ != before;
    }

    void stop_at(const Box& box, std::size_t end) {
        const int inwards = end == 0 ? d_.sense() : -d_.sense();
        const Nm side = inwards > 0 ? box.hi[most_axis()] : box.lo[most_axis()];
        const Nm inward = (side - line_.nodes[end][d_.most]) * inwards;
        // What lies further from a node than it is wide is no matter of its end.
        if (inward > line_.width) return;
        const Nm at = side + inwards * room_.shop.end_gap;
        if ((at - ends_[end]) * inwards > 0) ends_[end] = at;
    }

    // False: nothing stands behind it that it could clear.
    bool move_in() {
        const Nm before = moved_in_;
        visit_in_the_way([&](const Plate& plate) {
            if (plate.normal_axis != less_axis() || plate.is_root_fillet) return;
            const Nm by = needed_to_clear(plate.box);
            // What would take more stands in front of it, or in its midst.
            if (by <= line_.width) moved_in_ = std::max(moved_in_, by);
        });
        return moved_in_ != before;
    }

    // Whole marks of the tape.
    Nm needed_to_clear(const Box& box) const {
        const auto& own = placed_.piece.extents;
        const Nm beyond = leg_ > 0 ? box.hi[less_axis()] : box.lo[less_axis()];
        double most = 0.0;
        for (const Nm level : {std::max(box.lo[most_axis()], own.lo[most_axis()]),
                               std::min(box.hi[most_axis()], own.hi[most_axis()])}) {
            const auto up = static_cast<double>(level - line_.nodes[0][d_.most]);
            const double heel = up * d_.run[d_.less] / d_.run[d_.most];
            const double over = static_cast<double>(beyond - line_.nodes[0][d_.less]) - heel;
            most = std::max(most, leg_ * over * std::abs(d_.run[d_.most]));
        }
        const Nm step = std::max<Nm>(1, room_.shop.graduation);
        constexpr double rounding = 0.5;
        const auto marks = std::ceil((most - rounding) / static_cast<double>(step));
        return static_cast<Nm>(marks) * step;
    }

    const PartRoom& room_;
    const FrameSkeleton& s_;
    const engine::BoxTree& tree_;
    const BraceLine& line_;
    const BraceFace& face_;
    int leg_;
    Directions d_;
    std::array<Nm, 2> ends_;  // where it is cut, along the axis that it runs along more
    Nm moved_in_ = 0;
    PlacedLeaning placed_;
};

}  // namespace

bool enters(const PlacedLeaning& leaning, const BraceLine& line, const Box& box) {
    if (!engine::overlaps(leaning.piece.extents, box)) return false;
    for (std::size_t k = 0; k < leaning.piece.plate_count; ++k) {
        const Plate& plate = leaning.piece.plates[k];
        if (plate.is_root_fillet || !engine::overlaps(plate.box, box)) continue;
        const auto own = leaning_wall({{}, {&leaning.lean, 1}}, leaning.piece, line.axes, k);
        if (area_of(common_polygon(own, rectangle(box, line.axes))) >= least_shared) return true;
    }
    return false;
}

std::optional<PlacedLeaning> place_leaning(const PartRoom& room,
                                           const FrameSkeleton& skeleton,
                                           const engine::BoxTree& tree,
                                           const BraceLine& line,
                                           const BraceFace& face,
                                           Sense leg) {
    LeaningPlacing placing(room, skeleton, tree, line, face, leg);
    if (!placing.place()) return std::nullopt;
    return placing.take();
}

}  // namespace model
