// What an accessor of a GLB file gives: elements of one sort in the raw chunk, inside its bounds.
// Source: glTF 2.0 specification, section 3.6 "Binary Data Storage", from memory.
#pragma once

#include "engine/files/glb_container.h"

#include <cstdint>

namespace engine {

// The numbers that glTF takes from OpenGL's.
enum class GlbComponent : std::uint16_t {
    uint8 = 5121,
    uint16 = 5123,
    uint32 = 5125,
    float32 = 5126
};

struct GlbElements {
    GlbComponent component{};
    const char* first = nullptr;
    std::size_t stride = 0;  // bytes from one element to the next
    std::size_t count = 0;

    const char* at(std::size_t index) const { return first + index * stride; }
    std::uint32_t index_at(std::size_t index) const;  // of whole numbers
};

// Errors (bad_file), with a JSON pointer in `where`: what is not there, what reaches out of its
// bounds, what is of another sort, what is sparse or compressed.
Result<GlbElements> positions_at(const nlohmann::json& root,
                                 std::string_view raw,
                                 std::size_t accessor);
Result<GlbElements> indices_at(const nlohmann::json& root,
                               std::string_view raw,
                               std::size_t accessor);

}  // namespace engine
