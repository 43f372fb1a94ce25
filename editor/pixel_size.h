// Sizes in pixels as they are typed on the command line: "1600x1000".
#pragma once

#include "engine/render/camera.h"

#include <optional>
#include <string>
#include <string_view>

namespace editor {

struct SizeRange {
    int least_width = 1;
    int least_height = 1;
    int most = 1;  // of both
};

inline constexpr SizeRange picture_sizes{16, 16, 8192};
inline constexpr SizeRange window_sizes{720, 480, 16'384};  // less has no room for the panels

// None for any other text and for a size out of the range.
std::optional<engine::Viewport> read_size(std::string_view text, const SizeRange& range);

// What to write instead, with the range.
std::string size_help(const SizeRange& range);

}  // namespace editor
