#include "engine/geometry/solid_measure.h"
#include "model/resolve/piece_solid.h"
#include "model/schedule/export.h"

#include "tests/oracle/oracle_projects.h"
#include "tests/oracle/rebuilt_piece.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <sstream>

#include <STEPControl_Reader.hxx>

namespace {

TopoDS_Shape reread(const std::string& text, const std::filesystem::path& file) {
    std::ofstream{file, std::ios::binary} << text;
    STEPControl_Reader reader;
    REQUIRE(reader.ReadFile(file.c_str()) == IFSelect_RetDone);
    reader.TransferRoots();
    return reader.OneShape();
}

double volume_of_all(const tests::OracleJob& job) {
    model::PieceSolids solids{job.resolved, job.catalogue};
    model::PieceSolid made;
    double volume = 0.0;
    for (model::Index i = 0; i < job.resolved.pieces.size(); ++i) {
        REQUIRE(solids.make(made, i));
        volume += engine::measure_of(made.solid).volume;
    }
    return volume;
}

std::size_t holes_of(const tests::OracleJob& job) {
    std::size_t holes = 0;
    for (const auto& piece : job.resolved.pieces) holes += piece.hole_count;
    return holes;
}

// The reader says "done" of a file from which it takes nothing, so its word is not asked: solids
// are counted, checked and measured.
void check_step(const tests::OracleJob& job, double within) {
    const tests::ScratchFolder scratch{"oracle_step"};
    const auto text = model::step_file(job.project, job.catalogue, job.resolved);
    REQUIRE(text);
    const auto facts = tests::facts_of(reread(*text, scratch.path / "pieces.step"));
    CHECK(facts.solids == job.resolved.pieces.size());
    CHECK(facts.is_valid);
    CHECK(facts.is_closed);
    CHECK(facts.round_holes == holes_of(job));
    CHECK(facts.volume == Approx(volume_of_all(job)).epsilon(within));
}

}  // namespace

TEST_CASE("an independent reader finds every piece of every sample in its STEP file", "[oracle]") {
    for (const auto& file : tests::sample_files()) {
        CAPTURE(file);
        check_step(tests::sample_job(file), 1e-9);
    }
}

TEST_CASE("an independent reader finds a piece of every shape in a STEP file", "[oracle]") {
    check_step(tests::hand_made_job(), 1e-9);
}

TEST_CASE("an independent reader finds the pieces of random frames in their STEP files",
          "[oracle]") {
    for (std::uint32_t seed = 0; seed < tests::frames_to_check(); seed += 10) {
        CAPTURE(seed);
        const auto job = tests::random_job(seed);
        if (!job.resolved.pieces.empty()) check_step(job, 1e-9);
    }
}
