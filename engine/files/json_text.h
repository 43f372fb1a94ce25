// Reading JSON that may come from anywhere: bounded in size and depth, no key twice.
#pragma once

#include "engine/result.h"

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <string>
#include <string_view>

namespace engine {

struct JsonLimits {
    std::size_t most_bytes = std::size_t{64} << 20U;
    std::size_t most_values = 4'000'000;
    std::size_t deepest = 64;  // lists and objects inside one another
};

// The text as a tree. Errors (bad_file): what is not JSON, with "line 3, column 14" in `where`; a
// key that an object has twice, with its JSON pointer; what is over a limit.
Result<nlohmann::json> read_json(std::string_view text, const JsonLimits& limits = {});

// A JSON string with its quotes. Bytes that are not UTF-8 become U+FFFD.
std::string json_quoted(std::string_view text);

bool is_utf8(std::string_view text);

// The start of a text that may be anything, cut between characters, for a message.
std::string in_short(std::string_view text, std::size_t longest = 60);

// One step of a JSON pointer (RFC 6901): "/a~1b" for the key "a/b".
std::string json_pointer_step(std::string_view key);

}  // namespace engine
