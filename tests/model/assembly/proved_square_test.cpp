// What tells in a step that what it puts together is square, before anything there is set.
#include "model/assembly/assembly_csv.h"
#include "model/assembly/step_words.h"

#include "tests/model/book/book_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace {

using model::Index;
using model::Nm;

struct Proved {
    explicit Proved(const std::string& name)
        : project{tests::sample(name)},
          resolved{model::resolve(project, tests::book_catalogue())},
          order{model::assembly_order(project, tests::book_catalogue(), resolved)},
          wording{project, tests::book_catalogue(), resolved, order} {}

    Nm position(Index frame, const std::string& plane) const {
        const auto& planes = project.frames[frame].planes;
        const auto at = std::ranges::find(planes, plane, &model::Plane::name) - planes.begin();
        return resolved.frames[frame].planes[static_cast<std::size_t>(at)].position.value();
    }

    const model::Member* member(Index piece) const {
        const auto& of = resolved.pieces[piece];
        const auto& members = project.frames[of.frame].members;
        const bool is_upright = of.kind == model::PieceKind::bar && of.lean == model::no_index;
        return is_upright && of.member < members.size() ? &members[of.member] : nullptr;
    }

    // The plane in which both lie.
    std::optional<std::string> plane_of(const model::Joint& joint) const {
        const auto* a = member(joint.pieces[0]);
        const auto* b = member(joint.pieces[1]);
        if (a == nullptr || b == nullptr || a->run == b->run) return std::nullopt;
        for (const auto& name : a->on) {
            if (std::ranges::count(b->on, name) > 0) return name;
        }
        return std::nullopt;
    }

    // Between the planes of the diagonals lie those of both bars.
    bool proves(const model::SquareRow& row, const model::Joint& joint) const {
        const auto plane = plane_of(joint).value();
        if (row.frame != joint.frame || position(row.frame, row.face) != position(row.frame, plane))
            return false;
        const auto axis = [&](const std::string& name) {
            const auto& planes = project.frames[row.frame].planes;
            return std::ranges::find(planes, name, &model::Plane::name)->axis;
        };
        if (axis(row.face) != axis(plane)) return false;
        for (const Index piece : joint.pieces) {
            for (const auto& name : member(piece)->on) {
                if (name == plane) continue;
                const auto& between = row.between[axis(row.between[0][0]) == axis(name) ? 0 : 1];
                const Nm at = position(row.frame, name);
                if (at < position(row.frame, between[0]) || at > position(row.frame, between[1]))
                    return false;
            }
        }
        return true;
    }

    std::size_t count_lines(Index step, const std::string& words) const {
        const auto lines = wording.lines(step);
        return static_cast<std::size_t>(std::ranges::count_if(
            lines, [&](const auto& line) { return line.text.find(words) != std::string::npos; }));
    }

    std::string csv() const {
        return model::assembly_csv(project, tests::book_catalogue(), resolved, order);
    }

    model::Project project;
    model::Resolved resolved;
    model::AssemblyOrder order;
    model::StepWording wording;
};

}  // namespace

TEST_CASE("no joint of bars that cross is set before its diagonals are told, or a try square is",
          "[model][assembly][samples]") {
    std::size_t proven = 0;
    std::size_t inside = 0;
    for (const auto& name : tests::sample_names()) {
        const Proved it(name);
        std::vector<model::SquareRow> told;
        for (Index s = 0; s < it.order.steps.size(); ++s) {
            const auto& step = it.order.steps[s];
            for (const Index square : step.squares) {
                told.push_back(it.order.squares.at(square));
                inside += told.back().is_heel_to_heel ? 1U : 0U;
                CHECK(std::min(told.back().size[0], told.back().size[1]).nm() > 0);
            }
            CHECK(it.count_lines(s, "with a try square") == (step.by_try_square.empty() ? 0 : 1));
            for (const auto& setting : step.sets) {
                const auto& joint = it.resolved.joints[setting.joint];
                if (!it.plane_of(joint)) continue;
                const bool is_proven = std::ranges::any_of(
                    told, [&](const auto& row) { return it.proves(row, joint); });
                const auto& by_hand = step.by_try_square;
                CAPTURE(name, it.wording.title(s), setting.joint);
                CHECK(is_proven != (std::ranges::count(by_hand, setting.joint) == 1));
                proven += is_proven ? 1U : 0U;
            }
        }
    }
    CHECK(proven > 300);
    CHECK(inside > 10);
}

// Its posts stand in by two walls of 1/8 in each and begin 5/32 in above the bottom.
TEST_CASE("the diagonals of a divider that lies on the bench are those of its own bars",
          "[model][assembly]") {
    const Proved counter("work_counter.json");
    const auto& step = counter.order.steps[1];
    REQUIRE(step.face == "divider 1");
    REQUIRE(step.squares.size() == 1);
    const auto& row = counter.order.squares[step.squares.front()];
    CHECK(row.face == "divider 1");
    CHECK(row.between[0] == std::array<std::string, 2>{"front", "well front"});
    CHECK(row.between[1] == std::array<std::string, 2>{"bottom", "well top"});
    CHECK(row.diagonal.mm() == Approx(25.4 * std::hypot(16.375, 11.84375)).epsilon(1e-6));
    CHECK(counter.count_lines(1, "from heel to heel, measure ") == 1);
    CHECK(counter.order.steps[2].squares.size() == 1);
}

TEST_CASE("four bars have their diagonals whatever joins their corners", "[model][assembly]") {
    const Proved ways("ways_of_meeting.json");
    std::size_t seen = 0;
    for (const auto& step : ways.order.steps) {
        const auto& frame = ways.project.frames[step.frame].name;
        CAPTURE(frame);
        if (frame != "flush" && frame != "mitre" && frame != "strap" && frame != "corner cleat")
            continue;
        ++seen;
        CHECK(step.squares.size() == 1);
        CHECK(step.by_try_square.empty());
    }
    CHECK(seen == 4);
}

TEST_CASE("a step says on which side lies what it lays down", "[model][assembly]") {
    const Proved counter("work_counter.json");
    CHECK(counter.count_lines(0, "laid down on its left side, datum end") == 1);
    CHECK(counter.count_lines(1, "laid down on its right side, datum end") == 1);
    CHECK(counter.count_lines(3, "laid down on its right side, datum end") == 1);
    CHECK(counter.count_lines(4, "What step 1 made, laid down on its left side: ") == 1);
}

TEST_CASE("a step that one person cannot hold says so, and so does the file", "[model][assembly]") {
    const Proved counter("work_counter.json");
    const std::string rails = "8 pieces are held at one end, the other one is free: prop ";
    const std::string side = "16 joints must meet at once: prop the part ";
    CHECK(counter.count_lines(4, rails) == 1);
    CHECK(counter.count_lines(7, side) == 1);
    for (const Index flat : {0U, 1U, 2U, 3U}) CHECK(counter.count_lines(flat, "prop ") == 0);
    const auto csv = counter.csv();
    CHECK_THAT(csv, Catch::Contains("hold") && Catch::Contains(rails) && Catch::Contains(side));
    // A box of four pieces by two.
    const Proved parts("parts_box.json");
    for (Index s = 0; s < parts.order.steps.size(); ++s) {
        std::size_t by_hand = 0;
        for (const auto& move : parts.order.steps[s].moves)
            by_hand += move.made_in == model::no_index ? 1U : 0U;
        if (by_hand < 5) CHECK(parts.count_lines(s, "held at one end") == 0);
    }
}
