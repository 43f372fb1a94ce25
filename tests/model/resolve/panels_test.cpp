#include "model/resolve/lap_polygon.h"
#include "model/resolve/rect.h"
#include "model/resolve/resolve.h"

#include "tests/model/resolve/resolve_support.h"
#include "tests/support/run_project.h"
#include "tests/support/skeleton_checks.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstddef>

namespace {

using namespace model;
using tests::inches;
using tests::inches_64;

// A box of 36 x 18 x 30 in with one bay over all of it.
Project box_with(const Panel& panel) {
    auto project = tests::box_project(tests::BoxShape{}, "angle 1 x 1 x 1/8", "6063-T52");
    auto& frame = project.frames[0];
    const auto plane = [&](Axis axis, bool greatest) {
        std::string name;
        for (const auto& each : frame.planes) {
            if (each.axis == axis && (name.empty() || greatest)) name = each.name;
        }
        return name;
    };
    Bay bay{.name = "all"};
    bay.x = {plane(Axis::x, false), plane(Axis::x, true)};
    bay.y = {plane(Axis::y, false), plane(Axis::y, true)};
    bay.z = {plane(Axis::z, false), plane(Axis::z, true)};
    frame.bays = {bay};
    frame.panels = {panel};
    return project;
}

Panel back() {
    return {.name = "back",
            .bay = "all",
            .face_axis = Axis::y,
            .face_side = Sense::plus,
            .material = "5052-H32",
            .thickness = "1/8 in"};
}

const Piece* panel_of(const Resolved& resolved) {
    const auto found = std::ranges::find(resolved.pieces, PieceKind::panel, &Piece::kind);
    return found == resolved.pieces.end() ? nullptr : &*found;
}

void check_shop_can_make(const Project& project) {
    const auto complaints = tests::skeleton_complaints(
        tests::written_files(project, tests::shipped_catalogue()), tests::rules_of(project));
    for (const auto& complaint : complaints) UNSCOPED_INFO(complaint);
    CHECK(complaints.empty());
}

}  // namespace

TEST_CASE("an overlay panel covers the face to its outer planes", "[model][resolve][panels]") {
    const auto project = box_with(back());
    const auto resolved = tests::resolved(project);
    const auto* panel = panel_of(resolved);
    REQUIRE(panel != nullptr);
    CHECK(panel->extents.lo == Point{0, inches(18), 0});
    CHECK(panel->extents.hi == Point{inches(36), inches(18) + inches_64(8), inches(30)});
    CHECK(panel->length == inches(36));
    check_shop_can_make(project);
}

TEST_CASE("a panel is fastened at the pitch along the posts that it touches",
          "[model][resolve][panels]") {
    const auto project = box_with(back());
    const auto resolved = tests::resolved(project);
    std::size_t joints = 0;
    for (const auto& joint : resolved.joints) {
        if (resolved.pieces[joint.pieces[0]].kind != PieceKind::panel) continue;
        ++joints;
        std::vector<Nm> heights;
        for (const auto& fastener : resolved.fasteners_of(joint)) {
            heights.push_back(fastener.at[2]);
        }
        std::ranges::sort(heights);
        REQUIRE(heights.size() >= 5);
        for (std::size_t i = 1; i < heights.size(); ++i) {
            CHECK(heights[i] - heights[i - 1] <= inches(6));
        }
    }
    CHECK(joints == 2);
    const auto* off = tests::first_of(resolved, "panel_stands_off");
    REQUIRE(off != nullptr);
    CHECK(off->what.find("1/8 in") != std::string::npos);
}

TEST_CASE("a door is smaller than its opening by the gap all round", "[model][resolve][panels]") {
    auto panel = back();
    panel.fit = PanelFit::inset;
    panel.use = PanelUse::door;
    const auto project = box_with(panel);
    const auto resolved = tests::resolved(project);
    REQUIRE(resolved.openings.size() == 1);
    const auto* door = panel_of(resolved);
    REQUIRE(door != nullptr);
    const Nm width = door->extents.hi[0] - door->extents.lo[0];
    CHECK(width == resolved.openings[0].size[0] - 2 * inches_64(4));
    CHECK(door->extents.hi[1] == inches(18));
    check_shop_can_make(project);
}

TEST_CASE("a cut-out that lies over a member it is fastened to is not cut",
          "[model][resolve][panels]") {
    auto panel = back();
    panel.cut_outs = {{.name = "slot", .least = {"1/4 in", "10 in"}, .most = {"3 in", "12 in"}},
                      {.name = "vent", .least = {"4 in", "10 in"}, .most = {"8 in", "12 in"}}};
    const auto project = box_with(panel);
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "bad_cut_out") == 1);
    const auto* piece = panel_of(resolved);
    REQUIRE(piece != nullptr);
    REQUIRE(piece->plates[0].outline < resolved.outlines.size());
    CHECK(resolved.outlines[piece->plates[0].outline].cut_outs.size() == 1);
    check_shop_can_make(project);
}

TEST_CASE("panels all round a box enter nothing", "[model][resolve][panels]") {
    auto project = box_with(back());
    for (const auto axis : {Axis::x, Axis::y, Axis::z}) {
        for (const auto side : {Sense::minus, Sense::plus}) {
            auto panel = back();
            panel.name = "panel " + std::to_string(project.frames[0].panels.size());
            panel.face_axis = axis;
            panel.face_side = side;
            if (axis != Axis::y || side != Sense::plus) project.frames[0].panels.push_back(panel);
        }
    }
    CHECK(project.frames[0].panels.size() == 6);
    check_shop_can_make(project);
}

TEST_CASE("a panel of what the catalogue does not know is told", "[model][resolve][panels]") {
    auto panel = back();
    panel.material = "cheese";
    CHECK(tests::count_of(tests::resolved(box_with(panel)), "unknown_material") == 1);
}

TEST_CASE("a panel on mitred rails keeps its fasteners off the slanting cuts",
          "[model][resolve][panels]") {
    const auto fit = GENERATE(PanelFit::inset, PanelFit::overlay);
    const auto axis = GENERATE(Axis::x, Axis::y, Axis::z);
    auto panel = back();
    panel.fit = fit;
    panel.face_axis = axis;
    auto project = box_with(panel);
    project.shop.recipe = "mitre";
    check_shop_can_make(project);
}

TEST_CASE("a fixed panel that nothing holds is told", "[model][resolve][panels]") {
    // Its bay ends in the middle of the box, where no member stands.
    auto project = box_with(back());
    auto& frame = project.frames[0];
    frame.planes.push_back({"middle", Axis::y, "9 in"});
    frame.bays[0].y[1] = "middle";
    CHECK(tests::count_of(tests::resolved(project), "panel_unfastened") == 1);
    frame.panels[0].fit = PanelFit::inset;
    CHECK(tests::count_of(tests::resolved(project), "panel_unfastened") == 1);
    check_shop_can_make(project);
}

TEST_CASE("the checks of panels notice a panel that is spoilt", "[support][checks][panels]") {
    auto panel = back();
    panel.cut_outs = {{.name = "vent", .least = {"4 in", "10 in"}, .most = {"8 in", "12 in"}}};
    const auto project = box_with(panel);
    const auto good = tests::written_files(project, tests::shipped_catalogue());
    const auto rules = tests::rules_of(project);
    const auto complains = [&](const tests::SkeletonFiles& files, std::string_view of) {
        return std::ranges::any_of(tests::skeleton_complaints(files, rules), [&](const auto& it) {
            return it.find(of) != std::string::npos;
        });
    };
    const auto replaced = [](std::string text, std::string_view before, std::string_view after) {
        const auto at = text.find(before);
        REQUIRE(at != std::string::npos);
        return text.replace(at, before.size(), after);
    };
    REQUIRE_FALSE(complains(good, ""));
    auto files = good;
    SECTION("called a lap") {
        auto& text = files["pieces.json"];
        text = replaced(text, "\"recipe\":\"panel\"", "\"recipe\":\"staggered lap\"");
        CHECK(complains(files, "is one of a panel"));
    }
    SECTION("of another size in sheet.csv") {
        files["sheet.csv"] = replaced(files["sheet.csv"], ",914.4,", ",914.5,");
        CHECK(complains(files, "sheet.csv has another size"));
    }
    SECTION("with another number of cut-outs in sheet.csv") {
        files["sheet.csv"] = replaced(files["sheet.csv"], ",rectangle,1,", ",rectangle,2,");
        CHECK(complains(files, "counts the cut-outs"));
    }
    SECTION("not in sheet.csv") {
        auto& text = files["sheet.csv"];
        text.resize(text.find('\n') + 1);
        CHECK(complains(files, "sheet.csv does not list"));
    }
    SECTION("riveted and called a door") {
        files["sheet.csv"] = replaced(files["sheet.csv"], ",rectangle,1,,,", ",rectangle,1,30,24,");
        CHECK(complains(files, "is hung, and riveted shut"));
    }
    SECTION("fastened at half the pitch") {
        auto strict = rules;
        strict.panel_pitch = rules.panel_pitch / 2;
        const auto found = tests::skeleton_complaints(good, strict);
        CHECK(std::ranges::any_of(found, [](const auto& it) {
            return it.find("further apart than the pitch") != std::string::npos;
        }));
    }
}

TEST_CASE("an edge distance that is none is kept to the least one for panels too",
          "[model][resolve][panels]") {
    auto project = box_with(back());
    project.shop.edge_distance = GENERATE(-1e300, 0.0, 1e300);
    const bool is_least = project.shop.edge_distance < 1.0;
    const auto resolved = tests::resolved(project);
    const Piece* panel = panel_of(resolved);
    REQUIRE(panel != nullptr);
    CHECK((panel->hole_count > 0) == is_least);
    for (const auto& hole : resolved.holes_of(*panel)) {
        if (hole.operation == HoleOperation::clearance) continue;
        const Nm from_edge = std::min(hole.gauge, hole.from_datum);
        CHECK(from_edge >= hole.diameter * 14 / 10);  // 1.5 times the rivet's own diameter
    }
}

TEST_CASE("of a panel on mitred rails the area of contact ends along the cuts",
          "[model][resolve][panels]") {
    std::size_t cut = 0;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        auto panel = back();
        panel.face_axis = axis;
        auto project = box_with(panel);
        project.shop.recipe = "mitre";
        const auto resolved = tests::resolved(project);
        for (const auto& joint : resolved.joints) {
            if (joint.polygon == no_index) continue;
            const double area = area_of(resolved.lap_polygons[joint.polygon]);
            const double of_box = area_of(joint.lap, joint.normal_axis);
            CHECK(area <= of_box * (1.0 + 1e-9));
            cut += area < 0.99 * of_box ? 1U : 0U;
        }
    }
    CHECK(cut > 0);
}
