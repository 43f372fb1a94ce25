#include "engine/files/scan_mesh.h"

#include "engine/files/whole_file.h"

#include "tests/engine/files/scan_checks.h"
#include "tests/support/mesh_files.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

using namespace engine;
using tests::MeshForm;

namespace {

ScanMesh read(std::string_view bytes, std::string_view kind) {
    const auto mesh = read_scan_mesh_bytes(bytes, kind);
    if (!mesh) FAIL(to_text(mesh.error()));
    CHECK(tests::broken_promise(*mesh).empty());
    return *mesh;
}

const std::vector<ScanPoint> corners_of_square = {{0, 0, 0}, {2, 0, 0}, {2, 1, 0}, {0, 1, 0}};
const std::vector<ScanTriangle> square_as_fan = {{0, 1, 2}, {0, 2, 3}};

void check_is_square(const ScanMesh& mesh) {
    CHECK(mesh.points == corners_of_square);
    CHECK(mesh.triangles == square_as_fan);
    CHECK(mesh.dropped == 0);
}

}  // namespace

TEST_CASE("the same mesh comes out of every kind of file", "[scan]") {
    const auto sheet = tests::wavy_sheet(7, 5);
    for (const auto form : tests::mesh_forms) {
        CAPTURE(tests::name_of(form));
        const auto mesh = read(mesh_file(sheet, form), tests::ending_of(form));
        CHECK(mesh.points == sheet.points);
        CHECK(mesh.triangles == sheet.triangles);
        CHECK(mesh.lo[0] == 0.0F);
        CHECK(mesh.hi[0] == 3.0F);
        CHECK(mesh.hi[1] == 2.0F);
        CHECK(mesh.dropped == 0);
    }
}

TEST_CASE("the kind of a mesh file is told by its content, whatever its name", "[scan]") {
    const auto sheet = tests::wavy_sheet(2, 2);
    for (const auto form : tests::mesh_forms) {
        CAPTURE(tests::name_of(form));
        for (const auto* name : {"van.stl", "van.ply", "van.obj", "van.glb", "van.bin", "van", ""})
            CHECK(read(mesh_file(sheet, form), name).triangles == sheet.triangles);
    }
}

TEST_CASE("only GLB states its unit and which way is up", "[scan]") {
    const auto sheet = tests::wavy_sheet(1, 1);
    for (const auto form : tests::mesh_forms) {
        const auto mesh = read(mesh_file(sheet, form), tests::ending_of(form));
        CHECK((mesh.unit == LengthUnit::metre) == (form == MeshForm::glb));
        CHECK(mesh.is_y_up == (form == MeshForm::glb));
    }
}

TEST_CASE("a binary STL file that begins with the word solid is still read as binary", "[scan]") {
    const auto sheet = tests::wavy_sheet(3, 3);
    auto file = mesh_file(sheet, MeshForm::stl);
    file.replace(0, 17, "solid facet facet");
    CHECK(read(file, "stl").triangles == sheet.triangles);
    CHECK(read(file + "\r\n", "stl").triangles == sheet.triangles);
}

TEST_CASE("minus nought is welded to nought in an STL file", "[scan]") {
    const auto mesh = read(
        "SOLID\r\nFACET NORMAL nan nan nan\r\nOUTER LOOP\r\nVERTEX 0 0 0\r\nVERTEX 1 0 0\r\n"
        "VERTEX 0 1.5e0 +0\r\nENDLOOP\r\nENDFACET\r\nfacet normal 0 0 1 outer loop vertex -0 -0 0 "
        "vertex 0 1.5 -0.0 vertex -1 0 0 endloop endfacet\r\nendsolid of the van\r\n"
        "solid\nendsolid\n",
        "stl");
    CHECK(mesh.points.size() == 4);
    CHECK(mesh.triangles == std::vector<ScanTriangle>{{0, 1, 2}, {0, 2, 3}});
}

TEST_CASE("a PLY file may have any properties of any type in any order", "[scan]") {
    std::string file =
        "ply\nformat binary_big_endian 1.0\nobj_info made up\nelement camera 2\n"
        "property list short double views\nproperty int8 id\nelement vertex 4\nproperty uchar red\n"
        "property double z\nproperty list uint8 float weights\nproperty int16 y\n"
        "property float32 x\nelement face 1\nproperty float area\n"
        "property list uint16 uint vertex_index\nproperty ushort part\nend_header\n";
    for (int camera = 0; camera < 2; ++camera) {
        tests::put_big(file, std::int16_t{camera == 0 ? std::int16_t{2} : std::int16_t{0}});
        if (camera == 0) file.append(16, '\x7F');
        file += 'i';
    }
    for (const auto& point : corners_of_square) {
        file += "r";
        tests::put_big(file, static_cast<double>(point[2]));
        file += std::string("\1wwww", 5);
        tests::put_big(file, static_cast<std::int16_t>(point[1]));
        tests::put_big(file, point[0]);
    }
    tests::put_big(file, 2.0F);
    tests::put_big(file, std::uint16_t{4});
    for (std::uint32_t corner = 0; corner < 4; ++corner) tests::put_big(file, corner);
    file += "pp";
    check_is_square(read(file, "ply"));
}

TEST_CASE("a PLY file may name its faces before its vertices, with any line ends", "[scan]") {
    const std::string file =
        "ply\nformat ascii 1.0\ncomment C:\\scans\\\nelement face 1\n"
        "property list int int vertex_indices\nelement edge 1\nproperty int a\nelement vertex 4\n"
        "property float x\nproperty float y\nproperty list uchar int seen\nproperty float z\n"
        "end_header\n4 0 1 2 3\n17\n0 0 0 0\n2.0 0 2 5 5 0\n2e0 1 1 7 0\n+0 1 0 0\n\n";
    check_is_square(read(file, "ply"));
    for (const auto* line_end : {"\r\n", "\r"}) {
        std::string other;
        for (const char c : file) c == '\n' ? other += line_end : other += c;
        check_is_square(read(other, "ply"));
    }
}

TEST_CASE("in a binary PLY file with bare carriage returns a line feed belongs to the body",
          "[scan]") {
    std::string file =
        "ply\rformat binary_little_endian 1.0\relement vertex 3\rproperty char x\r"
        "property char y\rproperty char z\relement face 1\r"
        "property list char char vertex_indices\rend_header\r";
    const auto mesh = read(file + std::string("\n\0\0\0\n\0\0\0\n\3\0\1\2", 13), "ply");
    CHECK(mesh.points == std::vector<ScanPoint>{{10, 0, 0}, {0, 10, 0}, {0, 0, 10}});
}

TEST_CASE("faces of an OBJ file may be written in every way", "[scan]") {
    const std::string points = "v 0 0 0\nv 2 0 0 1.0\nv 2 1 0 0.5 0.5 0.5\nv 0 1 0\n";
    for (const auto* face :
         {"f 1 2 3 4", "f 1/1 2/2 3/3 4/4", "f 1//1 2//1 3//1 4//1", "f 1/1/1 2/2/1 3/3/1 4/4/1",
          "f -4 -3 -2 -1", "f -4/-1 -3//-1 3/1/1 4 # the floor", "  f\t1 2 \\\n 3 4  ",
          "f 1 2 3\\\r\n4\r", "f 1 2 3\nf 1 3 4"}) {
        CAPTURE(face);
        check_is_square(read("# made up\nmtllib a.mtl\n" + points + "vn 0 0 1\nvt 0 0\ns off\n" +
                                 face + "\nl 1 2\ng end",
                             "obj"));
    }
}

TEST_CASE("faces of an OBJ file may stand before their points", "[scan]") {
    check_is_square(read("f 1 2 3 4\nv 0 0 0\nv 2 0 0\nv 2 1 0\nv 0 1 0", "obj"));
}

TEST_CASE("a new-line in a comment or a name that ends in a backslash is not joined", "[scan]") {
    check_is_square(read("# C:\\scans\\\nv 0 0 0\nv 2 0 0\nv 2 1 0\nv 0 1 0\nf 1 2 3 4", "obj"));
}

TEST_CASE("numbers too small for a float are nought", "[scan]") {
    check_is_square(read("v 1e-60 0 -1e-999\nv 2 0 0\nv 2 1 0\nv 0 1 0\nf 1 2 3 4", "obj"));
}

TEST_CASE("triangles without an area or with a corner that is not finite are dropped and counted",
          "[scan]") {
    const std::string points =
        "v 0 0 0\nv 2 0 0\nv 2 1 0\nv 0 1 0\nv nan 0 0\nv 1e99 5 5\nv 1 0 0\nv 0 0 0\nv -inf 1 2\n"
        "v 90 90 90\n";
    const auto mesh = read(points +
                               "f 1 2 3 4\nf 1 1 2\nf 1 2 5\nf 6 1 2\nf 1 7 2\nf 1 8 2\nf 1 2\nf "
                               "3\nf 9 1 2\nf\n",
                           "obj");
    CHECK(mesh.points == corners_of_square);  // and without the points that no triangle has
    CHECK(mesh.triangles == square_as_fan);
    CHECK(mesh.dropped == 9);
    CHECK(mesh.hi == ScanPoint{2, 1, 0});
}

TEST_CASE("a triangle of an STL file that is not finite is dropped", "[scan]") {
    const auto sheet = tests::wavy_sheet(1, 1);
    auto file = mesh_file(sheet, MeshForm::stl);
    file.replace(84 + 50 + 12, 4, std::string("\0\0\x80\x7F", 4));
    const auto mesh = read(file, "stl");
    CHECK(mesh.dropped == 1);
    CHECK(mesh.triangles == std::vector<ScanTriangle>{{0, 1, 2}});
}

TEST_CASE("reading a mesh tells how far it is and can be cancelled at any time", "[scan]") {
    const tests::ScratchFolder folder{"scan_mesh_test"};
    const auto sheet = tests::wavy_sheet(90, 90);
    for (const auto form : tests::mesh_forms) {
        CAPTURE(tests::name_of(form));
        const auto path = folder.path / ("sheet." + tests::ending_of(form));
        REQUIRE(write_whole_file(path, mesh_file(sheet, form)));
        std::vector<double> calls;
        const auto mesh = read_scan_mesh(path, {[&](double done) {
                                             calls.push_back(done);
                                             return true;
                                         }});
        REQUIRE(mesh);
        CHECK(mesh->triangles == sheet.triangles);
        CHECK(calls.size() >= 4);
        CHECK(std::is_sorted(calls.begin(), calls.end()));
        CHECK(calls.front() == 0.0);
        CHECK(calls.back() == 1.0);
        for (std::size_t most = 0; most < calls.size(); most += 3) {
            std::size_t count = 0;
            const auto cancelled = read_scan_mesh(path, {[&](double) { return count++ < most; }});
            REQUIRE_FALSE(cancelled);
            CHECK(cancelled.error().code == ErrorCode::cancelled);
            CHECK(count == most + 1);
        }
    }
}
