#include "engine/files/glb_container.h"

#include "engine/files/scan_bytes.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdint>
#include <string>

namespace engine {
namespace {

constexpr std::size_t header_bytes = 12;
constexpr std::size_t chunk_header_bytes = 8;
constexpr std::uint32_t json_chunk = 0x4E4F534A;  // "JSON"
constexpr std::uint32_t raw_chunk = 0x004E4942;   // "BIN" and a nought

std::uint32_t word_at(std::string_view bytes, std::size_t offset) {
    return value_at<std::uint32_t>(bytes.data() + offset, ByteOrder::little);
}

Error fault(std::size_t offset, std::string message) {
    return {ErrorCode::bad_file, "byte " + std::to_string(offset), std::move(message)};
}

}  // namespace

Result<GlbParts> split_glb(std::string_view bytes) {
    if (bytes.size() < header_bytes + chunk_header_bytes || !bytes.starts_with("glTF"))
        return fault(0, "this is no GLB file, or only its beginning; save the scan again");
    if (const auto version = word_at(bytes, 4); version != 2) {
        return fault(4, "the file is of glTF version " + std::to_string(version) +
                            "; save the scan as glTF 2.0 binary (GLB)");
    }
    if (word_at(bytes, 8) > bytes.size())
        return fault(8, "the file is shorter than it says; it is cut off, so save the scan again");
    GlbParts parts;
    for (std::size_t at = header_bytes; bytes.size() - at >= chunk_header_bytes;) {
        const std::size_t length = word_at(bytes, at);
        const auto kind = word_at(bytes, at + 4);
        const bool is_first = at == header_bytes;
        if (length > bytes.size() - at - chunk_header_bytes)
            return fault(at,
                         "a chunk is longer than the file; it is cut off, so save the scan again");
        if (is_first != (kind == json_chunk))
            return fault(at, "the file must begin with its one chunk of JSON; save the scan again");
        const auto content = bytes.substr(at + chunk_header_bytes, length);
        if (is_first) parts.json = content;
        if (kind == raw_chunk && parts.raw.empty()) parts.raw = content;
        at += chunk_header_bytes + length;
    }
    return parts;
}

// Before every value stands a comma, a bracket, or nothing.
JsonNeeds needs_of(std::string_view json) {
    JsonNeeds needs{1, 0};
    std::size_t token = 0;
    bool is_text = false;
    for (std::size_t i = 0; i < json.size(); ++i) {
        const char c = json[i];
        const bool is_opening = c == '[' || c == '{';
        const bool is_between = is_opening || c == ',' || c == ':' || c == ']' || c == '}';
        if (is_text && c == '\\') {
            ++i;
            token += 2;
        } else if (c == '"') {
            is_text = !is_text;
            token = 0;
        } else if (!is_text && (is_between || c == ' ' || c == '\n' || c == '\r' || c == '\t')) {
            token = 0;
            if (is_opening || c == ',') ++needs.values;
        } else {
            ++token;
        }
        needs.longest_token = std::max(needs.longest_token, token);
    }
    return needs;
}

const nlohmann::json* member(const nlohmann::json& object, const char* key) {
    if (!object.is_object()) return nullptr;
    const auto found = object.find(key);
    return found == object.end() ? nullptr : &*found;
}

const nlohmann::json* element(const nlohmann::json& list, std::size_t index) {
    return list.is_array() && index < list.size() ? &list[index] : nullptr;
}

std::optional<std::size_t> whole_number(const nlohmann::json* value) {
    if (value == nullptr || !value->is_number()) return std::nullopt;
    if (value->is_number_unsigned()) return value->get<std::size_t>();
    const double number = value->get<double>();
    constexpr double most = 9007199254740992.0;  // 2^53: beyond it a double skips whole numbers
    if (!(number >= 0.0 && number <= most)) return std::nullopt;
    const auto whole = static_cast<std::size_t>(number);
    if (static_cast<double>(whole) != number) return std::nullopt;
    return whole;
}

std::size_t length_of(const nlohmann::json* list) {
    return list != nullptr && list->is_array() ? list->size() : 0;
}

}  // namespace engine
