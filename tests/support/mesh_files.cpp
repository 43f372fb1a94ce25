#include "tests/support/mesh_files.h"

#include <array>
#include <charconv>
#include <cmath>

namespace tests {
namespace {

void put_number(std::string& text, float value) {
    std::array<char, 32> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value);
    text.append(digits.data(), end.ptr);
}

void put_point(std::string& text, std::string_view before, const engine::ScanPoint& point) {
    text += before;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (axis > 0) text += ' ';
        put_number(text, point[axis]);
    }
    text += '\n';
}

std::string stl(const PlainMesh& mesh) {
    std::string file = "made up for a test";
    file.resize(80);
    put(file, static_cast<std::uint32_t>(mesh.triangles.size()));
    for (const auto& corners : mesh.triangles) {
        file.append(12, '\0');
        for (const auto corner : corners)
            for (const auto coordinate : mesh.points[corner]) put(file, coordinate);
        file.append(2, '\0');
    }
    return file;
}

std::string stl_ascii(const PlainMesh& mesh) {
    std::string file = "solid sheet\n";
    for (const auto& corners : mesh.triangles) {
        file += "  facet normal 0 0 1\n    outer loop\n";
        for (const auto corner : corners) put_point(file, "      vertex ", mesh.points[corner]);
        file += "    endloop\n  endfacet\n";
    }
    return file + "endsolid sheet\n";
}

std::string ply_header(const PlainMesh& mesh, const std::string& form) {
    return "ply\nformat " + form + " 1.0\ncomment made up for a test\nelement vertex " +
           std::to_string(mesh.points.size()) +
           "\nproperty float x\nproperty float y\nproperty float z\nelement face " +
           std::to_string(mesh.triangles.size()) +
           "\nproperty list uchar int vertex_indices\nend_header\n";
}

std::string ply(const PlainMesh& mesh, bool is_big) {
    auto file = ply_header(mesh, is_big ? "binary_big_endian" : "binary_little_endian");
    const auto add = [&](auto value) { is_big ? put_big(file, value) : put(file, value); };
    for (const auto& point : mesh.points)
        for (const auto coordinate : point) add(coordinate);
    for (const auto& corners : mesh.triangles) {
        file += '\3';
        for (const auto corner : corners) add(corner);
    }
    return file;
}

void put_indices(std::string& file,
                 std::string_view before,
                 const engine::ScanTriangle& corners,
                 std::uint32_t first) {
    file += before;
    for (const auto corner : corners) file += ' ' + std::to_string(corner + first);
    file += '\n';
}

std::string ply_ascii(const PlainMesh& mesh) {
    auto file = ply_header(mesh, "ascii");
    for (const auto& point : mesh.points) put_point(file, "", point);
    for (const auto& corners : mesh.triangles) put_indices(file, "3", corners, 0);
    return file;
}

std::string obj(const PlainMesh& mesh) {
    std::string file = "# made up for a test\no sheet\n";
    for (const auto& point : mesh.points) put_point(file, "v ", point);
    for (const auto& corners : mesh.triangles) put_indices(file, "f", corners, 1);
    return file;
}

std::string glb(const PlainMesh& mesh) {
    std::string raw;
    for (const auto& point : mesh.points)
        for (const auto coordinate : point) put(raw, coordinate);
    const auto index_offset = std::to_string(raw.size());
    for (const auto& corners : mesh.triangles)
        for (const auto corner : corners) put(raw, corner);
    const auto index_bytes = std::to_string(mesh.triangles.size() * 12);
    const auto json =
        R"({"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{"mesh":0}],)"
        R"("meshes":[{"primitives":[{"attributes":{"POSITION":0},"indices":1}]}],"accessors":[)"
        R"({"bufferView":0,"componentType":5126,"type":"VEC3","count":)" +
        std::to_string(mesh.points.size()) +
        R"(},{"bufferView":1,"componentType":5125,"type":"SCALAR","count":)" +
        std::to_string(mesh.triangles.size() * 3) +
        R"(}],"bufferViews":[{"buffer":0,"byteOffset":0,"byteLength":)" + index_offset +
        R"(},{"buffer":0,"byteOffset":)" + index_offset + R"(,"byteLength":)" + index_bytes +
        R"(}],"buffers":[{"byteLength":)" + std::to_string(raw.size()) + "}]}";
    return glb_file(json, raw);
}

}  // namespace

PlainMesh wavy_sheet(std::uint32_t columns, std::uint32_t rows) {
    PlainMesh mesh;
    std::vector<std::uint32_t> places(std::size_t{columns + 1} * (rows + 1), 0);  // index + 1
    const auto at = [&](std::uint32_t column, std::uint32_t row) {
        auto& place = places[std::size_t{row} * (columns + 1) + column];
        if (place == 0) {
            const float x = 3.0F * static_cast<float>(column) / static_cast<float>(columns);
            const float y = 2.0F * static_cast<float>(row) / static_cast<float>(rows);
            mesh.points.push_back({x, y, 0.1F * std::sin(5.0F * x) * std::cos(7.0F * y)});
            place = static_cast<std::uint32_t>(mesh.points.size());
        }
        return place - 1;
    };
    for (std::uint32_t row = 0; row < rows; ++row) {
        for (std::uint32_t column = 0; column < columns; ++column) {
            const auto a = at(column, row);
            const auto b = at(column + 1, row);
            const auto c = at(column + 1, row + 1);
            const auto d = at(column, row + 1);
            mesh.triangles.push_back({a, b, c});
            mesh.triangles.push_back({a, c, d});
        }
    }
    return mesh;
}

std::string name_of(MeshForm form) {
    switch (form) {
        case MeshForm::stl:
            return "binary stl";
        case MeshForm::stl_ascii:
            return "ascii stl";
        case MeshForm::ply:
            return "little-endian ply";
        case MeshForm::ply_big_endian:
            return "big-endian ply";
        case MeshForm::ply_ascii:
            return "ascii ply";
        case MeshForm::obj:
            return "obj";
        case MeshForm::glb:
            return "glb";
    }
    return {};
}

std::string ending_of(MeshForm form) {
    const auto name = name_of(form);
    return name.substr(name.rfind(' ') + 1);
}

std::string mesh_file(const PlainMesh& mesh, MeshForm form) {
    switch (form) {
        case MeshForm::stl:
            return stl(mesh);
        case MeshForm::stl_ascii:
            return stl_ascii(mesh);
        case MeshForm::ply:
            return ply(mesh, false);
        case MeshForm::ply_big_endian:
            return ply(mesh, true);
        case MeshForm::ply_ascii:
            return ply_ascii(mesh);
        case MeshForm::obj:
            return obj(mesh);
        case MeshForm::glb:
            return glb(mesh);
    }
    return {};
}

std::string glb_file(std::string json, std::string raw) {
    json.resize((json.size() + 3) / 4 * 4, ' ');
    raw.resize((raw.size() + 3) / 4 * 4);
    std::string file = "glTF";
    put(file, std::uint32_t{2});
    put(file, static_cast<std::uint32_t>(28 + json.size() + raw.size()));
    put(file, static_cast<std::uint32_t>(json.size()));
    file += "JSON" + json;
    put(file, static_cast<std::uint32_t>(raw.size()));
    file += std::string("BIN\0", 4) + raw;
    return file;
}

}  // namespace tests
