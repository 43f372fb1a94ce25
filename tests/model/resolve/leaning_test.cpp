// Leaning members: how they are cut, where they lie, what holds them, and what makes way for them.
// All bar is 1 x 1 x 1/8 in angle with square inner corners, the tape has marks of 1/32 in.
#include "model/resolve/piece_solid.h"
#include "model/schedule/tables.h"

#include "tests/model/resolve/resolve_support.h"
#include "tests/support/leaning_side.h"
#include "tests/support/run_project.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

using model::Axis;
using model::Index;
using model::Piece;
using model::PieceKind;
using model::Sense;
using tests::inches;
using tests::inches_64;
using tests::LeaningShape;
using tests::Nm;

namespace {

constexpr double degree = 3.14159265358979323846 / 180.0;

// 30 in high, leaning in by so many degrees.
LeaningShape leaning_by(double degrees) {
    const double in = static_cast<double>(inches(30)) * std::tan(degrees * degree);
    return {.leans_in = std::llround(in), .shelves = {}};
}

std::vector<Piece> leaning_of(const model::Resolved& resolved) {
    std::vector<Piece> found;
    for (const auto& piece : resolved.pieces) {
        if (piece.kind == PieceKind::leaning) found.push_back(piece);
    }
    return found;
}

long errors_and_warnings(const model::Resolved& resolved) {
    return std::ranges::count_if(resolved.findings, [](const model::Finding& finding) {
        return finding.severity != model::Severity::note;
    });
}

std::string all_said(const model::Resolved& resolved) {
    std::string text;
    for (const auto& finding : resolved.findings) text += finding.code + ": " + finding.what + "\n";
    return text;
}

// Of all that can be read from the project's files.
tests::Complaints complaints_of(const model::Project& project) {
    return tests::skeleton_complaints(tests::written_files(project, tests::shipped_catalogue()),
                                      tests::rules_of(project));
}

bool is_near(Nm a, double b) { return std::abs(static_cast<double>(a) - b) <= 1.0; }

double in_nm(double inches_long) { return inches_long * 25.4e6; }

Index joints_with(const model::Resolved& resolved,
                  std::string_view leaning,
                  const model::Project& project) {
    return static_cast<Index>(
        std::ranges::count_if(resolved.joints, [&](const model::Joint& joint) {
            return std::ranges::any_of(joint.pieces, [&](Index number) {
                const Piece& piece = resolved.pieces[number];
                return piece.kind == PieceKind::leaning &&
                       project.frames[0].leaning[piece.stated].name == leaning;
            });
        }));
}

}  // namespace

TEST_CASE("a post that leans by 5 degrees is as long as worked out by hand", "[model][leaning]") {
    const auto resolved = tests::resolved(tests::leaning_project(leaning_by(5.0)));
    const auto posts = leaning_of(resolved);
    REQUIRE(posts.size() == 2);
    // It stands on the flat leg of the side rail, which lies 1/8 in above the floor on that of the
    // back rail and is 1/8 in thick, with a gap of 1/32 in; below the top as below the floor. From
    // the long point at one end, on the heel, to that at the other, on the toe of its 1 in leg.
    const double height = 30.0 - 2.0 * (0.25 + 1.0 / 32.0);
    const double length = height / std::cos(5.0 * degree) + 1.0 * std::tan(5.0 * degree);
    CHECK(length == Approx(29.63744).epsilon(1e-6));
    for (const auto& post : posts) CHECK(is_near(post.length, in_nm(length)));
}

TEST_CASE("a post that leans by 12 degrees is as long as worked out by hand", "[model][leaning]") {
    const auto resolved = tests::resolved(tests::leaning_project(leaning_by(12.0)));
    const auto posts = leaning_of(resolved);
    REQUIRE(posts.size() == 2);
    const double length = 29.4375 / std::cos(12.0 * degree) + std::tan(12.0 * degree);
    CHECK(length == Approx(30.30773).epsilon(1e-6));
    for (const auto& post : posts) CHECK(is_near(post.length, in_nm(length)));
}

TEST_CASE("both ends of a leaning post are level", "[model][leaning]") {
    const auto project = tests::leaning_project(leaning_by(12.0));
    const auto resolved = tests::resolved(project);
    const auto posts = leaning_of(resolved);
    REQUIRE(posts.size() == 2);
    for (const auto& post : posts) {
        CHECK(std::abs(post.ends[0].slope[0]) == Approx(std::tan(12.0 * degree)));
        CHECK(post.ends[0].slope[0] == -post.ends[1].slope[0]);
        CHECK(post.ends[0].slope[1] == 0.0);
        CHECK(std::abs(post.extents.lo[2] - inches_64(18)) <= 1);
        CHECK(std::abs(post.extents.hi[2] - (inches(30) - inches_64(18))) <= 1);
    }
}

TEST_CASE("the schedule of cuts says how a leaning post is cut", "[model][leaning]") {
    const auto project = tests::leaning_project(leaning_by(12.0));
    const auto resolved = tests::resolved(project);
    const auto rows = model::cut_rows(project, tests::shipped_catalogue(), resolved);
    std::size_t found = 0;
    for (const auto& row : rows) {
        if (row.kind != PieceKind::leaning) continue;
        ++found;
        const bool heel_first = row.end_a.ends_with("the heel");
        CHECK(row.end_a.starts_with("mitre 12 deg across leg a, long point at "));
        CHECK(row.end_b.starts_with("mitre 12 deg across leg a, long point at "));
        CHECK(row.end_b.ends_with(heel_first ? "the toe of leg a" : "the heel"));
    }
    CHECK(found == 2);  // one of each hand
}

TEST_CASE("a leaning post lies behind the side rails and moves in to clear the rails of the back",
          "[model][leaning]") {
    const auto resolved = tests::resolved(tests::leaning_project(leaning_by(5.0)));
    const auto posts = leaning_of(resolved);
    REQUIRE(posts.size() == 2);
    // Behind the front post's leg and the side rail's: 1/8 in each.
    CHECK(posts[0].extents.lo[0] == inches_64(16));
    CHECK(posts[0].extents.hi[0] == inches_64(16) + inches(1));
    // The upright leg of the back rail at the top is 1/8 in thick and reaches 1 in down; there the
    // line between the nodes lies tan 5 in further back. Across the post's run that is
    // (1/8 + 0.0875) cos 5 = 0.2117 in, of which whole 1/32 in are 7.
    const auto* moved = tests::first_of(resolved, "leaning_moved_in");
    REQUIRE(moved != nullptr);
    REQUIRE(moved->numbers.size() == 1);
    CHECK(std::get<model::Length>(moved->numbers[0].value).nm() == inches_64(14));
    CHECK(moved->severity == model::Severity::note);
    CHECK(tests::count_of(resolved, "interference") == 0);
}

TEST_CASE("a cabinet whose back leans needs nothing more", "[model][leaning]") {
    for (const double degrees : {2.0, 5.0, 12.0}) {
        const auto project = tests::leaning_project(leaning_by(degrees));
        const auto resolved = tests::resolved(project);
        CAPTURE(degrees, all_said(resolved));
        CHECK(errors_and_warnings(resolved) == 0);
        CHECK(joints_with(resolved, "leaning left", project) == 2);
        CHECK(joints_with(resolved, "leaning right", project) == 2);
        CHECK(complaints_of(project) == tests::Complaints{});
    }
}

TEST_CASE("a back that leans out is held as well", "[model][leaning]") {
    const auto project = tests::leaning_project(leaning_by(-7.0));
    const auto resolved = tests::resolved(project);
    CAPTURE(all_said(resolved));
    CHECK(errors_and_warnings(resolved) == 0);
    CHECK(complaints_of(project) == tests::Complaints{});
}

TEST_CASE("left and right leaning posts are opposite hands of one mark", "[model][leaning]") {
    const auto resolved = tests::resolved(tests::leaning_project(leaning_by(5.0)));
    const auto posts = leaning_of(resolved);
    REQUIRE(posts.size() == 2);
    CHECK(posts[0].mark == posts[1].mark);
    CHECK(resolved.marks[posts[0].mark].name == "LN1");
    CHECK(posts[0].hand == model::Hand::as_drawn);
    CHECK(posts[1].hand == model::Hand::opposite);
}

TEST_CASE("a leaning post is drilled through the holes of the rails, which lie on the marks",
          "[model][leaning]") {
    const auto resolved = tests::resolved(tests::leaning_project(leaning_by(5.0)));
    std::size_t holes = 0;
    for (const auto& piece : leaning_of(resolved)) {
        for (const auto& hole : resolved.holes_of(piece)) {
            ++holes;
            CHECK(hole.operation == model::HoleOperation::match_drill);
            CHECK(hole.wall == 0);
            for (const auto& its : resolved.holes_of(resolved.pieces[hole.mate])) {
                if (its.fastener != hole.fastener) continue;
                CHECK(its.operation == model::HoleOperation::drill);
                CHECK(its.from_datum % inches_64(2) == 0);
                CHECK(its.gauge % inches_64(2) == 0);
            }
        }
    }
    CHECK(holes == 8);
}

TEST_CASE("the side rails of a shelf are notched round a leaning post", "[model][leaning]") {
    auto shape = leaning_by(5.0);
    shape.shelves = {inches(14)};
    const auto project = tests::leaning_project(shape);
    const auto resolved = tests::resolved(project);
    CAPTURE(all_said(resolved));
    CHECK(errors_and_warnings(resolved) == 0);
    CHECK(joints_with(resolved, "leaning left", project) == 3);
    std::size_t notched = 0;
    for (const auto& piece : resolved.pieces) {
        if (piece.kind != PieceKind::bar || piece.run != Axis::y) continue;
        for (const auto& end : piece.ends) {
            for (const Nm back : end.wall_back) notched += back > 0 ? 1U : 0U;
        }
    }
    CHECK(notched == 2);
    CHECK(complaints_of(project) == tests::Complaints{});
}

TEST_CASE("a shelf's back rail in the way of a leaning post is told", "[model][leaning]") {
    auto shape = leaning_by(5.0);
    shape.shelves = {inches(14)};
    auto project = tests::leaning_project(shape);
    for (auto& member : project.frames[0].members) {
        if (member.run == Axis::x && member.on[0] != project.frames[0].planes[1].name &&
            member.on[1] == "z355600000" && member.legs[0] == Sense::minus) {
            for (const auto& side : project.frames[0].members) {
                if (side.run == Axis::y && side.on[1] == member.on[1]) member.on[0] = side.to;
            }
        }
    }
    REQUIRE(project != tests::leaning_project(shape));
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "interference") == 2);
    CHECK(complaints_of(project) == tests::Complaints{});
}

TEST_CASE("where the side rails turn their legs away a leaning post is loose", "[model][leaning]") {
    auto project = tests::leaning_project(leaning_by(5.0));
    std::erase_if(project.frames[0].members, [](const model::Member& member) {
        return member.run == Axis::y && member.on[1] == "z762000000";
    });
    const auto resolved = tests::resolved(project);
    std::size_t loose = 0;
    for (const auto& finding : resolved.findings) {
        if (finding.code != "loose_end") continue;
        loose += finding.concerns[0].kind == model::SubjectKind::leaning ? 1U : 0U;
    }
    CHECK(loose == 2);
}

TEST_CASE("between its level ends a leaning post holds what its section does", "[model][leaning]") {
    const auto resolved = tests::resolved(tests::leaning_project(leaning_by(12.0)));
    std::size_t checked = 0;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const Piece& piece = resolved.pieces[i];
        if (piece.kind != PieceKind::leaning) continue;
        // Two legs of 1 x 1/8 in less the corner that they share; both cuts are parallel, so that
        // the volume is that of a bar cut square as long as the heel: 29.4375 in / cos 12.
        constexpr double mm_per_inch = 25.4;
        double volume = (1.0 + 1.0 - 0.125) * 0.125 * 29.4375 / std::cos(12.0 * degree);
        for (const auto& hole : resolved.holes_of(piece)) {
            const double across = static_cast<double>(hole.diameter) / 25.4e6;
            volume -= across * across * 45.0 * degree * 0.125;
        }
        volume *= mm_per_inch * mm_per_inch * mm_per_inch;
        CHECK(model::piece_volume(resolved, tests::shipped_catalogue(), i) ==
              Approx(volume).epsilon(1e-7));
        ++checked;
    }
    CHECK(checked == 2);
}

TEST_CASE("a joint override names a leaning member like any other", "[model][leaning]") {
    auto project = tests::leaning_project(leaning_by(5.0));
    std::string rail;
    for (const auto& member : project.frames[0].members) {
        if (member.run == Axis::y && member.on[1] == "z0" && member.on[0] == "x0") {
            rail = member.name;
        }
    }
    REQUIRE_FALSE(rail.empty());
    project.frames[0].joints = {{.members = {"leaning left", rail}, .count = 1}};
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "no_such_joint") == 0);
    std::vector<Index> counts;
    for (const auto& joint : resolved.joints) {
        const Piece& lower = resolved.pieces[joint.pieces[1]];
        if (lower.kind == PieceKind::leaning && lower.stated == 0) {
            counts.push_back(joint.fastener_count);
        }
    }
    std::ranges::sort(counts);
    CHECK(counts == std::vector<Index>{1, 2});
}

TEST_CASE("a leaning member of what is no angle is left out and says so", "[model][leaning]") {
    auto shape = leaning_by(5.0);
    shape.posts = "flat";
    auto project = tests::leaning_project(shape);
    project.stock.push_back(tests::stock_of("flat", "flat 1 x 1/8", "6063-T52"));
    const auto resolved = tests::resolved(project);
    CHECK(leaning_of(resolved).empty());
    CHECK(tests::count_of(resolved, "leaning_not_angle") == 2);
}

TEST_CASE("a leaning member that stands upright is left out and says so", "[model][leaning]") {
    const auto resolved = tests::resolved(tests::leaning_project({.shelves = {}}));
    CHECK(leaning_of(resolved).empty());
    CHECK(tests::count_of(resolved, "does_not_lean") == 2);
}

TEST_CASE("a leaning member in a face without members is left out and says so",
          "[model][leaning]") {
    auto project = tests::leaning_project(leaning_by(5.0));
    auto& frame = project.frames[0];
    frame.planes.push_back({"bare", Axis::x, "10 in"});
    frame.leaning[0].face = "bare";
    const auto resolved = tests::resolved(project);
    CHECK(leaning_of(resolved).size() == 1);
    CHECK(tests::count_of(resolved, "leaning_on_no_member") == 1);
}

TEST_CASE("where a leaning post is of unequal angle its first leg lies along the face",
          "[model][leaning]") {
    auto shape = leaning_by(5.0);
    shape.posts = "unequal";
    auto project = tests::leaning_project(shape);
    project.stock.push_back(tests::stock_of("unequal", "angle 1 1/2 x 1 x 1/8", "6063-T52"));
    const auto resolved = tests::resolved(project);
    const auto posts = leaning_of(resolved);
    REQUIRE(posts.size() == 2);
    CAPTURE(all_said(resolved));
    CHECK(posts[0].extents.hi[0] == inches_64(16) + inches(1));
    CHECK(is_near(posts[0].length,
                  in_nm(29.4375 / std::cos(5.0 * degree) + 1.5 * std::tan(5.0 * degree))));
    CHECK(errors_and_warnings(resolved) == 0);
    CHECK(complaints_of(project) == tests::Complaints{});
}
