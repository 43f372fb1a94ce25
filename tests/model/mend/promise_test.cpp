// What a button promises happens: mends that are offered for random skeletons are made, and what
// they were offered against is looked for again.
#include "model/mend/mend.h"
#include "model/project/project_json.h"
#include "model/room/resolve_in_room.h"

#include "tests/model/project/sample_files.h"
#include "tests/support/random_project.h"
#include "tests/support/seeds.h"

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

long errors_in(const std::vector<Finding>& findings) {
    return std::ranges::count(findings, Severity::error, &Finding::severity);
}

long open_in(const std::vector<Finding>& findings) {
    return errors_in(findings) +
           std::ranges::count(findings, Severity::warning, &Finding::severity);
}

// The same complaint about the same things.
long times_in(const std::vector<Finding>& findings, const Finding& one) {
    return std::ranges::count_if(findings, [&](const Finding& other) {
        return other.code == one.code && other.concerns == one.concerns && other.what == one.what;
    });
}

// What the mend says against what is there afterwards.
void check_promise(const Project& project,
                   const std::vector<Finding>& before,
                   const std::vector<Finding>& alike,
                   const Mend& mend) {
    const auto& first = alike.front();
    CAPTURE(first.code, first.what, where_text(first), alike.size(), mend.name, mend.words);
    const auto next = mended(project, mend);
    REQUIRE(next);
    const auto after = findings_where_it_stands(next.value(), catalogue(), {});
    for (const auto& finding : alike) CHECK(times_in(after, finding) < times_in(before, finding));
    CHECK(errors_in(after) <= errors_in(before));
    CHECK(open_in(after) + static_cast<long>(alike.size()) <= open_in(before));
    CHECK_FALSE(mend.words.empty());
}

// What stands on one card of the window, in the order in which it was found; no notes.
std::vector<std::vector<Finding>> groups_in(const std::vector<Finding>& findings) {
    std::vector<std::vector<Finding>> groups;
    for (const auto& finding : findings) {
        if (finding.severity == Severity::note) continue;
        const auto at = std::ranges::find_if(groups, [&](const std::vector<Finding>& group) {
            const auto& other = group.front();
            return other.code == finding.code && other.severity == finding.severity &&
                   other.what == finding.what && other.mend == finding.mend;
        });
        if (at == groups.end()) {
            groups.push_back({finding});
        } else {
            at->push_back(finding);
        }
    }
    return groups;
}

struct Offered {
    int of_one = 0;  // mends of what stands alone
    int of_all = 0;  // and of several that say the same

    Offered& operator+=(const Offered& more) {
        of_one += more.of_one;
        of_all += more.of_all;
        return *this;
    }
};

// Looks at some of the groups of findings, and tries some ways to mend each.
Offered check_mends(const Project& project, std::size_t most_tried) {
    constexpr std::size_t most_looked_at = 4;
    const auto resolved = resolve_in_room(project, catalogue());
    const Ailing ailing{project, catalogue(), resolved};
    const auto before = findings_where_it_stands(project, catalogue(), {});
    auto groups = groups_in(before);
    if (groups.size() > most_looked_at) groups.resize(most_looked_at);
    Offered offered;
    for (const auto& alike : groups) {
        auto ways = ways_to_mend(ailing, alike);
        if (ways.size() > most_tried) ways.resize(most_tried);
        for (auto& way : ways) {
            const auto mend = way_for_all(ailing, alike, std::move(way));
            if (!mend || !is_mended_by(ailing, {}, before, alike, *mend)) continue;
            check_promise(project, before, alike, *mend);
            ++(alike.size() > 1 ? offered.of_all : offered.of_one);
        }
    }
    return offered;
}

}  // namespace

TEST_CASE("what a mend promises happens, on random skeletons", "[model][mend]") {
    const auto seeds = tests::seed_count(60);
    Offered offered;
    for (std::uint32_t seed = 0; seed < seeds; ++seed) {
        CAPTURE(seed);
        const auto random = tests::random_project(seed, catalogue());
        const auto count = resolve_in_room(random.project, catalogue()).pieces.size();
        constexpr std::size_t most_pieces = 30;  // each way that is tried resolves all of them
        if (count <= most_pieces) offered += check_mends(random.project, 8);
    }
    CHECK(offered.of_one >= static_cast<int>(seeds));  // 72 of 60 skeletons, 10 of whole groups
    CHECK(offered.of_all >= static_cast<int>(seeds) / 7);
}

TEST_CASE("a promise is broken where a finding stays or an error comes", "[model][mend]") {
    const auto finding = [](const char* code, Severity severity, const char* member) {
        return Finding{
            .code = code, .severity = severity, .concerns = {{SubjectKind::member, "box", member}}};
    };
    const auto loose = finding("loose_end", Severity::warning, "post");
    const auto note = finding("spliced", Severity::note, "post");
    const auto wrong = finding("interference", Severity::error, "rail");
    const std::vector<Finding> before{loose, loose};
    const std::vector<Finding> alike{loose};
    CHECK(keeps_promise(before, std::vector{loose}, alike));
    CHECK(keeps_promise(before, std::vector{loose, note}, alike));
    CHECK_FALSE(keeps_promise(before, before, alike));
    CHECK_FALSE(keeps_promise(before, std::vector{loose, wrong}, alike));
    CHECK_FALSE(keeps_promise(before, std::vector{loose}, before));
    CHECK(keeps_promise(before, std::vector<Finding>{}, before));
}

TEST_CASE("what a mend promises happens, on the samples that have something to mend",
          "[model][mend][samples]") {
    Offered offered;
    for (const std::string& name : model_tests::sample_names()) {
        CAPTURE(name);
        const auto project = read_project_json(model_tests::sample_text(name));
        REQUIRE(project);
        offered += check_mends(project.value(), 12);
    }
    CHECK(offered.of_all >= 2);
}
