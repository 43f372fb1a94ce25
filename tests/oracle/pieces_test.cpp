#include "model/catalogue/catalogue.h"
#include "model/project/project_json.h"
#include "model/resolve/piece_solid.h"
#include "model/resolve/resolve.h"
#include "model/schedule/pieces_json.h"

#include "tests/oracle/oracle_projects.h"
#include "tests/oracle/rebuilt_piece.h"
#include "tests/support/hand_made.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>
#include <set>
#include <string>

namespace {

// Each kind of piece once: placed apart, pieces of one shape give the kernel the same work.
class Oracle {
public:
    void compare(const tests::OracleJob& job) {
        const auto file =
            nlohmann::json::parse(model::pieces_json(job.project, job.catalogue, job.resolved));
        for (model::Index i = 0; i < job.resolved.pieces.size(); ++i) {
            const auto& piece = file["pieces"][i];
            if (shapes_.insert(shape_of(piece)).second) compare(job, i, piece);
        }
    }

    std::size_t compared() const { return shapes_.size(); }
    double worst() const { return worst_; }

private:
    static std::string shape_of(const nlohmann::json& piece) {
        auto shape = piece;
        for (const auto* key : {"id", "mark", "member", "frame", "hand"}) shape.erase(key);
        const auto datum = shape["datum"];
        for (auto& plate : shape["plates"]) {
            for (std::size_t i = 0; i < 3; ++i) {
                const double from_datum = plate["origin"][i].get<double>() - datum[i].get<double>();
                plate["origin"][i] = std::round(from_datum * 1e6);
            }
            for (auto& hole : plate["holes"])
                for (const auto* key : {"id", "joint", "fastener", "operation"}) hole.erase(key);
        }
        shape.erase("datum");
        return shape.dump();
    }

    void compare(const tests::OracleJob& job, model::Index index, const nlohmann::json& piece) {
        CAPTURE(piece["id"], piece["member"], piece["section"]);
        const auto theirs = tests::facts_of(tests::rebuilt_piece(piece, job.catalogue));
        std::size_t holes = 0;
        for (const auto& plate : piece["plates"]) holes += plate["holes"].size();
        const double ours = model::piece_volume(job.resolved, job.catalogue, index);
        const double off = std::abs(ours - theirs.volume) / theirs.volume;
        worst_ = std::max(worst_, off);
        CHECK(theirs.is_valid);
        CHECK(theirs.is_closed);
        CHECK(theirs.solids == 1);
        CHECK(theirs.round_holes == holes);
        CAPTURE(ours, theirs.volume);
        CHECK(off < 1e-9);
    }

    std::set<std::string> shapes_;
    double worst_ = 0.0;
};

void report(const char* what, const Oracle& oracle) {
    std::printf("%s: %zu shapes of pieces compared, volumes within %.1e of each other\n", what,
                oracle.compared(), oracle.worst());
}

}  // namespace

TEST_CASE("an independent kernel finds the pieces of every sample alike", "[oracle]") {
    Oracle oracle;
    for (const auto& file : tests::sample_files()) {
        CAPTURE(file);
        oracle.compare(tests::sample_job(file));
    }
    report("samples", oracle);
    CHECK(oracle.compared() > 20);
}

TEST_CASE("an independent kernel finds a piece of every shape alike", "[oracle]") {
    Oracle oracle;
    oracle.compare(tests::hand_made_job());
    report("every shape", oracle);
    CHECK(oracle.compared() > 25);
}

TEST_CASE("an independent kernel finds the pieces of random frames alike", "[oracle]") {
    Oracle oracle;
    for (std::uint32_t seed = 0; seed < tests::frames_to_check(); ++seed) {
        CAPTURE(seed);
        oracle.compare(tests::random_job(seed));
    }
    report("random frames", oracle);
}
