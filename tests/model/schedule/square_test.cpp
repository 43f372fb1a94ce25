#include "model/schedule/square.h"

#include "model/project/edit.h"
#include "model/project/project_json.h"
#include "model/resolve/resolve.h"

#include "tests/model/project/sample_files.h"
#include "tests/model/room/room_projects.h"

#include <algorithm>
#include <map>

namespace {

using namespace model;
using room_tests::catalogue;

std::vector<SquareRow> rows_of(const Project& project) {
    return square_rows(project, resolve(project, catalogue()));
}

std::map<std::string, int> counted(const std::vector<SquareRow>& rows) {
    std::map<std::string, int> count;
    for (const auto& row : rows) ++count[row.face];
    return count;
}

}  // namespace

// 36 x 18 x 30 in: diagonals by the theorem of Pythagoras.
TEST_CASE("a box has a row for each of its six faces", "[model][schedule]") {
    const auto rows = rows_of(room_tests::cabinet({"0", "0", "0"}));
    REQUIRE(rows.size() == 6);
    for (const auto& [face, count] : counted(rows)) CHECK(count == 1);
    const auto front = std::ranges::find(rows, "front", &SquareRow::face);
    REQUIRE(front != rows.end());
    CHECK(front->size[0].nm() == tests::inches(36));
    CHECK(front->size[1].nm() == tests::inches(30));
    CHECK(front->diagonal.mm() == Approx(25.4 * 46.861498).epsilon(1e-7));
    CHECK(front->between[0] == std::array<std::string, 2>{"left", "right"});
    const auto top = std::ranges::find(rows, "top", &SquareRow::face);
    CHECK(top->diagonal.mm() == Approx(25.4 * 40.249224).epsilon(1e-7));
}

TEST_CASE("bays behind one another make up one face", "[model][schedule]") {
    Project project;
    project.stock.push_back(tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    const auto started = apply(project, StartBoxFrame{.frame = "shelves",
                                                      .stock = "main",
                                                      .width = "36 in",
                                                      .depth = "18 in",
                                                      .height = "30 in",
                                                      .shelf_levels = {"10 in", "20 in"},
                                                      .dividers = {"12 in"}});
    REQUIRE(started.has_value());
    CHECK(rows_of(*started).size() == 6);
}

TEST_CASE("the side of a stepped frame is told as rectangles", "[model][schedule]") {
    Project project;
    project.stock.push_back(tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    const auto started = apply(project, StartSteppedFrame{.frame = "counter",
                                                          .stock = "main",
                                                          .width = "36 in",
                                                          .depth = "18 in",
                                                          .height = "30 in",
                                                          .well_height = "11 in",
                                                          .well_depth = "8 in"});
    REQUIRE(started.has_value());
    const auto count = counted(rows_of(*started));
    CHECK(count.at("left") == 2);
    CHECK(count.at("right") == 2);
    CHECK(count.at("front") == 1);
    CHECK(count.at("back") == 1);
    CHECK(count.at("well front") == 1);
    CHECK(count.at("well top") == 1);
    CHECK(count.at("bottom") == 1);
    CHECK(count.at("top") == 1);
}

// Its back leans, so that its sides are no rectangles, and its shelves end before the back.
TEST_CASE("a frame with a leaning back has rows where bars make a corner for the tape alone",
          "[model][schedule]") {
    const auto project = read_project_json(model_tests::sample_text("leaning_locker.json"));
    REQUIRE(project.has_value());
    const auto rows = rows_of(*project);
    const auto count = counted(rows);
    CHECK(count == std::map<std::string, int>{{"front", 1}, {"bottom", 1}, {"top", 1}});
    const auto bottom = std::ranges::find(rows, "bottom", &SquareRow::face);
    REQUIRE(bottom != rows.end());
    CHECK(bottom->between[1] == std::array<std::string, 2>{"front", "back bottom"});
    CHECK(bottom->size[1].nm() == tests::inches(18));
}

TEST_CASE("a face has no row where one rail alone passes a corner", "[model][schedule]") {
    auto project = room_tests::cabinet({"0", "0", "0"});
    std::erase_if(project.frames[0].members, [](const Member& member) {
        return member.run != Axis::x && std::ranges::count(member.on, "right") > 0;
    });
    const auto count = counted(rows_of(project));
    CHECK(count.count("front") == 0);
    CHECK(count.count("right") == 1);  // the ends of four rails
    CHECK(count.count("left") == 1);
}

TEST_CASE("a face so narrow that its diagonals tell nothing has no row", "[model][schedule]") {
    const auto count = counted(rows_of(room_tests::cabinet({"0", "0", "0"}, "36 in", "4 in")));
    CHECK(count.count("left") == 1);  // 4 x 30 in: 1/8 in of shear shows as 1/32 in
    const auto flat = counted(rows_of(room_tests::cabinet({"0", "0", "0"}, "36 in", "3 in")));
    CHECK(flat.count("left") == 0);
    CHECK(flat.count("top") == 0);
    CHECK(flat.count("front") == 1);
}
