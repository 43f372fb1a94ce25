// What must hold of every skeleton, on all samples and on seeded random frames. A failing seed is
// named; BARWRIGHT_SEEDS=FIRST-LAST runs others, BARWRIGHT_SEEDS=COUNT fewer or more.
#include "engine/files/whole_file.h"
#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/project/project_json.h"
#include "model/resolve/recipe.h"
#include "model/resolve/resolve.h"

#include "tests/support/random_project.h"
#include "tests/support/run_project.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace {

using tests::FrameShape;

const model::Catalogue& shipped() {
    static const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(catalogue);
    return *catalogue;
}

struct Seeds {
    std::uint32_t first = 1;
    std::uint32_t last = 1'000;
};

Seeds wanted_seeds() {
    const char* text = std::getenv("BARWRIGHT_SEEDS");
    if (text == nullptr) return {};
    char* end = nullptr;
    const auto number = static_cast<std::uint32_t>(std::strtoul(text, &end, 10));
    if (*end != '-') return {1, number};
    return {number, static_cast<std::uint32_t>(std::strtoul(end + 1, nullptr, 10))};
}

std::string joined(const tests::Complaints& complaints) {
    std::string text;
    constexpr std::size_t most = 12;
    for (std::size_t i = 0; i < std::min(complaints.size(), most); ++i) {
        text += "\n  " + complaints[i];
    }
    if (complaints.size() > most) {
        text += "\n  and " + std::to_string(complaints.size() - most) + " more";
    }
    return text;
}

// Members that became no piece and that no finding names.
tests::Complaints vanished_members(const model::Project& project, const model::Resolved& resolved) {
    tests::Complaints complaints;
    std::set<std::pair<model::Index, model::Index>> resolved_members;
    for (const auto& piece : resolved.pieces) resolved_members.insert({piece.frame, piece.member});
    for (model::Index f = 0; f < project.frames.size(); ++f) {
        const auto& frame = project.frames[f];
        for (model::Index m = 0; m < frame.members.size(); ++m) {
            if (resolved_members.count({f, m})) continue;
            const bool is_found =
                std::any_of(resolved.findings.begin(), resolved.findings.end(), [&](const auto& x) {
                    return std::any_of(x.concerns.begin(), x.concerns.end(), [&](const auto& s) {
                        return s.frame == frame.name && s.name == frame.members[m].name;
                    });
                });
            if (!is_found) {
                complaints.push_back(frame.name + ": " + frame.members[m].name +
                                     " became no piece and no finding says so");
            }
        }
        const auto check = [&](model::PieceKind kind, model::SubjectKind subject,
                               const auto& stated) {
            for (model::Index d = 0; d < stated.size(); ++d) {
                const auto& name = stated[d].name;
                const bool is_piece = std::ranges::any_of(resolved.pieces, [&](const auto& piece) {
                    return piece.kind == kind && piece.frame == f && piece.stated == d;
                });
                const bool is_found = std::ranges::any_of(resolved.findings, [&](const auto& x) {
                    return std::ranges::any_of(x.concerns, [&](const auto& s) {
                        return s.kind == subject && s.frame == frame.name && s.name == name;
                    });
                });
                if (is_piece || is_found) continue;
                complaints.push_back(frame.name + ": " + name +
                                     " became no piece and no finding says so");
            }
        };
        check(model::PieceKind::brace, model::SubjectKind::diagonal, frame.diagonals);
        check(model::PieceKind::leaning, model::SubjectKind::leaning, frame.leaning);
    }
    return complaints;
}

struct Tally {
    std::size_t projects = 0;
    std::size_t without_interference = 0;
    tests::SkeletonCount count;
    std::map<std::string, std::size_t> screws;   // by what holds them
    std::map<std::string, std::size_t> recipes;  // fastened joints
    std::size_t holes_in_braces = 0;
    std::size_t holes_in_leaning = 0;

    void add(const tests::Skeleton& skeleton) {
        const auto more = tests::count_of(skeleton);
        ++projects;
        count.pieces += more.pieces;
        count.fasteners += more.fasteners;
        count.ends += more.ends;
        count.fastened_ends += more.fastened_ends;
        for (const auto& fastener : skeleton.fasteners) {
            if (!fastener.hold.empty()) ++screws[fastener.hold];
        }
        for (const auto& joint : skeleton.joints) {
            if (!joint.fasteners.empty()) ++recipes[joint.recipe];
        }
        for (const auto& piece : skeleton.pieces) {
            for (const auto& plate : piece.plates) {
                if (piece.member.starts_with("brace ")) holes_in_braces += plate.holes.size();
                if (piece.member.starts_with("leaning member ")) {
                    holes_in_leaning += plate.holes.size();
                }
            }
        }
        const auto& table = skeleton.findings;
        const bool clashes = std::any_of(
            table.rows.begin(), table.rows.end(),
            [&](const auto& row) { return tests::field(table, row, "code") == "interference"; });
        without_interference += clashes ? 0U : 1U;
    }
};

std::string text_of(const Tally& tally) {
    return std::to_string(tally.projects) + " projects, " +
           std::to_string(tally.without_interference) + " without interference, " +
           std::to_string(tally.count.pieces) + " pieces, " +
           std::to_string(tally.count.fasteners) + " fasteners, " +
           std::to_string(tally.count.fastened_ends) + " of " + std::to_string(tally.count.ends) +
           " ends fastened";
}

model::Project moved_and_turned(model::Project project, int quarter_turns) {
    for (auto& frame : project.frames) {
        frame.origin = {"-123 in", "77.123456 mm", "5 ft"};
        frame.quarter_turns = quarter_turns;
    }
    return project;
}

// With every joint a staggered lap, as where nothing is said of recipes.
model::Project lapped(model::Project project) {
    project.shop.recipe.clear();
    for (auto& frame : project.frames) {
        frame.recipe.clear();
        for (auto& joint : frame.joints) joint.recipe.reset();
    }
    return project;
}

}  // namespace

TEST_CASE("the shop can make what random skeletons ask for", "[resolve][invariants]") {
    const Seeds seeds = wanted_seeds();
    std::map<FrameShape, Tally> tallies;
    std::map<std::string, std::size_t> screws;
    std::map<std::string, std::size_t> recipes;
    std::size_t holes_in_braces = 0;
    std::size_t holes_in_leaning = 0;
    for (std::uint32_t seed = seeds.first; seed <= seeds.last; ++seed) {
        const auto random = tests::random_project(seed, shipped());
        INFO("seed " << seed << ", " << tests::name_of(random.shape));
        REQUIRE_FALSE(random.project.frames.empty());
        const auto skeleton = tests::read_skeleton(tests::written_files(random.project, shipped()));
        if (!skeleton) FAIL_CHECK(to_text(skeleton.error()));
        if (!skeleton) continue;
        const auto complaints =
            tests::skeleton_complaints(*skeleton, tests::rules_of(random.project));
        INFO(joined(complaints));
        CHECK(complaints.empty());
        tallies[random.shape].add(*skeleton);
    }
    for (const auto& [shape, tally] : tallies) {
        // Printed with -s, so that a run that found nothing can be seen to have looked.
        INFO(tests::name_of(shape) << ": " << text_of(tally));
        CHECK(tally.count.pieces > 0);
        CHECK(tally.count.fasteners > 0);
        for (const auto& [hold, count] : tally.screws) screws[hold] += count;
        for (const auto& [recipe, count] : tally.recipes) recipes[recipe] += count;
        holes_in_braces += tally.holes_in_braces;
        holes_in_leaning += tally.holes_in_leaning;
    }
    for (const auto& recipe : model::recipes()) {
        const std::size_t count = recipes[std::string(recipe.name)];
        INFO(count << " fastened joints, recipe: " << recipe.name);
        CHECK(count > 0);
    }
    INFO(holes_in_braces << " holes in braces");
    CHECK(holes_in_braces > 0);
    INFO(holes_in_leaning << " holes in leaning members");
    CHECK(holes_in_leaning > 0);
    for (const char* hold : {"tapped", "nut", "rivet nut"}) {
        INFO(screws[hold] << " screws, hold: " << hold);
        CHECK(screws[hold] > 0);
    }
}

TEST_CASE("boxes of one section have no interference and are fastened at all but split ends",
          "[resolve][invariants]") {
    Tally tally;
    for (std::uint32_t seed = 1; seed <= 200; ++seed) {
        const auto random = tests::random_project(seed, shipped());
        if (random.shape != FrameShape::started_box || random.is_mixed) continue;
        INFO("seed " << seed);
        auto project = lapped(random.project);
        // Drawn ones may cross, and cabinets that lean are another matter.
        std::erase_if(project.frames,
                      [](const auto& frame) { return frame.name == "leaning frame"; });
        for (auto& frame : project.frames) {
            frame.diagonals.clear();
            frame.leaning.clear();
        }
        const auto skeleton = tests::read_skeleton(tests::written_files(project, shipped()));
        REQUIRE(skeleton);
        tally.add(*skeleton);
    }
    INFO(text_of(tally));
    CHECK(tally.projects > 10);
    CHECK(tally.without_interference == tally.projects);
    CHECK(tally.count.fastened_ends * 10 >= tally.count.ends * 8);
}

TEST_CASE("no member vanishes without a finding", "[resolve][invariants]") {
    for (std::uint32_t seed = 1; seed <= 200; ++seed) {
        const auto random = tests::random_project(seed, shipped());
        INFO("seed " << seed);
        const auto complaints =
            vanished_members(random.project, model::resolve(random.project, shipped()));
        INFO(joined(complaints));
        CHECK(complaints.empty());
    }
}

TEST_CASE("what is match-drilled follows a hole that is drilled by itself",
          "[resolve][invariants]") {
    std::size_t followers_of_three = 0;
    for (std::uint32_t seed = 1; seed <= 200; ++seed) {
        INFO("seed " << seed);
        const auto resolved =
            model::resolve(tests::random_project(seed, shipped()).project, shipped());
        for (const auto& hole : resolved.holes) {
            if (hole.mate == model::no_index || hole.fastener == model::no_index) continue;
            const bool is_of_three = resolved.fasteners[hole.fastener].stack_count == 3;
            const auto& mate = resolved.pieces[hole.mate];
            CHECK(mate.kind != model::PieceKind::shim);
            if (hole.operation != model::HoleOperation::match_drill) continue;
            followers_of_three += is_of_three ? 1U : 0U;
            for (const auto& its : resolved.holes_of(mate)) {
                if (its.fastener != hole.fastener) continue;
                CHECK(its.operation != model::HoleOperation::match_drill);
            }
        }
    }
    CHECK(followers_of_three > 0);
}

TEST_CASE("moving and turning a frame in the room changes no cut and no hole",
          "[resolve][invariants]") {
    for (std::uint32_t seed = 1; seed <= 40; ++seed) {
        auto project = tests::random_project(seed, shipped()).project;
        project.frames.resize(1);
        INFO("seed " << seed);
        const auto here = tests::written_files(project, shipped());
        for (int turns = 0; turns < 4; ++turns) {
            const auto there = tests::written_files(moved_and_turned(project, turns), shipped());
            for (const auto* name : {"cut.csv", "drill.csv", "fasteners.csv", "bars.csv"}) {
                INFO(name << ", " << turns << " quarter turns");
                CHECK((here.at(name) == there.at(name)));
            }
        }
    }
}

TEST_CASE("a random project is the same after it is written and read", "[resolve][invariants]") {
    for (std::uint32_t seed = 1; seed <= 100; ++seed) {
        const auto random = tests::random_project(seed, shipped());
        INFO("seed " << seed);
        const auto again = model::read_project_json(model::to_json_text(random.project));
        REQUIRE(again);
        CHECK((*again == random.project));
    }
}

TEST_CASE("the shop can make what the samples ask for", "[resolve][invariants][samples]") {
    namespace fs = std::filesystem;
    std::vector<fs::path> paths;
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(BARWRIGHT_SAMPLES, none)) {
        if (entry.path().extension() == ".json") paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    CHECK(paths.size() >= 5);
    for (const auto& path : paths) {
        DYNAMIC_SECTION(path.filename().string()) {
            const auto text = engine::read_whole_file(path);
            REQUIRE(text);
            const auto project = model::read_project_json(*text);
            REQUIRE(project);
            const auto files = tests::written_files(*project, shipped());
            const auto complaints = tests::skeleton_complaints(files, tests::rules_of(*project));
            INFO(joined(complaints));
            CHECK(complaints.empty());
            CHECK(vanished_members(*project, model::resolve(*project, shipped())).empty());
            CHECK_FALSE(tests::read_skeleton(files)->fasteners.empty());
        }
    }
}
