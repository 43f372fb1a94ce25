#include "tests/model/project/full_project.h"

namespace model_tests {

using namespace model;

namespace {

std::vector<Obstacle> full_room() {
    return {
        {.name = "fridge",
         .shape = BoxObstacle{{"1", "2", "3"}, {"10", "20", "30"}},
         .note = "bolted down"},
        {.name = "well left",
         .shape = WheelWell{.least = {"0", "40", "0"},
                            .most = {"8", "70", "11"},
                            .top_radius = "2",
                            .inner_side = Axis::y,
                            .inner_sense = Sense::minus,
                            .lean = "5"}},
        {.name = "wall left",
         .shape = WallProfile{.at = "0",
                              .inside = Sense::minus,
                              .from = "0",
                              .to = "120",
                              .offsets = {{"0", "0"}, {"40", "1 1/2"}}}},
        {.name = "pipe",
         .shape =
             CylinderObstacle{
                 .foot = {"1", "1", "0"}, .along = Axis::y, .radius = "1", .length = "9"}},
        {.name = "scan",
         .shape =
             ScannedObstacle{
                 .file = "van.stl", .unit = engine::LengthUnit::inch, .at = {"1", "0", "0"}}},
    };
}

Frame full_frame() {
    return {
        .name = "counter",
        .origin = {"1", "2", "3"},
        .quarter_turns = 3,
        .recipe = "flush",
        .planes = {{"left", Axis::x, "0"},
                   {"right", Axis::x, "width"},
                   {"front", Axis::y, "0"},
                   {"back", Axis::y, "width / 2"},
                   {"bottom", Axis::z, "0"},
                   {"top", Axis::z, "30"}},
        .bays = {{.name = "lower",
                  .x = {"left", "right"},
                  .y = {"front", "back"},
                  .z = {"bottom", "top"},
                  .use = BayUse::heavy_load,
                  .note = "for the parts washer"}},
        .members = {{.name = "post",
                     .stock = "angle",
                     .run = Axis::z,
                     .on = {"left", "front"},
                     .from = "bottom",
                     .to = "top",
                     .legs = {Sense::plus, Sense::minus},
                     .seat = Seat::root,
                     .turned = true,
                     .rank = 15,
                     .allowance_from = "1/8 in",
                     .allowance_to = "1/4 in",
                     .foot_from = true,
                     .foot_to = true,
                     .note = "carries the vice"},
                    {.name = "rail",
                     .stock = "angle",
                     .run = Axis::x,
                     .on = {"front", "top"},
                     .from = "left",
                     .to = "right"}},
        .diagonals = {{.name = "brace",
                       .stock = "angle",
                       .face = "back",
                       .from = {"left", "bottom"},
                       .to = {"right", "top"},
                       .side = FaceSide::outside,
                       .ends = BraceEnds::square,
                       .note = "keeps it square"}},
        .joints = {{.members = {"post", "rail"},
                    .recipe = "staggered lap",
                    .fastener = "blind rivet 1/8",
                    .count = 1,
                    .removable = true,
                    .screw_hold = ScrewHold::rivet_nut,
                    .note = "comes apart"}},
        .panels = {{.name = "side",
                    .bay = "lower",
                    .face_axis = Axis::x,
                    .face_side = Sense::plus,
                    .material = "plywood",
                    .thickness = "1/4",
                    .fit = PanelFit::inset,
                    .use = PanelUse::door,
                    .clear_gap = "3/32 in",
                    .fastener = "blind rivet 5/32",
                    .pitch = "4 in",
                    .cut_outs = {{.name = "vent",
                                  .least = {"1", "1"},
                                  .most = {"4", "3"},
                                  .is_vent = true}},
                    .note = "painted"}},
        .loads = {{.name = "washer", .mass_kg = 31.5, .where = "lower", .note = "full"},
                  {.name = "vice", .mass_kg = 9, .where = Place{"1", "2", "30"}}},
        .note = "beside the door",
    };
}

Shop full_shop() {
    return {.kerf = "1/8 in",
            .end_trim = "1 in",
            .end_gap = "1/16 in",
            .graduation = "1/16 in",
            .edge_distance = 1.75,
            .pitch = 3.5,
            .recipe = "corner cleat",
            .gusset_thickness = "1/8 in",
            .gusset_alloy = "6061-T6",
            .panel_gap = "1/8 in",
            .panel_pitch = "5 in",
            .per_lap = 1,
            .fastener = "blind rivet 1/8",
            .screw = "machine screw 8-32",
            .screw_hold = ScrewHold::nut,
            .nose_radius = "1/4 in",
            .nose_reach = "5/8 in",
            .housing_radius = "3/4 in",
            .drills = {"#30", "1/8"},
            .spare_percent = 5,
            .tax_percent = 7.25,
            .delivery_fee = 85,
            .currency = "crowns"};
}

}  // namespace

Project full_project() {
    return {.name = "Everything",
            .note = "Invented: every field in use",
            .shown = {engine::TapeForm::millimetre, 16, 1, true},
            .dimensions = {{.name = "width",
                            .formula = "36 in",
                            .note = "between the ribs",
                            .least = "20 in",
                            .most = "width max"},
                           {.name = "width max", .formula = "50 in"},
                           {.name = "lean", .kind = engine::QuantityKind::angle, .formula = "5"}},
            .room = full_room(),
            .stock = {{.name = "angle",
                       .section = "angle 1 x 1 x 1/8",
                       .alloy = "6063-T52",
                       .bars = {{.length = "16 ft", .price = 31.25, .limit = 12}, {"20 ft"}},
                       .offcuts = {{.length = "40 in", .count = 2}, {"17 1/2"}}}},
            .frames = {full_frame()},
            .shop = full_shop()};
}

}  // namespace model_tests
