// Corner cleat: the lower member butts, a short angle joins it to the wall that it butts.
#include "model/resolve/recipe_row.h"
#include "model/resolve/rect.h"

#include <algorithm>
#include <optional>

namespace model {
namespace {

// A tube is butted; an open section's leg has the member behind it, as in a lap.
bool behind_a_leg(const Bar& upper, const Bar&) { return !upper.shape->is_closed; }

// The wall of the upper piece that looks at the lower one's end, and where its face is.
struct Butted {
    Plate wall;
    Nm face = 0;
};

std::optional<Butted> butted(const PartMaker& maker, const Corner& corner) {
    std::optional<Butted> best;
    const Box& lower = maker.piece(corner.lower).extents;
    const Nm reach = 2 * maker.room().shop.end_gap;
    for (const auto& plate : maker.piece(corner.upper).walls()) {
        if (plate.is_root_fillet || plate.normal_axis != corner.along) continue;
        const Nm face = corner.into > 0 ? plate.box.hi[corner.along] : plate.box.lo[corner.along];
        const Nm before_end = (corner.end - face) * corner.into;
        if (before_end < 0 || before_end > reach) continue;
        if (!has_area(engine::intersection(plate.box, lower), corner.along)) continue;
        if (!best || (face - best->face) * corner.into > 0) best = Butted{plate, face};
    }
    return best;
}

// A place for a cleat: its heel where the two faces meet, one leg on each.
struct Place {
    Piece cleat;
    std::size_t on_upper = 0;  // walls of the cleat
    std::size_t on_lower = 0;
    Plate lower_wall;
    bool is_inside = false;
    double worth = 0.0;
};

struct Site {
    PartMaker& maker;
    const Corner& corner;
    const Butted& butted;
};

// The cleat with its leg a on the upper face or on the lower one, over a stretch.
Piece laid(const Site& site,
           const StockShape& shape,
           const Plate& wall,
           Nm face,
           int side,
           bool leg_a_on_upper,
           std::array<Nm, 2> stretch) {
    const std::size_t along = site.corner.along;
    const std::size_t normal = wall.normal_axis;
    const std::size_t run = 3 - along - normal;
    Piece cleat{.kind = PieceKind::cleat};
    cleat.stock = shape.stock;
    cleat.section = shape.section;
    cleat.run = static_cast<Axis>(run);
    cleat.a_axis = static_cast<Axis>(leg_a_on_upper ? normal : along);
    cleat.a_sense = leg_a_on_upper ? side : site.corner.into;
    cleat.b_sense = leg_a_on_upper ? site.corner.into : side;
    cleat.datum[along] = site.butted.face;
    cleat.datum[normal] = face;
    cleat.datum[run] = stretch[0];
    cleat.length = stretch[1] - stretch[0];
    lay_walls(cleat, shape.walls);
    return cleat;
}

std::array<Nm, 2> common_stretch(const Box& a, const Box& b, std::size_t axis) {
    return {std::max(a.lo[axis], b.lo[axis]), std::min(a.hi[axis], b.hi[axis])};
}

// Worth of the smaller lap; none when one of them is narrower than three diameters, in which no
// fastener keeps the least edge distance on both sides.
std::optional<double> worth_of(const Site& site, const Place& place, Nm diameter) {
    const Box& on_upper = place.cleat.plates[place.on_upper].box;
    const Box& on_lower = place.cleat.plates[place.on_lower].box;
    const std::size_t along = site.corner.along;
    const std::size_t normal = place.lower_wall.normal_axis;
    const Box upper = engine::intersection(on_upper, site.butted.wall.box);
    const Box lower = engine::intersection(on_lower, place.lower_wall.box);
    if (short_side(upper, along) < 3 * diameter || short_side(lower, normal) < 3 * diameter) {
        return std::nullopt;
    }
    return std::min(area_of(upper, along), area_of(lower, normal));
}

class Search {
public:
    Search(const Site& site, const StockShape& shape, bool lower_is_closed)
        : site_{site}, shape_{shape}, lower_is_closed_{lower_is_closed} {
        diameter_ = site.maker.fastener_diameter(site.corner.upper, shape.wall_thickness[0]);
    }

    // The one in which most fasteners have room; of equals the one of most worth. None: in none of
    // them has even one room on both members.
    std::optional<Place> best() {
        collect();
        std::stable_sort(places_.begin(), places_.end(),
                         [](const Place& a, const Place& b) { return a.worth > b.worth; });
        const int wanted = site_.maker.wanted();
        std::optional<Place> best;
        int most = 0;
        for (const auto& place : places_) {
            const auto [on_upper, on_lower] = fasteners_in(place);
            if (on_upper == 0 || on_lower == 0 || on_upper + on_lower <= most) continue;
            most = on_upper + on_lower;
            best = place;
            if (most == 2 * wanted) break;
        }
        return best;
    }

private:
    std::array<int, 2> fasteners_in(const Place& place) const {
        PartMaker& maker = site_.maker;
        const Piece& cleat = place.cleat;
        const Piece& lower = maker.piece(site_.corner.lower);
        const Plate& on_lower = cleat.plates[place.on_lower];
        const int with_upper = maker.fasteners_with_room(cleat, cleat.plates[place.on_upper],
                                                         maker.piece(site_.corner.upper),
                                                         site_.butted.wall, site_.butted.wall.box);
        if (with_upper == 0) return {0, 0};
        return {with_upper,
                place.is_inside
                    ? maker.fasteners_with_room(lower, place.lower_wall, cleat, on_lower,
                                                place.lower_wall.box)
                    : maker.fasteners_with_room(cleat, on_lower, lower, place.lower_wall,
                                                place.lower_wall.box)};
    }

    void collect() {
        for (const auto& wall : site_.maker.piece(site_.corner.lower).walls()) {
            if (wall.is_root_fillet || wall.normal_axis == site_.corner.along) continue;
            const std::size_t n = wall.normal_axis;
            for (const int side : {1, -1}) {
                const bool is_inside = side == wall.inward;
                if (is_inside && lower_is_closed_) continue;
                const Nm face = side > 0 ? wall.box.hi[n] : wall.box.lo[n];
                for (const bool leg_a_on_upper : {true, false}) {
                    consider(wall, face, side, leg_a_on_upper, is_inside);
                }
            }
        }
    }

    void consider(const Plate& wall, Nm face, int side, bool leg_a_on_upper, bool is_inside) {
        const std::size_t run = 3 - site_.corner.along - wall.normal_axis;
        auto stretch = common_stretch(wall.box, site_.butted.wall.box, run);
        if (stretch[0] >= stretch[1]) return;
        Place place{.cleat = laid(site_, shape_, wall, face, side, leg_a_on_upper, stretch),
                    .on_upper = leg_a_on_upper ? 0U : 1U,
                    .on_lower = leg_a_on_upper ? 1U : 0U,
                    .lower_wall = wall};
        const std::array<Box, 2> legs{place.cleat.plates[0].box, place.cleat.plates[1].box};
        stretch = site_.maker.free_stretch(legs, run);
        const Nm mark = site_.maker.room().shop.graduation;
        stretch[1] -= (stretch[1] - stretch[0]) % mark;
        if (stretch[1] - stretch[0] < 3 * diameter_) return;
        place.cleat = laid(site_, shape_, wall, face, side, leg_a_on_upper, stretch);
        const auto worth = worth_of(site_, place, diameter_);
        if (!worth) return;
        // Inside it is out of the way and out of sight: only twice the room counts for more, tried.
        place.worth = *worth * (is_inside ? 2.0 : 1.0);
        place.is_inside = is_inside;
        places_.push_back(std::move(place));
    }

    const Site& site_;
    const StockShape& shape_;
    bool lower_is_closed_;
    Nm diameter_ = 0;
    std::vector<Place> places_;
};

bool is_angle(const PartMaker& maker, const StockShape& shape) {
    return shape.section != no_index &&
           maker.room().catalogue.sections[shape.section].form == SectionForm::angle;
}

// The angles of the stock: the members' own first.
std::vector<const StockShape*> angles(const PartMaker& maker, const Corner& corner) {
    std::vector<const StockShape*> found;
    const auto add = [&](const StockShape& shape) {
        if (is_angle(maker, shape) && std::ranges::find(found, &shape) == found.end()) {
            found.push_back(&shape);
        }
    };
    add(*maker.bar(corner.lower).shape);
    add(*maker.bar(corner.upper).shape);
    for (const auto& shape : maker.room().shapes) add(shape);
    return found;
}

void put_in(PartMaker& maker, const Corner& corner, const Butted& butted, Place place) {
    place.cleat.serves = {maker.piece(corner.upper).member, maker.piece(corner.lower).member};
    const Plate on_upper = place.cleat.plates[place.on_upper];
    const Plate on_lower = place.cleat.plates[place.on_lower];
    const Index cleat = maker.add(place.cleat);
    maker.add_lap(cleat, on_upper, corner.upper, butted.wall, on_upper.box);
    if (place.is_inside) {
        maker.add_lap(corner.lower, place.lower_wall, cleat, on_lower, on_lower.box);
    } else {
        maker.add_lap(cleat, on_lower, corner.lower, place.lower_wall, on_lower.box);
    }
}

Unsuited cleat_at(PartMaker& maker, const Corner& corner) {
    const auto wall = butted(maker, corner);
    if (!wall) {
        return {"the upper member has no wall that the end of the lower one butts",
                "a staggered lap, or flush"};
    }
    const auto shapes = angles(maker, corner);
    if (shapes.empty()) {
        return {"there is no angle among the stock to cut a cleat from",
                "add an angle to the stock, or flush"};
    }
    const Site site{maker, corner, *wall};
    const bool lower_is_closed = maker.bar(corner.lower).shape->is_closed;
    for (const auto* shape : shapes) {
        if (const auto place = Search(site, *shape, lower_is_closed).best()) {
            put_in(maker, corner, *wall, *place);
            return {};
        }
    }
    return {"no angle of the stock has room on both members with its fasteners",
            "a staggered lap, a smaller angle for the cleat, or flush"};
}

}  // namespace

RecipeRow corner_cleat() {
    return {
        .told = {"corner cleat",
                 "the lower member butts a wall of the upper one, and a short angle joins them"},
        .unsuited = nullptr,
        .lies_behind = behind_a_leg,
        .cut_from = PartForm::angle,
        .laps_directly = false,
        .add_parts = cleat_at};
}

}  // namespace model
