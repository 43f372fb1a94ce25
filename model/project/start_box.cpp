// The box frame: four posts, rails round every level, posts and rails at every divider.
#include "model/project/change.h"
#include "model/project/starter.h"

namespace model {

namespace {

constexpr Side left{"left", Sense::plus};
constexpr Side right{"right", Sense::minus};
constexpr Side front{"front", Sense::plus};
constexpr Side back{"back", Sense::minus};
constexpr Side bottom{"bottom", Sense::plus};
constexpr Side top{"top", Sense::minus};

// Rails all round: their flat legs carry the bottom, a shelf (upper face on the plane, the other
// leg hanging down) or the top.
void add_level(Starter& start, const std::string& name, const Side& z) {
    add_x_rail(start, "rail front " + name, front, z);
    add_x_rail(start, "rail back " + name, back, z);
    add_y_rail(start, "rail left " + name, left, z, "front", "back");
    add_y_rail(start, "rail right " + name, right, z, "front", "back");
}

// The posts of a divider are parted at each shelf by the rails' flat legs. The divider's own rail
// stands on those with its leg up, so that it holds the foot of the upper post; the rails' hanging
// legs hold the head of the lower one.
void add_divider(Starter& start, const std::string& name, std::span<const std::string> shelves) {
    const Side x{name, Sense::plus};
    add_post(start, "post front " + name, x, front, "bottom", "top");
    add_post(start, "post back " + name, x, back, "bottom", "top");
    add_y_rail(start, "rail " + name + " bottom", x, bottom, "front", "back");
    for (const std::string& shelf : shelves) {
        add_y_rail(start, "rail " + name + " " + shelf, x, {shelf, Sense::plus}, "front", "back");
    }
    add_y_rail(start, "rail " + name + " top", x, top, "front", "back");
}

std::vector<StarterFormula> formulas_of(const StartBoxFrame& edit) {
    std::vector<StarterFormula> formulas{
        {"width", edit.width}, {"depth", edit.depth}, {"height", edit.height}};
    for (const Formula& formula : edit.shelf_levels) formulas.push_back({"shelf level", formula});
    for (const Formula& formula : edit.dividers) formulas.push_back({"divider", formula});
    return formulas;
}

}  // namespace

Changed change(Project& project, const StartBoxFrame& edit) {
    if (auto ready = check_start(project, edit.frame, edit.stock, formulas_of(edit)); !ready) {
        return ready;
    }
    Starter start{project, edit.frame, edit.stock, edit.origin};
    start.plane("left", Axis::x, "0");
    start.plane("right", Axis::x, start.value("width", edit.width, "over the outside"));
    start.plane("front", Axis::y, "0");
    start.plane("back", Axis::y, start.value("depth", edit.depth, "over the outside"));
    start.plane("bottom", Axis::z, "0");
    start.plane("top", Axis::z, start.value("height", edit.height, "over the outside"));
    const Partitions inner = add_partitions(start, edit.dividers, edit.shelf_levels);

    add_post(start, "post front left", left, front, "bottom", "top");
    add_post(start, "post front right", right, front, "bottom", "top");
    add_post(start, "post back left", left, back, "bottom", "top");
    add_post(start, "post back right", right, back, "bottom", "top");
    add_level(start, "bottom", bottom);
    for (const std::string& shelf : inner.shelves) add_level(start, shelf, {shelf, Sense::minus});
    add_level(start, "top", top);
    for (const std::string& divider : inner.dividers) add_divider(start, divider, inner.shelves);

    std::vector<std::string> levels{"bottom"};
    levels.insert(levels.end(), inner.shelves.begin(), inner.shelves.end());
    levels.push_back("top");
    add_bays(start, "", inner.dividers, {"front", "back"}, levels);
    return start.finish();
}

}  // namespace model
