// The samples are what a newcomer opens first: they must read, resolve and say that they are
// invented.
#include "engine/files/whole_file.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project_json.h"
#include "model/resolve/resolve.h"

#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Matchers::Contains;
using namespace model;

namespace {

const Catalogue& catalogue() {
    static const auto loaded = load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(engine::to_text(loaded.error()));
    return *loaded;
}

std::string faults(const Resolved& resolved, Severity from) {
    std::string text;
    for (const Finding& finding : resolved.findings) {
        if (finding.severity < from) continue;
        text += finding.code + ": " + where_text(finding) + ": " + finding.what + "\n";
    }
    return text;
}

Resolved resolved_sample(const std::string& name) {
    const auto project = read_project_json(model_tests::sample_text(name));
    if (!project) FAIL(engine::to_text(project.error()));
    return resolve(*project, catalogue());
}

}  // namespace

TEST_CASE("there are at least five samples", "[model][samples]") {
    CHECK(model_tests::sample_names().size() >= 5);
}

TEST_CASE("every sample is written again exactly as it stands", "[model][samples]") {
    for (const std::string& name : model_tests::sample_names()) {
        CAPTURE(name);
        const std::string text = model_tests::sample_text(name);
        const auto project = read_project_json(text);
        if (!project) FAIL(engine::to_text(project.error()));
        CHECK(to_json_text(*project) == text);
    }
}

TEST_CASE("every sample says that it is invented", "[model][samples]") {
    for (const std::string& name : model_tests::sample_names()) {
        CAPTURE(name);
        const auto project = read_project_json(model_tests::sample_text(name));
        REQUIRE(project);
        CHECK_THAT(project->note, Contains("Invented"));
    }
}

TEST_CASE("no sample has an error, and none but the parts box a warning", "[model][samples]") {
    for (const std::string& name : model_tests::sample_names()) {
        CAPTURE(name);
        const auto from = name == "parts_box.json" ? Severity::error : Severity::warning;
        CHECK(faults(resolved_sample(name), from).empty());
    }
}

// 3/4 in legs take two 3/32 in rivets in 24 laps of such a box and one in 12: the sample that shows
// how the program says so.
TEST_CASE("the parts box shows where narrow legs hold one rivet of two", "[model][samples]") {
    const Resolved it = resolved_sample("parts_box.json");
    CHECK(std::count_if(it.findings.begin(), it.findings.end(), [](const Finding& finding) {
              return finding.code == "too_few_fasteners";
          }) == 12);
    CHECK(it.fasteners.size() == 60U);
}

TEST_CASE("the mixed bench shows shims", "[model][samples]") {
    const Resolved it = resolved_sample("mixed_bench.json");
    CHECK(std::any_of(it.pieces.begin(), it.pieces.end(),
                      [](const Piece& piece) { return piece.kind == PieceKind::shim; }));
}
