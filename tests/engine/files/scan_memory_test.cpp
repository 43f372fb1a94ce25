#include "engine/files/scan_mesh.h"

#include "tests/engine/files/allocation_peak.h"
#include "tests/engine/files/scan_checks.h"
#include "tests/support/mesh_files.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace engine;

namespace {

std::string repeated(std::string_view text, std::size_t count) {
    std::string all;
    all.reserve(text.size() * count);
    for (std::size_t i = 0; i < count; ++i) all += text;
    return all;
}

std::string ply_of(const std::string& form, const std::string& elements, const std::string& body) {
    return "ply\nformat " + form + " 1.0\n" + elements + "end_header\n" + body;
}

const std::string vertices_of_chars = "property char x\nproperty char y\nproperty char z\n";

// 200 vertices of three bytes, and polygons of that many corners.
std::string ply_of_polygons(std::size_t count) {
    std::string body;
    for (int i = 0; i < 200; ++i)
        body += {static_cast<char>(i % 14), static_cast<char>(i / 14), static_cast<char>(i % 3)};
    std::string polygon(1, static_cast<char>(200));
    for (int i = 0; i < 200; ++i) polygon += static_cast<char>(i);
    return ply_of("binary_little_endian",
                  "element vertex 200\n" + vertices_of_chars + "element face " +
                      std::to_string(count) + "\nproperty list uchar uchar vertex_indices\n",
                  body + repeated(polygon, count));
}

std::string ply_of_points_of_chars(std::size_t count) {
    std::string body;
    for (std::size_t i = 0; i < count; ++i)
        body += {static_cast<char>(i % 100), static_cast<char>(i / 100), static_cast<char>(i % 7)};
    return ply_of("binary_little_endian",
                  "element vertex " + std::to_string(count) + "\n" + vertices_of_chars +
                      "element face 1\nproperty list uchar int vertex_indices\n",
                  body + std::string("\3\0\0\0\0\1\0\0\0\2\0\0\0", 13));
}

std::string stl_of_single_triangles(std::size_t count, tests::MeshForm form) {
    tests::PlainMesh mesh;
    for (std::uint32_t i = 0; i < count; ++i) {
        const auto x = static_cast<float>(i);
        mesh.points.insert(mesh.points.end(), {{x, 0, 0}, {x, 1, 0}, {x, 0, 1}});
        mesh.triangles.push_back({3 * i, 3 * i + 1, 3 * i + 2});
    }
    return mesh_file(mesh, form);
}

// One strip of `count` one-byte corners, in `nodes` nodes.
std::string glb_of_strips(std::size_t count, std::size_t nodes) {
    std::string raw;
    for (const float coordinate : {0.F, 0.F, 0.F, 1.F, 0.F, 0.F, 0.F, 1.F, 0.F})
        tests::put(raw, coordinate);
    for (std::size_t i = 0; i < count; ++i) raw += static_cast<char>(i % 3);
    return tests::glb_file(
        R"({"asset":{"version":"2.0"},"nodes":[{"mesh":0})" +
            repeated(R"(,{"mesh":0})", nodes - 1) +
            R"(],"meshes":[{"primitives":[{"mode":5,"attributes":{"POSITION":0},"indices":1}]}],)"
            R"("accessors":[{"bufferView":0,"componentType":5126,"type":"VEC3","count":3},)"
            R"({"bufferView":1,"componentType":5121,"type":"SCALAR","count":)" +
            std::to_string(count) +
            R"(}],"bufferViews":[{"buffer":0,"byteLength":36},{"buffer":0,"byteOffset":36,)"
            R"("byteLength":)" +
            std::to_string(count) + R"(}],"buffers":[{"byteLength":)" + std::to_string(raw.size()) +
            "}]}",
        raw);
}

struct Row {
    std::string name;
    std::string ending;
    std::string bytes;
};

// A JSON, alone and with so many raw bytes that its values may just be read.
void add_json(std::vector<Row>& rows,
              const std::string& name,
              const std::string& begin,
              std::string_view part,
              const std::string& end) {
    const std::size_t count = 120'000 / part.size();
    const auto json = begin + repeated(part, count) + end;
    const auto values = static_cast<std::size_t>(std::count_if(
        json.begin(), json.end(), [](char c) { return c == ',' || c == '[' || c == '{'; }));
    rows.push_back({"JSON: " + name, "glb", tests::glb_file(json, "")});
    rows.push_back({"JSON with raw bytes: " + name, "glb",
                    tests::glb_file(json, std::string(values * 128 / 9, '\0'))});
}

std::vector<Row> greedy_files() {
    using tests::MeshForm;
    std::vector<Row> rows = {
        {"polygons of one-byte corners", "ply", ply_of_polygons(5'000)},
        {"points of one-byte coordinates", "ply", ply_of_points_of_chars(9'999)},
        {"binary triangles that share nothing", "stl",
         stl_of_single_triangles(6'000, MeshForm::stl)},
        {"ascii triangles that share nothing", "stl",
         stl_of_single_triangles(3'000, MeshForm::stl_ascii)},
        {"many points", "obj", repeated("v 1 2 3\n", 40'000) + "v 1 2 4\nv 1 3 3\nf 1 -1 -2\n"},
        {"many faces", "obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\n" + repeated("f 1 2 3\n", 40'000)},
        {"one great polygon", "obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf" + repeated(" 1 2 3", 40'000)},
        {"a strip of one-byte corners", "glb", glb_of_strips(500'000, 1)},
        {"a mesh in many nodes", "glb", glb_of_strips(50'000, 1'000)},
    };
    add_json(rows, "empty objects", R"({"nodes":[{})", ",{}", "]}");
    add_json(rows, "small objects", R"({"nodes":[{})", R"(,{"a":0})", "]}");
    add_json(rows, "objects with a longer key", R"({"nodes":[{})", R"(,{"seventeen letters":0})",
             "]}");
    add_json(rows, "lists of one", R"({"nodes":[{})", ",[0]", "]}");
    add_json(rows, "figures", R"({"nodes":[0)", ",0", "]}");
    add_json(rows, "short texts", R"({"nodes":["")", R"(,"")", "]}");
    add_json(rows, "longer texts", R"({"nodes":["")", R"(,"seventeen letters")", "]}");
    add_json(rows, "long texts", R"({"nodes":["")", ",\"" + std::string(16'000, 'x') + "\"", "]}");
    add_json(rows, "one text", R"({"nodes":[")", "letters ", "\"]}");
    add_json(rows, "one text without an end", R"({"nodes":[")", "letters ", "");
    add_json(rows, "one text of escapes", R"({"nodes":[")", R"(\u0001)", "");
    add_json(rows, "one key", R"({")", "letters ", R"(":0})");
    add_json(rows, "one number", R"({"nodes":[)", "1234567890", "]}");
    add_json(rows, "lists inside one another", R"({"nodes":)", "[", "]}");
    std::string keys = R"({"nodes":0)";
    for (int i = 0; i < 15'000; ++i) keys += ",\"" + std::to_string(i) + "\":0";
    rows.push_back({"JSON: many keys", "glb", tests::glb_file(keys + "}", "")});
    rows.push_back({"JSON with raw bytes: many keys", "glb",
                    tests::glb_file(keys + "}", std::string(15'000 * 128 / 9, '\0'))});
    return rows;
}

}  // namespace

TEST_CASE("mesh files made to grow in memory stay within ten times their size", "[scan]") {
    for (const auto& row : greedy_files()) {
        const tests::AllocationPeak peak;
        const auto mesh = read_scan_mesh_bytes(row.bytes, row.ending);
        const auto taken = row.bytes.size() + peak.bytes();
        CAPTURE(row.name, row.bytes.size(), taken,
                static_cast<double>(taken) / static_cast<double>(row.bytes.size()));
        CAPTURE(mesh ? std::to_string(mesh->triangles.size())
                     : to_text(mesh.error()).substr(0, 200));
        CHECK(taken <= 10 * row.bytes.size() + (std::size_t{64} << 10U));
        CHECK(tests::broken_promise(mesh).empty());
    }
}
