#include "model/resolve/foot_place.h"

#include "model/resolve/rect.h"
#include "model/resolve/surroundings.h"

#include <algorithm>

namespace model {
namespace {

using Stretch = std::array<Nm, 2>;

Nm round_up(Nm value, Nm mark) { return (value + mark - 1) / mark * mark; }

bool is_within(const Box& box, const Point& at) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (at[k] <= box.lo[k] || at[k] >= box.hi[k]) return false;
    }
    return true;
}

bool is_in_a_bay(const FootRoom& room, const Point& at) {
    return std::ranges::any_of(room.bays, [&](const Box& bay) { return is_within(bay, at); });
}

Point middle_of(const Box& box) {
    Point at{};
    for (std::size_t k = 0; k < 3; ++k) at[k] = box.lo[k] + (box.hi[k] - box.lo[k]) / 2;
    return at;
}

bool is_clear(const PartMaker& maker, const Box& box, std::size_t axis) {
    const std::array<Box, 1> only{box};
    return maker.free_stretch(only, axis) == Stretch{box.lo[axis], box.hi[axis]};
}

// Whether nothing of the frame lies beyond the end over that rectangle across the run.
bool is_open_beyond(const PartMaker& maker, const FootSite& site, const Box& hull, Box rect) {
    // Its own end and what is flush with it lie within the gap that free_stretch keeps.
    const Nm gap = maker.room().shop.end_gap;
    if (site.into > 0) {
        rect.lo[site.run] = hull.lo[site.run];
        rect.hi[site.run] = site.end - gap;
    } else {
        rect.lo[site.run] = site.end + gap;
        rect.hi[site.run] = hull.hi[site.run];
    }
    return rect.lo[site.run] >= rect.hi[site.run] || is_clear(maker, rect, site.run);
}

class Search {
public:
    Search(PartMaker& maker,
           const FootSite& site,
           const StockShape& angle,
           const FootScrew& screw,
           const FootRoom& room)
        : maker_{maker},
          site_{site},
          angle_{angle},
          section_{maker.room().catalogue.sections[angle.section]},
          screw_{screw},
          room_{room},
          member_{maker.piece(site.piece)},
          mark_{maker.room().shop.graduation} {
        const Nm wall = std::max(section_.thickness, member_section().thickness).nm();
        diameter_ = maker.fastener_diameter(site.piece, wall);
        length_ = round_up(std::max(2 * screw.edge + mark_, maker.length_for_fasteners(diameter_)),
                           mark_);
    }

    std::optional<FootPlace> best() {
        for (const auto& wall : member_.walls()) {
            if (wall.is_root_fillet) continue;
            for (const int side : {1, -1}) {
                const bool is_inside = side == wall.inward;
                if (is_inside && maker_.bar(site_.piece).shape->is_closed) continue;
                for (const bool leg_a_on_member : {true, false}) {
                    consider(wall, side, leg_a_on_member);
                }
            }
        }
        return best_;
    }

private:
    const Section& member_section() const {
        return maker_.room().catalogue.sections[member_.section];
    }

    // The gauge of the hole: clear of the other leg and its root, as far from the toe as the edge
    // distance asks; none where the leg is too short.
    std::optional<Nm> gauge_on(Nm leg) const {
        const Nm clear =
            section_.thickness.nm() +
            std::max(section_.root_radius.nm() + screw_.head_radius, screw_.driver_radius);
        const Nm most = leg - screw_.edge;
        const Nm middle = clear + (most - clear) / 2 / mark_ * mark_;
        const Nm gauge = round_up(middle, mark_);
        if (gauge <= most) return gauge;
        const Nm least = round_up(clear, mark_);
        return least <= most ? std::optional(least) : std::nullopt;
    }

    Piece laid(const Plate& wall, int side, bool leg_a_on_member, Stretch stretch) const {
        const std::size_t normal = wall.normal_axis;
        const std::size_t across = 3 - site_.run - normal;
        Piece foot{.kind = PieceKind::foot};
        foot.serves = {member_.member, member_.member};
        foot.stock = angle_.stock;
        foot.section = angle_.section;
        foot.run = static_cast<Axis>(across);
        foot.a_axis = static_cast<Axis>(leg_a_on_member ? site_.run : normal);
        foot.a_sense = leg_a_on_member ? site_.into : side;
        foot.b_sense = leg_a_on_member ? side : site_.into;
        foot.datum[site_.run] = site_.end;
        foot.datum[normal] = side > 0 ? wall.box.hi[normal] : wall.box.lo[normal];
        foot.datum[across] = stretch[0];
        foot.length = stretch[1] - stretch[0];
        lay_walls(foot, angle_.walls);
        return foot;
    }

    // From the wall's heel side towards its toe: over the wall, and as far beyond the toe as a foot
    // is longer than the wall is wide.
    Stretch domain(const Plate& wall, std::size_t across) const {
        const Nm heel = member_.datum[across];
        const bool towards_plus = heel <= wall.box.lo[across];
        const Nm beyond = length_ + section_.thickness.nm();
        Stretch all{wall.box.lo[across], wall.box.hi[across]};
        if (all[1] - all[0] >= length_ + section_.thickness.nm()) return all;
        (towards_plus ? all[1] : all[0]) += towards_plus ? beyond : -beyond;
        return all;
    }

    // Over the middle of the wall, as far as what is free lets it; on the marks from the heel side.
    std::optional<Stretch> place_along(const Plate& wall, std::size_t across, Stretch free) const {
        const Nm origin = member_.datum[across];
        const auto on_mark = [&](Nm at) {
            const Nm over = ((at - origin) % mark_ + mark_) % mark_;
            return at - over;
        };
        const Nm middle = wall.box.lo[across] + (wall.box.hi[across] - wall.box.lo[across]) / 2;
        const Nm wanted =
            std::clamp(middle - length_ / 2, free[0], std::max(free[0], free[1] - length_));
        for (const Nm from : {on_mark(wanted), on_mark(wanted) + mark_}) {
            if (from >= free[0] && from + length_ <= free[1]) return Stretch{from, from + length_};
        }
        return std::nullopt;
    }

    void consider(const Plate& wall, int side, bool leg_a_on_member) {
        const std::size_t across = 3 - site_.run - wall.normal_axis;
        const Nm ground_leg = (leg_a_on_member ? section_.b : section_.a).nm();
        const auto gauge = gauge_on(ground_leg);
        if (!gauge) return;
        const auto whole = laid(wall, side, leg_a_on_member, domain(wall, across));
        const std::array<Box, 2> legs{whole.plates[0].box, whole.plates[1].box};
        const auto stretch = place_along(wall, across, maker_.free_stretch(legs, across));
        if (!stretch) return;
        FootPlace place{.foot = laid(wall, side, leg_a_on_member, *stretch),
                        .on_member = leg_a_on_member ? 0U : 1U,
                        .on_ground = leg_a_on_member ? 1U : 0U,
                        .member_wall = wall,
                        .is_outside = side != wall.inward};
        if (!holds_fasteners(place) || is_in_the_way(place)) return;
        place.hole = {.wall = static_cast<std::uint8_t>(place.on_ground),
                      .from_datum = length_ / 2 / mark_ * mark_,
                      .gauge = *gauge,
                      .diameter = screw_.hole,
                      .drill = screw_.drill};
        if (!can_be_driven(place, side)) return;
        if (!is_open_beyond(maker_, site_, room_.hull, place.foot.plates[place.on_ground].box)) {
            return;
        }
        const Plate& on_member = place.foot.plates[place.on_member];
        const int fasteners =
            place.is_outside
                ? maker_.fasteners_with_room(place.foot, on_member, member_, wall, wall.box)
                : maker_.fasteners_with_room(member_, wall, place.foot, on_member, wall.box);
        if (fasteners == 0) return;
        place.worth = area_of(lap_of(place), wall.normal_axis) * fasteners * fasteners *
                      (is_inside(place) ? 2.0 : 1.0);
        if (!best_ || place.worth > best_->worth) best_ = place;
    }

    Box lap_of(const FootPlace& place) const {
        return engine::intersection(place.foot.plates[place.on_member].box, place.member_wall.box);
    }

    bool holds_fasteners(const FootPlace& place) const {
        const Box lap = lap_of(place);
        const std::size_t normal = place.member_wall.normal_axis;
        const std::size_t across = 3 - site_.run - normal;
        const Nm along = lap.hi[site_.run] - lap.lo[site_.run];
        const Nm wide = lap.hi[across] - lap.lo[across];
        return std::min(along, wide) >= 4 * diameter_ &&
               std::max(along, wide) >= maker_.length_for_fasteners(diameter_) - 2 * mark_;
    }

    // Of what sets a lap nearby, or stands out of it; or in a wall of the room that the member
    // itself does not stand in.
    bool is_in_the_way(const FootPlace& place) const {
        const auto meets_foot = [&](const Box& box) {
            return engine::overlaps(box, place.foot.plates[0].box) ||
                   engine::overlaps(box, place.foot.plates[1].box);
        };
        return std::ranges::any_of(room_.setting, meets_foot) ||
               std::ranges::any_of(room_.walls, [&](const Box& wall) {
                   return meets_foot(wall) && !engine::overlaps(wall, member_.extents);
               });
    }

    bool can_be_driven(const FootPlace& place, int side) const {
        const std::size_t normal = place.member_wall.normal_axis;
        const std::size_t across = 3 - site_.run - normal;
        Box column;
        const Nm at_normal = place.foot.datum[normal] + side * place.hole.gauge;
        const Nm at_across = place.foot.datum[across] + place.hole.from_datum;
        column.lo[normal] = at_normal - screw_.driver_radius;
        column.hi[normal] = at_normal + screw_.driver_radius;
        column.lo[across] = at_across - screw_.driver_radius;
        column.hi[across] = at_across + screw_.driver_radius;
        const Nm top = site_.end + site_.into * section_.thickness.nm();
        const Nm far = top + site_.into * tool_length;
        column.lo[site_.run] = std::min(top, far);
        column.hi[site_.run] = std::max(top, far);
        const bool hits_a_fastener = std::ranges::any_of(
            room_.set, [&](const Box& box) { return engine::overlaps(box, column); });
        return !hits_a_fastener && is_clear(maker_, column, site_.run);
    }

    // In line with a bay, or, where none is stated, within the hull of the frame: as seen along the
    // member.
    bool is_inside(const FootPlace& place) const {
        const Box& pad = place.foot.plates[place.on_ground].box;
        const Point at = middle_of(pad);
        const auto is_in_line = [&](const Box& box) {
            for (std::size_t k = 0; k < 3; ++k) {
                if (k != site_.run && (at[k] <= box.lo[k] || at[k] >= box.hi[k])) return false;
            }
            return true;
        };
        if (room_.bays.empty()) return is_in_line(room_.hull);
        return std::ranges::any_of(room_.bays, is_in_line);
    }

    PartMaker& maker_;
    const FootSite& site_;
    const StockShape& angle_;
    const Section& section_;
    const FootScrew& screw_;
    const FootRoom& room_;
    const Piece& member_;
    Nm mark_;
    Nm diameter_ = 0;
    Nm length_ = 0;  // of the foot
    std::optional<FootPlace> best_;
};

}  // namespace

bool is_at_outside(const PartMaker& maker, const FootSite& site, const FootRoom& room) {
    const Box& member = maker.piece(site.piece).extents;
    Point beyond = middle_of(member);
    beyond[site.run] = site.end - site.into;
    return !is_in_a_bay(room, beyond) && is_open_beyond(maker, site, room.hull, member);
}

std::optional<FootPlace> foot_place(PartMaker& maker,
                                    const FootSite& site,
                                    const StockShape& angle,
                                    const FootScrew& screw,
                                    const FootRoom& room) {
    return Search(maker, site, angle, screw, room).best();
}

}  // namespace model
