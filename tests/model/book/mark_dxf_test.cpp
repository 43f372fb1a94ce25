#include "model/book/mark_dxf.h"

#include "tests/engine/drawing/read_back.h"
#include "tests/model/book/printed_sample.h"
#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <set>

using tests::PrintedSample;

TEST_CASE("each mark and hand is a file with its holes at their distances and gauges",
          "[model][book][dxf]") {
    for (const auto& name : model_tests::sample_names()) {
        CAPTURE(name);
        const PrintedSample sample(name);
        const auto all = model::mark_facts(sample.project, shipped_catalogue(), sample.resolved);
        const auto files = model::dxf_files(sample.project, shipped_catalogue(), sample.resolved);
        REQUIRE(files);
        CHECK(files->size() == all.size());
        std::set<std::string> names;
        for (const auto& file : *files) names.insert(file.name);
        CHECK(names.size() == files->size());
        for (const auto& facts : all) {
            const auto drawing = model::mark_dxf(sample.project, sample.resolved, facts);
            const bool has_folds = facts.flat.walls.size() > 1;
            CHECK(drawing.loops.empty() == has_folds);
            const auto folds = std::count_if(
                drawing.lines.begin(), drawing.lines.end(),
                [](const auto& line) { return line.layer == engine::DxfLayer::fold; });
            CHECK(static_cast<std::size_t>(folds) + 1 == facts.flat.walls.size());
            CHECK((drawing.lines.size() >= 4) == has_folds);
            for (const auto& row : facts.drills) {
                const bool is_there = std::any_of(
                    drawing.circles.begin(), drawing.circles.end(), [&](const auto& circle) {
                        return std::abs(circle.centre.y - row.from_datum.mm()) < 1e-6;
                    });
                CHECK(is_there);
            }
        }
    }
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
        const auto files = model::dxf_files(sample.project, shipped_catalogue(), sample.resolved);
        REQUIRE(files);
        REQUIRE(model::write_all(*files, folder.path));
        const auto words =
            tests::output_of("/usr/bin/python3 " BARWRIGHT_TESTS "/engine/drawing/audit_dxf.py " +
                             folder.path.string() + "/*.dxf");
        CHECK(words == std::to_string(files->size()) + " files, no error, no fix\n");
    }
}
