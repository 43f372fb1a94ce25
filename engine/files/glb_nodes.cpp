#include "engine/files/glb_nodes.h"

#include "engine/files/glb_container.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <limits>

namespace engine {
namespace {

using Json = nlohmann::json;

constexpr int deepest = 64;  // nodes inside one another

template <std::size_t count>
std::optional<std::array<double, count>> numbers(const Json* list) {
    if (length_of(list) != count) return std::nullopt;
    std::array<double, count> values{};
    for (std::size_t i = 0; i < count; ++i) {
        if (!(*list)[i].is_number()) return std::nullopt;
        values[i] = (*list)[i].get<double>();
    }
    return values;
}

// Column by column, as glTF writes them.
GlbTransform from_matrix(const std::array<double, 16>& columns) {
    GlbTransform made;
    for (std::size_t row = 0; row < 3; ++row)
        for (std::size_t column = 0; column < 4; ++column)
            made.rows[row][column] = columns[column * 4 + row];
    return made;
}

// Scaled, then turned by the quaternion x, y, z, w, then moved.
GlbTransform from_parts(const std::array<double, 3>& moved,
                        const std::array<double, 4>& turned,
                        const std::array<double, 3>& scaled) {
    const auto [x, y, z, w] = turned;
    const std::array<std::array<double, 3>, 3> turn = {
        {{1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)},
         {2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)},
         {2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)}}};
    GlbTransform made;
    for (std::size_t row = 0; row < 3; ++row) {
        for (std::size_t column = 0; column < 3; ++column)
            made.rows[row][column] = turn[row][column] * scaled[column];
        made.rows[row][3] = moved[row];
    }
    return made;
}

// No value where a part is stated and is not what it must be.
std::optional<GlbTransform> transform_of(const Json& node) {
    if (const auto* matrix = member(node, "matrix")) {
        const auto columns = numbers<16>(matrix);
        if (!columns) return std::nullopt;
        return from_matrix(*columns);
    }
    const auto* translation = member(node, "translation");
    const auto* rotation = member(node, "rotation");
    const auto* scale = member(node, "scale");
    const auto moved = translation ? numbers<3>(translation) : std::array<double, 3>{};
    const auto turned = rotation ? numbers<4>(rotation) : std::array<double, 4>{0, 0, 0, 1};
    const auto scaled = scale ? numbers<3>(scale) : std::array<double, 3>{1, 1, 1};
    if (!moved || !turned || !scaled) return std::nullopt;
    return from_parts(*moved, *turned, *scaled);
}

}  // namespace

ScanPoint GlbTransform::operator()(const ScanPoint& point) const {
    ScanPoint placed{};
    for (std::size_t row = 0; row < 3; ++row) {
        const auto& r = rows[row];
        const double sum = r[0] * static_cast<double>(point[0]) +
                           r[1] * static_cast<double>(point[1]) +
                           r[2] * static_cast<double>(point[2]) + r[3];
        constexpr auto most = static_cast<double>(std::numeric_limits<float>::max());
        placed[row] = std::abs(sum) <= most ? static_cast<float>(sum)
                                            : std::numeric_limits<float>::infinity();
    }
    return placed;
}

bool GlbTransform::turns_inside_out() const {
    const auto& [a, b, c] = rows;
    return a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) +
               a[2] * (b[0] * c[1] - b[1] * c[0]) <
           0.0;
}

GlbTransform operator*(const GlbTransform& outer, const GlbTransform& inner) {
    GlbTransform made;
    for (std::size_t row = 0; row < 3; ++row) {
        for (std::size_t column = 0; column < 4; ++column) {
            double sum = column == 3 ? outer.rows[row][3] : 0.0;
            for (std::size_t k = 0; k < 3; ++k) sum += outer.rows[row][k] * inner.rows[k][column];
            made.rows[row][column] = sum;
        }
    }
    return made;
}

bool GlbNodes::fail(std::size_t node, std::string message) {
    return reading_->fail("/nodes/" + std::to_string(node),
                          std::move(message) + "; the file is damaged, so save the scan again");
}

bool GlbNodes::read(ScanReading& reading, const Json& root, GlbNodes& nodes) {
    nodes.reading_ = &reading;
    nodes.root_ = &root;
    nodes.nodes_ = member(root, "nodes");
    const auto count = length_of(nodes.nodes_);
    if (!reading.take(count * sizeof(std::uint32_t) + count / 8 + 8)) return false;
    nodes.parents_.assign(count, no_parent);
    nodes.is_root_.assign(count, false);
    return nodes.read_parents() && nodes.read_scene();
}

bool GlbNodes::read_parents() {
    for (std::size_t node = 0; node < count(); ++node) {
        const auto* children = member((*nodes_)[node], "children");
        for (std::size_t i = 0; i < length_of(children); ++i) {
            const auto child = whole_number(element(*children, i));
            if (!child || *child >= count()) return fail(node, "one of its children is not there");
            if (parents_[*child] != no_parent) return fail(*child, "it is the child of two nodes");
            parents_[*child] = static_cast<std::uint32_t>(node);
        }
    }
    return true;
}

// The scene that the file shows, or else all that has no parent.
bool GlbNodes::read_scene() {
    const auto* scenes = member(*root_, "scenes");
    if (length_of(scenes) == 0) {
        for (std::size_t node = 0; node < count(); ++node)
            is_root_[node] = parents_[node] == no_parent;
        return true;
    }
    const auto shown = whole_number(member(*root_, "scene")).value_or(0);
    const auto* scene = element(*scenes, shown);
    if (scene == nullptr)
        return reading_->fail("/scene", "the scene is not there; save the scan again");
    const auto* roots = member(*scene, "nodes");
    for (std::size_t i = 0; i < length_of(roots); ++i) {
        const auto node = whole_number(element(*roots, i));
        if (!node || *node >= count())
            return reading_->fail("/scenes/" + std::to_string(shown),
                                  "one of its nodes is not there; save the scan again");
        is_root_[*node] = true;
    }
    return true;
}

bool GlbNodes::place(std::size_t node, std::optional<GlbTransform>& placed) {
    GlbTransform all;
    std::size_t at = node;
    for (int depth = 0; depth < deepest; ++depth) {
        const auto own = transform_of((*nodes_)[at]);
        if (!own) return fail(at, "its transform is not made of the right count of numbers");
        all = *own * all;
        if (is_root_[at]) {
            placed = all;
            return true;
        }
        if (parents_[at] == no_parent) return true;  // of another scene
        at = parents_[at];
    }
    return fail(node, "more than " + std::to_string(deepest) +
                          " nodes lie inside one another, or they go round in a circle");
}

}  // namespace engine
