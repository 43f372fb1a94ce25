#include "model/room/as_built.h"

#include "model/resolve/resolve.h"
#include "model/room/resolve_in_room.h"

#include "tests/model/room/room_projects.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace {

using namespace model;
using room_tests::cabinet;
using room_tests::catalogue;

// 36 in wide, 30 in high, 18 in deep.
OpeningFit fit(const MeasuredOpening& opening) {
    const auto project = cabinet({"0", "0", "0"});
    const auto found = opening_fit(project, resolve(project, catalogue()), 0, opening);
    REQUIRE(found.has_value());
    return *found;
}

std::optional<Finding> finding(const MeasuredOpening& opening, std::string_view code) {
    auto project = cabinet({"0", "0", "0"});
    project.frames[0].openings.push_back(opening);
    const auto resolved = resolve_in_room(project, catalogue());
    const auto at = std::ranges::find(resolved.findings, code, &Finding::code);
    if (at == resolved.findings.end()) return std::nullopt;
    return *at;
}

const MeasuredOpening straight{.name = "niche",
                               .height = "30 in",
                               .widths = {"37 in", "37 in", "37 in"},
                               .diagonals = {"", ""},
                               .plumb = {"0", "0"}};

constexpr Nm inch = engine::Length::nm_per_inch;

}  // namespace

TEST_CASE("in a square opening the slack is the same all over", "[model][room]") {
    const auto found = fit(straight);
    CHECK(found.frame_width == 36 * inch);
    CHECK(found.frame_height == 30 * inch);
    CHECK(found.slack == inch);
    CHECK_FALSE(found.binds);
    for (const auto& side : found.gaps) {
        for (const Nm gap : side) CHECK(gap == inch / 2);
    }
    CHECK(found.taper(OpeningSide::left) == 0);
    CHECK(std::abs(found.closing[0].mm) < 1e-9);
}

// A parallelogram: all widths are wide enough, and still a plumb frame does not go in.
TEST_CASE("an opening whose sides lean the same way binds though every width is enough",
          "[model][room]") {
    auto opening = straight;
    opening.plumb = {"1 1/4 in", "-1 1/4 in"};
    const auto found = fit(opening);
    CHECK(found.binds);
    CHECK(found.slack == -inch / 4);
    CHECK(found.tightest[0] == OpeningLevel::top);
    CHECK(found.tightest[1] == OpeningLevel::bottom);
    const auto told = finding(opening, "opening_binds");
    REQUIRE(told.has_value());
    CHECK(told->severity == Severity::error);
    CHECK(told->what.find("1/4 in too little") != std::string::npos);
}

TEST_CASE("an opening that narrows upward asks for shims at the bottom", "[model][room]") {
    auto opening = straight;
    opening.plumb = {"1/4 in", "1/4 in"};
    opening.widths = {"37 in", "36 3/4 in", "36 1/2 in"};
    const auto found = fit(opening);
    CHECK(found.slack == inch / 2);
    CHECK(found.gaps[0][0] == inch / 2);
    CHECK(found.gaps[0][1] == inch * 3 / 8);
    CHECK(found.gaps[0][2] == inch / 4);
    CHECK(found.taper(OpeningSide::left) == inch / 4);
    const auto told = finding(opening, "opening_tapers");
    REQUIRE(told.has_value());
    CHECK(told->severity == Severity::note);
    CHECK(told->what.find("left 1/2 in at the bottom, 3/8 in half-way up, 1/4 in at the top") !=
          std::string::npos);
}

TEST_CASE("sides that bow in half-way up are where the frame binds", "[model][room]") {
    auto opening = straight;
    opening.widths = {"36 1/4 in", "35 7/8 in", "36 1/4 in"};
    const auto found = fit(opening);
    CHECK(found.binds);
    CHECK(found.slack == -inch / 8);
    CHECK(found.tightest[0] == OpeningLevel::middle);
    CHECK(found.tightest[1] == OpeningLevel::middle);
}

// The bow's highest place is half-way up the opening, which is above the middle of a low frame.
TEST_CASE("sides bow in furthest half-way up the opening, also beside a low frame",
          "[model][room]") {
    auto opening = straight;
    opening.height = "40 in";
    opening.widths = {"36 1/4 in", "35 7/8 in", "36 1/4 in"};
    const auto found = fit(opening);
    CHECK(found.slack == -inch / 8);
    CHECK(found.heights == std::array<Nm, 3>{0, 20 * inch, 30 * inch});
    CHECK(found.tightest[0] == OpeningLevel::middle);
    const auto told = finding(opening, "opening_binds");
    REQUIRE(told.has_value());
    CHECK(told->what.find("20 in above the bottom") != std::string::npos);
    opening.height = "64 in";  // the frame does not reach up to the middle: 30/32 of the bow
    CHECK(fit(opening).heights == std::array<Nm, 3>{0, 15 * inch, 30 * inch});
    CHECK(fit(opening).tightest[0] == OpeningLevel::top);
    CHECK(fit(opening).slack == inch / 4 - inch * 3 / 8 * 30 / 32);
}

TEST_CASE("a frame that stands higher than the opening was measured is told", "[model][room]") {
    auto opening = straight;
    CHECK_FALSE(finding(opening, "opening_too_low").has_value());
    opening.height = "29 1/2 in";
    const auto told = finding(opening, "opening_too_low");
    REQUIRE(told.has_value());
    CHECK(told->severity == Severity::warning);
    CHECK(told->what.find("1/2 in higher") != std::string::npos);
}

TEST_CASE("an opening that has no size is told", "[model][room]") {
    const auto what = [](const MeasuredOpening& opening) {
        const auto told = finding(opening, "bad_opening");
        return told ? told->what : std::string();
    };
    CHECK(what(straight).empty());
    auto opening = straight;
    opening.height = "0";
    CHECK(what(opening).find("height") != std::string::npos);
    opening = straight;
    opening.widths[1] = "-1";
    CHECK(what(opening).find("width") != std::string::npos);
    opening = straight;
    opening.through = Axis::z;
    CHECK(what(opening).find("along Z") != std::string::npos);
    opening.height = "nothing";  // which has a finding of its own
    CHECK(what(opening).empty());
}

TEST_CASE("measures that disagree are told, those within 1/8 in are not", "[model][room]") {
    auto opening = straight;
    opening.widths[2] = "37 1/8 in";
    CHECK_FALSE(finding(opening, "opening_open_error").has_value());
    opening.widths[2] = "37 3/8 in";
    const auto width = finding(opening, "opening_open_error");
    REQUIRE(width.has_value());
    CHECK(width->what.find("width at the top") != std::string::npos);
    CHECK(width->what.find("3/8 in") != std::string::npos);
    // The diagonals of 37 by 30 in, by the theorem of Pythagoras: 47.634 in.
    opening = straight;
    opening.diagonals = {"47 5/8 in", "47 5/8 in"};
    CHECK_FALSE(finding(opening, "opening_open_error").has_value());
    opening.diagonals = {"48 in", "47 1/4 in"};
    CHECK(finding(opening, "opening_open_error").has_value());
}

TEST_CASE("an opening without plumb lines is told, and its sides are taken to lean alike",
          "[model][room]") {
    auto opening = straight;
    CHECK_FALSE(finding(opening, "opening_not_plumbed").has_value());
    opening.plumb = {"", ""};
    opening.widths = {"37 in", "36 3/4 in", "36 1/2 in"};
    const auto found = fit(opening);
    CHECK(found.lean_from == std::array{LeanFrom::half_widths, LeanFrom::half_widths});
    CHECK(found.slack == inch / 2);
    CHECK(found.gaps[0] == found.gaps[1]);
    CHECK(found.gaps[0][0] - found.gaps[0][2] == inch / 4);
    CHECK(found.closing.empty());
    const auto told = finding(opening, "opening_not_plumbed");
    REQUIRE(told.has_value());
    CHECK(told->severity == Severity::warning);
}

TEST_CASE("one plumb line leaves the other side to the widths", "[model][room]") {
    auto opening = straight;
    opening.plumb = {"", "-1 1/4 in"};
    const auto found = fit(opening);
    CHECK(found.lean_from == std::array{LeanFrom::widths, LeanFrom::plumb_line});
    CHECK(found.slack == -inch / 4);
    CHECK(found.binds);
    CHECK_FALSE(finding(opening, "opening_not_plumbed").has_value());
}

// The parallelogram again: its diagonals by the theorem of Pythagoras, over 37 - 1.25 in and
// 37 + 1.25 in by 30 in: 46.67 in and 48.61 in.
TEST_CASE("diagonals tell how the sides lean where no plumb line was held", "[model][room]") {
    auto opening = straight;
    opening.plumb = {"", ""};
    opening.diagonals = {"48.6113413 in", "46.6697172 in"};
    const auto both = fit(opening);
    CHECK(both.lean_from == std::array{LeanFrom::diagonal, LeanFrom::diagonal});
    CHECK(std::abs(both.slack + inch / 4) < inch / 1000);
    opening.diagonals[1] = "";
    const auto one = fit(opening);
    CHECK(one.lean_from == std::array{LeanFrom::widths, LeanFrom::diagonal});
    CHECK(std::abs(one.slack + inch / 4) < inch / 1000);
    CHECK_FALSE(finding(opening, "opening_not_plumbed").has_value());
}

TEST_CASE("a diagonal that no side can lean by is told instead of believed", "[model][room]") {
    auto opening = straight;
    opening.plumb = {"", ""};
    // Shorter than the opening is high, and 57 5/8 typed for the 47 5/8 of 37 by 30 in.
    for (const char* typed : {"20 in", "57 5/8 in"}) {
        INFO(typed);
        opening.diagonals = {typed, ""};
        CHECK(fit(opening).lean_from[1] == LeanFrom::half_widths);
        CHECK_FALSE(fit(opening).binds);
        CHECK(finding(opening, "opening_open_error").has_value());
    }
}

// One side plumb, the other leaning in by 13 in over 60: from lower left to upper right
// sqrt(27^2 + 60^2) in by the theorem of Pythagoras.
TEST_CASE("one side alone may lean by all that the widths differ", "[model][room]") {
    auto opening = straight;
    opening.height = "60 in";
    opening.widths = {"40 in", "33 1/2 in", "27 in"};
    opening.plumb = {"", ""};
    opening.diagonals = {"65.7951366 in", ""};
    const auto found = fit(opening);
    CHECK(found.lean_from == std::array{LeanFrom::widths, LeanFrom::diagonal});
    CHECK(std::abs(found.taper(OpeningSide::left)) < inch / 1000);
    // Over the 30 in that the frame is high.
    CHECK(std::abs(found.taper(OpeningSide::right) - 13 * inch / 2) < inch / 1000);
    CHECK_FALSE(finding(opening, "opening_open_error").has_value());
}

// In a high and narrow opening a diagonal that is off by 1/16 in makes the lean off by 4 times
// that.
TEST_CASE("leans that follow from diagonals may differ from the widths by more", "[model][room]") {
    auto opening = straight;
    opening.height = "80 in";
    opening.widths = {"20 in", "20 in", "20 in"};
    opening.plumb = {"", ""};
    opening.diagonals = {"82.5089 in", "82.5089 in"};  // 3/64 in more than by Pythagoras
    CHECK_FALSE(finding(opening, "opening_open_error").has_value());
    opening.diagonals = {"82.71 in", "82.71 in"};  // 1/4 in more
    CHECK(finding(opening, "opening_open_error").has_value());
}

TEST_CASE("an opening through the side is as wide as the frame is deep", "[model][room]") {
    auto opening = straight;
    opening.through = Axis::x;
    opening.widths = {"18 1/2 in", "18 1/2 in", "18 1/2 in"};
    CHECK(fit(opening).slack == inch / 2);
}

TEST_CASE("an opening without a size has no fit, and nothing is said twice", "[model][room]") {
    const auto project = cabinet({"0", "0", "0"});
    const auto resolved = resolve(project, catalogue());
    auto opening = straight;
    opening.height = "0";
    CHECK_FALSE(opening_fit(project, resolved, 0, opening).has_value());
    opening.height = "nothing";
    CHECK_FALSE(opening_fit(project, resolved, 0, opening).has_value());
    CHECK_FALSE(opening_fit(project, resolved, 7, straight).has_value());
}
