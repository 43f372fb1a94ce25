#include "editor/assembly_memo.h"
#include "editor/commands.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/open_project.h"
#include "editor/room_scene.h"
#include "editor/seeing_commands.h"
#include "editor/seen_scene.h"
#include "editor/view/cut_handle.h"
#include "editor/view/hole_places.h"
#include "editor/view/pull_apart.h"
#include "engine/render/pick.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>
#include <glm/geometric.hpp>

#include <algorithm>
#include <set>

using editor::Visible;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

void open_sample(HeadlessUi& ui, const std::string& name) {
    const auto project =
        editor::open_project(std::filesystem::path{BARWRIGHT_SAMPLES} / (name + ".json"));
    REQUIRE(project);
    editor::replace_project(ui.desk, *project, {});
    ui.settle();
}

std::size_t items_with(const engine::SceneBatch& batch, auto wanted) {
    return static_cast<std::size_t>(std::ranges::count_if(
        batch.items, [&](const engine::SceneItem& item) { return wanted(item.pick_id); }));
}

const engine::SceneItem* item_of(const engine::SceneBatch& batch, engine::PickId pick) {
    const auto at = std::ranges::find(batch.items, pick, &engine::SceneItem::pick_id);
    return at == batch.items.end() ? nullptr : &*at;
}

bool is_obstacle(engine::PickId pick) { return editor::obstacle_of_pick(pick).has_value(); }

}  // namespace

TEST_CASE("no way of seeing is an edit, and one command ends them all", "[editor][seeing]") {
    HeadlessUi ui;
    open_sample(ui, "work_counter");
    const auto before = ui.desk.history.revision();
    for (const auto* id : {"view.measure", "view.cut", "view.colours", "view.marks", "view.room",
                           "view.lines", "view.apart"}) {
        INFO(id);
        editor::run_command(ui.desk, id);
        ui.settle();
        CHECK(editor::is_seen_otherwise(ui.desk));
        CHECK(ui.desk.history.revision() == before);
        CHECK_FALSE(ui.desk.history.can_undo());
        editor::run_command(ui.desk, "view.as_it_is");
        ui.settle();
        CHECK_FALSE(editor::is_seen_otherwise(ui.desk));
        CHECK(&editor::seen_scene(ui.desk) == &editor::scene(ui.desk));
    }
}

TEST_CASE("another project is seen as it is", "[editor][seeing]") {
    HeadlessUi ui;
    open_sample(ui, "work_counter");
    editor::run_command(ui.desk, "view.cut");
    editor::run_command(ui.desk, "view.colours");
    ui.settle();
    open_sample(ui, "parts_box");
    CHECK_FALSE(editor::is_seen_otherwise(ui.desk));
    CHECK_FALSE(editor::seen_scene(ui.desk).cut);
}

TEST_CASE("the room goes faint, away and comes back; away it is not picked", "[editor][seeing]") {
    HeadlessUi ui;
    open_sample(ui, "work_counter");
    const auto as_it_is = items_with(editor::seen_scene(ui.desk).translucent, is_obstacle);
    REQUIRE(as_it_is > 0);
    const auto strength = editor::scene(ui.desk).translucent.items.front().colour.alpha;
    ui.press('R', key::left_shift);
    CHECK(ui.desk.ui.seeing.way.room == Visible::faintly);
    CHECK(editor::seen_scene(ui.desk).translucent.items.front().colour.alpha < strength / 2);
    ui.click("Seeing/room");
    CHECK(ui.desk.ui.seeing.way.room == Visible::hidden);
    CHECK(items_with(editor::seen_scene(ui.desk).translucent, is_obstacle) == 0);
    ui.click("Seeing/room");
    CHECK(items_with(editor::seen_scene(ui.desk).translucent, is_obstacle) == as_it_is);
}

TEST_CASE("panels that are away take their fasteners along, and what is behind them is picked",
          "[editor][seeing]") {
    HeadlessUi ui;
    open_sample(ui, "tool_cabinet");
    const auto& pieces = ui.now().resolved.pieces;
    const auto is_panel = [&](engine::PickId pick) {
        return pick < pieces.size() && pieces[pick].kind == model::PieceKind::panel;
    };
    const auto panels = items_with(editor::scene(ui.desk).solid, is_panel);
    REQUIRE(panels > 0);
    const auto whole = editor::scene(ui.desk).solid.items.size();
    ui.press('P', key::left_shift);
    CHECK(items_with(editor::seen_scene(ui.desk).translucent, is_panel) == panels);
    CHECK(items_with(editor::seen_scene(ui.desk).solid, is_panel) == 0);
    ui.press('P', key::left_shift);
    CHECK(items_with(editor::seen_scene(ui.desk).translucent, is_panel) == 0);
    CHECK(editor::seen_scene(ui.desk).solid.items.size() < whole - panels);
}

TEST_CASE("a cut takes away what the eye meets first, and nothing of it is picked",
          "[editor][seeing]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    ui.press('C', key::left_shift);
    const auto& cut = ui.desk.ui.seeing.cut;
    REQUIRE(cut);
    CHECK(cut->axis == model::Axis::y);
    CHECK(cut->at % editor::hand_step(ui.now().project->shown).nm() == 0);
    CHECK_FALSE(cut->keeps_low);
    const auto& scene = editor::seen_scene(ui.desk);
    REQUIRE(scene.cut);
    CHECK_FALSE(scene.cut->faces.items.empty());
    const auto& view = ui.item("View/picture");
    const double plane = static_cast<double>(cut->at) / 1e6;
    std::size_t hits = 0;
    for (int i = 1; i < 40; ++i) {
        for (int k = 1; k < 40; ++k) {
            const glm::dvec2 pixel{(view.right - view.left) * static_cast<float>(i) / 40.0F,
                                   (view.bottom - view.top) * static_cast<float>(k) / 40.0F};
            const auto hit = engine::pick_at(scene, ui.desk.ui.view.camera, pixel,
                                             ui.desk.ui.view.viewport, 0.0);
            if (!hit) continue;
            ++hits;
            CHECK(hit->at.y >= plane - 0.01);
        }
    }
    CHECK(hits > 20);
    ui.press('O', key::left_shift);
    CHECK(cut->keeps_low);
    ui.press('X', key::left_shift);
    CHECK(cut->axis == model::Axis::z);
    ui.press('C', key::left_shift);
    CHECK_FALSE(editor::seen_scene(ui.desk).cut);
}

TEST_CASE("the place of a cut is typed, nudged and pulled, and stays within what there is",
          "[editor][seeing]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    ui.press('3');
    editor::run_command(ui.desk, "view.cut");
    ui.settle();
    REQUIRE(ui.desk.ui.seeing.cut->axis == model::Axis::z);
    ui.fill("Seeing/cut at", "7 1/4");
    CHECK(ui.desk.ui.seeing.cut->at == 7 * model::Nm{25'400'000} + 6'350'000);
    CHECK(ui.item("View/cut").value == "cut up 7 1/4");
    ui.fill("Seeing/cut at", "900");
    const auto range = editor::cut_range(editor::seen_scene(ui.desk), model::Axis::z);
    CHECK(ui.desk.ui.seeing.cut->at == range.most);
    ui.fill("Seeing/cut at", "no length");
    CHECK(ui.desk.ui.seeing.cut->at == range.most);
    ui.fill("Seeing/cut at", "7 1/4");
    ui.press('1');
    const auto before = ui.desk.ui.seeing.cut->at;
    ui.drag("View/cut", 0, -30);
    CHECK(ui.desk.ui.seeing.cut->at > before);
    CHECK(ui.desk.history.can_undo());  // the box alone
    ui.press('V', key::left_shift);
    ui.press('A', key::left_control);
    ui.type("3");
    ui.press(key::enter);
    CHECK(ui.desk.ui.seeing.cut->at == 3 * model::Nm{25'400'000});
}

TEST_CASE("each way to colour has a legend that names its colours and counts every piece once",
          "[editor][seeing]") {
    HeadlessUi ui;
    open_sample(ui, "work_counter");
    const auto pieces = ui.now().resolved.pieces.size();
    for (int i = 0; i < 4; ++i) {
        ui.press('K', key::left_shift);
        const auto& memo = editor::seen(ui.desk);
        INFO(editor::words_of(ui.desk.ui.seeing.way.colour_by));
        REQUIRE(memo.colours.of_pieces.size() == pieces);
        std::set<std::string> names;
        int counted = 0;
        for (const auto& row : memo.colours.legend) {
            CHECK(names.insert(row.colour_name).second);
            CHECK_FALSE(row.words.empty());
            counted += row.count;
            CHECK(ui.has("Legend/" + row.colour_name));
        }
        CHECK(counted == static_cast<int>(pieces));
        for (model::Index p = 0; p < pieces; ++p) {
            const auto* item = item_of(editor::seen_scene(ui.desk).solid, p);
            REQUIRE(item != nullptr);
            CHECK(item->colour == memo.colours.of_pieces[p]);
        }
    }
    ui.press('K', key::left_shift);
    CHECK(editor::seen(ui.desk).colours.legend.empty());
}

TEST_CASE("pieces of one mark have one colour", "[editor][seeing]") {
    HeadlessUi ui;
    open_sample(ui, "parts_box");
    const auto made = editor::piece_colours(editor::ColourBy::mark, ui.now(), *ui.desk.catalogue);
    const auto& pieces = ui.now().resolved.pieces;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (pieces[i].mark == pieces[k].mark) CHECK(made.of_pieces[i] == made.of_pieces[k]);
        }
    }
}

TEST_CASE("what has an error is red, and nothing is where there is none", "[editor][seeing]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto red = [&] {
        const auto made =
            editor::piece_colours(editor::ColourBy::finding, ui.now(), *ui.desk.catalogue);
        return made.legend.front().count;
    };
    REQUIRE(ui.now().summary.errors == 0);
    CHECK(red() == 0);
    const auto made =
        editor::piece_colours(editor::ColourBy::clearance, ui.now(), *ui.desk.catalogue);
    CHECK(made.legend.back().count == static_cast<int>(ui.now().resolved.pieces.size()));
}

TEST_CASE("what stands in an obstacle is red by clearance and by finding", "[editor][seeing]") {
    HeadlessUi ui;
    open_sample(ui, "work_counter");
    const auto red_by = [&](editor::ColourBy way) {
        return editor::piece_colours(way, ui.now(), *ui.desk.catalogue).legend.front().count;
    };
    REQUIRE(ui.now().summary.errors == 0);
    CHECK(red_by(editor::ColourBy::clearance) == 0);
    CHECK(red_by(editor::ColourBy::finding) == 0);
    const auto& piece = ui.now().resolved.pieces.front();
    const auto& frame = ui.now().resolved.frames[piece.frame];
    const auto lo = model::to_room(frame, piece.extents.lo);
    const auto hi = model::to_room(frame, piece.extents.hi);
    model::BoxObstacle block;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto middle = engine::Length::from_nm((lo[k] + hi[k]) / 2).mm();
        block.least[k] = std::to_string(middle - 30.0) + " mm";
        block.most[k] = std::to_string(middle + 30.0) + " mm";
    }
    REQUIRE(editor::submit(
        ui.desk, editor::change_of(model::PutObstacle{{.name = "block", .shape = block}, {}})));
    CHECK(ui.now().summary.errors > 0);
    CHECK(red_by(editor::ColourBy::clearance) > 0);
    CHECK(red_by(editor::ColourBy::finding) > 0);
}

TEST_CASE("taken apart, what is put on last comes off first, and nothing stays together",
          "[editor][seeing]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto& resolved = ui.now().resolved;
    const auto& assembly =
        editor::assembly_of(ui.desk.ui.make.assembly, ui.now(), *ui.desk.catalogue);
    const auto apart = [&](double share) {
        return editor::pulled_apart(resolved, assembly.order, assembly.approaches, share);
    };
    for (const auto& by : apart(0.0)) CHECK(glm::length(by) == 0.0);
    const auto& steps = assembly.order.steps;
    REQUIRE(steps.size() > 1);
    const auto last = static_cast<model::Index>(steps.size() - 1);
    const auto begun = apart(0.9 / static_cast<double>(steps.size()));
    for (model::Index i = 0; i < begun.size(); ++i) {
        const auto& arrivals = assembly.approaches[i].arrivals;
        const bool is_last = !arrivals.empty() && arrivals.back().step == last;
        CHECK((glm::length(begun[i]) > 1.0) == is_last);
    }
    const auto whole = apart(1.0);
    for (const auto& joint : resolved.joints) {
        CAPTURE(joint.pieces[0], joint.pieces[1]);
        CHECK(glm::distance(whole[joint.pieces[0]], whole[joint.pieces[1]]) > 5.0);
    }
}

TEST_CASE("pulled apart, pieces are picked where they are seen, and no dimension is shown",
          "[editor][seeing]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    REQUIRE(ui.has("View/tags/width"));
    ui.press('A', key::left_shift);
    CHECK_FALSE(ui.has("View/tags/width"));
    const auto& scene = editor::seen_scene(ui.desk);
    const auto& moved = editor::seen(ui.desk).moved;
    const auto* item = item_of(scene.solid, 0);
    const auto* before = item_of(editor::scene(ui.desk).solid, 0);
    REQUIRE(item != nullptr);
    CHECK(glm::distance(item->bounds.lo, before->bounds.lo + moved[0]) < 0.01);
    CHECK(ui.has("Seeing/how far apart"));
    ui.drag("Seeing/how far apart", 60, 0);
    CHECK(ui.desk.ui.seeing.way.apart > 0.5F);
    ui.press('A', key::left_shift);
    CHECK(ui.has("View/tags/width"));
}

TEST_CASE("one piece is looked at alone; Escape comes back to where all was seen from",
          "[editor][seeing]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto before = ui.desk.ui.view.camera;
    ui.press('A');
    CHECK_FALSE(ui.desk.ui.seeing.way.alone);
    ui.desk.ui.selection = editor::selection_of(*ui.now().project, ui.now().resolved, {2});
    ui.settle();
    ui.press('A');
    REQUIRE(ui.desk.ui.seeing.way.alone);
    const auto& solid = editor::seen_scene(ui.desk).solid;
    REQUIRE(solid.items.size() == 1);
    CHECK(solid.items[0].pick_id == 2);
    const auto is_a_piece = [](engine::PickId pick) { return pick != engine::no_pick; };
    CHECK(items_with(editor::seen_scene(ui.desk).translucent, is_a_piece) == 0);
    CHECK(ui.desk.ui.view.camera.distance < before.distance);
    SECTION("another one that is chosen takes its place") {
        ui.desk.ui.selection = editor::selection_of(*ui.now().project, ui.now().resolved, {3});
        ui.settle();
        CHECK(editor::seen_scene(ui.desk).solid.items[0].pick_id == 3);
    }
    SECTION("one that is removed is not looked at") {
        ui.press(key::remove);
        CHECK_FALSE(ui.desk.ui.seeing.way.alone);
    }
    ui.press(key::escape);
    CHECK_FALSE(ui.desk.ui.seeing.way.alone);
    CHECK(ui.desk.ui.view.camera == before);
    CHECK(editor::seen_scene(ui.desk).solid.items.size() > 10);
}

TEST_CASE("the cabinets are seen from behind and from the right", "[editor][seeing]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto looks = [&] { return engine::forward_of(ui.desk.ui.view.camera); };
    ui.press('1');
    const auto from_front = looks();
    ui.press('5');
    CHECK(glm::distance(looks(), -from_front) < 1e-9);
    CHECK(ui.desk.ui.view.camera.projection == engine::Projection::parallel);
    ui.press('2');
    const auto from_left = looks();
    ui.press('6');
    CHECK(glm::distance(looks(), -from_left) < 1e-9);
}

TEST_CASE("every hole is where its piece is open", "[editor][seeing]") {
    HeadlessUi ui;
    open_sample(ui, GENERATE("parts_box", "work_counter"));
    const auto& now = ui.now();
    const auto& solid = editor::scene(ui.desk).solid;
    std::size_t looked_at = 0;
    for (model::Index h = 0; h < now.resolved.holes.size(); h += 3) {
        const auto place = editor::hole_place(now, h);
        REQUIRE(place);
        const auto at = place->at * 1e-6;
        const auto aside = glm::dvec3{place->axis.y, place->axis.z, place->axis.x};
        const auto meets_own = [&](const glm::dvec3& off) {
            // From just outside of the outer face through the wall.
            const engine::Ray ray{at + off + place->axis * 0.5, -place->axis};
            engine::SceneBatch own = solid;
            for (auto& item : own.items) {
                if (item.pick_id != now.resolved.holes[h].piece) item.pick_id = engine::no_pick;
            }
            const auto hit = engine::pick_along(own, ray);
            return hit && hit->along < 1.0;
        };
        INFO("hole " << h);
        CHECK_FALSE(meets_own({}));
        CHECK(meets_own(aside * (place->radius * 1e-6 + 0.3)));
        if (++looked_at == 25) break;
    }
    CHECK(looked_at > 10);
}

TEST_CASE("a hole under the pointer tells its drill and its fastener", "[editor][seeing]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    std::size_t told = 0;
    for (model::Index h = 0; h < ui.now().resolved.holes.size() && told == 0; ++h) {
        const auto place = editor::hole_place(ui.now(), h);
        const auto pixel =
            engine::pixel_of(ui.desk.ui.view.camera, place->at * 1e-6, ui.desk.ui.view.viewport);
        const auto& view = ui.item("View/picture");
        if (!pixel) continue;
        ui.move_to(view.left + static_cast<float>(pixel->x),
                   view.top + static_cast<float>(pixel->y));
        const auto& hovered = ui.desk.ui.seeing.hovered_hole;
        if (!hovered) continue;
        ++told;
        const auto words = editor::hole_words(ui.now(), *ui.desk.catalogue, *hovered);
        CHECK_THAT(words, Catch::Contains("drill"));
        CHECK_THAT(words, Catch::Contains("blind rivet"));
    }
    CHECK(told == 1);
}

TEST_CASE("marks stand on their pieces, and none on another one or on a tag", "[editor][seeing]") {
    HeadlessUi ui(GENERATE(1280.0F, 1600.0F), 900.0F);
    open_sample(ui, "tool_cabinet");
    ui.press('M', key::left_shift);
    std::vector<editor::ItemRecord> all;
    std::size_t marks = 0;
    for (const auto& [name, item] : ui.items()) {
        const bool is_mark = name.rfind("View/marks/", 0) == 0;
        if (!is_mark && name.rfind("View/tags/", 0) != 0) continue;
        all.push_back(item);
        if (!is_mark) continue;
        ++marks;
        const auto piece = static_cast<model::Index>(std::stoul(name.substr(11)));
        const auto mark = ui.now().resolved.pieces[piece].mark;
        CHECK(item.value == ui.now().resolved.marks[mark].name);
    }
    REQUIRE(marks > 8);
    const auto& bar = ui.desk.ui.seeing.bar;
    all.push_back({bar.x, bar.y, bar.x + bar.width, bar.y + bar.height, true, true, "bar"});
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            INFO(all[i].value << " on " << all[k].value);
            CHECK((all[i].right <= all[k].left || all[k].right <= all[i].left ||
                   all[i].bottom <= all[k].top || all[k].bottom <= all[i].top));
        }
    }
}

TEST_CASE("the bar of ways to see stays within a narrow view and out of an empty one",
          "[editor][seeing]") {
    HeadlessUi ui(720, 480);
    CHECK_FALSE(ui.has("Seeing/measure"));
    tests::start_box(ui.desk);
    ui.settle();
    editor::run_command(ui.desk, "view.cut");
    editor::run_command(ui.desk, "view.colours");
    ui.settle();
    const auto& view = ui.item("View/picture");
    for (const auto& [name, item] : ui.items()) {
        if (name.rfind("Seeing/", 0) != 0) continue;
        INFO(name);
        CHECK(item.left >= view.left);
        CHECK(item.right <= view.right);
    }
    CHECK(ui.has("Seeing/cut at"));
}
