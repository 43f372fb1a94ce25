#include "engine/render/image.h"

#include <stb_image_write.h>

#include <cassert>
#include <cstddef>

namespace engine {

Image halved(const Image& image) {
    Image half{.width = image.width / 2, .height = image.height / 2};
    const auto width = static_cast<std::size_t>(half.width);
    const auto height = static_cast<std::size_t>(half.height);
    const std::size_t row = 4U * static_cast<std::size_t>(image.width);
    half.rgba.resize(4U * width * height);
    for (std::size_t y = 0; y < height; ++y) {
        for (std::size_t x = 0; x < 4U * width; ++x) {
            const std::size_t at = 2U * y * row + 8U * (x / 4U) + x % 4U;
            const unsigned sum = 0U + image.rgba[at] + image.rgba[at + 4U] + image.rgba[at + row] +
                                 image.rgba[at + row + 4U];
            half.rgba[y * 4U * width + x] = static_cast<std::uint8_t>((sum + 2U) / 4U);
        }
    }
    return half;
}

std::string png_bytes(const Image& image) {
    assert(image.rgba.size() ==
           4U * static_cast<std::size_t>(image.width) * static_cast<std::size_t>(image.height));
    std::string bytes;
    const auto take = [](void* into, void* data, int size) {
        static_cast<std::string*>(into)->append(static_cast<const char*>(data),
                                                static_cast<std::size_t>(size));
    };
    stbi_write_png_to_func(take, &bytes, image.width, image.height, 4, image.rgba.data(),
                           4 * image.width);
    return bytes;
}

}  // namespace engine
