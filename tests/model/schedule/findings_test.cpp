#include "model/schedule/findings.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

using namespace engine::literals;

namespace {

std::vector<std::string> codes_of(const tests::SmallJob& job) {
    std::vector<std::string> codes;
    for (const auto& finding : model::bar_findings(job.project, job.catalogue, job.resolved)) {
        codes.push_back(finding.code);
    }
    return codes;
}

}  // namespace

TEST_CASE("bars that hold every piece are not worth a word", "[model][schedule][finding]") {
    CHECK(codes_of(tests::small_job()).empty());
}

TEST_CASE("a piece longer than any bar is an error that names its member and the room there is",
          "[model][schedule][finding]") {
    auto job = tests::small_job();
    job.project.stock[0].bars = {{.length = "18 in"}};
    const auto findings = model::bar_findings(job.project, job.catalogue, job.resolved);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].code == "no_bar_long_enough");
    CHECK(findings[0].severity == model::Severity::error);
    CHECK(model::where_text(findings[0]) == "stock angle, gate: member rail");
    CHECK(findings[0].numbers[1].value == std::variant<engine::Length, double>{17_in});
}

TEST_CASE("a stock without bars is told once, as a warning", "[model][schedule][finding]") {
    auto job = tests::small_job();
    job.project.stock[1].bars.clear();
    const auto findings = model::bar_findings(job.project, job.catalogue, job.resolved);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].code == "no_bars_offered");
    CHECK(findings[0].severity == model::Severity::warning);
}

TEST_CASE("bars that run out are an error", "[model][schedule][finding]") {
    auto job = tests::small_job();
    job.project.stock[1].bars = {{.length = "10 in", .limit = 1}};
    CHECK(codes_of(job) == std::vector<std::string>{"not_enough_bars"});
}

TEST_CASE("a bar whose length cannot be used is told, and the others still serve",
          "[model][schedule][finding]") {
    for (const auto* length : {"no such name", "0", "-4 ft", "30 deg", ""}) {
        auto job = tests::small_job();
        job.project.stock[1].bars.push_back({.length = length});
        CAPTURE(length);
        CHECK(codes_of(job) == std::vector<std::string>{"bar_length_refused"});
    }
}

TEST_CASE("errors stand before warnings", "[model][schedule][finding]") {
    auto job = tests::small_job();
    job.project.stock[0].bars = {{.length = "18 in"}};
    const auto findings = model::all_findings(job.project, job.catalogue, job.resolved);
    REQUIRE(findings.size() == 2);
    CHECK(findings[0].code == "no_bar_long_enough");
    CHECK(findings[1].code == "loose_end");
}

TEST_CASE("a member without length is told by the dimensions that it follows from",
          "[model][schedule][finding]") {
    auto job = tests::small_job();
    auto& frame = job.project.frames[0];
    auto& member = frame.members[0];
    frame.planes = {{"end", model::Axis::x, "reach / 2"}};
    member.to = "end";
    job.resolved.findings = {{.code = "no_length",
                              .concerns = {{model::SubjectKind::member, frame.name, member.name}},
                              .what = "nothing is left of it"}};
    const auto findings = model::all_findings(job.project, job.catalogue, job.resolved);
    CHECK(findings.front().what == "nothing is left of it; that follows from reach");
}
