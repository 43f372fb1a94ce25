// The outside of a GLB file: a header of 12 bytes, the chunk of JSON and the chunk of raw bytes.
// Source: glTF 2.0 specification, section 4.4 "GLB File Format Specification", from memory.
#pragma once

#include "engine/result.h"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <string_view>

namespace engine {

struct GlbParts {
    std::string_view json;
    std::string_view raw;  // empty where the file has none
};

// Error: bad_file.
Result<GlbParts> split_glb(std::string_view bytes);

// What a JSON text will need when it is read, told without reading it.
struct JsonNeeds {
    std::size_t values = 0;         // no more than that many
    std::size_t longest_token = 0;  // bytes of a text or a number
};
JsonNeeds needs_of(std::string_view json);

// Members of a JSON tree that may hold anything: null, or no value, where it is not there or not of
// that sort. A count may be written with decimals as long as it is whole.
const nlohmann::json* member(const nlohmann::json& object, const char* key);
const nlohmann::json* element(const nlohmann::json& list, std::size_t index);
std::optional<std::size_t> whole_number(const nlohmann::json* value);
std::size_t length_of(const nlohmann::json* list);  // 0 where it is none

}  // namespace engine
