// GLB: the binary form of glTF 2.0 (metres, y up; specification section 3.4, from memory). Read are
// the triangles of all meshes in the scene, each where its nodes put it.
#include "engine/files/glb_accessor.h"
#include "engine/files/glb_nodes.h"
#include "engine/files/json_text.h"
#include "engine/files/scan_bytes.h"
#include "engine/files/scan_readers.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>

namespace engine {
namespace {

using Json = nlohmann::json;

// A value in the tree of the JSON, with its key and what the allocator adds, takes no more than
// that; its text comes on top. (Measured: 103 at most, short texts in a list.)
constexpr std::size_t bytes_of_json_value = 128;
// The parser and its message copy a token some ten times over.
constexpr std::size_t longest_json_token = std::size_t{16} << 10U;

enum class GlbMode { points, lines, line_loop, line_strip, triangles, strip, fan };

bool is_harmless(std::string_view extension) {
    constexpr std::array beginnings = {"KHR_materials_", "KHR_texture_", "KHR_lights_",
                                       "KHR_xmp",        "EXT_texture_", "MSFT_texture_"};
    return std::any_of(beginnings.begin(), beginnings.end(),
                       [&](const char* one) { return extension.starts_with(one); });
}

class GlbReader {
public:
    GlbReader(ScanReading& reading, const Json& root, std::string_view raw)
        : reading_{reading}, root_{root}, raw_{raw} {}

    bool read() {
        if (!needs_nothing_more() || !GlbNodes::read(reading_, root_, nodes_)) return false;
        const auto* nodes = member(root_, "nodes");
        for (std::size_t i = 0; i < nodes_.count(); ++i) {
            const auto* mesh = member((*nodes)[i], "mesh");
            if (mesh == nullptr) continue;
            std::optional<GlbTransform> placed;
            if (!reading_.goes_on(progress()) || !nodes_.place(i, placed)) return false;
            if (placed && !read_mesh(whole_number(mesh), *placed)) return false;
        }
        reading_.state_metres_and_y_up();
        return true;
    }

private:
    // Meshes may be used again and again; what counts is how much has been made of them.
    std::size_t progress() const {
        return reading_.triangle_count() * sizeof(ScanTriangle) +
               reading_.point_count() * sizeof(ScanPoint);
    }

    bool fail(const std::string& where, std::string message) {
        return reading_.fail(where, std::move(message) + "; save the scan again");
    }

    bool needs_nothing_more() {
        const auto* required = member(root_, "extensionsRequired");
        for (std::size_t i = 0; i < length_of(required); ++i) {
            const auto& one = (*required)[i];
            if (one.is_string() && is_harmless(one.get_ref<const std::string&>())) continue;
            const std::string name =
                one.is_string() ? in_short(one.get_ref<const std::string&>()) : "?";
            return reading_.fail("/extensionsRequired/" + std::to_string(i),
                                 "the file needs " + json_quoted(name) +
                                     ", which is not read; save the scan without compression");
        }
        return true;
    }

    bool read_mesh(std::optional<std::size_t> index, const GlbTransform& placed) {
        const auto* meshes = member(root_, "meshes");
        const auto* mesh = meshes != nullptr && index ? element(*meshes, *index) : nullptr;
        if (mesh == nullptr) return fail("/meshes", "a node has a mesh that is not there");
        first_points_.clear();
        const auto* primitives = member(*mesh, "primitives");
        for (std::size_t i = 0; i < length_of(primitives); ++i) {
            where_ = "/meshes/" + std::to_string(*index) + "/primitives/" + std::to_string(i);
            if (!read_primitive((*primitives)[i], placed)) return false;
        }
        return true;
    }

    bool read_primitive(const Json& primitive, const GlbTransform& placed) {
        const auto* stated = member(primitive, "mode");
        const auto mode = stated == nullptr ? std::size_t{4} : whole_number(stated).value_or(7);
        if (mode > static_cast<std::size_t>(GlbMode::fan)) return fail(where_, "no such mode");
        if (mode < static_cast<std::size_t>(GlbMode::triangles)) return true;
        const auto* attributes = member(primitive, "attributes");
        const auto accessor =
            attributes != nullptr ? whole_number(member(*attributes, "POSITION")) : std::nullopt;
        if (!accessor) return fail(where_, "it has no positions");
        const auto positions = positions_at(root_, raw_, *accessor);
        if (!positions) return reading_.fail(positions.error().where, positions.error().message);
        std::size_t first = 0;
        if (!add_points(*accessor, *positions, placed, first)) return false;
        Corners corners{positions->count, first, std::nullopt};
        if (const auto* indices = member(primitive, "indices")) {
            const auto found =
                indices_at(root_, raw_, whole_number(indices).value_or(~std::size_t{}));
            if (!found) return reading_.fail(found.error().where, found.error().message);
            corners.indices = *found;
        }
        return add_triangles(static_cast<GlbMode>(mode), corners, placed.turns_inside_out());
    }

    // Primitives of one mesh often share their positions.
    bool add_points(std::size_t accessor,
                    const GlbElements& positions,
                    const GlbTransform& placed,
                    std::size_t& first) {
        const auto [found, is_new] = first_points_.try_emplace(accessor, reading_.point_count());
        first = found->second;
        if (!is_new) return true;
        if (!reading_.make_room_for_points(positions.count)) return false;
        const bool stays = placed == GlbTransform{};
        for (std::size_t i = 0; i < positions.count; ++i) {
            const char* const at = positions.at(i);
            ScanPoint point{};
            for (std::size_t axis = 0; axis < 3; ++axis)
                point[axis] = value_at<float>(at + 4 * axis, ByteOrder::little);
            if (!reading_.goes_on(progress()) || !reading_.add(stays ? point : placed(point)))
                return false;
        }
        return true;
    }

    struct Corners {
        std::size_t points;
        std::size_t first;  // place of the first of these points in the mesh
        std::optional<GlbElements> indices;

        std::size_t count() const { return indices ? indices->count : points; }
        // At or behind `points` where the file is wrong.
        std::size_t operator[](std::size_t i) const { return indices ? indices->index_at(i) : i; }
    };

    bool add_triangles(GlbMode mode, const Corners& corners, bool is_inside_out) {
        const std::size_t count = corners.count();
        const std::size_t step = mode == GlbMode::triangles ? 3 : 1;
        if (count < 3 || (step == 3 && count % 3 != 0))
            return fail(where_, "its corners do not make whole triangles");
        if (!reading_.make_room_for_triangles(step == 3 ? count / 3 : count - 2)) return false;
        for (std::size_t i = 0; i + 2 < count; i += step) {
            std::array<std::size_t, 3> three = {i, i + 1, i + 2};
            if (mode == GlbMode::fan) three = {0, i + 1, i + 2};
            if (mode == GlbMode::strip && i % 2 == 1) three = {i + 1, i, i + 2};
            if (is_inside_out) std::swap(three[1], three[2]);
            if (!reading_.goes_on(progress()) || !add_triangle(three, corners)) return false;
        }
        return true;
    }

    bool add_triangle(const std::array<std::size_t, 3>& three, const Corners& corners) {
        ScanTriangle triangle{};
        for (std::size_t k = 0; k < 3; ++k) {
            const std::size_t corner = corners[three[k]];
            if (corner >= corners.points) {
                return fail(where_, "a triangle refers to point " + std::to_string(corner) +
                                        " but there are " + std::to_string(corners.points) +
                                        ", counted from 0");
            }
            triangle[k] = static_cast<std::uint32_t>(corners.first + corner);
        }
        return reading_.add(triangle);
    }

    ScanReading& reading_;
    const Json& root_;
    std::string_view raw_;
    GlbNodes nodes_;
    std::string where_;                                // the primitive that is read
    std::map<std::size_t, std::size_t> first_points_;  // of the mesh that is read, by accessor
};

}  // namespace

bool is_glb(std::string_view bytes) { return bytes.starts_with("glTF"); }

bool read_glb(ScanReading& reading) {
    const auto parts = split_glb(reading.bytes());
    if (!parts) return reading.fail(parts.error().where, parts.error().message);
    const auto needs = needs_of(parts->json);
    if (needs.longest_token > longest_json_token) {
        return reading.fail("JSON",
                            "a text or a number is longer than 16 KiB; save the scan without "
                            "pictures, or with them in the file's raw part");
    }
    if (!reading.take(needs.values * bytes_of_json_value + 2 * parts->json.size())) return false;
    const auto root = read_json(parts->json);
    if (!root) {
        return reading.fail("JSON, " + root.error().where,
                            root.error().message + "; save the scan again");
    }
    return GlbReader{reading, *root, parts->raw}.read();
}

}  // namespace engine
