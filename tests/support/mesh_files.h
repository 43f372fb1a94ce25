// Mesh files of every kind that the readers of scans know, of made-up meshes.
#pragma once

#include "engine/files/scan_mesh.h"

#include <string>
#include <vector>

namespace tests {

struct PlainMesh {
    std::vector<engine::ScanPoint> points;
    std::vector<engine::ScanTriangle> triangles;
};

// A sheet with waves of columns x rows squares, two triangles each, some 3 long. Points are in the
// order in which triangles use them, so that welded files give the same mesh as all others.
PlainMesh wavy_sheet(std::uint32_t columns, std::uint32_t rows);

enum class MeshForm { stl, stl_ascii, ply, ply_big_endian, ply_ascii, obj, glb };
inline constexpr MeshForm mesh_forms[] = {
    MeshForm::stl,       MeshForm::stl_ascii, MeshForm::ply, MeshForm::ply_big_endian,
    MeshForm::ply_ascii, MeshForm::obj,       MeshForm::glb};

std::string name_of(MeshForm form);    // "ascii stl"
std::string ending_of(MeshForm form);  // "stl"
std::string mesh_file(const PlainMesh& mesh, MeshForm form);

// A GLB file of these two chunks.
std::string glb_file(std::string json, std::string raw);

// Appends the bytes of a number.
template <class Value>
void put(std::string& bytes, Value value) {
    bytes.append(reinterpret_cast<const char*>(&value), sizeof(value));
}
template <class Value>
void put_big(std::string& bytes, Value value) {
    const auto* const raw = reinterpret_cast<const char*>(&value);
    for (std::size_t i = sizeof(value); i > 0; --i) bytes += raw[i - 1];
}

}  // namespace tests
