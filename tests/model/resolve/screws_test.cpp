// Joints that come apart: machine screws tapped, with nuts and in rivet nuts. All bar is 1 x 1 x
// 1/8 in angle unless said otherwise.
#include "model/resolve/fastener_body.h"
#include "model/resolve/screw_choice.h"

#include "tests/model/resolve/resolve_support.h"
#include "tests/support/run_project.h"
#include "tests/support/skeleton_checks.h"

using Kind = model::FastenerSpec::Kind;
using model::HoleOperation;
using model::ScrewHold;
using tests::inches_64;

namespace {

model::Project box(const char* section = "angle 1 x 1 x 1/8") {
    return tests::box_project(tests::BoxShape{}, section, "6063-T52");
}

std::array<std::string, 2> first_pair(const model::Project& project) {
    const auto resolved = tests::resolved(project);
    const auto& pieces = resolved.joints.at(0).pieces;
    const auto name = [&](model::Index piece) {
        return project.frames[0].members[resolved.pieces[piece].member].name;
    };
    return {name(pieces[0]), name(pieces[1])};
}

model::Project with_one_removable(model::JointOverride joint, model::Project project = box()) {
    joint.members = first_pair(project);
    joint.removable = true;
    project.frames[0].joints.push_back(joint);
    return project;
}

const model::Joint& screwed_joint(const model::Resolved& resolved) {
    for (const auto& joint : resolved.joints) {
        const auto fasteners = resolved.fasteners_of(joint);
        if (!fasteners.empty() && fasteners[0].spec.kind != Kind::blind_rivet) return joint;
    }
    FAIL("no joint has screws");
    return resolved.joints[0];
}

const model::Fastener& first_screw(const model::Resolved& resolved) {
    return resolved.fasteners_of(screwed_joint(resolved))[0];
}

const model::MachineScrew& screw_of(const model::Fastener& fastener) {
    return tests::shipped_catalogue().screws[fastener.spec.index];
}

model::Nm length_of(const model::Fastener& fastener) {
    return screw_of(fastener).lengths[fastener.spec.grip].nm();
}

// The holes of a fastener, in the order of its stack.
std::vector<model::Hole> holes_of(const model::Resolved& resolved,
                                  const model::Fastener& fastener) {
    const auto number = static_cast<model::Index>(&fastener - resolved.fasteners.data());
    std::vector<model::Hole> holes;
    for (std::size_t i = 0; i < fastener.stack_count; ++i) {
        for (const auto& hole : resolved.holes) {
            if (hole.fastener == number && hole.piece == fastener.stack[i].piece) {
                holes.push_back(hole);
            }
        }
    }
    return holes;
}

std::string drill_of(const model::Hole& hole) {
    return tests::shipped_catalogue().drills.at(hole.drill).name;
}

tests::Complaints complaints_about(const model::Project& project) {
    return tests::skeleton_complaints(tests::written_files(project, tests::shipped_catalogue()),
                                      tests::rules_of(project));
}

}  // namespace

TEST_CASE("a removable joint is tapped in the plate away from the head", "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable({.fastener = "machine screw 8-32"}));
    const auto& screw = first_screw(resolved);
    CHECK(screw.spec.kind == Kind::screw_tapped);
    const auto holes = holes_of(resolved, screw);
    REQUIRE(holes.size() == 2);
    CHECK(holes[0].operation == HoleOperation::clearance);
    CHECK(drill_of(holes[0]) == "#18");
    CHECK(holes[0].tap == model::no_index);
    CHECK(holes[1].operation == HoleOperation::tap_drill);
    CHECK(drill_of(holes[1]) == "#29");
    REQUIRE(holes[1].tap != model::no_index);
    CHECK(tests::shipped_catalogue().screws[holes[1].tap].id == "machine screw 8-32");
}

TEST_CASE("only the joint that is asked for has screws", "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable({}));
    const auto& joint = screwed_joint(resolved);
    for (const auto& fastener : resolved.fasteners) {
        const bool is_there = &resolved.joints[fastener.joint] == &joint;
        CHECK(is_there == (fastener.spec.kind != Kind::blind_rivet));
    }
}

TEST_CASE("a tapped screw reaches through the far plate by a thread", "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable({.fastener = "machine screw 8-32"}));
    // 1/4 in of plates and a 32nd of a thread: 5/16 in is the next that is sold.
    CHECK(length_of(first_screw(resolved)) == inches_64(20));
}

TEST_CASE("a screw with a nut reaches through plates and nut", "[model][screws]") {
    const auto resolved = tests::resolved(
        with_one_removable({.fastener = "machine screw 8-32", .screw_hold = ScrewHold::nut}));
    const auto& screw = first_screw(resolved);
    CHECK(screw.spec.kind == Kind::screw_through);
    // 1/4 in of plates, a nut of 1/8 in and a 32nd of a thread.
    CHECK(length_of(screw) == inches_64(28));
    for (const auto& hole : holes_of(resolved, screw)) {
        CHECK(hole.operation == HoleOperation::clearance);
        CHECK(hole.tap == model::no_index);
    }
}

TEST_CASE("a screw in a rivet nut reaches to the end of its body", "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable(
        {.fastener = "machine screw 6-32", .count = 1, .screw_hold = ScrewHold::rivet_nut}));
    const auto& screw = first_screw(resolved);
    REQUIRE(screw.spec.kind == Kind::screw_in_rivet_nut);
    const auto& nut = tests::shipped_catalogue().rivet_nuts.at(screw.spec.nut);
    CHECK(nut.id == "rivet nut 6-32, grip 0.120 to 0.160 in");
    CHECK(length_of(screw) >= inches_64(8) + nut.body_length.nm());
    const auto holes = holes_of(resolved, screw);
    REQUIRE(holes.size() == 2);
    CHECK(drill_of(holes[1]) == nut.drill);
    CHECK(tests::count_of(resolved, "rivet_nut_rim") == 1);
}

TEST_CASE("a screw that nobody names is chosen by the plates", "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable({}));
    CHECK(screw_of(first_screw(resolved)).id == "machine screw 6-32");
}

TEST_CASE("the shop's screw serves the joints that come apart", "[model][screws]") {
    auto project = with_one_removable({});
    project.shop.screw = "machine screw 10-32";
    project.shop.screw_hold = ScrewHold::nut;
    const auto resolved = tests::resolved(project);
    CHECK(screw_of(first_screw(resolved)).id == "machine screw 10-32");
    CHECK(first_screw(resolved).spec.kind == Kind::screw_through);
}

TEST_CASE("a shop that fastens with screws rivets nothing", "[model][screws]") {
    auto project = box();
    project.shop.fastener = "machine screw 8-32";
    const auto resolved = tests::resolved(project);
    REQUIRE_FALSE(resolved.fasteners.empty());
    for (const auto& fastener : resolved.fasteners) {
        CHECK(fastener.spec.kind == Kind::screw_tapped);
    }
    CHECK(complaints_about(project).empty());
}

TEST_CASE("a box with a removable joint holds whatever holds its screws", "[model][screws]") {
    const auto hold = GENERATE(ScrewHold::tapped, ScrewHold::nut, ScrewHold::rivet_nut);
    const auto* section =
        GENERATE("angle 1 x 1 x 1/8", "angle 3/4 x 3/4 x 1/8", "angle 1 1/2 x 1 1/2 x 1/8");
    CAPTURE(static_cast<int>(hold), section);
    const auto project = with_one_removable({.screw_hold = hold}, box(section));
    for (const auto& complaint : complaints_about(project)) FAIL_CHECK(complaint);
}

TEST_CASE("a rivet cannot hold what is to come apart", "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable({.fastener = "blind rivet 1/8"}));
    CHECK(tests::count_of(resolved, "rivet_in_removable") == 1);
    CHECK(first_screw(resolved).spec.kind == Kind::screw_tapped);
}

TEST_CASE("a screw that the catalogue lacks is told", "[model][screws]") {
    auto project = with_one_removable({});
    project.shop.screw = "machine screw 9-33";
    CHECK(tests::count_of(tests::resolved(project), "unknown_screw") == 1);
}

TEST_CASE("two threads and a half are too few, and the finer thread is named", "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable(
        {.fastener = "machine screw 1/4-20", .count = 1}, box("angle 1 1/2 x 1 1/2 x 1/8")));
    const auto* finding = tests::first_of(resolved, "few_threads");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == model::Severity::error);
    CHECK_THAT(finding->what, Catch::Contains("2.5 threads"));
    CHECK_THAT(finding->mend, Catch::Contains("1/4-28 (drill #3)"));
    CHECK_THAT(finding->mend, Catch::Contains("rivet nut"));
}

TEST_CASE("a tap hole larger than its plate is thick is told with the screw that is not",
          "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable({.fastener = "machine screw 8-32"}));
    const auto* finding = tests::first_of(resolved, "large_tap_hole");
    REQUIRE(finding != nullptr);
    CHECK_THAT(finding->mend, Catch::Contains("6-32 (drill #36)"));
    CHECK(tests::count_of(tests::resolved(with_one_removable({})), "large_tap_hole") == 0);
}

TEST_CASE("a thread weaker than its screw is told with how much it holds", "[model][screws]") {
    const auto resolved = tests::resolved(with_one_removable({.fastener = "machine screw 8-32"}));
    const auto* finding = tests::first_of(resolved, "thread_is_weaker");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == model::Severity::note);
    // 0.0418 in2 at 0.6 of 22 000 psi is 551 lbf, the pull-out of 16 000 psi yield 394 lbf: 47 per
    // cent of the screw's 840 lbf.
    CHECK_THAT(finding->what, Catch::Contains("47 per cent"));
}

TEST_CASE("a drill that leaves too much thread binds the tap, and the right one is named",
          "[model][screws]") {
    auto project = with_one_removable({.fastener = "machine screw 8-32"});
    project.shop.drills = {"#30", "1/8", "#18"};
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "tap_binds");
    REQUIRE(finding != nullptr);
    // 87 per cent: the tap drill charts' own formula on a #30 hole.
    CHECK_THAT(finding->what, Catch::Contains("#30") && Catch::Contains("87 per cent"));
    CHECK_THAT(finding->mend, Catch::Contains("#29 (69 per cent)"));
}

TEST_CASE("a drill that leaves too little thread strips it, and the right one is named",
          "[model][screws]") {
    auto project = with_one_removable({.fastener = "machine screw 8-32"});
    project.shop.drills = {"5/32", "#18", "#20"};
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "thread_strips");
    REQUIRE(finding != nullptr);
    CHECK_THAT(finding->mend, Catch::Contains("#29"));
}

TEST_CASE("a drill at hand within the thread's limits is as good", "[model][screws]") {
    auto project = with_one_removable({.fastener = "machine screw 8-32"});
    project.shop.drills = {"3.5 mm", "#18", "#30"};
    const auto resolved = tests::resolved(project);
    const auto holes = holes_of(resolved, first_screw(resolved));
    CHECK(drill_of(holes.back()) == "3.5 mm");
}

TEST_CASE("without a clearance drill there is no screw", "[model][screws]") {
    auto project = with_one_removable({.fastener = "machine screw 8-32"});
    project.shop.drills = {"#29", "#30"};
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "no_drill");
    REQUIRE(finding != nullptr);
    CHECK_THAT(finding->mend, Catch::Contains("#18"));
}

TEST_CASE("a thinner screw that would fit is named", "[model][screws]") {
    // On 3/4 in legs the edge distance leaves room for two of 4-40, not for two of 1/4-20.
    auto project =
        with_one_removable({.fastener = "machine screw 1/4-20"}, box("angle 3/4 x 3/4 x 1/8"));
    const auto resolved = tests::resolved(project);
    const model::Finding* finding = nullptr;
    for (const auto& each : resolved.findings) {
        const bool is_about_screws = each.what.find("1/4-20") != std::string::npos;
        if (each.code == "too_few_fasteners" && is_about_screws) finding = &each;
    }
    REQUIRE(finding != nullptr);
    CHECK_THAT(finding->mend, Catch::Contains("a smaller screw (machine screw "));
}

TEST_CASE("a stack that no screw reaches through is told", "[model][screws]") {
    const auto& catalogue = tests::shipped_catalogue();
    const auto answer = model::choose_screw(
        catalogue, {}, {.is_screw = true, .id = "machine screw 8-32"}, model::MeasureSystem::inch,
        {.total = inches_64(200), .thinnest = inches_64(100), .far = inches_64(100)});
    CHECK_FALSE(answer.choice);
    CHECK(answer.why_not.code == "no_length");
}

TEST_CASE("the checks notice a tapped hole that is told wrongly", "[model][screws][support]") {
    const auto project = with_one_removable({.fastener = "machine screw 8-32"});
    auto files = tests::written_files(project, tests::shipped_catalogue());
    const auto change = [&](const char* file, const std::string& from, const std::string& to) {
        auto& text = files[file];
        const auto at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), to);
    };
    const auto has = [&](const std::string& part) {
        const auto complaints = tests::skeleton_complaints(files, tests::rules_of(project));
        return std::any_of(complaints.begin(), complaints.end(), [&](const auto& complaint) {
            return complaint.find(part) != std::string::npos;
        });
    };
    SECTION("no line for the tap") {
        change("drill.csv", "tap 8-32,tap,", "tap 8-32,drill,");
        CHECK(has("drill.csv does not list a hole"));
    }
    SECTION("drilled as if for the screw's body") {
        change("pieces.json", "\"operation\":\"tap drill\"", "\"operation\":\"clearance\"");
        CHECK(has("is no tap drill's hole"));
    }
    SECTION("another thread") {
        change("pieces.json", "\"tap\":\"machine screw 8-32\"", "\"tap\":\"machine screw 8-36\"");
        CHECK(has("is not tapped for it"));
    }
    SECTION("nothing holds it") {
        change("pieces.json", ",\"hold\":\"tapped\"", "");
        CHECK(has("does not say what holds it"));
    }
    SECTION("too short") {
        change("pieces.json", "8-32 x 5/16 in", "8-32 x 3/16 in");
        CHECK(has("does not reach through its stack"));
    }
}

TEST_CASE("a driver comes straight on, a little wider than the head", "[model][screws]") {
    const auto& catalogue = tests::shipped_catalogue();
    const auto answer = model::choose_screw(
        catalogue, {}, {.is_screw = true, .id = "machine screw 8-32"}, model::MeasureSystem::inch,
        {.total = inches_64(16), .thinnest = inches_64(8), .far = inches_64(8)});
    REQUIRE(answer.choice);
    // A pan head of 0.322 in at most (ASME B18.6.3, read) and 1/32 in.
    CHECK(answer.choice->driver_radius == Approx(0.19225 * 25.4e6));
}

TEST_CASE("nuts beside each other keep apart by their corners", "[model][screws][keep_apart]") {
    const auto& catalogue = tests::shipped_catalogue();
    const auto* screw = model::find_screw(catalogue, "machine screw 8-32");
    model::FastenerSpec spec{.kind = Kind::screw_through,
                             .index = static_cast<model::Index>(screw - catalogue.screws.data()),
                             .grip = 3};
    const auto shape = model::body_shape(catalogue, spec, inches_64(16), inches_64(8));
    // 11/32 in across the flats, 0.397 in across the corners.
    CHECK(shape.tail_radius == Approx(0.19846 * 25.4e6).epsilon(0.0001));
    const auto at = [&](model::Nm x) {
        return model::FastenerBody{shape, {x, 0, 0}, 2, 1, inches_64(16)};
    };
    CHECK(model::bodies_meet(at(0), at(inches_64(25))));
    CHECK_FALSE(model::bodies_meet(at(0), at(inches_64(26))));
}

TEST_CASE("each tapped hole has a line for its tap drill and one for its tap",
          "[model][screws][schedule]") {
    const auto files = tests::written_files(with_one_removable({.fastener = "machine screw 8-32"}),
                                            tests::shipped_catalogue());
    const auto& drill = files.at("drill.csv");
    CHECK_THAT(drill, Catch::Contains("#29,tap drill,machine screw 8-32"));
    CHECK_THAT(drill, Catch::Contains("tap 8-32,tap,machine screw 8-32"));
    CHECK_THAT(drill, Catch::Contains("#18,clearance,machine screw 8-32"));
}

TEST_CASE("rivet nuts are bought as parts of their own, with spares", "[model][screws][schedule]") {
    const auto files = tests::written_files(
        with_one_removable(
            {.fastener = "machine screw 6-32", .count = 1, .screw_hold = ScrewHold::rivet_nut}),
        tests::shipped_catalogue());
    CHECK_THAT(files.at("fasteners.csv"),
               Catch::Contains("\"rivet nut 6-32, grip 0.120 to 0.160 in\",0.138 in"));
}
