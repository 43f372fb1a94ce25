#include "engine/files/csv.h"
#include "model/project/project_json.h"
#include "model/resolve/resolve.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/tables.h"

#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"
#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

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

engine::CsvTable table_of(const std::string& text) {
    auto table = engine::read_csv(text);
    REQUIRE(table);
    return std::move(*table);
}

// What stands under a heading, line by line.
std::vector<std::string> column_of(const engine::CsvTable& table, const std::string& heading) {
    const auto place = std::ranges::find(table.header, heading) - table.header.begin();
    REQUIRE(place < std::ssize(table.header));
    std::vector<std::string> fields;
    for (const auto& row : table.rows) fields.push_back(row[static_cast<std::size_t>(place)]);
    return fields;
}

// The count of each mark and hand under a heading; one that is counted in two ways fails.
std::map<std::pair<std::string, std::string>, std::string> counts_of(const engine::CsvTable& table,
                                                                     const std::string& heading) {
    const auto marks = column_of(table, "mark");
    const auto hands = column_of(table, "hand");
    const auto counts = column_of(table, heading);
    std::map<std::pair<std::string, std::string>, std::string> found;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        CAPTURE(marks[i], hands[i]);
        CHECK(found.try_emplace({marks[i], hands[i]}, counts[i]).first->second == counts[i]);
    }
    return found;
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
        CHECK((rows[i].gauge == rows[i - 1].gauge) == (rows[i].setup == rows[i - 1].setup));
        const auto before = std::pair{rows[i - 1].drill, rows[i - 1].setup};
        const auto now = std::pair{rows[i].drill, rows[i].setup};
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

TEST_CASE("drill.csv counts the pieces of each mark and hand as cut.csv does, in all samples",
          "[model][schedule][drill][samples]") {
    const auto& catalogue = shipped_catalogue();
    const auto names = model_tests::sample_names();
    REQUIRE(names.size() >= 5);
    for (const auto& name : names) {
        CAPTURE(name);
        const auto project = model::read_project_json(model_tests::sample_text(name));
        REQUIRE(project);
        const auto resolved = model::resolve(*project, catalogue);
        const auto cut =
            counts_of(table_of(model::cut_csv(*project, resolved,
                                              model::cut_rows(*project, catalogue, resolved))),
                      "quantity");
        const auto drilled =
            counts_of(table_of(model::drill_csv(*project, resolved,
                                                model::drill_rows(*project, catalogue, resolved))),
                      "pieces");
        std::map<std::pair<std::string, std::string>, std::string> with_holes;
        for (const auto& piece : resolved.pieces) {
            if (piece.hole_count == 0) continue;
            const std::pair key{resolved.marks[piece.mark].name,
                                std::string(model::name_of(piece.hand))};
            REQUIRE(cut.contains(key));
            with_holes[key] = cut.at(key);
        }
        CHECK(drilled == with_holes);
        CHECK(std::ranges::any_of(drilled, [](const auto& it) { return it.second != "1"; }));
    }
}

TEST_CASE("diameters stand in inches as drill charts give them, beside the millimetres",
          "[model][schedule][drill]") {
    const auto job = tests::small_job();
    auto rows = rows_of(job);
    const auto in_inches = [&](std::int64_t nm) {
        rows.resize(1);
        rows[0].diameter = engine::Length::from_nm(nm);
        const auto table = table_of(model::drill_csv(job.project, job.resolved, rows));
        return column_of(table, "diameter_in").front();
    };
    CHECK(in_inches(2'438'400) == "0.0960");   // #41
    CHECK(in_inches(3'175'000) == "0.1250");   // 1/8 in
    CHECK(in_inches(396'875) == "0.0156");     // 1/64 in: 0.015625
    CHECK(in_inches(3'300'000) == "0.1299");   // 3.3 mm: 0.12992
    CHECK(in_inches(25'399'000) == "1.0000");  // rounded up over the inch
}

TEST_CASE("the number that the fence is set to stands under gauge, and setup only counts settings",
          "[model][schedule][drill]") {
    const auto job = tests::small_job();
    const auto table = table_of(model::drill_csv(job.project, job.resolved, rows_of(job)));
    CHECK(std::ranges::count(table.header, "fence") == 0);
    std::map<std::string, std::string> gauges;
    const auto setups = column_of(table, "setup");
    const auto shown = column_of(table, "gauge");
    for (std::size_t i = 0; i < setups.size(); ++i) {
        CHECK(gauges.try_emplace(setups[i], shown[i]).first->second == shown[i]);
    }
    CHECK(gauges ==
          std::map<std::string, std::string>{{"1", "1/4 in"}, {"2", "1/2 in"}, {"3", "3/4 in"}});
}
