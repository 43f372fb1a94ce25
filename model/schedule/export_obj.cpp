#include "model/resolve/piece_mesh.h"
#include "model/schedule/export.h"
#include "model/schedule/piece_words.h"

#include <array>
#include <charconv>

namespace model {
namespace {

template <class Number>
void append(std::string& out, Number value) {
    std::array<char, 32> text{};
    out.append(text.data(), std::to_chars(text.data(), text.data() + text.size(), value).ptr);
}

void append_triple(std::string& out, std::string_view key, const std::array<float, 3>& triple) {
    out += key;
    for (const float value : triple) {
        out += ' ';
        append(out, value == 0.0F ? 0.0F : value);
    }
    out += '\n';
}

// A name is all that stands on its line.
std::string on_one_line(std::string name) {
    for (auto& c : name)
        if (c == '\n' || c == '\r') c = ' ';
    return name;
}

}  // namespace

std::string obj_file(const Project& project, const Catalogue& catalogue, const Resolved& resolved) {
    const PieceWords words{project, catalogue, resolved};
    std::string out = "# " + on_one_line(project.name) + "\n# millimetres, z up\n";
    PieceMesher mesher{resolved, catalogue};
    engine::Mesh mesh;
    std::size_t first = 1;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        mesh = {};
        mesher.append(mesh, i);
        out += "o " + on_one_line(export_name(words, resolved, i)) + "\n";
        for (const auto& vertex : mesh.vertices) append_triple(out, "v", vertex.position);
        for (const auto& vertex : mesh.vertices) append_triple(out, "vn", vertex.normal);
        for (std::size_t k = 0; k < mesh.triangles.size(); ++k) {
            out += k % 3 == 0 ? "f " : " ";
            append(out, first + mesh.triangles[k]);
            out += "//";
            append(out, first + mesh.triangles[k]);
            if (k % 3 == 2) out += '\n';
        }
        first += mesh.vertices.size();
    }
    return out;
}

}  // namespace model
