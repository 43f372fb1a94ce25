#include "model/resolve/part_maker.h"

#include "model/project/shop_limits.h"
#include "model/resolve/rect.h"

#include <algorithm>
#include <cmath>

namespace model {

PartMaker::PartMaker(const PartRoom& room,
                     FrameSkeleton& skeleton,
                     std::vector<Outline>& outlines,
                     std::vector<Lap>& laps)
    : room_{room},
      s_{skeleton},
      bars_{tree_of_pieces(skeleton)},
      bar_pieces_{skeleton.pieces.size()},
      outlines_{outlines},
      laps_{laps} {}

const Plate* PartMaker::primary_wall(Index index, std::size_t normal_axis) const {
    const Bar& of = bar(index);
    const int wall = of.shape->primary[section_axis(of, across_index(of, normal_axis))];
    return wall < 0 ? nullptr : &s_.pieces[index].plates[static_cast<std::size_t>(wall)];
}

Nm PartMaker::fastener_diameter(Index index, Nm thickest) const {
    const auto& section = room_.catalogue.sections[s_.pieces[index].section];
    const auto* rivet = rivet_for(room_.catalogue, section.system, Length::from_nm(thickest));
    return rivet == nullptr ? thickest : rivet->diameter.nm();
}

Nm PartMaker::length_for_fasteners(Nm diameter) const {
    const auto& rules = room_.project.shop;
    const auto kept = [](double given, double least, double most) {
        return std::isfinite(given) ? std::clamp(given, least, most) : least;
    };
    const double edges = 2 * kept(rules.edge_distance, least_edge_distance, most_edge_distance);
    const double apart =
        kept(rules.pitch, least_pitch, most_pitch) * (std::clamp(rules.per_lap, 1, 12) - 1);
    // Two marks more than the rules ask, so that holes find marks to lie on.
    return std::llround((edges + apart) * static_cast<double>(diameter)) +
           2 * room_.shop.graduation;
}

template <class Visit>
void PartMaker::for_each_wall_in(const Box& box, Visit visit) const {
    const auto look_at = [&](const Piece& piece) {
        for (const auto& plate : piece.walls()) {
            if (engine::overlaps(box, plate.box)) visit(plate.box);
        }
    };
    std::vector<Index> found;
    bars_.for_each_touching(box, [&](Index i) { found.push_back(i); });
    std::sort(found.begin(), found.end());
    for (const Index i : found) look_at(s_.pieces[i]);
    for (std::size_t i = bar_pieces_; i < s_.pieces.size(); ++i) {
        if (engine::overlaps(box, s_.pieces[i].extents)) look_at(s_.pieces[i]);
    }
}

Box PartMaker::free_part(Box slab, std::size_t normal_axis) const {
    const Nm gap = room_.shop.end_gap;
    const auto grown = [&](Box box) {
        for (std::size_t k = 0; k < 3; ++k) {
            if (k == normal_axis) continue;
            box.lo[k] -= gap;
            box.hi[k] += gap;
        }
        return box;
    };
    std::vector<Box> in_the_way;
    for_each_wall_in(grown(slab), [&](const Box& box) { in_the_way.push_back(grown(box)); });
    for (const auto& box : in_the_way) {
        if (engine::overlaps(slab, box)) slab = without(slab, box, normal_axis);
    }
    return slab;
}

std::array<Nm, 2> PartMaker::free_stretch(std::span<const Box> boxes, std::size_t axis) const {
    std::array<Nm, 2> left{boxes.front().lo[axis], boxes.front().hi[axis]};
    const Nm gap = room_.shop.end_gap;
    for (const auto& box : boxes) {
        Box reach = box;
        reach.lo[axis] -= gap;
        reach.hi[axis] += gap;
        for_each_wall_in(reach, [&](const Box& taken) {
            const Nm below = std::min(left[1], taken.lo[axis] - gap) - left[0];
            const Nm above = left[1] - std::max(left[0], taken.hi[axis] + gap);
            if (below >= above) {
                left[1] = std::min(left[1], taken.lo[axis] - gap);
            } else {
                left[0] = std::max(left[0], taken.hi[axis] + gap);
            }
        });
    }
    return left;
}

Index PartMaker::add(Piece part) {
    part.frame = s_.frame;
    s_.pieces.push_back(part);
    s_.bar_of.push_back(no_index);
    return static_cast<Index>(s_.pieces.size() - 1);
}

Index PartMaker::add_outline(Outline outline) {
    outlines_.push_back(std::move(outline));
    return static_cast<Index>(outlines_.size() - 1);
}

bool PartMaker::add_lap(
    Index upper, const Plate& wall, Index lower, const Plate& other, const Box& rect) {
    const std::size_t axis = wall.normal_axis;
    const bool towards_plus = other.box.lo[axis] == wall.box.hi[axis];
    if (!towards_plus && wall.box.lo[axis] != other.box.hi[axis]) return false;
    Lap lap{.upper = upper,
            .lower = lower,
            .upper_wall = wall.wall,
            .lower_wall = other.wall,
            .normal_axis = wall.normal_axis,
            .towards_lower = towards_plus ? 1 : -1,
            .recipe = recipe_};
    Box both = engine::intersection(wall.box, other.box);
    for (std::size_t k = 0; k < 3; ++k) {
        both.lo[k] = k == axis ? 0 : std::max(both.lo[k], rect.lo[k]);
        both.hi[k] = k == axis ? 0 : std::min(both.hi[k], rect.hi[k]);
    }
    both.lo[axis] = both.hi[axis] = towards_plus ? wall.box.hi[axis] : wall.box.lo[axis];
    if (!has_area(both, axis)) return false;
    lap.rect = both;
    laps_.push_back(lap);
    return true;
}

}  // namespace model
