#include "model/schedule/square.h"

#include "model/project/edit.h"
#include "model/resolve/resolve.h"

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
