#include "model/schedule/tables.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <set>

using namespace engine::literals;

namespace {

std::vector<model::DrillRow> rows_of(const tests::SmallJob& job) {
    return model::drill_rows(job.project, job.catalogue, job.resolved);
}

const model::DrillRow& row_at(const std::vector<model::DrillRow>& rows,
                              model::Index mark,
                              model::Hand hand,
                              int hole) {
    for (const auto& row : rows) {
        if (row.mark == mark && row.hand == hand && row.hole == hole) return row;
    }
    FAIL("no such row");
    return rows.front();
}

}  // namespace

TEST_CASE("every hole of each mark and hand has a line", "[model][schedule][drill]") {
    const auto rows = rows_of(tests::small_job());
    CHECK(rows.size() == 2 + 2 + 4 + 2 + 2 + 3);
}

TEST_CASE("a drill is put in once for all the holes at the drill press",
          "[model][schedule][drill]") {
    const auto rows = rows_of(tests::small_job());
    std::set<std::string> put_away;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (rows[i].operation == model::HoleOperation::match_drill) break;
        if (rows[i].drill != rows[i - 1].drill) put_away.insert(rows[i - 1].drill);
        CHECK(put_away.count(rows[i].drill) == 0);
    }
}

TEST_CASE("a fence is set once for all the holes of one drill that share a gauge",
          "[model][schedule][drill]") {
    const auto rows = rows_of(tests::small_job());
    std::set<std::pair<std::string, int>> left_behind;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (rows[i].operation == model::HoleOperation::match_drill) break;
        CHECK((rows[i].gauge == rows[i - 1].gauge) == (rows[i].fence == rows[i - 1].fence));
        const auto before = std::pair{rows[i - 1].drill, rows[i - 1].fence};
        const auto now = std::pair{rows[i].drill, rows[i].fence};
        if (now != before) left_behind.insert(before);
        CHECK(left_behind.count(now) == 0);
    }
}

TEST_CASE("what is match-drilled comes after the drill press, and tapping comes last",
          "[model][schedule][drill]") {
    const auto rows = rows_of(tests::small_job());
    REQUIRE(rows.size() == 15);
    CHECK(rows[11].operation != model::HoleOperation::match_drill);
    CHECK(rows[12].operation == model::HoleOperation::match_drill);
    CHECK(rows[13].operation == model::HoleOperation::match_drill);
    CHECK(rows[14].operation == model::HoleOperation::tap);
}

TEST_CASE("holes are numbered along the piece from its datum end", "[model][schedule][drill]") {
    const auto rows = rows_of(tests::small_job());
    const auto& first = row_at(rows, 0, model::Hand::as_drawn, 1);
    const auto& second = row_at(rows, 0, model::Hand::as_drawn, 2);
    CHECK(first.from_datum == 11_in + 16_in_64);
    CHECK(second.from_datum == 11_in + 48_in_64);
    CHECK(first.leg == "leg a");
}

TEST_CASE("the opposite hand has the same numbers with the datum end at the other hand",
          "[model][schedule][drill]") {
    const auto rows = rows_of(tests::small_job());
    const auto& drawn = row_at(rows, 0, model::Hand::as_drawn, 1);
    const auto& opposite = row_at(rows, 0, model::Hand::opposite, 1);
    CHECK(opposite.from_datum == drawn.from_datum);
    CHECK(opposite.gauge == drawn.gauge);
    CHECK(opposite.leg == drawn.leg);
    CHECK(opposite.datum_end != drawn.datum_end);
}

TEST_CASE("the marks that a hole meets are named once each, over all pieces of the mark",
          "[model][schedule][drill]") {
    auto job = tests::small_job();
    CHECK(row_at(rows_of(job), 1, model::Hand::none, 1).mates_with == "A1");

    // The back flat becomes a second post of mark A1, whose first hole meets the shim.
    auto& back = job.resolved.pieces[5];
    back.mark = 0;
    back.hand = model::Hand::as_drawn;
    CHECK(row_at(rows_of(job), 0, model::Hand::as_drawn, 1).mates_with == "A2; S1");
}
