#include "editor/by_name.h"
#include "editor/commands.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/view/sketch_hand.h"
#include "editor/view/sketch_trial.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using namespace editor;
using model::Axis;
using tests::HeadlessUi;

namespace {

struct At {
    float x = 0.0F;
    float y = 0.0F;
};

At place_of(HeadlessUi& ui, const GridNode& node) {
    const auto grid = plane_grid(ui.now(), 0);
    const auto& view = ui.desk.ui.view;
    const auto at =
        engine::pixel_of(view.camera, in_room(grid, point_of(grid, node)), view.viewport);
    REQUIRE(at);
    const auto& picture = ui.item("View/picture");
    return {picture.left + static_cast<float>(at->x), picture.top + static_cast<float>(at->y)};
}

At between(const At& a, const At& b, float share = 0.5F) {
    return {a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share};
}

At middle_of(HeadlessUi& ui, const GridSegment& segment) {
    return between(place_of(ui, segment.from), place_of(ui, segment.end()));
}

void drag(HeadlessUi& ui, const At& from, const At& to) {
    ui.move_to(from.x, from.y);
    ui.input.button(0, true);
    ui.settle();
    for (int i = 1; i <= 6; ++i) {
        const auto at = between(from, to, static_cast<float>(i) / 6.0F);
        ui.input.move(at.x, at.y);
        ui.frame();
    }
    ui.settle();
    ui.input.button(0, false);
    ui.settle();
    for (int i = 0; i < 20; ++i) ui.frame();
}

const model::Frame& frame_of(HeadlessUi& ui) { return project_of(ui.desk).frames.front(); }

void start(HeadlessUi& ui, StarterKind kind, std::string_view command) {
    tests::start_frame(ui.desk, kind);
    if (kind == StarterKind::planes) {
        const auto change =
            new_plane_change(project_of(ui.desk), frame_of(ui), {"shelf 1", Axis::z, "9 in"});
        REQUIRE(submit(ui.desk, change));
    }
    ui.settle();
    run_command(ui.desk, command);
    ui.settle();
}

constexpr GridSegment front_post{Axis::z, {1, 0, 0}, 1};

}  // namespace

TEST_CASE("a frame can be begun with its planes alone, and is seen whole", "[editor][sketch]") {
    HeadlessUi ui;
    ui.click("Start/Planes alone");
    ui.settle();
    ui.click("Starter/Make the frame");
    ui.settle();
    CHECK(frame_of(ui).members.empty());
    CHECK(frame_of(ui).planes.size() == 6);
    CHECK(ui.desk.history.undo_label() == "Start frame cabinet");
    CHECK(ui.shown("width") == "24");
    const auto& picture = ui.item("View/picture");
    const auto grid = plane_grid(ui.now(), 0);
    for (const auto& node : nodes_of(grid)) {
        const auto at = place_of(ui, node);
        CHECK(at.x > picture.left);
        CHECK(at.x < picture.right);
        CHECK(at.y > picture.top);
        CHECK(at.y < picture.bottom);
    }
}

TEST_CASE("a click on a line of the grid puts a member there, as one step", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::planes, "sketch.members");
    const auto at = middle_of(ui, front_post);
    ui.move_to(at.x, at.y);
    SECTION("the ghost is shown before the click, and says what it is") {
        REQUIRE(ui.desk.ui.sketch.trial);
        CHECK(ui.desk.ui.sketch.trial->ghost != nullptr);
        CHECK(scene(ui.desk).ghost == ui.desk.ui.sketch.trial->ghost);
        CHECK(ui.item("View/pointed at").value.find("post front right") == 0);
        CHECK(ui.item("View/pointed at").value.find("angle 1 x 1 x 1/8") != std::string::npos);
        CHECK(frame_of(ui).members.empty());
    }
    SECTION("the member comes with its legs pointing inward, and is chosen") {
        ui.click_at(at.x, at.y);
        REQUIRE(frame_of(ui).members.size() == 1);
        const auto& member = frame_of(ui).members.front();
        CHECK(member.name == "post front right");
        CHECK(member.legs == std::array{model::Sense::minus, model::Sense::plus});
        CHECK(ui.desk.history.undo_label() == "Add member post front right");
        REQUIRE(ui.desk.ui.selection.pieces.size() == 1);
        CHECK(ui.desk.ui.selection.pieces.front().member == "post front right");
        run_command(ui.desk, "edit.undo");
        CHECK(frame_of(ui).members.empty());
    }
    SECTION("Delete takes away what was put") {
        ui.click_at(at.x, at.y);
        ui.press(key::remove);
        CHECK(frame_of(ui).members.empty());
    }
}

TEST_CASE("where a member lies already a click chooses it", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.members");
    const auto before = project_of(ui.desk);
    const auto at = middle_of(ui, front_post);
    ui.click_at(at.x, at.y);
    CHECK(project_of(ui.desk) == before);
    REQUIRE(ui.desk.ui.selection.pieces.size() == 1);
    CHECK(ui.desk.ui.selection.pieces.front().member == "post front right");
}

TEST_CASE("a drag across nodes puts one long member", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::planes, "sketch.members");
    const auto grid = plane_grid(ui.now(), 0);
    REQUIRE(grid.planes[2].size() == 3);
    drag(ui, middle_of(ui, front_post), middle_of(ui, {Axis::z, {1, 0, 1}, 2}));
    REQUIRE(frame_of(ui).members.size() == 1);
    CHECK(frame_of(ui).members.front().from == "bottom");
    CHECK(frame_of(ui).members.front().to == "top");
}

TEST_CASE("Escape gives up what is held, then leaves the hand", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::planes, "sketch.members");
    const auto at = middle_of(ui, front_post);
    ui.move_to(at.x, at.y);
    ui.input.button(0, true);
    ui.settle();
    ui.press(key::escape);
    ui.input.button(0, false);
    ui.settle();
    CHECK(frame_of(ui).members.empty());
    CHECK(ui.desk.ui.sketch.hand == SketchHand::members);
    ui.press(key::escape);
    CHECK(ui.desk.ui.sketch.hand == SketchHand::none);
    CHECK_FALSE(scene(ui.desk).ghost);
}

TEST_CASE("planes that an undo takes away under a held button are let go", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::planes, "sketch.members");
    const auto at = middle_of(ui, {Axis::z, {1, 0, 1}, 2});
    ui.move_to(at.x, at.y);
    ui.input.button(0, true);
    ui.settle();
    REQUIRE(ui.desk.ui.sketch.pressed);
    ui.press('Z', key::left_control);
    CHECK_FALSE(ui.desk.ui.sketch.pressed);
    ui.input.button(0, false);
    ui.settle();
    CHECK(frame_of(ui).members.empty());
}

TEST_CASE("a drag beside the lines turns the view while a hand is at work", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::planes, "sketch.members");
    const auto turn = ui.desk.ui.view.camera.turn;
    const auto& picture = ui.item("View/picture");
    drag(ui, {picture.right - 30, picture.bottom - 80}, {picture.right - 90, picture.bottom - 90});
    CHECK(ui.desk.ui.view.camera.turn != turn);
    CHECK(frame_of(ui).members.empty());
}

TEST_CASE("what is pointed at is worked out once", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::planes, "sketch.members");
    const auto at = middle_of(ui, front_post);
    ui.move_to(at.x, at.y);
    const auto ghost = ui.desk.ui.sketch.trial->ghost;
    REQUIRE(ghost);
    ui.move_to(at.x, at.y + 3);
    CHECK(ui.desk.ui.sketch.trial->ghost == ghost);
}

TEST_CASE("a brace is drawn from node to node of a face", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.braces");
    SECTION("by a drag") { drag(ui, place_of(ui, {0, 0, 0}), place_of(ui, {1, 0, 2})); }
    SECTION("by two clicks") {
        const auto from = place_of(ui, {0, 0, 0});
        const auto to = place_of(ui, {1, 0, 2});
        ui.click_at(from.x, from.y);
        CHECK(frame_of(ui).diagonals.empty());
        ui.click_at(to.x, to.y);
    }
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    const auto& brace = frame_of(ui).diagonals.front();
    CHECK(brace.face == "front");
    CHECK(brace.from == std::array<std::string, 2>{"left", "bottom"});
    CHECK(brace.to == std::array<std::string, 2>{"right", "top"});
}

TEST_CASE("between nodes that share no face no brace is drawn, and it is said why",
          "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.braces");
    const auto from = place_of(ui, {0, 0, 0});
    const auto to = place_of(ui, {1, 1, 2});
    ui.click_at(from.x, from.y);
    ui.move_to(to.x, to.y);
    REQUIRE(ui.desk.ui.sketch.trial);
    CHECK(ui.desk.ui.sketch.trial->refusal.find("one face") != std::string::npos);
    ui.click_at(to.x, to.y);
    CHECK(frame_of(ui).diagonals.empty());
}

TEST_CASE("spaces between planes are painted as bays, and a painted one is removed",
          "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::planes, "sketch.bays");
    const auto lower = between(place_of(ui, {0, 0, 0}), place_of(ui, {1, 0, 1}));
    const auto upper = between(place_of(ui, {0, 0, 1}), place_of(ui, {1, 0, 2}));
    SECTION("one by a click") {
        ui.click_at(lower.x, lower.y);
        REQUIRE(frame_of(ui).bays.size() == 1);
        CHECK(frame_of(ui).bays.front().z == std::array<std::string, 2>{"bottom", "shelf 1"});
        ui.click_at(lower.x, lower.y);
        CHECK(frame_of(ui).bays.size() == 1);
        ui.press(key::remove);
        CHECK(frame_of(ui).bays.empty());
    }
    SECTION("more by a drag, as one step") {
        drag(ui, lower, upper);
        CHECK(frame_of(ui).bays.size() == 2);
        CHECK(ui.desk.history.undo_label() == "Paint 2 bays");
        run_command(ui.desk, "edit.undo");
        CHECK(frame_of(ui).bays.empty());
    }
}

TEST_CASE("each plane has a tag, and none lies on another", "[editor][sketch]") {
    for (const auto kind : {StarterKind::box, StarterKind::stepped}) {
        HeadlessUi ui(1280, 720);
        start(ui, kind, "sketch.planes");
        std::vector<ItemRecord> tags;
        for (const auto& plane : frame_of(ui).planes) {
            INFO(plane.name);
            REQUIRE(ui.has("View/planes/" + plane.name));
            tags.push_back(ui.item("View/planes/" + plane.name));
        }
        for (std::size_t i = 0; i < tags.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                INFO(frame_of(ui).planes[i].name << " and " << frame_of(ui).planes[j].name);
                CHECK((tags[i].right <= tags[j].left || tags[j].right <= tags[i].left ||
                       tags[i].bottom <= tags[j].top || tags[j].bottom <= tags[i].top));
            }
        }
        CHECK_FALSE(ui.has("View/tags/width"));
    }
}

TEST_CASE("a pulled plane moves in one step, its dimension with it", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.planes");
    ui.drag("View/planes/shelf 1", 0, -40);
    const auto value = value_of(ui.now(), "shelf 1");
    REQUIRE(value);
    CHECK(value->length > engine::Length::from_nm(9 * engine::Length::nm_per_inch));
    CHECK(by_name(frame_of(ui).planes, "shelf 1")->position == "shelf 1");
    ui.press('Z', key::left_control);
    CHECK(ui.shown("shelf 1") == "9");
}

TEST_CASE("Escape or the right button takes a pulled plane back", "[editor][sketch]") {
    for (const bool by_key : {true, false}) {
        HeadlessUi ui;
        start(ui, StarterKind::box, "sketch.planes");
        const auto before = project_of(ui.desk);
        const auto label = ui.desk.history.undo_label();
        const auto tag = ui.item("View/planes/shelf 1");
        ui.move_to(tag.middle_x(), tag.middle_y());
        ui.input.button(0, true);
        ui.settle();
        for (int i = 1; i <= 8; ++i) {
            ui.input.move(tag.middle_x(), tag.middle_y() - 6.0F * static_cast<float>(i));
            ui.frame();
        }
        ui.settle();
        REQUIRE_FALSE(project_of(ui.desk) == before);
        if (by_key) {
            ui.press(key::escape);
        } else {
            ui.input.button(1, true);
            ui.input.button(1, false);
            ui.settle();
        }
        CHECK(project_of(ui.desk) == before);
        ui.input.button(0, false);
        ui.settle();
        CHECK(project_of(ui.desk) == before);
        CHECK(ui.desk.history.undo_label() == label);
        CHECK(ui.desk.ui.sketch.hand == SketchHand::planes);
    }
}

TEST_CASE("a formula is typed into a plane's tag", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.planes");
    ui.click("View/planes/shelf 1");
    ui.press('A', key::left_control);
    SECTION("and taken") {
        ui.type("height/2");
        ui.press(key::enter);
        CHECK(ui.shown("shelf 1") == "10");
        CHECK(by_name(project_of(ui.desk).dimensions, "shelf 1")->formula == "height/2");
    }
    SECTION("and refused with the reason") {
        ui.type("hight/2");
        ui.press(key::enter);
        CHECK(ui.has("View/planes/shelf 1 remark"));
        CHECK(ui.shown("shelf 1") == "9");
    }
}

TEST_CASE("why a plane's tag was refused can be read: no mark is written on it",
          "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.planes");
    ui.desk.ui.seeing.shows_marks = true;
    ui.settle();
    for (const char* plane : {"left", "right", "front", "back", "bottom", "top", "shelf 1"}) {
        const auto tag = "View/planes/" + std::string(plane);
        if (!ui.has(tag)) continue;
        INFO(plane);
        ui.click(tag);
        if (!ui.has(tag + " formula")) continue;
        ui.press('A', key::left_control);
        ui.type("hight/2 + a name that nothing has");
        ui.press(key::enter);
        REQUIRE(ui.has(tag + " remark"));
        const auto& remark = ui.item(tag + " remark");
        const auto& picture = ui.item("View/picture");
        CHECK(remark.left >= picture.left);
        CHECK(remark.right <= picture.right);
        CHECK(remark.bottom <= picture.bottom);
        int marks = 0;
        for (const auto& [name, mark] : ui.items()) {
            if (name.rfind("View/marks/", 0) != 0) continue;
            ++marks;
            CHECK((mark.right <= remark.left || remark.right <= mark.left ||
                   mark.bottom <= remark.top || remark.bottom <= mark.top));
        }
        CHECK(marks > 3);
        ui.press(key::escape);
        ui.press(key::escape);
        ui.press(key::escape);
        editor::run_command(ui.desk, "sketch.planes");
        ui.settle();
        if (ui.desk.ui.sketch.hand != SketchHand::planes) {
            editor::run_command(ui.desk, "sketch.planes");
            ui.settle();
        }
    }
}

TEST_CASE("a click on a line sets a plane across it, on a dimension of its own",
          "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.planes");
    const auto at = between(place_of(ui, {0, 0, 2}), place_of(ui, {1, 0, 2}), 0.3F);
    ui.move_to(at.x, at.y);
    REQUIRE(ui.desk.ui.sketch.trial);
    CHECK(ui.desk.ui.sketch.trial->ghost);
    ui.click_at(at.x, at.y);
    const auto* plane = by_name(frame_of(ui).planes, "divider 1");
    REQUIRE(plane != nullptr);
    CHECK(plane->axis == Axis::x);
    CHECK(plane->position == "divider 1");
    const auto value = value_of(ui.now(), "divider 1");
    REQUIRE(value);
    CHECK(value->length.mm() == Approx(0.3 * 609.6).margin(40));
    CHECK(ui.desk.history.undo_label() == "Add plane divider 1");
    SECTION("Delete takes it away with its dimension") {
        ui.press(key::remove);
        CHECK(by_name(frame_of(ui).planes, "divider 1") == nullptr);
        CHECK(by_name(project_of(ui.desk).dimensions, "divider 1") == nullptr);
    }
}

TEST_CASE("a plane on which members stand is not removed, and it is said why", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.planes");
    const auto before = project_of(ui.desk);
    ui.desk.ui.selection.subjects = {{model::SubjectKind::plane, "box", "shelf 1"}};
    ui.press(key::remove);
    CHECK(project_of(ui.desk) == before);
    REQUIRE(ui.desk.ui.notice);
    CHECK(ui.desk.ui.notice->is_trouble);
}

TEST_CASE("a hand lets go when another place is gone to", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.members");
    run_command(ui.desk, "place.join");
    ui.settle();
    CHECK(ui.desk.ui.sketch.hand == SketchHand::none);
}

TEST_CASE("a hand is taken up by its key, by its button and by its command", "[editor][sketch]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('M');
    CHECK(ui.desk.ui.sketch.hand == SketchHand::members);
    ui.click("View/Paint bays");
    CHECK(ui.desk.ui.sketch.hand == SketchHand::bays);
    ui.click("View/Paint bays");
    CHECK(ui.desk.ui.sketch.hand == SketchHand::none);
}

TEST_CASE("by the keyboard alone a member, a plane and a bay are put by forms",
          "[editor][sketch]") {
    HeadlessUi ui;
    tests::start_frame(ui.desk, StarterKind::planes);
    ui.settle();
    ui.press('M', key::left_control);
    REQUIRE(std::holds_alternative<MemberForm>(ui.desk.ui.dialog));
    ui.settle();
    ui.press(key::enter);
    CHECK(frame_of(ui).members.size() == 1);
    ui.press('P', key::left_control);
    REQUIRE(std::holds_alternative<PlaneForm>(ui.desk.ui.dialog));
    ui.settle();
    ui.press(key::enter);
    CHECK(by_name(frame_of(ui).planes, "divider 1") != nullptr);
    ui.press('J', key::left_control);
    REQUIRE(std::holds_alternative<BayForm>(ui.desk.ui.dialog));
    ui.settle();
    ui.press(key::enter);
    CHECK(frame_of(ui).bays.size() == 1);
}

TEST_CASE("a frame without planes across an axis is pointed into with every hand",
          "[editor][sketch]") {
    HeadlessUi ui;
    REQUIRE(submit(ui.desk, change_of(model::PutFrame{{.name = "bare"}, {}})));
    for (const bool has_one : {false, true}) {
        if (has_one) {
            const model::PutPlane put{"bare", {"left", Axis::x, "0"}, {}};
            REQUIRE(submit(ui.desk, change_of(put)));
        }
        for (const char* command :
             {"sketch.members", "sketch.braces", "sketch.bays", "sketch.planes"}) {
            INFO(command);
            run_command(ui.desk, command);
            ui.settle();
            const auto& picture = ui.item("View/picture");
            const float y = (picture.top + picture.bottom) / 2;
            ui.click_at((picture.left + picture.right) / 2, y);
            CHECK(ui.desk.ui.sketch.hand != SketchHand::none);
            CHECK_FALSE(ui.desk.ui.sketch.target.is_something());
        }
    }
}

TEST_CASE("one thing is in hand: the tape, or what lays out", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.members");
    ui.press('D');
    CHECK(ui.desk.ui.seeing.tape.is_held);
    CHECK(ui.desk.ui.sketch.hand == SketchHand::none);
    ui.click("View/Draw a brace");
    ui.settle();
    CHECK_FALSE(ui.desk.ui.seeing.tape.is_held);
    CHECK(ui.desk.ui.sketch.hand == SketchHand::braces);
    run_command(ui.desk, "view.apart");
    CHECK(ui.desk.ui.sketch.hand == SketchHand::none);
    run_command(ui.desk, "sketch.bays");
    ui.settle();
    CHECK(ui.desk.ui.seeing.way.apart == 0.0F);
}

TEST_CASE("a brace that is begun is given up where another frame is chosen", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.braces");
    auto other = frame_of(ui);
    other.name = "other";
    other.origin[0] = "60 in";
    REQUIRE(submit(ui.desk, change_of(model::PutFrame{other, {}})));
    ui.settle();
    const auto at = place_of(ui, {0, 0, 0});
    ui.click_at(at.x, at.y);
    REQUIRE(ui.desk.ui.sketch.begun);
    ui.desk.ui.sketch.frame = "other";
    ui.settle();
    CHECK_FALSE(ui.desk.ui.sketch.begun);
}

TEST_CASE("a brace that is chosen by its piece is removed", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.braces");
    const auto from = place_of(ui, {0, 0, 0});
    const auto to = place_of(ui, {1, 0, 2});
    ui.click_at(from.x, from.y);
    ui.click_at(to.x, to.y);
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    const auto& pieces = ui.now().resolved.pieces;
    const auto piece = std::ranges::find_if(
        pieces, [](const model::Piece& it) { return it.kind == model::PieceKind::brace; });
    REQUIRE(piece != pieces.end());
    const auto i = static_cast<model::Index>(piece - pieces.begin());
    ui.desk.ui.selection = selection_of(project_of(ui.desk), ui.now().resolved, {i});
    ui.press(key::remove);
    CHECK(frame_of(ui).diagonals.empty());
}

TEST_CASE("a plane that is pulled onto another one can be pulled on", "[editor][sketch]") {
    HeadlessUi ui;
    start(ui, StarterKind::box, "sketch.planes");
    run_command(ui.desk, "view.front");
    ui.settle();
    const auto& tag = ui.item("View/planes/shelf 1");
    const At from{(tag.left + tag.right) / 2, (tag.top + tag.bottom) / 2};
    const float up = place_of(ui, {0, 0, 2}).y - place_of(ui, {0, 0, 1}).y;
    ui.move_to(from.x, from.y);
    ui.input.button(0, true);
    ui.settle();
    for (const float share : {0.5F, 1.0F, 1.0F, 0.5F}) {
        ui.input.move(from.x, from.y + up * share);
        ui.settle();
        REQUIRE(ui.desk.ui.sketch.planes.dragged);
    }
    ui.input.button(0, false);
    ui.settle();
    CHECK(ui.desk.history.undo_label().find("shelf 1") != std::string::npos);
    CHECK(plane_grid(ui.now(), 0).planes[2].size() == 3);
}
