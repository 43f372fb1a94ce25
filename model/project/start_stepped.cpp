// The stepped frame: a cabinet whose lower back part is left out for a wheel well.
#include "model/project/change.h"
#include "model/project/starter.h"

namespace model {

namespace {

constexpr Side left{"left", Sense::plus};
constexpr Side right{"right", Sense::minus};
constexpr Side front{"front", Sense::plus};
constexpr Side well_front{"well front", Sense::minus};  // as the back of the lower part
constexpr Side back{"back", Sense::minus};
constexpr Side bottom{"bottom", Sense::plus};
constexpr Side well_top{"well top", Sense::plus};         // as the bottom of the upper part
constexpr Side below_well_top{"well top", Sense::minus};  // as the top of the lower part
constexpr Side top{"top", Sense::minus};

void add_posts(Starter& start, const std::string& name, const Side& x) {
    add_post(start, "post front " + name, x, front, "bottom", "top");
    add_post(start, "post well front " + name, x, well_front, "bottom", "well top");
    add_post(start, "post back " + name, x, back, "well top", "top");
}

// At the well's top two rails meet: one closes the lower part below the plane, the other begins the
// upper part on it. One rail through would outrank the well's edge, which ends on it, and so push
// the edge up to where its hanging leg cannot pass.
void add_y_rails(Starter& start,
                 const std::string& name,
                 const Side& x,
                 Sense leg_at_shelf,
                 std::span<const std::string> shelves) {
    const std::string rail = "rail " + name + " ";
    add_y_rail(start, rail + "bottom", x, bottom, "front", "well front");
    add_y_rail(start, rail + "below well top", x, below_well_top, "front", "well front");
    add_y_rail(start, rail + "well top", x, well_top, "well front", "back");
    for (const std::string& shelf : shelves) {
        add_y_rail(start, rail + shelf, x, {shelf, leg_at_shelf}, "front", "back");
    }
    add_y_rail(start, rail + "top", x, top, "front", "back");
}

void add_x_rails(Starter& start, std::span<const std::string> shelves) {
    add_x_rail(start, "rail front bottom", front, bottom);
    add_x_rail(start, "rail well front bottom", well_front, bottom);
    // The re-entrant edge: the inner corner lies on the line, one leg hangs down the well's front,
    // the other lies on its top.
    add_x_rail(start, "rail well edge", {"well front", Sense::plus}, {"well top", Sense::minus},
               Seat::root);
    add_x_rail(start, "rail back well top", back, well_top);
    for (const std::string& shelf : shelves) {
        add_x_rail(start, "rail front " + shelf, front, {shelf, Sense::minus});
        add_x_rail(start, "rail back " + shelf, back, {shelf, Sense::minus});
    }
    add_x_rail(start, "rail front top", front, top);
    add_x_rail(start, "rail back top", back, top);
}

std::vector<StarterFormula> formulas_of(const StartSteppedFrame& edit) {
    std::vector<StarterFormula> formulas{{"width", edit.width},
                                         {"depth", edit.depth},
                                         {"height", edit.height},
                                         {"well height", edit.well_height},
                                         {"well depth", edit.well_depth}};
    for (const Formula& formula : edit.shelf_levels) formulas.push_back({"shelf level", formula});
    for (const Formula& formula : edit.dividers) formulas.push_back({"divider", formula});
    return formulas;
}

// For use in a sum.
Formula as_term(const Formula& formula) {
    return engine::is_name(formula) ? formula : "(" + formula + ")";
}

void add_outer_planes(Starter& start, const StartSteppedFrame& edit) {
    const Formula depth = start.value("depth", edit.depth, "over the outside");
    const Formula well_depth = start.value("well depth", edit.well_depth, "left out at the back");
    start.plane("left", Axis::x, "0");
    start.plane("right", Axis::x, start.value("width", edit.width, "over the outside"));
    start.plane("front", Axis::y, "0");
    start.plane("well front", Axis::y, as_term(depth) + " - " + as_term(well_depth));
    start.plane("back", Axis::y, depth);
    start.plane("bottom", Axis::z, "0");
    start.plane("well top", Axis::z,
                start.value("well height", edit.well_height, "left out at the back"));
    start.plane("top", Axis::z, start.value("height", edit.height, "over the outside"));
}

}  // namespace

Changed change(Project& project, const StartSteppedFrame& edit) {
    if (auto ready = check_start(project, edit.frame, edit.stock, formulas_of(edit)); !ready) {
        return ready;
    }
    Starter start{project, edit.frame, edit.stock, edit.origin};
    add_outer_planes(start, edit);
    const Partitions inner = add_partitions(start, edit.dividers, edit.shelf_levels);

    add_posts(start, "left", left);
    add_posts(start, "right", right);
    add_x_rails(start, inner.shelves);
    add_y_rails(start, "left", left, Sense::minus, inner.shelves);
    add_y_rails(start, "right", right, Sense::minus, inner.shelves);
    for (const std::string& divider : inner.dividers) {
        add_posts(start, divider, {divider, Sense::plus});
        add_y_rails(start, divider, {divider, Sense::plus}, Sense::plus, inner.shelves);
    }

    add_bays(start, "below", inner.dividers, {"front", "well front"},
             std::array<std::string, 2>{"bottom", "well top"});
    std::vector<std::string> levels{"well top"};
    levels.insert(levels.end(), inner.shelves.begin(), inner.shelves.end());
    levels.push_back("top");
    add_bays(start, "above", inner.dividers, {"front", "back"}, levels);
    return start.finish();
}

}  // namespace model
