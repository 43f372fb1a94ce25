#include "tests/model/project/random_edit.h"

#include "tests/model/project/full_project.h"

namespace model_tests {

using namespace model;

namespace {

Member random_member(Draw& draw) {
    Member member{.name = draw.bar(), .stock = draw.stock(), .run = draw.axis()};
    member.on = {draw.plane(), draw.plane()};
    member.from = draw.plane();
    member.to = draw.plane();
    member.legs = {draw.sense(), draw.sense()};
    if (draw.coin()) member.rank = static_cast<int>(draw.below(40));
    member.allowance_to = draw.formula();
    member.note = draw.note();
    return member;
}

Obstacle random_obstacle(Draw& draw) {
    Obstacle obstacle{.name = draw.bay(), .note = draw.note()};
    if (draw.coin()) {
        // In a corner of a started frame, or wherever the formulas take it.
        const Formula most = draw.coin() ? "8 in" : draw.formula();
        obstacle.shape = BoxObstacle{{"-1 in", "-1 in", "-1 in"}, {"9 in", "7 in", most}};
    } else if (draw.coin()) {
        obstacle.shape = WallProfile{
            draw.formula(), draw.sense(), "0", "10", {{draw.formula(), draw.formula()}}};
    } else {
        obstacle.shape = CylinderObstacle{.radius = draw.formula(), .length = "1"};
    }
    return obstacle;
}

Load random_load(Draw& draw) {
    Load load{.name = draw.bay(), .mass_kg = static_cast<double>(draw.below(100)) / 3.0};
    if (draw.coin()) {
        load.where = draw.bay();
    } else {
        load.where = Place{draw.formula(), "0", "0"};
    }
    return load;
}

Edit random_start(Draw& draw) {
    if (draw.coin()) {
        StartBoxFrame start{.frame = draw.frame(), .stock = draw.stock()};
        start.width = start.depth = start.height = draw.formula();
        start.dividers = {draw.formula()};
        return start;
    }
    StartSteppedFrame start{.frame = draw.frame(), .stock = draw.stock()};
    start.width = start.depth = start.height = draw.formula();
    start.well_height = start.well_depth = draw.formula();
    start.shelf_levels = {draw.formula()};
    return start;
}

Edit random_survey(Draw& draw) {
    if (draw.coin()) {
        SurveyWheelWell well{.obstacle = draw.bay(), .note = draw.note()};
        if (draw.coin()) well.inside = Sense::minus;
        if (draw.coin()) well.wall = draw.formula();
        well.start = well.length = well.height = well.reach = "12";
        (draw.coin() ? well.reach : well.length) = draw.formula();
        return well;
    }
    SurveyWall wall{.obstacle = draw.bay(), .to = "96"};
    wall.line = draw.formula();
    for (std::size_t i = draw.below(3); i > 0; --i) {
        wall.readings.push_back({"24", i == 1 ? draw.formula() : "30 in"});
    }
    return wall;
}

Edit random_supplies(Draw& draw) {
    const std::string stock = draw.stock();
    switch (draw.below(6)) {
        case 0:
            return RemoveStock{stock};
        case 1: {
            KeepBars kept{.stock = stock, .offcuts = {{draw.formula(), 2}}, .at_home = {{"20 ft"}}};
            kept.at_saw.push_back({.length = "16 ft", .cuts = {{.length = draw.formula()}}});
            kept.what_was_done = "Cut A";
            return kept;
        }
        case 2: {
            const Supplier supplier{.name = draw.bay(), .prices = "prices.csv"};
            return PutSupplier{supplier, draw.replaced(draw.bay())};
        }
        case 3:
            return NotePurchase{static_cast<int>(draw.below(4))};
        case 4:
            return TakePurchaseBack{static_cast<int>(draw.below(4))};
        default:
            return RemoveSupplier{draw.bay()};
    }
}

Edit random_edit_of_project(Draw& draw) {
    switch (draw.below(13)) {
        case 0:
            return SetTitle{draw.note(), draw.note()};
        case 1: {
            engine::TapeStyle style;
            style.form = static_cast<engine::TapeForm>(draw.below(6));
            style.denominator = static_cast<int>(draw.below(65));
            return SetShown{style};
        }
        case 2: {
            Shop shop;
            shop.kerf = draw.formula();
            shop.pitch = static_cast<double>(draw.below(9));
            return SetShop{shop};
        }
        case 3:
        case 4: {
            Dimension dimension{.name = draw.dimension(), .formula = draw.formula()};
            dimension.kind = static_cast<engine::QuantityKind>(draw.below(3));
            if (draw.coin()) dimension.least = draw.formula();
            return PutDimension{dimension, draw.replaced(draw.dimension())};
        }
        case 5: {
            const std::string name = draw.dimension();
            return SetFormula{name, draw.formula()};
        }
        case 6:
            return RemoveDimension{draw.dimension()};
        case 7: {
            Stock stock{.name = draw.stock(), .section = "angle 1 x 1 x 1/8", .alloy = "6063-T52"};
            return PutStock{stock, draw.replaced(draw.stock())};
        }
        case 8:
            return random_supplies(draw);
        case 9: {
            const Obstacle obstacle = random_obstacle(draw);
            return PutObstacle{obstacle, draw.replaced(draw.bay())};
        }
        case 10:
            return RemoveObstacle{draw.bay()};
        case 11:
            return random_survey(draw);
        default:
            return random_start(draw);
    }
}

Edit random_vents(Draw& draw, const std::string& frame, const std::string& panel) {
    VentRow row{
        .sheet = {engine::Length::from_nm(700'000'000), engine::Length::from_nm(500'000'000)}};
    row.count = static_cast<int>(draw.below(5));
    row.width = engine::Length::from_nm(40'000'000 * static_cast<std::int64_t>(draw.below(6)));
    row.height = engine::Length::from_nm(40'000'000 * static_cast<std::int64_t>(draw.below(6)));
    row.gap = engine::Length::from_nm(20'000'000);
    row.is_stacked = draw.coin();
    return PutVents{.frame = frame, .panel = panel, .row = row};
}

// Of the counter's own planes and members, or of the frame that was started.
Edit random_laying_out(Draw& draw) {
    const bool is_box = draw.coin();
    const std::string frame = is_box ? "box" : draw.frame();
    const std::string bay = is_box ? "inside" : draw.bay();
    const std::string bar =
        is_box ? draw.one_of(std::array{"post front left", "rail front top", "rail left bottom"})
               : draw.bar();
    switch (draw.below(9)) {
        case 0:
            return FlipLegs{frame, {bar, "post front right"}, draw.axis()};
        case 1:
            return TurnEndForEnd{frame, bar};
        case 2:
            if (is_box && draw.coin()) {
                const auto rail = draw.one_of(std::array{"rail back top", "rail front top"});
                return SplitMember{frame, rail, "mid"};
            }
            return SplitMember{frame, bar, draw.plane()};
        case 3: {
            const std::string whole = is_box && draw.coin() ? "rail back top" : bar;
            return JoinMembers{frame, {whole + " 1", draw.coin() ? whole : whole + " 2"}};
        }
        case 4: {
            MirrorBars mirror{.frame = frame, .axis = draw.axis()};
            if (draw.coin()) mirror.bars = {bar};
            if (draw.coin()) mirror.between = {draw.plane(), draw.plane()};
            return mirror;
        }
        case 5: {
            RepeatBay repeat{.frame = frame, .bay = bay, .axis = draw.axis()};
            repeat.times = static_cast<int>(draw.below(4));
            if (draw.coin()) repeat.pitch = draw.formula();
            repeat.with_loads = draw.coin();
            return repeat;
        }
        case 6: {
            const std::string name = draw.one_of(std::array{"copy", "other hand", "box"});
            CopyFrame copy{.frame = frame, .copy = name};
            copy.origin[1] = draw.formula();
            copy.has_own_dimensions = draw.coin();
            copy.is_mirrored = draw.coin();
            return copy;
        }
        case 7:
            return TakeOutPlane{frame, draw.plane()};
        default:
            return TakeOutBay{frame, bay, draw.coin()};
    }
}

Edit random_edit_of_frame(Draw& draw) {
    const std::string frame = draw.frame();
    switch (draw.below(19)) {
        case 0: {
            Frame put{.name = frame, .note = draw.note()};
            return PutFrame{put, draw.replaced(draw.frame())};
        }
        case 1:
            if (draw.coin()) return SetFrameRecipe{frame, draw.note()};
            return PlaceFrame{frame, {draw.formula(), "0", "0"}, int(draw.below(9)) - 4};
        case 2:
            return draw.below(8) == 0 ? Edit{RemoveFrame{frame}} : Edit{SetTitle{"t", ""}};
        case 3: {
            Plane plane{draw.plane(), draw.axis(), draw.formula()};
            return PutPlane{frame, plane, draw.replaced(draw.plane())};
        }
        case 4: {
            const std::string plane = draw.plane();
            return SetPlanePosition{frame, plane, draw.formula()};
        }
        case 5:
            return RemovePlane{frame, draw.plane()};
        case 6: {
            Bay bay{.name = draw.bay(), .x = {"left", "right"}, .note = draw.note()};
            bay.y = {"front", draw.plane()};
            bay.z = {"bottom", "top"};
            return PutBay{frame, bay, draw.replaced(draw.bay())};
        }
        case 7:
            return RemoveBay{frame, draw.bay()};
        case 8:
        case 9: {
            const Member member = random_member(draw);
            return PutMember{frame, member, draw.replaced(draw.bar())};
        }
        case 10:
            return RemoveMember{frame, draw.bar()};
        case 11:
            return SetMemberStock{frame, {}, draw.stock()};
        case 12: {
            Diagonal diagonal{.name = draw.bar(), .stock = draw.stock(), .face = draw.plane()};
            diagonal.from = {"left", draw.plane()};
            diagonal.to = {"right", "top"};
            return draw.coin() ? Edit{PutDiagonal{frame, diagonal, draw.replaced(draw.bar())}}
                               : Edit{RemoveDiagonal{frame, draw.bar()}};
        }
        case 13: {
            JointOverride joint;
            joint.members[0] = draw.bar();
            joint.members[1] = draw.bar();
            return draw.coin() ? Edit{PutJoint{frame, joint}}
                               : Edit{RemoveJoint{frame, joint.members}};
        }
        case 14: {
            Panel panel{.name = draw.bay(), .bay = draw.bay(), .thickness = draw.formula()};
            if (draw.below(3) == 0) return random_vents(draw, "counter", "side");
            return draw.coin() ? Edit{PutPanel{frame, panel, draw.replaced(draw.bay())}}
                               : Edit{RemovePanel{frame, draw.bay()}};
        }
        case 15: {
            Leaning leaning{.name = draw.bar(), .stock = draw.stock(), .face = draw.plane()};
            leaning.from = {draw.plane(), "bottom"};
            leaning.to = {"back", "top"};
            return draw.coin() ? Edit{PutLeaning{frame, leaning, draw.replaced(draw.bar())}}
                               : Edit{RemoveLeaning{frame, draw.bar()}};
        }
        case 16: {
            const Formula clearance = draw.coin() ? "" : draw.formula();
            return StepOver{draw.coin() ? "box" : frame, draw.bay(), clearance};
        }
        case 17: {
            MeasuredOpening opening{.name = draw.bay(), .height = draw.formula()};
            opening.widths = {draw.formula(), "36", draw.formula()};
            return draw.coin() ? Edit{PutOpening{frame, opening, draw.replaced(draw.bay())}}
                               : Edit{RemoveOpening{frame, draw.bay()}};
        }
        default: {
            const Load load = random_load(draw);
            return draw.coin() ? Edit{PutLoad{frame, load, draw.replaced(draw.bay())}}
                               : Edit{RemoveLoad{frame, draw.bay()}};
        }
    }
}

}  // namespace

Edit random_edit(Draw& draw) {
    if (draw.below(3) == 0) return random_edit_of_project(draw);
    return draw.below(5) == 0 ? random_laying_out(draw) : random_edit_of_frame(draw);
}

Project project_to_edit() {
    Project project = model_tests::full_project();
    StartBoxFrame box{.frame = "box", .stock = "angle"};
    box.width = box.depth = box.height = "36 in";
    BoxObstacle corner{{"-1 in", "-1 in", "-1 in"}, {"9 in", "7 in", "8 in"}};
    auto started = apply(project, box).value();
    started = apply(started, PutPlane{"box", {"mid", Axis::x, "24 in"}, ""}).value();
    Member footed = started.frames.back().members.front();
    footed.foot_from = true;
    started = apply(started, PutMember{"box", footed, footed.name}).value();
    // Called after a side across which it does not lie.
    started = apply(started, PutPlane{"box", {"left shelf", Axis::z, "18 in"}, ""}).value();
    Member rail{.name = "rail left shelf", .stock = "angle", .run = Axis::y};
    rail.on = {"left", "left shelf"};
    rail.from = "front";
    rail.to = "back";
    started = apply(started, PutMember{"box", rail, ""}).value();
    started = apply(started, SplitMember{"box", "rail back top", "mid"}).value();
    return apply(started, PutObstacle{{.name = "lower", .shape = corner}, ""}).value();
}

}  // namespace model_tests
