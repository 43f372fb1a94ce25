// Fasteners and holes: which, how many, where. All bar is 1 x 1 x 1/8 in angle unless said
// otherwise.
#include "model/resolve/fastener_choice.h"

#include "tests/model/resolve/resolve_support.h"

using tests::inches;
using tests::inches_64;

namespace {

model::Project box() {
    return tests::box_project(tests::BoxShape{}, "angle 1 x 1 x 1/8", "6063-T52");
}

// The names of the members of the first joint.
std::array<std::string, 2> first_pair(const model::Project& project,
                                      const model::Resolved& resolved) {
    const auto& pieces = resolved.joints.at(0).pieces;
    const auto name = [&](model::Index piece) {
        return project.frames[0].members[resolved.pieces[piece].member].name;
    };
    return {name(pieces[1]), name(pieces[0])};  // in the other order, which must not matter
}

bool all_on_tape(const model::Resolved& resolved, model::Nm graduation) {
    return std::all_of(resolved.holes.begin(), resolved.holes.end(), [&](const model::Hole& h) {
        return h.operation == model::HoleOperation::match_drill ||
               (h.from_datum % graduation == 0 && h.gauge % graduation == 0);
    });
}

}  // namespace

TEST_CASE("1/8 in plates take 1/8 in rivets with the grip that holds 1/4 in", "[model][fasten]") {
    const auto resolved = tests::resolved(box());
    REQUIRE_FALSE(resolved.fasteners.empty());
    const auto& catalogue = tests::shipped_catalogue();
    for (const auto& fastener : resolved.fasteners) {
        const auto& rivet = catalogue.rivets[fastener.spec.index];
        CHECK(rivet.id == "blind rivet 1/8");
        CHECK(rivet.grips[fastener.spec.grip].code == "4-4");
        CHECK(fastener.grip == inches_64(16));
    }
}

TEST_CASE("holes lie on the tape's marks from the datum end and from the heel", "[model][fasten]") {
    const auto resolved = tests::resolved(box());
    CHECK(all_on_tape(resolved, inches_64(2)));
    for (const auto& hole : resolved.holes) {
        CHECK(hole.operation == model::HoleOperation::drill);
    }
}

TEST_CASE("where two pieces' marks cannot agree one is drilled through the other",
          "[model][fasten]") {
    auto project = box();
    for (auto& plane : project.frames[0].planes) {
        if (plane.position == "36 in") plane.position = "914.9 mm";
    }
    REQUIRE(project != box());
    const auto resolved = tests::resolved(project);
    const auto matched = std::count_if(
        resolved.holes.begin(), resolved.holes.end(),
        [](const model::Hole& h) { return h.operation == model::HoleOperation::match_drill; });
    CHECK(matched > 0);
    CHECK(all_on_tape(resolved, inches_64(2)));
    // Of each matched pair the other one is the pattern.
    for (const auto& fastener : resolved.fasteners) {
        int patterns = 0;
        for (const auto& hole : resolved.holes) {
            if (&resolved.fasteners[hole.fastener] == &fastener) {
                patterns += hole.operation == model::HoleOperation::drill ? 1 : 0;
            }
        }
        CHECK(patterns >= 1);
    }
}

TEST_CASE("few fence settings serve a whole box", "[model][fasten]") {
    std::vector<model::Nm> gauges;
    for (const auto& hole : tests::resolved(box()).holes) gauges.push_back(hole.gauge);
    std::sort(gauges.begin(), gauges.end());
    gauges.erase(std::unique(gauges.begin(), gauges.end()), gauges.end());
    CHECK(gauges == std::vector<model::Nm>{inches_64(24), inches_64(48)});
}

TEST_CASE("a joint can have its own number and size of fasteners", "[model][fasten]") {
    auto project = box();
    const auto pair = first_pair(project, tests::resolved(project));
    project.frames[0].joints.push_back(
        {.members = pair, .fastener = "blind rivet 3/32", .count = 1});
    const auto resolved = tests::resolved(project);
    const auto& joint = resolved.joints.at(0);
    REQUIRE(joint.fastener_count == 1);
    const auto& fastener = resolved.fasteners_of(joint)[0];
    CHECK(tests::shipped_catalogue().rivets[fastener.spec.index].id == "blind rivet 3/32");
}

TEST_CASE("what is said of a joint that is not there is told", "[model][fasten]") {
    auto project = box();
    project.frames[0].joints.push_back({.members = {"m1", "nothing"}});
    CHECK(tests::count_of(tests::resolved(project), "no_such_joint") == 1);
}

TEST_CASE("a fastener that the catalogue lacks is told and one is chosen by the rule",
          "[model][fasten]") {
    auto project = box();
    const auto pair = first_pair(project, tests::resolved(project));
    project.frames[0].joints.push_back({.members = pair, .fastener = "brass nail"});
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "unknown_fastener") == 1);
    CHECK(resolved.joints.at(0).fastener_count == 2);
}

TEST_CASE("too many fasteners for a lap are told with how many fit", "[model][fasten]") {
    auto project = box();
    project.shop.per_lap = 12;
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "too_few_fasteners");
    REQUIRE(finding != nullptr);
    CHECK(std::get<double>(finding->numbers[0].value) >= 2.0);
    CHECK(std::get<double>(finding->numbers[1].value) == 12.0);
}

TEST_CASE("a drill that is not at hand is replaced by one that makes the hole", "[model][fasten]") {
    auto project = box();
    project.shop.drills = {"3.3 mm"};  // 0.1299 in: within 0.129 to 0.133 for a 1/8 in rivet
    const auto resolved = tests::resolved(project);
    REQUIRE_FALSE(resolved.holes.empty());
    CHECK(tests::shipped_catalogue().drills[resolved.holes[0].drill].name == "3.3 mm");
    project.shop.drills = {"1/4"};
    CHECK(tests::count_of(tests::resolved(project), "no_drill") > 0);
}

TEST_CASE("every fastener's stack is as thick as its plates and lies within its grip",
          "[model][fasten]") {
    for (const auto& fastener : tests::resolved(box()).fasteners) {
        model::Nm total = 0;
        for (std::size_t i = 0; i < fastener.stack_count; ++i) total += fastener.stack[i].thickness;
        CHECK(fastener.grip == total);
        CHECK(fastener.grip_least <= total);
        CHECK(total <= fastener.grip_most);
    }
}

TEST_CASE("gap and marks follow the tape unless the shop says otherwise", "[model][fasten]") {
    using engine::TapeForm;
    auto project = box();
    const auto shop_of = [&](engine::TapeStyle shown) {
        project.shown = shown;
        const auto shop = tests::resolved(project).shop;
        CHECK(shop.end_gap == shop.graduation);
        return shop.graduation;
    };
    CHECK(shop_of({.form = TapeForm::inch_fraction, .denominator = 32}) == inches_64(2));
    CHECK(shop_of({.form = TapeForm::inch_fraction, .denominator = 64}) == inches_64(1));
    CHECK(shop_of({.form = TapeForm::inch_fraction, .denominator = 4}) == inches_64(4));
    CHECK(shop_of({.form = TapeForm::inch_decimal}) == inches_64(2));
    CHECK(shop_of({.form = TapeForm::millimetre, .decimals = 2}) == tests::millimetres(1));
    project.shop.end_gap = "1/16 in";
    CHECK(tests::resolved(project).shop.end_gap == inches_64(4));
}

TEST_CASE("a metric box of metric angle is drilled on whole millimetres with few fences",
          "[model][fasten]") {
    tests::BoxShape shape;
    shape.width = tests::millimetres(600);
    shape.depth = tests::millimetres(400);
    shape.height = tests::millimetres(500);
    auto project = tests::box_project(shape, "angle 30 x 30 x 3 mm", "6063-T5");
    project.shown = {.form = engine::TapeForm::millimetre, .decimals = 0};
    project.shop.fastener = "blind rivet 4.0 mm";
    const auto resolved = tests::resolved(project);
    REQUIRE_FALSE(resolved.holes.empty());
    CHECK(all_on_tape(resolved, tests::millimetres(1)));
    CHECK(resolved.marks.size() == 3);  // posts, x-rails, y-rails
    std::vector<model::Nm> gauges;
    for (const auto& hole : resolved.holes) {
        CHECK(hole.operation == model::HoleOperation::drill);
        gauges.push_back(hole.gauge);
    }
    std::sort(gauges.begin(), gauges.end());
    gauges.erase(std::unique(gauges.begin(), gauges.end()), gauges.end());
    CHECK(gauges.size() <= 4);
}

TEST_CASE("what finer marks would cure is said", "[model][fasten]") {
    tests::BoxShape shape;
    auto project = tests::box_project(shape, "angle 3/4 x 3/4 x 1/8", "6063-T52");
    project.shop.fastener = "blind rivet 3/32";
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "too_few_fasteners");
    REQUIRE(finding != nullptr);
    CHECK(finding->mend.find("marks half as far apart") != std::string::npos);
    project.shop.graduation = "1/64 in";
    const auto finer = tests::resolved(project);
    CHECK(tests::count_of(finer, "too_few_fasteners") == 0);
    CHECK(tests::count_of(finer, "fasteners_meet") == 0);
}

TEST_CASE("a rivet thinner than the thickest plate is noted", "[model][fasten]") {
    auto project = box();
    CHECK(tests::count_of(tests::resolved(project), "thin_rivet") == 0);
    project.shop.fastener = "blind rivet 3/32";
    CHECK(tests::count_of(tests::resolved(project), "thin_rivet") == 1);
}
