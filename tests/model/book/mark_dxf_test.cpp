#include "model/book/mark_dxf.h"

#include "model/book/stamp.h"

#include "tests/engine/drawing/read_back.h"
#include "tests/model/book/printed_sample.h"
#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <set>

using tests::PrintedSample;

namespace {

using engine::DxfLayer;

const model::DxfWish wish{"ABC-DEF", false};

bool is_at(engine::PagePoint a, double x, double y) {
    return std::abs(a.x - x) < 1e-6 && std::abs(a.y - y) < 1e-6;
}

// Where a row's hole is drilled on the unrolled piece: from the heel of its leg, inner faces up and
// the datum end below, which turns the drawing that has it above.
engine::PagePoint place_of(const model::MarkFacts& facts, const model::DrillRow& row) {
    for (const auto& wall : facts.flat.walls) {
        if (facts.flat.walls.size() > 1 && wall.name != row.leg) continue;
        const double inwards = wall.toe > wall.heel ? 1.0 : -1.0;
        return {facts.flat.width - (wall.heel + inwards * row.gauge.mm()), row.from_datum.mm()};
    }
    return {-1.0, -1.0};
}

// Drilled later before tapped before drilled.
DxfLayer layer_wanted(const model::MarkFacts& facts, model::Index hole) {
    std::set<std::string> done;
    for (const auto& row : facts.drills)
        if (row.pattern_hole == hole) done.emplace(model::name_of(row.operation));
    if (done.count("match-drill") > 0) return DxfLayer::matched;
    return done.count("tap") + done.count("tap drill") > 0 ? DxfLayer::tapped : DxfLayer::hole;
}

bool has_text(const engine::DxfDrawing& drawing, const std::string& words) {
    return std::any_of(drawing.texts.begin(), drawing.texts.end(), [&](const auto& text) {
        return text.words.find(words) != std::string::npos;
    });
}

// All that is cut, however it is drawn.
std::vector<std::array<engine::PagePoint, 2>> cuts_of(const engine::DxfDrawing& drawing) {
    std::vector<std::array<engine::PagePoint, 2>> cuts;
    for (const auto& line : drawing.lines)
        if (line.layer != DxfLayer::fold) cuts.push_back({line.from, line.to});
    for (const auto& loop : drawing.loops)
        for (std::size_t i = 0; i < loop.corners.size(); ++i)
            cuts.push_back({loop.corners[i], loop.corners[(i + 1) % loop.corners.size()]});
    return cuts;
}

}  // namespace

TEST_CASE(
    "each mark and hand is a file with its holes at their distances and gauges, as large as "
    "they are drilled",
    "[model][book][dxf]") {
    for (const auto& name : model_tests::sample_names()) {
        CAPTURE(name);
        const PrintedSample sample(name);
        const auto all = model::mark_facts(sample.project, shipped_catalogue(), sample.resolved);
        const auto files =
            model::dxf_files(sample.project, shipped_catalogue(), sample.resolved, false);
        REQUIRE(files);
        CHECK(files->size() == all.size());
        std::set<std::string> names;
        for (const auto& file : *files) names.insert(file.name);
        CHECK(names.size() == files->size());
        for (const auto& facts : all) {
            const auto drawing = model::mark_dxf(sample.project, sample.resolved, facts, wish);
            CHECK(drawing.circles.size() == facts.flat.holes.size());
            for (const auto& row : facts.drills) {
                const auto place = place_of(facts, row);
                const auto circle = std::find_if(
                    drawing.circles.begin(), drawing.circles.end(),
                    [&](const auto& it) { return is_at(it.centre, place.x, place.y); });
                CAPTURE(model::name_of_mark(sample.resolved, facts), row.hole, place.x, place.y);
                REQUIRE(circle != drawing.circles.end());
                // A tap's own diameter is that of its thread.
                if (row.operation != model::HoleOperation::tap)
                    CHECK(2 * circle->radius == Approx(row.diameter.mm()).margin(1e-6));
                CHECK(circle->layer == layer_wanted(facts, row.pattern_hole));
            }
        }
    }
}

TEST_CASE("what is cut reaches from end to end of the piece, and slopes where its ends do",
          "[model][book][dxf]") {
    std::size_t sloped = 0;
    for (const auto& name : model_tests::sample_names()) {
        CAPTURE(name);
        const PrintedSample sample(name);
        for (const auto& facts :
             model::mark_facts(sample.project, shipped_catalogue(), sample.resolved)) {
            CAPTURE(model::name_of_mark(sample.resolved, facts));
            const auto drawing = model::mark_dxf(sample.project, sample.resolved, facts, wish);
            const bool has_folds = facts.flat.walls.size() > 1;
            CHECK(drawing.loops.empty() == has_folds);
            const auto folds =
                std::count_if(drawing.lines.begin(), drawing.lines.end(),
                              [](const auto& line) { return line.layer == DxfLayer::fold; });
            CHECK(static_cast<std::size_t>(folds) + 1 == facts.flat.walls.size());
            double low = 1e9;
            double high = -1e9;
            double right = -1e9;
            bool is_level_at_datum = false;
            bool is_sloped = false;
            for (const auto& [from, to] : cuts_of(drawing)) {
                low = std::min({low, from.y, to.y});
                high = std::max({high, from.y, to.y});
                right = std::max({right, from.x, to.x});
                is_level_at_datum |= std::abs(from.y) < 1e-6 && std::abs(to.y) < 1e-6;
                is_sloped |= std::abs(from.y - to.y) > 1e-3 && std::abs(from.x - to.x) > 1e-3;
            }
            CHECK(std::abs(low) < 1e-6);
            CHECK(high == Approx(facts.cut.length.mm()).margin(1e-5));
            CHECK(right == Approx(facts.flat.width).margin(1e-5));
            if (facts.is_sheet()) continue;
            if (facts.cut.end_a == "square") CHECK(is_level_at_datum);
            if (facts.cut.end_a == "square" && facts.cut.end_b == "square") CHECK_FALSE(is_sloped);
            if (is_sloped) ++sloped;
        }
    }
    CHECK(sloped > 0);
}

TEST_CASE("legs, ends, what is done at each hole and the book's stamp are written in each file",
          "[model][book][dxf]") {
    for (const auto& name : model_tests::sample_names()) {
        CAPTURE(name);
        const PrintedSample sample(name);
        const auto files =
            model::dxf_files(sample.project, shipped_catalogue(), sample.resolved, false);
        REQUIRE(files);
        for (const auto& file : *files) {
            CHECK_THAT(file.text, Catch::Contains("stamp " + model::project_stamp(sample.project)));
            CHECK_THAT(file.text, !Catch::Contains("NOT FIT"));
        }
        for (const auto& facts :
             model::mark_facts(sample.project, shipped_catalogue(), sample.resolved)) {
            CAPTURE(model::name_of_mark(sample.resolved, facts));
            const auto drawing = model::mark_dxf(sample.project, sample.resolved, facts, wish);
            CHECK(has_text(drawing, "DATUM END"));
            CHECK(has_text(drawing, model::ends_sentence(facts)));
            for (const auto& wall : facts.flat.walls) CHECK(has_text(drawing, wall.name));
            for (const auto& row : facts.drills) {
                CHECK(has_text(drawing, "h" + std::to_string(row.hole) + " " + row.leg + ": " +
                                            model::work_words(row) + ", "));
            }
        }
    }
}

TEST_CASE("files of a project that is not fit to cut from say so", "[model][book][dxf]") {
    const PrintedSample sample("parts_box.json");
    const auto files = model::dxf_files(sample.project, shipped_catalogue(), sample.resolved, true);
    REQUIRE(files);
    REQUIRE_FALSE(files->empty());
    for (const auto& file : *files) CHECK_THAT(file.text, Catch::Contains("NOT FIT TO CUT FROM"));
}

TEST_CASE("the files of all samples pass the audit of another program without a fix",
          "[model][book][dxf]") {
    if (std::system("/usr/bin/python3 -c 'import ezdxf' 2>/dev/null") != 0) {
        WARN("python3-ezdxf is missing: no audit");
        return;
    }
    for (const auto& name : model_tests::sample_names()) {
        CAPTURE(name);
        const PrintedSample sample(name);
        const tests::ScratchFolder folder(tests::name_of_run("mark_dxf"));
        const auto files =
            model::dxf_files(sample.project, shipped_catalogue(), sample.resolved, false);
        REQUIRE(files);
        REQUIRE(model::write_all(*files, folder.path));
        const auto words =
            tests::output_of("/usr/bin/python3 " BARWRIGHT_TESTS "/engine/drawing/audit_dxf.py " +
                             folder.path.string() + "/*.dxf");
        CHECK(words == std::to_string(files->size()) + " files, no error, no fix\n");
    }
}
