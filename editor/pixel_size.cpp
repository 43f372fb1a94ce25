#include "editor/pixel_size.h"

#include <charconv>
#include <system_error>

namespace editor {
namespace {

std::optional<int> read_side(std::string_view text, int least, int most) {
    int side = 0;
    const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), side);
    if (failed != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    if (side < least || side > most) return std::nullopt;
    return side;
}

std::string size_text(int width, int height) {
    return std::to_string(width) + "x" + std::to_string(height);
}

}  // namespace

std::optional<engine::Viewport> read_size(std::string_view text, const SizeRange& range) {
    const auto between = text.find('x');
    if (between == std::string_view::npos) return std::nullopt;
    const auto width = read_side(text.substr(0, between), range.least_width, range.most);
    const auto height = read_side(text.substr(between + 1), range.least_height, range.most);
    if (!width || !height) return std::nullopt;
    return engine::Viewport{.width = *width, .height = *height};
}

std::string size_help(const SizeRange& range) {
    return "write width and height in pixels, from " +
           size_text(range.least_width, range.least_height) + " to " +
           size_text(range.most, range.most) + ", like 1600x1000";
}

}  // namespace editor
