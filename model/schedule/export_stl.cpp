#include "model/resolve/piece_mesh.h"
#include "model/schedule/export.h"
#include "model/schedule/export_bytes.h"

#include <array>
#include <cmath>

namespace model {
namespace {

using engine::MeshVertex;

std::array<float, 3> normal_of(const MeshVertex& a, const MeshVertex& b, const MeshVertex& c) {
    std::array<double, 3> u{};
    std::array<double, 3> v{};
    for (std::size_t i = 0; i < 3; ++i) {
        u[i] = static_cast<double>(b.position[i]) - static_cast<double>(a.position[i]);
        v[i] = static_cast<double>(c.position[i]) - static_cast<double>(a.position[i]);
    }
    const std::array<double, 3> n{u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2],
                                  u[0] * v[1] - u[1] * v[0]};
    const double size = std::sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
    if (!(size > 0.0)) return {};
    return {static_cast<float>(n[0] / size), static_cast<float>(n[1] / size),
            static_cast<float>(n[2] / size)};
}

void append_triangle(std::string& out, const std::array<const MeshVertex*, 3>& corners) {
    for (const float value : normal_of(*corners[0], *corners[1], *corners[2]))
        append_float(out, value);
    for (const auto* corner : corners)
        for (const float value : corner->position) append_float(out, value);
    append_u16(out, 0);
}

}  // namespace

// A header of 80 bytes, the count of triangles, then 50 bytes each (from memory). The header must
// not begin with "solid", by which readers know the text form.
std::string stl_file(const Catalogue& catalogue, const Resolved& resolved) {
    engine::Mesh mesh;
    PieceMesher mesher{resolved, catalogue};
    for (Index i = 0; i < resolved.pieces.size(); ++i) mesher.append(mesh, i);
    std::string out = "Barwright, millimetres, z up";
    out.resize(80, '\0');
    const auto& corners = mesh.triangles;
    out.reserve(84 + corners.size() / 3 * 50);
    append_u32(out, static_cast<std::uint32_t>(corners.size() / 3));
    for (std::size_t i = 0; i + 2 < corners.size(); i += 3) {
        append_triangle(out, {&mesh.vertices[corners[i]], &mesh.vertices[corners[i + 1]],
                              &mesh.vertices[corners[i + 2]]});
    }
    return out;
}

}  // namespace model
