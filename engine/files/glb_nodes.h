// Where the meshes of a GLB file stand: the nodes of its scene and their transforms.
// Source: glTF 2.0 specification, section 3.5 "Scenes", from memory.
#pragma once

#include "engine/files/scan_reading.h"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <string>
#include <vector>

namespace engine {

// Three rows of an affine transform: what a point's x, y and z become.
struct GlbTransform {
    std::array<std::array<double, 4>, 3> rows{{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}}};

    ScanPoint operator()(const ScanPoint& point) const;
    bool turns_inside_out() const;  // then triangles wind the other way round

    bool operator==(const GlbTransform&) const = default;
};

// `inner` first.
GlbTransform operator*(const GlbTransform& outer, const GlbTransform& inner);

// The tree of the nodes, without recursion: each knows its parent.
class GlbNodes {
public:
    // Errors: reading's, where this gives false. A node with two parents, a circle, a node that is
    // not there, and what lies too deep are refused.
    static bool read(ScanReading& reading, const nlohmann::json& root, GlbNodes& nodes);

    std::size_t count() const { return parents_.size(); }
    // No value where the node is not in the scene. A node's own transform is read each time.
    bool place(std::size_t node, std::optional<GlbTransform>& placed);

private:
    static constexpr std::uint32_t no_parent = 0xFFFFFFFF;

    bool read_parents();
    bool read_scene();
    bool fail(std::size_t node, std::string message);

    ScanReading* reading_ = nullptr;
    const nlohmann::json* nodes_ = nullptr;
    const nlohmann::json* root_ = nullptr;
    std::vector<std::uint32_t> parents_;
    std::vector<bool> is_root_;  // of the scene
};

}  // namespace engine
