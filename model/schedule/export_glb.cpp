#include "engine/files/json_text.h"
#include "model/resolve/piece_mesh.h"
#include "model/schedule/export.h"
#include "model/schedule/export_bytes.h"
#include "model/schedule/json_lines.h"
#include "model/schedule/piece_words.h"

#include <algorithm>
#include <array>

namespace model {
namespace {

// Numbers of the standard (Khronos glTF 2.0, from memory; checked by its validator).
constexpr int array_buffer = 34962;
constexpr int element_array_buffer = 34963;
constexpr int type_float = 5126;
constexpr int type_unsigned_int = 5125;
constexpr std::uint32_t vertex_bytes = 24;  // position and normal

struct MeshRange {
    std::size_t first_vertex = 0;
    std::size_t vertex_count = 0;
    std::size_t first_index = 0;
    std::size_t index_count = 0;
    std::array<float, 3> least{};
    std::array<float, 3> most{};
};

class Writer {
public:
    Writer(const Project& project, const Catalogue& catalogue, const Resolved& resolved)
        : project_{project}, resolved_{resolved}, words_{project, catalogue, resolved} {
        PieceMesher mesher{resolved, catalogue};
        mesher.reserve_for_all(mesh_);
        for (Index i = 0; i < resolved.pieces.size(); ++i) add(mesher, i);
    }

    std::string file() {
        auto json = tree();
        while (json.size() % 4 != 0) json += ' ';
        const auto binary_bytes = static_cast<std::uint32_t>(vertices_end() + index_bytes());
        std::string out = "glTF";
        append_u32(out, 2);
        append_u32(out, static_cast<std::uint32_t>(28 + json.size()) + binary_bytes);
        append_u32(out, static_cast<std::uint32_t>(json.size()));
        out += "JSON";
        out += json;
        append_u32(out, binary_bytes);
        out += std::string_view("BIN\0", 4);
        append_binary(out);
        return out;
    }

private:
    void add(PieceMesher& mesher, Index piece) {
        MeshRange range{.first_vertex = mesh_.vertices.size(),
                        .first_index = mesh_.triangles.size()};
        mesher.append(mesh_, piece);
        range.vertex_count = mesh_.vertices.size() - range.first_vertex;
        range.index_count = mesh_.triangles.size() - range.first_index;
        if (range.index_count == 0) return;
        range.least = range.most = mesh_.vertices[range.first_vertex].position;
        for (std::size_t i = range.first_vertex; i < mesh_.vertices.size(); ++i) {
            for (std::size_t k = 0; k < 3; ++k) {
                const float value = mesh_.vertices[i].position[k];
                range.least[k] = std::min(range.least[k], value);
                range.most[k] = std::max(range.most[k], value);
            }
        }
        ranges_.push_back(range);
        names_.push_back(engine::json_quoted(export_name(words_, resolved_, piece)));
    }

    std::size_t vertices_end() const { return mesh_.vertices.size() * vertex_bytes; }
    std::size_t index_bytes() const { return mesh_.triangles.size() * 4; }

    void append_binary(std::string& out) const {
        out.reserve(out.size() + vertices_end() + index_bytes());
        for (const auto& vertex : mesh_.vertices) {
            for (const float value : vertex.position) append_float(out, value);
            for (const float value : vertex.normal) append_float(out, value);
        }
        for (const auto& range : ranges_) {
            for (std::size_t i = 0; i < range.index_count; ++i) {
                const auto index = mesh_.triangles[range.first_index + i] - range.first_vertex;
                append_u32(out, static_cast<std::uint32_t>(index));
            }
        }
    }

    std::string tree() const {
        std::string text;
        JsonLines json{text};
        json.raw(R"({"asset":{"version":"2.0","generator":"Barwright"},"scene":0,)");
        json.raw(R"("scenes":[{"nodes":[0]}],"nodes":[)");
        nodes(json);
        json.raw(R"(],"materials":[{"name":"aluminium","pbrMetallicRoughness":)");
        json.raw(R"({"baseColorFactor":[0.8,0.81,0.83,1],"metallicFactor":0.7,)");
        json.raw(R"("roughnessFactor":0.45}}],"meshes":[)");
        for (std::size_t i = 0; i < ranges_.size(); ++i) {
            if (i > 0) json.raw(",");
            json.raw("{\"name\":").raw(names_[i]).raw(",\"primitives\":[{\"attributes\":");
            json.raw("{\"POSITION\":").raw(std::to_string(3 * i));
            json.raw(",\"NORMAL\":").raw(std::to_string(3 * i + 1));
            json.raw("},\"indices\":").raw(std::to_string(3 * i + 2)).raw(",\"material\":0}]}");
        }
        json.raw("],\"accessors\":[");
        for (std::size_t i = 0; i < ranges_.size(); ++i) {
            if (i > 0) json.raw(",");
            accessors(json, ranges_[i]);
        }
        json.raw("],\"bufferViews\":[");
        view(json, 0, vertices_end(), array_buffer);
        json.raw(",");
        view(json, vertices_end(), index_bytes(), element_array_buffer);
        json.raw("],\"buffers\":[{\"byteLength\":");
        json.raw(std::to_string(vertices_end() + index_bytes())).raw("}]}");
        return text;
    }

    // The first node turns z up in millimetres into y up in metres.
    void nodes(JsonLines& json) const {
        json.raw("{\"name\":").text(project_.name);
        json.raw(R"(,"matrix":[0.001,0,0,0,0,0,-0.001,0,0,0.001,0,0,0,0,0,1],"children":[)");
        for (std::size_t i = 0; i < ranges_.size(); ++i)
            json.raw(i > 0 ? "," : "").raw(std::to_string(i + 1));
        json.raw("]}");
        for (std::size_t i = 0; i < ranges_.size(); ++i) {
            json.raw(",{\"name\":").raw(names_[i]).raw(",\"mesh\":").raw(std::to_string(i));
            json.raw("}");
        }
    }

    static void triple(JsonLines& json, const std::array<float, 3>& v) {
        json.reals(
            {static_cast<double>(v[0]), static_cast<double>(v[1]), static_cast<double>(v[2])});
    }

    static void accessors(JsonLines& json, const MeshRange& range) {
        const auto vectors = [&](std::size_t first_byte) -> JsonLines& {
            json.raw("{\"bufferView\":0,\"byteOffset\":");
            json.raw(std::to_string(range.first_vertex * vertex_bytes + first_byte));
            json.raw(",\"componentType\":").raw(std::to_string(type_float));
            json.raw(",\"count\":").raw(std::to_string(range.vertex_count));
            return json.raw(",\"type\":\"VEC3\"");
        };
        vectors(0).raw(",\"min\":");
        triple(json, range.least);
        json.raw(",\"max\":");
        triple(json, range.most);
        json.raw("},");
        vectors(12).raw("},{\"bufferView\":1,\"byteOffset\":");
        json.raw(std::to_string(range.first_index * 4));
        json.raw(",\"componentType\":").raw(std::to_string(type_unsigned_int));
        json.raw(",\"count\":").raw(std::to_string(range.index_count));
        json.raw(",\"type\":\"SCALAR\"}");
    }

    static void view(JsonLines& json, std::size_t first, std::size_t bytes, int target) {
        json.raw("{\"buffer\":0,\"byteOffset\":").raw(std::to_string(first));
        json.raw(",\"byteLength\":").raw(std::to_string(bytes));
        if (target == array_buffer) json.raw(",\"byteStride\":").raw(std::to_string(vertex_bytes));
        json.raw(",\"target\":").raw(std::to_string(target)).raw("}");
    }

    const Project& project_;
    const Resolved& resolved_;
    PieceWords words_;
    engine::Mesh mesh_;
    std::vector<MeshRange> ranges_;
    std::vector<std::string> names_;  // quoted; as in ranges_
};

}  // namespace

std::string glb_file(const Project& project, const Catalogue& catalogue, const Resolved& resolved) {
    return Writer{project, catalogue, resolved}.file();
}

}  // namespace model
