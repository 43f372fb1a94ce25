// Resolving no further than the first error.
#include "tests/model/resolve/resolve_support.h"
#include "tests/support/random_project.h"
#include "tests/support/seeds.h"

#include <algorithm>

namespace {

bool holds(const model::Resolved& resolved, const model::Finding& finding) {
    return std::ranges::find(resolved.findings, finding) != resolved.findings.end();
}

bool is_error(const model::Finding& finding) { return finding.severity == model::Severity::error; }

void check_whole(const model::Resolved& resolved, const model::Resolved& all) {
    CHECK(resolved.pieces == all.pieces);
    CHECK(resolved.holes == all.holes);
    CHECK(resolved.findings == all.findings);
}

void check_ended(const model::Resolved& resolved, const model::Resolved& all) {
    CHECK(std::ranges::any_of(resolved.findings, is_error));
    CHECK(resolved.fasteners.empty());
    REQUIRE(resolved.frames.size() == all.frames.size());
    for (std::size_t f = 0; f < all.frames.size(); ++f)
        CHECK(resolved.frames[f].planes == all.frames[f].planes);
    for (const auto& finding : resolved.findings) {
        if (is_error(finding)) CHECK(holds(all, finding));
    }
}

}  // namespace

TEST_CASE("what ends at an error tells errors that are there, what does not tells all",
          "[model][until_error]") {
    int whole = 0;
    int ended = 0;
    for (std::uint32_t seed = 1; seed <= std::max(20U, tests::seed_count(200)); ++seed) {
        INFO("seed " << seed);
        const auto project = tests::random_project(seed, tests::shipped_catalogue()).project;
        const auto all = tests::resolved(project);
        const auto attempt = model::resolve_until_error(project, tests::shipped_catalogue());
        if (attempt.is_whole) check_whole(attempt.resolved, all);
        if (!attempt.is_whole) check_ended(attempt.resolved, all);
        ++(attempt.is_whole ? whole : ended);
    }
    CHECK(whole > 0);
    CHECK(ended > 0);
}
