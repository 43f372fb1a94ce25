// Small frames whose order is known by hand.
#include "model/assembly/assembly_csv.h"

#include "tests/model/assembly/replay.h"
#include "tests/model/resolve/resolve_support.h"
#include "tests/model/room/room_projects.h"
#include "tests/support/approval.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace {

using model::AssemblyWork;
using model::Axis;
using model::Index;
using model::Sense;
using tests::inches;
using tests::Nm;

struct Made {
    explicit Made(model::Project of)
        : project{std::move(of)},
          resolved{tests::resolved(project)},
          order{model::assembly_order(project, tests::shipped_catalogue(), resolved)} {}

    model::Project project;
    model::Resolved resolved;
    model::AssemblyOrder order;

    tests::Complaints replayed() const {
        const tests::NaiveWorld world(project, tests::shipped_catalogue(), resolved);
        REQUIRE(world.is_readable());
        return tests::replay_complaints(world, resolved, order);
    }

    std::string name(Index piece) const {
        const auto& of = resolved.pieces[piece];
        if (of.member == model::no_index) return "P" + std::to_string(piece);
        return project.frames[of.frame].members[of.member].name;
    }

    // The step in which the piece of that member is put on by itself.
    std::size_t step_of(const std::string& member) const {
        for (std::size_t s = 0; s < order.steps.size(); ++s) {
            for (const auto& move : order.steps[s].moves) {
                if (move.made_in == model::no_index && name(move.pieces[0]) == member) return s;
            }
        }
        return order.steps.size();
    }

    std::vector<std::string> names_in_order() const {
        std::vector<std::string> names;
        for (const auto& step : order.steps) {
            for (const auto& move : step.moves) {
                if (move.made_in == model::no_index) names.push_back(name(move.pieces[0]));
            }
        }
        return names;
    }
};

model::Project shelved_box() {
    model::Project project{.name = "a box with a shelf"};
    project.stock.push_back(tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    const auto started = model::apply(project, model::StartBoxFrame{.frame = "box",
                                                                    .stock = "main",
                                                                    .width = "36 in",
                                                                    .depth = "18 in",
                                                                    .height = "30 in",
                                                                    .shelf_levels = {"14 in"}});
    REQUIRE(started.has_value());
    return *started;
}

// A post and a rail of flat bar that lap in one plane, and two more rails 2 in before and behind.
model::Project rails_before_and_behind() {
    tests::FrameBuilder builder("flats");
    const auto flat = [&](Axis run, std::array<Nm, 2> on) {
        builder.member("main", run, on, 0, inches(20), {Sense::plus, Sense::plus});
    };
    flat(Axis::z, {inches(8), 0});
    flat(Axis::x, {0, inches(10)});
    flat(Axis::x, {-inches(2), inches(10)});
    flat(Axis::x, {inches(2), inches(10)});
    auto project = tests::project_of(builder);
    project.stock[0].section = "flat 1 x 1/8";
    for (auto& member : project.frames[0].members) member.turned = member.run == Axis::z;
    return project;
}

}  // namespace

TEST_CASE("of a box with a shelf the ends are made first, then the rails and the other end go on",
          "[model][assembly]") {
    const Made box(shelved_box());
    CHECK(box.order.problems.empty());
    CHECK(box.replayed().empty());
    const auto& steps = box.order.steps;
    REQUIRE(steps.size() == 4);
    CHECK(steps[0].work == AssemblyWork::flat_on_bench);
    CHECK(steps[0].face == "left");
    CHECK(steps[1].work == AssemblyWork::flat_on_bench);
    CHECK(steps[1].face == "right");
    for (const std::size_t end : {0U, 1U}) {
        CHECK(steps[end].moves.size() == 5);  // two posts, rails at bottom, shelf and top
        CHECK(steps[end].joins.size() == 6);
        CHECK(steps[end].sets.size() == 6);
        CHECK(steps[end].squares.size() == 1);
    }
    CHECK(steps[2].work == AssemblyWork::joined_on);
    CHECK(steps[2].assembly == 0);
    CHECK(steps[2].moves.size() == 7);  // the left end, and two rails at three levels
    CHECK(steps[2].moves[0].made_in == 0);
    REQUIRE(steps[3].moves.size() == 1);
    CHECK(steps[3].moves[0].made_in == 1);
    CHECK(model::words_of(steps[3].moves[0].along) == "from the right");
    CHECK(steps[3].squares.size() == 5);  // front, back, bottom, top, and the shelf
}

TEST_CASE("the diagonals of an end are those of its planes, and two pins hold two rivets' holes",
          "[model][assembly]") {
    const Made box(shelved_box());
    const auto& row = box.order.squares[box.order.steps[0].squares.at(0)];
    CHECK(row.face == "left");
    CHECK(row.diagonal.mm() == Approx(25.4 * std::hypot(18.0, 30.0)).epsilon(1e-7));
    const auto& pins = box.order.steps[0].pins;
    REQUIRE(pins.size() == 6);
    for (const auto& pin : pins) {
        CHECK(pin.fasteners.size() == 2);
        REQUIRE(pin.pin != model::no_index);
        CHECK(tests::shipped_catalogue().pins[pin.pin].id == "sheet pin 1/8");
    }
}

// Opposite corners hold an end square.
TEST_CASE("the rivets of an end are set corner by opposite corner", "[model][assembly]") {
    const Made box(shelved_box());
    const auto& sets = box.order.steps[0].sets;
    const auto middle = [&](std::size_t k) { return box.resolved.joints[sets[k].joint].lap.lo; };
    CHECK(std::abs(middle(0)[1] - middle(1)[1]) > inches(15));
    CHECK(std::abs(middle(0)[2] - middle(1)[2]) > inches(25));
}

TEST_CASE("rails of the sides are riveted once the last end is on and the diagonals are measured",
          "[model][assembly]") {
    const Made box(shelved_box());
    const auto& last = box.order.steps[3].sets;
    const auto is_corner_of_front = [&](const model::StepSetting& setting) {
        const auto& joint = box.resolved.joints[setting.joint];
        return box.name(joint.pieces[0]) == "post front left" &&
               box.name(joint.pieces[1]) == "rail front bottom";
    };
    CHECK(std::ranges::any_of(last, is_corner_of_front));
}

TEST_CASE("rivets that a rail would shut in are set before it is put on", "[model][assembly]") {
    const Made flats(rails_before_and_behind());
    CHECK(flats.order.problems.empty());
    CHECK(flats.replayed().empty());
    std::size_t set_in = flats.order.steps.size();
    for (std::size_t s = 0; s < flats.order.steps.size(); ++s) {
        for (const auto& setting : flats.order.steps[s].sets) {
            if (setting.joint == 0) set_in = s;
        }
    }
    CHECK(set_in < std::max(flats.step_of("m3"), flats.step_of("m4")));
    CHECK(flats.step_of("m4") < flats.order.steps.size());
}

TEST_CASE("a rail that comes apart is screwed on last of all", "[model][assembly]") {
    auto project = shelved_box();
    for (const char* post : {"post front left", "post front right"}) {
        project.frames[0].joints.push_back(
            {.members = {post, "rail front top"}, .removable = true});
    }
    for (const char* rail : {"rail left top", "rail right top"}) {
        project.frames[0].joints.push_back(
            {.members = {rail, "rail front top"}, .removable = true});
    }
    const Made box(project);
    CHECK(box.order.problems.empty());
    CHECK(box.replayed().empty());
    const auto& last = box.order.steps.back();
    CHECK(last.work == AssemblyWork::screwed_on);
    REQUIRE(last.moves.size() == 1);
    CHECK(box.name(last.moves[0].pieces[0]) == "rail front top");
    CHECK(last.sets.size() == 4);
    CHECK(last.pins.empty());
}

TEST_CASE("a rail that comes apart and is shut in by a riveted one is said to be",
          "[model][assembly]") {
    auto project = shelved_box();
    for (const char* other :
         {"post front left", "post front right", "rail left shelf 1", "rail right shelf 1"}) {
        project.frames[0].joints.push_back(
            {.members = {other, "rail front shelf 1"}, .removable = true});
    }
    const Made box(project);
    CHECK(box.replayed().empty());
    REQUIRE_FALSE(box.order.problems.empty());
    CHECK(box.order.problems[0].code == "screwed_on_early");
    CHECK(box.order.problems[0].concerns[0].name == "rail front shelf 1");
    // Its screws go in last all the same.
    CHECK(box.order.steps.back().work == AssemblyWork::screwed_on);
}

TEST_CASE("a panel is put on when the bars that it lies on are riveted", "[model][assembly]") {
    auto project = shelved_box();
    REQUIRE_FALSE(project.frames[0].bays.empty());
    project.frames[0].panels.push_back({.name = "back",
                                        .bay = project.frames[0].bays[0].name,
                                        .face_axis = Axis::y,
                                        .face_side = Sense::plus,
                                        .material = "5052-H32",
                                        .thickness = "1/16 in"});
    const Made box(project);
    CHECK(box.order.problems.empty());
    CHECK(box.replayed().empty());
    const auto& last = box.order.steps.back();
    CHECK(last.work == AssemblyWork::panels);
    REQUIRE(last.moves.size() == 1);
    CHECK(box.resolved.pieces[last.moves[0].pieces[0]].kind == model::PieceKind::panel);
    CHECK(model::words_of(last.moves[0].along) == "from the back");
    for (const auto& setting : last.sets) {
        const auto& joint = box.resolved.joints[setting.joint];
        CHECK(std::ranges::count(joint.pieces, last.moves[0].pieces[0]) == 1);
    }
}

TEST_CASE("in which order the members were stated makes no difference", "[model][assembly]") {
    auto project = shelved_box();
    const Made one(project);
    std::ranges::reverse(project.frames[0].members);
    const Made other(project);
    CHECK(one.names_in_order() == other.names_in_order());
}

TEST_CASE("the same frame has the same order each time", "[model][assembly]") {
    const Made one(shelved_box());
    const Made other(shelved_box());
    CHECK(one.order.steps == other.order.steps);
}

TEST_CASE("every piece arrives, and what is moved on as a whole arrives with it",
          "[model][assembly]") {
    const Made box(shelved_box());
    const auto all = model::approaches(box.order, box.resolved);
    REQUIRE(all.size() == box.resolved.pieces.size());
    for (Index i = 0; i < all.size(); ++i) {
        CAPTURE(box.name(i));
        const bool is_right_end = box.name(i).find("post back right") != std::string::npos ||
                                  box.name(i).find("rail right") != std::string::npos;
        REQUIRE(all[i].arrivals.size() ==
                (is_right_end || box.name(i) == "post front right" ? 2U : 1U));
        if (is_right_end) CHECK(all[i].arrivals.back().step == 3);
    }
}

TEST_CASE("an order with two moves exchanged, or a way turned round, is complained of",
          "[model][assembly]") {
    Made box(shelved_box());
    REQUIRE(box.replayed().empty());
    auto& last = box.order.steps[3].moves[0];
    for (auto& part : last.along) part = 0.0 - part;
    CHECK_FALSE(box.replayed().empty());
    for (auto& part : last.along) part = 0.0 - part;
    REQUIRE(box.replayed().empty());
    std::swap(box.order.steps[1], box.order.steps[3]);
    CHECK_FALSE(box.replayed().empty());
}

TEST_CASE("a project of nothing has no steps, and its table headings alone", "[model][assembly]") {
    const auto order = model::assembly_order({}, {}, {});
    CHECK(order.steps.empty());
    CHECK(model::assembly_csv({}, {}, {}, order).find("diagonal") != std::string::npos);
}

TEST_CASE("ways are told as a maker stands before the frame", "[model][assembly]") {
    CHECK(model::words_of({0, 0, -1}) == "from above");
    CHECK(model::words_of({0, 1, 0}) == "from the front");
    CHECK(model::words_of({0.6, 0, 0.8}) == "from the left and below");
    CHECK(model::words_of({}) == "laid down");
}

TEST_CASE("the assembly order of a box with a shelf is the approved one",
          "[model][assembly][approved]") {
    const Made box(shelved_box());
    tests::check_approved(
        "assembly/box_with_shelf.csv",
        model::assembly_csv(box.project, tests::shipped_catalogue(), box.resolved, box.order));
}
