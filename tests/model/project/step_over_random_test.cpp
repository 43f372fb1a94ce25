// Random frames stepped over random obstacles: what remains can be built, keeps clear of the
// obstacle, and follows it when it moves.
#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/resolve/resolve.h"
#include "model/room/fit_step.h"
#include "model/room/resolve_in_room.h"

#include "tests/support/dice.h"
#include "tests/support/frame_builder.h"
#include "tests/support/run_project.h"
#include "tests/support/step_over_cases.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

using namespace model;
using tests::Dice;

namespace {

const Catalogue& catalogue() {
    static const auto loaded = load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(engine::to_text(loaded.error()));
    return *loaded;
}

std::map<std::string, int> count_findings(const Resolved& resolved) {
    std::map<std::string, int> count;
    for (const auto& finding : resolved.findings) {
        if (finding.severity == Severity::error) ++count["error " + finding.code];
        ++count[finding.code];
    }
    return count;
}

// What may not be said of the frame that was not said of it before.
std::string new_faults(const Resolved& before, const Resolved& after) {
    const auto then = count_findings(before);
    std::string text;
    for (const auto& [code, count] : count_findings(after)) {
        const bool matters = code.starts_with("error ") || code == "loose_end" ||
                             code == "rank_loop" || code == "mitre_gapes" ||
                             code == "no_such_joint";
        const auto was = then.find(code);
        if (matters && count > (was == then.end() ? 0 : was->second)) text += code + "\n";
    }
    if (text.empty()) return text;
    for (const auto& finding : after.findings) {
        if (finding.severity == Severity::note) continue;
        text += finding.code + " " + where_text(finding) + ": " + finding.what + "\n";
    }
    return text;
}

// Everything that is said of the obstacle: pieces, heads and tails in it or nearer than is wanted.
std::string too_near(const Project& project, const Resolved& resolved) {
    std::string text;
    for (const auto& finding : resolved.findings) {
        const bool is_of_obstacle = std::ranges::any_of(finding.concerns, [&](const Subject& it) {
            return it.kind == SubjectKind::obstacle && it.name == project.room.front().name;
        });
        if (is_of_obstacle) text += finding.code + ": " + finding.what + "\n";
    }
    return text;
}

// The first piece that reaches into the box, which is given in the room.
std::string piece_inside(const Project& project, const Resolved& resolved, const engine::Box& box) {
    for (const auto& piece : resolved.pieces) {
        for (const auto& plate : piece.walls()) {
            const auto& frame = resolved.frames[piece.frame];
            const auto p = to_room(frame, plate.box.lo);
            const auto q = to_room(frame, plate.box.hi);
            if (!engine::overlaps(engine::hull({p, p}, {q, q}), box)) continue;
            return piece.member == no_index
                       ? "a part"
                       : project.frames[piece.frame].members[piece.member].name;
        }
    }
    return {};
}

// The obstacle's least box and its clearance, in the room.
engine::Box kept_free(const tests::StepOverCase& it, const Project& project) {
    engine::Box box = tests::box_of_obstacle(project, project.room.front());
    for (std::size_t k = 0; k < 3; ++k) {
        box.lo[k] -= it.clearance;
        box.hi[k] += it.clearance;
    }
    return box;
}

}  // namespace

TEST_CASE("a random frame stepped over a random obstacle can be built and follows it",
          "[model][edit][step_over]") {
    const auto seed = GENERATE(range(0U, 300U));
    CAPTURE(seed);
    const auto it = tests::step_over_case(seed);
    CAPTURE(it.words);
    const Project copy = it.project;
    const auto stepped = apply(it.project, fitted_step(it.project, catalogue(), it.edit));
    REQUIRE(it.project == copy);
    if (!stepped) FAIL(to_text(stepped.error()));

    const Resolved before = resolve(it.project, catalogue());
    const Resolved after = resolve_in_room(*stepped, catalogue());
    CHECK(new_faults(before, after) == "");
    CHECK(too_near(*stepped, after) == "");
    CHECK(piece_inside(*stepped, after, kept_free(it, *stepped)) == "");
    CHECK(kept_free(it, *stepped) == kept_free(it, it.project));

    if (seed % 10 == 0) {  // every hole, rivet and mark, from the files alone
        const auto files = tests::written_files(*stepped, catalogue());
        CHECK(tests::skeleton_complaints(files, tests::rules_of(*stepped)) == tests::Complaints{});
    }

    const Project moved = tests::with_obstacle_moved(it, *stepped, seed);
    CHECK(kept_free(it, moved) != kept_free(it, *stepped));
    const Resolved then = resolve_in_room(moved, catalogue());
    CHECK(new_faults(before, then) == "");
    CHECK(too_near(moved, then) == "");
    CHECK(piece_inside(moved, then, kept_free(it, moved)) == "");
    CHECK(then.pieces.size() == after.pieces.size());
}
