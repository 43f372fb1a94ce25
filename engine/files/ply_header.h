// The header of a PLY file: which elements follow, and what each of them is made of.
#pragma once

#include "engine/result.h"

#include <cstdint>
#include <string_view>
#include <vector>

namespace engine {

enum class PlyForm : std::uint8_t { ascii, little_endian, big_endian };
enum class PlyType : std::uint8_t { int8, uint8, int16, uint16, int32, uint32, float32, float64 };
enum class PlyRole : std::uint8_t { other, x, y, z, corners };

constexpr std::size_t size_of(PlyType type) {
    constexpr std::size_t sizes[] = {1, 1, 2, 2, 4, 4, 4, 8};
    return sizes[static_cast<std::size_t>(type)];
}
constexpr bool is_whole(PlyType type) { return type < PlyType::float32; }

struct PlyProperty {
    PlyType type{};
    PlyType count_type{};  // of a list: the type of the number before it
    bool is_list = false;
    PlyRole role = PlyRole::other;
};

enum class PlyKind : std::uint8_t { vertex, face, other };

struct PlyElement {
    std::string_view name;  // in the file's bytes
    PlyKind kind = PlyKind::other;
    std::uint64_t count = 0;
    std::vector<PlyProperty> properties;
};

struct PlyHeader {
    PlyForm form{};
    std::vector<PlyElement> elements;  // in the order in which they follow
    std::size_t bytes = 0;             // of the header itself
    std::size_t lines = 0;

    std::uint64_t count_of(PlyKind kind) const;
};

// One element in the file takes at least that much.
std::uint64_t least_bytes(const PlyElement& element, PlyForm form);

// Checked: there is a vertex element with x, y and z as plain numbers; faces have one list of whole
// numbers for their corners; every element has properties; and the bytes behind the header can
// hold as many elements as it states. Error: bad_file, with the line in `where`.
Result<PlyHeader> read_ply_header(std::string_view bytes);

}  // namespace engine
