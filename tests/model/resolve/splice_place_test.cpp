#include "model/resolve/splice_place.h"

#include <catch2/catch.hpp>

#include <array>
#include <vector>

using model::ButtRules;
using model::butts_along;
using model::Nm;
using model::Range;

namespace {

// Lengths in units of one: the rules know no scale.
ButtRules rules_of(Nm most) {
    return {.most = most, .least = 60, .gap = 1, .mark = 5, .before = 30, .after = 31};
}

std::vector<Nm> butts(Range member,
                      const std::vector<Range>& taken,
                      const std::vector<Nm>& supports,
                      const ButtRules& rules) {
    const auto found = butts_along(member, taken, supports, rules);
    return found ? found->ends : std::vector<Nm>{};
}

}  // namespace

// The best place of a span of 1000 is 225 from either support. The member is 1000 long and the bar
// 800: the first length is from 1000 - 1 - 800 = 199 to 800 long, so both places can be had, and
// the first one counts.
TEST_CASE("a butt lies between the fifth and the quarter of a span", "[resolve][splice]") {
    CHECK(butts({0, 1000}, {}, {0, 1000}, rules_of(800)) == std::vector<Nm>{225});
}

// Of a bar of 700 the first length is at least 299 long: 300 is on the mark, and 0.3 of the span is
// still within its outer third; 775 would leave no 700.
TEST_CASE("a butt moves within the outer third as far as the bar asks", "[resolve][splice]") {
    CHECK(butts({0, 1000}, {}, {0, 1000}, rules_of(700)) == std::vector<Nm>{300});
}

// Two lengths of at most 600 would butt from 399 to 600, in the middle third. Three do: 225, and
// 776, since the second one begins at 226 and is 550 long, a whole number of marks.
TEST_CASE("a third length is cut rather than a butt at mid-span", "[resolve][splice]") {
    CHECK(butts({0, 1000}, {}, {0, 1000}, rules_of(600)) == std::vector<Nm>{225, 776});
}

// A backing from 30 before a butt to 31 after it has to end at 200 or begin at 260, so the butt
// lies at 169 at most or at 290 at least. On the marks 165 is 0.06 of the span from the best place,
// and 290 is 0.065. But 165 leaves 834, too much for a bar of 800.
TEST_CASE("a backing keeps clear of what is there", "[resolve][splice]") {
    CHECK(butts({0, 1000}, {{200, 260}}, {0, 1000}, rules_of(900)) == std::vector<Nm>{775});
    CHECK(butts({0, 1000}, {{200, 260}, {700, 1000}}, {0, 1000}, rules_of(900)) ==
          std::vector<Nm>{165});
    CHECK(butts({0, 1000}, {{200, 260}, {700, 1000}}, {0, 1000}, rules_of(800)) ==
          std::vector<Nm>{290});
}

// Supports at 0, 400 and 1200 on a member that runs on to 1500, of bars of 1300: 90, 310, 580 and
// 1020 are the best places; the first length is at least 1500 - 1 - 1300 = 199 long.
TEST_CASE("no butt lies beyond the last support", "[resolve][splice]") {
    CHECK(butts({0, 1500}, {}, {0, 400, 1200}, rules_of(1300)) == std::vector<Nm>{310});
    CHECK(butts({0, 1500}, {{0, 1250}}, {0, 400, 1200}, rules_of(1300)).empty());
}

TEST_CASE("a member of more than sixteen lengths is not spliced", "[resolve][splice]") {
    const ButtRules rules{.most = 100, .least = 10, .gap = 0, .mark = 1, .before = 5, .after = 5};
    CHECK(model::fewest_lengths(1600, rules) == 16);
    CHECK(model::fewest_lengths(1601, rules) == 17);
    CHECK(butts({0, 1601}, {}, {0, 1601}, rules).empty());
}
