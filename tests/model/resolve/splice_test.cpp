// Values by hand. In inches the tape's mark, and so the gap between lengths, is 1/32 in; a bar
// loses 1/2 in at each end.
#include "model/resolve/recipe.h"
#include "model/schedule/findings.h"
#include "model/schedule/tables.h"

#include "tests/model/resolve/resolve_support.h"

using model::Axis;
using model::Index;
using model::Piece;
using model::PieceKind;
using model::Project;
using model::Resolved;
using model::Sense;
using tests::count_of;
using tests::first_of;
using tests::FrameBuilder;
using tests::inches;
using tests::inches_64;
using tests::Nm;
using tests::pieces_of;
using tests::resolved;
using tests::stock_of;

namespace {

// One rail along x, 100 in long, that lies against nothing: its ends count as supports.
Project rail_of(const std::string& section, const char* bar) {
    FrameBuilder builder("rack");
    builder.member("main", Axis::x, {0, 0}, 0, inches(100), {Sense::plus, Sense::plus}).name =
        "rail";
    auto project = tests::project_of(builder);
    project.stock = {stock_of("main", section, "6063-T52")};
    project.stock[0].bars = {{.length = bar}};
    return project;
}

std::vector<Piece> backings_of(const Resolved& resolved) {
    std::vector<Piece> found;
    for (const auto& piece : resolved.pieces) {
        if (piece.kind == PieceKind::backing) found.push_back(piece);
    }
    return found;
}

// Of the joints of one piece, how many fasteners there are.
std::vector<Index> fasteners_in(const Resolved& resolved) {
    std::vector<Index> counts;
    for (const auto& joint : resolved.joints) counts.push_back(joint.fastener_count);
    return counts;
}

}  // namespace

// 0.225 of 100 in is 22 1/2 in; the other length is 100 - 22 1/2 - 1/32 = 77 15/32 in, and a bar of
// 84 in gives 83 in.
TEST_CASE("a member longer than its longest bar is made of two lengths", "[resolve][splice]") {
    const auto project = rail_of("angle 1 x 1 x 1/8", "84 in");
    const auto all = resolved(project);
    const auto lengths = pieces_of(project, all, "rail");
    REQUIRE(lengths.size() == 2);
    CHECK(lengths[0].length == inches_64(22 * 64 + 32));
    CHECK(lengths[1].length == inches_64(77 * 64 + 30));
    CHECK(lengths[0].part == 0);
    CHECK(lengths[1].part == 1);
    CHECK(lengths[1].datum[0] - lengths[0].datum[0] - lengths[0].length == inches_64(2));
    CHECK(count_of(all, "spliced") == 1);
    CHECK(model::bar_findings(project, tests::shipped_catalogue(), all).empty());
}

TEST_CASE("a member that fits a bar or an offcut is left whole", "[resolve][splice]") {
    CHECK(backings_of(resolved(rail_of("angle 1 x 1 x 1/8", "101 in"))).empty());
    CHECK_FALSE(backings_of(resolved(rail_of("angle 1 x 1 x 1/8", "100 31/32 in"))).empty());
    auto project = rail_of("angle 1 x 1 x 1/8", "84 in");
    project.stock[0].offcuts = {{"101 in", 1}};
    CHECK(backings_of(resolved(project)).empty());
    auto second = project.frames[0];
    second.name = "other rack";
    second.origin = {"0", "100 in", "0"};
    project.frames.push_back(second);
    const auto all = resolved(project);
    CHECK(count_of(all, "spliced") == 1);
    CHECK(model::bar_findings(project, tests::shipped_catalogue(), all).empty());
}

TEST_CASE("a stock without a stated bar is not spliced", "[resolve][splice]") {
    auto project = rail_of("angle 1 x 1 x 1/8", "84 in");
    project.stock[0].bars.clear();
    CHECK(backings_of(resolved(project)).empty());
    project.stock[0].bars = {{.length = "no length"}};
    CHECK(backings_of(resolved(project)).empty());
}

// Both legs of the angle nested in it lap both legs of both lengths. It lies at 1/8 in from both
// planes. On each side of the butt it is one and a half times the leg long, more than the 2 x 1/4 +
// 3/8 + 2 x 1/32 in of two rivets: 1 1/2 + 1/32 + 1 1/2 in, from 22 1/2 - 1 1/2 = 21 in on.
TEST_CASE("an angle is backed by one nested in it where there is no flat", "[resolve][splice]") {
    const auto all = resolved(rail_of("angle 1 x 1 x 1/8", "84 in"));
    const auto backings = backings_of(all);
    REQUIRE(backings.size() == 1);
    CHECK(backings[0].datum == model::Point{inches(21), inches_64(8), inches_64(8)});
    CHECK(backings[0].length == inches_64(3 * 64 + 2));
    CHECK(backings[0].serves == std::array<Index, 2>{0, 0});
    CHECK(fasteners_in(all) == std::vector<Index>{2, 2, 2, 2});
    for (const auto& joint : all.joints) CHECK(model::recipes()[joint.recipe].name == "splice");
    CHECK(all.marks[backings[0].mark].name == "BK1");
}

// The inside of a leg of 1 1/2 in, less the thickness of the flat on the other one and 1/32 in to
// it, is 1 1/2 - 1/8 - 1/8 - 1/32 = 78/64 in wide and begins at 18/64 in: the flat of 1 in lies in
// its middle, 7/64 in from there. Along the rail they begin 1 1/2 x 1 1/2 in before the butt.
TEST_CASE("each leg of an angle has a flat where one is in stock", "[resolve][splice]") {
    auto project = rail_of("angle 1 1/2 x 1 1/2 x 1/8", "84 in");
    project.stock.push_back(stock_of("narrow", "flat 3/4 x 1/8", "6063-T52"));
    project.stock.push_back(stock_of("thin", "flat 1 x 1/8", "6063-T52"));
    project.stock.push_back(stock_of("thick", "flat 1 x 1/4", "6063-T52"));
    project.stock.push_back(stock_of("wide", "flat 1 1/4 x 1/8", "6063-T52"));
    const auto all = resolved(project);
    const auto backings = backings_of(all);
    REQUIRE(backings.size() == 2);
    for (const auto& backing : backings) CHECK(backing.stock == 2);
    // Leg a spans z, leg b spans y.
    CHECK(backings[0].extents.lo ==
          model::Point{inches_64(20 * 64 + 16), inches_64(8), inches_64(25)});
    CHECK(backings[0].extents.hi ==
          model::Point{inches_64(24 * 64 + 50), inches_64(16), inches_64(89)});
    CHECK(backings[1].extents.lo[1] == inches_64(25));
    CHECK(backings[1].extents.hi[1] == inches_64(89));
    CHECK(backings[1].extents.lo[2] == inches_64(8));
    CHECK(fasteners_in(all) == std::vector<Index>{2, 2, 2, 2});
    CHECK(count_of(all, "interference") == 0);
}

TEST_CASE("a flat is backed by its own stock on the inner face", "[resolve][splice]") {
    const auto all = resolved(rail_of("flat 1 x 1/8", "84 in"));
    const auto backings = backings_of(all);
    REQUIRE(backings.size() == 1);
    CHECK(fasteners_in(all) == std::vector<Index>{2, 2});
    const auto& rail = all.pieces[0].extents;
    const auto& backing = backings[0].extents;
    CHECK(backing.lo[2] == rail.lo[2]);
    CHECK(backing.hi[2] == rail.hi[2]);
    CHECK(backing.lo[1] == rail.hi[1]);
}

// A hand tool reaches a tube from outside only, so the heads lie on the straps.
TEST_CASE("a tube has straps on two opposite sides", "[resolve][splice]") {
    auto project = rail_of("tube 1 x 1 x 1/8", "84 in");
    CHECK(count_of(resolved(project), "splice_lacks_backing") == 1);
    project.stock.push_back(stock_of("flat", "flat 1 x 1/8", "6063-T52"));
    const auto all = resolved(project);
    REQUIRE(backings_of(all).size() == 2);
    CHECK(fasteners_in(all) == std::vector<Index>{2, 2, 2, 2});
    for (const auto& fastener : all.fasteners) {
        CHECK(all.pieces[fastener.stack[0].piece].kind == PieceKind::backing);
    }
}

// Between the flanges of a channel of 3 in, each with a flat and 1/32 in to it, the web has room
// for 2 in.
TEST_CASE("a channel is backed on its web and both flanges where there is room",
          "[resolve][splice]") {
    auto project = rail_of("channel 3 x 1 1/2 x 1/8", "84 in");
    project.stock.push_back(stock_of("flat", "flat 1 x 1/8", "6063-T52"));
    const auto all = resolved(project);
    CHECK(backings_of(all).size() == 3);
    CHECK(count_of(all, "interference") == 0);
}

TEST_CASE("a splice that cannot be backed names the flat that would do", "[resolve][splice]") {
    const auto project = rail_of("tube 1 x 1 x 1/8", "84 in");
    const auto all = resolved(project);
    const auto* finding = first_of(all, "splice_lacks_backing");
    REQUIRE(finding != nullptr);
    CHECK(finding->mend.find("flat 1 x 1/8") != std::string::npos);
    const auto bars = model::bar_findings(project, tests::shipped_catalogue(), all);
    REQUIRE(bars.size() == 1);
    CHECK(bars[0].code == "no_bar_long_enough");
}

TEST_CASE("a splice that has no room says so and leaves the member whole", "[resolve][splice]") {
    // 100 in of bars that give 51 in: two butts at 22 1/2 and 77 1/2 in; of 5 in twenty lengths.
    CHECK(pieces_of(rail_of("angle 1 x 1 x 1/8", "52 in"),
                    resolved(rail_of("angle 1 x 1 x 1/8", "52 in")), "rail")
              .size() == 3);
    CHECK(count_of(resolved(rail_of("angle 1 x 1 x 1/8", "6 in")), "splice_of_too_many") == 1);
    const auto project = rail_of("angle 1 x 1 x 1/8", "12 in");
    const auto all = resolved(project);
    CHECK(count_of(all, "splice_has_no_room") == 1);
    CHECK(pieces_of(project, all, "rail").size() == 1);
}

TEST_CASE("the note of a splice gives its lengths and its place", "[resolve][splice]") {
    const auto all = resolved(rail_of("angle 1 x 1 x 1/8", "84 in"));
    const auto* note = first_of(all, "spliced");
    REQUIRE(note != nullptr);
    CHECK(note->severity == model::Severity::note);
    CHECK(note->what ==
          "it is 100 in long, and its longest bar gives 83 in between the end trims; it is made of "
          "22 1/2 in and 77 15/32 in in line, with 1 piece of angle 1 x 1 x 1/8, 3 1/32 in long, "
          "behind the butt, 23 per cent of a span from its nearer support, away from mid-span, "
          "where bending is most; common practice is a fifth to a quarter");
}

TEST_CASE("nobody can ask two members to meet by a splice", "[resolve][splice]") {
    CHECK_FALSE(model::find_recipe("splice").has_value());
    CHECK(model::recipe_names().find("splice") == std::string::npos);
}
