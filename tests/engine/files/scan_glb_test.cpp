#include "engine/files/scan_mesh.h"

#include "tests/engine/files/scan_checks.h"
#include "tests/support/mesh_files.h"

#include <catch2/catch.hpp>

using namespace engine;

namespace {

// A triangle 0,0,0 - 1,0,0 - 0,1,0 and a fourth point 1,1,0 with a stride of 16 bytes, and indices
// of each size at 64.
std::string raw_bytes() {
    std::string raw;
    for (const auto& point : {ScanPoint{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {1, 1, 0}}) {
        for (const auto coordinate : point) tests::put(raw, coordinate);
        raw += "fill";
    }
    for (std::uint8_t index = 0; index < 4; ++index) tests::put(raw, index);   // at 64
    for (std::uint16_t index = 0; index < 4; ++index) tests::put(raw, index);  // at 68
    for (std::uint32_t index = 0; index < 4; ++index) tests::put(raw, index);  // at 76
    return raw;
}

std::string glb(const std::string& nodes, const std::string& primitives) {
    return tests::glb_file(
        "{" + nodes + R"(,"meshes":[{"primitives":[)" + primitives +
            R"(]}],"accessors":[)"
            R"({"bufferView":0,"componentType":5126,"type":"VEC3","count":4},)"
            R"({"bufferView":1,"componentType":5121,"type":"SCALAR","count":3},)"
            R"({"bufferView":1,"byteOffset":4,"componentType":5123,"type":"SCALAR","count":3},)"
            R"({"bufferView":1,"byteOffset":12,"componentType":5125,"type":"SCALAR","count":3},)"
            R"({"bufferView":1,"componentType":5121,"type":"SCALAR","count":4},)"
            R"({"bufferView":0,"componentType":5126,"type":"VEC3","count":3.0}],)"
            R"("bufferViews":[{"buffer":0,"byteLength":64,"byteStride":16},)"
            R"({"buffer":0,"byteOffset":64,"byteLength":28}],"buffers":[{"byteLength":92}]})",
        raw_bytes());
}

const std::string one_node = R"("nodes":[{"mesh":0}])";
const std::string one_triangle = R"({"attributes":{"POSITION":0},"indices":1})";

ScanMesh read(const std::string& bytes) {
    const auto mesh = read_scan_mesh_bytes(bytes, "glb");
    if (!mesh) FAIL(to_text(mesh.error()));
    CHECK(tests::broken_promise(*mesh).empty());
    return *mesh;
}

}  // namespace

TEST_CASE("a GLB file may have indices of every size, or none", "[scan]") {
    const std::vector<ScanPoint> corners = {{0, 0, 0}, {1, 0, 0}, {0, 1, 0}};
    for (const auto* primitive :
         {R"({"attributes":{"POSITION":0},"indices":1})",
          R"({"attributes":{"POSITION":0},"indices":2,"mode":4})",
          R"({"attributes":{"POSITION":0},"indices":3})", R"({"attributes":{"POSITION":5}})"}) {
        CAPTURE(primitive);
        const auto mesh = read(glb(one_node, primitive));
        CHECK(mesh.points == corners);
        CHECK(mesh.triangles == std::vector<ScanTriangle>{{0, 1, 2}});
    }
}

TEST_CASE("strips and fans of a GLB file become triangles that wind one way", "[scan]") {
    CHECK(read(glb(one_node, R"({"attributes":{"POSITION":0},"mode":5})")).triangles ==
          std::vector<ScanTriangle>{{0, 1, 2}, {2, 1, 3}});
    CHECK(read(glb(one_node, R"({"attributes":{"POSITION":0},"indices":4,"mode":6})")).triangles ==
          std::vector<ScanTriangle>{{0, 1, 2}, {0, 2, 3}});
}

TEST_CASE("points and lines in a GLB file are passed over", "[scan]") {
    const auto mesh = read(glb(one_node, R"({"attributes":{"POSITION":0},"mode":0},)" +
                                             one_triangle + R"(,{"attributes":{},"mode":3})"));
    CHECK(mesh.triangles.size() == 1);
}

TEST_CASE("primitives of a GLB mesh that share their positions share their points", "[scan]") {
    const auto mesh =
        read(glb(one_node, one_triangle + "," + R"({"attributes":{"POSITION":0},"mode":5})"));
    CHECK(mesh.points.size() == 4);
    CHECK(mesh.triangles == std::vector<ScanTriangle>{{0, 1, 2}, {0, 1, 2}, {2, 1, 3}});
}

TEST_CASE("a GLB mesh stands where its nodes put it", "[scan]") {
    // Doubled, turned a quarter round z, moved by 10 along x; inside a node that moves by 5 along
    // y.
    const auto mesh = read(glb(
        R"("nodes":[{"mesh":0,"translation":[10,0,0],"rotation":[0,0,0.70710678118654757,0.70710678118654757],)"
        R"("scale":[2,2,2]},{"children":[0],"matrix":[1,0,0,0,0,1,0,0,0,0,1,0,0,5,0,1]}])",
        one_triangle));
    REQUIRE(mesh.points.size() == 3);
    const std::vector<ScanPoint> wanted = {{10, 5, 0}, {10, 7, 0}, {8, 5, 0}};
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t axis = 0; axis < 3; ++axis)
            CHECK(mesh.points[i][axis] == Approx(wanted[i][axis]).epsilon(0).margin(1e-6));
}

TEST_CASE("a GLB mesh in two nodes is there twice, and only those of its scene are", "[scan]") {
    const std::string nodes =
        R"("nodes":[{"mesh":0},{"mesh":0,"translation":[5,0,0]},{"mesh":0,"translation":[50,0,0]}])";
    CHECK(read(glb(nodes + R"(,"scene":1,"scenes":[{},{"nodes":[0,1]}])", one_triangle)).hi ==
          ScanPoint{6, 1, 0});
    CHECK(read(glb(nodes, one_triangle)).triangles.size() == 3);
}

TEST_CASE("a mirrored GLB mesh keeps its outside outside", "[scan]") {
    const auto mesh = read(glb(R"("nodes":[{"mesh":0,"scale":[-1,1,1]}])", one_triangle));
    CHECK(mesh.triangles == std::vector<ScanTriangle>{{0, 2, 1}});
    CHECK(mesh.lo == ScanPoint{-1, 0, 0});
}

TEST_CASE("extensions that say nothing of the shape do not keep a GLB file out", "[scan]") {
    CHECK(read(glb(R"("extensionsRequired":["KHR_texture_transform"],)" + one_node, one_triangle))
              .triangles.size() == 1);
}

TEST_CASE("what is wrong in a GLB file is named with its place", "[scan]") {
    struct Row {
        std::string from, to;  // changed in a good file
        std::string where;
        std::string reason;
    };
    const std::string good_nodes = R"("nodes":[{"mesh":0}])";
    const std::vector<Row> rows = {
        {R"("count":4})", R"("count":9})", "/accessors/0", "reach out of their bytes"},
        {R"("count":4})", R"("count":0})", "/accessors/0", "reach out of their bytes"},
        {R"("count":4})", R"("count":18446744073709551615})", "/accessors/0", "reach out of"},
        {R"("count":4})", R"("count":-1})", "/accessors/0", "reach out of their bytes"},
        {R"("byteStride":16)", R"("byteStride":0)", "/accessors/0", "reach out of their bytes"},
        {R"("byteLength":64)", R"("byteLength":99999)", "/accessors/0", "reach out of the file"},
        {R"("byteOffset":64)", R"("byteOffset":1e300)", "/accessors/1", "reach out of the file"},
        {R"("VEC3")", R"("VEC2")", "/accessors/0", "three floats"},
        {"5126", "5122", "/accessors/0", "without quantization"},
        {"5121", "5126", "/accessors/1", "single whole numbers"},
        {R"("bufferView":0)", R"("sparse":{})", "/accessors/0", "sparse"},
        {R"("bufferView":0)", R"("bufferView":7)", "/accessors/0", "it has no bytes"},
        {R"({"buffer":0)", R"({"extensions":{"X":0},"buffer":0)", "/accessors/0", "compression"},
        {R"({"buffer":0)", R"({"buffer":1)", "/accessors/0", "in another file"},
        {R"("buffers":[{)", R"("buffers":[{"uri":"a",)", "/accessors/0", "in another file"},
        {R"("POSITION":0)", R"("POSITION":9)", "/accessors/9", "not there"},
        {R"("POSITION":0)", R"("NORMAL":0)", "/meshes/0/primitives/0", "no positions"},
        {R"("indices":1)", R"("indices":"a")", "/accessors/", "not there"},
        {R"("indices":1)", R"("indices":4)", "/meshes/0/primitives/0", "whole triangles"},
        {R"("indices":1)", R"("mode":9)", "/meshes/0/primitives/0", "no such mode"},
        {R"({"mesh":0})", R"({"mesh":1})", "/meshes", "not there"},
        {R"({"mesh":0})", R"({"mesh":0,"scale":[1,1]})", "/nodes/0", "transform"},
        {R"({"mesh":0})", R"({"mesh":0,"children":[9]})", "/nodes/0", "not there"},
        {good_nodes, R"("nodes":[{"mesh":0},{"children":[0]},{"children":[0]}])", "/nodes/0",
         "child of two"},
        {good_nodes, R"("nodes":[{"mesh":0,"children":[1]},{"children":[0]}])", "/nodes/0",
         "circle"},
        {good_nodes, good_nodes + R"(,"scene":3,"scenes":[{"nodes":[0]}])", "/scene", "not there"},
        {good_nodes, good_nodes + R"(,"scenes":[{"nodes":[1]}])", "/scenes/0", "not there"},
        {good_nodes, R"("nodes":{"mesh":0})", "", "no triangles"},
        {good_nodes, good_nodes + R"(,"extensionsRequired":["KHR_draco_mesh_compression"])",
         "/extensionsRequired/0", "KHR_draco_mesh_compression"},
        {good_nodes, good_nodes + ",", "JSON, line 1, column", "not JSON"},
    };
    const auto good = glb(good_nodes, one_triangle);
    const auto length =
        static_cast<unsigned char>(good[12]) + 256U * static_cast<unsigned char>(good[13]);
    const auto json = good.substr(20, length);
    for (const auto& row : rows) {
        auto changed = json;
        const auto at = changed.find(row.from);
        REQUIRE(at != changed.npos);
        changed.replace(at, row.from.size(), row.to);
        const auto mesh = read_scan_mesh_bytes(tests::glb_file(changed, raw_bytes()), "glb");
        CAPTURE(row.to, mesh ? std::string("read") : to_text(mesh.error()));
        REQUIRE_FALSE(mesh);
        CHECK(mesh.error().where.starts_with(row.where));
        CHECK(mesh.error().message.find(row.reason) != std::string::npos);
    }
}

TEST_CASE("an index out of range in a GLB file is refused", "[scan]") {
    auto raw = raw_bytes();
    raw[65] = 4;
    auto file = glb(one_node, one_triangle);
    file.replace(file.size() - raw.size(), raw.size(), raw);
    const auto mesh = read_scan_mesh_bytes(file, "glb");
    REQUIRE_FALSE(mesh);
    CHECK(mesh.error().where == "/meshes/0/primitives/0");
    CHECK(mesh.error().message ==
          "a triangle refers to point 4 but there are 4, counted from 0; save the scan again");
}

TEST_CASE("a GLB file that is cut off or of another version says so", "[scan]") {
    const auto good = glb(one_node, one_triangle);
    for (std::size_t length = 4; length < good.size(); ++length)
        CHECK_FALSE(read_scan_mesh_bytes(good.substr(0, length), "glb"));
    auto older = good;
    older[4] = 1;
    const auto mesh = read_scan_mesh_bytes(older, "glb");
    REQUIRE_FALSE(mesh);
    CHECK(mesh.error().message ==
          "the file is of glTF version 1; save the scan as glTF 2.0 binary (GLB)");
}

TEST_CASE("a deep tree of GLB nodes is read without recursion up to a limit", "[scan]") {
    for (const int depth : {60, 70, 100'000}) {
        std::string nodes = R"("nodes":[{"mesh":0})";
        for (int i = 0; i < depth; ++i) nodes += R"(,{"children":[)" + std::to_string(i) + "]}";
        const auto mesh = read_scan_mesh_bytes(glb(nodes + "]", one_triangle), "glb");
        CHECK(mesh.has_value() == (depth == 60));
    }
}
