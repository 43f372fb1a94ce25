#include "model/resolve/part_maker.h"

#include "model/resolve/fastener_choice.h"
#include "model/resolve/layout_rules.h"
#include "model/resolve/rect.h"
#include "model/resolve/slanted_end.h"
#include "model/resolve/surroundings.h"

#include <algorithm>
#include <cmath>

namespace model {

namespace {

// The common area of a wall of each piece that touch, within `rect`; none when they share none
// there.
std::optional<Lap> touching(const Piece& upper,
                            const Plate& wall,
                            const Piece& lower,
                            const Plate& other,
                            const Box& rect) {
    const std::size_t axis = wall.normal_axis;
    const bool towards_plus = other.box.lo[axis] == wall.box.hi[axis];
    if (!towards_plus && wall.box.lo[axis] != other.box.hi[axis]) return std::nullopt;
    Lap lap{.upper_wall = wall.wall,
            .lower_wall = other.wall,
            .normal_axis = wall.normal_axis,
            .towards_lower = towards_plus ? 1 : -1};
    Box both = engine::intersection(wall.box, other.box);
    for (std::size_t k = 0; k < 3; ++k) {
        both.lo[k] = k == axis ? 0 : std::max(both.lo[k], rect.lo[k]);
        both.hi[k] = k == axis ? 0 : std::min(both.hi[k], rect.hi[k]);
    }
    both.lo[axis] = both.hi[axis] = towards_plus ? wall.box.hi[axis] : wall.box.lo[axis];
    both = within_slanted_ends(upper, wall, both);
    both = within_slanted_ends(lower, other, both);
    if (!has_area(both, axis)) return std::nullopt;
    lap.rect = both;
    return lap;
}

Nm thickness_of(const Plate& plate) {
    return plate.box.hi[plate.normal_axis] - plate.box.lo[plate.normal_axis];
}

}  // namespace

PartMaker::PartMaker(const PartRoom& room,
                     FrameSkeleton& skeleton,
                     std::vector<Outline>& outlines,
                     std::vector<Lap>& laps)
    : room_{room},
      s_{skeleton},
      outlines_{outlines},
      laps_{laps},
      layouts_{room.project.shop, room.shop} {
    begin({});
}

const Plate* PartMaker::primary_wall(Index index, std::size_t normal_axis) const {
    const Bar& of = bar(index);
    const int wall = of.shape->primary[section_axis(of, across_index(of, normal_axis))];
    return wall < 0 ? nullptr : &s_.pieces[index].plates[static_cast<std::size_t>(wall)];
}

void PartMaker::begin(const Corner& corner, const JointOverride* own) {
    recipe_ = corner.recipe;
    wish_ = wish_of(room_.catalogue, room_.project.shop, own);
    wanted_ = fasteners_wanted(room_.project.shop, own);
}

FastenerAnswer PartMaker::fastener_for(MeasureSystem system,
                                       Nm thickest,
                                       Nm thinnest,
                                       Nm stack) const {
    if (wish_.is_screw) {
        return choose_screw(room_.catalogue, room_.project.shop, wish_, system,
                            {.total = stack, .thinnest = thinnest, .far = stack - thickest});
    }
    return choose_rivet(room_.catalogue, room_.project.shop, wish_.id, system, thickest, stack);
}

Nm PartMaker::fastener_diameter(Index index, Nm thickest) const {
    const auto& section = room_.catalogue.sections[s_.pieces[index].section];
    const auto answer = fastener_for(section.system, thickest, thickest, 2 * thickest);
    return answer.choice ? answer.choice->diameter : thickest;
}

Nm PartMaker::length_for_fasteners(Nm diameter) const {
    const auto& rules = room_.project.shop;
    const double edges = 2 * edge_ratio(rules);
    const double apart = pitch_ratio(rules) * (wanted_ - 1);
    // Two marks more than the rules ask, so that holes find marks to lie on: tried.
    return std::llround((edges + apart) * static_cast<double>(diameter)) +
           2 * room_.shop.graduation;
}

// Blocks of pieces with a tree each, of which none is more than twice as large as the one behind
// it together with all that follows: n log n pieces go into trees in all.
void PartMaker::put_in_blocks() const {
    constexpr std::size_t few = 32;
    const auto begin = blocks_.empty() ? 0 : blocks_.back().first + blocks_.back().count;
    if (s_.pieces.size() - begin < few) return;
    std::size_t first = begin;
    while (!blocks_.empty() && blocks_.back().count <= s_.pieces.size() - first) {
        first = blocks_.back().first;
        blocks_.pop_back();
    }
    std::vector<Box> extents;
    for (std::size_t i = first; i < s_.pieces.size(); ++i) extents.push_back(s_.pieces[i].extents);
    const std::size_t count = extents.size();
    blocks_.push_back({first, count, engine::BoxTree(extents)});
}

const std::vector<Index>& PartMaker::pieces_at(const Box& box) const {
    put_in_blocks();
    found_.clear();
    std::size_t seen = 0;
    for (const auto& block : blocks_) {
        block.tree.for_each_touching(
            box, [&](Index i) { found_.push_back(static_cast<Index>(block.first + i)); });
        seen = block.first + block.count;
    }
    std::sort(found_.begin(), found_.end());
    for (std::size_t i = seen; i < s_.pieces.size(); ++i) {
        if (engine::touches(box, s_.pieces[i].extents)) found_.push_back(static_cast<Index>(i));
    }
    return found_;
}

template <class Visit>
void PartMaker::for_each_wall_in(const Box& box, Visit visit) const {
    for (const Index i : pieces_at(box)) {
        for (const auto& plate : s_.pieces[i].walls()) {
            if (engine::overlaps(box, plate.box)) visit(plate.box);
        }
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

int PartMaker::fasteners_with_room(const Piece& upper,
                                   const Plate& wall,
                                   const Piece& lower,
                                   const Plate& other,
                                   const Box& rect) {
    const auto lap = touching(upper, wall, lower, other, rect);
    if (!lap) return 0;
    std::vector<const Piece*> near{&upper, &lower};
    for (const Index i : pieces_at(tool_reach(*lap, room_.shop))) {
        const Piece* piece = &s_.pieces[i];
        if (piece != &upper && piece != &lower) near.push_back(piece);
    }
    const LapSite site{*lap, upper, lower, near};
    const auto& section =
        room_.catalogue.sections[upper.section == no_index ? lower.section : upper.section];
    const auto answer =
        fastener_for(section.system, std::max(thickness_of(wall), thickness_of(other)),
                     std::min(thickness_of(wall), thickness_of(other)), stack_of(site));
    if (!answer.choice) return 0;
    return layouts_.best(site, *answer.choice, static_cast<Index>(wanted_)).layout.count;
}

bool PartMaker::lap_directly(const Corner& corner) {
    const auto found = laps_between(s_, corner.upper, corner.lower, recipe_);
    laps_.insert(laps_.end(), found.begin(), found.end());
    return !found.empty();
}

bool PartMaker::add_lap(
    Index upper, const Plate& wall, Index lower, const Plate& other, const Box& rect) {
    auto lap = touching(s_.pieces[upper], wall, s_.pieces[lower], other, rect);
    if (!lap) return false;
    lap->upper = upper;
    lap->lower = lower;
    lap->recipe = recipe_;
    laps_.push_back(*lap);
    return true;
}

}  // namespace model
