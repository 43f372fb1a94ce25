#include "engine/files/scan_mesh.h"
#include "engine/files/whole_file.h"

#include "tests/support/mesh_files.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

using namespace engine;

namespace {

struct Row {
    std::string bytes;
    std::string where;
    std::string reason;  // a part of the message
};

void check_refused(const std::string& name, const std::vector<Row>& rows) {
    for (const auto& row : rows) {
        const auto mesh = read_scan_mesh_bytes(row.bytes, name);
        CAPTURE(row.bytes, mesh ? std::string("read") : to_text(mesh.error()));
        REQUIRE_FALSE(mesh);
        CHECK(mesh.error().code == ErrorCode::bad_file);
        CHECK(mesh.error().where == row.where);
        CHECK(mesh.error().message.find(row.reason) != std::string::npos);
    }
}

const std::string format = "ply\nformat ascii 1.0\n";
const std::string vertices =
    "element vertex 3\nproperty float x\nproperty float y\nproperty float z\n";
const std::string faces = "element face 1\nproperty list uchar int vertex_indices\n";
const std::string header = format + vertices + faces + "end_header\n";
const std::string points = "0 0 0\n1 0 0\n0 1 0\n";

std::string swapped(std::string text, std::string_view from, const std::string& to) {
    return text.replace(text.find(from), from.size(), to);
}

}  // namespace

TEST_CASE("what is no mesh is refused with what to save instead", "[scan]") {
    check_refused("van.pdf", {{"%PDF-1.4", "", "save the scan as PLY, STL, OBJ or GLB"},
                              {"", "", "the file is empty"},
                              {"{\"asset\":{}}", "", "save the scan as GLB"}});
    check_refused("van.gltf", {{"x", "", "save the scan as GLB"}});
    check_refused("van.ply", {{"plywood", "line 1", "begins with the line \"ply\""}});
    check_refused("van.GLB", {{"something else", "byte 0", "no GLB file"}});
}

TEST_CASE("what is wrong in an ASCII STL file is named with its line", "[scan]") {
    const std::string facet =
        "facet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\n"
        "endfacet\n";
    const std::string good = "solid\n" + facet + "endsolid\n";
    REQUIRE(read_scan_mesh_bytes(good, "stl"));
    check_refused(
        "stl",
        {{swapped(good, "vertex 1 0 0", "vertex 1 0"), "line 6", "\"vertex\" is not a number"},
         {swapped(good, "vertex 1 0 0", "vertex 1 0,5 0"), "line 5",
          "\"0,5\" is not a number; decimals take a point"},
         {swapped(good, "endloop", "vertex 5 5 5\nendloop"), "line 7",
          "\"endloop\" belongs here but there is \"vertex\""},
         {swapped(good, "endsolid\n", ""), "line 9", "\"facet\" belongs here but the file ends"},
         {"solid\nfacet", "line 2", "\"normal\" belongs here but the file ends"},
         {"solid\nendsolid\nfacets", "line 3", "\"solid\" belongs here"},
         {"solid\nendsolid", "", "holds no triangles"},
         {swapped(good, "vertex 1 0 0", "vertex 0 0 0"), "", "none of the file's 1"}});
}

TEST_CASE("a binary STL file of the wrong length says how much is missing", "[scan]") {
    const auto good = mesh_file(tests::wavy_sheet(2, 2), tests::MeshForm::stl);
    check_refused("stl", {{good.substr(0, good.size() - 1), "",
                           "says it has 8 triangles but holds 7; it is cut off or damaged"},
                          {good + std::string(50, 'x'), "", "8 triangles but holds 9"},
                          {good.substr(0, 70), "", "too short for an STL file"},
                          {std::string(84, '\0'), "", "holds no triangles"}});
}

TEST_CASE("what is wrong in the header of a PLY file is named with its line", "[scan]") {
    REQUIRE(read_scan_mesh_bytes(header + points + "3 0 1 2", "ply"));
    const auto row = [&](std::string_view from, const std::string& to, int line,
                         const std::string& reason) {
        return Row{swapped(header, from, to) + points + "3 0 1 2", "line " + std::to_string(line),
                   reason};
    };
    check_refused(
        "ply",
        {row("ascii", "text", 2, "the format \"text\" is not known"),
         row("format ascii 1.0\n", "", 8, "does not say its format"),
         row("element vertex 3", "elements vertex 3", 3, "does not belong in the header"),
         row("vertex 3", "vertex -3", 3, "needs a count"),
         row("vertex 3", "vertex 99999999999999999999", 3, "needs a count"),
         row("vertex 3", "vertex 18446744073709551615", 9, "more than the file can hold"),
         row("vertex 3", "vertex 300", 9, "promises 300 of \"vertex\""),
         row("face 1", "face 1000", 9, "promises 1000 of \"face\""),
         row("vertex 3", "vertex 0", 9, "holds no vertices"),
         row("element face", "element vertex", 7, "there twice"),
         row("element vertex 3\n", "", 3, "a property before any element"),
         row("property float y", "property real y", 5, "\"real\" is not a type"),
         row("property float y", "property list float int y", 5,
             "cannot be a number with decimals"),
         row("property float y", "property list int float y", 5, "must be a list"),
         row("property float y", "property float x", 5, "there twice"),
         row("property float y", "property float w", 9, "do not have x, y and z"),
         row("vertex_indices", "corners", 9, "no vertex_indices"),
         row("uchar int vertex", "uchar float vertex", 8, "must be whole numbers"),
         row("list uchar int vertex", "int vertex", 8, "must be a list"),
         row("end_header\n", "element edge 2\nend_header\n", 10, "\"edge\" has no properties"),
         row("end_header", "comment", 10, "\"0\" does not belong in the header"),
         Row{header.substr(0, header.find("end_header")), "line 9", "does not end"}});
}

TEST_CASE("what is wrong in the body of a PLY file is named with its place", "[scan]") {
    check_refused(
        "ply", {{header + points + "3 0 1 3", "line 13", "refers to vertex 3 but there are 3"},
                {header + points + "3 0 1 -1", "line 13", "refers to vertex -1"},
                {header + points + "9 0 1 2", "line 13", "a list here has the length 9"},
                {header + points + "-1 0 1", "line 13", "a list here has the length -1"},
                {header + points + "3 0 1 2.5", "line 13", "\"2.5\" is not a number"},
                {header + points + "3 0 1", "line 13", "the length 3, which the file cannot hold"},
                {header + points + "2 0 1", "", "none of the file's 1 triangles has an area"},
                {header + points + "3 0 1 2\n3 0 1 2", "", "goes on behind what its header"},
                {header + swapped(points, "1 0 0", "1 0 x") + "3 0 1 2", "line 11",
                 "\"x\" is not a number"}});
    const auto good = mesh_file(tests::wavy_sheet(1, 1), tests::MeshForm::ply);
    auto bad = good;
    bad[good.size() - 1] = 1;
    check_refused("ply", {{bad, "face 2", "refers to vertex 16777219 but there are 4"},
                          {good.substr(0, good.size() - 1), "face 2", "the length 3"},
                          {good.substr(0, good.size() - 13), "face 2", "the file ends here"},
                          {good + "more", "", "goes on behind what its header"}});
}

TEST_CASE("a cloud of points is refused with what to do", "[scan]") {
    check_refused("ply", {{format + vertices + "end_header\n" + points, "line 7",
                           "is a cloud of points without faces; make a mesh of it in the scanning "
                           "program and save that"}});
    check_refused("obj",
                  {{"v 0 0 0\nv 1 0 0\np 1 2\n", "",
                    "holds points but no faces; make a mesh of them in the scanning program"}});
}

TEST_CASE("what is wrong in an OBJ file is named with its line", "[scan]") {
    const std::string good = "v 0 0 0\nv 1 0 0\n\nv 0 1 0\n";
    check_refused("obj",
                  {{good + "f 1 2 4\nf 1 2 9\nf 1 2 7", "line 6", "point 9 but the file has 3"},
                   {good + "f 0 1 2", "line 5", "refers to point 0, which is not there"},
                   {good + "f 1 2 -4", "line 5", "refers to point -4, which is not there"},
                   {good + "f 1 2 99999999999", "line 5", "refers to point 99999999999"},
                   {good + "f 1 2 99999999999999999999", "line 5", "is not a corner of a face"},
                   {good + "f 1 2 \\\n3.5", "line 6", "\"3.5\" is not a corner of a face"},
                   {good + "f 1/ 2/ 3/", "line 5", "\"1/\" is not a corner of a face"},
                   {good + "f 1/1/ 2 3", "line 5", "\"1/1/\" is not a corner of a face"},
                   {good + "f 1/1/1/1 2 3", "line 5", "\"1/1/1/1\" is not a corner of a face"},
                   {good + "f a b c", "line 5", "\"a\" is not a corner of a face"},
                   {"v 0 0\nf 1 1 1", "line 1", "a number is missing here"},
                   {"v 0,0 1 0", "line 1", "\"0,0\" is not a number; decimals take a point"},
                   {"v 0x10 1 0", "line 1", "\"0x10\" is not a number"},
                   {"v +-1 1 0", "line 1", "\"+-1\" is not a number"},
                   {"# nothing", "", "holds no triangles"}});
}

TEST_CASE("an error of a mesh file begins with the file's path", "[scan]") {
    const tests::ScratchFolder folder{"scan_errors_test"};
    const auto path = folder.path / "van.obj";
    REQUIRE(write_whole_file(path, "v 0 0 0\nf 1 1 x\n"));
    const auto mesh = read_scan_mesh(path);
    REQUIRE_FALSE(mesh);
    CHECK(mesh.error().where == path.string() + ", line 2");
    const auto missing = read_scan_mesh(folder.path / "none.obj");
    REQUIRE_FALSE(missing);
    CHECK(missing.error().where == (folder.path / "none.obj").string());
}
