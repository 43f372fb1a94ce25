// Parts that are no bars of members, in every schedule.
#include "model/schedule/bar_plan.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/findings.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/pieces_json.h"
#include "model/schedule/tables.h"
#include "model/schedule/weight.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <algorithm>

using model::Index;
using model::PieceKind;

namespace {

// The small job, its rail made another part.
tests::SmallJob job_with(PieceKind kind) {
    auto job = tests::small_job();
    auto& piece = job.resolved.pieces[2];
    piece.kind = kind;
    piece.member = model::no_index;
    piece.serves = {0, 1};
    return job;
}

// As another part of sheet.
tests::SmallJob sheet_job(PieceKind kind) {
    auto job = job_with(kind);
    auto& piece = job.resolved.pieces[2];
    piece.stock = model::no_index;
    piece.section = model::no_index;
    piece.plate_count = 1;
    piece.hole_count = 0;
    return job;
}

std::string words(const tests::SmallJob& job, Index piece = 2) {
    return model::PieceWords(job.project, job.catalogue, job.resolved).member(piece);
}

}  // namespace

TEST_CASE("a part is called by what it is and the members it joins", "[schedule][parts]") {
    CHECK(words(job_with(PieceKind::cleat)) == "cleat at post left and post right");
    CHECK(words(job_with(PieceKind::strap)) == "strap at post left and post right");
    CHECK(words(job_with(PieceKind::gusset)) == "gusset at post left and post right");
    CHECK(words(job_with(PieceKind::foot)) == "foot of post left");
    CHECK(words(job_with(PieceKind::backing)) == "backing of post left");
    auto job = job_with(PieceKind::cleat);
    job.resolved.pieces[2].serves = {1, 1};
    CHECK(words(job) == "cleat of post right");
    job.resolved.pieces[2].serves = {model::no_index, model::no_index};
    CHECK(words(job) == "cleat");
}

TEST_CASE("braces and panels are called by their own names", "[schedule][parts]") {
    auto job = job_with(PieceKind::brace);
    job.project.frames[0].diagonals = {{.name = "back"}};
    job.project.frames[0].panels = {{.name = "door"}};
    job.resolved.pieces[2].stated = 0;
    CHECK(words(job) == "brace back");
    job.resolved.pieces[2].kind = PieceKind::panel;
    CHECK(words(job) == "panel door");
}

TEST_CASE("the cut schedule gives a part of sheet its kind, width and alloy", "[schedule][parts]") {
    const auto job = sheet_job(PieceKind::gusset);
    const auto rows = model::cut_rows(job.project, job.catalogue, job.resolved);
    const auto row = std::find_if(rows.begin(), rows.end(), [](const model::CutRow& it) {
        return it.kind == PieceKind::gusset;
    });
    REQUIRE(row != rows.end());
    CHECK(row->section == "gusset 1/8 x 1");
    CHECK(row->width == engine::Length::from_nm(engine::Length::nm_per_inch));
    CHECK(row->alloy == "5052-H32");
}

TEST_CASE("parts of bar are cut from bars, parts of sheet are not", "[schedule][parts]") {
    const auto pieces_on_bars = [](const tests::SmallJob& job) {
        return model::bar_rows(job.project, job.catalogue, job.resolved,
                               model::bar_plans(job.project, job.catalogue, job.resolved))
            .size();
    };
    const auto all = pieces_on_bars(tests::small_job());
    CHECK(pieces_on_bars(job_with(PieceKind::cleat)) == all);
    CHECK(pieces_on_bars(sheet_job(PieceKind::gusset)) == all - 1);
}

TEST_CASE("a part for which no bar is long enough is named by its joint", "[schedule][parts]") {
    auto job = job_with(PieceKind::cleat);
    job.resolved.pieces[2].length *= 10;
    const auto findings = model::bar_findings(job.project, job.catalogue, job.resolved);
    const auto found = std::find_if(findings.begin(), findings.end(), [](const model::Finding& it) {
        return it.code == "no_bar_long_enough";
    });
    REQUIRE(found != findings.end());
    CHECK(found->concerns.back() ==
          model::Subject{model::SubjectKind::joint, "gate", "post left + post right"});
}

TEST_CASE("a hole for fixing to the van meets the van and names no fastener", "[schedule][parts]") {
    auto job = job_with(PieceKind::foot);
    auto& hole = job.resolved.holes[job.resolved.pieces[2].first_hole];
    hole.mate = model::no_index;
    hole.fastener = model::no_index;
    const auto rows = model::drill_rows(job.project, job.catalogue, job.resolved);
    const auto row = std::find_if(rows.begin(), rows.end(), [](const model::DrillRow& it) {
        return it.mates_with == "the van";
    });
    REQUIRE(row != rows.end());
    CHECK(row->fastener.empty());
    const auto count_of = [](const std::string& text, std::string_view what) {
        std::size_t count = 0;
        for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
            ++count;
        return count;
    };
    const auto text = model::pieces_json(job.project, job.catalogue, job.resolved);
    CHECK(count_of(text, "\"fastener\":") == job.resolved.holes.size() - 1);
}

TEST_CASE("pieces.json names the recipe of each joint", "[schedule][parts]") {
    auto job = tests::small_job();
    job.resolved.joints[0].recipe = 1;
    const auto text = model::pieces_json(job.project, job.catalogue, job.resolved);
    CHECK(text.find("\"recipe\":\"flush\"") != std::string::npos);
    CHECK(text.find("\"recipe\":\"staggered lap\"") != std::string::npos);
}
