#include "model/schedule/csv_tables.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/tables.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

using namespace engine::literals;

TEST_CASE("the cut schedule has a line for each mark and hand", "[model][schedule][cut]") {
    const auto job = tests::small_job();
    const auto rows = model::cut_rows(job.project, job.catalogue, job.resolved);
    REQUIRE(rows.size() == 6);
    CHECK(rows[0].hand == model::Hand::as_drawn);
    CHECK(rows[1].hand == model::Hand::opposite);
    CHECK(rows[1].mark == rows[0].mark);
    CHECK(rows[0].length == 12_in);
    CHECK(rows[1].members == "post right");
}

TEST_CASE("a shim is named by its thickness and width, and by what it lies between",
          "[model][schedule][cut]") {
    const auto job = tests::small_job();
    const auto rows = model::cut_rows(job.project, job.catalogue, job.resolved);
    const auto& shim = rows.back();
    CHECK(shim.section == "shim 1/16 x 1");
    CHECK(shim.alloy.empty());
    CHECK(shim.members == "between front flat and back flat");
}

TEST_CASE("a mark that serves several frames names the frame of each member",
          "[model][schedule][cut]") {
    auto job = tests::small_job();
    job.resolved.pieces[5].mark = 1;
    job.resolved.marks[1].as_drawn = 2;
    const auto rows = model::cut_rows(job.project, job.catalogue, job.resolved);
    CHECK(rows[2].frames == "gate; strap pair");
    CHECK(rows[2].members == "gate: rail; strap pair: back flat");
    CHECK(rows[2].quantity == 2);
}

TEST_CASE("the pieces of a split member are told apart", "[model][schedule][cut]") {
    auto job = tests::small_job();
    job.resolved.pieces[2].member = 1;
    job.resolved.pieces[2].part = 1;
    const auto rows = model::cut_rows(job.project, job.catalogue, job.resolved);
    CHECK(rows[1].members == "post right part 1");
    CHECK(rows[2].members == "post right part 2");
}

TEST_CASE("a length between two marks of the tape is shown as about the nearest",
          "[model][schedule][cut]") {
    const engine::TapeStyle tape{};
    CHECK(model::shown_text(11_in_64, tape) == "~3/16");
    CHECK(model::shown_text(12_in_64, tape) == "3/16");
}
