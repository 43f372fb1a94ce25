#include "tests/model/resolve/resolve_support.h"

#include <map>

using model::Axis;
using model::Sense;
using tests::FrameBuilder;
using tests::inches;

namespace {

model::Project box_with_shelf(const char* shelf) {
    tests::BoxShape shape;
    shape.shelves = {inches(12)};
    auto project = tests::box_project(shape, "angle 1 x 1 x 1/8", "6063-T52");
    for (auto& plane : project.frames[0].planes) {
        if (plane.axis == Axis::z && plane.position == "12 in") plane.position = shelf;
    }
    return project;
}

// Member name -> mark of its first piece.
std::map<std::string, std::string> marks_by_member(const model::Project& project) {
    const auto resolved = tests::resolved(project);
    std::map<std::string, std::string> marks;
    for (const auto& piece : resolved.pieces) {
        if (piece.member == model::no_index || piece.part != 0) continue;
        marks[project.frames[0].members[piece.member].name] = resolved.marks[piece.mark].name;
    }
    return marks;
}

}  // namespace

TEST_CASE("the four posts of a box are one mark", "[model][mark]") {
    const auto project = box_with_shelf("12 in");
    const auto resolved = tests::resolved(project);
    int posts = 0;
    for (const auto& piece : resolved.pieces) {
        if (piece.run != Axis::z) continue;
        CHECK(resolved.marks[piece.mark].name == "A1");
        ++posts;
    }
    CHECK(posts == 4);
    CHECK(resolved.marks[0].as_drawn + resolved.marks[0].opposite == 4);
}

TEST_CASE("marks stand when a dimension that does not concern them changes", "[model][mark]") {
    const auto before = marks_by_member(box_with_shelf("12 in"));
    const auto after = marks_by_member(box_with_shelf("9 1/2 in"));
    CHECK(before == after);
}

TEST_CASE("the mark of a rail stands when an earlier member becomes unlike its kind",
          "[model][mark]") {
    auto project = box_with_shelf("12 in");
    const auto before = marks_by_member(project);
    auto& post = project.frames[0].members[1];
    REQUIRE(post.run == Axis::z);
    post.allowance_to = "1/32 in";
    auto after = marks_by_member(project);
    CHECK(after[post.name] != before.at(post.name));
    after.erase(post.name);
    for (const auto& [member, mark] : after) CHECK(mark == before.at(member));
}

TEST_CASE("pieces of two stocks of one section and alloy share a mark", "[model][mark]") {
    auto project = box_with_shelf("12 in");
    const auto before = marks_by_member(project);
    auto dear = project.stock[0];
    dear.name = "from another dealer";
    project.stock.push_back(dear);
    for (std::size_t i = 0; i < project.frames[0].members.size(); i += 2) {
        project.frames[0].members[i].stock = dear.name;
    }
    CHECK(marks_by_member(project) == before);
    project.stock[1].alloy = "6061-T6";
    CHECK(marks_by_member(project) != before);
}

TEST_CASE("every piece of a mark reads like its pattern", "[model][mark]") {
    const auto resolved = tests::resolved(box_with_shelf("12 in"));
    for (const auto& piece : resolved.pieces) {
        const auto& pattern = resolved.pieces[resolved.marks[piece.mark].pattern];
        const auto own = resolved.holes_of(piece);
        const auto drawn = resolved.holes_of(pattern);
        REQUIRE(own.size() == drawn.size());
        for (std::size_t i = 0; i < own.size(); ++i) {
            CHECK(own[i].wall == drawn[i].wall);
            CHECK(own[i].gauge == drawn[i].gauge);
            CHECK(own[i].from_datum == drawn[i].from_datum);
        }
    }
}

TEST_CASE("a mirror image is the same mark of the opposite hand", "[model][mark]") {
    // Two posts with a rail at the same height on the leg to their right, mirrored at x = 15.
    FrameBuilder builder("pair");
    builder.member("main", Axis::z, {0, 0}, 0, inches(20), {Sense::plus, Sense::plus});
    builder.member("main", Axis::z, {inches(30), 0}, 0, inches(20), {Sense::minus, Sense::plus});
    builder.member("main", Axis::x, {0, inches(7)}, 0, inches(30), {Sense::plus, Sense::minus});
    const auto project = tests::project_of(builder);
    const auto resolved = tests::resolved(project);
    const auto left = tests::pieces_of(project, resolved, "m1")[0];
    const auto right = tests::pieces_of(project, resolved, "m2")[0];
    CHECK(left.mark == right.mark);
    CHECK(left.hand == model::Hand::as_drawn);
    CHECK(right.hand == model::Hand::opposite);
    // The rail turned end for end and over is itself no more: it has no twin, so no hand.
    CHECK(tests::pieces_of(project, resolved, "m3")[0].hand == model::Hand::none);
}

TEST_CASE("letters follow the order of the stock and leave out I, O and S", "[model][mark]") {
    FrameBuilder builder("many");
    for (int i = 0; i < 20; ++i) {
        builder.member("stock " + std::to_string(i), Axis::z, {inches(5 * i), 0}, 0, inches(20),
                       {Sense::plus, Sense::plus});
    }
    auto project = tests::project_of(builder);
    project.stock.clear();
    for (std::size_t i = 0; i < 20; ++i) {
        project.stock.push_back(tests::stock_of(
            "stock " + std::to_string(i), tests::shipped_catalogue().sections[i].id, "6063-T52"));
    }
    const auto marks = marks_by_member(project);
    CHECK(marks.at("m1") == "A1");
    CHECK(marks.at("m9") == "J1");
    CHECK(marks.at("m14") == "P1");
    CHECK(marks.at("m17") == "T1");
}
