#include "editor/dialogs/obstacle_fields.h"

#include "editor/dialogs/form_line.h"
#include "editor/dialogs/profile_rows.h"
#include "editor/kit/item_log.h"
#include "editor/kit/widgets.h"

#include <variant>

namespace editor {
namespace {

using model::Axis;
using model::Sense;

void draw_fields(CheckedFields& fields, model::BoxObstacle& box) {
    fields.draw_place("from", "from", box.least);
    fields.draw_place("to", "to", box.most);
}

enum class InnerSide { left_wall, right_wall, other };

InnerSide side_of(const model::WheelWell& well) {
    if (well.inner_side != Axis::x) return InnerSide::other;
    return well.inner_sense == Sense::plus ? InnerSide::left_wall : InnerSide::right_wall;
}

void draw_fields(CheckedFields& fields, model::WheelWell& well) {
    auto side = side_of(well);
    draw_radio_line<InnerSide>("stands at", side,
                               {{InnerSide::left_wall, "the left wall: smaller X"},
                                {InnerSide::right_wall, "the right wall: larger X"}});
    if (side != InnerSide::other) {
        well.inner_side = Axis::x;
        well.inner_sense = side == InnerSide::left_wall ? Sense::plus : Sense::minus;
    }
    fields.draw_place("from", "from", well.least);
    fields.draw_place("to", "to", well.most);
    fields.draw_lengths({"rounding", "top radius", well.top_radius, "of its top edges"},
                        {"corners", "corner radius", well.corner_radius, "seen from above"});
    fields.draw_angle("lean", "lean", well.lean, "of its inner side, degrees");
}

void draw_fields(CheckedFields& fields, model::WallProfile& wall) {
    draw_radio_line<Sense>(
        "room lies at", wall.inside,
        {{Sense::plus, "larger X: a left wall"}, {Sense::minus, "smaller X: a right wall"}});
    fields.draw_length("X of its foot", "at", wall.at, "0");
    fields.draw_lengths({"from Y", "from", wall.from, "0"}, {"to Y", "to", wall.to, "96 in"});
    draw_wall_rows(fields, wall);
}

void draw_fields(CheckedFields& fields, model::CeilingProfile& ceiling) {
    fields.draw_length("level, Z", "at", ceiling.at, "of its highest place");
    fields.draw_lengths({"from Y", "from", ceiling.from, "0"}, {"to Y", "to", ceiling.to, "96 in"});
    draw_ceiling_rows(fields, ceiling);
}

void draw_fields(CheckedFields& fields, model::CylinderObstacle& cylinder) {
    draw_radio_line<Axis>("runs along", cylinder.along,
                          {{Axis::x, "X"}, {Axis::y, "Y"}, {Axis::z, "Z, upright"}});
    fields.draw_place("middle of end", "foot", cylinder.foot);
    fields.draw_lengths({"radius", "radius", cylinder.radius, "half of it across"},
                        {"length", "length", cylinder.length, "24 in"});
}

void draw_fields(CheckedFields& fields, model::DoorSwing& door) {
    fields.draw_place("hinge", "hinge", door.hinge);
    fields.draw_lengths({"width", "width", door.width, "hinge to free edge"},
                        {"height", "height", door.height, "of the door"});
    fields.draw_angle("closed at", "closed", door.closed, "degrees from X");
    fields.draw_angle("open at", "open", door.open, "seen from above");
}

void draw_fields(CheckedFields& fields, model::ScannedObstacle& scan) {
    draw_form_line("file", scan.file, "van.ply");
    draw_scan_fields(fields, scan);
}

}  // namespace

void draw_obstacle_fields(CheckedFields& fields, model::Obstacle& obstacle) {
    std::visit([&](auto& shape) { draw_fields(fields, shape); }, obstacle.shape);
}

void draw_scan_fields(CheckedFields& fields, model::ScannedObstacle& scan) {
    draw_radio_line<engine::LengthUnit>("its unit", scan.unit,
                                        {{engine::LengthUnit::millimetre, "mm"},
                                         {engine::LengthUnit::centimetre, "cm"},
                                         {engine::LengthUnit::metre, "m"},
                                         {engine::LengthUnit::inch, "in"},
                                         {engine::LengthUnit::foot, "ft"}});
    fields.draw_place("shifted by", "at", scan.at);
    fields.draw_turn("turned about", "turn", scan.turn);
}

}  // namespace editor
