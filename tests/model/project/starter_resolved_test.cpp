// What the starters lay out must resolve into a cabinet that can be built as it stands.
#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/resolve/resolve.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace model;

namespace {

const Catalogue& catalogue() {
    static const auto loaded = load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(engine::to_text(loaded.error()));
    return *loaded;
}

std::vector<Formula> rising(int count, int first, int step) {
    std::vector<Formula> values;
    for (int i = 0; i < count; ++i) values.push_back(std::to_string(first + i * step));
    return values;
}

Resolved resolved(const std::string& section, const Edit& edit) {
    const Project empty{.stock = {{.name = "angle", .section = section, .alloy = "6063-T52"}}};
    const auto project = apply(empty, edit);
    if (!project) FAIL(engine::to_text(project.error()));
    return resolve(*project, catalogue());
}

// Notes apart: those tell of a nose extension that some rivets want.
std::string faults(const Resolved& resolved) {
    std::string text;
    for (const Finding& finding : resolved.findings) {
        if (finding.severity == Severity::note) continue;
        text += finding.code + ": " + where_text(finding) + "\n";
    }
    return text;
}

std::ptrdiff_t shims(const Resolved& resolved) {
    return std::count_if(resolved.pieces.begin(), resolved.pieces.end(),
                         [](const Piece& piece) { return piece.kind == PieceKind::shim; });
}

}  // namespace

TEST_CASE("a started box frame has no loose end, no shim and every rivet in place",
          "[model][starter]") {
    const auto section = GENERATE("angle 1 x 1 x 1/8", "angle 1 1/4 x 1 1/4 x 1/8");
    const int shelves = GENERATE(0, 1, 3);
    const int dividers = GENERATE(0, 1, 2);
    CAPTURE(section, shelves, dividers);
    const Resolved it = resolved(section, StartBoxFrame{.frame = "cabinet",
                                                        .stock = "angle",
                                                        .width = "44",
                                                        .depth = "18",
                                                        .height = "36",
                                                        .shelf_levels = rising(shelves, 9, 8),
                                                        .dividers = rising(dividers, 13, 14)});
    CHECK(faults(it).empty());
    CHECK(shims(it) == 0);
    CHECK(it.pieces.size() >= 12U);
}

TEST_CASE("a started stepped frame has no loose end, no shim and every rivet in place",
          "[model][starter]") {
    const auto section = GENERATE("angle 1 x 1 x 1/8", "angle 1 1/4 x 1 1/4 x 1/8");
    const int shelves = GENERATE(0, 1, 2);
    const int dividers = GENERATE(0, 1, 2);
    CAPTURE(section, shelves, dividers);
    const Resolved it = resolved(section, StartSteppedFrame{.frame = "counter",
                                                            .stock = "angle",
                                                            .width = "44",
                                                            .depth = "22",
                                                            .height = "36",
                                                            .well_height = "12",
                                                            .well_depth = "9",
                                                            .shelf_levels = rising(shelves, 20, 7),
                                                            .dividers = rising(dividers, 13, 14)});
    CHECK(faults(it).empty());
    CHECK(shims(it) == 0);
    CHECK(it.pieces.size() >= 20U);
}

TEST_CASE("no piece of a stepped frame reaches into the well", "[model][starter]") {
    const Resolved it = resolved("angle 1 x 1 x 1/8", StartSteppedFrame{.frame = "counter",
                                                                        .stock = "angle",
                                                                        .width = "44",
                                                                        .depth = "22",
                                                                        .height = "36",
                                                                        .well_height = "12",
                                                                        .well_depth = "9",
                                                                        .dividers = {"20"}});
    constexpr Nm inch = engine::Length::nm_per_inch;
    for (const Piece& piece : it.pieces) {
        for (const Plate& plate : piece.walls()) {
            const bool is_in_well = plate.box.hi[index_of(Axis::y)] > 13 * inch &&
                                    plate.box.lo[index_of(Axis::z)] < 12 * inch;
            CHECK_FALSE(is_in_well);
        }
    }
}
