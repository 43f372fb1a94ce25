#include "engine/drawing/dxf.h"

#include "tests/engine/drawing/read_back.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <limits>

using namespace engine;

namespace {

DxfDrawing plate() {
    DxfDrawing drawing;
    drawing.loops.push_back({DxfLayer::outline, {{0, 0}, {120.5, 0}, {120.5, 80}, {0, 80}}});
    drawing.loops.push_back({DxfLayer::cut_out, {{20, 20}, {20, 40}, {50, 40}}});
    drawing.circles.push_back({DxfLayer::hole, {100.123456, 60}, 1.6});
    drawing.lines.push_back({DxfLayer::fold, {60, 0}, {60, 80}});
    drawing.texts.push_back({{0, -8}, 4.0, "plate \xC3\x98 1/3"});
    return drawing;
}

std::string text_of(const DxfDrawing& drawing) {
    const auto text = dxf_text(drawing);
    if (!text) FAIL(to_text(text.error()));
    return *text;
}

}  // namespace

TEST_CASE("shapes lie on the layers of what they are for", "[engine][drawing][dxf]") {
    const auto text = text_of(plate());
    CHECK_THAT(text, Catch::Contains("CIRCLE\r\n  8\r\nHOLE\r\n 10\r\n100.123456\r\n 20\r\n"
                                     "60.000000\r\n"));
    CHECK_THAT(text, Catch::Contains("POLYLINE\r\n  8\r\nOUTLINE\r\n"));
    CHECK_THAT(text, Catch::Contains("POLYLINE\r\n  8\r\nCUT_OUT\r\n"));
    CHECK_THAT(text, Catch::Contains("LINE\r\n  8\r\nFOLD\r\n"));
    CHECK_THAT(text, Catch::Contains("plate \\U+00D8 1/3"));
    CHECK_THAT(text, Catch::EndsWith("  0\r\nEOF\r\n"));
}

TEST_CASE("a drawing has the same bytes each time", "[engine][drawing][dxf]") {
    CHECK(text_of(plate()) == text_of(plate()));
}

TEST_CASE("what no machine can cut is refused", "[engine][drawing][dxf]") {
    auto lost = plate();
    lost.circles[0].centre.x = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(dxf_text(lost));
    auto flat = plate();
    flat.loops[0].corners.resize(2);
    CHECK_FALSE(dxf_text(flat));
    auto point = plate();
    point.circles[0].radius = 0.0;
    CHECK_FALSE(dxf_text(point));
}

TEST_CASE("another program finds nothing to mend in a file", "[engine][drawing][dxf]") {
    if (std::system("/usr/bin/python3 -c 'import ezdxf' 2>/dev/null") != 0) {
        WARN("python3-ezdxf is missing: no audit");
        return;
    }
    const tests::ScratchFolder folder(tests::name_of_run("dxf"));
    tests::write_file(folder.path / "plate.dxf", text_of(plate()));
    tests::write_file(folder.path / "nothing.dxf", text_of({}));
    CHECK(tests::output_of("/usr/bin/python3 " BARWRIGHT_TESTS "/engine/drawing/audit_dxf.py " +
                           folder.path.string() + "/*.dxf") == "2 files, no error, no fix\n");
}
