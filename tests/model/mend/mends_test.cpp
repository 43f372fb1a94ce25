// One small project for each kind of mend: the finding is there, the mend that a maker would make
// is offered, and it does what it says.
#include "model/mend/mend.h"
#include "model/room/resolve_in_room.h"

#include "tests/support/frame_builder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace model;

namespace {

const Catalogue& catalogue() {
    static const auto loaded = load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(engine::to_text(loaded.error()));
    return *loaded;
}

// A box of angle that has nothing wrong, with bars that can be bought.
Project box(const std::string& section = "angle 1 x 1 x 1/8") {
    return tests::box_project({}, section, "6063-T52");
}

// The findings of that code, of a project in which there must be some.
std::vector<Finding> found(const Project& project, const std::string& code) {
    auto findings = findings_where_it_stands(project, catalogue(), {});
    std::erase_if(findings, [&](const Finding& finding) { return finding.code != code; });
    CAPTURE(code);
    REQUIRE_FALSE(findings.empty());
    return findings;
}

std::vector<Mend> mends_against(const Project& project,
                                std::span<const Finding> alike,
                                std::size_t most = 6) {
    const auto before = findings_where_it_stands(project, catalogue(), {});
    const auto resolved = resolve_in_room(project, catalogue());
    return mends_of({project, catalogue(), resolved}, {}, before, alike, most);
}

std::vector<Mend> mends_for(const Project& project, const std::string& code, std::size_t most = 6) {
    const auto alike = found(project, code);
    return mends_against(project, std::span(alike).first(1), most);
}

// Of all findings of that code together, which say the same.
std::vector<Mend> mends_for_all(const Project& project, const std::string& code) {
    const auto alike = found(project, code);
    REQUIRE(alike.size() > 1);
    for (const auto& finding : alike) REQUIRE(finding.what == alike.front().what);
    return mends_against(project, alike);
}

std::string names_of(const std::vector<Mend>& mends) {
    std::string names;
    for (const auto& mend : mends) names += mend.name + "; ";
    return names;
}

const Mend& named_in(const std::vector<Mend>& mends, const std::string& name) {
    const auto at = std::ranges::find(mends, name, &Mend::name);
    CAPTURE(name, names_of(mends));
    REQUIRE(at != mends.end());
    return *at;
}

Project with(const Project& project, const Mend& mend) {
    const auto next = mended(project, mend);
    REQUIRE(next);
    return next.value();
}

// The project after the mend of that name, which must be offered.
Project after(const Project& project, const std::string& code, const std::string& name) {
    CAPTURE(code);
    const auto mends = mends_for(project, code);
    return with(project, named_in(mends, name));
}

bool has(const Project& project, const std::string& code) {
    const auto findings = findings_where_it_stands(project, catalogue(), {});
    return std::ranges::count(findings, code, &Finding::code) > 0;
}

}  // namespace

TEST_CASE("the box that the cases begin with has nothing to mend", "[model][mend]") {
    const auto findings = findings_where_it_stands(box(), catalogue(), {});
    CHECK(std::ranges::count(findings, Severity::note, &Finding::severity) ==
          static_cast<long>(findings.size()));
}

TEST_CASE("where two rivets have no room, something else is offered", "[model][mend]") {
    const auto project = box("angle 3/4 x 3/4 x 1/8");
    const auto mends = mends_for(project, "too_few_fasteners");
    CAPTURE(names_of(mends));
    REQUIRE_FALSE(mends.empty());
    const auto next = mended(project, mends.front());
    REQUIRE(next);
    CHECK_FALSE(next.value() == project);
}

TEST_CASE("where a rivet suits no joint one is offered for the whole project", "[model][mend]") {
    const auto project = box("angle 3/4 x 3/4 x 1/8");
    const auto next = after(project, "too_few_fasteners", "fastener everywhere blind rivet 3/32");
    CHECK(next.shop.fastener == "blind rivet 3/32");
    CHECK(next.frames[0].joints.empty());
    CHECK(found(next, "too_few_fasteners").size() < found(project, "too_few_fasteners").size() / 2);
    // Two of these rivets fit in every lap, as long as their marks lie near enough to each other.
    const auto finer = after(next, "too_few_fasteners", "finer marks");
    CHECK_FALSE(has(finer, "too_few_fasteners"));
    // The tape that is shown reads what is laid so.
    CHECK(finer.shop.graduation == "1/64 in");
    CHECK(engine::tape_step(next.shown).inches() == 1.0 / 32);
    CHECK(engine::tape_step(finer.shown).inches() == 1.0 / 64);
    for (const auto form : {engine::TapeForm::inch_fraction, engine::TapeForm::feet_inches}) {
        auto coarse = next;
        coarse.shown = {.form = form, .denominator = 8};
        coarse.shop.graduation = "1/32 in";
        const auto mended = after(coarse, "too_few_fasteners", "finer marks");
        CHECK(mended.shown.form == form);
        CHECK(engine::tape_step(mended.shown).inches() == 1.0 / 64);
    }
    CHECK(mends_for(project, "too_few_fasteners").front().name ==
          "fastener everywhere blind rivet 3/32");
}

TEST_CASE("an unknown fastener gives way to the rule", "[model][mend]") {
    auto project = box();
    project.shop.fastener = "bent nail";
    CHECK(after(project, "unknown_fastener", "usual fastener").shop.fastener.empty());
}

TEST_CASE("a joint's own rivet that its bars have outgrown gives way to the rule",
          "[model][mend]") {
    auto project = box("angle 2 x 2 x 1/4");
    REQUIRE_FALSE(has(project, "no_grip"));
    const auto resolved = resolve_in_room(project, catalogue());
    const auto& joint = resolved.joints.front();
    const auto member_of = [&](Index piece) {
        return project.frames[0].members[resolved.pieces[piece].member].name;
    };
    project.frames[0].joints.push_back(
        {.members = {member_of(joint.pieces[0]), member_of(joint.pieces[1])},
         .fastener = "blind rivet 3/32"});
    const auto mended = after(project, "no_grip", "usual fastener");
    CHECK_FALSE(has(mended, "no_grip"));
}

TEST_CASE("a setting that cannot be worked with is set to the usual one", "[model][mend]") {
    auto project = box();
    project.shop.edge_distance = 0.5;
    CHECK(after(project, "bad_setting", "usual setting").shop.edge_distance == 2.0);
    project = box();
    project.shop.kerf = "-1 in";
    CHECK(after(project, "bad_setting", "usual setting").shop.kerf == Shop{}.kerf);
    project.shop.kerf = "a hair";
    CHECK(after(project, "formula_error", "usual setting").shop.kerf == Shop{}.kerf);
}

TEST_CASE("a dimension beyond its limit goes to the limit, or loses it", "[model][mend]") {
    auto project = box();
    project.dimensions.push_back({.name = "reach", .formula = "20 in", .most = "18 in"});
    const auto at_limit = after(project, "outside_limits", "to limit");
    CHECK(at_limit.dimensions[0].formula == "18 in");
    CHECK_FALSE(after(project, "outside_limits", "no limit").dimensions[0].most);
}

TEST_CASE("a name that no formula can use is made one that it can", "[model][mend]") {
    auto project = box();
    project.dimensions.push_back({.name = "2nd + last", .formula = "20 in"});
    const auto next = after(project, "bad_name", "rename");
    CHECK(engine::is_name(next.dimensions[0].name));
}

TEST_CASE("of two things with one name the first is called otherwise and all follows it",
          "[model][mend]") {
    auto project = box();
    project.dimensions.push_back({.name = "reach", .formula = "20 in"});
    project.dimensions.push_back({.name = "reach", .formula = "10 in"});
    project.dimensions.push_back({.name = "half", .formula = "reach / 2"});
    const auto next = after(project, "duplicate_name", "rename");
    CHECK(next.dimensions[0].name == "reach 2");
    CHECK(next.dimensions[2].formula == "reach 2 / 2");
}

TEST_CASE("an entry for a joint that is not there is taken out", "[model][mend]") {
    auto project = box();
    const auto& members = project.frames[0].members;
    project.frames[0].joints.push_back(
        {.members = {members[0].name, members[0].name + " of old"}, .count = 1});
    CHECK(after(project, "no_such_joint", "no entry").frames[0].joints.empty());
}

TEST_CASE("a joint that asks for what no recipe is called is joined as the rest", "[model][mend]") {
    auto project = box();
    project.frames[0].recipe = "glue";
    CHECK(after(project, "unknown_recipe", "usual recipe").frames[0].recipe.empty());
    project = box();
    project.shop.recipe = "glue";
    CHECK(after(project, "unknown_recipe", "usual recipe").shop.recipe.empty());
}

TEST_CASE("a member of unknown stock is made of what there is", "[model][mend]") {
    auto project = box();
    project.frames[0].members[0].stock = "brass";
    CHECK(after(project, "unknown_stock", "stock main").frames[0].members[0].stock == "main");
}

TEST_CASE("a misspelt section is the one that it resembles", "[model][mend]") {
    auto project = box();
    project.stock[0].section = "angle 1 x 1 x 1/9";
    CHECK(mends_for(project, "unknown_section").front().words.find("Take angle 1 x 1 x") == 0);
}

TEST_CASE("an unknown alloy is the usual one of the section", "[model][mend]") {
    auto project = box();
    project.stock[0].alloy = "tin";
    const auto next = mends_for(project, "unknown_alloy");
    REQUIRE(next.size() == 1);
    CHECK(next[0].words.find("usual for") != std::string::npos);
}

TEST_CASE("a member on a plane that is not there goes to one that is", "[model][mend]") {
    auto project = box();
    auto& member = project.frames[0].members[0];
    const auto plane = member.from;
    member.from = plane + " of old";
    CHECK(after(project, "unknown_plane", "plane " + plane).frames[0].members[0].from == plane);
}

TEST_CASE("of two members in one place the second is taken out", "[model][mend]") {
    auto project = box();
    auto twin = project.frames[0].members[0];
    twin.name = "twin";
    project.frames[0].members.push_back(twin);
    const auto mends = mends_for(project, "same_place");
    REQUIRE_FALSE(mends.empty());
    CHECK(mends.front().name == "take out twin");
}

TEST_CASE("pieces that no bar holds lead to longer bars, and to more of them", "[model][mend]") {
    auto project = box();
    project.stock[0].bars = {{.length = "5 in"}};
    CHECK(after(project, "no_bar_long_enough", "bar 16 ft").stock[0].bars.size() == 2);
    project.stock[0].bars.clear();
    CHECK(after(project, "no_bars_offered", "bar 16 ft").stock[0].bars.size() == 1);
    project.stock[0].bars = {{.length = "4 ft", .limit = 1}};
    CHECK_FALSE(after(project, "not_enough_bars", "no limit 1").stock[0].bars[0].limit);
    project = box();
    project.stock[0].bars.push_back({.length = "long"});
    CHECK(after(project, "bar_length_refused", "no bar 2").stock[0].bars.size() == 1);
}

TEST_CASE("a frame too near to an obstacle is moved by what is missing, or less is asked",
          "[model][mend]") {
    auto project = box();
    project.room.push_back(
        {.name = "chest",
         .shape = BoxObstacle{{"36 1/8 in", "0", "0"}, {"40 in", "18 in", "9 in"}}});
    const auto moved = after(project, "clearance", "move -x " + project.frames[0].name);
    CHECK_FALSE(has(moved, "clearance"));
    CHECK(moved.frames[0].origin[0].front() == '-');
    const auto less = after(project, "clearance", "less clearance");
    CHECK(less.room[0].clearance != project.room[0].clearance);
}

TEST_CASE("a frame within an obstacle is moved out of it and clear of it", "[model][mend]") {
    auto project = box();
    project.room.push_back(
        {.name = "chest",
         .shape = BoxObstacle{{"35 in", "-9 in", "0"}, {"40 in", "27 in", "9 in"}}});
    const auto moved = after(project, "inside_obstacle", "move -x " + project.frames[0].name);
    CHECK_FALSE(has(moved, "clearance"));
}

TEST_CASE("a load of an unknown bay may be taken out", "[model][mend]") {
    auto project = box();
    auto& frame = project.frames[0];
    frame.loads.push_back({.name = "pump", .mass_kg = 4.0, .where = std::string("old bay")});
    const auto mends = mends_for(project, "unknown_bay");
    REQUIRE_FALSE(mends.empty());
    CHECK(mends.back().name == "take out pump");
}

TEST_CASE("a loose end is joined to what stands near it", "[model][mend]") {
    const auto project = box();
    const auto& members = project.frames[0].members;
    const auto first = std::ranges::find(members, Axis::x, &Member::run);
    REQUIRE(first != members.end());
    int loose = 0;
    for (std::size_t k = 0; k < 2; ++k) {
        auto probe = project;
        auto& leg =
            probe.frames[0].members[static_cast<std::size_t>(first - members.begin())].legs[k];
        leg = leg == Sense::plus ? Sense::minus : Sense::plus;
        if (!has(probe, "loose_end")) continue;
        ++loose;
        const auto mends = mends_for(probe, "loose_end");
        CAPTURE(names_of(mends));
        CHECK_FALSE(mends.empty());
    }
    REQUIRE(loose > 0);
}

TEST_CASE("a joint that cannot be made is made by another recipe", "[model][mend]") {
    auto project = box();
    const auto resolved = resolve_in_room(project, catalogue());
    const auto& joint = resolved.joints.front();
    auto& frame = project.frames[0];
    frame.joints.push_back(
        {.members = {frame.members[resolved.pieces[joint.pieces[0]].member].name,
                     frame.members[resolved.pieces[joint.pieces[1]].member].name},
         .recipe = "strap"});
    const auto mends = mends_for(project, "recipe_not_here");
    CAPTURE(names_of(mends));
    REQUIRE_FALSE(mends.empty());
    CHECK(mends.front().name.find("recipe ") == 0);
}

TEST_CASE("findings that say the same are mended together", "[model][mend]") {
    auto project = box();
    project.frames[0].members[0].stock = "brass";
    project.frames[0].members[1].stock = "brass";
    const auto mends = mends_for_all(project, "unknown_stock");
    REQUIRE_FALSE(mends.empty());
    CHECK(mends[0].edits.size() == 2);
    CHECK(mends[0].words.find("likewise") == std::string::npos);
    CHECK_FALSE(has(with(project, mends[0]), "unknown_stock"));
}

// Of more bars than are changed one by one together.
Project tall_box() {
    tests::BoxShape shape;
    for (int shelf = 1; shelf <= 9; ++shelf) shape.shelves.push_back(tests::inches(3 * shelf));
    return tests::box_project(shape, "angle 1 x 1 x 1/8", "6063-T52");
}

TEST_CASE("a drill that all joints lack is got once, however many they are", "[model][mend]") {
    auto project = tall_box();
    project.shop.drills = {"#1"};
    REQUIRE(found(project, "no_drill").size() > most_mended_together);
    const auto mends = mends_for_all(project, "no_drill");
    CAPTURE(names_of(mends));
    REQUIRE_FALSE(mends.empty());
    CHECK(mends.front().name == "drill #30");
    const auto next = with(project, mends.front());
    CHECK(next.shop.drills == std::vector<std::string>{"#1", "#30"});
    CHECK_FALSE(has(next, "no_drill"));
}

TEST_CASE("no button makes more changes than can be looked over", "[model][mend]") {
    auto project = tall_box();
    auto& members = project.frames[0].members;
    REQUIRE(members.size() > most_mended_together);
    for (auto& member : members) member.stock = "brass";
    CHECK(mends_for_all(project, "unknown_stock").empty());
    for (std::size_t i = most_mended_together; i < members.size(); ++i) members[i].stock = "main";
    const auto mends = mends_for_all(project, "unknown_stock");
    REQUIRE_FALSE(mends.empty());
    CHECK(mends.front().edits.size() == most_mended_together);
}

TEST_CASE("a frame too near to two things alike moves once, as far as the button says",
          "[model][mend]") {
    auto project = box();
    for (const char* end : {"9 in", "8 in"}) {
        project.room.push_back(
            {.name = std::string("chest of ") + end,
             .shape = BoxObstacle{{"36 1/8 in", "0", "0"}, {"40 in", "18 in", end}}});
    }
    const auto name = "move -x " + project.frames[0].name;
    const auto mends = mends_for_all(project, "clearance");
    const auto& move = named_in(mends, name);
    CHECK(move.edits.size() == 1);
    const auto for_one = after(project, "clearance", name);
    CHECK(with(project, move).frames[0].origin == for_one.frames[0].origin);
}

TEST_CASE("of very many things alike a way that must be tried against each is none for all",
          "[model][mend]") {
    const auto has_way_for = [](std::size_t count) {
        auto project = box();
        for (std::size_t i = 0; i < count; ++i) {
            project.room.push_back(
                {.name = "chest " + std::to_string(i),
                 .shape = BoxObstacle{{"36 1/8 in", "0", "0"}, {"40 in", "18 in", "9 in"}}});
        }
        const auto resolved = resolve_in_room(project, catalogue());
        const Ailing ailing{project, catalogue(), resolved};
        const auto alike = found(project, "clearance");
        REQUIRE(alike.size() == count);
        const auto ways = ways_to_mend(ailing, alike);
        const auto& move = named_in(ways, "move -x " + project.frames[0].name);
        return way_for_all(ailing, alike, move).has_value();
    };
    CHECK(has_way_for(most_mended_together));
    CHECK_FALSE(has_way_for(most_mended_together + 1));
}

TEST_CASE("a button that does more than its words say so", "[model][mend]") {
    auto project = box();
    project.dimensions.push_back({.name = "reach", .formula = "20 in", .most = "18 in"});
    project.dimensions.push_back({.name = "rise", .formula = "20 in", .most = "18 in"});
    const auto mends = mends_for_all(project, "outside_limits");
    const auto& to_limit = named_in(mends, "to limit");
    CHECK(to_limit.words == "Set reach to 18 in; likewise at the others");
    const auto next = with(project, to_limit);
    CHECK(next.dimensions[0].formula == "18 in");
    CHECK(next.dimensions[1].formula == "18 in");
}

TEST_CASE("of three things with one name two are called otherwise by one button", "[model][mend]") {
    auto project = box();
    for (const char* value : {"20 in", "10 in", "5 in"})
        project.dimensions.push_back({.name = "reach", .formula = value});
    const auto mends = mends_for_all(project, "duplicate_name");
    const auto next = with(project, named_in(mends, "rename"));
    CHECK(next.dimensions[0].name == "reach 2");
    CHECK(next.dimensions[1].name == "reach 3");
    CHECK(next.dimensions[2].name == "reach");
}

TEST_CASE("a way that one of the findings has not is no way for all", "[model][mend]") {
    auto project = box();
    auto& members = project.frames[0].members;
    for (const char* twin : {"twin", "second twin"}) {
        auto copy = members[0];
        copy.name = twin;
        members.push_back(copy);
    }
    const auto resolved = resolve_in_room(project, catalogue());
    const Ailing ailing{project, catalogue(), resolved};
    const auto alike = found(project, "same_place");
    REQUIRE(alike.size() > 1);
    const auto ways = ways_to_mend(ailing, alike);
    REQUIRE_FALSE(ways.empty());
    CHECK(ways.front().name == "take out twin");
    CHECK_FALSE(way_for_all(ailing, alike, ways.front()));
}

TEST_CASE("no mend is offered where only the maker knows", "[model][mend]") {
    auto project = box();
    project.room.push_back(
        {.name = "nothing", .shape = BoxObstacle{{"0", "0", "0"}, {"0", "0", "0"}}});
    CHECK(mends_for(project, "bad_obstacle").empty());
    CHECK_FALSE(why_no_way("bad_obstacle").empty());
}
